"""A bore that grips a plain round by friction: what its radial force holds."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Draws
from borewright.answer.streams import Stream
from borewright.holding.part import Part
from borewright.mechanics.slip import slip_torque
from borewright.quantities.si import Metre

EVEN = 12.0
"""Tilt that lifts a fifth of an even grip: force × length / 12 (as the rule lift_moment)."""


@dataclass(frozen=True)
class FrictionFit:
    """A part gripping with a radial force `normal` (N, draws) over `length` (m)."""

    part: Part
    normal: Draws
    length: Metre

    @property
    def friction(self) -> Draws:
        return slip_friction(self.part)

    @property
    def torque(self) -> Draws:
        return np.asarray(slip_torque(self.normal, self.friction, self.part.bore))

    @property
    def along(self) -> Draws:
        return np.asarray(self.friction * self.normal)

    @property
    def tilt(self) -> Draws:
        return np.asarray(self.normal * self.length / EVEN)


def push_friction(part: Part) -> Draws:
    """Friction while it is pushed on, as the job says it is oiled or dry."""
    found = part.tables.friction(part.work.material, part.job.lubrication)
    return part.drawn(found.mu_on, Stream.FRICTION)


def slip_friction(part: Part) -> Draws:
    """Friction when it slips round."""
    found = part.tables.friction(part.work.material, part.job.lubrication)
    return push_friction(part) * part.drawn(found.slip_ratio, Stream.SLIP_RATIO)
