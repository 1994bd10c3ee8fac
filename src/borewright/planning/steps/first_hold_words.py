"""The first hold of a casting in words: which chuck and where, and what it leaves for the next hold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from borewright.answer.first_hold import JawPlace
from borewright.answer.records import Figure
from borewright.holding.jaws.as_cast import BOSS, OUTSIDE, RIM
from borewright.job.records import Job
from borewright.planning.steps.casting_grip import JAWS, jaws_meet_spokes, turns_the_rim
from borewright.planning.steps.casting_stock import Stock
from borewright.quantities.show import Show

PLAIN = {BOSS: "boss", RIM: "inside of the rim", OUTSIDE: "outside"}
CHUCKS = {4: "Four-jaw independent chuck", 3: "Three-jaw chuck"}


@dataclass(frozen=True, slots=True)
class Begun:
    """How the casting is begun: where, in how many jaws; `chosen`: it is the hold of the way that
    is recommended; `then`: else what that way holds it by; `turns_rim`: the rim is turned in it.
    """

    place: JawPlace
    jaws: int = JAWS
    chosen: bool = False
    then: str = ""
    turns_rim: bool = False


def held_by(job: Job, begun: Begun, show: Show) -> str:
    """Chuck, place and what stays free, in sentences."""
    place = begun.place
    where = f"{show.length(place.bite)} of it, {show.length(place.diameter)} across, face {place.face_out} out"
    way = "opened outward into" if place.opened else "closed on"
    held = f"{CHUCKS[begun.jaws]}, jaws {way} the {PLAIN[place.on]}: {where}."
    return " ".join((held, *_held_further(job, begun)))


def _held_further(job: Job, begun: Begun) -> Iterator[str]:
    work, place = job.work, begun.place
    if place.opened and jaws_meet_spokes(work, begun.jaws) and work.spokes:
        jaws = {4: "four", 3: "three"}[begun.jaws]
        yield f"{work.spokes.number} spokes and {jaws} jaws do not divide alike: the jaws bear beside the spokes, not between them."
    if begun.chosen:
        yield "This is the one hold of the steps below: the outside stays free, bore and rim are finished in it."
    elif begun.turns_rim:
        yield "The outside stays free: bore and rim can be finished in this one chucking."
    elif turns_the_rim(place):
        yield "It is held so only to be bored; the outside waits for the next hold."
    else:
        yield "The outside under the jaws waits for the next hold."
    if place.bite < 2e-3 + 0.05 * work.outside:
        yield "That is a short bite for so large a piece: better strapped to the faceplate; else light cuts at the slowest speeds."


def last_step(
    stock: Stock, begun: Begun, show: Show
) -> tuple[str, str, tuple[Figure, ...], tuple[str, ...]]:
    """To size, and the rim here or in the hold that is recommended."""
    skin = _first_cut(stock, show)
    if begun.turns_rim:
        return (
            "Bore to size, then the rim",
            "Rough the rim without letting go; let it cool, finish the bore, and the rim last. Bore, rim and this face are "
            f"then true with each other, and only the second face is left. {skin}",
            (),
            ("rim",),
        )
    rim = (
        f"is then turned on what is recommended: {begun.then}"
        if begun.then
        else "then goes on a mandrel"
    )
    return (
        "Bore to size, then another hold",
        f"Finish the bore and this hub face without letting go. The rim {rim}. {skin}",
        (),
        ("bore",),
    )


def _first_cut(stock: Stock, show: Show) -> str:
    if stock.throw_left is None:
        return f"Its first cut goes under the skin all round: {show.depth(stock.skin.best)} where it is lowest."
    deep = show.depth(stock.throw_left + stock.skin.best)
    return (
        f"To get under its skin all round in one, the first cut goes {deep} past the first touch, the high side: if hold or "
        "lathe will not stand that, rough the high side down first, slowly."
    )
