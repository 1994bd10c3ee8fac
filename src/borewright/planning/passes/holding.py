"""What a hold under trial says of one cut: slip, rock, bend, and what warmth leaves of it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from typing import Protocol

import numpy as np

from borewright.answer.records import Cut, Demand, Draws
from borewright.job.records import Job
from borewright.mechanics.spread import likely
from borewright.planning.held.held_bend import held_swing
from borewright.planning.held.held_questions import WALK
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.questions.bend import springs_back
from borewright.planning.questions.heat import half_grip
from borewright.planning.taper.bending import size_error_of, swing_of
from borewright.planning.taper.travel import with_drive
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.chatter import Swing
from borewright.planning.weighing.margins import (
    rock_arm,
    slip_margins,
    tilt_of,
    walk_of,
)
from borewright.planning.weighing.served import Asking
from borewright.quantities.show import Show
from borewright.quantities.si import Kelvin, Ratio
from borewright.reference.library import Tables


class Holding(Protocol):
    """A taper or any other hold, asked of one cut."""

    @property
    def job(self) -> Job: ...

    @property
    def tables(self) -> Tables: ...

    @property
    def show(self) -> Show: ...

    @property
    def cuts(self) -> tuple[Cut, ...]: ...

    @property
    def swing(self) -> Swing | None:
        """What chatters on the work side; None where nothing gives."""

    def bends(self, demand: Demand) -> Draws:
        """Size error (m, on diameter) that a cut leaves by bending."""

    @property
    def springs(self) -> Draws:
        """Error (m, on diameter) that comes when the hold lets go."""

    def demand(self, cut: Cut) -> Demand:
        """What a cut asks of this hold."""

    def slip(self, demand: Demand, left: Ratio) -> Draws:
        """Margin against slipping with so much of the grip left."""

    def rock(self, demand: Demand, left: Ratio) -> Draws:
        """Margin against rocking with so much of the grip left."""

    def left_at(self, warm: Kelvin) -> Ratio:
        """Likely share of the grip counted on that is left with the work so much warmer (K)."""

    @property
    def half_warm(self) -> Kelvin:
        """Likely warmth of the work (K) that takes half of the grip; infinite where none does."""

    def taken(self, cuts: tuple[Cut, ...]) -> Trial | HeldTrial:
        """The trial with these cuts."""


@dataclass(frozen=True, eq=False)
class OnTaper:
    """A plain taper mandrel at its chosen travel."""

    trial: Trial

    @property
    def job(self) -> Job:
        return self.trial.job

    @property
    def tables(self) -> Tables:
        return self.trial.tables

    @property
    def show(self) -> Show:
        return self.trial.show

    @property
    def cuts(self) -> tuple[Cut, ...]:
        return self.trial.cuts

    @cached_property
    def swing(self) -> Swing | None:
        return swing_of(self.trial)

    def bends(self, demand: Demand) -> Draws:
        return size_error_of(self.trial, demand)

    @cached_property
    def springs(self) -> Draws:
        return springs_back(self.trial)

    def demand(self, cut: Cut) -> Demand:
        return with_drive((self._asks.demand(cut),), self.trial.drive)[0]

    @cached_property
    def _asks(self) -> Asking:
        return Asking(self.job, self.tables)

    def slip(self, demand: Demand, left: Ratio) -> Draws:
        return slip_margins(self.trial.grip, replace(demand, grip_left=demand.grip_left * left))

    def rock(self, demand: Demand, left: Ratio) -> Draws:
        arm = rock_arm(self.trial.grip, self.trial.hold.length)
        asked = walk_of(self.trial.hold.facts, demand) * tilt_of(demand, arm)
        return np.asarray(self._lift * (demand.grip_left * left) / asked)

    @cached_property
    def _lift(self) -> Draws:
        return self.trial.hold.lift_moment(self.trial.grip.setting)

    def left_at(self, warm: Kelvin) -> Ratio:
        counted = likely(self.trial.grip.normal_force)
        if counted <= 0:
            return 1.0
        facts, material = self.trial.hold.facts, self.job.work.material
        expansion = self.tables.material_range(material, "expansion").best
        lost = likely(facts.lost_rough) + expansion * self.trial.grip.diameter * warm
        return min(1.0, self.trial.hold.likely_force(self.trial.chosen.travel, lost) / counted)

    @cached_property
    def half_warm(self) -> Kelvin:
        return half_grip(self.trial)

    def taken(self, cuts: tuple[Cut, ...]) -> Trial:
        demands = tuple(self.demand(c) for c in cuts)
        return replace(self.trial, chosen=replace(self.trial.chosen, cuts=cuts, demands=demands))


@dataclass(frozen=True, eq=False)
class Otherwise:
    """Any other hold."""

    trial: HeldTrial

    @property
    def job(self) -> Job:
        return self.trial.job

    @property
    def tables(self) -> Tables:
        return self.trial.tables

    @property
    def show(self) -> Show:
        return self.trial.show

    @property
    def cuts(self) -> tuple[Cut, ...]:
        return self.trial.cuts

    @cached_property
    def swing(self) -> Swing | None:
        return held_swing(self.trial)

    def bends(self, demand: Demand) -> Draws:
        return np.asarray(2 * demand.radial / self.trial.grip.stiffness)

    @property
    def springs(self) -> Draws:
        return self.trial.grip.springs

    def demand(self, cut: Cut) -> Demand:
        return self._asks.demand(cut)

    @cached_property
    def _asks(self) -> Asking:
        return Asking(self.job, self.tables)

    def slip(self, demand: Demand, left: Ratio) -> Draws:
        return self.trial.grip.slip_margin(demand) * left

    def rock(self, demand: Demand, left: Ratio) -> Draws:
        arm = self.trial.held.arm or self.job.work.length
        return np.asarray(self.trial.grip.tilt * left / (WALK * tilt_of(demand, arm)))

    def left_at(self, warm: Kelvin) -> Ratio:
        half = likely(self.trial.grip.half_warm)
        return max(0.0, 1.0 - 0.5 * warm / half) if half > 0 else 1.0

    @property
    def half_warm(self) -> Kelvin:
        return likely(self.trial.grip.half_warm)

    def taken(self, cuts: tuple[Cut, ...]) -> HeldTrial:
        demands = tuple(self.demand(c) for c in cuts)
        return replace(self.trial, cuts=cuts, demands=demands)


def holding_of(trial: Trial | HeldTrial) -> Holding:
    """The hold of a trial, as the passes ask it."""
    return OnTaper(trial) if isinstance(trial, Trial) else Otherwise(trial)
