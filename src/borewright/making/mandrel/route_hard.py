"""Hardening, tempering, straightening and the centers after it, by the steel."""

from __future__ import annotations

from borewright.answer.made_mandrel import MadeMandrel
from borewright.answer.papers import RouteStep
from borewright.making.shop_sizes import heat_words
from borewright.quantities.show import Show


def hard_steps(made: MadeMandrel, show: Show) -> tuple[RouteStep, ...]:
    """The steps of a steel that is hardened; none for one that is left as it is."""
    if not made.stock.steel.hard:
        return ()
    return (_harden(made, show), _temper(made), _straighten(made, show), _lap())


def _harden(made: MadeMandrel, show: Show) -> RouteStep:
    steel = made.stock.steel
    low, high = steel.harden or (0.0, 0.0)
    heat = heat_words(low, high, made.units)
    wired = "Hang it by a wire from one end, upright, so that it does not lie and sag."
    if steel.treatment == "case":
        case = steel.case or 0.0
        left = case - made.stock.taken / 2
        lines = [
            f"Pack it in carburizing compound in a closed box and hold it at {heat} for as long as a "
            f"skin of {show.depth(case)} takes. Grinding takes {show.depth(made.stock.taken / 2)} of "
            f"it on a side, so that {show.depth(left)} of hard skin stays.",
            f"Quench in {steel.quench}.",
        ]
    else:
        soak = steel.soak * made.stock.rough / 0.025
        lines = [
            f"Heat evenly to {heat}, about {show.time(soak)} at heat for this thickness, then quench "
            f"at once in {steel.quench}, moving it up and down, never sideways.",
            "Without a pyrometer: past the point where a magnet lets go, and a shade hotter; too hot "
            "grows the grain and it cracks.",
        ]
    return RouteStep(
        "Harden",
        (*lines, wired, "Try it with a file when it can be touched: a file must skate."),
        ("heat", "file skates"),
    )


def _temper(made: MadeMandrel) -> RouteStep:
    steel = made.stock.steel
    low, high = steel.temper or (0.0, 0.0)
    return RouteStep(
        "Temper",
        (
            f"At once, before it is cold to the touch: {heat_words(low, high, made.units)}, an hour, "
            f"then cool in air. About {steel.hardness} HRC.",
            "A mandrel is tempered less than a tool: it must not be scored by a bore, and nobody "
            "strikes it with steel.",
        ),
        ("tempered at",),
    )


def _straighten(made: MadeMandrel, show: Show) -> RouteStep:
    most = show.small(made.stock.bend_most)
    return RouteStep(
        "Look how far it bent",
        (
            f"Between centers, indicator at the middle: at most {most}, half of what is left to grind. "
            "With more, one side would not clean up.",
            "More than that: straighten it warm from the tempering, below the tempering heat, the high "
            "side up on two blocks under the press, a little at a time. Stand aside and cover it: hard "
            "steel lets go in pieces. If it will not come, anneal and begin again, or grind it for a "
            "smaller size.",
        ),
        ("runs out at the middle",),
    )


def _lap() -> RouteStep:
    return RouteStep(
        "Lap or regrind the centers",
        (
            "Hardening moved and scaled them, and what the centers are, the grinding copies. A 60 "
            "degree copper or cast-iron lap, or a mounted stone dressed to 60 degrees, turning slowly "
            "in the spindle; the mandrel held by hand against the tailstock center, fine compound, "
            "turned a little each time. Then the other end.",
            "Wash both out. Blue on the grinder's own center: contact all round and over most of the "
            "cone.",
        ),
        ("blue all round: large end", "small end"),
    )
