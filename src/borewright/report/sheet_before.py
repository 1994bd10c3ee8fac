"""The second page of the bench sheet: how a casting is first held, and how the bore gets its size.

There is one only where a first hold has steps or a bore is still to be made. `sheet_trim` leaves
parts of it out when the page would run over.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from borewright.answer.plan import Plan
from borewright.answer.records import Caution, Verdict
from borewright.quantities.show import Show
from borewright.report.bore_route_words import (
    aim_words,
    alternative_words,
    chance_words,
    plug_words,
    size_band,
)
from borewright.report.change_words import change_line
from borewright.report.sheet_data import SheetData, shortened, source_words, step_data
from borewright.report.words import show_for

if TYPE_CHECKING:
    from borewright.answer.bore_route import BoreRoute, BoreStep
    from borewright.answer.first_hold import FirstHold

_TITLE_ROOM = 84
"""Letters of a title that leave room beside the words for the page."""
ROUTE_COLUMNS = ("", "tool", "bore then, 9 in 10", "takes off", "speed")


def sheet_before(plan: Plan, number: int = 2) -> SheetData | None:
    """That page as text, before any trimming; None where there is nothing to say on it."""
    hold = plan.first_hold if plan.first_hold and plan.first_hold.steps else None
    if hold is None and plan.bore_route is None:
        return None
    show = show_for(plan)
    return {
        "title": f"{shortened(plan.title, _TITLE_ROOM)}, page {number}: before it is held",
        "stop": _stop(plan),
        "hold": _hold(hold, show),
        "route": {**_route(plan.bore_route, show), "heading": _route_heading(hold)},
        "cautions": _cautions(hold, plan.bore_route),
        "alternatives": _alternatives(plan.bore_route),
        "changes": [change_line(change, show) for change in plan.changes],
        "taken": _taken(plan.bore_route),
        "sources": source_words(_sources(hold, plan.bore_route)),
        "left_out": "",
    }


def first_words(plan: Plan, number: int = 2) -> str:
    """The line of the first page that sends the reader to that page; empty without one."""
    before = []
    if plan.first_hold and plan.first_hold.steps:
        before.append("the first hold of the casting")
    if plan.bore_route:
        before.append("the bore")
    start = "See" if plan.verdict is Verdict.NO else "First:"
    return f"{start} page {number}, {' and '.join(before)}." if before else ""


def _stop(plan: Plan) -> str:
    """What stands above all else where the first page answers no."""
    if plan.verdict is not Verdict.NO:
        return ""
    return "Page 1 answers no to the work as it stands: see there what would change it first."


def _hold(hold: FirstHold | None, show: Show) -> SheetData:
    if hold is None:
        return {"aim": [], "steps": []}
    true = f"Set true by {hold.set_true_to}: {hold.why}."
    steps = [step_data(step, show, hold.clean_up) for step in hold.steps]
    return {"aim": [w for w in (hold.when, true, hold.clean_up) if w], "steps": steps}


def _route_heading(hold: FirstHold | None) -> str:
    """Where in the first hold the bore is made, by the titles of its steps."""
    bored = [f"{s.number}" for s in hold.steps if s.title.startswith("Bore")] if hold else []
    at = f", at step{'s' if len(bored) > 1 else ''} {' and '.join(bored)} of the first hold"
    return f"Bore route{at if bored else ''}"


def _route(route: BoreRoute | None, show: Show) -> SheetData:
    if route is None:
        return {"aim": [], "columns": [], "rows": [], "steps": [], "chance": [], "measure": []}
    aim = f"From {route.starts_from}. {aim_words(route, show)}"
    plug = plug_words(route, show)
    numbered = list(enumerate(route.steps, 1))
    return {
        "aim": [aim, *([route.ream_or_bore] if route.ream_or_bore else [])],
        "columns": list(ROUTE_COLUMNS),
        "rows": [_row(n, step, show) for n, step in numbered],
        "steps": [_route_step(n, step) for n, step in numbered],
        "chance": [w for w in (chance_words(route),) if w],
        "measure_heading": "Go, not-go and how to measure" if plug else "How to measure",
        "measure": [w for w in (plug, route.measure) if w],
        "mounting": route.before_mounting,
    }


def _row(number: int, step: BoreStep, show: Show) -> list[str]:
    tool = step.tool.removeprefix("a ").removeprefix("the ")
    absent = ", not on the shelf" if step.owned == "no" else ""
    cells = (
        size_band(step.size, show),
        show.depth(step.stock.best) if step.stock else "",
        show.spindle(step.spindle.best) if step.spindle else "",
    )
    return [f"{number}", f"{tool}{absent}", *(c.replace(" (", "\n(") for c in cells)]


def _route_step(number: int, step: BoreStep) -> SheetData:
    feed = f" {step.feed[:1].upper()}{step.feed[1:]}." if step.feed else ""
    form = f" Expect it {step.form}." if step.form else ""
    measured = ["measured"] if step.size else []
    head, text = f"{number}.", f"{step.text}{feed}{form}"
    return {"head": head, "text": text, "figures": [], "blanks": measured}


def _cautions(hold: FirstHold | None, route: BoreRoute | None) -> list[str]:
    """The cautions of both, each once: page 1 has its own, this page may hang by itself."""
    found: Iterable[Caution] = (
        *(hold.cautions if hold else ()),
        *(route.cautions if route else ()),
    )
    return list(dict.fromkeys(caution.text for caution in found))


def _alternatives(route: BoreRoute | None) -> list[str]:
    return [f"Or {alternative_words(other)}" for other in route.alternatives] if route else []


def _taken(route: BoreRoute | None) -> list[str]:
    return [f"{a.what}: {a.taken}" for a in route.assumed] if route else []


def _sources(hold: FirstHold | None, route: BoreRoute | None) -> tuple[str, ...]:
    return (*(hold.sources if hold else ()), *(route.sources if route else ()))
