"""A cut is no heavier than is usual while the lathe's power is not stated, and leaves no thread."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.jobs_made import wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.records import Cut
from borewright.job.records import Job, Machine, MandrelNote
from borewright.reference.library import Tables

TABLES = Tables()
USUAL = TABLES.cut_defaults("al-6061-t6")


def stout(feeds: tuple[float, ...], power: float | None) -> Job:
    """A small wheel on a stout mandrel: the grip is no limit."""
    job = wheel_job(0.05, 0.03, 0.025006, mandrels=(MandrelNote(0.025),), press="arbor press 3 ton")
    lathe = Machine(speeds=(5.0, 10.0, 20.0), feeds=feeds, power=power)
    sizes = replace(job.work.finished, outside=0.044)
    return replace(
        job, work=replace(job.work, finished=sizes), shelf=replace(job.shelf, machine=lathe)
    )


def rough(job: Job) -> Cut:
    return next(c for c in plan(job, source_tables=TABLES).cuts if c.id == "rough")


@pytest.mark.parametrize("feed", [0.06e-3, 0.12e-3, 0.2e-3, 0.3e-3])
def test_depth_times_feed_is_the_usual_where_no_power_is_stated_and_four_times_where_it_is(
    feed: float,
) -> None:
    usual = USUAL.rough_depth * USUAL.rough_feed
    tame, strong = rough(stout((feed,), None)), rough(stout((feed,), 3000.0))
    assert tame.depth * tame.feed <= usual * (1 + 1e-6)
    assert strong.depth * strong.feed <= 4 * usual * (1 + 1e-6)
    assert strong.depth * strong.feed >= tame.depth * tame.feed


def test_a_coarse_feed_is_taken_shallower_and_a_fine_one_no_deeper_than_usual() -> None:
    assert rough(stout((0.24e-3,), None)).depth < USUAL.rough_depth / 1.5
    assert rough(stout((0.03e-3,), None)).depth <= USUAL.rough_depth * (1 + 1e-9)


@pytest.mark.parametrize("feed", [0.3e-3, 0.6e-3])
def test_no_pass_is_shallower_than_the_ridges_of_its_feed(feed: float) -> None:
    """f² / (8 r) with the usual nose of 0.4 mm: 0.6 mm a turn leaves 0.11 mm standing like a thread."""
    answer = plan(stout((feed,), 3000.0), source_tables=TABLES)
    blocked = {b.cut for b in answer.schedule.blocked}
    for cut in answer.cuts:
        if cut.kind in ("turn", "face") and cut.id not in blocked:
            assert cut.depth >= cut.feed**2 / (8 * cut.nose_radius) * (1 - 1e-9), cut.id
