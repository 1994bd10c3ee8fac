"""A hole that the tool crosses: the cut knocks there, peak over steady force."""

from __future__ import annotations

from borewright.answer.records import Cut
from borewright.cutting.stock import LATHE_READS, runout_of
from borewright.job.records import Job
from borewright.job.web import on_bore
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

NO_KNOCK = Range(1.0, 1.0, 1.0, "", "ours")
"""Nothing in the tool's way."""


def knock_of(cut: Cut, job: Job, tables: Tables) -> Range:
    """Peak over steady force of a cut; more than 1 where it turns an outside with a hole in it, or
    one that runs out as cast by more than its depth, so that it cuts air for part of a turn."""
    if cut.kind == "turn" and (hole_in_the_outside(job) or runs_out(cut, job)):
        return tables.cutting_correction("interrupted_impact")
    return NO_KNOCK


def runs_out(cut: Cut, job: Job) -> bool:
    """Whether a roughing cut cuts air for part of a turn: it begins on the rim as cast, and is not
    as deep, from its high spot, as the rim is out. Later passes and cuts find it round."""
    as_cast = cut.diameter > job.work.outside - LATHE_READS
    return cut.id in ROUGH and as_cast and cut.depth < runout_of(job)


ROUGH = ("skin", "rough")
"""Ids of the cuts that meet the outside as it was cast."""


def hole_in_the_outside(job: Job) -> bool:
    """Whether the cross hole comes out on the largest diameter, or may, its place not known."""
    work, hole = job.work, job.work.cross_hole
    if hole is None:
        return False
    return any(
        ring.outside >= work.outside * (1 - 1e-9)
        for ring in on_bore(work.pieces, work.bore.size)
        if hole.at is None or ring.start < hole.at < ring.end
    )
