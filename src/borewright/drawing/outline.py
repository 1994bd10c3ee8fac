"""The work as a drawing sees it: a union of rings, its section and its silhouette.

Lengths here are those of the layout (metres), z from the leading face, r from the axis.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from borewright.answer.picture import Layout, Ring

Segment = tuple[float, float, float, float]
"""z1, r1, z2, r2 of one straight edge of the section."""


@dataclass(frozen=True, slots=True)
class Section:
    """The upper half cut open: a grid of z and r, and which cells of it hold metal.

    `slants` are the chamfers of the bore, from the face to the bore: the cells that one crosses are
    `halved`, half metal and half air, and have no edge of their own.
    """

    zs: tuple[float, ...]
    rs: tuple[float, ...]
    metal: frozenset[tuple[int, int]]
    halved: frozenset[tuple[int, int]] = frozenset()
    slants: tuple[Segment, ...] = ()

    def cells(self) -> tuple[tuple[float, float, float, float], ...]:
        """z1, r1, z2, r2 of every cell with metal."""
        return tuple(
            (self.zs[i], self.rs[j], self.zs[i + 1], self.rs[j + 1]) for i, j in sorted(self.metal)
        )

    def edges(self) -> tuple[Segment, ...]:
        """Every edge between metal and air."""
        return (*self._upright(), *self._level(), *self.slants)

    def _upright(self) -> list[Segment]:
        columns, rows = range(len(self.zs)), range(len(self.rs) - 1)
        walls = [[self._differ((i - 1, j), (i, j)) for j in rows] for i in columns]
        return [
            (self.zs[i], self.rs[a], self.zs[i], self.rs[b])
            for i in columns
            for a, b in _runs(walls[i])
        ]

    def _level(self) -> list[Segment]:
        columns, rows = range(len(self.zs) - 1), range(len(self.rs))
        floors = [[self._differ((i, j - 1), (i, j)) for i in columns] for j in rows]
        return [
            (self.zs[a], self.rs[j], self.zs[b], self.rs[j])
            for j in rows
            for a, b in _runs(floors[j])
        ]

    def _differ(self, one: tuple[int, int], other: tuple[int, int]) -> bool:
        if one in self.halved or other in self.halved:
            return False
        return (one in self.metal) != (other in self.metal)


def section(layout: Layout) -> Section:
    """The section of the work's rings, joined where they touch or overlap.

    Less what keyway and cross hole take, both turned into the plane of the cut; spokes are not cut.
    """
    rings = [ring for ring in layout.rings if not ring.spoked]
    gaps, slanted = _gaps(layout), _chamfers(layout)
    mouths = [mouth for mouth, _ in slanted]
    every = (*rings, *gaps, *mouths)
    zs = sorted({z for ring in every for z in (ring.start, ring.end)})
    rs = sorted({r for ring in every for r in _radii(ring, layout.bore)})

    def filled(of: Sequence[Ring]) -> set[tuple[int, int]]:
        return {
            (i, j)
            for ring in of
            for i in range(len(zs) - 1)
            for j in range(len(rs) - 1)
            if _covers(ring, layout.bore, zs[i], zs[i + 1], rs[j], rs[j + 1])
        }

    metal = filled(rings) - filled(gaps)
    whole = [(mouth, slant) for mouth, slant in slanted if filled([mouth]) <= metal]
    halved = filled([mouth for mouth, _ in whole])
    slants = tuple(slant for _, slant in whole)
    return Section(tuple(zs), tuple(rs), frozenset(metal - halved), frozenset(halved), slants)


def _chamfers(layout: Layout) -> list[tuple[Ring, Segment]]:
    """The square that each chamfer halves, as a ring, and its slant."""
    hubs = [ring for ring in layout.rings if ring.inside <= layout.bore * (1 + 1e-9)]
    start, end, bore = min(r.start for r in hubs), max(r.end for r in hubs), layout.bore
    near, far = layout.chamfers
    found = []
    if near:
        slant = start, bore / 2 + near, start + near, bore / 2
        found.append((Ring(start, start + near, bore + 2 * near, bore), slant))
    if far:
        slant = end - far, bore / 2, end, bore / 2 + far
        found.append((Ring(end - far, end, bore + 2 * far, bore), slant))
    return found


def _gaps(layout: Layout) -> list[Ring]:
    """Keyway and cross hole as the rings of air that the section shows."""
    hubs = [ring for ring in layout.rings if ring.inside <= layout.bore * (1 + 1e-9)]
    found, bore = [], layout.bore
    if layout.keyway:
        across = bore + 2 * layout.keyway.depth
        found += [Ring(ring.start, ring.end, across, bore) for ring in hubs]
    hole = layout.cross_hole
    if hole and hole.at is not None:
        start, end = hole.at - hole.diameter / 2, hole.at + hole.diameter / 2
        through = [r.outside for r in hubs if r.start < end and r.end > start]
        found += [Ring(start, end, max(through, default=bore), bore)]
    return found


def silhouette(layout: Layout) -> tuple[tuple[float, float, float], ...]:
    """From z1 to z2 the largest radius seen from outside, with equal neighbours joined."""
    zs = sorted({z for ring in layout.rings for z in (ring.start, ring.end)})
    steps: list[tuple[float, float, float]] = []
    for a, b in pairwise(zs):
        inside = [r.outside / 2 for r in layout.rings if r.start <= a and r.end >= b]
        radius = max(inside, default=0.0)
        if steps and steps[-1][2] == radius:
            steps[-1] = (steps[-1][0], b, radius)
        else:
            steps.append((a, b, radius))
    return tuple(step for step in steps if step[2] > 0)


def front_edges(layout: Layout) -> tuple[float, ...]:
    """Diameters of the edges seen from the leading side, largest first.

    An edge is seen where the depth of the nearest metal steps; what a rim hides is left out.
    """
    radii = sorted({r for ring in layout.rings for r in _radii(ring, layout.bore)}, reverse=True)
    depths = [_depth(layout, (a + b) / 2) for a, b in pairwise(radii)]
    outer = [None, *depths]
    return tuple(2 * r for r, near, far in zip(radii, outer, depths, strict=False) if near != far)


def _depth(layout: Layout, radius: float) -> float | None:
    """How far behind the leading face the first metal at a radius is; None where there is none."""
    starts = [
        ring.start
        for ring in layout.rings
        if not ring.spoked and _radii(ring, layout.bore)[0] < radius < ring.outside / 2
    ]
    return min(starts, default=None)


def outside(layout: Layout) -> float:
    """The largest diameter of the work, metres."""
    return max(ring.outside for ring in layout.rings)


def _radii(ring: Ring, bore: float) -> tuple[float, float]:
    return max(ring.inside, bore) / 2, ring.outside / 2


def _covers(ring: Ring, bore: float, z1: float, z2: float, r1: float, r2: float) -> bool:
    low, high = _radii(ring, bore)
    return ring.start <= z1 and z2 <= ring.end and low <= r1 and r2 <= high


def _runs(flags: list[bool]) -> list[tuple[int, int]]:
    runs: list[tuple[int, int]] = []
    for k, flag in enumerate(flags):
        if flag and runs and runs[-1][1] == k:
            runs[-1] = (runs[-1][0], k + 1)
        elif flag:
            runs.append((k, k + 1))
    return runs
