"""The schedule gone through once: how warm work and mandrel are, and what is left of the grip."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Draws
from borewright.mechanics.num import Floats
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.planning.heating.bodies import Bodies, bodies_of
from borewright.planning.heating.bursts import Burst, Stretch, bursts_of, stretches
from borewright.planning.heating.loosened import Gripped, Loosened, counting, loosened
from borewright.planning.taper.trial import Trial
from borewright.quantities.si import Kelvin, Second

NO_HEAT = np.zeros(1)


@dataclass(frozen=True, slots=True, eq=False)
class Heater:
    """What a run needs to know of a trial: two bodies, what warmth leaves, the pause between cuts."""

    bodies: Bodies
    hold: Loosened
    pause: Second

    def counts(self, warmth: Floats) -> Draws:
        """Warmth of the work alone (K) that would take as much grip as this of both (2, n)."""
        return counting(self.hold, warmth)

    def stand(self, start: Floats, seconds: Second) -> Floats:
        """Warmth after so many seconds in the air with no cut."""
        return self.bodies.dry.after(start, NO_HEAT, seconds)

    def cut(self, start: Floats, burst: Burst) -> Floats:
        """Warmth at the end of a cut, passes and pauses."""
        for s in stretches(burst):
            start = self.on(start, s)
        return start

    def on(self, start: Floats, stretch: Stretch) -> Floats:
        """Warmth at the end of a stretch."""
        pace = self.bodies.wet if stretch.coolant else self.bodies.dry
        return pace.after(start, stretch.watts, stretch.seconds)


@dataclass(frozen=True, slots=True, eq=False)
class Heated:
    """One cut of a run: when it begins and ends (s), warmth (2, n) of both bodies then.

    `worst` (n,): warmth that counts, at whichever end it is more; `share` (n,): share of the cold
    grip then; `slip` (n,): margin against slipping then.
    """

    burst: Burst
    wait: Second
    begins: Second
    ends: Second
    before: Floats
    after: Floats
    worst: Draws
    share: Draws
    slip: Draws

    @property
    def warm_before(self) -> Kelvin:
        """Likely warmth of the work over the mandrel at its beginning."""
        return float(self.before[0, 0] - self.before[1, 0])

    @property
    def warm_after(self) -> Kelvin:
        """The same at its end."""
        return float(self.after[0, 0] - self.after[1, 0])

    @property
    def grip_left(self) -> tuple[float, float]:
        """Share of the cold grip where it is least, likely and in the poor case."""
        return likely(self.share), low_end(self.share)


@dataclass(frozen=True, slots=True, eq=False)
class HeatRun:
    """A schedule gone through: its cuts in order."""

    heater: Heater
    cuts: tuple[Heated, ...]

    @property
    def seconds(self) -> Second:
        """From the first chip to the last, pauses and waits included."""
        return self.cuts[-1].ends if self.cuts else 0.0

    @property
    def lowest(self) -> Heated | None:
        """The cut that leaves the least of the grip in the likely case; None without any."""
        return min(self.cuts, key=lambda c: likely(c.share), default=None)

    @property
    def hottest(self) -> tuple[Kelvin, Kelvin]:
        """Warmth of the work over the room at the hottest end of a cut, likely and in the poor case."""
        ends = [c.after[0] for c in self.cuts]
        return max(likely(w) for w in ends), max(high_end(w) for w in ends)


def heater_of(trial: Trial | Gripped) -> Heater:
    """The two bodies of a trial, and what warmth leaves of its grip."""
    return Heater(bodies_of(trial), loosened(trial), trial.tables.allowance("cut_pause").best)


def heat_run(
    trial: Trial | Gripped,
    bursts: Sequence[Burst] | None = None,
    waits: Sequence[Second] | None = None,
    heater: Heater | None = None,
) -> HeatRun:
    """The cuts of a trial (or `bursts`) in order, `waits` (s) before each, none where not stated."""
    heater = heater or heater_of(trial)
    taken = bursts_of(trial) if bursts is None else bursts
    found: list[Heated] = []
    for place, burst in enumerate(taken):
        found.append(
            take(heater, found[-1] if found else None, burst, waits[place] if waits else 0)
        )
    return HeatRun(heater, tuple(found))


def take(heater: Heater, last: Heated | None, burst: Burst, wait: Second) -> Heated:
    """The next cut after the `last`, so many seconds of waiting beyond the usual pause before it."""
    if last is None:
        begins, before = wait, heater.bodies.cold
    else:
        begins = last.ends + heater.pause + wait
        before = heater.stand(last.after, heater.pause + wait)
    return take_from(heater, before, begins, burst, wait)


def take_from(
    heater: Heater, before: Floats, begins: Second, burst: Burst, wait: Second = 0.0
) -> Heated:
    """A cut begun at a time (s) with both bodies so warm."""
    after = heater.cut(before, burst)
    worst = np.maximum(heater.counts(before), heater.counts(after))
    share = heater.hold.share(worst)
    ends = begins + burst.whole
    slip = heater.hold.slip(burst.demand, share)
    return Heated(burst, wait, begins, ends, before, after, worst, share, slip)
