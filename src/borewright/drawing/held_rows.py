"""The dimensions under the side view of a hold, one to a row."""

from __future__ import annotations

from borewright.answer.held_picture import Role
from borewright.drawing.dimension import ROW, Span, level_dimension, without_other_unit
from borewright.drawing.held_frame import HeldFrame, work_ends
from borewright.drawing.held_shape import corners, of_role
from borewright.drawing.scene import Item
from borewright.quantities.show import Show

_HOLDS = (Role.SPINDLE, Role.JAW)
_SAME = 0.5e-3
"""Lengths (m) nearer to each other than this are not dimensioned twice."""


def row_count(frame: HeldFrame, show: Show) -> int:
    """How many rows there are."""
    return len(_spans(frame, show))


def dimension_rows(frame: HeldFrame, show: Show, top: float, width: float) -> tuple[Item, ...]:
    """Length of the work; how far it stands out, or how long the mandrel is, below `top`."""
    spans = _spans(frame, show)
    found: list[Item] = []
    for k, span in enumerate(spans):
        farther = {x for s in spans[k + 1 :] for x in (s.x1, s.x2)} - {span.x1, span.x2}
        y = top + ROW * (k + 0.5)
        found += level_dimension(span, y, 0.0, width, tuple(sorted(farther)))
    return tuple(found)


def _spans(frame: HeldFrame, show: Show) -> tuple[Span, ...]:
    first, last = work_ends(frame.picture)
    spans = [_span(frame, "work", "work {} long", "work {}", first, last, show)]
    far, out = _overhang(frame)
    if out > _SAME and abs(out - (last - first)) > _SAME:
        spans.append(_span(frame, "overhang", "stands out {}", "out {}", far - out, far, show))
    bar = _between(frame)
    if bar:
        spans.append(_span(frame, "mandrel", "mandrel {} long", "mandrel {}", *bar, show))
    return tuple(spans)


def _overhang(frame: HeldFrame) -> tuple[float, float]:
    """z of the far end of the work, and how far it is out of the chuck.

    0 with a center, and on a plate, which it rests on.
    """
    picture = frame.picture
    _, far = work_ends(picture)
    fronts = [g.end for role in _HOLDS for g in of_role(picture, role) if g.start < 0 <= far]
    resting = picture.tailstock or bool(of_role(picture, Role.PLATE))
    return far, 0.0 if resting or not fronts else far


def _between(frame: HeldFrame) -> tuple[float, float] | None:
    """Both ends of a mandrel between centers; none of one that a chuck or collet grips."""
    bars = of_role(frame.picture, Role.MANDREL)
    gripped = any(of_role(frame.picture, role) for role in _HOLDS)
    if not bars or gripped or not frame.picture.tailstock:
        return None
    return min(g.start for g in bars), max(g.end for g in bars)


def _span(
    frame: HeldFrame, name: str, full: str, short: str, a: float, b: float, show: Show
) -> Span:
    size = show.length(b - a)
    plain = without_other_unit(size)
    words = (full.format(size), full.format(plain), short.format(plain))
    feet = (frame.down(_radius_at(frame, a)), frame.down(_radius_at(frame, b)))
    return Span(frame.z(a), feet[0], frame.z(b), feet[1], words, name)


def _radius_at(frame: HeldFrame, z: float) -> float:
    """The smallest radius of an edge at z, where an extension line may begin."""
    at = [
        r
        for ring in frame.picture.rings
        for edge_z, r in corners(ring)[1:3]
        if abs(edge_z - z) < 1e-7
    ]
    work = [
        r
        for ring in of_role(frame.picture, Role.WORK)
        for edge_z, r in corners(ring)[1:3]
        if abs(edge_z - z) < 1e-7
    ]
    return max(work or at, default=0.0)
