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
    items = []
    for along in sorted(part.along, key=lambda a: (abs(a.end - a.start), a.start)):
        words = limits_text(along.limits, look)
        row, placed = _first_free(rows, along, words, frame)
        y = frame.axis + radius_mm + FIRST + ROW * row
        items.append(_dimension(part, along, words, frame, y, placed.words_at))
    return tuple(items), len(rows)


def _first_free(
    rows: list[list[_Placed]], along: Along, words: str, frame: SheetFrame
) -> tuple[int, _Placed]:
    wide = text_width(words, SIZE)
    low, high = sorted((frame.x(along.start), frame.x(along.end)))
    inside = high - low >= ROOM * ARROW
    fits = inside and high - low > wide + 2 * ARROW + 1.0
    reach = (low, high) if inside else (low - TAIL, high + TAIL)
    if fits:
        spots = [_Placed(low, high, (low + high) / 2)]
    else:
        right = reach[1] + AIR + wide / 2
        left = reach[0] - AIR - wide / 2
        spots = [
            _Placed(reach[0], right + wide / 2, right),
            _Placed(left - wide / 2, reach[1], left),
        ]
    for number, row in enumerate(rows):
        for spot in spots:
            if all(spot.high + AIR < p.low or spot.low - AIR > p.high for p in row):
                row.append(spot)
                return number, spot
    rows.append([spots[0]])
    return len(rows) - 1, spots[0]


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
