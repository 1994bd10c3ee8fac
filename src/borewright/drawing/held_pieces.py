"""The pieces of a hold from the side: upper half cut open, lower half from outside."""

from __future__ import annotations

from collections.abc import Iterator
from math import radians, tan

from borewright.answer.held_picture import HeldPicture, HeldRing, Role
from borewright.drawing.held_frame import (
    CENTER_REACH,
    HeldFrame,
    ends,
    reach,
    tail_center,
    work_ends,
    work_outside,
)
from borewright.drawing.held_look import LOOKS, is_block, sides, spacing_for
from borewright.drawing.held_shape import (
    Corner,
    bands,
    corners,
    finished,
    is_plain,
    joined,
    joints,
    of_role,
    widest,
)
from borewright.drawing.scene import Hatch, Item, Line, LineKind, Path, Point

Shape = tuple[Corner, ...]

_HALF_ANGLE, _MOUTH = radians(30.0), 0.36


def held_pieces(frame: HeldFrame) -> tuple[Item, ...]:
    """Everything that is drawn of the pieces, in order of painting, the axis last."""
    return (*_center(frame), *_lower(frame), *_upper(frame), *_parting(frame), _axis(frame))


def _parting(frame: HeldFrame) -> Iterator[Item]:
    """Where work that is still part of its bar comes off it."""
    if finished(frame.picture) == of_role(frame.picture, Role.WORK):
        return
    first, outer = work_ends(frame.picture)[0], work_outside(frame.picture)
    x, top, foot = frame.z(first), frame.up(outer), frame.down(outer)
    yield Line(x, top, x, foot, LineKind.LIMIT, "parting-line")


def _upper(frame: HeldFrame) -> Iterator[Item]:
    for role in LOOKS:
        rings = of_role(frame.picture, role)
        if +1 not in sides(role, frame.picture):
            rings = tuple(g for g in rings if not is_block(g))
        if not rings:
            continue
        if not LOOKS[role].cut:
            for ring in rings:
                yield from _whole(frame, ring)
        elif all(is_plain(ring) for ring in rings):
            yield from _section(frame, role, rings)
        else:
            for ring in rings:
                yield from _slanted(frame, ring)


def _section(frame: HeldFrame, role: Role, rings: tuple[HeldRing, ...]) -> Iterator[Item]:
    """One body of several rings: no line where they meet."""
    look, cut = LOOKS[role], joined(rings)
    cells = [
        _on_paper(frame, ((z1, r1), (z1, r2), (z2, r2), (z2, r1))) for z1, r1, z2, r2 in cut.cells()
    ]
    fill = "black" if look.solid else "white"
    yield from (Path(cell, LineKind.BLANK, True, fill) for cell in cells)
    if look.hatch:
        thinnest = min(frame.size(min(g.outer - g.inner, g.end - g.start)) for g in rings)
        yield Hatch(tuple(cells), spacing_for(role, thinnest), f"{role}-section", look.falling)
    for z, r1, r2 in joints(rings) if role is Role.WORK else ():
        yield Line(frame.z(z), frame.up(r1), frame.z(z), frame.up(r2), look.edge, f"{role}-joint")
    for z1, r1, z2, r2 in cut.edges():
        at = (frame.z(z1), frame.up(r1), frame.z(z2), frame.up(r2))
        yield Line(*at, look.edge, f"{role}-edge")


def _slanted(frame: HeldFrame, ring: HeldRing) -> Iterator[Item]:
    """A ring whose size changes along it, in section."""
    look, shape = LOOKS[ring.role], _on_paper(frame, corners(ring))
    fill = "black" if look.solid else "white"
    yield Path(shape, LineKind.BLANK, True, fill)
    if look.hatch:
        thin = frame.size(min(widest(ring) - ring.inner, ring.end - ring.start))
        yield Hatch((shape,), spacing_for(ring.role, thin), f"{ring.role}-section", look.falling)
    yield Path(shape, look.edge, True, name=f"{ring.role}-edge")


def _whole(frame: HeldFrame, ring: HeldRing) -> Iterator[Item]:
    """A piece that is not cut, above the axis; open towards the axis where it is solid."""
    shape = _on_paper(frame, corners(ring))
    yield Path(shape, LineKind.BLANK, True, "white")
    if ring.inner > 0:
        yield Path(shape, LOOKS[ring.role].edge, True, name=f"{ring.role}-edge")
        return
    ahead, behind = _goes_on(frame.picture, ring), _open_behind(frame.picture, ring)
    yield Path(shape[int(ahead) : 4 - int(behind)], LOOKS[ring.role].edge, name=f"{ring.role}-edge")


def _goes_on(picture: HeldPicture, ring: HeldRing) -> bool:
    return _open_at(picture, ring.role, ring.start)


def _open_at(picture: HeldPicture, role: Role, start: float) -> bool:
    """Whether a piece goes on into the headstock: its end is then left open."""
    return role in (Role.SPINDLE, Role.CENTER) and start <= ends(picture)[0] + 1e-7


def _open_behind(picture: HeldPicture, ring: HeldRing) -> bool:
    """Whether it goes on into the tailstock."""
    return ring.role is Role.CENTER and ring.end >= ends(picture)[1] - 1e-7


def _lower(frame: HeldFrame) -> Iterator[Item]:
    """From outside: what is wider covers what is narrower."""
    found = [part for role in LOOKS for part in _outsides(frame.picture, role)]
    for _, role, shape, edge in sorted(found, key=lambda part: part[0]):
        yield Path(_below(frame, shape), LineKind.BLANK, True, "white")
        closed = edge[0] == edge[-1]
        line = _below(frame, edge[:-1] if closed else edge)
        yield Path(line, LOOKS[role].edge, closed, name=f"{role}-outside")


def _outsides(picture: HeldPicture, role: Role) -> Iterator[tuple[float, Role, Shape, Shape]]:
    """Radius, role, corners, and the edge that is drawn of the pieces of a role."""
    rings = of_role(picture, role)
    for ring in (g for g in rings if is_block(g) and -1 in sides(role, picture)):
        shape = corners(ring)
        yield widest(ring), role, shape, (*shape, shape[0])
    rest = [g for g in rings if not is_block(g)]
    for ring in (g for g in rest if not is_plain(g)):
        (a, _), first, last, (b, _) = corners(ring)
        shape = ((a, 0.0), first, last, (b, 0.0))
        ahead, behind = _goes_on(picture, ring), _open_behind(picture, ring)
        yield widest(ring), role, shape, shape[int(ahead) : 4 - int(behind)]
    for a, b, r in bands([g for g in rest if is_plain(g)]):
        shape = ((a, 0.0), (a, r), (b, r), (b, 0.0))
        yield r, role, shape, shape[1:] if _open_at(picture, role, a) else shape
    for z, _, r in joints(rest) if role is Role.WORK else ():
        yield r + 1e-9, role, ((z, 0.0), (z, r)), ((z, 0.0), (z, r))


def _on_paper(frame: HeldFrame, shape: Shape) -> tuple[Point, ...]:
    return tuple((frame.z(z), frame.up(r)) for z, r in shape)


def _below(frame: HeldFrame, shape: Shape) -> tuple[Point, ...]:
    return tuple((frame.z(z), frame.down(r)) for z, r in shape)


def _center(frame: HeldFrame) -> tuple[Item, ...]:
    """The tailstock's center, 60 degrees; the far end is left open: it goes on into its sleeve."""
    found = tail_center(frame.picture)
    if found is None:
        return ()
    face, full = found
    cone = (face + (1 - _MOUTH) * full / tan(_HALF_ANGLE), full)
    shape = ((face, _MOUTH * full), cone, (face + CENTER_REACH * full, full))
    above, below = _on_paper(frame, shape), _below(frame, shape)
    points = (*reversed(above), *below)
    return (Path(points, LOOKS[Role.CENTER].edge, fill="white", name="tailstock-center"),)


def _axis(frame: HeldFrame) -> Line:
    first, last = reach(frame.picture)
    return Line(
        frame.z(first) - 2.0, frame.axis, frame.z(last) + 2.0, frame.axis, LineKind.AXIS, "axis"
    )
