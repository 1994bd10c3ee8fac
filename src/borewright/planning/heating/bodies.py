"""Work and the bar it sits on as two bodies: what they hold, what they lose, what passes between.

The bar is the whole mandrel at one temperature. Heat reaches it through the joint and then along
its free length: at a steady pace a free end of length l lags by l / (3 k A) on the average (the
mean of a bar heated at one end). So the metal just under the bore is in truth warmer than the bar
is taken to be, and the grip left is read low.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from borewright.answer.streams import Stream, positive
from borewright.job.records import Mandrel
from borewright.mechanics.num import Floats
from borewright.mechanics.spread import likely
from borewright.mechanics.two_bodies import Pace, Pair, pace_of
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.turned import Turned
from borewright.planning.weighing.warmed import loss_to, work_body
from borewright.quantities.si import Metre, SquareMetre, WattPerKelvin

LEAST_CONTACT: Metre = 1e-3
"""A grip that bears on less than this passes heat as if it bore on so much."""

BAR_OVER_WORK = 3.0
"""Length of a bar that nobody states, over that of the work on it (ours)."""

BAR_METAL = "steel-1018"
"""What a bar is of that nobody states."""


@dataclass(frozen=True, slots=True)
class Bar:
    """A round bar: its ground part and two equal ends (m), the hole through it, its metal."""

    diameter: Metre
    length: Metre
    material: str
    end_diameter: Metre = 0.0
    end_length: Metre = 0.0
    hole: Metre = 0.0

    @property
    def whole(self) -> Metre:
        return self.length + 2 * self.end_length

    @property
    def section(self) -> SquareMetre:
        return float(np.pi / 4 * (self.diameter**2 - self.hole**2))

    @property
    def volume(self) -> float:
        ends = np.pi / 4 * (self.end_diameter**2 - self.hole**2) * 2 * self.end_length
        return float(self.section * self.length + max(ends, 0.0))

    def bare(self, covered: Metre) -> SquareMetre:
        """Its outside where no work covers it."""
        ground = self.diameter * max(self.length - covered, 0.0)
        return float(np.pi * (ground + 2 * self.end_diameter * self.end_length))


@dataclass(frozen=True, eq=False)
class Bodies:
    """Two bodies in a shop: `air` and `stream` (W/m²K) take heat off both, the centers off the bar."""

    pair: Pair
    work_area: SquareMetre
    bar_area: SquareMetre
    centers: WattPerKelvin
    air: float
    stream: float

    def losses(self, *, coolant: bool) -> tuple[float, float]:
        """What both lose (W/K). The bar is taken to cool no slower than its work.

        One that did would be the warmer of the two after a wait and tighten the joint; nothing is
        counted for that.
        """
        per_area = self.stream if coolant else self.air
        work = per_area * self.work_area
        bar = per_area * self.bar_area + self.centers
        return work, max(bar, work * float(self.pair.mandrel) / float(self.pair.work))

    @cached_property
    def dry(self) -> Pace:
        return pace_of(self.pair, *self.losses(coolant=False))

    @cached_property
    def wet(self) -> Pace:
        return pace_of(self.pair, *self.losses(coolant=True))

    @property
    def cold(self) -> Floats:
        """Nothing warm yet, shape (2, n)."""
        return np.zeros((2, len(np.atleast_1d(self.pair.across))))

    def likely_pace(self, *, coolant: bool) -> Pace:
        """The pace of the likely case alone."""
        pair = Pair(self.pair.work, self.pair.mandrel, np.atleast_1d(self.pair.across)[:1])
        return pace_of(pair, *self.losses(coolant=coolant))


def bodies_of(trial: Turned) -> Bodies:
    """The two bodies of a trial: its taper mandrel, or a bar of the bore's size."""
    if isinstance(trial, Trial):
        return _bodies(trial, bar_of(trial.mandrel), likely(trial.grip.contact_length))
    work = trial.job.work
    bar = Bar(work.bore.size, BAR_OVER_WORK * work.length, BAR_METAL)
    return _bodies(trial, bar, work.length)


def bar_of(mandrel: Mandrel) -> Bar:
    """A mandrel as a bar, its taper left out."""
    middle = (mandrel.small_end + mandrel.large_end) / 2
    ends = mandrel.end_diameter, mandrel.end_length
    return Bar(middle, mandrel.ground_length, mandrel.material, *ends, mandrel.hole)


def _bodies(trial: Turned, bar: Bar, contact: Metre) -> Bodies:
    t, body = trial.tables, work_body(trial)
    density, specific, conducts = (
        t.material_range(bar.material, q).best for q in ("density", "heat_capacity", "conductivity")
    )
    joint = t.allowance("joint_heat")
    touching = np.pi * trial.job.work.bore.size * max(contact, LEAST_CONTACT)
    crosses = touching * positive(joint.low, joint.best, joint.high, Stream.SETTING)
    along = 12 * conducts * bar.section / max(bar.whole - contact, LEAST_CONTACT)
    across = 1 / (1 / crosses + 1 / along)
    return Bodies(
        Pair(body.heat_capacity, float(bar.volume * density * specific), across),
        body.area,
        bar.bare(trial.job.work.length),
        2 * t.allowance("center_heat").best,
        loss_to(trial, coolant=False).best,
        loss_to(trial, coolant=True).best,
    )
