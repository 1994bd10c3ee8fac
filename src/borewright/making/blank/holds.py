"""What of a casting jaws could take for the first hold, and what is cast on where nothing serves."""

from __future__ import annotations

from collections.abc import Iterator
from math import floor

from borewright.answer.made_casting import MadeCasting
from borewright.job.records import Piece
from borewright.job.web import MEETS, between, on_bore
from borewright.making.blank.boss import bite_of
from borewright.making.shop_sizes import up_to_rule
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

LONG = 1.0
"""A plain body at least so long over its outside is a bush, cast several in one stick; ours."""


def holds_of(made: MadeCasting, tables: Tables) -> tuple[str, ...]:
    """The places that jaws could take while the outside is free, in words.

    By the least lengths and rooms that the ways of holding in a plan ask for.
    """
    return (*_hubs(made, tables), *_rims(made, tables))


def hold_words(made: MadeCasting, tables: Tables) -> tuple[str, ...]:
    """What could be held, and what the plan makes of it."""
    show = Show(made.units)
    if made.boss:
        return _boss_words(made, show)
    found = holds_of(made, tables)
    chooses = "`plan` on the job that `--job` writes chooses how it is held and set true."
    if found:
        return (f"With the outside free, jaws could take {'; or '.join(found)}. {chooses}",)
    if len(made.pieces) > 1:
        return (
            "Jaws find only the outside: half of its width, and the rest of it waits for the next "
            f"hold. {chooses}",
        )
    return (
        f"Jaws find only its own outside, and what they cover waits for the next hold. {chooses}",
        *_cast_on(made, tables, show),
    )


def _hubs(made: MadeCasting, tables: Tables) -> Iterator[str]:
    show, bore = Show(made.units), made.wheel.bore.size
    bite = tables.holding_fact("jaw_least_length").best
    stout = tables.allowance("boss_share").best * made.outside
    for hub in on_bore(made.pieces, bore):
        larger = [p for p in made.pieces if p.outside > hub.outside + MEETS]
        if not larger:
            continue
        slight = ", slight for so large an outside" if hub.outside < stout - MEETS else ""
        before, after = (
            min(p.start for p in larger) - hub.start,
            hub.end - max(p.end for p in larger),
        )
        for out, face in ((before, "A"), (after, "B")):
            if out >= bite - MEETS:
                yield f"the hub at face {face}, which stands out {show.depth(out)}{slight}"


def _rims(made: MadeCasting, tables: Tables) -> Iterator[str]:
    """Inside the rim, where it is wide enough for a chuck and the gap to the hub takes a jaw."""
    show, bore = Show(made.units), made.wheel.bore.size
    enters, gap = (tables.holding_fact(n).best for n in ("jaws_in_bore", "jaw_radial_room"))
    bite = tables.holding_fact("jaw_least_length").best
    for web in between(made.pieces, bore):
        if web.outside < enters or (web.outside - (web.inside or bore)) / 2 < gap:
            continue
        for rim in (p for p in made.pieces if _meets(p, web)):
            for deep, face in ((web.start - rim.start, "A"), (rim.end - web.end, "B")):
                if deep >= bite - MEETS:
                    yield f"the inside of the rim at face {face}, {show.depth(deep)} deep, opened outwards"


def _meets(rim: Piece, web: Piece) -> bool:
    return rim.inside is not None and abs(rim.inside - web.outside) <= MEETS


def _boss_words(made: MadeCasting, show: Show) -> tuple[str, ...]:
    boss = made.boss
    assert boss is not None
    loose: tuple[str, ...] = ()
    at_joint = made.mould.parting == (0.0 if boss.face == "A" else made.length)
    if at_joint and made.mould.parting in (0.0, made.length):
        loose = (
            "It stands at the joint, so that it lies in the other box: pegged on the pattern, not glued.",
        )
    return (
        f"A boss at face {boss.face}, {show.length(boss.diameter)} thick at its end, {show.length(boss.length)} long, as asked.",
        *loose,
        "It is in the pattern, in the weight and in the drawings. Held by it, bore, the other face and rim are done in one "
        "chucking; then it is cut off, and the face under it turned.",
        "`plan` reads the job that `--job` writes as the casting is once the boss is off: the first hold by the boss is not in "
        "that plan.",
        "Thick metal freezes late: a chill set against it in the mould, and a look for pores where it was.",
    )


def _cast_on(made: MadeCasting, tables: Tables, show: Show) -> Iterator[str]:
    """A chucking piece for a plain body, and for a bush several in one stick."""
    bite = bite_of(made.outside, tables)
    off = tables.holding_fact("parting_stock").best
    piece = up_to_rule(made.length + off + bite, made.units)
    yield (
        f"To do bore, face and outside in one chucking, cast it longer at full outside, {show.length(piece)} in all: "
        f"{show.length(bite)} for jaws, on which a narrow band is filed or turned even first, because it has draft, and "
        f"{show.length(off)} to part it off."
    )
    several = _in_a_stick(made, bite, off, tables)
    if made.length >= LONG * made.outside and several > 1:
        stick = up_to_rule(several * (made.wheel.length + off) + bite, made.units)
        yield (
            f"Or {several} in one stick, {show.length(stick)} long: each {show.length(made.wheel.length)} and {show.length(off)} to part and "
            f"face it, and {show.length(bite)} for jaws at the end; its pattern is split lengthwise and lies down in the sand, because so long "
            "a draft upright would make it a cone."
        )
    yield "The sizes and weights on these sheets, and the casting's job, are those of one without it."


def _in_a_stick(made: MadeCasting, bite: Metre, off: Metre, tables: Tables) -> int:
    """How many a stick holds that is no more slender than a core, or a mould made by hand, bears."""
    slender = tables.casting_fact("core_slender").high
    most = slender * (made.hole or made.outside)
    return min(made.melt.wanted, floor((most - bite) / (made.wheel.length + off)))
