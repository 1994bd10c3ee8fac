"""What each limit is called, and the cheapest way out where nothing that can be set meets it."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from borewright.answer.records import Cut
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
        f"{_first_mend(found.blocked, cut, holding)}{limit.mend}"
    )


def _first_mend(limit: str, cut: Cut, holding: Holding) -> str:
    """A mend with a number, where one can be worked out; one for the cause, where it is another."""
    if limit == "bend" and likely(holding.springs) > likely(holding.bends(holding.demand(cut))):
        eased = holding.show.small(likely(holding.springs))
        return f"Most of it, {eased}, is the hold letting go: less squeeze for the last pass. "
    if limit != "finish":
        return ""
    wanted = holding.job.work.finished.form.roughness
    if wanted is None:
        return ""
    more = holding.tables.allowance("ridges_in_practice").best
    nose = more * cut.feed**2 / (8 * wanted)
    return f"A nose radius of {holding.show.depth(nose)} would do at this feed. "
