"""What each limit is called, and the cheapest way out where nothing that can be set meets it."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from borewright.answer.records import Cut
from borewright.mechanics.kienzle import chip_of
from borewright.mechanics.spread import likely
from borewright.planning.passes.holding import Holding
from borewright.planning.passes.least_time import Found


@dataclass(frozen=True, slots=True)
class LimitWords:
    """`what` it is, as a noun; what it does to a faster setting, as a verb; the cheapest `mend`."""

    what: str
    stops: str
    mend: str


LIMITS = {
    "least_chip": LimitWords(
        "the chip is too thin to cut", "would rub and not cut", "A keener tool, or fewer passes."
    ),
    "tool": LimitWords(
        "more than a tool bears",
        "is more than a tool usually bears in this metal",
        "A finer feed.",
    ),
    "finish": LimitWords(
        "the ridges of the feed", "would leave ridges too high", "A rounder nose on the tool."
    ),
    "skin": LimitWords(
        "the first pass stays in the skin",
        "would stay in the skin",
        "Hold the casting so that it bears a deeper first cut, or take the skin off before it is mounted.",
    ),
    "power": LimitWords(
        "the lathe's power in that gear", "is more than the lathe pulls in that gear", "Back gear."
    ),
    "slip": LimitWords(
        "the work would slip",
        "could slip",
        "A positive drive, or more travel where the bore bears it.",
    ),
    "rock": LimitWords(
        "the work would rock", "could rock the work", "A cut nearer the grip, or a longer hub."
    ),
    "bend": LimitWords(
        "bending", "would bend it too far", "A keener tool, a lighter last cut, a stiffer hold."
    ),
    "heat": LimitWords(
        "the warmth of the cut",
        "would warm it until it could slip",
        "Coolant, or a wait between passes.",
    ),
    "chatter": LimitWords(
        "the work itself would chatter",
        "could make the work itself chatter",
        "A slower speed, a tool ground to push less, or a stiffer mandrel.",
    ),
    "lathe": LimitWords("what the lathe can be set to", "is not to be had", ""),
}
"""Plain words for every limit (ours)."""


def way_out(found: Found, cut: Cut, holding: Holding) -> str:
    """What blocks, by how much, and the cheapest mend."""
    limit = LIMITS[found.blocked]
    lacking = max(1, ceil((1 - found.share) * 100))
    return (
        f"To {cut.name}: {limit.what}, {lacking} % short at the best that can be set. "
        f"{_first_mend(found.blocked, found, cut, holding)}{limit.mend}"
    )


def _first_mend(limit: str, found: Found, cut: Cut, holding: Holding) -> str:
    """What costs least: another setting, tool or speed that would do, with its number, as a sentence;
    or the true cause, where it is another. Empty where none can be worked out."""
    if limit == "bend" and likely(holding.springs) > likely(holding.bends(holding.demand(cut))):
        eased = holding.show.small(likely(holding.springs))
        return f"Most of it, {eased}, is the hold letting go: less squeeze for the last pass. "
    if limit in ("slip", "rock", "bend"):
        return _finer_feed(found, cut, holding)
    if limit == "power":
        slower = holding.show.spindle(found.setting.spindle * found.share)
        return f"About {slower} would be slow enough. "
    if limit == "finish":
        return _rounder_nose(cut, holding)
    return ""


def _finer_feed(found: Found, cut: Cut, holding: Holding) -> str:
    """The feed at which the force has fallen to what the limit allows: it goes by the feed to the
    power 1 - m of the force law. Nothing where that chip would be too thin to cut."""
    exponent = 1 - holding.tables.kienzle(holding.job.work.material).mc.best
    feed = found.setting.feed * found.share ** (1 / exponent)
    chip = chip_of(cut.depth, feed, cut.edge_angle, cut.nose_radius)
    if chip.thickness < holding.tables.allowance("least_thickness").best:
        return ""
    return f"A feed of about {holding.show.feed(feed)}, by hand or a finer gear, would do. "


def _rounder_nose(cut: Cut, holding: Holding) -> str:
    """The nose radius that leaves the ridges wanted at this feed; nothing where no tool has it."""
    wanted = holding.job.work.finished.form.roughness
    if wanted is None:
        return ""
    more = holding.tables.allowance("ridges_in_practice").best
    nose = more * cut.feed**2 / (8 * wanted)
    if nose > LARGEST_NOSE:
        return "No turned finish: file and emery, or grind it. "
    return f"A nose radius of {holding.show.depth(nose)} would do at this feed. "


LARGEST_NOSE = 5e-3
"""Nose radius (m) beyond which a tool chatters before it smooths (ours)."""
