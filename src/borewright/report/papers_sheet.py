"""The papers of something to be made as one PDF: drawings first, then sheet after sheet.

Same papers, same bytes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from borewright.answer.papers import Block, Grid, Papers, Route, Said, Sheet
from borewright.quantities.show import Show
from borewright.report.explain import figures_text
from borewright.report.one_page import as_json, compiler

TEMPLATE: Final = Path(__file__).with_name("papers_sheet.typ")
CAUTIONS: Final = "Take care"
NUMBERS: Final = "Where the numbers come from"
PAPERS: Final = {"letter": "us-letter", "a4": "a4"}


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing as SVG that fills a page of its own size, mm; `words` for who cannot see it."""

    svg: str
    words: str
    width: float
    height: float


def papers_pdf(papers: Papers, pictures: Sequence[Picture], paper: str, date: str = "") -> bytes:
    """All pages. `paper` is letter or a4, for the sheets of words."""
    sheets = [*papers.sheets, *_numbers(papers)]
    data = {
        "title": papers.title,
        "date": date,
        "paper": PAPERS[paper],
        "cautions_head": CAUTIONS,
        "pictures": [
            {"svg": p.svg, "words": p.words, "width_mm": p.width, "height_mm": p.height}
            for p in pictures
        ],
        "sheets": [
            {**_sheet(s), "headline": papers.headline if k == 0 else ""}
            for k, s in enumerate(sheets)
        ],
    }
    with compiler(TEMPLATE) as typst:
        pages = typst.compile(format="pdf", sys_inputs={"data": as_json(data)})
    assert isinstance(pages, bytes)
    return pages


def _numbers(papers: Papers) -> tuple[Sheet, ...]:
    if not papers.figures:
        return ()
    lines = figures_text(papers.figures, Show(papers.units)).splitlines()
    paragraphs: list[str] = []
    for line in lines:
        if line.startswith("    ") and paragraphs:
            paragraphs[-1] += f" {line.strip()}"
        else:
            paragraphs.append(line)
    return (Sheet(NUMBERS, (Said("", tuple(paragraphs)),)),)


def _sheet(sheet: Sheet) -> dict[str, Any]:
    return {"title": sheet.title, "blocks": [_block(b) for b in sheet.blocks]}


def _block(block: Block) -> dict[str, Any]:
    if isinstance(block, Said):
        return {"kind": "said", "heading": block.heading, "lines": block.lines}
    if isinstance(block, Route):
        steps = [{"title": s.title, "lines": s.lines, "blanks": s.blanks} for s in block.steps]
        return {"kind": "route", "heading": block.heading, "steps": steps}
    if isinstance(block, Grid):
        return {
            "kind": "grid",
            "heading": block.heading,
            "columns": block.columns,
            "widths": _widths(block),
            "rows": block.rows,
            "notes": block.notes,
            "blanks": any(cell == "" for row in block.rows for cell in row),
        }
    return {"kind": "warned", "cautions": [c.text for c in block.cautions]}


def _widths(grid: Grid) -> list[float]:
    """Shares of the width by the longest cell of each column, none very small or very large."""
    longest = [max(len(c) for c in column) for column in zip(grid.columns, *grid.rows, strict=True)]
    return [min(max(n, 8), 34) for n in longest]
