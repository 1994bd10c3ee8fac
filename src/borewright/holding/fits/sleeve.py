"""The slit sleeve of a usual expanding mandrel: proportions that are ours, stiffness by beams.

Slots run in from either end in turn, so that it opens alike at both ends. What one mandrel covers
is a row of the table; how far it is open in this bore is drawn, unless its owner says its sizes.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from borewright.answer.records import Draws
from borewright.answer.streams import Stream
from borewright.holding.part import Part
from borewright.mechanics.sleeve_strips import Strips, strip_opening_force, strip_stress
from borewright.quantities.si import Metre, MetrePerMetre
from borewright.reference.drives import Expanding


@dataclass(frozen=True)
class Sleeve:
    """The sleeve for the bore of a part; `smallest` (m) where its owner says it."""

    part: Part
    smallest: Metre | None = None

    def _fact(self, name: str) -> float:
        return self.part.tables.holding_fact(name).best

    @cached_property
    def usual(self) -> Expanding:
        """The row of its size; beyond the sizes listed, that of the nearest."""
        rows = self.part.tables.table("expanding_ranges").rows
        least, most = rows[0].number("over"), rows[-1].number("up_to")
        return self.part.tables.expanding(min(max(self.part.bore, least), most))

    @property
    def taper(self) -> MetrePerMetre:
        """Of its cone, on diameter."""
        return self.usual.pin_taper

    @property
    def length(self) -> Metre:
        share = self._fact("sleeve_length_share") * self.part.bore
        return max(share, self._fact("sleeve_length_least"))

    @property
    def wall(self) -> Metre:
        return self._fact("sleeve_wall_share") * self.part.bore

    @property
    def cone(self) -> Metre:
        """Mean diameter of the cone."""
        return self.part.bore - 2 * self.wall

    @property
    def segments(self) -> int:
        """Places that press at an end: strips are joined two by two there."""
        return int(self._fact("sleeve_slots")) // 2

    @cached_property
    def strips(self) -> Strips:
        bridge = self._fact("sleeve_bridge_share") * self.length
        slot = self._fact("sleeve_slot_share") * self.part.bore
        slots = int(self._fact("sleeve_slots"))
        middle = self.part.bore - self.wall
        return Strips(middle, self.wall, slots, slot, self.length - 2 * bridge, bridge)

    @cached_property
    def opening(self) -> Draws:
        """How far it is open in this bore, on diameter."""
        drawn = self.part.fact("sleeve_open_share", Stream.SETTING) * self.usual.covers.best
        if self.smallest is None:
            return drawn
        return np.minimum(drawn, max(self.part.bore - self.smallest, 0.0))

    @cached_property
    def _steel(self) -> tuple[float, float]:
        of = self.part.tables.material_range
        return of("steel-1045", "modulus").best, of("steel-1045", "poisson").best

    @cached_property
    def opens_at(self) -> Draws:
        """Radial force (N) that opens it so far; the stiff reading leaves less for the bore."""
        return np.asarray(strip_opening_force(self.strips, self.opening, *self._steel)[1])

    @cached_property
    def stress_margin(self) -> Draws:
        """What its steel stands over its bending."""
        bent = strip_stress(self.strips, np.maximum(self.opening, 1e-9), *self._steel)
        return np.asarray(self.part.fact("sleeve_strength", Stream.NOTCH) / bent)
