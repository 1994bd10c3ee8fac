"""The work from the side: upper half cut open and hatched, lower half from outside."""

from __future__ import annotations

from dataclasses import replace

from borewright.drawing.frame import Frame
from borewright.drawing.interrupted import side_spokes
from borewright.drawing.outline import Section, section, silhouette
from borewright.drawing.scene import Hatch, Item, Line, Path, Point
from borewright.drawing.slip import slips

_FINEST = 0.9
"""Hatching closer than this fills up in print, mm."""
_OVERRUN = 0.6
"""How far slip lines run past the faces, mm: short of the letters beside them."""


def work_half_section(frame: Frame) -> tuple[Item, ...]:
    """Hatched section above the axis, outside view below it, in order of painting."""
    cut = section(frame.layout)
    return (
        *_lower_half(frame),
        *_hatching(frame, cut),
        *side_spokes(frame),
        *_edges(frame, cut),
        *_faces(frame),
    )


def slip_lines(frame: Frame) -> tuple[Item, ...]:
    """Where the planned cut would let go, at its radius on the section and on the outside."""
    left, right = frame.z(0.0) - _OVERRUN, frame.z(frame.layout.work_length) + _OVERRUN
    return tuple(
        Line(left, y, right, y, slip.kind, f"{slip.name}-{place}")
        for slip in slips(frame.layout)
        if slip.on_work
        for y, place in ((frame.up(slip.radius), "above"), (frame.down(slip.radius), "below"))
    )


def _hatching(frame: Frame, cut: Section) -> tuple[Item, ...]:
    contours = (
        *(_cell(frame, *cell) for cell in cut.cells()),
        *(_beside(frame, *slant) for slant in cut.slants),
    )
    rings = section(replace(frame.layout, chamfers=(0.0, 0.0)))
    thinnest = min((frame.size(r2 - r1) for _, r1, _, r2 in rings.cells()), default=1.5)
    spacing = max(_FINEST, min(1.5, thinnest / 2))
    return (Hatch(contours, spacing, "section"),)


def _cell(frame: Frame, z1: float, r1: float, z2: float, r2: float) -> tuple[Point, ...]:
    left, right, top, bottom = frame.z(z1), frame.z(z2), frame.up(r2), frame.up(r1)
    return ((left, top), (right, top), (right, bottom), (left, bottom))


def _beside(frame: Frame, z1: float, r1: float, z2: float, r2: float) -> tuple[Point, ...]:
    """What a chamfer leaves of the square it crosses: the corner away from face and bore."""
    corner = (z2, r1) if r1 > r2 else (z1, r2)
    return tuple((frame.z(z), frame.up(r)) for z, r in ((z1, r1), (z2, r2), corner))


def _edges(frame: Frame, cut: Section) -> tuple[Item, ...]:
    bore = frame.layout.bore / 2
    return tuple(
        Line(
            frame.z(z1),
            frame.up(r1),
            frame.z(z2),
            frame.up(r2),
            name="bore-line" if r1 == r2 == bore else "work-edge",
        )
        for z1, r1, z2, r2 in cut.edges()
    )


def _lower_half(frame: Frame) -> tuple[Item, ...]:
    return tuple(part for z1, z2, r in silhouette(frame.layout) for part in _band(frame, z1, z2, r))


def _band(frame: Frame, z1: float, z2: float, radius: float) -> tuple[Item, ...]:
    left, right = frame.z(z1), frame.z(z2)
    top, bottom = frame.axis, frame.down(radius)
    corners = ((left, top), (left, bottom), (right, bottom), (right, top))
    return (Path(corners, fill="white", name="work-outside"),)


def _faces(frame: Frame) -> tuple[Item, ...]:
    first = silhouette(frame.layout)[0][2]
    x = frame.z(0.0)
    return (Line(x, frame.up(first), x, frame.down(first), name="leading-face"),)
