"""Strips along the bore and mesh lines of work and mandrel: fine at the bore and at its ends."""

from __future__ import annotations

from typing import Final

import numpy as np

from borewright.mechanics.mesh_lines import graded_lines, strip_edges
from borewright.mechanics.num import Floats
from borewright.mechanics.revolved import BORE, Revolved
from borewright.quantities.si import Ratio

FIRST: Final = 0.036
"""Size of a cell at the bore, over d."""

GROWTH: Final = 0.22
"""How much longer a cell is for each d of distance from the bore."""

STRIP: Final = 0.04
FEWEST, MOST = 24, 64
"""Wanted length of a strip over d, and how many there are at least and at most."""


def mandrel_mesh(
    strips: Floats, hole: Ratio, stands_out: tuple[Ratio, Ratio]
) -> tuple[Revolved, Floats, Floats]:
    """The bar under these strips as a body, and the lines of its mesh along z and r."""
    low, high = strips[0, 0] - stands_out[0], strips[-1, 1] + stands_out[1]
    body = Revolved(((low, high, hole, BORE),), (low, high), (hole, BORE), ((low, high),), False)
    ends = [
        graded_lines([low, strips[0, 0]], strips[0, 0], FIRST, GROWTH)
        if stands_out[0] > 0
        else strips[0, :1],
        graded_lines([strips[-1, 1], high], strips[-1, 1], FIRST, GROWTH)
        if stands_out[1] > 0
        else strips[-1, 1:],
    ]
    z = _distinct(np.concatenate([*ends, strips.ravel(), _gaps(strips)]))
    r = graded_lines([hole, BORE], BORE, FIRST, GROWTH)
    return body, z, r


def work_strips(body: Revolved) -> Floats:
    """Strips over every stretch that bears, finer at its ends, edges where the outline steps."""
    whole = sum(end - start for start, end in body.bearing)
    found = []
    for start, end in body.bearing:
        share = (end - start) / whole
        count = int(np.clip(round((end - start) / STRIP), max(6, FEWEST * share), MOST * share))
        edges = strip_edges(start, end, body.z, count)
        found.append(np.column_stack([edges[:-1], edges[1:]]))
    return np.concatenate(found)


def work_lines(
    body: Revolved, strips: Floats, first: Ratio | None = None, growth: Ratio | None = None
) -> tuple[Floats, Floats]:
    """Lines of the work's mesh along z and r; `first` and `growth` as usual where None."""
    first, growth = FIRST if first is None else first, GROWTH if growth is None else growth
    low, high = strips[0, 0], strips[-1, 1]
    left = [*(z for z in body.z if z < low), low]
    right = [high, *(z for z in body.z if z > high)]
    parts = [strips.ravel(), np.array(body.z), _gaps(strips)]
    if len(left) > 1:
        parts.append(graded_lines(left, low, first, growth))
    if len(right) > 1:
        parts.append(graded_lines(right, high, first, growth))
    return _distinct(np.concatenate(parts)), graded_lines(list(body.r), BORE, first, growth)


def _gaps(strips: Floats) -> Floats:
    """Lines across the stretches of bore between strips where nothing bears."""
    found = [
        np.linspace(a, b, max(3, int((b - a) / (2 * STRIP)) + 2))
        for a, b in zip(strips[:-1, 1], strips[1:, 0], strict=True)
        if b - a > 1e-9
    ]
    return np.concatenate(found) if found else np.zeros(0)


def _distinct(lines: Floats) -> Floats:
    ordered = np.sort(lines)
    return np.asarray(ordered[np.append(True, np.diff(ordered) > 1e-7)])
