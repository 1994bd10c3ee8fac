"""A table out of a spreadsheet's export: separator, header, rows and the lines they stand on."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from dataclasses import dataclass
from io import StringIO
from pathlib import Path
from typing import Final

from borewright.errors.tree import RefusedInput, UnreadableFile
from borewright.job.toml_text import load_text

WHAT: Final = "spreadsheet export"
SEPARATORS: Final = {",": "comma", ";": "semicolon", "\t": "tab"}
_COMMA_DECIMAL = re.compile(r"([+-]?[0-9]+),([0-9]+)(.*)")


@dataclass(frozen=True, slots=True)
class CsvRow:
    """One row that says something, and the line of the file it begins on."""

    line: int
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CsvTable:
    """Header and rows; rows with nothing in them are only counted."""

    file: str
    separator: str
    header: tuple[str, ...]
    rows: tuple[CsvRow, ...]
    empty_rows: int

    def cell(self, row: CsvRow, column: int) -> str:
        """The cell of a row; a short row ends in empty ones.

        In a file parted by semicolons or tabs a number's comma is its decimal point.
        """
        text = row.cells[column].strip() if column < len(row.cells) else ""
        decimal = _COMMA_DECIMAL.fullmatch(text) if self.separator != "," else None
        return f"{decimal[1]}.{decimal[2]}{decimal[3]}" if decimal else text


def read_csv(path: str | Path) -> CsvTable:
    """The table of a file; UnreadableFile or RefusedInput where it is none."""
    return parse_csv(load_text(Path(path), WHAT), str(path))


def parse_csv(text: str, where: str) -> CsvTable:
    """The table of a text.

    >>> table = parse_csv("Size;Name\\n12,7mm;half\\n;\\n", "tools.csv")
    >>> table.header, table.cell(table.rows[0], 0), table.empty_rows
    (('Size', 'Name'), '12.7mm', 1)
    """
    separator = _separator(text)
    rows = list(_rows(text, separator, where))
    if not rows:
        raise UnreadableFile(where, "nothing in it", f"a {WHAT} with a header row")
    header = tuple(cell.strip() for cell in rows[0].cells)
    _check_header(header, where)
    said = tuple(row for row in rows[1:] if any(cell.strip() for cell in row.cells))
    if not said:
        raise UnreadableFile(where, "a header and no row under it", "at least one row")
    return CsvTable(where, separator, header, said, len(rows) - 1 - len(said))


def _separator(text: str) -> str:
    """What parts the cells of the first line, quoted ones left out."""
    lines = text.lstrip().splitlines()
    first = re.sub(r'"[^"]*"', "", lines[0]) if lines else ""
    return max(SEPARATORS, key=first.count)


def _rows(text: str, separator: str, where: str) -> Iterator[CsvRow]:
    reader = csv.reader(StringIO(text, newline=""), delimiter=separator, strict=True)
    line = 1
    try:
        for cells in reader:
            if cells or line > 1:
                yield CsvRow(line, tuple(cells))
            line = reader.line_num + 1
    except csv.Error as problem:
        found = f"a row that begins on line {line} and cannot be read ({problem})"
        allowed = "cells in plain text, or in quotes that close"
        raise UnreadableFile(where, found, allowed) from None


def _check_header(header: tuple[str, ...], where: str) -> None:
    named = [name for name in header if name]
    twice = next((name for name in named if named.count(name) > 1), None)
    if twice is not None:
        raise RefusedInput(where, f"two columns named {twice!r}", "a name for one column only")
    if not named:
        raise RefusedInput(where, "a first row without names", "a header row")


def check_cells(table: CsvTable, row: CsvRow, where: str) -> None:
    """RefusedInput for a row with something in a cell that no header stands over."""
    if any(cell.strip() for cell in row.cells[len(table.header) :]):
        found = f"{len(row.cells)} cells under {len(table.header)} headers"
        raise RefusedInput(where, found, "a cell for each header; put a text with commas in quotes")
