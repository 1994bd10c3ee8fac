"""The part as a way of holding sees it: bore, faces, what sticks out, what it is made of."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from borewright.answer.held_picture import HeldRing, Role
from borewright.answer.records import Draws
from borewright.answer.streams import Stream, positive
from borewright.holding.bores.bore_reading import bore_half_band
from borewright.holding.bores.bore_shape import out_of_round
from borewright.job.records import Job, Piece, Work
from borewright.mechanics.rings import Elastic
from borewright.mechanics.spread import COUNT, normal_draws, standard_normals
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

WORN_OVAL = 0.05e-3
"""Difference of readings (m) at one depth from which a bore counts as worn, not as made (ours)."""

CLEAR_OF_TOOL = 0.98
"""Widest washer or shoulder over the finished outside, where that is what is turned (ours)."""

FACE_MEETS = 1e-7
"""Rings (m) that end so close to a face reach it."""


@dataclass(frozen=True)
class Part:
    """The work of a job, with the tables it is looked up in. Lengths in m."""

    job: Job
    tables: Tables

    @property
    def work(self) -> Work:
        return self.job.work

    @property
    def show(self) -> Show:
        return Show(self.job.units)

    @cached_property
    def bore(self) -> Metre:
        """The smallest size read: the largest plug that enters."""
        return min([self.work.bore.size, *(r.size for r in self.work.bore.readings)])

    @cached_property
    def bore_band(self) -> Metre:
        """How well the bore is known, either way."""
        return bore_half_band(self.job, self.tables)

    @property
    def length(self) -> Metre:
        return self.work.length

    @property
    def outside(self) -> Metre:
        return self.work.outside

    @property
    def oval(self) -> bool:
        """True where the bore is worn so far out of round that nothing round finds its middle."""
        return out_of_round(self.work.bore) > WORN_OVAL

    @cached_property
    def elastic(self) -> Elastic:
        """Modulus as draws (Pa) and Poisson's ratio."""
        return Elastic(
            self.drawn(self.range("modulus"), Stream.MODULUS), self.range("poisson").best
        )

    @property
    def brittle(self) -> bool:
        return self.tables.material(self.work.material).brittle

    @cached_property
    def strength(self) -> Draws:
        """Tensile strength of brittle metal, yield of ductile (Pa)."""
        return self.drawn(self.range("tensile" if self.brittle else "yield"), Stream.STRENGTH)

    def range(self, quantity: str) -> Range:
        """A property of the work's metal."""
        return self.tables.material_range(self.work.material, quantity)

    def fact(self, name: str, stream: Stream) -> Draws:
        """A figure of the table holding_facts, as draws."""
        return self.drawn(self.tables.holding_fact(name), stream)

    def fact_with_zero(self, name: str, stream: Stream) -> Draws:
        """A figure that may be nothing: its draws, none below 0."""
        r = self.tables.holding_fact(name)
        drawn = normal_draws(r.low, r.best, r.high, standard_normals(stream))
        return np.maximum(drawn, 0.0)

    def drawn(self, r: Range, stream: Stream) -> Draws:
        return positive(r.low, r.best, r.high, stream)

    def ring_at(self, face: str) -> Piece:
        """The ring round the bore at a face, A or B: the hub, or the work itself if plain."""
        at = 0.0 if face == "A" else self.length
        round_bore = [p for p in self.work.pieces if p.inside is None]
        edge = [p for p in round_bore if abs((p.start if face == "A" else p.end) - at) < FACE_MEETS]
        return max(edge or round_bore, key=lambda p: p.outside)

    def sticks_out(self, face: str) -> Metre:
        """How far the ring round the bore stands out beyond all that is wider, at a face."""
        own = self.ring_at(face)
        wider = [p for p in self.work.pieces if p.outside > own.outside * (1 + 1e-9)]
        if not wider:
            return 0.0
        if face == "A":
            return max(0.0, min(p.start for p in wider) - own.start)
        return max(0.0, own.end - max(p.end for p in wider))

    def lies_back(self, face: str) -> Metre:
        """How far the ring round the bore lies back behind the end of the work, at a face."""
        own = self.ring_at(face)
        back = own.start if face == "A" else self.length - own.end
        return back if back > FACE_MEETS else 0.0

    def clear_of_tool(self, face: str) -> Metre:
        """The widest (m) that may press on a face: no wider than its ring, inside of the cut."""
        ring, whole = self.ring_at(face).outside, self.work.outside
        turned = ring >= whole * (1 - 1e-9)
        done = min(self.work.finished.outside or whole, whole)
        return CLEAR_OF_TOOL * done if turned else ring

    @cached_property
    def rim_inside(self) -> Metre | None:
        """Inside of the outermost ring, where it is not the bore."""
        rim = max(self.work.pieces, key=lambda p: p.outside)
        return rim.inside

    def rings(self, leading: str, start: Metre) -> tuple[HeldRing, ...]:
        """The work as drawn, its leading face (A or B, towards the headstock) at z = `start`."""
        return tuple(self._ring(p, leading, start) for p in self.work.pieces)

    def _ring(self, p: Piece, leading: str, start: Metre) -> HeldRing:
        a, b = (p.start, p.end) if leading == "A" else (self.length - p.end, self.length - p.start)
        inner = self.bore if p.inside is None else p.inside
        return HeldRing(Role.WORK, start + a, start + b, p.outside / 2, inner / 2)


def endless() -> Draws:
    """Draws of something that never gives out."""
    return np.full(COUNT + 1, np.inf)


def none_at_all() -> Draws:
    """Draws of something that is not there."""
    return np.zeros(COUNT + 1)
