"""What stands between hub and rim, read from the rings of a part, however they were stated."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from borewright.job.records import Piece, Work
from borewright.quantities.si import Metre

MEETS = 1e-8
"""Metres: rings that miss each other by less meet; inch and metric sizes for one face differ so."""


@dataclass(frozen=True, slots=True)
class Web:
    """The web, or the ring of spokes: from the hub's outside to the rim's inside.

    `rimmed` False: a disc with no rim, `outer` is its edge.
    """

    inner: Metre
    outer: Metre
    thickness: Metre
    rimmed: bool


def between(pieces: Sequence[Piece], bore: Metre) -> tuple[Piece, ...]:
    """The rings that stand on another ring and carry a third: webs, or rings of spokes.

    >>> hub, web = Piece(0.0, 0.03, 0.04), Piece(0.01, 0.02, 0.10, 0.04)
    >>> rim = Piece(0.0, 0.03, 0.12, 0.10)
    >>> between((hub, web, rim), 0.018) == (web,)
    True
    """
    return tuple(p for p in pieces if _on_another(p, bore) and _carries(p, pieces))


def on_bore(pieces: Sequence[Piece], bore: Metre) -> tuple[Piece, ...]:
    """The rings that begin at the bore."""
    return tuple(p for p in pieces if not _on_another(p, bore))


def whole_round(work: Work) -> tuple[Piece, ...]:
    """The rings whose metal goes all the way round: all of them, or all but the spokes."""
    if work.spokes is None:
        return work.pieces
    broken = between(work.pieces, work.bore.size)
    return tuple(p for p in work.pieces if p not in broken)


def gripping(work: Work) -> tuple[Piece, ...]:
    """The rings that are whole all the way round, less what the bore's chamfers take of them."""
    from borewright.mechanics.chamfer import chamfered  # numpy: no job needs it to be read

    rings = [(p.start, p.end, p.outside, p.inside) for p in whole_round(work)]
    return tuple(Piece(*ring) for ring in chamfered(rings, work.bore.size, work.chamfers.legs))


def joined_to_bore(pieces: Sequence[Piece], bore: Metre) -> tuple[Piece, ...]:
    """The rings that are one body with those at the bore; what only spokes would carry is left out.

    >>> hub, rim = Piece(0.0, 0.03, 0.04), Piece(0.0, 0.03, 0.12, 0.10)
    >>> joined_to_bore((rim, hub), 0.018) == (hub,)
    True
    """
    joined = list(on_bore(pieces, bore))
    left = [p for p in pieces if p not in joined]
    while reached := [p for p in left if any(_joined(p, q, bore) for q in joined)]:
        joined += reached
        left = [p for p in left if p not in reached]
    return tuple(p for p in pieces if p in joined)


def _joined(one: Piece, other: Piece, bore: Metre) -> bool:
    """Whether two rings share more than a corner."""
    along = min(one.end, other.end) - max(one.start, other.start)
    across = min(one.outside, other.outside) - max(one.inside or bore, other.inside or bore)
    return min(along, across) > -MEETS and max(along, across) > MEETS


def metal_share(piece: Piece, work: Work) -> float:
    """The share of a ring that is metal: 1, or what the spokes fill of theirs."""
    if work.spokes is None or piece not in between(work.pieces, work.bore.size):
        return 1.0
    inner, outer = piece.inside or work.bore.size, piece.outside
    across = work.spokes.number * work.spokes.width
    # ring area π/4 (D² - d²) over its radial length (D - d)/2 is its mean way round
    return min(1.0, across / (math.pi * (outer + inner) / 2))


def web_of(work: Work) -> Web | None:
    """The thinnest ring on the hub shorter than the hub, or the spokes; None without one."""
    rings = between(work.pieces, work.bore.size) if work.spokes else work.pieces
    found = [w for p in rings if (w := _as_web(p, work)) is not None]
    return min(found, key=lambda w: w.thickness, default=None)


def _as_web(piece: Piece, work: Work) -> Web | None:
    inside, bore = piece.inside, work.bore.size
    if inside is None or not _on_another(piece, bore):
        return None
    thickness = piece.end - piece.start
    hubs = [p for p in work.pieces if abs(p.outside - inside) <= MEETS]
    if not any(p.end - p.start > thickness + MEETS for p in hubs):
        return None
    return Web(inside, piece.outside, thickness, _carries(piece, work.pieces))


def _on_another(piece: Piece, bore: Metre) -> bool:
    return piece.inside is not None and piece.inside > bore + MEETS


def _carries(piece: Piece, pieces: Sequence[Piece]) -> bool:
    return any(p.inside is not None and abs(p.inside - piece.outside) <= MEETS for p in pieces)
