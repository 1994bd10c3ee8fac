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
    [(0, 0.05, 'A', True), (0.01, 0.06, 'A', False), (0.03, 0.06, 'B', True)]
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
    """From, to and outside of every stretch that is turned, steps and grooves counted in."""
    form, whole = work.finished.form, work.finished.outside or work.outside
    cut = [
        *((s.start, s.end, s.outside) for s in form.steps),
        *((g.start, g.end, g.bottom) for g in form.grooves),
    ]
    for first, last in turned_rings(work):
        places = {first, last, *(p for c in cut for p in c[:2] if first < p < last)}
        for start, end in pairwise(sorted(places)):
            middle = (start + end) / 2
            here = [size for low, high, size in cut if low < middle < high]
            yield start, end, min([whole, *here])


def leg_of(edge: Edge, work: Work) -> Metre:
    """Leg (m), at 45 degrees, by which an edge is broken: its chamfer's where it has one; 0 where
    nothing is stated."""
    chamfers = work.finished.form.chamfers
    own = (chamfers.a if edge.looks == "A" else chamfers.b) if edge.end else 0.0
    return own or work.finished.form.edges or 0.0


def check_edges_of(work: Work, reader: Reader) -> None:
    """RefusedInput for a chamfer of the outside that the finished part has no room for."""
    legs, show = work.finished.form.chamfers, Show(reader.bare or "mm")
    ends = {e.looks: e for e in outer_edges(work) if e.end}
    stretches = list(_stretches(work))
    for face, leg in (("A", legs.a), ("B", legs.b)):
        if leg <= 0:
            continue
        start, end, size = stretches[0 if face == "A" else -1]
        other = (legs.b if face == "A" else legs.a) if len(stretches) == 1 else 0.0
        inside = max(p.inside or work.bore.size for p in work.pieces if _at(p, ends[face].at))
        most = min(end - start - other, (size - inside) / 2)
        if leg >= most - NEAR:
            place = reader.at(f"work.finished.chamfer.{face.lower()}")
            allowed = f"a leg below {show.length(max(most, 0.0))}, the length and the wall there"
            raise RefusedInput(place, show.length(leg), allowed)


def _at(piece: Piece, at: Metre) -> bool:
    return piece.start - NEAR <= at <= piece.end + NEAR
