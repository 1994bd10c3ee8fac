"""What is drawn of work in jaws or on a plate: nothing stands in the metal of the work; arms."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest
from tests.chuck_jobs import bored, hubbed, spoked, thin_ring, with_bore, worn

from borewright.answer.held_picture import HeldRing, Role
from borewright.holding.jaws.chucked import arm_of
from borewright.holding.jaws.grasp import Where, grasps
from borewright.holding.part import Part
from borewright.holding.registry import WAYS
from borewright.job.records import Job
from borewright.reference.library import Tables

TABLES = Tables()
TOUCH = 1e-9
"""Metres: rings that share no more than an edge."""

JOBS = {
    "ring": thin_ring(),
    "many rings": replace(thin_ring(), work=replace(thin_ring().work, quantity=20)),
    "hub": hubbed(),
    "spoked": spoked(),
    "worn": worn(hubbed()),
    "drilled bar": with_bore(hubbed(), bored("drilled")),
    "cast": with_bore(hubbed(), bored("as-cast"), "casting"),
}
OURS = ("one-chucking", "three-jaw", "four-jaw", "soft-jaws", "endwise")


def overlap(one: HeldRing, other: HeldRing) -> bool:
    along = min(one.end, other.end) - max(one.start, other.start)
    across = min(one.outer, other.outer) - max(one.inner, other.inner)
    return along > TOUCH and across > TOUCH


@pytest.mark.parametrize(("way", "job"), list(product(OURS, JOBS)))
def test_no_jaw_plate_or_ring_stands_in_the_work(way: str, job: str) -> None:
    for held in WAYS[way].offer(JOBS[job], TABLES):
        if held.picture is None:
            assert held.cannot
            continue
        work = [r for r in held.picture.rings if r.role is Role.WORK]
        others = [r for r in held.picture.rings if r.role is not Role.WORK]
        assert work
        assert others
        assert not [(a.role, a) for a in others for b in work if overlap(a, b)]
        assert all(r.end > r.start and r.outer > r.inner >= 0 for r in held.picture.rings)


def test_every_way_is_drawn_for_some_part() -> None:
    drawn = {w for w in OURS for j in JOBS.values() if WAYS[w].offer(j, TABLES)[0].picture}
    assert drawn == set(OURS)


def grasp_of(job: Job, where: Where):  # type: ignore[no-untyped-def]
    part = Part(job, TABLES)
    return part, next(g for g in grasps(part) if g.where is where)


def test_the_arm_runs_from_the_middle_of_the_jaws_to_the_far_face() -> None:
    """A hub of 15 mm in the jaws of a wheel 40 mm long: 40 - 7.5 = 32.5 mm."""
    assert arm_of(*grasp_of(hubbed(0.015), Where.HUB)) == pytest.approx(0.0325)
    assert arm_of(*grasp_of(thin_ring(), Where.BORE)) == pytest.approx(0.004)
