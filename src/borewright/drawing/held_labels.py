"""The labels over the side view of a hold: what each piece is, and where the tool turns."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from math import pi

from borewright.answer.held_picture import HeldPicture, HeldRing, Role
from borewright.drawing.callout import GAP, Callout, Placed
from borewright.drawing.dimension import SIZE
from borewright.drawing.held_frame import HeldFrame, tail_center, work_ends
from borewright.drawing.held_look import LOOKS, is_block, noted, sides
from borewright.drawing.held_shape import corners, of_role, open_stretch, widest
from borewright.drawing.measure import wrapped
from borewright.drawing.scene import Arrow, Circle, Item, Line, LineKind, Text

LINE = 4.0
"""From one line of label to the next, mm."""
_WIDEST = 50.0
"""Words of a label beyond this go on two lines, mm."""
_ENOUGH = 1.2
"""A stretch of a piece that shows less than this on paper is pointed at only if none shows more."""
TURN = "turn here"
_TURN_AIR = 1.7
"""From the work up to the arrow line of what is turned, mm."""
_HEAD = 2.2
_APART = 2 * GAP + 0.1
"""Stems nearer to each other than this leave no room for words between them, mm."""
_ROUNDS = 60
"""Times that stems too near to each other are moved apart; a dozen labels need fewer."""
_KNEE = 0.6
_STRAIGHT = 0.3
"""A stem moved aside by no more than this needs no knee, mm."""


@dataclass(frozen=True, slots=True)
class Pointer:
    """A label and what it points at; `inside`: at a place within a piece that others cover."""

    callout: Callout
    x: float
    y: float
    inside: bool = False


def pointers(frame: HeldFrame) -> tuple[Pointer, ...]:
    """Every label over the view, its stem upright over what it points at or close by."""
    found = [*_named(frame), *_tail(frame), *_turn(frame)]
    spread = _spread([f.x for f in found])
    return tuple(
        replace(f, callout=replace(f.callout, stems=(x,)))
        for f, x in zip(found, spread, strict=True)
    )


def _spread(places: list[float]) -> list[float]:
    """The places, moved as little as keeps them apart."""
    order = sorted(range(len(places)), key=lambda k: places[k])
    moved = list(places)
    for _ in range(_ROUNDS):
        for a, b in pairwise(order):
            short = _APART - (moved[b] - moved[a])
            if short > 0:
                moved[a] -= short / 2
                moved[b] += short / 2
    return moved


def named_roles(picture: HeldPicture) -> tuple[Role, ...]:
    """The roles that a label over the side view names; the key of the end view names the others."""
    return tuple(role for role in LOOKS if _is_named(role, picture))


def _is_named(role: Role, picture: HeldPicture) -> bool:
    rings = _above(role, picture)
    if not rings or not noted(role, picture):
        return False
    marked = any(mark.role is role for mark in picture.marks)
    return not marked or any(open_stretch(g, picture) for g in rings)


def _above(role: Role, picture: HeldPicture) -> tuple[HeldRing, ...]:
    both = +1 in sides(role, picture)
    tail = _tail_ring(picture)
    rings = of_role(picture, role)
    return tuple(g for g in rings if g is not tail and (both or not is_block(g)))


def _named(frame: HeldFrame) -> Iterator[Pointer]:
    for role in named_roles(frame.picture):
        x, y, inside = _pointed(frame, role)
        lines = wrapped(noted(role, frame.picture), SIZE, _WIDEST)
        yield Pointer(Callout(lines, (x,), f"{role}-label"), x, y, inside)


def _tail(frame: HeldFrame) -> Iterator[Pointer]:
    center, drawn = tail_center(frame.picture), _tail_ring(frame.picture)
    if center is not None:
        face, full = center
        x, y = frame.z(face + 1.9 * full), frame.up(full)
    elif drawn is not None:
        z = drawn.start + 0.7 * (drawn.end - drawn.start)
        x, y = frame.z(z), frame.up(_outer_at(drawn, z))
    else:
        return
    words = f"tailstock {noted(Role.CENTER, frame.picture) or 'center'}"
    yield Pointer(Callout((words,), (x,), "tailstock-label"), x, y)


def _tail_ring(picture: HeldPicture) -> HeldRing | None:
    """The tailstock's center where it is among the rings."""
    last = max(of_role(picture, Role.CENTER), key=lambda g: g.end, default=None)
    return last if last and picture.tailstock and last.end > work_ends(picture)[1] else None


def _turn(frame: HeldFrame) -> Iterator[Pointer]:
    turned = frame.picture.turned
    if turned is not None:
        x = (frame.z(turned[0]) + frame.z(turned[1])) / 2
        yield Pointer(Callout((TURN,), (x,), "turn-label"), x, turn_height(frame))


def turn_height(frame: HeldFrame) -> float:
    """Where the arrow line of what is turned stands: just over the work."""
    work = of_role(frame.picture, Role.WORK)
    return frame.up(max(widest(g) for g in work)) - _TURN_AIR


def turn_line(frame: HeldFrame) -> tuple[Item, ...]:
    """The arrow line over the stretch of the outside that the tool reaches."""
    turned = frame.picture.turned
    if turned is None:
        return ()
    a, b, y = frame.z(turned[0]), frame.z(turned[1]), turn_height(frame)
    ticks = tuple(
        Line(x, y - 1.0, x, y + _TURN_AIR - 0.4, LineKind.THIN, "turn-end") for x in (a, b)
    )
    arrow = Arrow(a, y, pi, min(_HEAD, (b - a) / 2), "turn-arrow")
    return (Line(a, y, b, y, LineKind.EDGE, "turn-line"), arrow, *ticks)


def _pointed(frame: HeldFrame, role: Role) -> tuple[float, float, bool]:
    """x and y on paper of what a stem points at; inside where the piece is covered."""
    rings = _above(role, frame.picture)
    open_ones = [(g, s) for g in rings if (s := open_stretch(g, frame.picture))]
    if open_ones:
        shows = [frame.size(b - a) for _, (a, b) in open_ones]
        k = next((k for k, w in enumerate(shows) if w >= _ENOUGH), shows.index(max(shows)))
        ring, (a, b) = open_ones[k]
        return frame.z((a + b) / 2), frame.up(_outer_at(ring, (a + b) / 2)), False
    ring = max(rings, key=lambda g: g.end - g.start)
    z = (ring.start + ring.end) / 2
    inner = corners(ring)[0][1]
    return frame.z(z), frame.up((inner + _outer_at(ring, z)) / 2), True


def _outer_at(ring: HeldRing, z: float) -> float:
    (a, _), (_, first), (_, last), (b, _) = corners(ring)
    return first + (last - first) * (z - a) / (b - a) if b > a else first


def label_items(
    placed: tuple[Placed, ...], pointed: tuple[Pointer, ...], start: float
) -> Iterator[Item]:
    """Words in rows going up from `start`, each with its stem down to its piece."""
    at = {pointer.callout.name: pointer for pointer in pointed}
    for label in placed:
        name = label.callout.name
        yield from _stem(at[name], start - LINE * label.reach, start + _KNEE)
        for k, words in enumerate(reversed(label.callout.lines)):
            y = start - LINE * (label.row + k) - 0.25 * SIZE
            yield Text(label.left, y, words, SIZE, name=name)


def _stem(pointer: Pointer, top: float, knee: float) -> Iterator[Item]:
    """From the words upright down; bent over its piece where another stem stands too near."""
    name, (x,) = f"{pointer.callout.name}-stem", pointer.callout.stems
    if abs(x - pointer.x) < _STRAIGHT:
        yield Line(x, top, x, pointer.y, LineKind.THIN, name)
    else:
        yield Line(x, top, x, knee, LineKind.THIN, name)
        yield Line(x, knee, pointer.x, pointer.y, LineKind.THIN, name)
    if pointer.inside:
        yield Circle(pointer.x, pointer.y, 0.45, LineKind.BLANK, "black", "label-dot")
