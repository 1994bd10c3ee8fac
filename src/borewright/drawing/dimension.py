"""Dimension lines: one to a row, their words inside when they fit and beside when they do not.

Words stand clear of the extension lines of farther rows, which pass through this one, wherever
there is such a place on the plate.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import pi

from borewright.drawing.measure import text_width
from borewright.drawing.scene import Arrow, Item, Line, LineKind, Text

SIZE = 3.1
"""Letter size of labels, mm: ascenders then stand 2.2 mm high."""
ROW = 4.2
"""From one row of dimensions to the next, mm."""
_HEAD = 2.2
_CLEAR = 4.2
_OVERRUN = 1.0
_AIR = 1.2
"""From words to an upright line that passes them, mm."""


@dataclass(frozen=True, slots=True)
class Span:
    """What is dimensioned: two points, and the words, then shorter ones for where room is short."""

    x1: float
    y1: float
    x2: float
    y2: float
    words: tuple[str, ...]
    name: str


@dataclass(frozen=True, slots=True)
class _Spot:
    """Where the words of a dimension went."""

    words: str
    x: float
    inside: bool


def level_dimension(
    span: Span, y: float, left: float, right: float, passing: tuple[float, ...] = ()
) -> tuple[Item, ...]:
    """A horizontal dimension on the row `y` with its words between `left` and `right`.

    `passing` are the upright lines that run through the row on their way to farther ones.
    """
    if span.x1 > span.x2:
        span = Span(span.x2, span.y2, span.x1, span.y1, span.words, span.name)
    spot = _spot(span, left, right, passing)
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


def _spot(span: Span, left: float, right: float, passing: tuple[float, ...]) -> _Spot:
    spots = [spot for words in span.words for spot in _spots(span, words, passing)]
    on_plate = [s for s in spots if left <= _start(s) and _start(s) + _wide(s) <= right]
    clear = [s for s in on_plate if not any(_meets(s, x) for x in passing)]
    short = span.words[-1]
    last = _Spot(short, max(left, right - text_width(short, SIZE)), False)
    return next(iter([*clear, *on_plate]), last)


def _spots(span: Span, words: str, passing: tuple[float, ...]) -> Iterator[_Spot]:
    """Places for the words, best first: within the dimension, then beside it, nearest first."""
    wide = text_width(words, SIZE)
    low, high = span.x1 + _HEAD + 1.25 + wide / 2, span.x2 - _HEAD - 1.25 - wide / 2
    shifted = (x + side * (wide / 2 + _AIR) for x in passing for side in (-1, 1))
    middle = (span.x1 + span.x2) / 2
    if low <= high:
        inside = (x for x in (middle, *shifted) if low <= x <= high)
        yield from (_Spot(words, x, True) for x in sorted(inside, key=lambda x: abs(x - middle)))
    yield _Spot(words, span.x2 + _CLEAR, False)
    yield _Spot(words, span.x1 - _CLEAR - wide, False)
    beyond = [x + _AIR for x in passing if x + _AIR > span.x2 + _CLEAR]
    before = [x - _AIR - wide for x in passing if x - _AIR < span.x1 - _CLEAR]
    yield from (_Spot(words, x, False) for x in (*sorted(beyond), *sorted(before, reverse=True)))


def _start(spot: _Spot) -> float:
    return spot.x - _wide(spot) / 2 if spot.inside else spot.x


def _wide(spot: _Spot) -> float:
    return text_width(spot.words, SIZE)


def _meets(spot: _Spot, x: float) -> bool:
    return _start(spot) - 0.5 < x < _start(spot) + _wide(spot) + 0.5


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
