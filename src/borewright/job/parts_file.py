"""A list of parts out of a spreadsheet's export: one job a row, bad rows by their line.

Headers are the names of `COLUMNS`, in any order; sizes carry their unit or `units` says it.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from borewright.errors import RefusedInput, UnknownName
from borewright.job.csv_table import CsvRow, CsvTable, check_cells, parse_csv, read_csv
from borewright.job.file import job_of
from borewright.job.records import Job
from borewright.quantities.read import System

COLUMNS: Final = {
    "part": ("title",),
    "material": ("work", "material"),
    "blank": ("work", "blank"),
    "outside": ("work", "outside"),
    "length": ("work", "length"),
    "quantity": ("work", "quantity"),
    "finished": ("work", "finished", "outside"),
    "tolerance": ("work", "finished", "tolerance"),
    "bore": ("work", "bore", "size"),
    "uncertainty": ("work", "bore", "uncertainty"),
    "measured_with": ("work", "bore", "measured_with"),
    "made_by": ("work", "bore", "made_by"),
}
"""Header of a column, and where its cell goes in a job's tables."""

NEEDED: Final = ("part", "material", "outside", "length", "bore")


@dataclass(frozen=True, slots=True)
class Part:
    """One part of the list: the line it stands on and its job."""

    line: int
    job: Job


@dataclass(frozen=True, slots=True)
class BadPart:
    """A row that cannot be read, and why."""

    line: int
    reason: str


@dataclass(frozen=True, slots=True)
class PartsRead:
    """The parts of a list, and its bad rows; none is dropped."""

    parts: tuple[Part, ...]
    bad: tuple[BadPart, ...]


def read_parts(path: str | Path, units: System | None = None) -> PartsRead:
    """The parts of a file. UnreadableFile, UnknownName or RefusedInput for the file as a whole."""
    return _parts(read_csv(path), units)


def parse_parts(text: str, where: str, units: System | None = None) -> PartsRead:
    """The parts of a text.

    >>> text = "part,material,outside,length,bore\\nwheel,6061,2in,1in,5/8in\\nbad,6061,2,1in,5/8in"
    >>> read = parse_parts(text, "parts.csv")
    >>> read.parts[0].job.title, read.bad[0].line
    ('wheel', 3)
    """
    return _parts(parse_csv(text, where), units)


def _parts(table: CsvTable, units: System | None) -> PartsRead:
    places = _columns(table)
    parts, bad = [], []
    for row in table.rows:
        try:
            parts.append(
                Part(row.line, job_of(_tables(table, row, places, units), f"line {row.line}"))
            )
        except RefusedInput as refusal:
            bad.append(BadPart(row.line, str(refusal)))
    return PartsRead(tuple(parts), tuple(bad))


def _columns(table: CsvTable) -> dict[int, tuple[str, ...]]:
    """Where each column goes; UnknownName for a strange header, RefusedInput for a missing one."""
    heads = [h.strip().lower().replace(" ", "_") for h in table.header]
    for head in heads:
        if head not in COLUMNS:
            raise UnknownName(f"{table.file}, header", head, tuple(COLUMNS))
    missing = [n for n in NEEDED if n not in heads]
    if missing:
        raise RefusedInput(
            f"{table.file}, header", f"no column {missing[0]!r}", f"at least {', '.join(NEEDED)}"
        )
    return {k: COLUMNS[head] for k, head in enumerate(heads)}


def _tables(
    table: CsvTable, row: CsvRow, places: dict[int, tuple[str, ...]], units: System | None
) -> dict[str, Any]:
    check_cells(table, row, f"line {row.line}")
    job: dict[str, Any] = {"units": units} if units else {}
    for column, place in places.items():
        cell = table.cell(row, column).strip()
        if not cell:
            continue
        inside = job
        for name in place[:-1]:
            inside = inside.setdefault(name, {})
        inside[place[-1]] = _value(cell, place[-1])
    return job


def _value(cell: str, name: str) -> Any:
    """A count as a whole number, all else as the text it is."""
    if name == "quantity" and cell.isdecimal():
        return int(cell)
    return cell
