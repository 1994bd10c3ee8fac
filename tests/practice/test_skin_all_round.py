"""A casting that is out: the first pass under its skin all round, or said where no hold bears it."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.blocked_cuts import own
from tests.jobs_made import wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Cut, Verdict
from borewright.cutting.knock import NO_KNOCK, knock_of
from borewright.job.finished_form import FinishedStep
from borewright.job.records import Job, Machine, MandrelNote, Piece
from borewright.reference.library import Tables

TABLES = Tables()
SKIN = TABLES.allowance("skin_depth").low
LATHE = Machine(
    "a lathe",
    speeds=tuple(r / 60 for r in (28, 45, 70, 110, 180, 290)),
    feeds=(0.03e-3, 0.05e-3, 0.08e-3, 0.12e-3, 0.2e-3),
    swing_over_cross_slide=0.4,
    between_centers=0.8,
    power=1500.0,
)


def casting(out: float, outside: float = 0.084, finished: float = 0.08) -> Job:
    """An iron wheel on a stout mandrel."""
    mandrel = (MandrelNote(0.025),)
    job = wheel_job(
        outside, 0.03, 0.025006, "gray-iron-30", mandrels=mandrel, press="arbor press 3 ton"
    )
    sizes = replace(job.work.finished, outside=finished)
    work = replace(job.work, blank="casting", casting_runout=out, flaws="none", finished=sizes)
    return replace(job, work=work, shelf=replace(job.shelf, machine=LATHE))


def along(answer: Plan) -> list[Cut]:
    return [c for c in answer.cuts if c.id in ("skin", "rough", "finish")]


@settings(max_examples=12, deadline=None)
@given(out=st.floats(0.0, 0.8e-3))
def test_the_first_pass_is_under_the_skin_on_the_low_side_too(out: float) -> None:
    answer = plan(casting(out), source_tables=TABLES)
    first = along(answer)[0]
    assert first.passes == 1
    assert first.depth >= out + SKIN - 1e-9, "from the high spot, where the dial stands at zero"


@pytest.mark.parametrize("out", [0.0, 0.4e-3, 0.8e-3, 1.6e-3])
def test_all_passes_together_take_the_stock_and_half_of_the_throw(out: float) -> None:
    """The high side is half the throw above the mean outside, from which the stock is counted."""
    cuts = along(plan(casting(out), source_tables=TABLES))
    assert cuts[0].diameter == pytest.approx(0.084 + out)
    assert sum(c.depth * c.passes for c in cuts) == pytest.approx(0.002 + out / 2)
    assert cuts[-1].leaves == pytest.approx(0.08)
    for one, other in pairwise(cuts):
        assert other.diameter == pytest.approx(one.diameter - 2 * one.depth * one.passes)


def test_skin_is_cut_no_faster_than_its_share_of_the_usual_speed() -> None:
    answer = plan(casting(0.4e-3), source_tables=TABLES)
    usual = TABLES.cutting_speed("gray-iron-30", "hss").best
    share = TABLES.allowance("skin_speed").best
    first, second = along(answer)[:2]
    assert first.cutting_speed <= share * usual * (1 + 1e-9)
    assert second.spindle_speed > first.spindle_speed


def test_a_pass_that_cuts_all_round_does_not_knock_and_one_that_cuts_air_does() -> None:
    job = casting(0.8e-3)
    skin = next(c for c in plan(job, source_tables=TABLES).cuts if c.id == "skin")
    assert knock_of(skin, job, TABLES) == NO_KNOCK
    shallow = replace(skin, depth=0.7e-3)
    assert knock_of(shallow, job, TABLES).best > 1
    later = replace(shallow, id="rough", diameter=skin.leaves)
    assert knock_of(later, job, TABLES) == NO_KNOCK, "by then it runs true"


def test_where_no_setting_gets_under_it_all_round_the_plan_says_what_to_do() -> None:
    """2 mm out on a 160 mm wheel and a 16 mm bore: no hold by friction takes so deep a first pass."""
    job = wheel_job(0.16, 0.025, 0.016006, "gray-iron-30")
    sizes = replace(job.work.finished, outside=0.155)
    work = replace(job.work, blank="casting", casting_runout=2e-3, flaws="none", finished=sizes)
    answer = plan(replace(job, work=work), source_tables=TABLES)
    assert answer.schedule is not None
    (said,) = [n for n in answer.schedule.notes if "under the skin all round" in n]
    assert "stronger hold" in said
    peeled, rough = along(answer)[:2]
    assert peeled.passes > 1
    assert peeled.depth < 2e-3
    assert knock_of(peeled, replace(job, work=work), TABLES).best > 1
    assert peeled.depth * peeled.passes >= 2e-3 + SKIN - 1e-9, "under the skin all round by then"
    assert knock_of(rough, replace(job, work=work), TABLES) == NO_KNOCK


def faced(job: Job, length: float) -> Plan:
    form = replace(job.work.finished.form, length=length)
    work = replace(job.work, finished=replace(job.work.finished, form=form))
    return plan(replace(job, work=work), source_tables=TABLES)


@pytest.mark.parametrize("off", [0.0006, 0.001, 0.002])
def test_no_pass_over_a_face_of_a_casting_stays_in_its_skin(off: float) -> None:
    answer = faced(casting(0.0), 0.03 - 2 * off)
    faces = [c for c in answer.cuts if c.kind == "face"]
    assert len(faces) == 2
    for cut in faces:
        assert cut.depth >= SKIN - 1e-9
        assert cut.depth * cut.passes == pytest.approx(off)


def test_where_no_such_pass_over_a_face_is_borne_it_is_said(tmp_path: Path) -> None:
    """A skin of 4 mm, as thick as all that comes off: nothing here takes that at once."""
    usual = "skin_depth,0.0004,0.0005,0.0008"
    thick = own(tmp_path, "allowances", (usual, "skin_depth,0.004,0.004,0.004"))
    job = casting(0.0)
    job = replace(job, shelf=replace(job.shelf, machine=replace(LATHE, power=None)))
    form = replace(job.work.finished.form, length=0.022)
    work = replace(job.work, finished=replace(job.work.finished, form=form))
    answer = plan(replace(job, work=work), source_tables=thick)
    assert answer.schedule is not None
    faces = {c.name for c in answer.cuts if c.kind == "face" and c.depth < 0.004 - 1e-9}
    assert len(faces) == 2
    told = [n for n in answer.schedule.notes if "under the skin of the casting" in n]
    assert {name for name in faces if any(f"To {name}:" in n for n in told)} == faces


def test_a_face_that_only_cleans_up_is_cut_under_the_skin_too() -> None:
    faces = [c for c in plan(casting(0.0), source_tables=TABLES).cuts if c.kind == "face"]
    assert [c.depth for c in faces] == pytest.approx([SKIN, SKIN])


def test_a_step_on_a_cast_hub_has_a_skin_of_its_own() -> None:
    """The hub is as cast where the rim is roughed: its first pass is slow and deep enough."""
    job = casting(0.0)
    pieces = (Piece(0.0, 0.015, 0.05), Piece(0.015, 0.03, 0.084))
    form = replace(job.work.finished.form, steps=(FinishedStep(0.0, 0.015, 0.045),))
    work = replace(job.work, pieces=pieces, finished=replace(job.work.finished, form=form))
    cuts = {c.id: c for c in plan(replace(job, work=work), source_tables=TABLES).cuts}
    skin = cuts["step-1-skin"]
    assert (skin.passes, skin.diameter) == (1, pytest.approx(0.05))
    assert skin.depth >= SKIN - 1e-9
    taken = skin.depth + cuts["step-1-rough"].depth * cuts["step-1-rough"].passes
    assert taken + cuts["step-1-finish"].depth == pytest.approx(0.0025)
    usual = TABLES.cutting_speed("gray-iron-30", "hss").best
    assert skin.cutting_speed <= TABLES.allowance("skin_speed").best * usual * (1 + 1e-9)


def test_a_casting_of_no_stated_size_is_cut_until_it_is_round_and_under_its_skin() -> None:
    job = casting(0.6e-3)
    sizes = replace(job.work.finished, outside=None)
    job = replace(job, work=replace(job.work, finished=sizes))
    cuts = along(plan(job, source_tables=TABLES))
    assert cuts[0].diameter == pytest.approx(0.084 + 0.6e-3)
    assert sum(c.depth * c.passes for c in cuts) >= 0.6e-3 + SKIN
    for one, other in pairwise(cuts):
        assert other.diameter == pytest.approx(one.diameter - 2 * one.depth * one.passes)


def test_one_that_does_not_clean_up_is_no_plain_yes_and_says_so() -> None:
    """Out by 3 mm it wants 1.5 mm and the skin on the radius; there is 1 mm."""
    answer = plan(casting(3e-3, 0.084, 0.082), source_tables=TABLES)
    assert answer.verdict is not Verdict.YES
    assert "does not clean up" in answer.headline
