"""Which row is recommended, and which other ways serve too."""

from __future__ import annotations

from borewright.answer.records import Candidate
from borewright.planning.choice.arrangement import Arranged
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.ranking import NOW, Row


def recommended(found: Arranged) -> Row | None:
    """The best row, if it can be done with what is here or made; else the best mandrel tried, to
    say what is wrong with it; a way that is insisted on stands, whatever is wrong with it."""
    rows = found.weighing.rows
    best = rows[0] if rows else None
    if best is None or best.key[0] == NOW or insisted(found):
        return best
    return next((row for row in rows if isinstance(row.weighed, Weighed)), None)


def insisted(found: Arranged) -> bool:
    """Whether the user says how it is to be held."""
    return found.job.use.strip().lower() not in ("any", "")


def other_ways(found: Arranged, chosen: str) -> tuple[Candidate, ...]:
    """The best row of every way but the chosen one that serves with what is here or made."""
    ways: dict[str, Candidate] = {}
    for row in found.weighing.rows:
        if row.key[0] == NOW:
            ways.setdefault(row.candidate.way, row.candidate)
    ways.pop(chosen, None)
    return tuple(ways.values())
