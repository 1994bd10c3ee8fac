"""Words over the part on upright lines: diameters that stand on it, and what is pointed at.

Each has its line, and its words to the right of it (to the left near the right edge) on the lowest
row where neither words nor lines of others are met.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import pi

from borewright.answer.drawn_part import Across, DrawnPart, Pointed
from borewright.drawing.measure import text_width
from borewright.drawing.scene import Arrow, Item, Line, LineKind, Text
from borewright.drawing.workshop.diameters import columns, measured, standing
from borewright.drawing.workshop.limits_text import limits_text
from borewright.drawing.workshop.look import Look
from borewright.drawing.workshop.sheet_frame import SheetFrame

SIZE = 3.1
FIRST = 7.0
"""From the part's largest radius to the first row of words, mm."""
ROW = 5.0
AIR = 1.4
MOST_ROWS = 40


@dataclass(frozen=True, slots=True)
class _Word:
    """Words on an upright line at x; they reach from `low` to `high` along their row."""

    x: float
    low: float
    high: float
    text: str
    what: Across | Pointed
    row: int = 0


def overhead_items(
    part: DrawnPart, frame: SheetFrame, radius_mm: float, look: Look, right: float
) -> tuple[tuple[Item, ...], int]:
    """The items and how many rows they fill. `right` is where words must end, mm on paper."""
    placed: list[_Word] = []
    for word in sorted(_words(part, frame, look, right), key=lambda w: -w.x):
        placed.append(_lowest(word, placed))
    top = frame.axis - radius_mm - FIRST
    items = [item for word in placed for item in _items(word, top - ROW * word.row, frame)]
    return tuple(items), max((w.row + 1 for w in placed), default=0)


def _words(part: DrawnPart, frame: SheetFrame, look: Look, right: float) -> Iterator[_Word]:
    for across in standing(part):
        text = limits_text(across.limits, look, across=True)
        yield _beside(frame.x(across.at), text, across, right)
    for column in columns(part, frame, look):
        if column.level:
            yield _beside(column.line, column.words, column.across, right)
    for pointed in part.pointed:
        yield _beside(frame.x(pointed.at), pointed.text, pointed, right)


def _beside(x: float, text: str, what: Across | Pointed, right: float) -> _Word:
    wide = text_width(text, SIZE)
    if x + AIR + wide <= right:
        return _Word(x, x + AIR, x + AIR + wide, text, what)
    return _Word(x, x - AIR - wide, x - AIR, text, what)


def _lowest(word: _Word, placed: list[_Word]) -> _Word:
    for row in range(MOST_ROWS):
        if all(_clear(word, row, other) for other in placed):
            return _at_row(word, row)
    return _at_row(word, MOST_ROWS)


def _at_row(word: _Word, row: int) -> _Word:
    return _Word(word.x, word.low, word.high, word.text, word.what, row)


def _clear(word: _Word, row: int, other: _Word) -> bool:
    apart = word.high + AIR < other.low or word.low - AIR > other.high
    if row == other.row and not apart:
        return False
    # A line runs from the part up to its own row, so it passes every row below that.
    if other.row >= row and word.low - AIR < other.x < word.high + AIR:
        return False
    return not (row >= other.row and other.low - AIR < word.x < other.high + AIR)


def _items(word: _Word, y: float, frame: SheetFrame) -> Iterator[Item]:
    middle = (word.low + word.high) / 2
    if isinstance(word.what, Pointed):
        foot = frame.y(word.what.radius)
        yield Line(word.x, y, word.x, foot, LineKind.THIN, word.what.name or "pointer")
        yield Arrow(word.x, foot, pi / 2)
        name = f"{word.what.name or 'pointer'}-words"
        yield Text(middle, y + 0.33 * SIZE, word.text, SIZE, "middle", name=name)
        return
    base = y + 0.33 * SIZE
    yield measured(word.what, word.x, word.text, frame, middle, base, level=True)
    yield Line(word.x, y, word.x, frame.y(word.what.limits.size / 2), LineKind.THIN, "lead")
