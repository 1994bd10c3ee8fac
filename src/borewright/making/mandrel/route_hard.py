"""Hardening, tempering, straightening and the centers after it, by the steel."""

from __future__ import annotations

from math import pi
from typing import Final

from borewright.answer.made_mandrel import MadeMandrel
from borewright.answer.papers import RouteStep
from borewright.making.shop_sizes import heat_words
from borewright.quantities.show import Show
from borewright.quantities.si import Kelvin
from borewright.reference.library import Tables


def hard_steps(made: MadeMandrel, show: Show, tables: Tables) -> tuple[RouteStep, ...]:
    """The steps of a steel that is hardened; none for one that is left as it is."""
    if not made.stock.steel.hard:
        return ()
    return (
        _harden(made, show, tables),
        _temper(made, show),
        _straighten(made, show),
        _lap(),
    )


EYE: Final[Kelvin] = 1150.0
"""Hotter than this no magnet and no color tells the heat of a tool steel well enough (ours)."""


def _harden(made: MadeMandrel, show: Show, tables: Tables) -> RouteStep:
    steel = made.stock.steel
    low, high = steel.harden or (0.0, 0.0)
    heat = heat_words(low, high, made.units)
    lines = (
        _case(made, heat, show, tables) if steel.treatment == "case" else _through(made, heat, show)
    )
    return RouteStep(
        "Harden",
        (
            *lines,
            *_quench(made, show, tables),
            "Hang it by a wire from one end, upright, so that it does not lie and sag.",
            "Try it with a file when it can be touched: a file must skate.",
        ),
        ("heat", "file skates"),
    )


def _through(made: MadeMandrel, heat: str, show: Show) -> tuple[str, ...]:
    steel = made.stock.steel
    soak = steel.soak * made.stock.rough / 0.025
    kept = (
        "Keep the air off: stainless foil, or a closed box or pipe with chips of cast iron or charcoal, or "
        "anti-scale coating. What scales and loses its carbon is soft, and the stock for grinding must hold all "
        "of it."
    )
    said = f"Heat slowly and evenly to {heat}; once it is hot right through, about {show.time(soak)} more."
    if (steel.harden or (0.0,))[0] > EYE:
        return (
            kept,
            f"{said} Only in a furnace with a pyrometer: no magnet and no color tells this heat.",
        )
    return (
        kept,
        f"{said} In an open fire only until the color is even from end to end: longer burns the skin.",
        "Without a pyrometer: past the point where a magnet lets go, and a shade hotter; too hot grows the grain "
        "and it cracks.",
    )


def _case(made: MadeMandrel, heat: str, show: Show, tables: Tables) -> tuple[str, ...]:
    case = made.stock.steel.case or 0.0
    left = case - made.stock.taken / 2
    hours = case / tables.making_fact("case_rate").best
    return (
        f"Pack it in carburizing compound in a closed box and hold it at {heat}: about {show.time(hours)} for a "
        f"skin of {show.depth(case)}, by a test piece of the same bar in the pack. Grinding takes "
        f"{show.depth(made.stock.taken / 2)} of it on a side, so that {show.depth(left)} of hard skin stays.",
    )


def _quench(made: MadeMandrel, show: Show, tables: Tables) -> tuple[str, ...]:
    steel = made.stock.steel
    if steel.medium == "air":
        return (f"Cool it in {steel.quench}, off the floor, not in a draft.",)
    volume = pi / 4 * made.stock.bar.diameter**2 * made.stock.bar_length
    liters = 1000 * tables.making_fact("tub").best * volume
    gallons = liters / 3.785
    tub = (
        f"{gallons:.1f} gal ({liters:.0f} L)"
        if made.units == "inch"
        else f"{liters:.0f} L ({gallons:.1f} gal)"
    )
    return (
        f"Quench at once in {steel.quench}, moving it up and down, never sideways: at least {tub} for its "
        f"{show.weight(made.stock.mass)}, deep enough to cover it upright.",
    )


def _temper(made: MadeMandrel, show: Show) -> RouteStep:
    steel = made.stock.steel
    low, high = steel.temper or (0.0, 0.0)
    hours = max(3600.0, 3600.0 * made.stock.rough / 0.025)
    return RouteStep(
        "Temper",
        (
            f"At once, before it is cold to the touch: {heat_words(low, high, made.units)}, {show.time(hours)} once "
            f"it is warm right through, then cool in air. About {steel.hardness}.",
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
            f"Between centers, indicator at the middle: at most {most}, half of what is left to grind on "
            "diameter. At twice that one side would only just clean up, and its skin would stay soft.",
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
