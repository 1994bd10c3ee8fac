"""On the bench sheet of work held in any way but the plain taper: what it needs, and what else
would hold it."""

from __future__ import annotations

import re

from borewright.answer.plan import Plan
from borewright.answer.records import Candidate, Have, Need, Verdict
from borewright.quantities.show import Show
from borewright.report.words import show_minutes, way_words

_BEST = 3
"""How many of the other ways the sheet has room for."""
_REASON_ROOM = 80
"""Letters of the one reason beside a way: most rows then stay on two lines."""
_OTHER_UNIT = re.compile(r" \([^()]*\b(?:in|mm|µm)\)")
_HEADS = {Have.OWN: "From the shelf", Have.MAKE: "To be made", Have.BUY: "To be bought"}


def needs_lines(plan: Plan) -> tuple[str, ...]:
    """What the way needs, by where it comes from, and the minutes, which are guesses."""
    if plan.chosen is None or plan.layout is not None:
        return ()
    needs = plan.chosen.needs
    said = []
    for have, head in _HEADS.items():
        things = [_need(n) for n in needs if n.have is have]
        said += [f"{head}: {'; '.join(things)}."] if things else []
    if needs and plan.chosen.minutes:
        took = show_minutes(plan.chosen.minutes)
        said.append(
            f"Time to set up: about {took} for the batch, making included, cutting not: a guess."
        )
    return tuple(said)


def _need(need: Need) -> str:
    if need.have is not Have.MAKE or not need.minutes:
        return need.what
    return f"{need.what} (about {show_minutes(need.minutes)}, a guess)"


def ready_words(plan: Plan) -> tuple[str, ...]:
    """What to fetch beside what the way needs, which has lines of its own on the sheet."""
    if not needs_lines(plan) or plan.chosen is None:
        return plan.have_ready
    told = tuple(need.what for need in plan.chosen.needs)
    return tuple(w for w in plan.have_ready if not any(_same(w, what) for what in told))


def _same(words: str, what: str) -> bool:
    """Whether words name this need, with or without where it comes from."""
    rest = words.removeprefix(what)
    return rest != words and (not rest or rest.startswith(" (to be "))


def other_way_lines(plan: Plan, show: Show) -> tuple[str, ...]:
    """The other ways: on a plain taper those that serve better, else the best three weighed."""
    if plan.layout is not None:
        return tuple(way_words(candidate) for candidate in plan.better_ways)
    return tuple(_row(c, plan.chosen, show) for c in _best_others(plan)[:_BEST])


def _best_others(plan: Plan) -> tuple[Candidate, ...]:
    """The best row of every way but the chosen, those that serve first, else in their order."""
    chosen = plan.chosen.way if plan.chosen else ""
    ways: dict[str, Candidate] = {}
    for candidate in (*plan.better_ways, *plan.candidates):
        if candidate.way != chosen:
            ways.setdefault(candidate.way, candidate)
    return tuple(ways.values())


def _row(candidate: Candidate, chosen: Candidate | None, show: Show) -> str:
    """Way: verdict, minutes, runout, and the one reason; sizes in the first unit only."""
    parts = [candidate.verdict.value if candidate.verdict else ""]
    if candidate.decided_by != "cannot":
        parts.append(f"{show_minutes(candidate.minutes)} to set up" if candidate.minutes else "")
        runout = candidate.runout
        parts.append(f"runs out {_first_unit(show.small(runout))}" if runout is not None else "")
    said = ", ".join(part for part in parts if part)
    hold = _first_unit(candidate.tool or candidate.way)
    return f"{hold}: {said}. {_why(candidate, chosen)}".rstrip()


def _first_unit(words: str) -> str:
    """Words without the other unit in brackets.

    >>> _first_unit("stub turned to 0.6251 in (15.878 mm), a 5/16 in (7.94 mm) screw")
    'stub turned to 0.6251 in, a 5/16 in screw'
    """
    return _OTHER_UNIT.sub("", words)


def _why(candidate: Candidate, chosen: Candidate | None) -> str:
    """The one reason beside a row; where nothing decides against it, what it costs more."""
    if candidate.verdict is not Verdict.YES or candidate.decided_by:
        return _reason(_first_unit(candidate.reason))
    if chosen and chosen.minutes and candidate.minutes > chosen.minutes:
        return "Takes longer."
    return ""


def _reason(reason: str) -> str:
    """The first sentence of a reason, cut short where it is long."""
    first = reason.split(". ", maxsplit=1)[0].rstrip(".")
    if len(first) <= _REASON_ROOM:
        return f"{first}." if first else ""
    return f"{first[: _REASON_ROOM - 1].rsplit(' ', 1)[0].rstrip(',;')}…"
