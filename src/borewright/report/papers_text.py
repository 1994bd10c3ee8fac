"""The papers of something to be made as plain text: the answer first, then sheet after sheet."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import fill
from typing import Final

from borewright.answer.papers import Block, Grid, Papers, Route, Said
from borewright.report.papers_sheet import CAUTIONS

WIDTH: Final = 90
WIDEST: Final = 110
"""Columns of a table that a terminal still shows in one line."""


def papers_lines(papers: Papers) -> Iterator[str]:
    """Line by line, no line wider than a terminal where words can be broken.

    >>> from borewright.answer.papers import Sheet
    >>> papers = Papers("Plug", "One plug.", "mm", (Sheet("Route", (Said("", ("Turn it.",)),)),))
    >>> list(papers_lines(papers))
    ['One plug.', '', 'ROUTE', 'Turn it.']
    """
    yield from _filled(papers.headline)
    for sheet in papers.sheets:
        yield ""
        yield sheet.title.upper()
        for block in sheet.blocks:
            yield from _block(block)


def _block(block: Block) -> Iterator[str]:
    heading = CAUTIONS if not isinstance(block, Said | Route | Grid) else block.heading
    if heading:
        yield ""
        yield from _filled(heading)
    if isinstance(block, Said):
        for line in block.lines:
            yield from _filled(line)
    elif isinstance(block, Route):
        for number, step in enumerate(block.steps, 1):
            words = " ".join((f"{number}. {step.title}.", *step.lines))
            yield from _filled(words, "   ")
    elif isinstance(block, Grid):
        yield from _grid(block)
    else:
        for caution in block.cautions:
            yield from _filled(f"- {caution.text}", "  ")


def _grid(grid: Grid) -> Iterator[str]:
    rows = (grid.columns, *grid.rows)
    cells = [[cell or "____" for cell in row] for row in rows]
    wide = [max(len(cell) for cell in column) for column in zip(*cells, strict=True)]
    if sum(wide) + 2 * (len(wide) - 1) > WIDEST:
        yield from _row_by_row(cells)
    else:
        for row in cells:
            yield "  ".join(cell.ljust(w) for cell, w in zip(row, wide, strict=True)).rstrip()
    for note in grid.notes:
        yield from _filled(note)


def _row_by_row(cells: list[list[str]]) -> Iterator[str]:
    """A table too wide for a terminal: each row a paragraph, each cell behind its column's name."""
    head, *rows = cells
    for row in rows:
        said = "; ".join(f"{name} {cell}" for name, cell in zip(head[1:], row[1:], strict=True))
        yield from _filled(f"{head[0]} {row[0]}: {said}", "   ")


def _filled(words: str, indent: str = "") -> list[str]:
    return fill(words, WIDTH, subsequent_indent=indent).splitlines()
