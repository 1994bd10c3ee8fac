"""The pieces of a hold as shapes: sections joined by role, silhouettes, what lies open to the eye.

Lengths in metres, z from the front of chuck or plate towards the tailstock, r from the axis.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from borewright.answer.held_picture import HeldPicture, HeldRing, Role
from borewright.drawing.held_look import LOOKS, is_block
from borewright.drawing.outline import Section

Corner = tuple[float, float]
"""z and r."""

_SPINDLE_WIDE, _SPINDLE_LONG = 1.1, 0.5
"""Most that is drawn of chuck or headstock: its radius over the largest of the rest, its length
over its radius (ours)."""
_SAME = 7
"""Decimals of a metre within which two edges are one."""


def of_role(picture: HeldPicture, role: Role) -> tuple[HeldRing, ...]:
    """The rings of a role, in their own order."""
    return tuple(ring for ring in picture.rings if ring.role is role)


def finished(picture: HeldPicture) -> tuple[HeldRing, ...]:
    """The rings of the work itself, without the solid stock that it is still part of."""
    work = of_role(picture, Role.WORK)
    return tuple(g for g in work if g.inner > 0) or work


def settled(picture: HeldPicture) -> HeldPicture:
    """The same with every dog drawn down to what it sits on, and no more of chuck or headstock than
    the rest of the picture needs: their size is not known."""
    largest = max(widest(g) for g in picture.rings if g.role is not Role.SPINDLE)
    rings = (_settled(g, picture) for g in picture.rings)
    return replace(picture, rings=tuple(_cropped(g, largest) for g in rings))


def _cropped(ring: HeldRing, largest: float) -> HeldRing:
    if ring.role is not Role.SPINDLE:
        return ring
    outer = min(ring.outer, _SPINDLE_WIDE * largest)
    return replace(ring, start=max(ring.start, ring.end - _SPINDLE_LONG * outer), outer=outer)


def _settled(ring: HeldRing, picture: HeldPicture) -> HeldRing:
    if ring.role is not Role.DOG:
        return ring
    middle = (ring.start + ring.end) / 2
    under = [g.outer for g in of_role(picture, Role.MANDREL) if g.start < middle < g.end]
    return replace(ring, inner=max(under, default=ring.inner))


def joints(rings: Sequence[HeldRing]) -> tuple[tuple[float, float, float], ...]:
    """z, inner and outer radius where one ring meets another of its size: two pieces, not one."""
    met = [
        (a.end, a.inner, a.outer)
        for a in rings
        for b in rings
        if abs(a.end - b.start) + abs(a.inner - b.inner) + abs(a.outer - b.outer) < 10**-_SAME
    ]
    return tuple(sorted(met))


def is_plain(ring: HeldRing) -> bool:
    """Whether a ring is of one size from end to end."""
    return ring.outer_end in (None, ring.outer) and ring.inner_end in (None, ring.inner)


def corners(ring: HeldRing) -> tuple[Corner, Corner, Corner, Corner]:
    """The corners of its section: inner and outer at the start, outer and inner at the end."""
    outer = ring.outer if ring.outer_end is None else ring.outer_end
    inner = ring.inner if ring.inner_end is None else ring.inner_end
    return (
        (ring.start, ring.inner),
        (ring.start, ring.outer),
        (ring.end, outer),
        (ring.end, inner),
    )


def widest(ring: HeldRing) -> float:
    """Its largest radius."""
    return max(r for _, r in corners(ring))


def joined(rings: Sequence[HeldRing]) -> Section:
    """The section of plain rings, joined where they touch or overlap."""
    boxes = [[round(v, _SAME) for v in (g.start, g.inner, g.end, g.outer)] for g in rings]
    zs = sorted({z for box in boxes for z in (box[0], box[2])})
    rs = sorted({r for box in boxes for r in (box[1], box[3])})
    metal = frozenset(
        (i, j)
        for z1, r1, z2, r2 in boxes
        for i in range(zs.index(z1), zs.index(z2))
        for j in range(rs.index(r1), rs.index(r2))
    )
    return Section(tuple(zs), tuple(rs), metal)


def bands(rings: Sequence[HeldRing]) -> tuple[tuple[float, float, float], ...]:
    """z1, z2 and radius of the steps of plain rings seen from outside."""
    zs = sorted({round(z, _SAME) for ring in rings for z in (ring.start, ring.end)})
    found: list[tuple[float, float, float]] = []
    for a, b in pairwise(zs):
        radius = max((g.outer for g in rings if g.start < (a + b) / 2 < g.end), default=0.0)
        if found and found[-1][1] == a and abs(found[-1][2] - radius) < 10**-_SAME:
            found[-1] = (found[-1][0], b, radius)
        elif radius > 0:
            found.append((a, b, radius))
    return tuple(found)


def open_stretch(ring: HeldRing, picture: HeldPicture) -> tuple[float, float] | None:
    """The longest stretch of z where nothing stands outside a ring; None where it is covered."""
    others = [g for g in picture.rings if g is not ring and widest(g) > widest(ring)]
    zs = {ring.start, ring.end}
    zs |= {z for g in others for z in (g.start, g.end) if ring.start < z < ring.end}
    spans: list[tuple[float, float]] = []
    for a, b in pairwise(sorted(zs)):
        if any(g.start < (a + b) / 2 < g.end for g in others):
            continue
        spans = (
            [*spans[:-1], (spans[-1][0], b)] if spans and spans[-1][1] == a else [*spans, (a, b)]
        )
    return max(spans, key=lambda s: s[1] - s[0], default=None)


def seen_circles(picture: HeldPicture) -> tuple[tuple[float, Role], ...]:
    """Radius and role of every edge that an eye at the tailstock sees, the largest first.

    The centers are left out: they would hide what matters.
    """
    round_ones = [g for g in picture.rings if not is_block(g) and g.role is not Role.CENTER]
    order = list(LOOKS)
    radii = (r for g in round_ones for r in (g.inner, widest(g)))
    rs = sorted({0.0, *(round(r, _SAME) for r in radii)})
    fronts: list[tuple[float, Role] | None] = []
    for a, b in pairwise(rs):
        here = [g for g in round_ones if g.inner < (a + b) / 2 < widest(g)]
        fronts.append(_front(here, order))
    edges = zip(rs[1:], fronts, [*fronts[1:], None], strict=True)
    found = [(r, _nearer(one, two)) for r, one, two in edges if one != two]
    return tuple((r, role) for r, role in reversed(found) if role is not None)


def _front(here: Sequence[HeldRing], order: list[Role]) -> tuple[float, Role] | None:
    if not here:
        return None
    ring = max(here, key=lambda g: (round(g.end, _SAME), order.index(g.role)))
    return round(ring.end, _SAME), ring.role


def _nearer(one: tuple[float, Role] | None, two: tuple[float, Role] | None) -> Role | None:
    seen = [front for front in (one, two) if front is not None]
    return max(seen, key=lambda front: front[0])[1] if seen else None


def front_at(picture: HeldPicture, radius: float) -> float | None:
    """z of what an eye at the tailstock sees of the work at a radius; None beyond the work."""
    here = [g.end for g in of_role(picture, Role.WORK) if g.inner <= radius <= widest(g)]
    return max(here, default=None)
