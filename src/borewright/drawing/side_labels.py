"""The labels over the side view: where the face may sit, where it touches, where the tool stops."""

from __future__ import annotations

from borewright.answer.picture import Layout
from borewright.drawing.callout import Callout, Placed
from borewright.drawing.dimension import SIZE, without_other_unit
from borewright.drawing.frame import Frame, from_large_end
from borewright.drawing.scene import Item, Line, LineKind, Text
from borewright.quantities.show import Show
from borewright.reference import tables

LINE = 4.0
"""From one line of label to the next, mm."""
_FILLS = 1e-6
"""How near a seat comes to a line it is clipped to, metres."""


def labels_over(frame: Frame, show: Show, narrow: bool = False) -> tuple[Callout, ...]:
    """Every label over the view, not yet placed; only the frame's level places are used.

    `narrow` labels of the tool's stops go without the other unit.
    """
    stops = (_tool(frame, show, "right", narrow), _tool(frame, show, "left", narrow))
    return (_seat(frame, show), *stops, _touch(frame))


def rows_of(labels: tuple[Placed, ...]) -> int:
    """How many rows the labels take."""
    return max((p.row + len(p.callout.lines) for p in labels), default=0)


def label_items(labels: tuple[Placed, ...], frame: Frame, start: float) -> tuple[Item, ...]:
    """Words in rows going up from `start`, their stems down to the mandrel."""
    stems = (item for label in labels for item in _stems(label, frame, start))
    return (*stems, *(item for label in labels for item in _words(label, start)))


def seat_fills_the_lines(layout: Layout) -> bool:
    """Whether the face may end anywhere that leaves room for the tool: the bore is not known."""
    room = tables().allowance("tool_clearance").best
    high, low = layout.tool_limit_large - room, layout.tool_limit_small + layout.work_length + room
    return layout.seat.high >= high - _FILLS and layout.seat.low <= low + _FILLS


def _seat(frame: Frame, show: Show) -> Callout:
    layout, seat = frame.layout, frame.layout.seat
    near, far = from_large_end(layout, seat.high), from_large_end(layout, seat.low)
    verb = "must end" if seat_fills_the_lines(layout) else "may sit"
    lines = (
        f"face {layout.leading_face} {verb} between these two lines,",
        f"{show.band(near, far, 'length')} from the large-end face",
    )
    return Callout(lines, (frame.x(seat.high), frame.x(seat.low)), "seat")


def _tool(frame: Frame, show: Show, side: str, narrow: bool) -> Callout:
    """A stop for the tool; its words stand on the side that is kept where there is room."""
    large = side == "right"
    x = frame.layout.tool_limit_large if large else frame.layout.tool_limit_small
    at = show.length(from_large_end(frame.layout, x))
    lines = (f"keep the tool {side} of this line,", f"at {at}")
    if narrow:
        lines = (f"keep the tool {side} of", f"this line, at {without_other_unit(at)}")
    sides = ("right", "left") if large else ("left", "right")
    return Callout(lines, (frame.x(x),), f"tool-limit-{'large' if large else 'small'}", sides)


def _touch(frame: Frame) -> Callout:
    at = frame.x(frame.layout.touch.best)
    return Callout(("first touch",), (at,), "first-touch", ("right", "left"))


def _stems(label: Placed, frame: Frame, start: float) -> tuple[Item, ...]:
    name = label.callout.name
    limit = name != "first-touch"
    kind = LineKind.LIMIT if limit else LineKind.THIN
    radius = frame.layout.large_end / 2
    # The limit lines cross the whole mandrel: the eye must find them from both sides.
    foot = frame.down(radius) + 1.5 if limit else frame.up(radius)
    top = start - LINE * label.reach
    names = ("seat-high", "seat-low") if name == "seat" else (name,)
    return tuple(
        Line(x, top, x, foot, kind, part)
        for x, part in zip(label.callout.stems, names, strict=True)
    )


def _words(label: Placed, start: float) -> tuple[Item, ...]:
    to_the_left = label.callout.flag and label.left < label.callout.stems[0]
    x = label.left + label.callout.width * SIZE if to_the_left else label.left
    return tuple(
        Text(x, start - LINE * (label.row + k) - 0.25 * SIZE, words, SIZE, _anchor(to_the_left))
        for k, words in enumerate(reversed(label.callout.lines))
    )


def _anchor(to_the_left: bool) -> str:
    return "end" if to_the_left else "start"
