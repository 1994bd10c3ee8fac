"""Mending what is scratched: a gouged mandrel stoned and re-checked, a scored bore polished."""

from __future__ import annotations

from borewright.answer.records import Have, Need, Verdict
from borewright.answer.rescue import DrawingHolds, WayOut
from borewright.holding.owned import needed
from borewright.planning.rescue.case import GOUGED, SCORED, Case
from borewright.planning.rescue.entry import between, of_range, takes, told

DRESS, POLISH = "dress-mandrel", "polish"


def dress_mandrel(case: Case) -> WayOut | None:
    """A gouged mandrel: the raised edges stoned, then checked again; None where none is gouged."""
    if not case.has(GOUGED):
        return None
    tables, show = case.tables, case.show
    retire = tables.rescue_fact("retire_runout")
    name = case.chosen.name if case.chosen else "the mandrel"
    return WayOut(
        DRESS,
        "dress the mandrel and check it again",
        Verdict.YES,
        f"What stands up scores every bore; what is sunk in does no harm. Stone {name} until nothing stands up, never file "
        f"it; retire it if it then runs out more than {show.small(retire.best)}.",
        takes(DRESS, tables),
        DrawingHolds.YES,
        "The bore is not touched by this.",
        (
            Need("fine flat oilstone, oil", Have.OWN, taken=True),
            Need("bench centers or the lathe's own", Have.OWN, taken=True),
            needed(case.job, tables, "indicator"),
            Need("marking blue", Have.OWN, taken=True),
        ),
        (
            of_range("runout", tables.allowance("mandrel_runout"), "small"),
            of_range("retire_at", retire, "small"),
        ),
        (
            "Mandrel out of the lathe, clean. Find the raised edge with a fingernail and a straightedge.",
            "Fine flat stone, oil, along the mandrel and flat on it, until the edge is gone. No file and no coarse cloth: they "
            "take the good metal with the bad.",
            "Clean the centers. Between centers, indicator along it, on both sides of the mark and over it: whole reading at "
            "the small end, the middle, the large end.",
            f"More than {show.small(retire.best)}: retire it from true work, mark it so.",
            "Blue it thinly, slide a good bore on by hand: it must mark all round, and not on the old scar.",
            "Gouged by a tool: find out why before the next piece; set a stop, or chamfer the bore so that the tool can be seen.",
        ),
        told(case, "stone"),
    )


def polish(case: Case) -> WayOut | None:
    """A scored bore: its raised edges polished down, then measured again; None where it is not."""
    if not case.has(SCORED, "slipped"):
        return None
    tables, found, wanted = case.tables, case.found, case.wanted
    takes_off = tables.rescue_fact("polish_takes")
    size = between(
        "bore_to_make",
        found.least + takes_off.low,
        found.largest + takes_off.high,
        takes_off.sources,
    )
    after = found.largest + takes_off.best
    holds, why = _drawing(case, after)
    fits = after <= wanted.high
    return WayOut(
        POLISH,
        "polish the scores down and measure again",
        Verdict.YES if fits and not case.has("slipped") else Verdict.CARE,
        f"Only what stands up must go; the scores themselves may stay. It opens the bore by about "
        f"{case.show.small(takes_off.best)}"
        f"{'.' if fits else ', past ' + wanted.said + '.'} Ask again with the new size.",
        takes(POLISH, tables),
        holds,
        why,
        (
            Need(
                "abrasive cloth, fine, round a slotted stick; or a brake-cylinder hone",
                Have.OWN,
                taken=True,
            ),
        ),
        (size,),
        (
            "Wash it out; feel with a fingernail, lathe stopped, which way the edges stand.",
            "Fine cloth round the stick, oil, slow, the whole length alike, no longer than the edges need.",
            "Wash all grit out: what stays scores the mandrel. Measure at three depths and in two directions.",
            "Torn metal in the bore means that metal of it sits on the mandrel too: look there.",
        ),
        told(case, "polish"),
    )


def _drawing(case: Case, after: float) -> tuple[DrawingHolds, str]:
    if after <= case.wanted.high and case.wanted.low <= case.found.least:
        return DrawingHolds.YES, f"It stays within {case.wanted.said}; finish may be asked for too."
    return DrawingHolds.ASK, f"It is then outside {case.wanted.said}."
