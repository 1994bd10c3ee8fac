"""Where a field on a grid of lines is at or above a level: outlines, and the lines of that level.

Marching squares, each cell cut along straight lines between its corners (Lorensen and Cline's
marching cubes in the plane, from memory). The outlines of single cells are joined by striking out
every edge that two of them share, so that a region has no seams. Cells that are not metal are left
out, so a region ends at the metal's edge.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np

from borewright.mechanics.num import Bools, Floats

Place: TypeAlias = tuple[float, float]
Node: TypeAlias = tuple[int, int, int]
"""Which, i, j: 0 a crossing of lines, 1 a cut of the edge to j + 1, 2 of the edge to i + 1."""


@dataclass(frozen=True, slots=True)
class Region:
    """Closed outlines (z, r), to be filled even-odd, and the open or closed lines of the level."""

    outlines: tuple[tuple[Place, ...], ...]
    lines: tuple[tuple[Place, ...], ...]


def region(z: Floats, r: Floats, values: Floats, metal: Bools, level: float) -> Region:
    """The part of the metal where `values` (len(r), len(z)) are at or above a level.

    >>> z, r = np.array([0.0, 1.0]), np.array([0.0, 1.0])
    >>> region(z, r, np.array([[0.0, 0.0], [2.0, 2.0]]), np.array([[True]]), 1.0).lines
    (((0.0, 0.5), (1.0, 0.5)),)
    """
    grid = _Grid(z, r, values, level)
    loops = tuple(_loops(_edges(grid, metal)))
    outlines = tuple(tuple(grid.place(node) for node in _corners(loop)) for loop in loops)
    lines = (tuple(grid.place(n) for n in run) for loop in loops for run in _level_runs(loop))
    return Region(outlines, tuple(lines))


@dataclass(frozen=True, slots=True, eq=False)
class _Grid:
    z: Floats
    r: Floats
    values: Floats
    level: float

    def place(self, node: Node) -> Place:
        which, i, j = node
        z, r = float(self.z[j]), float(self.r[i])
        if which == 1:
            return z + self.share(i, j, i, j + 1) * (float(self.z[j + 1]) - z), r
        if which == 2:
            return z, r + self.share(i, j, i + 1, j) * (float(self.r[i + 1]) - r)
        return z, r

    def share(self, i: int, j: int, k: int, m: int) -> float:
        a, b = float(self.values[i, j]), float(self.values[k, m])
        return (self.level - a) / (b - a)


def _edges(grid: _Grid, metal: Bools) -> dict[Node, list[Node]]:
    """Directed edges of all cells' parts, those shared struck out: start to ends."""
    high = grid.values >= grid.level
    count = high[:-1, :-1].astype(int) + high[1:, :-1] + high[:-1, 1:] + high[1:, 1:]
    full, mixed = metal & (count == 4), metal & (count > 0) & (count < 4)
    left: dict[Node, list[Node]] = {}
    for i, j in np.argwhere(mixed).tolist():
        for edge in _around(_part(high, i, j)):
            _lay(left, *edge)
    rim = np.pad(full, 1)
    inner = rim[:-2, 1:-1] & rim[2:, 1:-1] & rim[1:-1, :-2] & rim[1:-1, 2:]
    for i, j in np.argwhere(full & ~inner).tolist():
        sides = zip(_square(i, j), ((i - 1, j), (i, j + 1), (i + 1, j), (i, j - 1)), strict=True)
        ring = _square(i, j)
        for k, (_, (a, b)) in enumerate(sides):
            if not rim[a + 1, b + 1]:
                _lay(left, ring[k], ring[(k + 1) % 4])
    return left


def _lay(left: dict[Node, list[Node]], start: Node, end: Node) -> None:
    """Put an edge down, or strike out the one that runs the other way."""
    if start in left.get(end, ()):
        left[end].remove(start)
    else:
        left.setdefault(start, []).append(end)


def _square(i: int, j: int) -> tuple[Node, ...]:
    """The corners of a cell: near bore to far, always the same way round."""
    return (0, i, j), (0, i, j + 1), (0, i + 1, j + 1), (0, i + 1, j)


def _part(high: Bools, i: int, j: int) -> list[Node]:
    """The part of one cell at or above the level, its corners and cuts in order."""
    ring = _square(i, j)
    cuts: tuple[Node, ...] = ((1, i, j), (2, i, j + 1), (1, i + 1, j), (2, i, j))
    part: list[Node] = []
    for k, (_, a, b) in enumerate(ring):
        _, c, d = ring[(k + 1) % 4]
        if high[a, b]:
            part.append(ring[k])
        if high[a, b] != high[c, d]:
            part.append(cuts[k])
    return part


def _around(part: list[Node]) -> Iterator[tuple[Node, Node]]:
    yield from zip(part, [*part[1:], part[0]], strict=True)


def _loops(left: dict[Node, list[Node]]) -> Iterator[list[Node]]:
    """The edges that are left, joined end to end."""
    for start in sorted(left):
        while left[start]:
            loop = [start]
            step = left[start].pop()
            while step != start:
                loop.append(step)
                step = left[step].pop()
            yield loop


def _is_level(start: Node, end: Node) -> bool:
    """Whether an edge is of the level itself, not of the metal's edge: it cuts through a cell."""
    return start[0] > 0 and end[0] > 0 and not _on_one_line(start, end)


def _on_one_line(start: Node, end: Node) -> bool:
    return start[0] == end[0] and start[1:] == end[1:]


def _level_runs(loop: list[Node]) -> Iterator[list[Node]]:
    """The stretches of an outline that are of the level."""
    flags = [_is_level(a, b) for a, b in _around(loop)]
    if all(flags):
        yield [*loop, loop[0]]
        return
    first = flags.index(False) + 1
    run: list[Node] = []
    for k in range(len(loop)):
        at = (first + k) % len(loop)
        if flags[at]:
            run = run or [loop[at]]
            run.append(loop[(at + 1) % len(loop)])
        elif run:
            yield run
            run = []
    if run:
        yield run


def _corners(loop: list[Node]) -> list[Node]:
    """The outline without the crossings along a straight edge of the metal."""
    kept = []
    for before, node, after in zip([loop[-1], *loop[:-1]], loop, [*loop[1:], loop[0]], strict=True):
        along = before[1] == node[1] == after[1] and 2 not in (before[0], after[0])
        up = before[2] == node[2] == after[2] and 1 not in (before[0], after[0])
        if node[0] or not (along or up):
            kept.append(node)
    return kept
