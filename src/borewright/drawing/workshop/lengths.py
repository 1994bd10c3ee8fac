"""Dimensions along the axis, in rows under the part, shorter ones nearer to it."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.drawn_part import Along, DrawnPart
from borewright.drawing.dimension_parts import HEAD as ARROW
from borewright.drawing.dimension_parts import ROOM, TAIL
from borewright.drawing.measure import text_width
from borewright.drawing.scene import Dimension
from borewright.drawing.workshop.bands import outside_at
from borewright.drawing.workshop.limits_text import limits_text
from borewright.drawing.workshop.look import Look
from borewright.drawing.workshop.sheet_frame import SheetFrame

SIZE = 3.1
FIRST = 8.0
"""From the part's largest radius to the first row, mm."""
ROW = 6.4
AIR = 1.6


@dataclass(frozen=True, slots=True)
class _Placed:
    """A dimension with what it takes up along its row: its line and its words."""

    low: float
    high: float
    words_at: float


def length_items(
    part: DrawnPart, frame: SheetFrame, radius_mm: float, look: Look
) -> tuple[tuple[Dimension, ...], int]:
    """The dimensions, and how many rows they fill. `radius_mm`: half the height drawn, on paper."""
    rows: list[list[_Placed]] = []
    passing = {frame.x(at) for along in part.along for at in (along.start, along.end)}
    items = []
    for along in sorted(part.along, key=lambda a: (abs(a.end - a.start), a.start)):
        words = limits_text(along.limits, look)
        own = {frame.x(along.start), frame.x(along.end)}
        placed, row = _first_free(rows, along, words, frame, passing - own)
        y = frame.axis + radius_mm + FIRST + ROW * row
        items.append(_dimension(part, along, words, frame, y, placed.words_at))
    return tuple(items), len(rows)


def _first_free(
    rows: list[list[_Placed]],
    along: Along,
    words: str,
    frame: SheetFrame,
    passing: set[float],
) -> tuple[_Placed, int]:
    """The nearest row with room, clear of the lines that pass to farther ones where one is."""
    wide = text_width(words, SIZE)
    spots = _spots(along, wide, frame)
    clear = [s for s in spots if not any(abs(x - s.words_at) < wide / 2 + 0.6 for x in passing)]
    for number in range(len(rows) + 1):
        if number == len(rows):
            rows.append([])
        for spot in clear or spots:
            if all(spot.high + AIR < p.low or spot.low - AIR > p.high for p in rows[number]):
                rows[number].append(spot)
                return spot, number
    return spots[0], len(rows) - 1


def _spots(along: Along, wide: float, frame: SheetFrame) -> list[_Placed]:
    """Places for the words: within the dimension, else to its right, else to its left."""
    low, high = sorted((frame.x(along.start), frame.x(along.end)))
    inside = high - low >= ROOM * ARROW
    reach = (low, high) if inside else (low - TAIL, high + TAIL)
    if inside and high - low > wide + 2 * ARROW + 1.0:
        return [_Placed(low, high, (low + high) / 2)]
    right, left = reach[1] + AIR + wide / 2, reach[0] - AIR - wide / 2
    return [
        _Placed(reach[0], right + wide / 2, right),
        _Placed(left - wide / 2, reach[1], left),
    ]


def _dimension(
    part: DrawnPart, along: Along, words: str, frame: SheetFrame, y: float, words_at: float
) -> Dimension:
    feet = [frame.y(-outside_at(part, at)) for at in (along.start, along.end)]
    return Dimension(
        frame.x(along.start),
        feet[0],
        frame.x(along.end),
        feet[1],
        line=y,
        text=words,
        x=words_at,
        y=y - 0.9,
        size=SIZE,
        name=along.name or "along",
    )
