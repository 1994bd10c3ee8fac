"""The first and the last way out: leave it as it is, or make another."""

from __future__ import annotations

from borewright.answer.records import Verdict
from borewright.answer.rescue import DrawingHolds, WayOut
from borewright.planning.rescue.case import FORMS, OUT_OF_SQUARE, SCORED, Case
from borewright.planning.rescue.entry import both, takes, takes_unknown, worst
from borewright.planning.rescue.wanted import Whose

ACCEPT, SCRAP = "accept", "scrap"


def accept(case: Case, others: tuple[WayOut, ...]) -> WayOut:
    """Leave the bore as it is: where the drawing allows it, or where nothing was asked for and
    one of `others` holds the work as it is."""
    holds, why = case.bore_stays()
    served = [w for w in others if w.verdict is not Verdict.NO]
    best = min(served, key=lambda w: (w.bought, w.verdict.rank, w.takes.best), default=None)
    verdict, said = _judged(case, holds, best)
    asking = takes(ACCEPT, case.tables)
    time = asking if verdict is Verdict.NO or best is None else both(asking, best.takes)
    return WayOut(ACCEPT, "leave the bore as it is", verdict, said, time, holds, why)


def _judged(case: Case, holds: DrawingHolds, best: WayOut | None) -> tuple[Verdict, str]:
    spoilt = case.has(*FORMS, OUT_OF_SQUARE, SCORED)
    if not case.trouble:
        return Verdict.YES, f"It lies inside {case.wanted.said}."
    if holds is DrawingHolds.YES:
        least = Verdict.CARE if spoilt else Verdict.YES
        form = " Its form is another matter: what the drawing says of it decides." if spoilt else ""
        return least, f"It is {case.wanted.said.replace('limits,', 'limits:')}: within them.{form}"
    size = case.show.bore(case.found.least)
    if case.wanted.whose is Whose.DRAWING:
        return Verdict.NO, (
            f"It lies outside {case.wanted.said}: only whoever drew it can say yes. What changes: the shaft, made to "
            f"{size}."
        )
    if best is None:
        return Verdict.NO, "No limits were stated, but nothing here holds it as it is."
    changed = (
        ""
        if case.wanted.takes(case.found.least, case.found.largest)
        else (f" What changes: whatever goes in it is made to {size}, not to the size first meant.")
    )
    verdict = worst(best.verdict, Verdict.CARE if changed or spoilt else Verdict.YES)
    return verdict, f"No limits were stated, and {best.name} holds it as it is.{changed}"


def scrap(case: Case) -> WayOut:
    """Make another. Always there, always last."""
    casting = case.job.work.blank == "casting"
    blank = "casting" if casting else "blank"
    return WayOut(
        SCRAP,
        f"give it up: another {blank}",
        Verdict.CARE,
        f"The last way out: another {blank}, the same route again, stopping to measure where this one went wrong. Keep this "
        "one to set the tools by.",
        takes_unknown(),
        DrawingHolds.YES,
        "A new one can be made to the drawing.",
        last=True,
    )
