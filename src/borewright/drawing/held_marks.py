"""What holds the work as an eye at the tailstock sees it: one shape for each role."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi, sin

from borewright.answer.held_picture import HeldMark, HeldPicture, Role
from borewright.drawing.held_frame import ends
from borewright.drawing.held_look import LOOKS
from borewright.drawing.held_shape import front_at, of_role, widest
from borewright.drawing.scene import Circle, Hatch, Item, Line, LineKind, Path, Point

_AT_THE_BACK = (Role.WEIGHT, Role.DOG)
"""Marks that are fixed to plate or mandrel behind the work, wherever they reach."""
_HAIR = 1e-7
"""Lengths (m) below this are nothing."""
TAIL_SHARE = 0.4
"""Width of a dog's tail, as a share of its length."""
_SHARE = {Role.JAW: 0.62, Role.STRAP: 0.42, Role.DOG: TAIL_SHARE, Role.WEIGHT: 1.0, Role.PLATE: 0.7}
"""How broad a mark is round the axis, as a share of its size; the others are round."""


def shown_marks(picture: HeldPicture) -> tuple[HeldMark, ...]:
    """The marks that the end view draws: none of the centers, none that is a ring on the axis."""
    on_axis = {ring.role for ring in picture.rings if ring.inner == 0 or ring.role is Role.NUT}
    return tuple(
        mark
        for mark in picture.marks
        if mark.role is not Role.CENTER
        and not (mark.role in on_axis and mark.radius < mark.size / 2)
    )


def turned_to(mark: HeldMark) -> tuple[float, ...]:
    """The angle of each of its places, clockwise from the top."""
    return tuple(mark.angle + 2 * pi * k / mark.number for k in range(mark.number))


def is_behind(mark: HeldMark, picture: HeldPicture) -> bool:
    """Whether the work stands between some of the mark and an eye at the tailstock."""
    low, high = mark.radius - mark.size / 2, mark.radius + mark.size / 2
    own = [
        g.end
        for g in of_role(picture, mark.role)
        if g.inner < high - _HAIR and widest(g) > low + _HAIR
    ]
    if not own and mark.role in _AT_THE_BACK:
        own = [g.end for g in of_role(picture, mark.role)] or [ends(picture)[0]]
    front = [
        g.end
        for g in of_role(picture, Role.WORK)
        if g.inner < high - _HAIR and widest(g) > low + _HAIR
    ]
    return bool(own) and bool(front) and max(own) < max(front) - _HAIR


def is_hidden(mark: HeldMark, picture: HeldPicture) -> bool:
    """Whether its middle is behind the work."""
    return is_behind(mark, picture) and front_at(picture, mark.radius) is not None


def mark_items(mark: HeldMark, behind: bool, middle: Point, ratio: float) -> Iterator[Item]:
    """The mark at all its places; `ratio` is mm on paper per metre."""
    for angle in turned_to(mark):
        x = middle[0] + ratio * mark.radius * sin(angle)
        y = middle[1] - ratio * mark.radius * cos(angle)
        yield from shape_at(mark.role, (x, y), ratio * mark.size, angle, behind)


def shape_at(
    role: Role, at: Point, size: float, angle: float, behind: bool = False
) -> Iterator[Item]:
    """One mark of a role: its middle on paper, its size (mm), the way outwards."""
    kind = LineKind.HIDDEN if behind else LOOKS[role].edge
    fill, name = "none" if behind else "white", f"mark-{role}"
    if role is Role.SLEEVE:
        out = (sin(angle) * size / 2, -cos(angle) * size / 2)
        yield Line(at[0] - out[0], at[1] - out[1], at[0] + out[0], at[1] + out[1], kind, name)
        return
    if role in _SHARE:
        block = _block(at, size, _SHARE[role] * size, angle)
        yield Path(block, kind, True, fill, name)
        if role is Role.WEIGHT and not behind:
            yield Hatch((block,), 0.9, "weight-section", LOOKS[role].falling)
        if role is Role.STRAP:
            yield Circle(*at, 0.16 * size, kind, fill, "strap-stud")
        return
    if role is Role.NUT:
        yield Path(hexagon(at, size / 2), kind, True, fill, name)
        return
    yield Circle(*at, size / 2, kind, "black" if role is Role.PIN and not behind else fill, name)
    if role is Role.SCREW and size > 1.6:
        yield Path(hexagon(at, 0.3 * size), kind, True, fill, "screw-socket")


def _block(at: Point, long: float, broad: float, angle: float) -> tuple[Point, ...]:
    out, round_ = (sin(angle), -cos(angle)), (cos(angle), sin(angle))
    return tuple(
        (
            at[0] + u * long / 2 * out[0] + v * broad / 2 * round_[0],
            at[1] + u * long / 2 * out[1] + v * broad / 2 * round_[1],
        )
        for u, v in ((-1, -1), (1, -1), (1, 1), (-1, 1))
    )


def hexagon(at: Point, radius: float) -> tuple[Point, ...]:
    """The corners of a hexagon of so much from its middle to a corner."""
    turns = (k * pi / 3 for k in range(6))
    return tuple((at[0] + radius * cos(t), at[1] + radius * sin(t)) for t in turns)
