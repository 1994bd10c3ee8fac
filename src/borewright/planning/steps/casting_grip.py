"""Where the jaws of the chuck go on a rough casting."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.first_hold import JawPlace
from borewright.holding.jaws.as_cast import BOSS, OUTSIDE, RIM
from borewright.job.records import Piece, Work
from borewright.job.web import MEETS, Web, on_bore, web_of
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

JAWS = 4
"""Of an independent chuck."""


def jaw_place(work: Work, tables: Tables) -> JawPlace:
    """Where the jaws go: a boss stout and long enough, else the inside of the rim, else the outside.

    By boss or inside of the rim the outside can be turned in the same chucking.
    """
    least = tables.allowance("jaw_bite").best
    stout = tables.allowance("boss_share").best * work.outside
    bosses = [p for p in _bosses(work) if p.bite >= least - MEETS and p.diameter >= stout]
    recesses = [p for p in _recesses(work) if p.bite >= least - MEETS]
    longest = max(bosses, key=_bite, default=None) or max(recesses, key=_bite, default=None)
    return longest or _by_outside(work)


def jaws_meet_spokes(work: Work, jaws: int = JAWS) -> bool:
    """Whether spokes and jaws do not divide alike, so that some jaw comes on a spoke."""
    return work.spokes is not None and work.spokes.number % jaws != 0


def turns_the_rim(place: JawPlace) -> bool:
    """Whether the outside is free to be turned in this chucking."""
    return place.on != OUTSIDE


def _bite(place: JawPlace) -> Metre:
    return place.bite


def _bosses(work: Work) -> Iterator[JawPlace]:
    """Rings at the bore that stand out past all that is larger, at either face."""
    length = work.length
    for ring in on_bore(work.pieces, work.bore.size):
        larger = [p for p in work.pieces if p.outside > ring.outside + MEETS]
        if not larger:
            continue
        first, last = min(p.start for p in larger), max(p.end for p in larger)
        if ring.start <= MEETS < first:
            yield JawPlace(BOSS, 0.0, min(first, ring.end), ring.outside, False, "B")
        if ring.end >= length - MEETS and last < length - MEETS:
            yield JawPlace(BOSS, max(last, ring.start), length, ring.outside, False, "A")


def _recesses(work: Work) -> Iterator[JawPlace]:
    """The inside of the rim beside web or spokes, at either face."""
    web = web_of(work)
    if web is None or not web.rimmed:
        return
    flat, rim = _ring_of(web, work), _rim_round(web, work)
    if flat.start > rim.start + MEETS:
        yield JawPlace(RIM, rim.start, flat.start, web.outer, True, "B")
    if rim.end > flat.end + MEETS:
        yield JawPlace(RIM, flat.end, rim.end, web.outer, True, "A")


def _ring_of(web: Web, work: Work) -> Piece:
    return next(
        p
        for p in work.pieces
        if p.outside == web.outer and p.inside == web.inner and p.inside is not None
    )


def _rim_round(web: Web, work: Work) -> Piece:
    rims = [p for p in work.pieces if abs((p.inside or 0.0) - web.outer) <= MEETS]
    return max(rims, key=lambda p: p.end - p.start)


def _by_outside(work: Work) -> JawPlace:
    """The outside of the largest ring, half of its width; its stock waits for the next hold."""
    rim = max(work.pieces, key=lambda p: p.outside)
    middle = (rim.start + rim.end) / 2
    return JawPlace(OUTSIDE, rim.start, middle, rim.outside, False, "B")
