"""A dimension as the lines, heads and words that a picture shows of it."""

from __future__ import annotations

from math import pi
from typing import Final

from borewright.drawing.scene import Arrow, Dimension, Item, Line, LineKind, Text

GAP: Final = 0.8
"""From the point measured to its extension line, mm."""
BEYOND: Final = 1.4
"""From the dimension line to the end of the extension line, mm."""
HEAD: Final = 2.2
ROOM: Final = 3.2
"""Dimensions shorter than this many heads get them from outside."""
TAIL: Final = 4.2


def dimension_parts(d: Dimension) -> tuple[Item, ...]:
    """Extension lines, dimension line, two heads and the words.

    >>> d = Dimension(0, 0, 20, 0, line=10, text="20", x=10, y=9)
    >>> [type(part).__name__ for part in dimension_parts(d)]
    ['Line', 'Line', 'Line', 'Arrow', 'Arrow', 'Text']
    """
    return (*_extensions(d), *_line(d), _words(d))


def _extensions(d: Dimension) -> tuple[Item, ...]:
    if d.bare:
        return ()
    return tuple(
        line for x, y in ((d.x1, d.y1), (d.x2, d.y2)) if (line := _extension(d, x, y)) is not None
    )


def _extension(d: Dimension, x: float, y: float) -> Line | None:
    start = x if d.upright else y
    way = 1.0 if d.line >= start else -1.0
    first, last = start + way * GAP, d.line + way * BEYOND
    if abs(d.line - start) <= GAP:
        return None
    if d.upright:
        return Line(first, y, last, y, LineKind.THIN, "extension")
    return Line(x, first, x, last, LineKind.THIN, "extension")


def _line(d: Dimension) -> tuple[Item, ...]:
    low, high = sorted((d.y1, d.y2) if d.upright else (d.x1, d.x2))
    inside = high - low >= ROOM * HEAD
    first, last = (low, high) if inside else (low - TAIL, high + TAIL)
    # Words beside the part that is measured: the line is drawn out to them.
    along = d.y if d.upright else d.x
    if not (d.level_words and d.upright):
        first, last = min(first, along), max(last, along)
    turned = 0.0 if inside else pi
    if d.upright:
        line = Line(d.line, first, d.line, last, LineKind.THIN, d.name)
        heads = (Arrow(d.line, low, -pi / 2 + turned), Arrow(d.line, high, pi / 2 + turned))
    else:
        line = Line(first, d.line, last, d.line, LineKind.THIN, d.name)
        heads = (Arrow(low, d.line, pi + turned), Arrow(high, d.line, turned))
    return (line, *heads)


def _words(d: Dimension) -> Text:
    turn = -90.0 if d.upright and not d.level_words else 0.0
    masked = turn == 0.0
    return Text(d.x, d.y, d.text, d.size, "middle", False, masked, turn, f"{d.name}-words")
