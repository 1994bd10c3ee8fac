"""What each limit is called, and the way out in a sentence where nothing that can be set meets it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Cut
from borewright.mechanics.spread import likely, low_end
from borewright.planning.passes.holding import Holding
from borewright.planning.passes.least_time import Found
from borewright.planning.passes.mend_words import accept_words, lacking, mended_words, none_words
from borewright.planning.passes.problem import Problem
from borewright.planning.passes.search import searched
from borewright.planning.weighing.judge import share_of_yes


@dataclass(frozen=True, slots=True)
class LimitWords:
    """`what` it is, as a noun; what it does to a faster setting, as a verb; what is left where
    no change to the cut is enough (`mend`), as a sentence."""

    what: str
    stops: str
    mend: str


LIMITS = {
    "least_chip": LimitWords(
        "the chip is too thin to cut",
        "would rub and not cut",
        "Take it in another hold, which bears a heavier cut.",
    ),
    "tool": LimitWords(
        "more than a tool bears",
        "is more than a tool usually bears in this metal",
        "A finer feed.",
    ),
    "finish": LimitWords(
        "the ridges of the feed",
        "would leave ridges too high",
        "No turned finish: file and emery, or grind it.",
    ),
    "power": LimitWords(
        "the lathe's power in that gear",
        "is more than the lathe pulls in that gear",
        "A lathe that pulls more, or another that takes the bulk off.",
    ),
    "slip": LimitWords(
        "the work would slip",
        "could slip",
        "A hold that grips more.",
    ),
    "rock": LimitWords(
        "the work would rock", "could rock the work", "A cut nearer the grip, or a longer hub."
    ),
    "bend": LimitWords("bending", "would bend it too far", "A stiffer hold."),
    "heat": LimitWords(
        "the warmth of the cut",
        "would warm it until it could slip",
        "A hold that warmth does not loosen.",
    ),
    "chatter": LimitWords(
        "the work itself would chatter",
        "could make the work itself chatter",
        "A stiffer hold, or a stiffer mandrel.",
    ),
    "lathe": LimitWords("what the lathe can be set to", "is not to be had", ""),
}
"""Plain words for every limit (ours)."""


def way_out(found: Found, cut: Cut, holding: Holding) -> str:
    """What blocks, by how much, and the cheapest that was found to unblock it."""
    limit = LIMITS[found.blocked]
    short = f"{lacking(found.share)} % short at the best that can be set"
    return f"To {cut.name}: {limit.what}, {short}. {_ways(found, cut, holding)}".rstrip()


def _ways(found: Found, cut: Cut, holding: Holding) -> str:
    """The true cause where no change to the cut is one; else the changes that would do, or none."""
    problem, show = found.problem, holding.show
    if problem is None:
        return LIMITS[found.blocked].mend
    accepted = accept_words(found, show)
    if found.blocked == "bend" and springs_too_far(problem):
        eased = show.small(likely(holding.springs))
        cause = f"The hold letting go alone makes {eased} of it: less squeeze for the last pass."
        return f"{cause}{accepted}"
    result = searched(problem)
    if result.mended:
        return f"{mended_words(result, show)}{accepted}"
    return f"{none_words(result, show)}{accepted} {LIMITS[found.blocked].mend}".strip()


def springs_too_far(problem: Problem) -> bool:
    """Whether what comes when the hold lets go is past what is allowed, bending or none: then no
    change to the cut is enough."""
    allowed, tables = problem.wanted.allowed, problem.holding.tables
    if allowed is None:
        return False
    margin = allowed / np.maximum(problem.holding.springs, 1e-12)
    return share_of_yes("bend", likely(margin), low_end(margin), tables) < 1
