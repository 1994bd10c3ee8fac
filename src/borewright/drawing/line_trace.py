"""A line of a chart on paper, and the distances that its words are kept at. Boxes are (n, 4)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from borewright.drawing.dimension import SIZE
from borewright.drawing.measure import DESCENT, Box
from borewright.drawing.scene import Point, Text
from borewright.mechanics.num import Bools, Floats

FINE = 0.8
"""From one point that stands for a line to the next, mm."""


@dataclass(frozen=True, slots=True)
class Trace:
    """A line of a chart on paper: its name, its words and its corners."""

    name: str
    words: str
    corners: tuple[Point, ...]

    @property
    def points(self) -> Floats:
        """Points along the line close enough to stand for it, shape (n, 2)."""
        corners = np.array(self.corners, dtype=np.float64)
        steps = np.hypot(*np.diff(corners, axis=0).T) if len(corners) > 1 else np.zeros(0)
        along = np.concatenate([[0.0], np.cumsum(steps)])
        wanted = np.linspace(0.0, along[-1], max(2, int(along[-1] / FINE) + 2))
        return np.stack([np.interp(wanted, along, corners[:, k]) for k in (0, 1)], axis=1)

    def highest(self, x: float) -> float:
        """Its highest place over x (mm down the paper)."""
        found = [y for at, y in self.corners if abs(at - x) < 1e-9]
        for (x1, y1), (x2, y2) in pairwise(self.corners):
            if min(x1, x2) < x < max(x1, x2):
                found.append(y1 + (y2 - y1) * (x - x1) / (x2 - x1))
        return min(found, default=self.corners[0][1])


def gaps(boxes: Floats, points: Floats) -> Floats:
    """The least distance (mm) of each box to the points, shape (n,); 0 where one lies in it."""
    x, y = points[:, 0], points[:, 1]
    across = np.maximum(np.maximum(boxes[:, :1] - x, x - boxes[:, 2:3]), 0.0)
    down = np.maximum(np.maximum(boxes[:, 1:2] - y, y - boxes[:, 3:4]), 0.0)
    return np.asarray(np.sqrt((across * across + down * down).min(axis=1)))


def meets(boxes: Floats, others: Sequence[Box], air: float) -> Bools:
    """Whether each box comes nearer than `air` to any of the others, shape (n,)."""
    found = np.zeros(len(boxes), dtype=bool)
    for w in others:
        across = (boxes[:, 0] - air < w.right) & (w.left < boxes[:, 2] + air)
        found |= across & (boxes[:, 1] - air < w.bottom) & (w.top < boxes[:, 3] + air)
    return found


def struck_by(boxes: Floats, uprights: Sequence[float]) -> Floats:
    """How many upright lines at these places run through each box, shape (n,)."""
    found = np.zeros(len(boxes))
    for x in uprights:
        found += (boxes[:, 0] < x) & (x < boxes[:, 2])
    return found


def words_in(box: Floats, trace: Trace) -> Text:
    """The words of a line in a box (4,) made for them."""
    base = float(box[3]) - DESCENT * SIZE
    return Text(float(box[0]), base, trace.words, SIZE, name=f"{trace.name}-words")
