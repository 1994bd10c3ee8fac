"""The mouths of the bore: the chamfer in which a facing tool stops, short of the mandrel."""

from __future__ import annotations

from borewright.cutting.stock import face_stock
from borewright.planning.taper.trial import Trial
from borewright.quantities.si import Metre

CHAMFER = {"inch": 0.0254 / 64, "mm": 0.0005}
"""Leg (m) of a chamfer that keeps the facing tool off the mandrel; ours."""

SMALLEST = {"inch": 0.005 * 0.0254, "mm": 0.0001}
"""A short hub gets a fortieth of its bore, in steps of this (m): both cost a twentieth of it; ours."""


def mouth_leg(trial: Trial) -> Metre:
    """Leg (m) of the chamfer to put on both mouths before mounting, where none is stated: what facing
    to length takes off the face, and a little more."""
    step = SMALLEST[trial.job.units]
    short = max(1, int(trial.hold.bears / 40 / step)) * step
    return min(CHAMFER[trial.job.units], short) + (face_stock(trial.job) or 0.0)


def mouth_legs(trial: Trial) -> tuple[Metre, Metre]:
    """Those at the leading face and at the far one (m): as stated, else as they will be cut."""
    stated = trial.job.work.chamfers.legs
    legs = [leg or mouth_leg(trial) for leg in stated]
    return (legs[0], legs[1]) if trial.hold.leading == "A" else (legs[1], legs[0])
