"""The sharp edges that turning leaves on the outside of a part, and by how much each is broken."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from borewright.errors.tree import RefusedInput
from borewright.job.crown_wish import turned_rings
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

if TYPE_CHECKING:
    from borewright.job.records import Piece, Work
    from borewright.job.typed import Reader

NEAR = 1e-9
"""Lengths nearer than this (m) are one."""


@dataclass(frozen=True, slots=True)
class Edge:
    """An outer edge: its place from face A as faced, the outside there (m), and the face that its
    free side looks to, A or B. `end`: it is that of the face itself."""

    at: Metre
    outside: Metre
    looks: str
    end: bool = False


def outer_edges(work: Work) -> tuple[Edge, ...]:
    """Every edge of the finished outside from face A on: of its ends, steps and grooves.

    >>> from borewright.job.finished_form import FinishedForm, FinishedStep
    >>> from borewright.job.records import Bore, Finished, Piece, Work
    >>> form = FinishedForm(steps=(FinishedStep(0.0, 0.01, 0.05),))
    >>> wanted = Finished(0.06, form=form)
    >>> wheel = Work("steel", (Piece(0, 0.03, 0.062),), Bore(0.02), finished=wanted)
    >>> [(e.at, e.outside, e.looks, e.end) for e in outer_edges(wheel)]
    [(0.0, 0.05, 'A', True), (0.01, 0.06, 'A', False), (0.03, 0.06, 'B', True)]
    """
    return tuple(_edges(list(_stretches(work))))


def _edges(stretches: list[tuple[Metre, Metre, Metre]]) -> Iterator[Edge]:
    if not stretches:
        return
    start, end = stretches[0][0], stretches[-1][1]
    yield Edge(start, stretches[0][2], "A", end=True)
    for (_, meets, left), (begins, _, right) in pairwise(stretches):
        apart = begins > meets + NEAR
        if apart or left > right + NEAR:
            yield Edge(meets, left, "B")
        if apart or right > left + NEAR:
            yield Edge(begins, right, "A")
    yield Edge(end, stretches[-1][2], "B", end=True)


def _stretches(work: Work) -> Iterator[tuple[Metre, Metre, Metre]]:
    """From, to and outside of every stretch that is turned: the rim, and steps beside it."""
    form, whole = work.finished.form, work.finished.outside or work.outside
    cut = [
        *((s.start, s.end, s.outside) for s in form.steps),
        *((g.start, g.end, g.bottom) for g in form.grooves),
    ]
    rings = turned_rings(work)
    for start, end in pairwise(sorted({p for one in (*rings, *cut) for p in one[:2]})):
        middle = (start + end) / 2
        here = [size for low, high, size in cut if low < middle < high]
        if any(low < middle < high for low, high in rings):
            yield start, end, min([whole, *here])
        elif here:
            yield start, end, min(here)


def walls_of(work: Work, start: Metre, end: Metre) -> tuple[bool, bool]:
    """Whether a shoulder stands at the start, and at the end, of a stretch from face A as faced."""
    stretches = list(_stretches(work))
    middle = (start + end) / 2
    here = min((size for low, high, size in stretches if low < middle < high), default=0.0)
    before = max((size for _, high, size in stretches if abs(high - start) < NEAR), default=0.0)
    after = max((size for low, _, size in stretches if abs(low - end) < NEAR), default=0.0)
    return before > here + NEAR, after > here + NEAR


def leg_of(edge: Edge, work: Work) -> Metre:
    """Leg (m), at 45 degrees, by which an edge is broken: its chamfer's where it has one; 0 where
    nothing is stated."""
    chamfers = work.finished.form.chamfers
    own = (chamfers.a if edge.looks == "A" else chamfers.b) if edge.end else 0.0
    return own or work.finished.form.edges or 0.0


def check_edges_of(work: Work, reader: Reader) -> None:
    """RefusedInput for an edge or a chamfer that the finished part has no room for."""
    form = work.finished.form
    if not (form.edges or any(form.chamfers.legs)):
        return
    for stretch in lands_of(work):
        for edge in stretch.edges:
            leg, key = leg_of(edge, work), _key(edge, work)
            if leg >= stretch.room(edge, work) - NEAR:
                show = Show(reader.bare or "mm")
                most = show.length(max(stretch.room(edge, work), 0.0))
                place = "the length and the height of metal there"
                allowed = f"a leg below {most}, {place}, {show.length(edge.at)} from face A"
                raise RefusedInput(reader.at(key), show.length(leg), allowed)


def _key(edge: Edge, work: Work) -> str:
    """Which of the file's keys an edge's leg comes from."""
    chamfers = work.finished.form.chamfers
    own = (chamfers.a if edge.looks == "A" else chamfers.b) if edge.end else 0.0
    return f"work.finished.chamfer.{edge.looks.lower()}" if own else "work.finished.edges"


@dataclass(frozen=True, slots=True)
class Land:
    """A stretch that is turned, of one diameter, with those of its ends that are edges."""

    start: Metre
    end: Metre
    edges: tuple[Edge, ...]
    drops: tuple[Metre, ...]

    def room(self, edge: Edge, work: Work) -> Metre:
        """The largest leg (m) that an edge of it bears: less than the drop there, and beside the
        leg of its other edge."""
        other = sum(leg_of(e, work) for e in self.edges if e is not edge)
        drop = self.drops[self.edges.index(edge)]
        return min(self.end - self.start - other, drop)


def lands_of(work: Work) -> tuple[Land, ...]:
    """Every stretch that has an edge, with how far (m, on radius) the metal drops there."""
    stretches, edges = list(_stretches(work)), outer_edges(work)
    found = []
    for start, end, size in stretches:
        own = tuple(
            e
            for e in edges
            if abs(e.outside - size) < NEAR
            and abs(e.at - (start if e.looks == "A" else end)) < NEAR
        )
        if own:
            found.append(Land(start, end, own, tuple(_drop(e, stretches, work) for e in own)))
    return tuple(found)


def _drop(edge: Edge, stretches: list[tuple[Metre, Metre, Metre]], work: Work) -> Metre:
    """From the edge down to what stands beside it, or to the inside of the metal."""
    beside = [
        size
        for start, end, size in stretches
        if abs((end if edge.looks == "A" else start) - edge.at) < NEAR
    ]
    inside = max((p.inside or work.bore.size for p in work.pieces if _at(p, edge.at)), default=0.0)
    return (edge.outside - max(beside or [inside])) / 2


def _at(piece: Piece, at: Metre) -> bool:
    return piece.start - NEAR <= at <= piece.end + NEAR
