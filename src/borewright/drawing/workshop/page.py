"""A workshop drawing: one part on one page, as large as its dimensions leave room for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from borewright.answer.drawn_part import DrawnPart
from borewright.drawing.measure import text_width
from borewright.drawing.scene import Dimension, Item, LineKind, Path, Scene
from borewright.drawing.workshop import diameters, from_end, lengths, overhead
from borewright.drawing.workshop.bands import ends_of, largest
from borewright.drawing.workshop.details import detail_items
from borewright.drawing.workshop.look import Look
from borewright.drawing.workshop.sheet_frame import SCALES, SheetFrame, scale_words
from borewright.drawing.workshop.side import OVERRUN, side_items
from borewright.drawing.workshop.title_block import (
    HIGH,
    LINE,
    MARKS,
    NOTE,
    WIDE,
    block_items,
    mark_items,
    notes_items,
    notes_lines,
    scale_bar,
)

MARGIN: Final = 8.0
INNER: Final = 5.0
"""Kept clear within the border, mm."""
VIEW_GAP: Final = 10.0


@dataclass(frozen=True, slots=True)
class _Room:
    """The part of the page that is left for the views."""

    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True, slots=True)
class _Set:
    """The views at one scale: their items, and whether they fit."""

    items: tuple[Item, ...]
    fits: bool


def draw_part(part: DrawnPart, look: Look) -> Scene:
    """The drawing of a part on one level page; its scale is among the scene's facts.

    >>> from borewright.answer.drawn_part import Stretch
    >>> scene = draw_part(DrawnPart("stud", "steel", (Stretch(0.0, 0.05, 0.02),)), Look("mm"))
    >>> scene.width, dict(scene.data)["scale"]
    (297.0, '5')
    """
    width, height = look.page
    notes = notes_lines(part, width - 2 * MARGIN - 2 * INNER - WIDE)
    foot = max(HIGH, NOTE + LINE * len(notes) + MARKS)
    room = _Room(
        MARGIN + INNER, MARGIN + INNER, width - MARGIN - INNER, height - MARGIN - foot - 3.0
    )
    scale, views = _largest_fitting(part, look, room)
    right, bottom = width - MARGIN, height - MARGIN
    items = (
        *_border(width, height),
        *views.items,
        *block_items(part, look, scale, right, bottom),
        *notes_items(notes, MARGIN + INNER, bottom - foot + 1.0),
        *mark_items(MARGIN + INNER, bottom - 3.0),
        *scale_bar(look, scale, MARGIN + INNER + 1.0, bottom - 10.5),
    )
    description = (
        f"{part.title}, {part.material}, scale {scale_words(scale)}. {' '.join(part.notes)}"
    )
    facts = (("scale", f"{scale:g}"), ("units", look.units), ("angle", look.angle))
    return Scene(width, height, items, part.title, description, facts)


def _largest_fitting(part: DrawnPart, look: Look, room: _Room) -> tuple[float, _Set]:
    for scale in SCALES:
        views = _views(part, look, room, scale)
        if views.fits:
            return scale, views
    return SCALES[-1], views


def _views(part: DrawnPart, look: Look, room: _Room, scale: float) -> _Set:
    left, right = ends_of(part)
    frame = SheetFrame(0.0, 0.0, scale)
    long, radius = frame.long(right - left), frame.long(largest(part)) / 2
    columns = diameters.columns_of(part)
    margins = [diameters.FIRST + diameters.COLUMN * n if n else OVERRUN + 2.0 for n in columns]
    end = 2 * (radius + from_end.OVERRUN) + VIEW_GAP if part.end_view else 0.0
    on_left = (part.end_view == "left") == (look.angle == "third")
    whole = margins[0] + long + margins[1] + end
    start = room.left + (room.right - room.left - whole) / 2
    if start < room.left:
        return _Set((), False)
    x = start + (end if on_left and part.end_view else 0.0) + margins[0]
    placed = SheetFrame(x - frame.long(left), 0.0, scale)
    over, rows_over = overhead.overhead_items(part, placed, radius, look, room.right)
    under, rows_under = lengths.length_items(part, placed, radius, look)
    above = overhead.FIRST + overhead.ROW * rows_over if rows_over else 4.0
    below = lengths.FIRST + lengths.ROW * rows_under if rows_under else 4.0
    high = above + 2 * radius + below
    if high > room.bottom - room.top or not _within(under, room):
        return _Set((), False)
    axis = room.top + (room.bottom - room.top - high) / 2 + above + radius
    frame = SheetFrame(placed.left, axis, scale)
    items: list[Item] = [
        *side_items(part, frame),
        *detail_items(part, frame),
        *(
            diameters.column_item(column, frame)
            for column in diameters.columns(part, frame, look)
            if not column.level
        ),
        *(item.moved(0.0, axis) for item in over),
        *(item.moved(0.0, axis) for item in under),
    ]
    if part.end_view:
        reach = radius + from_end.OVERRUN
        at = start + reach if on_left else start + whole - reach
        items += from_end.end_items(part, (at, axis), scale)
    return _Set(tuple(items), True)


def _within(items: tuple[Item, ...], room: _Room) -> bool:
    """Whether the words of the lengths stay on the page."""
    for item in items:
        if isinstance(item, Dimension):
            half = text_width(item.text, item.size) / 2
            if item.x - half < room.left or item.x + half > room.right:
                return False
    return True


def _border(width: float, height: float) -> tuple[Item, ...]:
    m = MARGIN
    corners = ((m, m), (width - m, m), (width - m, height - m), (m, height - m))
    return (Path(corners, LineKind.VISIBLE, True, name="border"),)
