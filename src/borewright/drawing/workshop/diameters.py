"""Dimensions across the part: in columns to its left and right, smaller ones nearer to it.

Words that are longer than what they measure do not stand along their line: they go over the part,
level, on a line drawn up from it (`overhead`).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from borewright.answer.drawn_part import Across, DrawnPart
from borewright.drawing.measure import text_width
from borewright.drawing.scene import Dimension
from borewright.drawing.workshop.bands import ends_of, outside_at
from borewright.drawing.workshop.limits_text import limits_text
from borewright.drawing.workshop.look import Look
from borewright.drawing.workshop.sheet_frame import SheetFrame

SIZE: Final = 3.1
FIRST: Final = 10.0
COLUMN: Final = 6.6
AIR: Final = 3.0
"""What words along a line leave free at its ends, mm together."""
STEPS: Final = 8
SLIGHT: Final = 0.04
"""A taper or a draft this slight (of the radius) does not hide a line that goes past it."""


@dataclass(frozen=True, slots=True)
class Column:
    """A diameter with the x of its line (mm on paper); `level`: its words go over the part."""

    across: Across
    line: float
    words: str
    level: bool


def standing(part: DrawnPart) -> tuple[Across, ...]:
    """Diameters that stand on the part itself: as asked, or because metal hides their way out."""
    return tuple(a for a in part.across if a.place == "inside" or _buried(a, part))


def _buried(across: Across, part: DrawnPart) -> bool:
    """Whether an outside diameter has thicker metal between it and the end it would go out to."""
    left, right = ends_of(part)
    end = left if across.place == "left" else right
    radius = across.limits.size / 2
    if abs(outside_at(part, across.at) - radius) > SLIGHT * radius:
        return False
    places = (across.at + (end - across.at) * k / STEPS for k in range(1, STEPS + 1))
    return any(outside_at(part, at) > (1 + SLIGHT) * radius for at in places)


def _side(part: DrawnPart, side: str) -> list[Across]:
    on_part = standing(part)
    here = [a for a in part.across if a.place == side and a not in on_part]
    return sorted(here, key=lambda a: a.limits.size)


def columns_of(part: DrawnPart) -> tuple[int, int]:
    """How many columns of dimensions stand to the left and to the right."""
    return len(_side(part, "left")), len(_side(part, "right"))


def columns(part: DrawnPart, frame: SheetFrame, look: Look) -> tuple[Column, ...]:
    """Every column with its words and whether they have room along its line."""
    left, right = ends_of(part)
    found = []
    for side, edge, way in (("left", frame.x(left), -1), ("right", frame.x(right), 1)):
        for k, across in enumerate(_side(part, side)):
            words = limits_text(across.limits, look, across=True)
            room = frame.long(across.limits.size) - AIR
            level = text_width(words, SIZE) > room
            found.append(Column(across, edge + way * (FIRST + COLUMN * k), words, level))
    return tuple(found)


def column_item(column: Column, frame: SheetFrame) -> Dimension:
    """The upright dimension of a column, its words along the line."""
    return measured(column.across, column.line, column.words, frame, column.line - 0.9, frame.axis)


def measured(
    across: Across,
    line: float,
    words: str,
    frame: SheetFrame,
    x: float,
    y: float,
    level: bool = False,
) -> Dimension:
    """An upright dimension of a diameter with its line at `line` and the words' middle at x, y."""
    at, radius = frame.x(across.at), across.limits.size / 2
    return Dimension(
        at,
        frame.y(radius),
        at,
        frame.y(-radius),
        line=line,
        text=words,
        x=x,
        y=y,
        upright=True,
        bare=abs(line - at) < 1e-6,
        size=SIZE,
        level_words=level,
        name=across.name or "across",
    )
