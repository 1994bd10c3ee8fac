"""Facing towards the bore at one speed wastes time near it: where to change to the next faster one."""

from __future__ import annotations

import math
from collections.abc import Iterator

from borewright.answer.records import Cut
from borewright.mechanics.spread import likely
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.power import motor_power
from borewright.quantities.si import Metre, RevPerSecond, Second

WORTH: Second = 120.0
"""Least time saved that is worth reaching for the lever (ours)."""

LONG: Second = 4 * 3600.0
"""Cutting longer than this is said, whatever the answer (ours)."""


def shift_words(trial: Trial | HeldTrial) -> Iterator[str]:
    """For the slowest of the faces: at which diameter the next speed is right too."""
    faces = [found for cut in trial.cuts if (found := _shift(trial, cut)) is not None]
    if not faces:
        return
    saved, at, speed = max(faces)
    show = trial.show
    yield (
        f"Facing: from about {show.length(at)} across inwards {show.spindle(speed)} is right too; stop the feed, change, and "
        f"save about {saved / 60:.0f} minutes a face."
    )


def _shift(trial: Trial | HeldTrial, cut: Cut) -> tuple[Second, Metre, float] | None:
    """Seconds saved in all passes of a face, the diameter, and the turns a second."""
    next_one = _next_speed(trial, cut)
    if cut.kind != "face" or cut.id.startswith("cut-") or next_one is None:
        return None
    (speed, at), inner = next_one, cut.diameter - 2 * cut.length
    path = min(at, cut.diameter) - inner
    if path <= 0:
        return None
    saved = cut.passes * path / 2 / cut.feed * (1 / cut.spindle_speed - 1 / speed)
    return (saved, at, speed) if saved > WORTH and at < cut.diameter else None


def step_words(trial: Trial | HeldTrial) -> Iterator[str]:
    """For the longest of the steps: from which diameter on the next speed is right too."""
    steps = [found for cut in trial.cuts if (found := _step_shift(trial, cut)) is not None]
    if not steps:
        return
    saved, at, speed = max(steps)
    show = trial.show
    yield (
        f"Roughing steps: from about {show.length(at)} across on {show.spindle(speed)} is right too, and saves about "
        f"{saved / 60:.0f} minutes."
    )


def _step_shift(trial: Trial | HeldTrial, cut: Cut) -> tuple[Second, Metre, float] | None:
    """Seconds saved by the passes that begin inside the diameter at which the next speed is right."""
    next_one = _next_speed(trial, cut)
    if cut.kind != "turn" or cut.span is None or cut.leaves is None or next_one is None:
        return None
    speed, at = next_one
    passes = math.floor((min(at, cut.diameter) - cut.leaves) / (2 * cut.depth) + 1e-6)
    saved = passes * cut.length / cut.feed * (1 / cut.spindle_speed - 1 / speed)
    return (saved, at, speed) if saved > WORTH and at < cut.diameter else None


def _next_speed(trial: Trial | HeldTrial, cut: Cut) -> tuple[float, Metre] | None:
    """The next faster speed of the lathe, and the diameter at which it is right; None at the fastest."""
    machine = trial.job.shelf.machine
    faster = [s for s in machine.speeds if s > cut.spindle_speed * (1 + 1e-9)]
    if not faster or not _pulls(trial, cut, min(faster)):
        return None
    tool = trial.tables.cut_defaults(trial.job.work.material).tool
    surface = trial.tables.cutting_speed(trial.job.work.material, tool).best
    return min(faster), surface / (math.pi * min(faster))


def _pulls(trial: Trial | HeldTrial, cut: Cut, spindle: RevPerSecond) -> bool:
    """Whether the lathe has the power for the same surface speed in another gear."""
    motor = motor_power(trial.job.shelf.machine, spindle)
    if motor is None:
        return True
    demand = trial.demands[trial.cuts.index(cut)]
    asked = likely(demand.tangential) * cut.cutting_speed
    return motor * trial.tables.allowance("drive_share").best >= asked


def long_words(trial: Trial | HeldTrial, seconds: Second) -> Iterator[str]:
    """Said where the cutting takes longer than half a day."""
    if seconds > LONG:
        yield (
            f"The cutting alone takes about {seconds / 3600:.0f} hours: look at the other ways, a stiffer one cuts deeper, or "
            "take the bulk off before it is mounted."
        )
