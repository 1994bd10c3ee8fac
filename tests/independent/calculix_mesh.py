"""Meshes for CalculiX of our own making here: 8-node quadrilaterals on a grid; nothing of the package.

Lengths over the bore's diameter. Lines follow a wanted size that grows with distance from places
that matter: the bore line, its two ends, steps of the outline, the end of contact.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

BORE = 0.5
Ring = tuple[float, float, float, float]
"""Start, end, inside, outside; the last two are radii."""


@dataclass(frozen=True)
class Near:
    """A stretch round which cells are `size` long, growing by `growth` for each length of distance."""

    low: float
    high: float
    size: float
    growth: float = 0.25


@dataclass(frozen=True)
class Grid:
    """Nodes (r, z) numbered from `first` + 1, cells of metal as (i, j) and their eight nodes."""

    r: np.ndarray
    z: np.ndarray
    nodes: list[tuple[float, float]]
    numbers: dict[tuple[int, int], int]
    cells: list[tuple[int, int]]
    corners: list[list[int]]
    first: int

    def line(self, along: str, place: float) -> list[int]:
        """Nodes with this r or z, in order of the other."""
        axis = ("r", "z").index(along)
        found = [k for k, node in enumerate(self.nodes) if abs(node[axis] - place) < 1e-9]
        return [k + self.first + 1 for k in sorted(found, key=lambda k: self.nodes[k][1 - axis])]


def lines(marks: Sequence[float], places: Sequence[Near], most: float) -> np.ndarray:
    """Lines through every mark, spaced as the nearest place wants it, nowhere over `most`."""
    found = [np.array([marks[0]])]
    for low, high in pairwise(marks):
        fine = np.linspace(low, high, 2001)
        away = [np.maximum(np.maximum(p.low - fine, fine - p.high), 0.0) for p in places]
        wanted = np.min([p.size + p.growth * a for p, a in zip(places, away, strict=True)], axis=0)
        dense = 1 / np.minimum(wanted, most)
        count = np.concatenate([[0], np.cumsum((dense[1:] + dense[:-1]) / 2 * np.diff(fine))])
        many = max(2, int(np.ceil(count[-1] - 1e-6)))
        found.append(np.interp(np.linspace(0, count[-1], many + 1)[1:], count, fine))
        found[-1][-1] = high
    return np.concatenate(found)


def grid(rings: Sequence[Ring], r: np.ndarray, z: np.ndarray, first: int) -> Grid:
    """The cells inside any ring, and the nodes at their corners and the middles of their sides."""
    both = [np.sort(np.concatenate([x, (x[1:] + x[:-1]) / 2])) for x in (r, z)]
    nodes: list[tuple[float, float]] = []
    numbers: dict[tuple[int, int], int] = {}
    cells: list[tuple[int, int]] = []
    corners: list[list[int]] = []

    def node(i: int, j: int) -> int:
        if (i, j) not in numbers:
            numbers[i, j] = first + len(nodes) + 1
            nodes.append((float(both[0][i]), float(both[1][j])))
        return numbers[i, j]

    square = ((0, 0), (2, 0), (2, 2), (0, 2), (1, 0), (2, 1), (1, 2), (0, 1))
    for i in range(len(r) - 1):
        for j in range(len(z) - 1):
            middle = (z[j] + z[j + 1]) / 2, (r[i] + r[i + 1]) / 2
            if any(s < middle[0] < e and a < middle[1] < b for s, e, a, b in rings):
                cells.append((i, j))
                corners.append([node(2 * i + a, 2 * j + b) for a, b in square])
    return Grid(r, z, nodes, numbers, cells, corners, first)


def corners_inward(rings: Sequence[Ring]) -> list[tuple[float, float]]:
    """Corners (z, r) with metal on three sides of four."""
    z = sorted({edge for ring in rings for edge in ring[:2]})
    r = sorted({edge for ring in rings for edge in ring[2:]})
    found = []
    for x in z:
        for y in r:
            around = [(x + a, y + b) for a in (-1e-6, 1e-6) for b in (-1e-6, 1e-6)]
            metal = [any(s < p < e and i < q < o for s, e, i, o in rings) for p, q in around]
            if sum(metal) == 3:
                found.append((x, y))
    return found
