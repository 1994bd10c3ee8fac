"""Where the numbers of the bands stand: inside where there is room, else outside on a leader."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, hypot, pi, sin

import numpy as np

from borewright.drawing.scene import Area, Item, Line, LineKind, Point, Text
from borewright.mechanics.num import Bools

SIZE = 3.5
"""Letter size of the numbers, mm."""

ROOM = 1.7
"""Clear radius that a number needs inside its band, mm."""

CLEAR = 2.3
"""Clear radius a number is content with, however much more there is, mm."""

STEP = 0.25
"""Grid on which room is looked for, mm."""

SEEN = 6.0
"""A piece of this area (mm2) has a number of its own, even where the band has one elsewhere."""

_TURN = 24
"""Directions that a leader may take, none of them along an edge of the work."""


@dataclass(frozen=True, slots=True, eq=False)
class Ground:
    """The paper round the section as a grid: cell i, j is at (left + j STEP, top + i STEP)."""

    left: float
    top: float
    rows: int
    columns: int

    def mask(self, contours: Sequence[Sequence[Point]]) -> Bools:
        """The cells inside closed contours, even-odd."""
        found = np.zeros((self.rows, self.columns), dtype=bool)
        edges = [
            (a, b)
            for ring in contours
            for a, b in zip(ring, [*ring[1:], ring[0]], strict=True)
            if a[1] != b[1]
        ]
        x = self.left + STEP * np.arange(self.columns)
        for i in range(self.rows):
            y = self.top + STEP * i + 1e-7
            cuts = [
                x1 + (x2 - x1) * (y - y1) / (y2 - y1)
                for (x1, y1), (x2, y2) in edges
                if (y1 <= y) != (y2 <= y)
            ]
            if cuts:
                found[i] = np.searchsorted(np.sort(cuts), x) % 2 == 1
        return found

    def place(self, i: int, j: int) -> Point:
        """Where a cell is on paper."""
        return self.left + STEP * j, self.top + STEP * i

    def near(self, at: Point, radius: float) -> Bools:
        """The cells within a radius of a place."""
        x, y = self.left + STEP * np.arange(self.columns), self.top + STEP * np.arange(self.rows)
        return np.asarray(np.hypot(x[None, :] - at[0], y[:, None] - at[1]) <= radius)


def number_items(
    tints: Sequence[Area], ground: Ground, taken: Bools, letters: Bools, middle: float
) -> tuple[Item, ...]:
    """A number in every piece of every band that can be seen, and at least one for each band.

    `taken`: cells that no number may cover; `letters`: those no leader may cross; `middle`: the
    place along the work that numbers are drawn to, so that they stand under each other.
    """
    masks = [ground.mask(area.contours) for area in tints] + [ground.mask(())]
    bands = [here & ~above for here, above in pairwise(masks)]
    found = [_pieces(band, ground, taken, middle) for band in bands]
    found = [pieces or [_speck(area)] for pieces, area in zip(found, tints, strict=True)]
    items: list[Item] = []
    words = np.zeros_like(taken)
    for number, pieces in enumerate(found, 1):
        for place in (p.at for p in pieces if p.roomy):
            items.append(_number(number, place))
            words |= ground.near(place, ROOM)
    used = taken | masks[0]
    for number, pieces in enumerate(found, 1):
        lone = not any(p.roomy for p in pieces)
        tight = sorted((p for p in pieces if not p.roomy), key=lambda p: -p.area)
        for k, piece in enumerate(tight):
            if piece.area >= SEEN or (lone and k == 0):
                items += _led(number, piece.at, ground, used, words | letters)
    return tuple(items)


@dataclass(frozen=True, slots=True)
class _Piece:
    """A piece of a band: where its number or its leader goes, its size, and whether it has room."""

    at: Point
    area: float
    roomy: bool


def _number(number: int, at: Point) -> Text:
    return Text(
        at[0], at[1] + 0.33 * SIZE, str(number), SIZE, "middle", True, False, name="band-number"
    )


def _speck(area: Area) -> _Piece:
    """A band too small for the grid: its number goes to the middle of its outline."""
    ring = area.contours[0]
    middle = (sum(x for x, _ in ring) / len(ring), sum(y for _, y in ring) / len(ring))
    return _Piece(middle, 0.0, False)


def _pieces(band: Bools, ground: Ground, taken: Bools, middle: float) -> list[_Piece]:
    """Each piece with its place: nearest to the middle where there is room, else the deepest."""
    from scipy import ndimage  # only a picture needs it

    depth = STEP * ndimage.distance_transform_edt(np.pad(band & ~taken, 1))[1:-1, 1:-1]
    within = ndimage.distance_transform_edt(np.pad(band, 1))[1:-1, 1:-1]
    labels, count = ndimage.label(band)
    found = []
    for piece in range(1, count + 1):
        here = np.where(labels == piece, depth, 0.0)
        area = float((labels == piece).sum()) * STEP**2
        if here.max() >= ROOM:
            rows, columns = np.nonzero(here >= min(CLEAR, 0.95 * here.max()))
            off = np.abs(ground.left + STEP * columns - middle)
            best = int(np.lexsort((-here[rows, columns], off))[0])
            i, j = rows[best], columns[best]
        else:
            i, j = np.unravel_index(
                int(np.argmax(np.where(labels == piece, within, 0.0))), within.shape
            )
        found.append(_Piece(ground.place(int(i), int(j)), area, bool(here.max() >= ROOM)))
    return found


def _led(number: int, start: Point, ground: Ground, used: Bools, words: Bools) -> list[Item]:
    """A number in the nearest free place, with a leader to its band; `used` grows by it."""
    for reach in np.arange(4.0, 90.0, 1.0):
        for turn in range(_TURN):
            angle = -pi / 2 + (turn // 2 + 0.5) * (1 if turn % 2 else -1) * 2 * pi / _TURN
            at = start[0] + float(reach) * cos(angle), start[1] + float(reach) * sin(angle)
            if _free(at, ground, used) and not _crosses(start, at, ground, words):
                used |= ground.near(at, 3.2)
                return [_leader(start, at), _number(number, at)]
    return []


def _crosses(start: Point, at: Point, ground: Ground, words: Bools) -> bool:
    """Whether a straight line runs through words."""
    share = np.linspace(0.0, 1.0, 4 * int(hypot(at[0] - start[0], at[1] - start[1])) + 2)
    x, y = (a + share * (b - a) for a, b in zip(start, at, strict=True))
    i, j = np.rint((y - ground.top) / STEP), np.rint((x - ground.left) / STEP)
    return bool(words[i.astype(int), j.astype(int)].any())


def _free(at: Point, ground: Ground, used: Bools) -> bool:
    right, foot = ground.left + STEP * ground.columns, ground.top + STEP * ground.rows
    inside = ground.left + 2 <= at[0] <= right - 2 and ground.top + 2 <= at[1] <= foot - 2
    return inside and not bool((used & ground.near(at, 2.2)).any())


def _leader(start: Point, at: Point) -> Line:
    long = hypot(at[0] - start[0], at[1] - start[1])
    short = (long - 1.7) / long
    end = start[0] + (at[0] - start[0]) * short, start[1] + (at[1] - start[1]) * short
    return Line(*start, *end, LineKind.THIN, "band-leader")
