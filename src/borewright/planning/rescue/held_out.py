"""Holding the bore as it is, some other way: a fresh stub, an expanding mandrel, bonded, set true.

A way that `holding` computes is weighed by it; one that it does not yet is named with what is known.
"""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.held import Held
from borewright.answer.records import Figure, Need, Question, Verdict
from borewright.answer.rescue import WayOut
from borewright.errors import OutsideModel
from borewright.holding.owned import needed
from borewright.holding.part import Part
from borewright.holding.registry import WAYS
from borewright.mechanics.spread import likely
from borewright.planning.choice.held_rows import weigh_ways
from borewright.planning.choice.ranking import ALL_YES, held_row
from borewright.planning.choice.weighing_all import in_order
from borewright.planning.rescue.case import OUT_OF_SQUARE, Case
from borewright.planning.rescue.entry import (
    between,
    held_back,
    joined,
    of_range,
    sentence,
    strength_of,
    takes_holding,
    told,
    worst,
)
from borewright.planning.weighing.figures import spread
from borewright.planning.weighing.judge import judge
from borewright.reference.ranges import Range

FRESH_STUB, EXPANDING, BONDED, SET_TRUE = "fresh-stub", "expanding", "bonded", "set-true"


def fresh_stub(case: Case) -> WayOut:
    """A stub turned in the chuck to the bore as found."""
    found = by_holding(case, FRESH_STUB, "a stub turned to this bore", ("turned-stub",))
    slack = case.tables.holding_fact("stub_clearance")
    size = case.found.least
    stub = between("stub_size", size - slack.high, size - slack.low, slack.sources)
    return replace(found, figures=(*found.figures, stub))


def expanding(case: Case) -> WayOut:
    """An expanding mandrel: odd sizes are what it is for."""
    named = "an expanding mandrel"
    if "expanding" in WAYS:
        return by_holding(case, EXPANDING, named, ("expanding",))
    tables, bore = case.tables, case.found.least
    try:
        covers = tables.expanding(bore).covers
    except OutsideModel as outside:
        return _known(case, EXPANDING, named, "expanding", (), Verdict.NO, f"{outside}.")
    wall = (case.hub_outside - bore) / 2
    thin = wall < tables.rescue_fact("bush_wall_share").high * bore
    said = (
        f"One covers about {case.show.small(covers.best)} at this size, so an odd bore is no trouble to it; light cuts. "
        f"{'A wall this thin springs on it: what is turned round is not round when it comes off. ' if thin else ''}"
        "How true it runs is not computed: clock it."
    )
    tool = needed(case.job, tables, "expanding-mandrel", bore)
    size = of_range("sleeve_range", covers, "small")
    return _known(case, EXPANDING, named, "expanding", (tool,), Verdict.CARE, said, (size,))


def bonded(case: Case) -> WayOut:
    """Work bonded to a stub or plate: nothing presses on the bore."""
    named = "bonded to a stub or a faced plate"
    if "bonded" in WAYS:
        return by_holding(case, BONDED, named, ("bonded",))
    tables = case.tables
    needs = (needed(case.job, tables, "super-glue"), needed(case.job, tables, "indicator"))
    care = tables.holding_fact("indicator_care")
    said = (
        "Nothing presses on the bore and its size does not matter: set true by indicator before the bond sets. Light cuts, "
        "kept cool; heat lets it go. What the bond holds is not computed here: prove it before cutting."
    )
    runout = of_range("runout", care, "small")
    found = _known(case, BONDED, named, "bonded", needs, Verdict.CARE, said, (runout,))
    return replace(found, cautions=told(tables, "bond"))


def set_true(case: Case) -> WayOut:
    """Gripped anywhere, the bore set true by indicator: any size and shape of bore."""
    named = "set true by indicator in a four-jaw chuck or on a faceplate"
    ways = tuple(w for w in ("four-jaw", "faceplate") if w in WAYS)
    if ways:
        return by_holding(case, SET_TRUE, named, ways)
    tables, care = case.tables, case.tables.holding_fact("indicator_care")
    needs = tuple(needed(case.job, tables, t) for t in ("four-jaw-chuck", "indicator"))
    if Part(case.job, tables).rim_inside is None:
        said = "There is nothing to grip or strap but what is to be turned: it serves to take out the bore, not to turn the rim."
        return _known(case, SET_TRUE, named, "four-jaw", needs, Verdict.NO, said)
    oval = (
        " Oval: read along and across, and set both differences alike." if case.has("oval") else ""
    )
    said = (
        f"No size and no shape of bore matters to it: a careful hand sets it true within {case.show.small(care.best)}, whole "
        f"reading.{oval} Strap it by the web, or grip inside the rim: where nothing is to be turned."
    )
    runout = of_range("runout", care, "small")
    return _known(
        case, SET_TRUE, named, "four-jaw", needs, _true_enough(case, care), said, (runout,)
    )


def _true_enough(case: Case, care: Range) -> Verdict:
    """As the plan judges runout; never a no where what is allowed was only assumed."""
    stated = case.job.work.finished.runout
    allowed = stated or case.tables.allowance("usual_runout").best
    found = judge("true", allowed / care.best, allowed / care.high, case.tables)
    return Verdict.CARE if found is Verdict.NO and stated is None else found


def by_holding(case: Case, name: str, named: str, ways: tuple[str, ...]) -> WayOut:
    """The best of these ways of holding for the bore as found, as the plan itself would weigh it."""
    rows = in_order(held_row(w, 1, case.tables) for w in weigh_ways(case.job, case.tables, ways))
    best = rows[0]
    found, held = best.candidate, best.weighed.held  # type: ignore[union-attr]
    back = _held_back(case, held)
    verdict = worst(found.verdict or Verdict.NO, Verdict.CARE if back else Verdict.YES)
    said = sentence(held.do_it) if found.reason == ALL_YES else found.reason
    holds, why = case.bore_stays()
    no = verdict is Verdict.NO
    return WayOut(
        name,
        named,
        verdict,
        said if no else joined((said, *back)),
        takes_holding(found.way, held.making, case.tables),
        holds,
        why,
        held.needs,
        _figures(best.weighed.questions, held),
        () if no else tuple(f"{s.title}. {s.text}" for s in (*held.mount, *held.release)),
        (held.marks,) if held.marks and not no else (),
    )


def _held_back(case: Case, held: Held) -> tuple[str, ...]:
    said = held_back(case) if held.presses_bore or not held.reaches else _unmeasured(case)
    if case.has(OUT_OF_SQUARE) and held.seat is not None:
        said += (
            "A face that is not square to the bore tilts it on a shoulder: face that side first.",
        )
    return said


def _unmeasured(case: Case) -> tuple[str, ...]:
    return tuple(s for s in held_back(case) if "keyway" not in s)


def _figures(questions: tuple[Question, ...], held: Held) -> tuple[Figure, ...]:
    if held.grip is None:
        return ()
    runout = spread("runout", held.grip.runout, "m", "small", "")
    strained = likely(held.grip.strength) < float("inf")
    crack = tuple(strength_of(q) for q in questions if q.id == "crack" and strained)
    return (runout, *crack)


def _known(
    case: Case,
    name: str,
    named: str,
    way: str,
    needs: tuple[Need, ...],
    verdict: Verdict,
    said: str,
    figures: tuple[Figure, ...] = (),
) -> WayOut:
    """A way that is not computed, with what is known of it."""
    holds, why = case.bore_stays()
    making = sum(n.minutes for n in needs)
    time = takes_holding(way, making, case.tables)
    return WayOut(name, named, verdict, said, time, holds, why, needs, figures)
