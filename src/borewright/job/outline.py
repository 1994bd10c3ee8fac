"""The rings of a part: from outside, length, hub, web and rim, and whether they make one part.

Sizes here are SI already. Every refusal names the place and the rings concerned.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Final

from borewright.errors.tree import RefusedInput
from borewright.job.records import Bore, Piece
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

SLACK: Final = 1e-8
"""Metres: rings that miss each other by less meet; inch and metric sizes for one face differ so."""

NEAR_SIZE: Final = 0.1
"""Ours: a reading further than a tenth from the size stated was mistyped or in another unit."""


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch along the work."""

    start: Metre
    end: Metre

    def within(self, other: Span) -> bool:
        """Whether it lies inside another.

        >>> Span(0.1, 0.2).within(Span(0.0, 0.2))
        True
        """
        return self.start >= other.start - SLACK and self.end <= other.end + SLACK


@dataclass(frozen=True, slots=True)
class Hub:
    """A hub as stated: its outside and its stretch."""

    outside: Metre
    span: Span


@dataclass(frozen=True, slots=True)
class Rim:
    """A rim as stated: its inside and its stretch."""

    inside: Metre
    span: Span


def wheel(outside: Metre, hub: Hub | None, web: Span, rim: Rim | None) -> tuple[Piece, ...]:
    """Hub, web and rim as rings, in that order; without a hub the web reaches the bore.

    >>> rim = Rim(0.065, Span(0.0, 0.019))
    >>> [p.inside for p in wheel(0.076, Hub(0.03, Span(0.0, 0.019)), Span(0.006, 0.013), rim)]
    [None, 0.03, 0.065]
    """
    web_outside = rim.inside if rim else outside
    web_piece = Piece(web.start, web.end, web_outside, hub.outside if hub else None)
    inner = (Piece(hub.span.start, hub.span.end, hub.outside),) if hub else ()
    outer = (Piece(rim.span.start, rim.span.end, outside, rim.inside),) if rim else ()
    return (*inner, web_piece, *outer)


def check_pieces(pieces: Sequence[Piece], bore: Bore, where: str) -> None:
    """Refuse rings that do not make one part around this bore, beginning at face A."""
    for number, piece in enumerate(pieces, 1):
        _check_ring(piece, bore, f"{where} ring {number}")
    start = min(piece.start for piece in pieces)
    if start > SLACK:
        raise RefusedInput(where, f"a first face at {_say(start)}", "rings that begin at 0, face A")
    _check_pairs(pieces, bore, where)
    if all(_inside(piece, bore) > bore.size + SLACK for piece in pieces):
        raise RefusedInput(where, "no ring that reaches the bore", "at least one without `inside`")
    _check_readings(bore, max(piece.end for piece in pieces), where)


def _check_ring(piece: Piece, bore: Bore, where: str) -> None:
    if piece.end <= piece.start + SLACK:
        found = Show("mm").band(piece.start, piece.end, "length")
        raise RefusedInput(where, found, "a `to` beyond its `from`")
    if piece.outside <= bore.size + SLACK:
        found = f"outside {_say(piece.outside)}"
        raise RefusedInput(where, found, f"an outside above the bore, {_say(bore.size)}")
    inside = _inside(piece, bore)
    if not bore.size - SLACK <= inside < piece.outside - SLACK:
        allowed = f"from the bore, {_say(bore.size)}, to below the outside, {_say(piece.outside)}"
        raise RefusedInput(where, f"inside {_say(inside)}", allowed)


def _check_pairs(pieces: Sequence[Piece], bore: Bore, where: str) -> None:
    for (i, one), (k, other) in combinations(enumerate(pieces, 1), 2):
        if _common(one, other) > SLACK and _common_radius(one, other, bore) > SLACK:
            found = f"rings {i} and {k} in the same place"
            raise RefusedInput(where, found, "rings that meet without overlapping")
    loose = len(pieces) - len(_joined(pieces, bore))
    if loose:
        found = f"{loose} of {len(pieces)} rings not joined to the first"
        raise RefusedInput(where, found, "rings that meet along a face or a cylinder")


def _joined(pieces: Sequence[Piece], bore: Bore) -> set[int]:
    seen, waiting = {0}, [0]
    while waiting:
        for k in _neighbours(waiting.pop(), pieces, bore):
            if k not in seen:
                seen.add(k)
                waiting.append(k)
    return seen


def _neighbours(i: int, pieces: Sequence[Piece], bore: Bore) -> Iterator[int]:
    for k, other in enumerate(pieces):
        along, across = _common(pieces[i], other), _common_radius(pieces[i], other, bore)
        if min(along, across) >= -SLACK and max(along, across) > SLACK:
            yield k


def _common(one: Piece, other: Piece) -> float:
    return min(one.end, other.end) - max(one.start, other.start)


def _common_radius(one: Piece, other: Piece, bore: Bore) -> float:
    return min(one.outside, other.outside) - max(_inside(one, bore), _inside(other, bore))


def _inside(piece: Piece, bore: Bore) -> Metre:
    return bore.size if piece.inside is None else piece.inside


def _check_readings(bore: Bore, length: Metre, where: str) -> None:
    for reading in bore.readings:
        if reading.depth > length + SLACK:
            found = f"a bore reading at depth {_say(reading.depth)}"
            raise RefusedInput(where, found, f"a depth within the work, 0 to {_say(length)}")
        if abs(reading.size - bore.size) > NEAR_SIZE * bore.size:
            found = f"a bore reading of {Show('mm').bore(reading.size)}"
            raise RefusedInput(where, found, f"a reading near the bore, {_say(bore.size)}")


def _say(size: Metre) -> str:
    return Show("mm").length(size) if abs(size) > SLACK else "0"
