"""The view from an end of the part: the circles that are seen, a flat, slits, hole."""

from __future__ import annotations

from collections.abc import Iterator
from math import acos, cos, pi, sin

from borewright.answer.drawn_part import DrawnPart, Flat
from borewright.drawing.scene import Arc, Circle, Item, Line, LineKind
from borewright.drawing.workshop.bands import SAME, ends_of, outside_at, slices_of
from borewright.drawing.workshop.details import LEAST_SLIT
from borewright.drawing.workshop.spokes import spokes_from_end
from borewright.quantities.si import Metre

OVERRUN = 4.0
"""How far the center lines run past the part, mm."""


def end_items(part: DrawnPart, center: tuple[float, float], scale: float) -> tuple[Item, ...]:
    """The view from `part.end_view`, its axis at `center` on paper, `scale` mm for a mm."""
    per_metre = 1000 * scale
    flat = _near_flat(part)
    circles = [
        item
        for radius in sorted(_radii_seen(part), reverse=True)
        for item in _round(radius, flat, part, center, per_metre)
    ]
    reach = per_metre * max(_radii_seen(part)) + OVERRUN
    x, y = center
    return (
        *circles,
        *_slits(part, center, per_metre),
        *(spokes_from_end(part.spokes, center, per_metre) if part.spokes else ()),
        *_center_hole(part, center, per_metre),
        Line(x - reach, y, x + reach, y, LineKind.AXIS, "end-axis"),
        Line(x, y - reach, x, y + reach, LineKind.AXIS, "end-axis"),
    )


def _radii_seen(part: DrawnPart) -> set[Metre]:
    """Radii of the edges that look to this end: each larger one behind a smaller, and the hole."""
    slices = slices_of(part.stretches, part.hollows)
    ordered = slices if part.end_view == "left" else tuple(reversed(slices))
    seen: set[Metre] = set()
    reach = 0.0
    for piece in ordered:
        ends = (0, 1) if part.end_view == "left" else (1, 0)
        edges = [
            radius
            for k in ends
            for band in piece.bands
            for radius in (band.inside[k], band.outside[k])
        ]
        for radius in sorted(edges):
            if radius > reach + 50 * SAME:
                seen.add(radius)
        reach = max([reach, *edges])
    first = ordered[0]
    inside = first.bands[0].inside[0 if part.end_view == "left" else 1] if first.bands else 0.0
    if inside > SAME:
        seen.add(inside)
    return _apart(seen)


def _apart(radii: set[Metre]) -> set[Metre]:
    """Without those that a cone as slight as a mandrel's gives beside another."""
    kept: list[Metre] = []
    for radius in sorted(radii):
        if kept and radius - kept[-1] < 0.003 * radius:
            kept[-1] = radius
        else:
            kept.append(radius)
    return set(kept)


def _near_flat(part: DrawnPart) -> Flat | None:
    """The flat nearest to the end that is looked at."""
    left, right = ends_of(part)
    middle = (left + right) / 2
    near = [f for f in part.flats if (f.start < middle) == (part.end_view == "left")]
    return near[0] if near else None


def _round(
    radius: Metre,
    flat: Flat | None,
    part: DrawnPart,
    center: tuple[float, float],
    per_metre: float,
) -> Iterator[Item]:
    """A circle, or what a flat leaves of it; seen from the left the flat looks to the right."""
    x, y, r = *center, per_metre * radius
    own = flat and abs(outside_at(part, (flat.start + flat.end) / 2) - radius) < 0.003 * radius
    if flat is None or not own:
        yield Circle(x, y, r, LineKind.VISIBLE, name="end-circle")
        return
    half = acos(1 - flat.depth / radius)
    side = 0.0 if part.end_view == "left" else pi
    yield Arc(x, y, r, side + half, side + 2 * pi - half, LineKind.VISIBLE, "end-circle")
    chord_x, chord_y = x + r * cos(half) * cos(side), r * sin(half)
    yield Line(chord_x, y - chord_y, chord_x, y + chord_y, LineKind.VISIBLE, "end-flat")


def _center_hole(part: DrawnPart, center: tuple[float, float], per_metre: float) -> list[Item]:
    """The mouth, cone and pilot of a center hole in the end that is looked at."""
    holes = [c for c in part.centers if c.end == part.end_view]
    return [
        Circle(*center, per_metre * size / 2, LineKind.VISIBLE, name="end-center")
        for hole in holes
        for size in (hole.bell, hole.cone, hole.pilot)
        if size
    ]


def _slits(part: DrawnPart, center: tuple[float, float], per_metre: float) -> Iterator[Item]:
    radii = _radii_seen(part)
    for slit in part.slits:
        half = max(per_metre * slit.width, LEAST_SLIT) / 2
        outer = outside_at(part, (slit.start + slit.end) / 2)
        low, high = per_metre * min(radii), per_metre * outer
        for k in range(slit.number):
            angle = pi / 2 + 2 * pi * k / slit.number
            for side in (half, -half):
                yield Line(
                    center[0] + low * cos(angle) - side * sin(angle),
                    center[1] + low * sin(angle) + side * cos(angle),
                    center[0] + high * cos(angle) - side * sin(angle),
                    center[1] + high * sin(angle) + side * cos(angle),
                    LineKind.VISIBLE,
                    "end-slit",
                )
