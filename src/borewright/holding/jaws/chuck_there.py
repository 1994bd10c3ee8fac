"""Which chuck holds a blank in one chucking: the one that is there, and for a casting one that sets it true."""

from __future__ import annotations

from borewright.answer.records import Have
from borewright.holding.jaws.jawed import INDEPENDENT, SCROLL
from borewright.holding.owned import needed
from borewright.holding.part import Part

FOUR, THREE = "four-jaw-chuck", "three-jaw-chuck"
JAWS = {FOUR: INDEPENDENT, THREE: SCROLL}
CALLED = {FOUR: "four-jaw", THREE: "three-jaw"}


def chuck_for(part: Part) -> str:
    """Bar: whichever is there, the quicker first. A casting: the four-jaw; where that is not there
    and the casting was stated round, the three-jaw.
    """
    first, other = (FOUR, THREE) if part.work.blank == "casting" else (THREE, FOUR)
    if _there(part, first) or not _there(part, other):
        return first
    return other if part.work.blank != "casting" or _stated_round(part) else first


def _there(part: Part, chuck: str) -> bool:
    return needed(part.job, part.tables, chuck).have is Have.OWN


def _stated_round(part: Part) -> bool:
    out = part.work.casting_runout
    return out is not None and out <= part.tables.allowance("rough_true").best
