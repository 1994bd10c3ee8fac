"""The four later questions: what turns them, and that everyday work stays everyday."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan
from tests.unit.test_planning_choices import trial_of

from borewright.answer.records import Question, Verdict
from borewright.job.records import BoreReading, Job, Machine, MandrelNote
from borewright.planning.questions.heat import drop_off, drop_on, half_grip
from borewright.reference.library import Tables
from borewright.service import planned

TABLES = Tables()


def question(job: Job, name: str) -> Question:
    return next(q for q in plan(job, source_tables=TABLES).questions if q.id == name)


def with_speeds(job: Job, *rpm: float) -> Job:
    machine = Machine("", tuple(r / 60 for r in rpm), (), 0.6, 1.0)
    return replace(job, shelf=replace(job.shelf, machine=machine))


@pytest.mark.parametrize("name", ["rock", "heat", "true", "speed"])
def test_everyday_work_is_everyday(name: str) -> None:
    assert question(wheel_job(cuts=turning()), name).verdict is Verdict.YES


def test_the_questions_come_in_the_contract_s_order() -> None:
    ids = [q.id for q in plan(wheel_job(), source_tables=TABLES).questions]
    assert sorted(ids) == sorted(
        ["seat", "bore", "push", "crack", "slip", "rock", "bend", "heat", "true", "reach", "speed"]
    )


def test_a_lathe_that_only_goes_fast_turns_speed_and_nothing_else() -> None:
    slow, fast = (with_speeds(wheel_job(0.2, material="gray-iron-30"), rpm) for rpm in (30, 300))
    assert question(slow, "speed").verdict is Verdict.YES
    assert question(fast, "speed").verdict is Verdict.NO
    assert "Back gear" in question(fast, "speed").changes_it


def test_the_next_slower_speed_is_taken() -> None:
    job = with_speeds(wheel_job(), 100, 200, 350, 600)
    wanted = TABLES.cutting_speed("al-6061-t6").best / (3.141592653589793 * 0.063) * 60
    used = plan(job, source_tables=TABLES).cuts[0].spindle_speed * 60
    assert used == pytest.approx(max(r for r in (100, 200, 350, 600) if r <= wanted))


def test_a_deeper_cut_warms_more_and_never_betters_the_heat_margin() -> None:
    margins = [question(wheel_job(cuts=turning(d)), "heat").margin for d in (0.2e-3, 0.5e-3)]
    assert margins[1] < margins[0]


def test_half_the_grip_goes_long_before_it_drops_off() -> None:
    trial = trial_of(wheel_job())
    assert 0 < half_grip(trial) < drop_off(trial)


def test_drop_off_is_the_squeeze_over_expansion_and_bore() -> None:
    trial = trial_of(wheel_job())
    expansion = TABLES.material_range("al-6061-t6", "expansion").best
    assert drop_off(trial) * expansion * 0.016006 == pytest.approx(0.0005 * trial.chosen.travel)


def test_a_heavy_face_cut_far_out_rocks_a_short_hub() -> None:
    short = wheel_job(0.28, 0.012, cuts=turning(0.5e-3))
    assert question(short, "rock").margin < question(wheel_job(cuts=turning(0.5e-3)), "rock").margin


def test_an_oval_bore_runs_out_more() -> None:
    round_, oval = (
        wheel_job(
            bore=0.016004, readings=(BoreReading(0.01, 0.016004), BoreReading(0.01, 0.016004 + d))
        )
        for d in (0.0, 10e-6)
    )
    assert question(oval, "true").margin < question(round_, "true").margin


def test_it_drops_on_where_the_bore_has_grown_by_the_squeeze_and_a_little_more() -> None:
    trial = trial_of(wheel_job())
    expansion = TABLES.material_range("al-6061-t6", "expansion").best
    grown = expansion * 0.016006 * (drop_on(trial) - 293.15 - 15)
    assert grown == pytest.approx(0.0005 * trial.chosen.travel)


def test_warming_is_offered_for_aluminium_and_not_where_it_would_need_too_much_heat() -> None:
    assert "slide to this place" in question(wheel_job(), "heat").changes_it
    hot = wheel_job(material="gray-iron-30", bore=0.0060, mandrels=(MandrelNote(0.006),))
    assert "slide to this place" not in question(hot, "heat").changes_it


@pytest.mark.parametrize("way", ["nut-mandrel", "cone-centers", "soft-mandrel", "gang"])
def test_between_centers_nobody_is_told_to_bring_the_tailstock_up(way: str) -> None:
    """A thin disc of 200 mm under a heavy cut rocks on any of them; cones meet inside a thinner one."""
    length = 0.006 if way == "cone-centers" else 0.004
    job = wheel_job(outside=0.2, length=length, material="steel-1018", cuts=turning(2e-3, 0.3e-3))
    answer = planned.plan(replace(job, work=replace(job.work, quantity=6)), use=way)
    rock = next(q for q in answer.questions if q.id == "rock")
    assert rock.margin < 2
    assert "lighter cut" in rock.changes_it
    assert "brought up" not in rock.changes_it
