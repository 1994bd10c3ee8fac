"""Spokes, keyway and cross hole, as the end view and the side view show them: plain black lines."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin, sqrt

from borewright.answer.picture import Layout, Ring
from borewright.drawing.frame import Frame
from borewright.drawing.scene import Item, Line, LineKind, Path, Point

_HOLE_AT = pi / 4
"""The cross hole is drawn clear of the dog's screw and the arm: down and to the right (radians)."""

Size = Callable[[float], float]
"""From metres to mm on paper."""


def end_spokes(layout: Layout, cx: float, cy: float, size: Size) -> tuple[Item, ...]:
    """Both sides of every spoke, from hub to rim, the first ones beside the top."""
    if layout.spokes is None:
        return ()
    turn = 2 * pi / layout.spokes.number
    return tuple(
        side
        for ring in layout.rings
        if ring.spoked
        for k in range(layout.spokes.number)
        for side in _sides(
            (cx, cy),
            -pi / 2 + (k + 0.5) * turn,
            (size(ring.inside) / 2, size(ring.outside) / 2),
            size(layout.spokes.width) / 2,
            (LineKind.VISIBLE, "spoke"),
        )
    )


def end_hidden(layout: Layout, cx: float, cy: float, size: Size) -> tuple[Item, ...]:
    """Keyway and cross hole, dashed: mandrel, dog and hub stand before them."""
    return (*_end_keyway(layout, cx, cy, size), *_end_hole(layout, cx, cy, size))


def side_spokes(frame: Frame) -> tuple[Item, ...]:
    """A spoke in the upper half: its outline, never hatched."""
    return tuple(_spoke(frame, ring) for ring in frame.layout.rings if ring.spoked)


def _spoke(frame: Frame, ring: Ring) -> Item:
    left, right = frame.z(ring.start), frame.z(ring.end)
    top, foot = frame.up(ring.outside / 2), frame.up(ring.inside / 2)
    corners = ((left, foot), (left, top), (right, top), (right, foot))
    return Path(corners, closed=True, fill="white", name="spoke")


def _end_keyway(layout: Layout, cx: float, cy: float, size: Size) -> tuple[Item, ...]:
    if layout.keyway is None:
        return ()
    bore, half = size(layout.bore) / 2, size(layout.keyway.width) / 2
    near = cx + sqrt(bore**2 - half**2)
    far = cx + bore + size(layout.keyway.depth)
    corners = ((near, cy - half), (far, cy - half), (far, cy + half), (near, cy + half))
    return (Path(corners, LineKind.HIDDEN, name="keyway"),)


def _end_hole(layout: Layout, cx: float, cy: float, size: Size) -> tuple[Item, ...]:
    if layout.cross_hole is None:
        return ()
    hub = max(r.outside for r in layout.rings if r.inside <= layout.bore * (1 + 1e-9))
    ends = size(layout.bore) / 2, size(hub) / 2
    half = size(layout.cross_hole.diameter) / 2
    return _sides((cx, cy), _HOLE_AT, ends, half, (LineKind.HIDDEN, "cross-hole"))


def _sides(
    center: Point, angle: float, radii: Point, half: float, style: tuple[LineKind, str]
) -> tuple[Line, Line]:
    """Two lines beside a radius, from circle to circle."""
    near, far = (sqrt(max(r**2 - half**2, 0.0)) for r in radii)

    def side(off: float) -> Line:
        (x1, y1), (x2, y2) = (_turned(center, angle, r, off) for r in (near, far))
        return Line(x1, y1, x2, y2, *style)

    return side(-half), side(half)


def _turned(center: Point, angle: float, along: float, off: float) -> Point:
    x, y = center
    return (
        x + along * cos(angle) - off * sin(angle),
        y + along * sin(angle) + off * cos(angle),
    )
