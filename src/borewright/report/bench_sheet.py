"""The bench sheet: one page, Letter or A4, to pin up by the lathe and write on.

Typst sets the page; its font is Source Sans Pro from the package font-source-sans-pro, system
fonts are ignored, no clock is read: same plan, same bytes.
"""

from __future__ import annotations

import json
from bisect import bisect_left
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path
from shutil import copy
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, NamedTuple

from borewright.answer.plan import Plan
from borewright.errors import RefusedInput
from borewright.report.sheet_data import SheetData, sheet_data
from borewright.report.sheet_picture import at_share
from borewright.report.sheet_trim import MOST_TRIM, trim

if TYPE_CHECKING:
    from typst import Compiler

TEMPLATE = Path(__file__).with_name("bench_sheet.typ")
SIZES = (9.5, 9.0, 8.5, 8.0, 7.5, 7.0)
"""Letter sizes tried before anything is left out, points."""
LAST_SIZE = 6.5
"""The size when all that may go has gone and a step would have to go next, points."""
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
    plan: Plan, svg: str, *, paper: str | None = None, date: str | None = None
) -> bytes:
    """One PDF page with the plan: verdict, drawing, steps with blanks, cuts, cautions, margins.

    `svg` is the drawing, empty where there is none. `paper` is letter or a4; left out, inch plans
    go on letter and mm plans on a4. `date` is printed as given; left out, no date. The letter size
    is the largest of `SIZES` at which one page holds it; under the smallest, parts are left out
    and the sheet says which, never a step, a cut or a caution. A plan whose work may not be pressed
    on has no picture. Refuses any other paper, and a plan
    that no trimming brings onto one page.
    """
    data = {**sheet_data(plan), **_setting(plan, paper, date)}
    picture = svg if plan.goes_on else ""
    with TemporaryDirectory() as folder:
        compiler = _compiler(Path(folder))
        attempts = _attempts()

        pages: dict[int, bytes] = {}

        def on_one_page(k: int) -> bool:
            pages[k] = _compiled(compiler, _attempt(data, picture, *attempts[k]))
            return bool(compiler.query("<pages>", field="value", one=True) == "1")

        fits = _first_that_fits(len(attempts), on_one_page)
        if fits == len(attempts):
            raise RefusedInput("plan", "more than one page holds", "a plan with shorter words")
        return pages[fits]


def _first_that_fits(count: int, fits: Callable[[int], bool]) -> int:
    """The lowest attempt on one page, `count` where none is; looks first where most plans land."""
    usual = min(USUAL_ATTEMPT, count - 1)
    if not fits(usual):
        return bisect_left(range(count), True, usual + 1, count, key=fits)
    if usual == 0 or not fits(usual - 1):
        return usual
    return bisect_left(range(count), True, 0, usual - 1, key=fits)


def _compiled(compiler: Compiler, inputs: dict[str, str]) -> bytes:
    page = compiler.compile(format="pdf", sys_inputs=inputs)
    assert isinstance(page, bytes)
    return page


def _attempt(data: SheetData, picture: str, size: float, level: int) -> dict[str, str]:
    left = trim(data, level)
    printed = at_share(picture, left["picture_share"])
    return {"data": _json(left), "size": f"{size}", "picture": printed}


def _setting(plan: Plan, paper: str | None, date: str | None) -> SheetData:
    name = (paper or ("a4" if plan.units == "mm" else "letter")).lower()
    if name not in PAPERS:
        raise RefusedInput("paper", repr(paper), " or ".join(PAPERS))
    chosen = PAPERS[name]
    return {
        "paper": chosen.typst_name,
        "margin_mm": chosen.margin_mm,
        "picture_mm": PICTURE_WIDTH,
        "picture_words": plan.headline,
        "date": f"Printed {date}." if date else "",
    }


def _attempts() -> list[tuple[float, int]]:
    trimmed = [(SIZES[-1], level) for level in range(1, MOST_TRIM + 1)]
    return [*((size, 0) for size in SIZES), *trimmed, (LAST_SIZE, MOST_TRIM)]


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
