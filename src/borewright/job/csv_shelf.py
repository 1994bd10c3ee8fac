"""Rows of a spreadsheet as records of the shelf: each row good, or bad with its line and reason."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any, Final

from borewright.errors.tree import RefusedInput
from borewright.job.csv_columns import Mapped, guess_columns, told_columns, unread
from borewright.job.csv_kinds import table_of
from borewright.job.csv_table import CsvRow, CsvTable, check_cells
from borewright.job.records import Machine, MandrelNote
from borewright.job.tools import OwnDog, OwnDrill, OwnGauge, OwnPress, OwnReamer
from borewright.job.typed import Reader
from borewright.quantities.grammar import split, tidy
from borewright.quantities.read import System

Entry = MandrelNote | Machine | OwnPress | OwnDog | OwnDrill | OwnReamer | OwnGauge
NOTHING: Final = frozenset({"", "-", "–", "—", "?", "n/a", "na", "unknown", "not known"})
"""What people put in a cell that has nothing to say."""
MOST: Final = 200
"""As many as a shelf file lists of one kind."""
_TO = re.compile(r"\s+to\s+|\s*(?:…|\.\.|–)\s*")
_AND = re.compile(r"\s*[;,]\s*|\s+(?=[\d.])")
_BARE_KINDS = ("length", "offset", "force", "power", "feed")


@dataclass(frozen=True, slots=True)
class BadRow:
    """A row that was not read: the line it begins on, and why."""

    line: int
    reason: str

    @property
    def in_brackets(self) -> str:
        """The reason inside another sentence.

        >>> BadRow(3, "size: found wide; allowed is a length").in_brackets
        'size (found wide; allowed is a length)'
        """
        place, _, why = self.reason.partition(": ")
        return f"{place} ({why})" if why else f"cells ({self.reason})"


@dataclass(frozen=True, slots=True)
class CsvRead:
    """What a spreadsheet gave: records with their lines, bad rows, and how it was understood."""

    file: str
    kind: str
    separator: str
    columns: tuple[Mapped, ...]
    guessed: bool
    unread: tuple[str, ...]
    entries: tuple[Entry, ...]
    lines: tuple[int, ...]
    bad: tuple[BadRow, ...]
    empty_rows: int

    @property
    def rows(self) -> int:
        """Rows that say something, good and bad."""
        return len(self.entries) + len(self.bad)


def read_entries(table: CsvTable, kind: str, columns: str | None, units: System | None) -> CsvRead:
    """The rows of a table as records of `kind`. RefusedInput for columns that cannot be settled.

    >>> from borewright.job.csv_table import parse_csv
    >>> table = parse_csv("Size (mm),Name\\n12.7,half\\nwide,\\n", "tools.csv")
    >>> read = read_entries(table, "mandrels", None, None)
    >>> read.entries[0].nominal, read.lines, read.bad[0].line
    (0.0127, (2,), 3)
    """
    mapped = guess_columns(table, kind) if columns is None else told_columns(table, kind, columns)
    _check_units(table, mapped, units)
    good: list[tuple[int, Entry]] = []
    bad: list[BadRow] = []
    for row in table.rows:
        try:
            good.append((row.line, _entry(table, row, kind, mapped, units)))
        except RefusedInput as refusal:
            bad.append(BadRow(row.line, str(refusal).removeprefix(f"{_at(table, row)}: ")))
    if len(good) > MOST:
        raise RefusedInput(table.file, f"{len(good)} {kind}", f"at most {MOST} {kind}")
    return CsvRead(
        file=table.file,
        kind=kind,
        separator=table.separator,
        columns=mapped,
        guessed=columns is None,
        unread=unread(table, mapped),
        entries=tuple(entry for _, entry in good),
        lines=tuple(line for line, _ in good),
        bad=tuple(bad),
        empty_rows=table.empty_rows,
    )


def _at(table: CsvTable, row: CsvRow) -> str:
    return f"{table.file} line {row.line}"


def _entry(
    table: CsvTable, row: CsvRow, kind: str, mapped: tuple[Mapped, ...], units: System | None
) -> Entry:
    where = _at(table, row)
    check_cells(table, row, where)
    said = {m.field.key: _typed(table.cell(row, m.column), m) for m in mapped}
    stated = {key: value for key, value in said.items() if value is not None}
    return build_entry(stated, kind, Reader(where, units))


def build_entry(stated: dict[str, Any], kind: str, reader: Reader) -> Entry:
    """One record from the keys that a row states; refused as a table of a shelf file is."""
    # pydantic is heavy; see job.file
    from borewright.job import build_drills, build_shop, build_tools, schema, schema_tools
    from borewright.job.form import check_form

    forms: dict[str, tuple[Any, Any]] = {
        "mandrels": (schema.MandrelTable, build_shop.build_mandrel),
        "lathes": (schema.LatheTable, build_shop.build_lathe),
        "presses": (schema_tools.PressTable, build_tools.build_press),
        "dogs": (schema_tools.DogTable, build_tools.build_dog),
        "drills": (schema_tools.DrillTable, build_drills.build_drill),
        "reamers": (schema_tools.ReamerTable, build_tools.build_reamer),
        "gauges": (schema_tools.GaugeTable, build_tools.build_gauge),
    }
    model, build = forms[kind]
    entry: Entry = build(check_form(stated, model, reader.file), table_of(kind), reader)
    return entry


def _typed(cell: str, mapped: Mapped) -> Any:
    """A cell as a shelf file would have it; None where it says nothing."""
    if cell.casefold() in NOTHING:
        return None
    if mapped.field.kind == "text":
        words = ("hardness", "flats", "tail", "dial")
        return cell.casefold() if mapped.field.key in words else " ".join(cell.split())
    if mapped.field.many:
        return _many(cell, mapped)
    return _with_unit(cell, mapped.unit)


def _many(cell: str, mapped: Mapped) -> list[str]:
    """The values in one cell; a unit that stands behind the last is meant for all.

    >>> from borewright.job.csv_kinds import Field
    >>> _many("30, 60, 110 rpm", Mapped(Field("speeds", "spindle"), 0, "Speeds", ""))
    ['30rpm', '60rpm', '110 rpm']
    """
    parts = _ends(cell) if mapped.field.key == "range" else [p for p in _AND.split(cell) if p]
    last = split(tidy(parts[-1])) if parts else None
    return [_with_unit(part, mapped.unit or (last.unit if last else "")) for part in parts]


def _ends(cell: str) -> list[str]:
    """Both ends of a range: `1/4 to 1 1/4 in`, `6–10 mm`, `6-10 mm`."""
    ends = _TO.split(cell)
    return ends if len(ends) > 1 else re.split(r"(?<=\d)\s*-\s*(?=\d)", cell, maxsplit=1)


def _with_unit(cell: str, unit: str) -> str:
    """A bare number with the unit of its column; anything else as typed."""
    found = split(tidy(cell)) if len(cell) <= 60 else None
    return f"{cell}{unit}" if unit and found and not found.unit else cell


def _check_units(table: CsvTable, mapped: tuple[Mapped, ...], units: System | None) -> None:
    """RefusedInput, once for the file, where a number has no unit and nothing says which."""
    if units is not None:
        return
    for column in (m for m in mapped if m.field.kind in _BARE_KINDS):
        for row in table.rows:
            cell = table.cell(row, column.column)
            typed = _with_unit(cell, column.unit)
            found = None if column.field.many or len(typed) > 60 else split(tidy(typed))
            if found and not found.unit:
                said = f"{cell} without a unit in column {column.header!r}, line {row.line}"
                allowed = (
                    f"--units inch|mm, or a header with its unit, such as '{column.header} (mm)'"
                )
                raise RefusedInput(table.file, said, allowed)
