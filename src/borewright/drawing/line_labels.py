"""Words at the lines of a chart: as near to their own line as they can stand, on no other.

Every place along a line is tried, over it, under it and past its ends; the nearest that touches
nothing is taken. Where there is none the words stand in the open with a thin line to their own; and
a line whose words find no place at all is handed back: they then go over the frame.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from borewright.drawing.dimension import SIZE
from borewright.drawing.line_trace import Trace, gaps, meets, struck_by, words_in
from borewright.drawing.measure import ASCENT, DESCENT, Box, text_box, text_width
from borewright.drawing.scene import Circle, Item, Line, LineKind, Text
from borewright.mechanics.num import Floats

AIR = 0.5
"""From words to the line they name, mm; to any other line at least this much more."""
FARTHEST = 6.0
"""Words farther than this (mm) from the middle of their line would not be seen as its own."""
TALL = (ASCENT + DESCENT) * SIZE
_EVERY = 2.0
"""From one place that is tried to the next, mm."""
_BESIDE = 0.9
"""From a thin line that points at a curve to its words, mm."""
_STEMS, _HEIGHTS = 15, 14
"""Places along a line that are pointed at, and heights of the words, that are tried."""


@dataclass(frozen=True, slots=True)
class Labels:
    """Words that found a place, thin lines from them, and the lines whose words did not."""

    words: tuple[Text, ...]
    pointers: tuple[Item, ...]
    left: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Room:
    """What words must keep clear of: the plot's edges, all lines, upright lines, other words."""

    plot: Box
    points: dict[str, Floats]
    uprights: tuple[float, ...]
    taken: tuple[Box, ...] = ()

    def others(self, name: str) -> Floats:
        """The points of all lines but one, shape (n, 2)."""
        found = [points for key, points in self.points.items() if key != name]
        return np.concatenate([np.full((1, 2), -1e4), *found])

    def with_(self, *more: Box) -> _Room:
        return _Room(self.plot, self.points, self.uprights, (*self.taken, *more))


def labels_at_lines(
    traces: Sequence[Trace], plot: Box, uprights: Sequence[float], without: Sequence[str] = ()
) -> Labels:
    """Places inside `plot` for the words of all lines but those named in `without`.

    `uprights` are the places (mm) of upright lines, which words keep clear of where they can.
    """
    room = _Room(plot, {trace.name: trace.points for trace in traces}, tuple(uprights))
    words: list[Text] = []
    pointers: list[Item] = []
    wanted = [trace for trace in traces if trace.words and trace.name not in without]
    crowded, left = [], []
    for trace in sorted(wanted, key=lambda t: -text_width(t.words, SIZE)):
        spot = _at_line(trace, room)
        if spot is None:
            crowded.append(trace)
            continue
        words.append(spot)
        room = room.with_(text_box(spot))
    for trace in crowded:
        found = _pointing(trace, room)
        if found is None:
            left.append(trace.name)
            continue
        spot, line = found
        words.append(spot)
        pointers += [line, Circle(line.x1, line.y1, 0.55, LineKind.BLANK, "black", line.name)]
        room = room.with_(text_box(spot), _thin_box(line))
    return Labels(tuple(words), tuple(pointers), tuple(left))


def _at_line(trace: Trace, room: _Room) -> Text | None:
    own = room.points[trace.name]
    boxes, off = _tried(own, text_width(trace.words, SIZE), room.plot)
    if not len(boxes):
        return None
    clear = gaps(boxes, room.others(trace.name)) > gaps(boxes, own) + AIR
    good = clear & (off < FARTHEST) & ~meets(boxes, room.taken, AIR)
    inwards = np.minimum(boxes[:, 0] - room.plot.left, room.plot.right - boxes[:, 2])
    to_right = room.plot.right - boxes[:, 2]
    cost = off + 3.0 * struck_by(boxes, room.uprights) + 0.04 * inwards + 0.02 * to_right
    return _text(trace, boxes, np.where(good, cost, np.inf))


def _tried(own: Floats, width: float, plot: Box) -> tuple[Floats, Floats]:
    """Boxes over, under and past the line that lie in the plot, and how far off it each seems."""
    beside, ends = _along(own, width, plot), _past(own, width)
    off = np.concatenate([_to_middle(beside, own), np.full(len(ends), 1.0)])
    boxes = np.concatenate([beside, ends])
    inside = _inside(boxes, plot)
    return boxes[inside], off[inside]


def _along(own: Floats, width: float, plot: Box) -> Floats:
    low, high = float(own[:, 0].min()), float(own[:, 0].max())
    first = max(plot.left + AIR, low - 1.0)
    last = min(plot.right - AIR - width, max(high - width + 1.0, first))
    if last < first - 1e-9:
        return np.zeros((0, 4))
    starts = np.linspace(first, last, int((last - first) / _EVERY) + 2)
    over = (own[:, 0] >= starts[:, None]) & (own[:, 0] <= starts[:, None] + width)
    top = np.where(over, own[:, 1], np.inf).min(axis=1)
    base = np.where(over, own[:, 1], -np.inf).max(axis=1)
    edges = (top - AIR - TALL, base + AIR)
    boxes = np.concatenate([_boxes(starts, edge, width) for edge in edges])
    return np.asarray(boxes[np.isfinite(boxes).all(axis=1)])


def _past(own: Floats, width: float) -> Floats:
    """Past either end, at its height."""
    left, right = own[np.argmin(own[:, 0])], own[np.argmax(own[:, 0])]
    starts = np.array([right[0] + 1.0, left[0] - 1.0 - width])
    return _boxes(starts, np.array([right[1], left[1]]) - TALL / 2, width)


def _pointing(trace: Trace, room: _Room) -> tuple[Text, Line] | None:
    """Words in the open beside an upright line that ends at their own line."""
    own, width = room.points[trace.name], text_width(trace.words, SIZE)
    feet = own[np.linspace(0, len(own) - 1, _STEMS).round().astype(int)]
    tops = np.linspace(room.plot.top + AIR, room.plot.bottom - AIR - TALL, _HEIGHTS)
    pairs = np.array([(x, y, top, side) for x, y in feet for top in tops for side in (0, 1)])
    stem, foot, top = pairs[:, 0], pairs[:, 1], pairs[:, 2]
    starts = np.where(pairs[:, 3] == 0, stem + _BESIDE, stem - _BESIDE - width)
    boxes = _boxes(starts, top, width)
    under = foot > top + TALL / 2
    stems = np.stack(
        [
            stem - 0.3,
            np.where(under, top, foot + AIR),
            stem + 0.3,
            np.where(under, foot - AIR, top + TALL),
        ],
        axis=1,
    )
    everything = np.concatenate([room.others(trace.name), own])
    good = _inside(boxes, room.plot) & (gaps(boxes, everything) > 2 * AIR)
    good &= ~meets(boxes, room.taken, 2 * AIR) & ~meets(stems, room.taken, AIR)
    good &= ~struck_by(stems, [x + d for x in room.uprights for d in (-0.8, 0.0, 0.8)]).astype(bool)
    good &= (stem > room.plot.left + 1.0) & (stem < room.plot.right - 1.0)
    crossed = gaps(stems, room.others(trace.name)) <= 0.3
    unsure = gaps(np.stack([stem, foot, stem, foot], axis=1), room.others(trace.name)) < 1.0
    length = stems[:, 3] - stems[:, 1]
    cost = length + 6.0 * crossed + 12.0 * unsure + 3.0 * struck_by(boxes, room.uprights)
    cost = np.where(good & (length > TALL), cost, np.inf)
    text = _text(trace, boxes, cost)
    if text is None:
        return None
    k = int(np.argmin(cost))
    far = stems[k, 1] if under[k] else stems[k, 3]
    name = f"{trace.name}-stem"
    x, y = float(stem[k]), float(foot[k])
    return text, Line(x, y, x, float(far), LineKind.THIN, name)


def _text(trace: Trace, boxes: Floats, cost: Floats) -> Text | None:
    """The words in the box that costs least; None where every box is ruled out."""
    if not len(cost) or not np.isfinite(cost.min()):
        return None
    return words_in(boxes[int(np.argmin(cost))], trace)


def _boxes(starts: Floats, tops: Floats, width: float) -> Floats:
    return np.stack([starts, tops, starts + width, tops + TALL], axis=1)


def _inside(boxes: Floats, plot: Box) -> np.ndarray:
    across = (boxes[:, 0] >= plot.left + AIR - 1e-9) & (boxes[:, 2] <= plot.right - AIR + 1e-9)
    return across & (boxes[:, 1] >= plot.top + AIR - 1e-9) & (boxes[:, 3] <= plot.bottom - AIR)


def _to_middle(boxes: Floats, own: Floats) -> Floats:
    """How far (mm) the middle of each box stands off its line, less half its height."""
    x, y = (boxes[:, 0] + boxes[:, 2]) / 2, (boxes[:, 1] + boxes[:, 3]) / 2
    least = np.hypot(x[:, None] - own[:, 0], y[:, None] - own[:, 1]).min(axis=1)
    return np.asarray(least - TALL / 2)


def _thin_box(line: Line) -> Box:
    low, high = sorted((line.y1, line.y2))
    return Box(line.x1 - 0.3, low, line.x1 + 0.3, high)
