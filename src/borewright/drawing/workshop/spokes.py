"""Spokes: seen from the side between hub and rim, and from the end as they stand."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi, sin, sqrt

from borewright.answer.drawn_part import SpokeRing
from borewright.drawing.scene import Item, Line, LineKind
from borewright.drawing.workshop.sheet_frame import SheetFrame


def spokes_from_side(ring: SpokeRing, frame: SheetFrame) -> Iterator[Item]:
    """The two spokes in the plane of the paper, above and below: a section never cuts them."""
    for side in (1, -1):
        low, high = (frame.y(side * size / 2) for size in (ring.inside, ring.outside))
        for at in (ring.start, ring.end):
            yield Line(frame.x(at), low, frame.x(at), high, LineKind.VISIBLE, "spoke")


def spokes_from_end(
    ring: SpokeRing, center: tuple[float, float], per_metre: float
) -> Iterator[Item]:
    """Both edges of every spoke, the first upright; each from hub to rim."""
    half = per_metre * ring.width / 2
    reach = [per_metre * size / 2 for size in (ring.inside, ring.outside)]
    low, high = (sqrt(max(r * r - half * half, 0.0)) for r in reach)
    for k in range(ring.number):
        angle = -pi / 2 + 2 * pi * k / ring.number
        c, s = cos(angle), sin(angle)
        for side in (half, -half):
            yield Line(
                center[0] + low * c - side * s,
                center[1] + low * s + side * c,
                center[0] + high * c - side * s,
                center[1] + high * s + side * c,
                LineKind.VISIBLE,
                "end-spoke",
            )
