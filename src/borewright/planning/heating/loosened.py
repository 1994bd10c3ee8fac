"""What is left of a grip when the work is so warm and the mandrel so warm.

Both warmths come to one number: the warmth of the work alone, on a cool mandrel, that would take
as much squeeze, T_w - follows T_m, where `follows` is the mandrel's expansion over the work's. It
is taken as 1 at most: a mandrel that grows more than its work tightens, and nothing is counted for
that.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, Protocol

import numpy as np

from borewright.answer.held import Grip, Held
from borewright.answer.records import Demand, Draws
from borewright.mechanics.num import Floats
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.margins import slip_margins
from borewright.planning.weighing.turned import Turned
from borewright.quantities.si import PerKelvin

COOL_BARS: Final = frozenset({"expanding", "warm-fit"})
"""Ways whose `half_warm` takes the bar as cool: its own warmth gives some of the squeeze back. With
the others the work's warmth alone counts: a bond softens by it, and a soft bar's lag is in it."""

HELD_BAR = "steel-1018"
"""The metal that those ways' bars are of."""

LEAST_SHARE = 1e-9
"""A grip that is all gone is taken as so little: what is endless stays so."""


class Gripped(Turned, Protocol):
    """A hold of any way but the taper, with its cuts settled."""

    @property
    def held(self) -> Held:
        """What the way makes of the job."""

    @property
    def grip(self) -> Grip:
        """What it can give, cold."""


class Loosened(Protocol):
    """What warmth leaves of one hold."""

    @property
    def follows(self) -> float:
        """How much of the mandrel's warmth makes good for the work's, 0 to 1."""

    def share(self, counts: Draws) -> Draws:
        """Share of the cold grip left at warmth that `counts` (K)."""

    def likely_shares(self, counts: Floats) -> Floats:
        """The same in the likely case alone, at many warmths."""

    def slip(self, demand: Demand, share: Draws) -> Draws:
        """Margin against slipping with this share of the cold grip."""


def counting(hold: Loosened, warmth: Floats) -> Draws:
    """The warmth that counts (K) of work and mandrel (2, n)."""
    return np.asarray(warmth[0] - hold.follows * warmth[1])


@dataclass(frozen=True, slots=True, eq=False)
class LoosenedTaper:
    """Work on a plain taper: what it loses is read from the joint's own curves."""

    trial: Trial
    follows: float
    per_kelvin: float

    def share(self, counts: Draws) -> Draws:
        hold, cold = self.trial.hold, self.trial.grip.pressed_force
        lost = hold.facts.lost_rough + self.per_kelvin * counts
        warm = hold.round_the_bore(hold.state(self.trial.chosen.travel, lost))
        return np.asarray(np.where(cold > 0, warm / np.where(cold > 0, cold, 1.0), 0.0))

    def likely_shares(self, counts: Floats) -> Floats:
        """Along straight lines between a few warmths."""
        known = np.linspace(0.0, max(float(np.max(counts)), 1e-3), 13)
        hold, cold = self.trial.hold, float(self.trial.grip.pressed_force[0])
        rough, travel = float(hold.facts.lost_rough[0]), self.trial.chosen.travel
        forces = hold.likely_forces(np.full_like(known, travel), rough + self.per_kelvin * known)
        return np.interp(counts, known, np.array(forces) / cold if cold > 0 else np.zeros(13))

    def slip(self, demand: Demand, share: Draws) -> Draws:
        grip = self.trial.grip
        return slip_margins(replace(grip, normal_force=grip.pressed_force * share), demand)


@dataclass(frozen=True, slots=True, eq=False)
class LoosenedHold:
    """Work held any other way: the grip goes in step with the warmth, half of it at `half_warm`."""

    grip: Grip
    follows: float

    def share(self, counts: Draws) -> Draws:
        return np.asarray(np.clip(1 - 0.5 * counts / self.grip.half_warm, 0.0, 1.0))

    def likely_shares(self, counts: Floats) -> Floats:
        half = float(np.atleast_1d(self.grip.half_warm)[0])
        return np.asarray(np.clip(1 - 0.5 * counts / half, 0.0, 1.0))

    def slip(self, demand: Demand, share: Draws) -> Draws:
        left, g = np.maximum(share, LEAST_SHARE), self.grip
        warm = replace(
            g, torque=g.torque * left, thrust_in=g.thrust_in * left, thrust_out=g.thrust_out * left
        )
        return warm.slip_margin(demand)


def loosened(trial: Trial | Gripped) -> Loosened:
    """What warmth leaves of a trial's hold."""
    of, work = trial.tables.material_range, trial.job.work.material
    own: PerKelvin = of(work, "expansion").best
    if isinstance(trial, Trial):
        bar = of(trial.mandrel.material, "expansion").best
        return LoosenedTaper(trial, min(bar / own, 1.0), own * trial.grip.diameter)
    cool = trial.held.way in COOL_BARS
    return LoosenedHold(trial.grip, min(of(HELD_BAR, "expansion").best / own, 1.0) if cool else 0.0)
