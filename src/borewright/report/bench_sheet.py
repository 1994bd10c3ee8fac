"""The bench sheet, Letter or A4, to pin up by the lathe and write on: one page, one more where a
casting has to be held first or a bore is still to be made, and one where the cutting is planned.

Typst sets the page; its font is Source Sans Pro from the package font-source-sans-pro, system
fonts are ignored, no clock is read: same plan, same bytes.
"""

from __future__ import annotations

import json
from bisect import bisect_left
from collections.abc import Callable, Sequence
from functools import lru_cache, partial
from pathlib import Path
from shutil import copy
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, NamedTuple

from borewright.answer.plan import Plan
from borewright.errors import RefusedInput
from borewright.report.sheet_before import first_words, sheet_before
from borewright.report.sheet_cutting import ChartPicture, cutting_words, sheet_cutting
from borewright.report.sheet_data import SheetData, sheet_data
from borewright.report.sheet_picture import at_share
from borewright.report.sheet_trim import (
    MOST_TRIM_BEFORE,
    MOST_TRIM_CUTTING,
    most_trim,
    trim,
    trim_before,
    trim_cutting,
)

if TYPE_CHECKING:
    from typst import Compiler

TEMPLATE = Path(__file__).with_name("bench_sheet.typ")
SIZES = (9.5, 9.0, 8.5, 8.0, 7.5, 7.0)
"""Letter sizes tried before anything is left out, points."""
LAST_SIZE = 6.5
"""The size when all that may go has gone and a step would have to go next, points."""
SIZES_AFTER = (11.0, 10.5, 10.0, 9.5, 9.0, 8.5, 8.0)
"""The same for the pages after it, read at arm's length with a hand on the lathe; then it goes on
with the smaller of `SIZES`, without what may go."""
SIZES_CUTTING = (9.5, 9.0, 8.5, 8.0)
"""The same for the page of the cutting: its table is too wide for larger ones."""
MOST_PAGES = 2
"""Sheets that the first page, and that of the cutting, may take where one does not hold them."""
USUAL_ATTEMPT = 6
"""The attempt tried first: the smallest letters, only the reasons of yes left out."""
PICTURE_WIDTH = 186.0
"""Width of the drawing, mm: its labels are then as high as drawn."""
FACES = ("SourceSansPro", "SourceSansProBold", "SourceSansProIt")


class _Paper(NamedTuple):
    typst_name: str
    margin_mm: float


PAPERS = {"letter": _Paper("us-letter", 14.95), "a4": _Paper("a4", 12.0)}


def bench_sheet(
    plan: Plan,
    svg: str,
    *,
    charts: Sequence[Sequence[ChartPicture]] = (),
    paper: str | None = None,
    date: str | None = None,
) -> bytes:
    """The plan as PDF: verdict, drawing, steps with blanks, cuts, cautions, margins on one page.

    A second page, where a casting has to be held first or its bore is still to be made, says how;
    one for the cutting, where the plan says how its cuts are taken, has them all and `charts`, in
    rows. The first page then sends its reader there. `svg` is the drawing, empty where there is
    none. `paper` is letter or a4; left out, inch plans go on letter and mm plans on a4. `date` is
    printed as given; left out, no date. The letter size of each page is the largest of its own at
    which it is one page; under the smallest, parts are left out and the page says which, never a
    step, a cut or a caution; where even that is too much, it goes on over a second, whole. A plan
    whose work may not be pressed on has no picture. Refuses any other paper, and a plan too long
    even so.
    """
    setting = {"setting": _json(_setting(plan, paper, date))}
    with TemporaryDirectory() as folder:
        setter = _Setter(_compiler(Path(folder)), setting)
        for fronts in (1, MOST_PAGES):
            pages = _pages(plan, svg if plan.goes_on else "", charts, setter, fronts)
            if pages is not None:
                return pages[0].pdf if len(pages) == 1 else setter.together(pages)
    raise RefusedInput("plan", "more than its pages hold", "a plan with shorter words")


def _pages(
    plan: Plan,
    picture: str,
    charts: Sequence[Sequence[ChartPicture]],
    setter: _Setter,
    fronts: int,
) -> list[_Page] | None:
    """All pages, the first on so many sheets at most; None where one of them runs over."""
    back = sheet_before(plan, 1 + fronts)
    number = 1 + fronts + (back is not None)
    cutting = sheet_cutting(plan, number, charts)
    sent = {"first": first_words(plan, 1 + fronts), "cutting": cutting_words(plan, number)}
    front = {**sheet_data(plan), **sent}
    tried = [partial(_front, front, picture, *at) for at in _attempts(most_trim(front))]
    pages = [setter.page(tried, USUAL_ATTEMPT if fronts == 1 else 0, fronts)]
    if back is not None:
        after = _attempts_after(SIZES_AFTER, MOST_TRIM_BEFORE)
        pages.append(setter.page([partial(_back, back, *at) for at in after], 0, 1))
    if cutting is not None:
        after = _attempts_after(SIZES_CUTTING, MOST_TRIM_CUTTING)
        last = [partial(_cutting, cutting, *at) for at in after]
        pages.append(setter.page(last, 0, 1) or setter.page(last, 0, MOST_PAGES))
    whole = [page for page in pages if page is not None]
    return whole if len(whole) == len(pages) else None


class _Page(NamedTuple):
    words: dict[str, str]
    pdf: bytes


class _Setter:
    """Sets pages on one paper."""

    def __init__(self, compiler: Compiler, setting: dict[str, str]) -> None:
        self._compiler, self._setting = compiler, setting

    def together(self, pages: Sequence[_Page]) -> bytes:
        """All of them in one file."""
        return self._set({key: words for page in pages for key, words in page.words.items()})

    def page(
        self, attempts: Sequence[Callable[[], dict[str, str]]], usual: int, most: int
    ) -> _Page | None:
        """The first of the attempts that takes so many sheets by itself; None where none does."""
        pages: dict[int, _Page] = {}

        def fits(k: int) -> bool:
            words = attempts[k]()
            pages[k] = _Page(words, self._set(words))
            return int(self._compiler.query("<pages>", field="value", one=True)) <= most

        first = _first_that_fits(len(attempts), fits, usual)
        return pages.get(first) if first < len(attempts) else None

    def _set(self, words: dict[str, str]) -> bytes:
        page = self._compiler.compile(format="pdf", sys_inputs={**self._setting, **words})
        assert isinstance(page, bytes)
        return page


def _first_that_fits(count: int, fits: Callable[[int], bool], usual: int) -> int:
    """The lowest attempt on one page, `count` where none is; looks first where most plans land."""
    usual = min(usual, count - 1)
    if not fits(usual):
        return bisect_left(range(count), True, usual + 1, count, key=fits)
    if usual == 0 or not fits(usual - 1):
        return usual
    return bisect_left(range(count), True, 0, usual - 1, key=fits)


def _front(data: SheetData, picture: str, size: float, level: int) -> dict[str, str]:
    left = trim(data, level)
    printed = at_share(picture, left["picture_share"])
    return {"front": _json(left), "front-size": f"{size}", "picture": printed}


def _back(data: SheetData, size: float, level: int) -> dict[str, str]:
    return {"back": _json(trim_before(data, level)), "back-size": f"{size}"}


def _cutting(data: SheetData, size: float, level: int) -> dict[str, str]:
    return {"cutting": _json(trim_cutting(data, level)), "cutting-size": f"{size}"}


def _setting(plan: Plan, paper: str | None, date: str | None) -> SheetData:
    name = (paper or ("a4" if plan.units == "mm" else "letter")).lower()
    if name not in PAPERS:
        raise RefusedInput("paper", repr(paper), " or ".join(PAPERS))
    chosen = PAPERS[name]
    return {
        "document_title": plan.title,
        "paper": chosen.typst_name,
        "margin_mm": chosen.margin_mm,
        "picture_mm": PICTURE_WIDTH,
        "picture_words": plan.headline,
        "date": f"Printed {date}." if date else "",
    }


def _attempts(most: int) -> list[tuple[float, int]]:
    trimmed = [(SIZES[-1], level) for level in range(1, most + 1)]
    return [*((size, 0) for size in SIZES), *trimmed, (LAST_SIZE, most)]


def _attempts_after(sizes: tuple[float, ...], most: int) -> list[tuple[float, int]]:
    whole = [(size, 0) for size in sizes]
    trimmed = [(sizes[-1], level) for level in range(1, most + 1)]
    smaller = [(size, most) for size in (*SIZES, LAST_SIZE) if size < sizes[-1]]
    return [*whole, *trimmed, *smaller]


def _json(data: SheetData) -> str:
    """The data as JSON, with ? for a letter that the font has not: a gap would go unseen."""
    written = json.dumps(data, ensure_ascii=False, sort_keys=True)
    letters = _letters()
    strange = {ord(c): "?" for c in set(written) if ord(c) not in letters}
    return written.translate(strange)


@lru_cache(maxsize=1)
def _letters() -> frozenset[int]:
    # Only a sheet needs to know the font.
    from font_source_sans_pro import font_files_ttf
    from fontTools.ttLib import TTFont

    with TTFont(font_files_ttf[FACES[0]], lazy=True) as font:
        return frozenset(font.getBestCmap())


def _compiler(folder: Path) -> Compiler:
    """Typst with just the faces the sheet uses, copied: the order of a folder must not matter."""
    # Typst is large and only a sheet needs it.
    from font_source_sans_pro import font_files_ttf
    from typst import Compiler

    for face in FACES:
        copy(font_files_ttf[face], folder)
    return Compiler(str(TEMPLATE), font_paths=[str(folder)], ignore_system_fonts=True)
