"""Steps and grooves whose tool would run into what holds the work."""

from __future__ import annotations

from borewright.answer.held_picture import HeldPicture, HeldRing, Role
from borewright.answer.records import Cut
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
