"""A chamfer at the edges of a bore, as steps that the elastic model can mesh.

A chamfer is a short counterbore with a slanted wall: a leg c at 45 degrees takes the metal between
the bore and the line from (c in, at the bore) to (at the face, c out). Steps stand in for the line,
each as high as the line is at its middle, so that they take away the area that it does.
The inward corners of steps raise a tension that the slant has not. `compliance.largest_tension`
leaves the neighborhood of such corners out, which serves as long as steps are small beside it.
Measured against steps half as long on five outlines: force within 0.1 %, largest tension within
2 % (a thin disc part engaged; the others 0.7 %).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np

from borewright.mechanics.outline import BoreLine, bore_line
from borewright.mechanics.revolved import SLIVER
from borewright.quantities.si import Metre, Ratio

Piece = tuple[Metre, Metre, Metre, Metre | None]
Step = tuple[Metre, Metre, Metre]
"""Where a step starts and ends along z, and the diameter it opens the bore to."""

STEP: Final[Ratio] = 0.005
"""Wanted length of a step over the bore's diameter."""

MOST_STEPS: Final = 20
"""A leg beyond 0.1 of the bore has longer steps, so that its mesh stays small."""


@dataclass(frozen=True, slots=True)
class Room:
    """What a chamfer may take at one end: half the bearing there, the wall, and the step out.

    `step`: from the bore's surface out to the wall of a counterbore before it; None for a face.
    """

    half: Metre
    wall: Metre
    step: Metre | None


def chamfered(
    pieces: Sequence[Piece],
    bore: Metre,
    legs: tuple[Metre, Metre],
    step: Ratio = STEP,
) -> tuple[Piece, ...]:
    """The pieces with legs (m) taken off the bore's first and last edge; none where both are 0.

    `pieces`: (start, end, outside, inside or None at the bore), metres. A leg must fit its `Room`.

    >>> cut = chamfered([(0.0, 0.03, 0.04, None)], 0.018, (0.0002, 0.0))
    >>> [tuple(None if v is None else round(v, 6) for v in piece) for piece in cut]
    [(0.0, 0.0001, 0.04, 0.0183), (0.0001, 0.0002, 0.04, 0.0181), (0.0002, 0.03, 0.04, None)]
    """
    legs = counted(legs, bore)
    if not any(legs):
        return tuple(pieces)
    steps = _steps(bearing(bore_line(pieces, bore)), bore, legs, step)
    return tuple(part for piece in pieces for part in _cut(piece, bore, steps))


def counted(legs: tuple[Metre, Metre], bore: Metre) -> tuple[Metre, Metre]:
    """The legs (m) that count: one below a sliver of the bore breaks an edge and no more.

    >>> counted((0.00001, 0.0005), 0.018)
    (0.0, 0.0005)
    """
    a, b = (leg if leg >= SLIVER * bore else 0.0 for leg in legs)
    return a, b


def bearing(line: BoreLine) -> tuple[Metre, Metre]:
    """Where metal first and last meets the bore (m).

    >>> bearing(bore_line([(0.0, 0.01, 0.04, 0.02), (0.01, 0.03, 0.04, None)], 0.018))
    (0.01, 0.03)
    """
    metal = np.flatnonzero(line.outside > 0)
    return float(line.edges[metal[0]]), float(line.edges[metal[-1] + 1])


def rooms(pieces: Sequence[Piece], bore: Metre, legs: tuple[Metre, Metre]) -> tuple[Room, Room]:
    """What there is to take at the first and the last edge, the wall within the leg (m) of each.

    >>> near, far = rooms([(0.0, 0.03, 0.04, None)], 0.018, (0.001, 0.001))
    >>> round(near.half, 6), round(near.wall, 6), near.step
    (0.015, 0.011, None)
    """
    end = max(piece[1] for piece in pieces)
    back = [(end - b, end - a, outside, inside) for a, b, outside, inside in pieces]
    return _room(pieces, bore, legs[0]), _room(back, bore, legs[1])


def _room(pieces: Sequence[Piece], bore: Metre, leg: Metre) -> Room:
    line = bore_line(pieces, bore)
    start = bearing(line)[0]
    here = int(np.searchsorted(line.edges, start))
    free = np.flatnonzero(line.outside[here:] == 0)
    stretch = line.edges[here + (free[0] if len(free) else len(line.outside) - here)] - start
    within = (line.edges[:-1] < start + leg) & (line.outside > 0)
    before = [p[3] or bore for p in pieces if p[0] < start - 1e-9 and p[1] > start - 1e-9]
    step = (min(before) - bore) / 2 if before else None
    return Room(
        float(stretch) / 2, float(line.outside[within].min(initial=np.inf) - bore) / 2, step
    )


def _steps(
    ends: tuple[Metre, Metre], bore: Metre, legs: tuple[Metre, Metre], step: Ratio
) -> tuple[Step, ...]:
    """Both ends have steps of one length and so of the same heights: no two lie a hair apart.

    None opens the bore by less than a sliver, which would be healed into bore that bears.
    """
    longest = max(legs)
    each = longest / min(MOST_STEPS, max(1, round(longest / (step * bore))))
    start, end = ends[0] + legs[0], ends[1] - legs[1]
    least = 2.1 * SLIVER * bore
    near = [(start - b, start - a, bore + max(o, least)) for a, b, o in _outward(legs[0], each)]
    far = [(end + a, end + b, bore + max(o, least)) for a, b, o in _outward(legs[1], each)]
    return (*near, *far)


def _outward(leg: Metre, each: Metre) -> Iterator[Step]:
    """From where the bore bears: where a step begins and ends, how much it opens the diameter.

    The shorter leg's last step, at the face, is what is left: half of `each` to half as much again.
    """
    count = max(1, round(leg / each)) if leg else 0
    for k in range(count):
        yield k * each, leg if k == count - 1 else (k + 1) * each, (2 * k + 1) * each


def _cut(piece: Piece, bore: Metre, steps: Sequence[Step]) -> list[Piece]:
    """One piece less what the steps take of it, cut where they begin and end."""
    start, end, outside, inside = piece
    marks = [m for low, high, opens in steps if opens > (inside or bore) for m in (low, high)]
    edges = sorted({start, end, *(m for m in marks if start + 1e-9 < m < end - 1e-9)})
    found: list[Piece] = []
    for low, high in pairwise(edges):
        middle = (low + high) / 2
        opened = max((o for a, b, o in steps if a < middle < b), default=0.0)
        if opened < outside:
            found.append((low, high, outside, opened if opened > (inside or bore) else inside))
    return found
