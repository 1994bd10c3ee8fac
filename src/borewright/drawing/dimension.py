"""Dimension lines: one to a row, their words inside when they fit and beside when they do not."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from borewright.drawing.measure import text_width
from borewright.drawing.scene import Arrow, Item, Line, LineKind, Text

SIZE = 3.1
"""Letter size of labels, mm: ascenders then stand 2.2 mm high."""
ROW = 4.5
"""From one row of dimensions to the next, mm."""
_HEAD = 2.2
_CLEAR = 4.2
_OVERRUN = 1.0


@dataclass(frozen=True, slots=True)
class Span:
    """What is dimensioned: two points, the words, and shorter words for when those find no room."""

    x1: float
    y1: float
    x2: float
    y2: float
    words: str
    short: str
    name: str


@dataclass(frozen=True, slots=True)
class _Spot:
    """Where the words of a dimension went."""

    words: str
    x: float
    inside: bool


def level_dimension(span: Span, y: float, left: float, right: float) -> tuple[Item, ...]:
    """A horizontal dimension on the row `y` with its words between `left` and `right`."""
    if span.x1 > span.x2:
        span = Span(span.x2, span.y2, span.x1, span.y1, span.words, span.short, span.name)
    spot = _spot(span, left, right)
    anchor = "middle" if spot.inside else "start"
    label = Text(spot.x, y + 0.33 * SIZE, spot.words, SIZE, anchor, name=f"{span.name}-words")
    return (*_extensions(span, y), *_line(span, y, spot), label)


def without_other_unit(words: str) -> str:
    """A shown quantity without the unit in brackets, for where room is short.

    >>> without_other_unit("1.94 in (49.3 mm)")
    '1.94 in'
    """
    return words.partition(" (")[0]


def fitting(words: str, room: float) -> str:
    """The words, or where they are wider than `room` mm, the words without the other unit."""
    return words if text_width(words, SIZE) <= room else without_other_unit(words)


def _spot(span: Span, left: float, right: float) -> _Spot:
    for words in (span.words, span.short):
        wide = text_width(words, SIZE)
        if wide + 2 * _HEAD + 2.5 <= span.x2 - span.x1:
            return _Spot(words, (span.x1 + span.x2) / 2, True)
        for start in (span.x2 + _CLEAR, span.x1 - _CLEAR - wide):
            if left <= start and start + wide <= right:
                return _Spot(words, start, False)
    return _Spot(span.short, max(left, right - text_width(span.short, SIZE)), False)


def _extensions(span: Span, y: float) -> tuple[Item, ...]:
    return (
        Line(span.x1, span.y1, span.x1, y + _OVERRUN, LineKind.THIN),
        Line(span.x2, span.y2, span.x2, y + _OVERRUN, LineKind.THIN),
    )


def _line(span: Span, y: float, spot: _Spot) -> tuple[Item, ...]:
    roomy = spot.inside or span.x2 - span.x1 > 3 * _HEAD
    ends = (span.x1, span.x2) if roomy else (span.x1 - _CLEAR, span.x2 + _CLEAR)
    turn = 0.0 if roomy else pi
    if not spot.inside:
        words_end = spot.x + text_width(spot.words, SIZE)
        ends = (min(ends[0], words_end), max(ends[1], spot.x))
    heads = (Arrow(span.x1, y, pi - turn), Arrow(span.x2, y, turn))
    return (Line(ends[0], y, ends[1], y, LineKind.THIN, span.name), *heads)
