"""Which column of a spreadsheet means what: as told, or guessed by exact and near names."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Final

from borewright.errors.tree import RefusedInput, UnknownName
from borewright.job.csv_kinds import KINDS, Field
from borewright.job.csv_table import CsvTable
from borewright.quantities.units import find_unit

NEAR: Final = 0.84
"""Ours: two headers this alike are one word typed two ways; `size` and `sizes` are, `small` and
`large end` are not."""
_UNIT_BEHIND = re.compile(
    r"(.*?)[\s,_]*(?:\(([^()]*)\)|\[([^\[\]]*)\]|[\s_,](mm|in|inch|inches))\s*"
)
_ANY_KIND = ("length", "force", "power", "spindle", "taper", "mass")


@dataclass(frozen=True, slots=True)
class Mapped:
    """A key of the shelf file, the column it is read from, and the unit its header names."""

    field: Field
    column: int
    header: str
    unit: str

    @property
    def words(self) -> str:
        """As a report names it: `small_end from 'Small End (mm)'`."""
        return f"{self.field.key} from {self.header!r}"


def guess_columns(table: CsvTable, kind: str) -> tuple[Mapped, ...]:
    """The columns that name a key, exactly first, then nearly; RefusedInput where one is missing.

    >>> from borewright.job.csv_table import parse_csv
    >>> table = parse_csv("Nominal Size (mm),Tapper\\n12,1:2000", "tools.csv")
    >>> [(m.field.key, m.unit) for m in guess_columns(table, "mandrels")]
    [('size', 'mm'), ('taper', '')]
    """
    columns = {n: plain_header(h)[0] for n, h in enumerate(table.header) if h}
    found: dict[str, int] = {}
    for near in (1.0, NEAR):
        for field in KINDS[kind]:
            column = None if field.key in found else _best(field, columns, near)
            if column is not None:
                found[field.key] = column
                del columns[column]
    return _mapped(table, kind, found, "a header that names it, or --columns")


def told_columns(table: CsvTable, kind: str, text: str) -> tuple[Mapped, ...]:
    """The columns of `--columns "size=Size,small_end=Small End"`; no other is read."""
    found: dict[str, int] = {}
    for pair in text.split(","):
        key, equals, header = (part.strip() for part in pair.partition("="))
        if not equals:
            raise RefusedInput("--columns", repr(pair.strip()), "key=header, with , between them")
        if key not in {field.key for field in KINDS[kind]}:
            raise UnknownName("--columns", key, tuple(f.key for f in KINDS[kind]))
        if key in found:
            raise RefusedInput("--columns", f"{key} twice", "each key once")
        found[key] = _column_named(table, header, key)
    return _mapped(table, kind, found, "it in --columns")


def plain_header(header: str) -> tuple[str, str]:
    """A header as plain words, and the unit behind it, if any.

    >>> plain_header("Small-End  Dia. (mm)"), plain_header("size_in"), plain_header("Marks (old)")
    (('small end dia', 'mm'), ('size', 'in'), ('marks old', ''))
    """
    match = _UNIT_BEHIND.fullmatch(header)
    unit = next((part for part in match.groups()[1:] if part), "").strip() if match else ""
    known = match is not None and any(find_unit(kind, unit) for kind in _ANY_KIND if unit)
    words = match[1] if match is not None and known else header
    return " ".join(re.findall(r"[a-z0-9]+", words.casefold())), unit if known else ""


def unread(table: CsvTable, mapped: Iterable[Mapped]) -> tuple[str, ...]:
    """Headers of columns that mean nothing here; unnamed ones by their number."""
    used = {m.column for m in mapped}
    width = max([len(table.header), *(len(row.cells) for row in table.rows)])
    names = {n: h for n, h in enumerate(table.header) if h}
    left = [n for n in range(width) if n not in used and (n in names or _says(table, n))]
    return tuple(names.get(n, f"column {n + 1}, without a name") for n in left)


def _says(table: CsvTable, column: int) -> bool:
    return any(table.cell(row, column) for row in table.rows)


def _best(field: Field, columns: Mapping[int, str], near: float) -> int | None:
    names = (field.key.replace("_", " "), *field.names)
    alike = {n: max(_alike(header, name) for name in names) for n, header in columns.items()}
    best = max(alike, key=lambda n: alike[n], default=None)
    return best if best is not None and alike[best] >= near else None


def _alike(header: str, name: str) -> float:
    return 1.0 if header == name else SequenceMatcher(None, header, name).ratio() * 0.999


def _column_named(table: CsvTable, header: str, key: str) -> int:
    if header in table.header and header:
        return table.header.index(header)
    plain = {plain_header(h)[0]: n for n, h in enumerate(table.header) if h}
    if plain_header(header)[0] in plain:
        return plain[plain_header(header)[0]]
    raise UnknownName(f"--columns {key}", header, tuple(h for h in table.header if h))


def _mapped(
    table: CsvTable, kind: str, found: Mapping[str, int], allowed: str
) -> tuple[Mapped, ...]:
    fields = {field.key: field for field in KINDS[kind]}
    missing = next((f.key for f in fields.values() if f.needed and f.key not in found), None)
    if missing is not None or not found:
        what = f"for {missing}" if missing else "that names anything of " + kind
        seen = ", ".join(repr(h) for h in table.header[:20] if h)
        raise RefusedInput(table.file, f"no column {what} among {seen}", allowed)
    return tuple(
        Mapped(fields[k], n, table.header[n], _unit(fields[k], table.header[n]))
        for k, n in sorted(found.items(), key=lambda pair: pair[1])
    )


def _unit(field: Field, header: str) -> str:
    unit = plain_header(header)[1]
    kind = "length" if field.kind == "offset" else field.kind
    return unit if unit and find_unit(kind, unit) else ""
