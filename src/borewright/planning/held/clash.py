"""Steps and grooves whose tool would run into what holds the work."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.held_picture import HeldPicture, HeldRing, Role
from borewright.answer.records import Cut
from borewright.job.finished_edges import leg_of, outer_edges
from borewright.planning.held.held_trial import HeldTrial
from borewright.quantities.si import Metre

IN_THE_WAY = (Role.WASHER, Role.NUT, Role.STRAP, Role.SCREW, Role.JAW, Role.PLATE, Role.BOND)
"""What a tool may run into, beside the mandrel itself."""

RUN_OUT = 2e-3
"""How far past an end of the work the tool runs (m; ours)."""

NEAR = 1e-6
"""Lengths nearer than this (m) are one."""


def clash(trial: HeldTrial) -> str:
    """Why a step or groove cannot be cut in this hold, in a sentence; empty where all can."""
    picture = trial.held.picture
    if picture is None:
        return ""
    for cut in trial.cuts:
        ring = _in_the_way(trial, picture, cut)
        if ring is not None:
            size = trial.show.length(2 * ring.outer)
            return f"The tool would run into the {ring.role.value}, {size} across, to {cut.name}."
    return ""


def out_of_the_way(trial: HeldTrial) -> HeldTrial:
    """The trial without the edges at which something stands in the tool's way: they are broken when
    the work is off, and no reason against the hold."""
    picture = trial.held.picture
    if picture is None:
        return trial
    pairs = zip(trial.cuts, trial.demands, strict=True)
    kept = [(c, d) for c, d in pairs if c.kind != "edge" or not _covered(trial, picture, c)]
    if len(kept) == len(trial.cuts):
        return trial
    return replace(trial, cuts=tuple(c for c, _ in kept), demands=tuple(d for _, d in kept))


def _covered(trial: HeldTrial, picture: HeldPicture, cut: Cut) -> bool:
    """Whether what holds the work stands out as far as the end edge that a row of edges has."""
    work = trial.job.work
    looks = cut.id[-1].upper()
    for edge in outer_edges(work):
        if edge.end and edge.looks == looks:
            leg = leg_of(edge, work)
            span = (edge.at, edge.at + leg) if looks == "A" else (edge.at - leg, edge.at)
            at = replace(cut, span=span, leaves=edge.outside - 2 * leg)
            return _in_the_way(trial, picture, at) is not None
    return False


def _in_the_way(trial: HeldTrial, picture: HeldPicture, cut: Cut) -> HeldRing | None:
    if cut.span is None or cut.leaves is None:
        return None
    low, high = _along(trial, picture, *cut.span)
    hit = (
        r
        for r in picture.rings
        if r.role in IN_THE_WAY
        and r.outer > cut.leaves / 2 + NEAR
        and r.start < high - NEAR
        and r.end > low + NEAR
    )
    return next(hit, None)


def _along(trial: HeldTrial, picture: HeldPicture, start: Metre, end: Metre) -> tuple[Metre, Metre]:
    """The stretch in the picture's own places, past an end of the work by the run-out."""
    work = [r for r in picture.rings if r.role is Role.WORK]
    begins, ends = min(r.start for r in work), max(r.end for r in work)
    length = trial.job.work.finished.form.length or trial.job.work.length
    if trial.held.leading == "B":
        start, end = length - end, length - start
    low, high = begins + start, begins + end
    if low < begins + RUN_OUT:
        low = begins - RUN_OUT
    return low, ends + RUN_OUT if high > ends - RUN_OUT else high
