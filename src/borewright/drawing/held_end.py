"""The hold seen from the tailstock: work, what holds it, where the cut would let go, the rotation.

Seen from there, work that turns forward goes counterclockwise, and the operator stands at the left.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi, radians, sin

from borewright.answer.held_picture import HeldMark, HeldPicture, Role
from borewright.answer.records import ProofLoad
from borewright.drawing.breaks import broken
from borewright.drawing.dimension import (
    ROW,
    SIZE,
    Span,
    level_dimension,
    without_other_unit,
)
from borewright.drawing.frame import Scale
from borewright.drawing.held_frame import largest_radius, work_outside
from borewright.drawing.held_labels import named_roles
from borewright.drawing.held_look import LOOKS, called
from borewright.drawing.held_marks import (
    hexagon,
    is_behind,
    is_hidden,
    mark_items,
    shape_at,
    shown_marks,
)
from borewright.drawing.held_shape import of_role, seen_circles, widest
from borewright.drawing.measure import wrapped
from borewright.drawing.proof_arm import proof_arm
from borewright.drawing.scene import (
    Arc,
    Arrow,
    Circle,
    Item,
    Line,
    LineKind,
    Path,
    Point,
    Scene,
    Text,
)
from borewright.drawing.slip import Slip, slip_words, slips_within
from borewright.quantities.show import Show

LINE = 4.0
_ARM = 12.0
"""Room right of the rim for the proof load's arm, mm."""
_HAIR = 1e-7
"""Radii (m) nearer to each other than this are one."""
_SAMPLE = 8.0
"""Length of the sample of a line in the key, mm."""
_ICON = 2.8
"""Size of the sample of a mark in the key, mm."""
_ON_CIRCLE = (Role.SCREW, Role.PIN, Role.STRAP)
"""Marks whose place a hand must know: the key says the circle they stand on."""


_FAR = 2.0
"""Rims beyond which a slip radius is not said."""
_CASES = {"likely": "likely", "low case": "even a poor grip"}


def held_end(
    picture: HeldPicture,
    slip_radii: tuple[float | None, float | None],
    proof: ProofLoad | None,
    show: Show,
    scale: Scale,
    width: float = 62.0,
) -> Scene:
    """Circles and marks from the tailstock, `width` mm wide on paper; `slip_radii` (m) of the
    hardest cut, likely and poor, None where it never lets go."""
    ratio = 1000 * scale.ratio
    half = ratio * largest_radius(picture)
    middle = (max(half + 3.2, min(width / 2, width - half - _ARM)), 3.2 + LINE + 4.5 + half)
    slips = slips_within(*slip_radii, work_outside(picture))
    foot = middle[1] + max(half, 9.5) + 2.0
    key = tuple(_key(picture, slips, show, foot + ROW + 0.8 * LINE, width))
    items = (
        *_captions(),
        *_behind(picture, middle, ratio),
        *_in_front(picture, middle, ratio),
        *_cross(middle, half),
        *_slip(slips, middle, ratio),
        *_arm(picture, proof, middle, ratio, width),
        *_rotation(middle, half),
        *level_dimension(_outside(picture, middle, ratio, show), foot + 0.5 * ROW, 0.0, width),
        *key,
    )
    lines = sum(isinstance(item, Text) for item in key)
    return Scene(width, foot + ROW + LINE * lines + 1.0, broken(items))


def _captions() -> tuple[Item, ...]:
    return (
        Text(0.0, 3.2, "End view from the tailstock.", SIZE, bold=True, name="end-caption"),
        Text(0.0, 3.2 + LINE, "Forward is counterclockwise seen from here.", SIZE),
    )


def _behind(picture: HeldPicture, middle: Point, ratio: float) -> Iterator[Item]:
    """What is wider than the work, and on it what reaches out from behind the work."""
    rim = work_outside(picture)
    yield from _circles(picture, middle, ratio, rim + _HAIR, 1e9)
    for mark in shown_marks(picture):
        if is_behind(mark, picture):
            yield from mark_items(mark, False, middle, ratio)


def _in_front(picture: HeldPicture, middle: Point, ratio: float) -> Iterator[Item]:
    """The work with what stands before it, and dashed what stands behind."""
    yield from _circles(picture, middle, ratio, _HAIR, work_outside(picture) + _HAIR)
    behind = [m for m in shown_marks(picture) if is_behind(m, picture)]
    for mark in (*behind, *(m for m in shown_marks(picture) if m not in behind)):
        yield from mark_items(mark, mark in behind, middle, ratio)


def _circles(
    picture: HeldPicture, middle: Point, ratio: float, low: float, high: float
) -> Iterator[Item]:
    """The edges between two radii."""
    for radius, role in seen_circles(picture):
        if not low < radius < high:
            continue
        kind, name = LOOKS[role].edge, f"{role}-circle"
        if role is Role.NUT and _is_widest(radius, role, picture):
            yield Path(hexagon(middle, ratio * radius), kind, True, "white", name)
        else:
            yield Circle(*middle, ratio * radius, kind, "white", name)


def _is_widest(radius: float, role: Role, picture: HeldPicture) -> bool:
    return radius > max(widest(g) for g in of_role(picture, role)) - _HAIR


def _arm(
    picture: HeldPicture, proof: ProofLoad | None, middle: Point, ratio: float, width: float
) -> tuple[Item, ...]:
    """The proof load's arm, at the right: its weight then pulls as the cut does."""
    if proof is None or proof.by_hand or proof.by_cord:
        return ()
    rim, widest_of_all = ratio * work_outside(picture), ratio * largest_radius(picture)
    return proof_arm(middle, rim, ratio * proof.arm, width - middle[0] - 3.2, +1, widest_of_all)


def _cross(middle: Point, half: float) -> tuple[Item, ...]:
    x, y, reach = *middle, half + 1.5
    return (
        Line(x - reach, y, x + reach, y, LineKind.AXIS, "axis"),
        Line(x, y - reach, x, y + reach, LineKind.AXIS, "axis"),
    )


def _slip(slips: tuple[Slip, ...], middle: Point, ratio: float) -> tuple[Item, ...]:
    return tuple(
        Circle(*middle, ratio * slip.radius, slip.kind, name=f"{slip.name}-circle")
        for slip in slips
        if slip.on_work
    )


def _rotation(middle: Point, half: float) -> tuple[Item, ...]:
    r, start, end = half + 2.6, radians(-115.0), radians(-150.0)
    tip = (middle[0] + r * cos(end), middle[1] + r * sin(end))
    return (
        Arc(*middle, r, start, end, LineKind.THIN, "rotation"),
        Arrow(*tip, end - pi / 2 + 0.09, name="rotation-arrow"),
    )


def _outside(picture: HeldPicture, middle: Point, ratio: float, show: Show) -> Span:
    radius = work_outside(picture)
    size, half = show.length(2 * radius), ratio * radius
    short = without_other_unit(size)
    words = (f"outside {size}", f"outside {short}", short)
    x, y = middle
    return Span(x - half, y, x + half, y, words, "outside")


def _key(
    picture: HeldPicture, slips: tuple[Slip, ...], show: Show, top: float, width: float
) -> Iterator[Item]:
    """What the marks and the slip circles are: a sample of each and its words."""
    y, rim = top, work_outside(picture)
    for mark in shown_marks(picture):
        yield from shape_at(mark.role, (_SAMPLE / 2, y - 1.1), _ICON, pi / 2)
        lines = wrapped(_mark_words(mark, picture, show), SIZE, width - _SAMPLE - 1.0)
        yield from _lines(lines, _SAMPLE + 1.0, y)
        y += LINE * len(lines)
    for slip in slips:
        start = _SAMPLE + 1.0 if slip.on_work else 0.0
        if slip.on_work:
            yield Line(0.0, y - 1.1, _SAMPLE, y - 1.1, slip.kind)
        lines = wrapped(_slip_said(slip, rim, show), SIZE, width - start)
        yield from _lines(lines, start, y)
        y += LINE * len(lines)


def _lines(lines: tuple[str, ...], x: float, y: float) -> Iterator[Text]:
    return (Text(x, y + LINE * k, line, SIZE) for k, line in enumerate(lines))


def _slip_said(slip: Slip, rim: float, show: Show) -> str:
    """Where it lets go; far past the rim the radius itself is of no use."""
    if slip.radius < _FAR * rim:
        return slip_words(slip, show.length(2 * slip.radius))
    return f"{_CASES[slip.case]} holds this cut at the rim and far beyond"


def _mark_words(mark: HeldMark, picture: HeldPicture, show: Show) -> str:
    """How many of what, and where; its note where the side view does not say it."""
    said = mark.role in named_roles(picture)
    notes = [] if said else [n.words for n in picture.notes if n.role is mark.role]
    name = notes[0] if notes else _plain_name(mark, picture)
    counted = name.startswith(LOOKS[mark.role].several) or not notes
    count = f"{mark.number} " if mark.number > 1 and counted else ""
    behind = ", behind the work" if is_hidden(mark, picture) else ""
    return f"{count}{name}{_place(mark, show)}{behind}"


def _plain_name(mark: HeldMark, picture: HeldPicture) -> str:
    if mark.role is Role.SLEEVE:
        return "slots in the sleeve"
    first = next(m for m in picture.marks if m.role is mark.role)
    if mark.role is Role.DOG and mark is not first:
        return "second dog, on the hub"
    drawn = any(ring.role is mark.role for ring in picture.rings)
    if mark.role is Role.PIN and not drawn:
        return "driver stud" if mark.number == 1 else "driver studs"
    return called(mark.role, picture, mark.number)


def _place(mark: HeldMark, show: Show) -> str:
    if mark.radius < mark.size / 2:
        return ""
    if mark.role is Role.WEIGHT:
        return f", {show.length(mark.radius)} from the axis"
    return f" on a {show.length(2 * mark.radius)} circle" if mark.role in _ON_CIRCLE else ""
