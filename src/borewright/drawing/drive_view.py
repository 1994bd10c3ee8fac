"""A positive drive beside the mandrel in its end view: studs, or a second dog on the hub.

Seen from the headstock, work that turns forward goes clockwise: the mandrel's dog, its tail up, has
the second dog's tail on its right and pushes it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import asin, pi

from borewright.answer.held_picture import HeldMark, Role
from borewright.drawing.held_marks import TAIL_SHARE, mark_items, shape_at
from borewright.drawing.scene import Circle, Item, LineKind, Point
from borewright.quantities.show import Show

DOG_TAIL = 0.28
"""Half the width of the first dog's tail, in end diameters."""


def drive_items(mark: HeldMark, middle: Point, ratio: float, end: float) -> Iterator[Item]:
    """The drive; `ratio` is mm on paper per metre, `end` the mandrel's end diameter in mm there."""
    if mark.role is not Role.DOG:
        yield from mark_items(replace(mark, angle=-mark.angle), False, middle, ratio)
        return
    inner = ratio * (mark.radius - mark.size / 2)
    yield Circle(*middle, inner, LineKind.EDGE, "white", "second-dog")
    beside = (DOG_TAIL * end + TAIL_SHARE * ratio * mark.size / 2) / (ratio * mark.radius)
    yield from mark_items(replace(mark, angle=asin(min(beside, 1.0))), False, middle, ratio)


def tail_reach(mark: HeldMark | None, ratio: float) -> float:
    """How far out the first dog's tail must reach to push the second's, mm on paper."""
    if mark is None or mark.role is not Role.DOG:
        return 0.0
    return ratio * (mark.radius + 0.3 * mark.size)


def drive_sample(mark: HeldMark, at: Point, size: float) -> Iterator[Item]:
    """The sample of the drive in the key."""
    return shape_at(mark.role, at, size, pi / 2)


def drive_words(mark: HeldMark, show: Show) -> str:
    """What the drive is, for the key."""
    if mark.role is Role.DOG:
        return "second dog, on the hub, pushed by the mandrel's dog"
    return f"{mark.number} driver studs on a {show.length(2 * mark.radius)} circle"
