"""Cored or solid, and what the first chucking holds by: a boss where nothing else is there."""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

from borewright.answer.made_casting import Boss, Core, End, Mould, Wheel
from borewright.errors import RefusedInput
from borewright.job.records import Job, Piece
from borewright.job.web import MEETS, between, on_bore
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.shop_sizes import to_rule, up_to_rule
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def core_of(
    job: Job, wheel: Wheel, stock: Metre, long: Metre, asked: CastingAsked, tables: Tables
) -> tuple[Core | None, str]:
    """The core and why, or None and why it is cast solid. RefusedInput for one that cannot be."""
    fact, show = tables.casting_fact, Show(job.units)
    limits = wheel.bore.limits
    smallest = limits.low if limits else wheel.bore.size
    step = fact(f"core_step_{job.units}").best
    size = floor((smallest - 2 * stock) / step + 1e-6) * step
    least, thin = fact("core_least").best, fact("core_thin").best
    slender = fact("core_slender").best
    if size < thin or long > slender * size:
        reason = (
            f"a core for a bore of {show.length(wheel.bore.size)} would be {show.length(max(size, 0.0))} thick and "
            f"{show.length(long)} long: thinner than {show.length(thin)} or longer than {slender:g} times its thickness, "
            "it breaks or cannot be vented"
        )
        if asked.bore == "cored":
            allowed = "solid: " + reason
            raise RefusedInput("--bore", "cored", allowed)
        return None, reason
    if asked.bore == "solid" or (asked.bore is None and smallest < least):
        said = (
            "as asked"
            if asked.bore
            else f"a bore below {show.length(least)} is drilled sooner than cored"
        )
        return None, said
    prints = up_to_rule(max(fact("print_least").best, fact("print_share").best * size), job.units)
    why = "as asked" if asked.bore else f"a bore of {show.length(least)} or more is worth a core"
    return Core(size, prints, long), why


def boss_of(
    job: Job,
    pieces: Sequence[Piece],
    core: Core | None,
    mould: Mould,
    asked: CastingAsked,
    tables: Tables,
) -> tuple[Boss | None, str]:
    """The boss and why, or None and what the jaws hold by."""
    if asked.boss == "none":
        return None, "none, as asked"
    held = _held_by(pieces, job.work.bore.size, tables)
    if held and asked.boss is None:
        return None, f"none: {held}"
    outside = max(p.outside for p in pieces)
    share, bite = tables.allowance("boss_share").best, tables.allowance("jaw_bite").best
    least = (core.diameter if core else 0.0) + tables.casting_fact("boss_wall").best * bite
    size = to_rule(max(share * outside, least), job.units)
    hubs = [p.outside for p in on_bore(pieces, job.work.bore.size)]
    if len(pieces) > 1:
        size = min(size, *hubs)
    length = up_to_rule(bite, job.units)
    face: End = "A" if asked.boss == "A" else "B" if asked.boss == "B" else _boss_end(mould, pieces)
    why = (
        "as asked" if asked.boss else "nothing else gives jaws a hold that leaves the outside free"
    )
    return Boss(face, size, length), why


def _boss_end(mould: Mould, pieces: Sequence[Piece]) -> End:
    """The face that is up; the other one where the pattern lies in one box, so that it draws."""
    at_a_face = mould.parting in (0.0, max(p.end for p in pieces))
    if not at_a_face:
        return mould.up
    return "B" if mould.up == "A" else "A"


def _held_by(pieces: Sequence[Piece], bore: Metre, tables: Tables) -> str:
    """What of the casting jaws can take while the outside is turned; empty for nothing."""
    bite, share = tables.allowance("jaw_bite").best, tables.allowance("boss_share").best
    outside = max(p.outside for p in pieces)
    start, end = min(p.start for p in pieces), max(p.end for p in pieces)
    for hub in on_bore(pieces, bore):
        larger = [p for p in pieces if p.outside > hub.outside + MEETS]
        if not larger or hub.outside < share * outside - MEETS:
            continue
        if hub.start <= start + MEETS and min(p.start for p in larger) - start >= bite - MEETS:
            return "the hub stands out far enough for jaws at face A"
        if hub.end >= end - MEETS and end - max(p.end for p in larger) >= bite - MEETS:
            return "the hub stands out far enough for jaws at face B"
    for web in between(pieces, bore):
        rims = [p for p in pieces if p.inside is not None and abs(p.inside - web.outside) <= MEETS]
        for rim in rims:
            for deep, face in ((web.start - rim.start, "A"), (rim.end - web.end, "B")):
                if deep >= bite - MEETS:
                    return f"jaws opened inside the rim at face {face} hold it"
    return ""
