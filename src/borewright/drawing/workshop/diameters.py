"""Dimensions across the part: in columns to its left and right, smaller ones nearer to it."""

from __future__ import annotations

from borewright.answer.drawn_part import Across, DrawnPart
from borewright.drawing.measure import text_width
from borewright.drawing.scene import Dimension
from borewright.drawing.workshop.bands import ends_of
from borewright.drawing.workshop.limits_text import limits_text
from borewright.drawing.workshop.look import Look
from borewright.drawing.workshop.sheet_frame import SheetFrame

SIZE = 3.1
FIRST = 10.0
COLUMN = 6.6


def columns_of(part: DrawnPart) -> tuple[int, int]:
    """How many columns of dimensions stand to the left and to the right."""
    places = [a.place for a in part.across]
    return places.count("left"), places.count("right")


def column_items(part: DrawnPart, frame: SheetFrame, look: Look) -> tuple[Dimension, ...]:
    """One upright dimension for each diameter of a column."""
    left, right = ends_of(part)
    items = []
    for side, edge, way in (("left", frame.x(left), -1), ("right", frame.x(right), 1)):
        here = sorted((a for a in part.across if a.place == side), key=lambda a: a.limits.size)
        for k, across in enumerate(here):
            line = edge + way * (FIRST + COLUMN * k)
            items.append(_dimension(across, frame, line, limits_text(across.limits, look, True)))
    return tuple(items)


def _dimension(across: Across, frame: SheetFrame, line: float, words: str) -> Dimension:
    radius = across.limits.size / 2
    x = frame.x(across.at)
    return Dimension(
        x,
        frame.y(radius),
        x,
        frame.y(-radius),
        line=line,
        text=words,
        x=line - 0.9,
        y=frame.axis,
        upright=True,
        size=SIZE,
        name=across.name or "across",
    )


def words_height(part: DrawnPart, look: Look) -> float:
    """The most room that the words of a column take up along it, mm."""
    columns = [a for a in part.across if a.place != "inside"]
    return max((text_width(limits_text(a.limits, look, True), SIZE) for a in columns), default=0.0)
