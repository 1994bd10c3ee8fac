"""What goes from the bench sheet when room is short, in which order, and how the sheet says so.

Steps, cuts, cautions, the bore's sizes, the push, the work and its finished size, and the reasons
and remedies of answers that are not yes are never shortened and never left out. Nor, on a second
page, are the first hold, the bore route, its chance, how it is measured, or a caution. A table of
cuts leaves the first page only where it stands whole on the page of the cutting.
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
    return _trimmed(data, _trims_of(data)[:level])


def most_trim(data: SheetData) -> int:
    """How many levels the first page has: one more where its cuts stand on a page of their own."""
    return len(_trims_of(data))


def trim_before(data: SheetData, level: int) -> SheetData:
    """The second page with more left out at each level, and said so."""
    return _trimmed(data, _TRIMS_BEFORE[:level])


def trim_cutting(data: SheetData, level: int) -> SheetData:
    """The page of the cutting with more left out at each level, and said so."""
    return _trimmed(data, _TRIMS_CUTTING[:level])


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


def _cuts_elsewhere(data: SheetData) -> bool:
    """The table of cuts stands whole on a page of its own, and the first page says so."""
    data["cuts"] = []
    return True


def _short_limits(data: SheetData) -> bool:
    """What holds a cut back in a word for each row."""
    before = data["rows"]
    at = data["columns"].index("what limits it")
    rows = zip(before, data["short"], strict=True)
    data["rows"] = [[*row[:at], short, *row[at + 1 :]] for row, short in rows]
    return bool(before != data["rows"])


def _trims_of(data: SheetData) -> _Trims:
    cut_page = (("", _cuts_elsewhere),) if data["cutting"] else ()
    return (*_TRIMS[:_CUTS_AFTER], *cut_page, *_TRIMS[_CUTS_AFTER:])


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
_CUTS_AFTER = 4
"""How many of these go before a table of cuts that also stands on a page of its own."""
_TRIMS_BEFORE: _Trims = (
    ("other ways to this bore", partial(_emptied, "alternatives")),
    ("changes to the part", partial(_emptied, "changes")),
    ("what was taken for the bore", partial(_emptied, "taken")),
)
"""The same for the second page."""
MOST_TRIM_BEFORE = len(_TRIMS_BEFORE)
_TRIMS_CUTTING: _Trims = (
    ("why each cut goes no faster", _short_limits),
    ("charts", partial(_emptied, "charts")),
)
"""The same for the page of the cutting."""
MOST_TRIM_CUTTING = len(_TRIMS_CUTTING)
