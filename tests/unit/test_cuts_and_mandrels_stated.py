"""What is stated is used or refused: mandrel ends, insisted cuts, feeds, names."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.cutting.schedule import planned_cuts
from borewright.errors import RefusedInput, UnknownName
from borewright.holding.taper.mandrels import resolve
from borewright.job.records import CutWish, Finished, Job, Machine, MandrelNote, Piece
from borewright.reference.library import Tables

TABLES = Tables()


def planned(job: Job) -> Plan:
    return plan(job, source_tables=TABLES)


@pytest.mark.parametrize("large_end", [0.016008, 0.01603, 0.01606])
def test_two_measured_ends_give_the_taper(large_end: float) -> None:
    note = MandrelNote(0.016, small_end=0.01598, large_end=large_end, ground_length=0.1)
    mandrel = resolve(note, TABLES, "m").mandrel
    assert mandrel.taper == pytest.approx((large_end - 0.01598) / 0.1)
    assert mandrel.large_end == pytest.approx(large_end)


def test_two_ends_and_a_taper_give_the_ground_length() -> None:
    note = MandrelNote(0.016, small_end=0.01598, large_end=0.01603, taper=0.0005)
    assert resolve(note, TABLES, "m").mandrel.ground_length == pytest.approx(0.1)


def test_ends_that_contradict_the_stated_taper_are_refused() -> None:
    note = MandrelNote(0.016, small_end=0.01598, large_end=0.01606, ground_length=0.1, taper=0.0005)
    with pytest.raises(RefusedInput, match="mandrel 'm'"):
        resolve(note, TABLES, "m")


def test_mandrels_of_one_size_are_named_apart() -> None:
    job = wheel_job(mandrels=(MandrelNote(0.016), MandrelNote(0.016), MandrelNote(0.0161)))
    assert {c.tool for c in planned(job).candidates if ", its end in" not in c.tool} == {
        "16 mm mandrel",
        "16 mm mandrel (2)",
        "16.1 mm mandrel",
    }


def cutting(finished: float | None, *wishes: CutWish) -> Job:
    job = wheel_job(outside=0.063, cuts=wishes)
    return replace(job, work=replace(job.work, finished=Finished(finished)))


def test_insisted_cuts_share_the_stock() -> None:
    cuts = planned_cuts(cutting(0.061, CutWish(depth=0.8e-3), CutWish(depth=0.2e-3)), TABLES)
    assert sum(c.depth * c.passes for c in cuts) == pytest.approx(1e-3)


@pytest.mark.parametrize(
    ("finished", "wish", "says"),
    [
        (None, CutWish(depth=0.0236), "of metal"),
        (0.062, CutWish(depth=0.6e-3), "of stock"),
        (None, CutWish("face", depth=0.013), "of metal"),
    ],
    ids=["through the wall", "past the finished size", "half way through the work"],
)
def test_a_cut_that_cannot_be_made_is_refused(
    finished: float | None, wish: CutWish, says: str
) -> None:
    with pytest.raises(RefusedInput, match=says):
        planned(cutting(finished, wish))


def test_a_finished_size_inside_the_rim_is_a_no() -> None:
    rim = (Piece(0, 0.025, 0.03), Piece(0.01, 0.015, 0.058, 0.03), Piece(0, 0.025, 0.063, 0.058))
    job = wheel_job(outside=0.063)
    job = replace(job, work=replace(job.work, pieces=rim, finished=Finished(0.057)))
    asked = next(q for q in planned(job).questions if q.id == "crack")
    assert asked.verdict is Verdict.NO
    assert "right through" in asked.reason


def test_the_lathe_s_own_feeds_are_used() -> None:
    job = wheel_job()
    machine = replace(job.shelf.machine, feeds=(0.05e-3, 0.1e-3, 0.2e-3))
    cuts = planned(replace(job, shelf=replace(job.shelf, machine=machine))).cuts
    assert {c.feed for c in cuts} <= set(machine.feeds)
    coarse = replace(job, shelf=replace(job.shelf, machine=Machine(feeds=(1e-3,))))
    assert {c.feed for c in planned(coarse).cuts} == {1e-3}


@pytest.mark.parametrize(
    ("change", "place"),
    [
        ({"material": "mandrel-steel-hard"}, "work.material"),
        ({"made_by": "ground-mandrel"}, "work.bore.made_by"),
        ({"measured_with": "eyebrow"}, "work.bore.measured_with"),
        ({"press": "elephant"}, "hold.press"),
    ],
    ids=lambda v: v if isinstance(v, str) else next(iter(v)),
)
def test_a_name_is_refused_with_its_place(change: dict[str, str], place: str) -> None:
    job = wheel_job(cuts=turning())
    if "press" in change:
        job = replace(job, shelf=replace(job.shelf, press=change["press"]))
    elif "material" in change:
        job = replace(job, work=replace(job.work, **change))
    else:
        job = replace(job, work=replace(job.work, bore=replace(job.work.bore, **change)))
    with pytest.raises(RefusedInput) as refused:
        planned(job)
    assert refused.value.where == place
    assert isinstance(refused.value, UnknownName) or place == "work.bore.made_by"
