"""How the pattern lies in the sand: which face is up, where it parts, draft, corners, what feeds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from borewright.answer.made_casting import End, Mould, Section, Wheel
from borewright.job.interrupted import Spokes
from borewright.job.records import Job, Piece
from borewright.job.web import MEETS, between, on_bore
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.feed import riser_of
from borewright.making.blank.wheel import tidy
from borewright.making.shop_sizes import to_rule
from borewright.mechanics.cast_metal import hub_modulus, modulus
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class Hollows:
    """Whether a face has hollows that sand must fill: beside hub and rim."""

    a: bool
    b: bool


def mould_of(
    job: Job,
    wheel: Wheel,
    pieces: Sequence[Piece],
    hole: Metre,
    asked: CastingAsked,
    tables: Tables,
) -> Mould:
    """The mould of a casting of these rings; `hole` (m) is its core's, 0 where it is solid."""
    hollows = hollows_of(pieces)
    parting, why = _parting(pieces, wheel, hollows)
    up, up_why = _up(hollows, asked)
    if asked.up is None and parting in (0.0, max(p.end for p in pieces)):
        up = "A" if parting == 0.0 else "B"
        up_why = "it is flat and lies at the joint; the other side is down, where metal is sounder"
    fact = tables.casting_fact
    wall = _thinnest(pieces, wheel.bore.size)
    sections = sections_of(pieces, wheel, hole, job.work.spokes)
    return Mould(
        up,
        up_why,
        parting,
        why,
        fact("draft_outside").best,
        fact("draft_inside").best,
        _fillet(pieces, wall, job, tables),
        to_rule(fact("round_least").best, job.units),
        sections,
        riser_of(sections, pieces, wheel, hole, tables),
        tables.foundry_metal(job.work.material).swells,
    )


def _fillet(pieces: Sequence[Piece], wall: Metre, job: Job, tables: Tables) -> Metre:
    """Radius (m) of the inside corners; 0 where the casting has none."""
    if len(pieces) == 1:
        return 0.0
    fact = tables.casting_fact
    return to_rule(max(fact("fillet_least").best, fact("fillet_share").best * wall), job.units)


def hollows_of(pieces: Sequence[Piece]) -> Hollows:
    """Which faces are not flat.

    >>> hollows_of((Piece(0.0, 0.03, 0.1),))
    Hollows(a=False, b=False)
    """
    start, end = min(p.start for p in pieces), max(p.end for p in pieces)
    return Hollows(
        any(p.start > start + MEETS for p in pieces), any(p.end < end - MEETS for p in pieces)
    )


def _parting(pieces: Sequence[Piece], wheel: Wheel, hollows: Hollows) -> tuple[Metre, str]:
    long = max(p.end for p in pieces)
    if not hollows.a:
        return 0.0, "through face A, which is flat: the whole pattern lies in one box"
    if not hollows.b:
        return long, "through face B, which is flat: the whole pattern lies in one box"
    webs = between(pieces, wheel.bore.size) or tuple(sorted(pieces, key=lambda p: -p.outside)[:1])
    web = min(webs, key=lambda p: p.end - p.start)
    middle = tidy((web.start + web.end) / 2)
    return middle, "through the middle of the web: both sides draw, the pattern is split there"


def _up(hollows: Hollows, asked: CastingAsked) -> tuple[End, str]:
    if asked.up is not None:
        return asked.up, "as asked"
    return "B", "face A, from which lengths are measured, lies down where metal is sounder"


def _thinnest(pieces: Sequence[Piece], bore: Metre) -> Metre:
    """The thinnest wall (m): along the axis for what stands between, across it for the rest."""
    webs = between(pieces, bore)
    walls = [p.end - p.start for p in webs]
    walls += [(p.outside - (p.inside or bore)) / 2 for p in pieces if p not in webs]
    return min(walls)


def sections_of(
    pieces: Sequence[Piece], wheel: Wheel, hole: Metre = 0.0, spokes: Spokes | None = None
) -> tuple[Section, ...]:
    """Hub, web and rim by their modulus, the heaviest first: it freezes last.

    `hole` (m): as cast. Its core grows as hot as the metal, and is taken as not cooling at all.
    """
    bore, found = wheel.bore.size, []
    webs, hubs = between(pieces, bore), on_bore(pieces, bore)
    for piece in pieces:
        if spokes and piece in webs:
            bar = modulus(spokes.width, piece.end - piece.start)
            found.append(Section("spokes", bar))
            continue
        name = "web" if piece in webs else "hub" if piece in hubs and len(pieces) > 1 else "rim"
        name = "body" if len(pieces) == 1 else name
        found.append(Section(name, _modulus_of(piece, pieces, hole)))
    return tuple(sorted(found, key=lambda s: -s.modulus))


def _modulus_of(piece: Piece, pieces: Sequence[Piece], hole: Metre) -> Metre:
    """A ring's modulus (m): as a bar, but for one at the bore, which is a cylinder or a tube."""
    width = piece.end - piece.start
    joined = sum(
        max(0.0, min(piece.end, p.end) - max(piece.start, p.start))
        for p in pieces
        if p is not piece and (_meets(p.inside, piece.outside) or _meets(piece.inside, p.outside))
    )
    if piece.inside is not None:
        return modulus(width, (piece.outside - piece.inside) / 2, joined)
    return hub_modulus(width, piece.outside, hole, min(joined, width))


def _meets(one: Metre | None, other: Metre | None) -> bool:
    return one is not None and other is not None and abs(one - other) <= MEETS
