"""Every cut as bursts of heat into the work, with the pauses of a hand between its passes.

Weakness: winding back and setting the dial take every hand another time; the best value is taken,
in the poor case too.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Cut, Demand, Draws
from borewright.planning.weighing.turned import Turned
from borewright.planning.weighing.warmed import heat_into_work, seconds_of
from borewright.quantities.si import Second

TOLD_APART = 6
"""Of more passes than this the first are run as one long one at their mean power, and the last two by
themselves (ours)."""


@dataclass(frozen=True, slots=True, eq=False)
class Burst:
    """One cut as heat: seconds of one pass, W into the work meanwhile, seconds between passes."""

    cut: Cut
    demand: Demand
    seconds: Second
    watts: Draws
    pause: Second

    @property
    def whole(self) -> Second:
        """Seconds from its first chip to its last."""
        return self.cut.passes * self.seconds + (self.cut.passes - 1) * self.pause


@dataclass(frozen=True, slots=True, eq=False)
class Stretch:
    """Seconds with steady heat (W), coolant on or off."""

    seconds: Second
    watts: Draws
    coolant: bool


def bursts_of(trial: Turned) -> tuple[Burst, ...]:
    """The cuts of a trial in order."""
    pairs = zip(trial.cuts, trial.demands, strict=True)
    return tuple(burst_of(trial, cut, demand) for cut, demand in pairs)


def burst_of(trial: Turned, cut: Cut, demand: Demand, seconds: Second | None = None) -> Burst:
    """One cut as heat; `seconds` of one pass where its path is not the whole length or face.

    A wheel or a form cutter goes on without a pause that counts.
    """
    one = seconds_of(trial, cut) / cut.passes if seconds is None else seconds
    pause = trial.tables.allowance("between_passes").best if cut.on_lathe else 0.0
    return Burst(cut, demand, one, heat_into_work(trial, cut, demand), pause)


def stretches(burst: Burst) -> Iterator[Stretch]:
    """The cut from its first chip to its last, as stretches of steady heat."""
    coolant, passes = burst.cut.coolant, burst.cut.passes
    none = np.zeros(1)
    merged = passes - 2 if passes > TOLD_APART else 0
    if merged:
        whole = merged * (burst.seconds + burst.pause) - burst.pause
        yield Stretch(whole, burst.watts * (merged * burst.seconds / whole), coolant)
    for number in range(merged, passes):
        if number and burst.pause:
            yield Stretch(burst.pause, none, coolant)
        yield Stretch(burst.seconds, burst.watts, coolant)
