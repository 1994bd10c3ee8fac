"""The plug of an expanding stub: turned first, to sizes a caliper reads; the mouth is bored to it.

Snug, it stands out of the face by `stands`. Its large end is under the bore, so that the work goes on
over it; its small end stops short of the bottom of the mouth by `relief`, its room to travel.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import floor
from typing import Final

from borewright.making.cannot import Cannot
from borewright.making.facts import best_of
from borewright.making.shop_sizes import EXACT, STEP, down_to_shop, up_to_rule
from borewright.making.stub.asked import StubAsked
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerMetre
from borewright.reference.library import Tables

LARGE_END: Final[dict[str, Metre]] = {"inch": 5.08e-5, "mm": 5e-5}
"""To what the plug's large end is said: two thou, or a twentieth of a millimetre."""
MOST_TRAVEL: Final = 0.5
"""Ours: of the mouth's depth; past it the plug bears on too little."""
MOST_RELIEF: Final = 0.75
"""Ours: of the mouth's depth."""


@dataclass(frozen=True, slots=True)
class Cone:
    """What the mouth may be at most: taper on diameter, the hole behind, how deep (m)."""

    taper: MetrePerMetre
    hole: Metre
    deepest: Metre


@dataclass(frozen=True, slots=True)
class Mouth:
    """Lengths in m. `large`: large end of the plug, `stands` how far it stands out, snug."""

    size: Metre
    deep: Metre
    large: Metre
    stands: Metre


@dataclass(frozen=True, slots=True)
class PlugForm:
    """Lengths in m. `opens_most`: opening at which the fingers yield or the plug has no room."""

    small: Metre
    length: Metre
    relief: Metre
    opens_most: Metre


def mouth_of(cone: Cone, opens: Metre, asked: StubAsked, tables: Tables) -> Mouth | Cannot:
    """Mouth and large end for an opening that is needed (m)."""
    own, taper = best_of(tables, "stub_facts"), cone.taper
    largest = asked.bore - own("plug_under_bore")
    widest = cone.hole + taper * cone.deepest
    stands = _stands(max(own("plug_stands_out"), 2 * opens / taper), largest - widest, taper, asked)
    if stands < 2 * opens / taper or stands <= 0:
        return Cannot(
            f"A plug with room to open it {Show(asked.units).small(opens)} would be larger than the bore, and the "
            "work would not go on over it.",
            "Turn a plain stub, or split the batch by size.",
        )
    step = LARGE_END[asked.units]
    large = step * floor((widest + taper * stands) / step + EXACT)
    size = large - taper * stands
    deep = (size - cone.hole) / taper
    if MOST_TRAVEL * deep * taper < opens:
        return Cannot(
            f"The mouth is {Show(asked.units).length(max(deep, 0.0))} deep, too short for the plug to travel in it.",
            "Turn a plain stub, or leave the fingers longer on longer work.",
        )
    return Mouth(size, deep, large, stands)


def plug_of(
    mouth: Mouth, taper: MetrePerMetre, borne: Metre, asked: StubAsked, tables: Tables
) -> PlugForm:
    """The plug for an opening that the fingers bear (m)."""
    deep, stands = mouth.deep, mouth.stands
    travel = min(borne / taper, MOST_TRAVEL * deep)
    relief = min(travel + best_of(tables, "stub_facts")("plug_relief"), MOST_RELIEF * deep)
    length = down_to_shop(deep + stands - relief, asked.units)
    if length <= stands:
        length = deep + stands - relief
    return PlugForm(
        small=mouth.large - taper * length,
        length=length,
        relief=deep + stands - length,
        opens_most=travel * taper,
    )


def _stands(wanted: Metre, wider: Metre, taper: MetrePerMetre, asked: StubAsked) -> Metre:
    """How far it stands out when snug (m): as wanted, or as the large end's room allows."""
    step, room = STEP[asked.units], wider / taper
    most = step * floor(room / step + EXACT)
    return min(up_to_rule(wanted, asked.units), most)
