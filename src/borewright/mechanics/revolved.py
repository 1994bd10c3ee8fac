"""A body of revolution as a union of rectangles in (z, r): checked, healed, scaled to its bore.

Lengths over the bore's diameter: the bore's radius is 1/2. A ring is (start, end, inside, outside),
the last two as radii. Rings may overlap: their union counts. Edges nearer to each other than a
sliver are moved together, and the caller is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.errors.tree import OutsideModel
from borewright.mechanics.num import Floats
from borewright.quantities.si import Ratio

BORE: Final[Ratio] = 0.5
"""Radius of the bore in bore diameters."""

SLIVER: Final[Ratio] = 2e-3
"""Edges of the outline nearer than this (in bore diameters) are taken as one."""

RELIEF: Final[Ratio] = 1e-5
"""An inside larger than the bore's by this (radius over d) or more is a relief: it never bears."""

MOST_EDGES: Final = 120
"""More different edges than this along either way are no wheel."""

Ring = tuple[Ratio, Ratio, Ratio, Ratio]


@dataclass(frozen=True, slots=True)
class Revolved:
    """Rings in bore diameters, snapped; `z` and `r` are the edges, `bearing` where it bears."""

    rings: tuple[Ring, ...]
    z: tuple[Ratio, ...]
    r: tuple[Ratio, ...]
    bearing: tuple[tuple[Ratio, Ratio], ...]
    healed: bool

    @property
    def length(self) -> Ratio:
        return self.z[-1] - self.z[0]


def revolved(rings: Sequence[Ring]) -> Revolved:
    """The outline, checked. OutsideModel where it is empty, in pieces, or does not reach the bore.

    >>> found = revolved([(0.0, 2.0, 0.5, 1.0), (0.8, 1.2, 1.0, 3.0)])
    >>> found.bearing, found.r
    (((0.0, 2.0),), (0.5, 1.0, 3.0))
    """
    if not rings:
        raise OutsideModel("rings", 0, "at least one")
    z, z_healed = _snapped([edge for ring in rings for edge in ring[:2]], ())
    rings, relieved = _relief_kept(rings)
    r, r_healed = _snapped([edge for ring in rings for edge in ring[2:]], (BORE,))
    if max(len(z), len(r)) > MOST_EDGES:
        raise OutsideModel("edges of the outline", max(len(z), len(r)), f"at most {MOST_EDGES}")
    snapped = tuple(_snap(ring, z, r) for ring in rings)
    whole = tuple(ring for ring in snapped if ring[1] > ring[0] and ring[3] > ring[2])
    bearing = _bearing(whole)
    if not bearing and any(ring[2] == BORE for ring in rings):
        thin = f"at least {SLIVER:g} of the bore's diameter, in length and in wall"
        raise OutsideModel("the ring round the bore", "thinner than a sliver", thin)
    if not bearing:
        raise OutsideModel("bore", 0, "an outline that reaches the bore")
    if min(ring[2] for ring in whole) < BORE:
        raise OutsideModel("inside of a ring", min(ring[2] for ring in whole), "the bore or more")
    healed = z_healed or r_healed or relieved or len(whole) < len(rings)
    found = Revolved(whole, z, r, bearing, healed)
    if _pieces(found) > 1:
        raise OutsideModel("pieces of the outline", _pieces(found), "one, all joined")
    return found


def _relief_kept(rings: Sequence[Ring]) -> tuple[list[Ring], bool]:
    """Reliefs shallower than a sliver made as deep as one: a relief must never come to bear."""
    shallow = BORE + RELIEF, BORE + SLIVER
    kept = [
        (start, end, shallow[1] if shallow[0] < low < shallow[1] else low, high)
        for start, end, low, high in rings
    ]
    return kept, kept != [tuple(ring) for ring in rings]


def cells(body: Revolved, z: Floats, r: Floats) -> np.ndarray:
    """Which cells of a grid through all edges are metal; shape (len(r) - 1, len(z) - 1)."""
    zc, rc = 0.5 * (z[1:] + z[:-1]), 0.5 * (r[1:] + r[:-1])
    metal = np.zeros((len(rc), len(zc)), dtype=bool)
    for start, end, inside, outside in body.rings:
        metal |= np.outer((rc > inside) & (rc < outside), (zc > start) & (zc < end))
    return metal


def turned(body: Revolved) -> Revolved:
    """The same outline seen from its other face: z runs the other way, from minus its end."""
    return Revolved(
        tuple((-end, -start, low, high) for start, end, low, high in body.rings),
        tuple(-z for z in reversed(body.z)),
        body.r,
        tuple((-end, -start) for start, end in reversed(body.bearing)),
        body.healed,
    )


def shifted(body: Revolved, by: Ratio) -> Revolved:
    """The same outline with `by` added to every z.

    >>> shifted(turned(revolved([(0.0, 2.0, 0.5, 1.0), (0.0, 0.5, 1.0, 3.0)])), 2.0).rings
    ((0.0, 2.0, 0.5, 1.0), (1.5, 2.0, 1.0, 3.0))
    """
    return Revolved(
        tuple((start + by, end + by, low, high) for start, end, low, high in body.rings),
        tuple(z + by for z in body.z),
        body.r,
        tuple((start + by, end + by) for start, end in body.bearing),
        body.healed,
    )


def rounded(body: Revolved, digits: int) -> Revolved:
    """The same outline with every edge rounded, so that what is built of it has no last digits.

    >>> rounded(revolved([(0.0, 2.0 + 1e-13, 0.5, 1.0)]), 9).rings
    ((0.0, 2.0, 0.5, 1.0),)
    """

    def all_of(edges: tuple[Ratio, ...]) -> tuple[Ratio, ...]:
        return tuple(round(edge, digits) + 0.0 for edge in edges)

    return Revolved(
        tuple(
            (round(a, digits) + 0.0, round(b, digits) + 0.0, round(c, digits), round(d, digits))
            for a, b, c, d in body.rings
        ),
        all_of(body.z),
        all_of(body.r),
        tuple((round(a, digits) + 0.0, round(b, digits) + 0.0) for a, b in body.bearing),
        body.healed,
    )


def _snapped(edges: list[float], kept: tuple[float, ...]) -> tuple[tuple[float, ...], bool]:
    """Rising edges, those within a sliver as one; `kept` ones do not move."""
    found: list[float] = []
    healed = False
    for edge in sorted({*edges, *kept}):
        if found and edge - found[-1] < SLIVER:
            healed |= edge - found[-1] > 1e-9
            if edge in kept:
                found[-1] = edge
            continue
        found.append(edge)
    return tuple(found), healed


def _snap(ring: Ring, z: tuple[float, ...], r: tuple[float, ...]) -> Ring:
    start, end = (_nearest(edge, z) for edge in ring[:2])
    inside, outside = (_nearest(edge, r) for edge in ring[2:])
    return start, end, inside, outside


def _nearest(edge: float, edges: tuple[float, ...]) -> float:
    return min(edges, key=lambda e: abs(e - edge))


def _bearing(rings: tuple[Ring, ...]) -> tuple[tuple[float, float], ...]:
    """Stretches of the bore with metal at it, joined where they meet."""
    found: list[tuple[float, float]] = []
    for start, end in sorted(ring[:2] for ring in rings if ring[2] == BORE):
        if found and start <= found[-1][1]:
            found[-1] = found[-1][0], max(end, found[-1][1])
        else:
            found.append((start, end))
    return tuple(found)


def _pieces(body: Revolved) -> int:
    """How many pieces the metal falls into; a corner alone does not join."""
    left = {
        (int(i), int(j)) for i, j in np.argwhere(cells(body, np.array(body.z), np.array(body.r)))
    }
    count = 0
    while left:
        count += 1
        edge = [left.pop()]
        while edge:
            i, j = edge.pop()
            beside = {(i + 1, j), (i - 1, j), (i, j + 1), (i, j - 1)} & left
            left -= beside
            edge.extend(beside)
    return count
