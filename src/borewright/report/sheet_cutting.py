"""The page of the bench sheet for the cutting: every cut in order, what holds it back, the charts.

There is one only where the plan says how its cuts are taken. `sheet_trim` leaves parts of it out
when the page would run over: never a cut, a wait, a stop, or a cut that is blocked.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from borewright.answer.cut_words import feed_words, left_words, passes_words, speed_words
from borewright.answer.plan import Plan
from borewright.answer.records import Cut
from borewright.answer.schedule import Taken
from borewright.quantities.show import Show
from borewright.report.sheet_data import SheetData, nearer, shortened, unbroken
from borewright.report.taken_words import (
    blocked_lines,
    in_order,
    lasting,
    limit_words,
    schedule_of,
    stops_words,
    target_words,
    time_words,
    whole_words,
)
from borewright.report.words import show_for

_TITLE_ROOM = 88
"""Letters of a title that leave room beside the words for the page."""
COLUMNS = (
    "",
    "cut",
    "speed",
    "feed",
    "passes ×\ndepth",
    "time",
    "what limits it",
    "which way",
    "wait, stop",
)


class ChartPicture(NamedTuple):
    """A chart as SVG, the width (mm) it is printed at, and words for who cannot see it."""

    svg: str
    width_mm: float
    words: str


def sheet_cutting(
    plan: Plan, number: int, charts: Sequence[Sequence[ChartPicture]]
) -> SheetData | None:
    """The page as text, before any trimming, and its rows of charts; None without a schedule."""
    schedule = schedule_of(plan)
    if schedule is None:
        return None
    show = show_for(plan)
    rows = in_order(plan)
    left = left_words(plan.cuts, plan.finished_outside, show)
    return {
        "title": f"{shortened(plan.title, _TITLE_ROOM)}, page {number}: the cutting",
        "columns": list(COLUMNS),
        "rows": [
            _row(k, cut, taken, show, left.get(cut.id, ""))
            for k, (cut, taken) in enumerate(rows, 1)
        ],
        "short": [limit_words(taken) if taken else "" for _, taken in rows],
        "whole": whole_words(schedule),
        "target": target_words(plan, schedule, show),
        "blocked": list(blocked_lines(plan, schedule)),
        "notes": list(schedule.notes),
        "charts": [[chart._asdict() for chart in row] for row in charts],
        "left_out": "",
    }


def cutting_words(plan: Plan, number: int) -> str:
    """The line of the first page that sends the reader there; empty without such a page."""
    if schedule_of(plan) is None:
        return ""
    return f"Every cut with its wait and its stop, and the charts: page {number}, the cutting."


def _row(number: int, cut: Cut, taken: Taken | None, show: Show, left: str) -> list[str]:
    to = f", to\N{NO-BREAK SPACE}{unbroken(left)}" if left else ""
    return [
        f"{number}",
        f"{cut.name}{to}",
        speed_words(cut, show).replace(", ", ",\n").replace(" (", "\n("),
        feed_words(cut, show).replace(" (", "\n("),
        passes_words(cut, show).replace(" (", "\n("),
        time_words(taken) if taken else "",
        _bound(taken.said or limit_words(taken)) if taken else "",
        f"{nearer(cut.direction)},\n{cut.seat_effect}",
        _bound(_before_and_after(taken)) if taken else "",
    ]


def _before_and_after(taken: Taken) -> str:
    wait = f"Wait {lasting(taken.wait)} first." if taken.wait > 0 else ""
    return f"{wait} {stops_words(taken)}".strip()


def _bound(words: str) -> str:
    """Words in which no line breaks between a number and its unit."""
    return re.sub(r"(?<=\d) (?=(?:in|mm|µm|rpm)\b)", "\N{NO-BREAK SPACE}", words)
