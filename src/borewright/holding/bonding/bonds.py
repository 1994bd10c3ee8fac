"""What sticks work on: shear, what of it is left against peel, warmth, and how it lets go again.

Every figure is from memory and wide: a bond is only as good as the two faces were clean.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.held import Check
from borewright.answer.records import Draws
from borewright.answer.streams import Stream
from borewright.holding.part import Part
from borewright.mechanics.spread import likely
from borewright.quantities.si import Kelvin

ROOM_TEMPERATURE = 293.15
"""K; ISO 1."""

NOTHING_STICKS = ("ptfe", "plastic", "wood")
"""Families that these do not hold, or that the heat to let go spoils."""

CARE, REFUSED = 0.6, 0.3
"""Margins told for a bonded face that is trusted with care, and not at all (ours)."""

TEMPERED = ("aluminium", "magnesium", "zinc", "hard-steel")
"""Families whose temper suffers above the figure temper_limit."""


@dataclass(frozen=True, slots=True)
class Bond:
    """One way to stick: `key` of its rows, tool of the table holding_tools, and words."""

    key: str
    tool: str
    called: str
    thick: str
    """How it is put on and cured, an imperative sentence or two."""

    off: str
    """How it lets go, after the temperature."""

    def shear(self, part: Part) -> Draws:
        """Shear strength (Pa) on clean metal, cold."""
        return part.fact(f"{self.key}_shear", Stream.CLAMPING)

    def half_warm(self, part: Part) -> Draws:
        """Warmth (K over room) at which half of it is left."""
        return part.fact(f"{self.key}_half_warm", Stream.WARMING)

    def release_at(self, part: Part) -> Kelvin:
        """Temperature at which it lets go."""
        return part.tables.holding_fact(f"{self.key}_release").best


SUPER_GLUE = Bond(
    "super_glue",
    "super-glue",
    "super glue",
    "A few drops, thin, both faces degreased with acetone; press together and hold; leave it the half hour that full "
    "strength takes.",
    "or a soak in acetone overnight, or a sharp tap sideways; the fumes of hot glue sting: open a window",
)

WAX = Bond(
    "wax",
    "wax",
    "shellac or sealing wax",
    "Warm both until it melts and flows, press together, true it while it is soft, let it cool on the lathe.",
    "then wipe with spirit",
)

RETAINING = Bond(
    "retaining",
    "retaining-compound",
    "retaining compound",
    "Degrease stub and bore, coat both, slide on with a twist; cure by the maker's time for these metals before cutting.",
    "then pull at once while it is hot, gloves on, window open",
)


def peel(part: Part, shear: Draws) -> Draws:
    """What a bond stands against being pulled or peeled off (Pa)."""
    return np.asarray(shear * part.fact("peel_share", Stream.EDGE))


def release_check(part: Part, bond: Bond) -> Check:
    """Whether the warmth that lets it go is borne by the work."""
    show, hot = part.show, bond.release_at(part)
    limit = part.tables.holding_fact("temper_limit").best
    tempered = part.tables.material(part.work.material).family in TEMPERED
    spoilt = tempered and hot > limit
    margin = (limit - ROOM_TEMPERATURE) / (hot - ROOM_TEMPERATURE) if spoilt else 2.0
    spoils = f", and above {show.temperature(limit)} this metal loses its temper" if spoilt else ""
    return Check(
        margin,
        margin,
        f"Nothing needs force: a hand presses it together. It lets go at about {show.temperature(hot)}{spoils}.",
        "Nothing needs to."
        if margin >= 1
        else "A weaker grade, super glue or wax; a stub with a screw.",
        ("adhesive-memory",),
    )


def trusted(part: Part) -> Check:
    """Whether a bonded face may be trusted with this weight: what lets go flies with it."""
    fact, mass = part.tables.holding_fact, _mass(part)
    light, most = fact("bond_light").best, fact("bond_most").best
    knocks = part.work.blank == "casting" or bool(part.work.spokes or part.work.cross_hole)
    margin = light / mass
    if margin < 1 or knocks:
        margin = CARE if mass <= most else min(margin, REFUSED)
    knocked = " A rough or interrupted outside knocks it." if knocks else ""
    return Check(
        margin,
        margin,
        f"The step is turned to the bore as it is. Nothing shows how good a bonded face is but the proof load; work up to "
        f"{part.show.weight(light)} is trusted to one, up to {part.show.weight(most)} with care and light cuts; this is {part.show.weight(mass)}.{knocked}",
        "Nothing needs to." if margin >= 1 else "A screw and washer, or straps, beside the bond.",
        ("ours",),
    )


def _mass(part: Part) -> float:
    """Mass (kg), spokes and holes as if they were solid."""
    rings = part.work.pieces
    area = sum((p.outside**2 - (p.inside or part.bore) ** 2) * (p.end - p.start) for p in rings)
    return float(part.range("density").best * np.pi / 4 * area)


def warm_words(part: Part, bond: Bond) -> str:
    """How warm it may get, and how it comes off."""
    show = part.show
    half = show.temperature_difference(likely(bond.half_warm(part)))
    hot = show.temperature(bond.release_at(part))
    return f"Half of it is gone {half} above the room; it lets go at about {hot}, {bond.off}."
