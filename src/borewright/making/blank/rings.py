"""The casting's rings: stock put on, then drawn with draft; which surfaces sand meets."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from borewright.answer.drawn_part import Stretch
from borewright.answer.made_casting import Wheel
from borewright.job.records import Piece
from borewright.job.web import MEETS
from borewright.making.blank.wheel import tidy
from borewright.mechanics.cast_metal import draft_adds
from borewright.quantities.si import Metre, Radian


def cast_rings(wheel: Wheel, side: Metre, face: Metre) -> tuple[Piece, ...]:
    """The finished rings with stock (m): `side` on the outside, `face` on either end; z from face A
    as cast. Webs, insides and hubs that no tool meets stay as they are.

    >>> from borewright.job.records import Bore
    >>> wheel = Wheel((Piece(0.0, 0.05, 0.127),), 0.127, 0.05, Bore(0.022), False)
    >>> cast_rings(wheel, 0.002, 0.003)
    (Piece(start=0.0, end=0.056, outside=0.131, inside=None),)
    """
    return tuple(
        Piece(
            0.0 if p.start <= MEETS else tidy(p.start + face),
            tidy(p.end + (2 * face if p.end >= wheel.length - MEETS else face)),
            tidy(p.outside + 2 * side) if p.outside >= wheel.outside - MEETS else p.outside,
            p.inside,
        )
        for p in wheel.pieces
    )


@dataclass(frozen=True, slots=True)
class Draft:
    """Draft of outsides and of insides (rad), and the parting plane (m from face A as cast)."""

    outside: Radian
    inside: Radian
    parting: Metre


def drafted(
    pieces: Sequence[Piece], hole: Metre, draft: Draft, in_sand: bool = False
) -> tuple[Stretch, ...]:
    """The rings as they are drawn out of the sand: thicker towards the parting plane, nowhere
    thinner than asked. `hole` (m): the core's diameter, 0 where it is solid; `in_sand`: it is no
    core's, but drawn like the rest, at its widest at the ends.

    >>> rod = drafted((Piece(0.0, 0.02, 0.1),), 0.0, Draft(0.02, 0.05, 0.01))
    >>> [(s.start, round(s.outside, 6), round(s.outside_end or s.outside, 6)) for s in rod]
    [(0.0, 0.1, 0.1004), (0.01, 0.1004, 0.1)]
    """
    places = sorted({p for ring in pieces for p in (ring.start, ring.end)} | {draft.parting})
    low, high = min(p.start for p in pieces), max(p.end for p in pieces)
    cuts = [z for z in places if low <= z <= high]
    parts = [(a, b) for a, b in pairwise(cuts) if b - a > MEETS]
    ends = low, high
    holes = [_hole_at(hole, draft, ends, (a, b), in_sand) for a, b in parts]
    return tuple(
        s for (a, b), h in zip(parts, holes, strict=True) for s in _across(pieces, h, draft, a, b)
    )


def _hole_at(
    hole: Metre,
    draft: Draft,
    ends: tuple[Metre, Metre],
    span: tuple[Metre, Metre],
    in_sand: bool,
) -> tuple[Metre, Metre]:
    """The hole (m) at both ends of a stretch: narrower towards the parting where sand stands in it."""
    if not in_sand:
        return hole, hole
    far = ends[0] if (span[0] + span[1]) / 2 < draft.parting else ends[1]
    sizes = [tidy(hole - 2 * draft_adds(abs(z - far), draft.inside)) for z in span]
    return sizes[0], sizes[1]


def _across(
    pieces: Sequence[Piece], hole: tuple[Metre, Metre], draft: Draft, start: Metre, end: Metre
) -> Iterator[Stretch]:
    here = [p for p in pieces if p.start <= start + MEETS and p.end >= end - MEETS]
    for ring in sorted(here, key=lambda p: p.outside):
        out = _drawn(ring.outside, pieces, draft, (start, end), outside=True)
        within = hole
        if ring.inside is not None:
            within = _drawn(ring.inside, pieces, draft, (start, end), outside=False)
        yield Stretch(start, end, out[0], out[1], within[0], within[1])


def _drawn(
    size: Metre, pieces: Sequence[Piece], draft: Draft, span: tuple[Metre, Metre], outside: bool
) -> tuple[Metre, Metre]:
    """A diameter at both ends of a stretch with what draft adds; as it is where metal joins it."""
    free = _free(size, pieces, span, outside)
    if free is None:
        return size, size
    below = (span[0] + span[1]) / 2 < draft.parting
    far = max(free[0], -1.0) if below else free[1]
    angle, way = (draft.outside, 1) if outside else (draft.inside, -1)
    ends = (size + way * 2 * draft_adds(abs(z - far), angle) for z in span)
    return tuple(tidy(e) for e in ends)  # type: ignore[return-value]


def _free(
    size: Metre, pieces: Sequence[Piece], span: tuple[Metre, Metre], outside: bool
) -> tuple[Metre, Metre] | None:
    """From where to where this surface lies free in the sand round the span; None where joined."""
    own = [p for p in pieces if _near(p.outside if outside else p.inside, size)]
    other = [p for p in pieces if _near(p.inside if outside else p.outside, size)]
    middle = (span[0] + span[1]) / 2
    if any(p.start < middle < p.end for p in other):
        return None
    start, end = min(p.start for p in own), max(p.end for p in own)
    walls = [z for p in other for z in (p.start, p.end)]
    before = [z for z in walls if z <= middle]
    after = [z for z in walls if z >= middle]
    return max([start, *before]), min([end, *after])


def _near(one: Metre | None, other: Metre) -> bool:
    return one is not None and abs(one - other) <= MEETS
