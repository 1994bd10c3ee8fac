"""Steps and words around the turning: lathe parallel, balance, rims in service, a lathe too fast."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Question, Step
from borewright.errors import RefusedInput
from borewright.job import Spokes
from borewright.job.file import parse_job
from borewright.job.records import CutWish, Job, Machine
from borewright.job.write import job_text
from borewright.planning.weighing.rim_speed import rim_limit
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service import planned

TABLES = Tables()
LONG, SHORT = 0.045, 0.008


def job(length: float = 0.025, across: float = 0.063, **finished: float) -> Job:
    made = wheel_job(across, length, material="gray-iron-30", cuts=turning(0.3e-3))
    return replace(made, work=replace(made.work, finished=replace(made.work.finished, **finished)))


def cast(made: Job, spokes: Spokes | None = None) -> Job:
    return replace(made, work=replace(made.work, blank="casting", spokes=spokes))


def step(answer: Plan, title: str) -> Step | None:
    return next((s for s in answer.steps if s.title == title), None)


def number(answer: Plan, title: str) -> int:
    found = step(answer, title)
    assert found is not None, title
    return found.number


def question(answer: Plan, name: str) -> Question:
    return next(q for q in answer.questions if q.id == name)


# Lathe parallel


def test_a_long_rim_to_a_close_size_has_the_lathe_set_parallel_before_its_last_size() -> None:
    answer = plan(job(LONG, tolerance=0.02e-3), source_tables=TABLES)
    assert number(answer, "Lathe parallel") < number(answer, "Cool, then the last size")
    assert number(answer, "Lathe parallel") > number(answer, "Cut, in the order of the table")


def test_a_short_rim_or_a_wide_tolerance_leaves_the_lathe_as_it_is() -> None:
    for made in (job(SHORT, tolerance=0.05e-3), job(LONG, tolerance=0.5e-3)):
        assert step(plan(made, source_tables=TABLES), "Lathe parallel") is None


def test_the_step_begins_where_the_taper_passes_its_share_of_the_tolerance() -> None:
    """2 x 0.025 mm / between x rim against a quarter of the tolerance, by hand."""
    answer = plan(job(LONG, tolerance=0.02e-3), source_tables=TABLES)
    found = step(answer, "Lathe parallel")
    assert found is not None
    taper = next(f for f in found.figures if f.name == "lathe_taper")
    inputs = {i.label: i.value for i in taper.inputs}
    error = 2 * 0.025e-3 / inputs["between centers"] * LONG
    assert taper.best == pytest.approx(error, rel=1e-9)
    for tolerance, there in ((4 * error * 1.01, False), (4 * error * 0.99, True)):
        again = plan(job(LONG, tolerance=tolerance), source_tables=TABLES)
        assert (step(again, "Lathe parallel") is not None) == there


def test_work_in_a_chuck_is_not_told_to_move_the_tailstock() -> None:
    made = job(LONG, tolerance=0.02e-3)
    for way in ("turned-stub", "faceplate", "four-jaw"):
        answer = planned.plan(made, use=way, source_tables=TABLES)
        assert step(answer, "Lathe parallel") is None


def test_work_on_a_bar_between_centers_is_told() -> None:
    answer = planned.plan(job(LONG, tolerance=0.02e-3), use="soft-mandrel", source_tables=TABLES)
    assert number(answer, "Lathe parallel") < number(answer, "Cool, then the last size")


def test_ground_work_has_no_tailstock_of_a_lathe() -> None:
    made = replace(job(LONG, tolerance=0.02e-3), cuts=(CutWish("grind", 5e-6, 3e-3, speed=0.3),))
    assert step(plan(made, source_tables=TABLES), "Lathe parallel") is None


# Balance


def test_a_large_casting_is_balanced_before_it_leaves_its_mandrel() -> None:
    answer = plan(cast(job(0.03, 0.12)), source_tables=TABLES)
    assert number(answer, "Balance it") < number(answer, "Press off")


def test_bar_work_and_small_slow_castings_are_not_balanced() -> None:
    for made in (job(0.03, 0.12), cast(job())):
        assert step(plan(made, source_tables=TABLES), "Balance it") is None


def test_a_small_casting_that_runs_fast_is() -> None:
    answer = plan(cast(job(service_speed=1750 / 60)), source_tables=TABLES)
    found = step(answer, "Balance it")
    assert found is not None
    assert "Worth it only" not in found.text


def test_spokes_are_never_drilled() -> None:
    spoked = cast(job(0.03, 0.12), Spokes(5, 0.014, 0.008))
    rings = (
        replace(spoked.work.pieces[0], outside=0.036),
        replace(spoked.work.pieces[0], inside=0.098),
    )
    answer = plan(replace(spoked, work=replace(spoked.work, pieces=rings)), source_tables=TABLES)
    found = step(answer, "Balance it")
    assert found is not None
    assert "never in a spoke" in found.text


def test_balance_is_a_step_and_no_verdict() -> None:
    answer = plan(cast(job(0.03, 0.12, service_speed=5.0)), source_tables=TABLES)
    assert "balance" in answer.not_judged
    assert "balance" not in {q.id for q in answer.questions}


# Rims in service


def cautioned(answer: Plan) -> set[str]:
    return {c.id for c in answer.cautions if c.id.startswith("rim-speed")}


def test_an_iron_rim_faster_than_shops_run_them_is_cautioned_by_its_own_numbers() -> None:
    """310 mm at 1750 rpm: 28.4 m/s, over 20."""
    answer = planned.plan(job(0.03, 0.31, service_speed=1750 / 60), source_tables=TABLES)
    assert cautioned(answer) == {"rim-speed-service"}
    said = next(c.text for c in answer.cautions if c.id == "rim-speed-service")
    assert "28.4 m/s" in said
    assert "20 m/s" in said
    assert answer.cautions[0].id == "rim-speed-service"


def test_a_slow_rim_has_no_caution_and_is_not_called_safe() -> None:
    answer = planned.plan(job(0.03, 0.12, service_speed=600 / 60), source_tables=TABLES)
    assert not cautioned(answer)
    assert "safe" not in question(answer, "speed").reason


def test_the_finished_outside_is_what_runs_in_service() -> None:
    wide = 20.0 / (math.pi * 0.2)  # rev/s at which 200 mm runs at just 20 m/s
    for outside, found in ((0.199, set()), (0.201, {"rim-speed-service"})):
        made = job(0.03, 0.21, service_speed=wide, outside=outside)
        assert cautioned(planned.plan(made, source_tables=TABLES)) == found


def test_other_metal_is_held_by_its_strength_over_a_factor() -> None:
    """Tension of a thin ring, density x v^2, is a tenth of the low tensile strength."""
    made = wheel_job(material="al-6061-t6")
    limit, t = rim_limit(made, TABLES), TABLES
    strength = t.material_range("al-6061-t6", "tensile").low
    density = t.material_range("al-6061-t6", "density").best
    assert density * limit.speed**2 == pytest.approx(strength / 10, rel=1e-9)
    assert not limit.iron


@pytest.mark.parametrize("iron", ["gray-iron-20", "gray-iron-40", "malleable-iron"])
def test_every_cast_iron_is_held_by_practice_and_never_by_its_strength(iron: str) -> None:
    limit = rim_limit(wheel_job(material=iron), TABLES)
    assert (limit.speed, limit.highest, limit.source) == (20.0, 30.0, "practice")


def test_a_rim_turned_too_fast_on_the_lathe_is_cautioned_too() -> None:
    fast = wheel_job(0.31, 0.03, material="gray-iron-30")
    fast = replace(fast, cuts=(CutWish("turn", 0.2e-3, 0.1e-3, spindle_speed=1500 / 60),))
    assert "rim-speed-turning" in cautioned(planned.plan(fast, source_tables=TABLES))


def test_the_service_speed_is_read_and_written_back() -> None:
    text = (
        'work = {material = "iron", bore = "16mm", outside = "80mm", length = "20mm", '
        'finished = {service_speed = "1750rpm"}}'
    )
    read = parse_job(text, "wheel.toml")
    assert read.work.finished.service_speed == pytest.approx(1750 / 60)
    assert parse_job(job_text(read), "again.toml") == read
    assert 'service_speed = "1750rpm"' in job_text(read)


@pytest.mark.parametrize("typed", ["1750", "0rpm", "-5rpm", "30m/s", "fast"])
def test_a_service_speed_that_is_none_is_refused_where_it_stands(typed: str) -> None:
    text = (
        'work = {material = "iron", bore = "16mm", outside = "80mm", length = "20mm", '
        f'finished = {{service_speed = "{typed}"}}}}'
    )
    with pytest.raises(Exception, match=r"work\.finished\.service_speed") as refusal:
        parse_job(text, "wheel.toml")
    assert "found" in str(refusal.value)
    assert isinstance(refusal.value, RefusedInput | ValueError)


# Too fast at the slowest


def speed(material: str, outside: float, *rpm: float, wish: float | None = None) -> Question:
    made = wheel_job(outside, 0.03, material=material)
    machine = Machine("", tuple(r / 60 for r in rpm), (), 0.6, 1.0)
    cuts = () if wish is None else (CutWish("turn", 0.2e-3, 0.1e-3, spindle_speed=wish / 60),)
    made = replace(made, shelf=replace(made.shelf, machine=machine), cuts=cuts)
    return question(plan(made, source_tables=TABLES), "speed")


def test_carbide_is_named_with_its_own_speed_where_it_serves_at_the_slowest() -> None:
    """150 mm iron at 120 rpm: 0.94 m/s, over 0.5 for high-speed steel, under 1.5 for carbide."""
    said = speed("gray-iron-30", 0.15, 120).changes_it
    carbide = TABLES.cutting_speed("gray-iron-30", "carbide").high
    surface = math.pi * 0.15 * 2
    assert TABLES.cutting_speed("gray-iron-30", "hss").high < surface < carbide
    assert "which serves at this speed" in said
    assert said.startswith("Back gear")


def test_carbide_is_not_promised_where_it_too_would_be_too_fast() -> None:
    assert "carbide too is usual up to" in speed("gray-iron-30", 0.3, 300).changes_it


def test_the_diameter_that_the_slowest_speed_serves_is_said() -> None:
    hss = TABLES.cutting_speed("gray-iron-30", "hss").high
    said = speed("gray-iron-30", 0.15, 120).changes_it
    widest = hss / (math.pi * 2.0)
    assert f"serves up to {Show('mm').length(widest)} across" in said
    assert "Less depth does not make it slower" in said


def test_where_the_lathe_has_slower_no_back_gear_is_asked_for() -> None:
    said = speed("gray-iron-30", 0.15, 60, 120, 400, wish=400).changes_it
    assert said.startswith("A slower gear: at most")


def test_knocking_first_cuts_are_named_as_hard_on_carbide() -> None:
    made = cast(wheel_job(0.15, 0.03, material="gray-iron-30"))
    made = replace(made, shelf=replace(made.shelf, machine=Machine("", (2.0,), (), 0.6, 1.0)))
    assert "knock at carbide" in question(plan(made, source_tables=TABLES), "speed").changes_it


def test_work_that_runs_within_the_usual_speed_needs_nothing() -> None:
    assert speed("gray-iron-30", 0.063, 60, 120).changes_it == "Nothing needs to."
