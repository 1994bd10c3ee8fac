"""What stands on the part: center holes, flats, slits, the inner line of a thread."""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt

from borewright.answer.drawn_part import CenterHole, DrawnPart, Flat, Hollow, Slit
from borewright.drawing.scene import Circle, Item, Line, LineKind, Path
from borewright.drawing.workshop.bands import ends_of, outside_at, sectioned
from borewright.drawing.workshop.sheet_frame import SheetFrame
from borewright.quantities.si import Metre

CONE_HALF_TANGENT = 1 / sqrt(3)
"""Of the 60 degree cone of a center hole."""
BELL_HALF_TANGENT = sqrt(3)
"""Of its 120 degree bell."""
DRILLED = 1.2
"""A thread's own line stands outside the drilled hole by this share."""
LEAST_SLIT = 0.5
"""Narrowest slit that can be seen on paper, mm."""


def detail_items(part: DrawnPart, frame: SheetFrame) -> tuple[Item, ...]:
    """Every detail of the side view."""
    left, right = ends_of(part)
    return (
        *(i for c in part.centers for i in _center(c, left if c.end == "left" else right, frame)),
        *(i for flat in part.flats for i in _flat(flat, part, frame)),
        *(i for slit in part.slits for i in _slit(slit, part, frame)),
        *(i for hollow in part.hollows if hollow.thread for i in _thread(hollow, frame)),
    )


def _center(center: CenterHole, at: Metre, frame: SheetFrame) -> Iterator[Item]:
    """Hidden outline of a center hole, its mouth at the end of the part."""
    inwards = 1.0 if center.end == "left" else -1.0
    mouth = center.bell or center.cone
    rim = (mouth - center.cone) / 2 / BELL_HALF_TANGENT if center.bell else 0.0
    foot = rim + (center.cone - center.pilot) / 2 / CONE_HALF_TANGENT
    outline = [(0.0, mouth), (rim, center.cone), (foot, center.pilot), (center.depth, center.pilot)]
    outline.append((center.depth + center.pilot / 2 * CONE_HALF_TANGENT, 0.0))
    for side in (1, -1):
        points = tuple((frame.x(at + inwards * x), frame.y(side * size / 2)) for x, size in outline)
        yield Path(points, LineKind.HIDDEN, name="center-hole")


def _flat(flat: Flat, part: DrawnPart, frame: SheetFrame) -> Iterator[Item]:
    """The flat turned towards the viewer: its edges, and the thin diagonals of a plane."""
    radius = outside_at(part, (flat.start + flat.end) / 2)
    half = sqrt(max(radius**2 - (radius - flat.depth) ** 2, 0.0))
    x1, x2, y1, y2 = frame.x(flat.start), frame.x(flat.end), frame.y(half), frame.y(-half)
    yield Path(((x1, y1), (x2, y1), (x2, y2), (x1, y2)), LineKind.VISIBLE, True, name="flat")
    yield Line(x1, y1, x2, y2, LineKind.THIN, "flat-diagonal")
    yield Line(x1, y2, x2, y1, LineKind.THIN, "flat-diagonal")


def _slit(slit: Slit, part: DrawnPart, frame: SheetFrame) -> Iterator[Item]:
    """A slit turned towards the viewer; behind the cut of a section it is a hidden one."""
    half = max(frame.long(slit.width), LEAST_SLIT) / 2
    x1, x2 = frame.x(slit.start), frame.x(slit.end)
    kind = LineKind.HIDDEN if sectioned(part) else LineKind.VISIBLE
    corners = (
        (x1, frame.axis - half),
        (x2, frame.axis - half),
        (x2, frame.axis + half),
        (x1, frame.axis + half),
    )
    yield Path(corners, kind, True, name="slit")
    if slit.hole > 0.0:
        left, right = ends_of(part)
        inner = slit.start if right - slit.end < slit.start - left else slit.end
        radius = max(frame.long(slit.hole), LEAST_SLIT) / 2
        yield Circle(frame.x(inner), frame.axis, radius, kind, name="slit-hole")


def _thread(hollow: Hollow, frame: SheetFrame) -> Iterator[Item]:
    for side in (1, -1):
        y = frame.y(side * DRILLED * hollow.size / 2)
        yield Line(frame.x(hollow.start), y, frame.x(hollow.end), y, LineKind.THIN, "thread")
