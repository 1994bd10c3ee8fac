"""What goes from the bench sheet when room is short, in which order, and how the sheet says so.

Steps, cuts, cautions, the bore's sizes, the push, the work and its finished size, and the reasons
and remedies of answers that are not yes are never shortened and never left out. Nor, on a second
page, are the first hold, the bore route, its chance, how it is measured, or a caution.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from borewright.answer.records import Verdict
from borewright.report.sheet_data import SheetData

_Trims = tuple[tuple[str, Callable[[SheetData], bool]], ...]
NARROWEST = 0.78
"""The least share of its width that the picture is printed at: its letters stay 1.7 mm high."""


def trim(data: SheetData, level: int) -> SheetData:
    """The first page with more left out at each level, and said so."""
    return _trimmed(data, _TRIMS[:level])


def trim_before(data: SheetData, level: int) -> SheetData:
    """The second page with more left out at each level, and said so."""
    return _trimmed(data, _TRIMS_BEFORE[:level])


def _trimmed(data: SheetData, trims: _Trims) -> SheetData:
    kept, said = dict(data), []
    for words, shorten in trims:
        if shorten(kept):
            said.append(words)
    kept["left_out"] = ", ".join(words for words in said if words)
    return kept


def _emptied(key: str, data: SheetData) -> bool:
    before = data[key]
    data[key] = type(before)()
    return bool(before)


def _fewer(key: str, most: int, data: SheetData) -> bool:
    before: list[Any] = data[key]
    data[key] = before[:most]
    return len(before) > most


def _narrower(data: SheetData) -> bool:
    data["picture_share"] = NARROWEST
    return True


def _no_reasons_of_yes(data: SheetData) -> bool:
    easy = [q for q in data["questions"] if q["verdict"] == Verdict.YES]
    rest = [q for q in data["questions"] if q["verdict"] != Verdict.YES]
    data["questions"] = [*rest, *_in_one_line(easy)]
    return bool(easy)


def _short_echo(data: SheetData) -> bool:
    before = data["echo"]
    data["echo"] = data["echo_short"]
    return bool(before != data["echo"])


def _steps_may_break(data: SheetData) -> bool:
    data["steps_whole"] = False
    return True


def _in_one_line(questions: list[dict[str, str]]) -> list[dict[str, str]]:
    """Questions of one verdict with their margins and without their reasons."""
    if not questions:
        return []
    verdict = questions[0]["verdict"]
    margins = (q["margin"].removeprefix(verdict).removeprefix(", ") for q in questions)
    each = (
        f"{q['id'].lower()} {margin}".rstrip() for q, margin in zip(questions, margins, strict=True)
    )
    return [{"id": f"{verdict.capitalize()}:", "verdict": verdict, "words": "; ".join(each) + "."}]


_TRIMS: _Trims = (
    ("the reasons of questions answered yes", _no_reasons_of_yes),
    ("other ways after the first two", partial(_fewer, "other_ways", 2)),
    ("the bore as typed", _short_echo),
    ("", _narrower),
    ("sources", partial(_emptied, "sources")),
    ("what was assumed", partial(_emptied, "assumed")),
    ("", _steps_may_break),
)
"""What goes when room is short, in this order; each says whether it left anything out."""
MOST_TRIM = len(_TRIMS)
_TRIMS_BEFORE: _Trims = (
    ("other ways to this bore", partial(_emptied, "alternatives")),
    ("changes to the part", partial(_emptied, "changes")),
    ("what was taken for the bore", partial(_emptied, "taken")),
)
"""The same for the second page."""
MOST_TRIM_BEFORE = len(_TRIMS_BEFORE)
