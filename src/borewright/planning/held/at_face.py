"""What of a hold stands against a face that is cut, so that the tool stops short of it."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.held_picture import HeldRing, Role
from borewright.answer.records import Cut
from borewright.cutting.directions import TIGHTENS
from borewright.planning.held.clash import IN_THE_WAY, NEAR
from borewright.planning.held.held_trial import HeldTrial
from borewright.quantities.si import Metre


def ring_at_face(trial: HeldTrial, cut: Cut) -> HeldRing | None:
    """The widest thing that touches the face which is cut; None where nothing does."""
    picture = trial.held.picture
    work = [] if picture is None else [r for r in picture.rings if r.role is Role.WORK]
    if picture is None or not work:
        return None
    tail = cut.seat_effect == TIGHTENS
    at = max(r.end for r in work) if tail else min(r.start for r in work)
    near = [r for r in picture.rings if r.role in IN_THE_WAY and abs(_side(r, tail) - at) < NEAR]
    return max(near, key=lambda r: r.outer, default=None)


def _side(ring: HeldRing, tail: bool) -> Metre:
    return ring.start if tail else ring.end


def short_of_rings(trial: HeldTrial) -> HeldTrial:
    """The trial with every face cut no farther in than what stands against it; a face that is all
    covered is not cut."""
    pairs = [
        (cut, demand)
        for planned, demand in zip(trial.cuts, trial.demands, strict=True)
        if (cut := _short(trial, planned)) is not None
    ]
    if not pairs:
        return trial
    return replace(trial, cuts=tuple(c for c, _ in pairs), demands=tuple(d for _, d in pairs))


def _short(trial: HeldTrial, cut: Cut) -> Cut | None:
    ring = ring_at_face(trial, cut) if cut.kind == "face" else None
    if ring is None:
        return cut
    room = cut.diameter / 2 - ring.outer
    return replace(cut, length=min(cut.length, room)) if room > NEAR else None
