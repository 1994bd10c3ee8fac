"""Upright lines broken where words stand in their way, as a draughtsman breaks them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from borewright.drawing.measure import Box, text_box
from borewright.drawing.scene import Item, Line, LineKind, Text

_AIR = 0.35
_CRUMB = 2.5
"""A piece of line shorter than this between two words reads as dirt and is left out, mm."""


def broken(items: tuple[Item, ...]) -> tuple[Item, ...]:
    """The items with every thin upright line broken at the words it would run through.

    >>> from borewright.drawing.scene import Line, LineKind, Text
    >>> line, words = Line(5, 0, 5, 20, LineKind.THIN), Text(0, 10, "words", 3.0)
    >>> [round(p.y1) for p in broken((line, words)) if isinstance(p, Line)]
    [0, 11]
    """
    boxes = [text_box(item) for item in items if isinstance(item, Text)]
    return tuple(piece for item in items for piece in _pieces(item, boxes))


def _pieces(item: Item, boxes: list[Box]) -> Iterator[Item]:
    if not isinstance(item, Line) or item.x1 != item.x2 or item.kind is LineKind.VISIBLE:
        yield item
        return
    top, foot = sorted((item.y1, item.y2))
    begin = top
    for gap_top, gap_foot in _gaps(item.x1, top, foot, boxes):
        if gap_top - begin > (_CRUMB if begin > top else 0.0):
            yield replace(item, y1=begin, y2=gap_top)
        begin = max(begin, gap_foot)
    if foot > begin:
        yield replace(item, y1=begin, y2=foot)


def _gaps(x: float, top: float, foot: float, boxes: Iterable[Box]) -> list[tuple[float, float]]:
    struck = (b for b in boxes if b.left - _AIR < x < b.right + _AIR)
    return sorted(
        (b.top - _AIR, b.bottom + _AIR) for b in struck if b.top < foot and b.bottom > top
    )
