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
    step, a cut or a caution. A plan whose work may not be pressed on has no picture. Refuses any
    other paper, and a plan that no trimming brings onto its pages.
    """
    setting = {"setting": _json(_setting(plan, paper, date))}
    picture = svg if plan.goes_on else ""
    back = sheet_before(plan)
    number = 2 if back is None else 3
    cutting = sheet_cutting(plan, number, charts)
    sent = {"first": first_words(plan), "cutting": cutting_words(plan, number)}
    front = {**sheet_data(plan), **sent}
    fronts = [partial(_front, front, picture, *at) for at in _attempts(most_trim(front))]
    with TemporaryDirectory() as folder:
        compiler = _compiler(Path(folder))
        pages = [_page(compiler, setting, fronts, USUAL_ATTEMPT)]
        if back is not None:
            backs = [
                partial(_back, back, *at) for at in _attempts_after(SIZES_AFTER, MOST_TRIM_BEFORE)
            ]
            pages.append(_page(compiler, setting, backs, 0))
        if cutting is not None:
            cuts = [
                partial(_cutting, cutting, *at)
                for at in _attempts_after(SIZES_CUTTING, MOST_TRIM_CUTTING)
            ]
            pages.append(_page(compiler, setting, cuts, 0))
        if len(pages) == 1:
            return pages[0].pdf
        whole = {key: words for page in pages for key, words in page.words.items()}
        return _compiled(compiler, {**setting, **whole})


class _Page(NamedTuple):
    words: dict[str, str]
    pdf: bytes


def _page(
    compiler: Compiler,
    setting: dict[str, str],
    attempts: Sequence[Callable[[], dict[str, str]]],
    usual: int,
) -> _Page:
    """The first of the attempts that is one page by itself. RefusedInput where none is."""
    pages: dict[int, _Page] = {}

    def on_one_page(k: int) -> bool:
        words = attempts[k]()
        pages[k] = _Page(words, _compiled(compiler, {**setting, **words}))
        return bool(compiler.query("<pages>", field="value", one=True) == "1")

    fits = _first_that_fits(len(attempts), on_one_page, usual)
    if fits == len(attempts):
        raise RefusedInput("plan", "more than one page holds", "a plan with shorter words")
    return pages[fits]


def _first_that_fits(count: int, fits: Callable[[int], bool], usual: int) -> int:
    """The lowest attempt on one page, `count` where none is; looks first where most plans land."""
    usual = min(usual, count - 1)
    if not fits(usual):
        return bisect_left(range(count), True, usual + 1, count, key=fits)
    if usual == 0 or not fits(usual - 1):
        return usual
    return bisect_left(range(count), True, 0, usual - 1, key=fits)


def _compiled(compiler: Compiler, inputs: dict[str, str]) -> bytes:
    page = compiler.compile(format="pdf", sys_inputs=inputs)
    assert isinstance(page, bytes)
    return page


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
