"""shelf parts: a list of parts against one shelf, as words, CSV or JSON."""

from __future__ import annotations

import csv
import os
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from io import StringIO
from typing import Any

from borewright.job.parts_file import BadPart, PartsRead
from borewright.job.records import Shelf
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.shopwide.parts import PartAnswer, plan_parts, tally

COLUMNS = ("line", "part", "verdict", "mandrel", "press", "reason")


@dataclass(frozen=True, slots=True)
class PartsPlanned:
    """The answers of a list, and the rows that could not be read."""

    answers: tuple[PartAnswer, ...]
    bad: tuple[BadPart, ...]


def parts_planned(
    read: PartsRead, shelf: Shelf, tables: Tables, done: Callable[[], object] = lambda: None
) -> PartsPlanned:
    """Every readable part planned, on every core; `done` is called after each."""
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    answers = plan_parts(read.parts, shelf, tables, done, cores or 1)
    return PartsPlanned(answers, read.bad)


def parts_lines(planned: PartsPlanned, show: Show) -> Iterator[str]:
    """The tally first, then a line a part, then the rows that could not be read."""
    count = tally(planned.answers)
    yield (
        ", ".join(f"{n} {name}" for name, n in count.items())
        + f"; {len(planned.bad)} rows not read."
    )
    for cells in _rows(planned.answers, show):
        line, part, verdict, _, _, reason = cells
        yield f"  line {line}: {part}: {verdict}; {_less_verdict(reason, verdict)}"
    for bad in planned.bad:
        yield f"  line {bad.line}: not read: {bad.reason}"


def _harmless(cells: tuple[str, ...]) -> list[str]:
    """Cells that a spreadsheet does not take for a formula."""
    return [f"'{cell}" if cell[:1] in ("=", "+", "-", "@") else cell for cell in cells]


def _less_verdict(reason: str, verdict: str) -> str:
    """The headline without the verdict that stands before it.

    >>> _less_verdict("Yes, if the casting is sound: press it on the big one.", "yes")
    'if the casting is sound: press it on the big one.'
    """
    if not reason.casefold().startswith(verdict):
        return reason
    return reason[len(verdict) :].lstrip(",:; ")


def parts_csv(planned: PartsPlanned, show: Show) -> bytes:
    """The answers as CSV, one row a part, bad rows with their reason."""
    out = StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(COLUMNS)
    writer.writerows(map(_harmless, _rows(planned.answers, show)))
    writer.writerows((b.line, "", "not read", "", "", b.reason) for b in planned.bad)
    return out.getvalue().encode("utf-8")


def parts_object(planned: PartsPlanned) -> dict[str, Any]:
    """The answers as JSON: lengths in metres."""
    return {
        "tally": tally(planned.answers),
        "parts": [
            {
                "line": a.line,
                "part": a.part,
                "verdict": a.verdict.value if a.verdict else "refused",
                "mandrel": a.mandrel,
                "press_distance_m": a.press_distance,
                "reason": a.reason,
            }
            for a in planned.answers
        ],
        "not_read": [{"line": b.line, "reason": b.reason} for b in planned.bad],
    }


def _rows(answers: Sequence[PartAnswer], show: Show) -> Iterator[tuple[str, ...]]:
    for a in answers:
        press = show.length(a.press_distance) if a.press_distance is not None else ""
        yield (
            str(a.line),
            a.part,
            a.verdict.value if a.verdict else "refused",
            a.mandrel,
            press,
            a.reason,
        )
