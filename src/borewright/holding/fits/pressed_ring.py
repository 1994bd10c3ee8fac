"""A bore pressed from within by a sum of radial force: stress, growth, lobes, what warmth takes.

Thick rings by Lamé for growth and stress, thin rings by harmonics for the lobes between the places
that press; the thinnest ring round the bore counts for stress, the stoutest for the outside.
Weakness: pressure as even along the bore; slices do not help each other.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from borewright.answer.records import Draws
from borewright.holding.part import Part
from borewright.mechanics.ring_lobes import THICKEST, ThinRing, lobe_height
from borewright.mechanics.rings import Elastic, hoop_factor, outside_growth, ring_compliance
from borewright.mechanics.spread import likely
from borewright.quantities.si import Metre, Newton

RESERVE = {True: 4.0, False: 2.0}
"""What the work must stand over what the push asks, brittle or not: pushed no harder (ours)."""

SHARE_OF_TOLERANCE = 0.5
"""The work is pushed no harder than springs this share of its tolerance (ours)."""


@dataclass(frozen=True)
class PressedRing:
    """A part whose bore is pressed over `length` (m) in so many `places`, 0 for all round."""

    part: Part
    length: Metre
    places: int = 0

    @cached_property
    def _outsides(self) -> list[Metre]:
        return [p.outside for p in self.part.work.pieces if p.inside is None]

    @property
    def thinnest(self) -> Metre:
        return min(self._outsides)

    def pressure(self, normal: Draws) -> Draws:
        """Even pressure (Pa) of a normal force (N)."""
        return np.asarray(normal / (np.pi * self.part.bore * self.length))

    def stress(self, normal: Draws) -> Draws:
        """Hoop tension at the bore of brittle work, von Mises of ductile (Pa)."""
        h = float(hoop_factor(np.asarray(self.part.bore / self.thinnest)))
        factor = h if self.part.brittle else np.sqrt(h * h + h + 1)
        return np.asarray(self.pressure(normal) * factor)

    def growth(self, normal: Draws) -> Draws:
        """How much (m, on diameter) the outside grows: it comes off so much smaller."""
        outside = max(self._outsides)
        ratio = self.part.bore / outside
        modulus = self.part.elastic.modulus
        return np.asarray(outside_growth(self.pressure(normal), outside, ratio, modulus))

    def lobes(self, normal: Draws) -> Draws:
        """How much (m, on diameter) it springs out of round between the places that press."""
        bore, outside = self.part.bore, max(self._outsides)
        if not self.places or 2 * (outside - bore) / (outside + bore) > THICKEST:
            return np.zeros_like(normal)
        ring = ThinRing(bore, outside, self.part.length, 1.0)
        each = 2 * lobe_height(ring, 1.0, self.places)
        return np.asarray(each * normal / self.part.elastic.modulus)

    def springs(self, normal: Draws) -> Draws:
        """Both together (m, on diameter)."""
        return np.asarray(self.growth(normal) + self.lobes(normal))

    def squeeze(self, normal: Draws) -> Draws:
        """Interference (m, on diameter) that a solid steel shaft would need for this pressure."""
        of = self.part.tables.material_range
        steel = Elastic(of("steel-1018", "modulus").best, of("steel-1018", "poisson").best)
        per = ring_compliance(self.part.bore, self.thinnest, self.part.elastic, steel)
        return np.asarray(self.pressure(normal) * self.part.bore * per)

    def half_warm(self, normal: Draws, lag: Draws | float = 1.0) -> Draws:
        """Warmth of the work (K) that takes half of that squeeze.

        `lag`: how far a steel shaft stays behind, over that warmth; 1 is the work warm alone, which
        errs low. Endless where the shaft, though it lags, grows as much as the bore.
        """
        steel = self.part.tables.material_range("steel-1018", "expansion").best
        opens = self.part.range("expansion").best - steel * (1.0 - np.asarray(lag))
        takes = 2 * np.maximum(opens, 0.0) * self.part.bore
        with np.errstate(divide="ignore"):
            return np.asarray(self.squeeze(normal) / takes)

    def most_normal(self) -> Newton:
        """Normal force (N) that the metal and the finished size bear, likely case."""
        one = np.ones_like(self.part.strength)
        by_stress = likely(self.part.strength / self.stress(one)) / RESERVE[self.part.brittle]
        stated = self.part.work.finished.tolerance
        allowed = stated or self.part.tables.allowance("usual_tolerance").best
        by_size = SHARE_OF_TOLERANCE * allowed / likely(self.springs(one))
        return min(by_stress, by_size)
