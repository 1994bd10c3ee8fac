"""Where the side view of a hold stands on paper."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.held_picture import HeldPicture, HeldRing, Role
from borewright.drawing.frame import Scale
from borewright.drawing.held_look import is_block
from borewright.drawing.held_shape import finished, of_role, widest

_FULLEST = 12e-3
"""Largest radius (m) that the tailstock's center is drawn with (ours)."""
_REACH = 2.3
"""Length of the drawn center in its radii (ours)."""


@dataclass(frozen=True, slots=True)
class HeldFrame:
    """`left` is where the piece farthest to the headstock begins, `axis` the line of the axis."""

    picture: HeldPicture
    scale: Scale
    left: float
    axis: float

    def size(self, metres: float) -> float:
        """A length on paper, mm."""
        return 1000 * metres * self.scale.ratio

    def z(self, z: float) -> float:
        """Where a position along the axis stands."""
        return self.left + self.size(z - ends(self.picture)[0])

    def up(self, radius: float) -> float:
        """The height on paper of a radius above the axis."""
        return self.axis - self.size(radius)

    def down(self, radius: float) -> float:
        """The height on paper of a radius below the axis."""
        return self.axis + self.size(radius)


def ends(picture: HeldPicture) -> tuple[float, float]:
    """z of the first and the last of the rings."""
    return min(g.start for g in picture.rings), max(g.end for g in picture.rings)


def largest_radius(picture: HeldPicture) -> float:
    """Of all rings and marks."""
    marks = [m.radius + m.size / 2 for m in picture.marks]
    return max([*marks, *(widest(g) for g in picture.rings)])


def work_ends(picture: HeldPicture) -> tuple[float, float]:
    """z of the work's two faces; stock that it is still part of is not the work."""
    work = finished(picture)
    return min(g.start for g in work), max(g.end for g in work)


def work_outside(picture: HeldPicture) -> float:
    """The largest radius of the work."""
    return max(widest(g) for g in of_role(picture, Role.WORK))


def tail_center(picture: HeldPicture) -> tuple[float, float] | None:
    """z of the face that the tailstock's center enters and the center's radius; None without one.

    None too where the center is among the rings.
    """
    if not picture.tailstock:
        return None
    rings = [g for g in picture.rings if not is_block(g)]
    held = [g for g in rings if g.role is not Role.CENTER]
    last = max(held, key=lambda g: (g.end, -g.inner))
    if any(g.role is Role.CENTER and g.end > last.end for g in rings):
        return None
    solid = [g for g in held if g.inner == 0 and g.role is not Role.WORK]
    into: HeldRing = max(solid, key=lambda g: g.end) if solid else last
    return into.end, min(into.outer, _FULLEST)


def reach(picture: HeldPicture) -> tuple[float, float]:
    """z of the first and last that is drawn, the tailstock's center with it."""
    first, last = ends(picture)
    center = tail_center(picture)
    return first, max(last, center[0] + _REACH * center[1]) if center else last


CENTER_REACH = _REACH
