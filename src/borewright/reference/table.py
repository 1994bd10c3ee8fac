"""A table as read from its CSV file: rows of text cells that answer as numbers, names or yes/no."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass, field
from io import StringIO
from pathlib import Path

from borewright.errors import UnknownName, UnreadableFile
from borewright.reference.certificate import Certificate


@dataclass(frozen=True, slots=True)
class Row:
    """One line. `where` names file and line for a refusal."""

    where: str
    cells: Mapping[str, str]

    def text(self, column: str) -> str:
        """The cell as written."""
        return self.cells[column]

    def number(self, column: str) -> float:
        """The cell as a number (checked when the table was read)."""
        return float(self.cells[column])

    def names(self, column: str) -> tuple[str, ...]:
        """The parts of a cell separated by ;

        >>> Row("", {"names": "mild steel;en3b"}).names("names")
        ('mild steel', 'en3b')
        """
        return tuple(part.strip() for part in self.cells[column].split(";") if part.strip())

    def yes(self, column: str) -> bool:
        """Whether the cell says yes."""
        return self.cells[column] == "yes"


@dataclass(frozen=True, slots=True)
class Table:
    """Rows with their certificate; `index` finds a row by its key columns, `by_name` by any of its
    names (filled by `names` when first asked)."""

    certificate: Certificate
    rows: tuple[Row, ...]
    index: Mapping[tuple[str, ...], Row]
    own: bool = False
    by_name: dict[str, Row] = field(default_factory=dict, compare=False, repr=False)

    def row(self, *key: str) -> Row:
        """The row with this key, or `UnknownName` with what the table has there."""
        found = self.index.get(key)
        if found is None:
            raise self._unknown(key)
        return found

    def column(self, name: str) -> tuple[str, ...]:
        """Every value of one column, in file order."""
        return tuple(row.text(name) for row in self.rows)

    def _unknown(self, key: tuple[str, ...]) -> UnknownName:
        # The first part of the key that no row carries is the one to name.
        good = next(n for n in range(len(key)) if key[: n + 1] not in self._starts(n + 1))
        choices = {start[good] for start in self._starts(good + 1) if start[:good] == key[:good]}
        of = f" of {', '.join(key[:good])}" if good else ""
        where = f"table {self.certificate.table}, {self.certificate.key[good]}{of}"
        return UnknownName(where, key[good], tuple(sorted(choices)))

    def _starts(self, length: int) -> set[tuple[str, ...]]:
        return {known[:length] for known in self.index}


def read_rows(path: Path, certificate: Certificate) -> tuple[Row, ...]:
    """The rows of a CSV file whose header is the one its certificate names.

    Raises `UnreadableFile` when it is missing, not UTF-8 text, or of another shape.
    """
    lines = _lines(path)
    if not lines:
        raise UnreadableFile(path.name, "an empty file", "a table with a header line")
    header = tuple(cell.strip() for cell in lines[0])
    _check_header(path.name, header, certificate.headers)
    return tuple(
        _row(f"{path.name} line {number}", header, line)
        for number, line in enumerate(lines[1:], start=2)
        if any(line)
    )


def _lines(path: Path) -> list[list[str]]:
    try:
        return list(csv.reader(StringIO(_text(path), newline=""), strict=True))
    except csv.Error as error:
        raise UnreadableFile(path.name, f"a line that breaks off ({error})", "CSV text") from None


def _text(path: Path) -> str:
    try:
        return path.read_text("utf-8-sig")
    except OSError as error:
        raise UnreadableFile(path.name, error.strerror or "no file", "a readable table") from None
    except UnicodeDecodeError:
        raise UnreadableFile(path.name, "bytes that are not UTF-8", "UTF-8 text") from None


def _check_header(name: str, header: tuple[str, ...], wanted: tuple[str, ...]) -> None:
    allowed = "the columns " + ", ".join(wanted)
    missing = [column for column in wanted if column not in header]
    strange = [column for column in header if column not in wanted]
    if missing:
        raise UnreadableFile(f"{name} header", f"no column {', '.join(missing)}", allowed)
    if strange:
        raise UnreadableFile(f"{name} header", f"column {', '.join(strange)}", allowed)
    if len(set(header)) < len(header):
        raise UnreadableFile(f"{name} header", "a column twice", allowed)


def _row(where: str, header: tuple[str, ...], line: list[str]) -> Row:
    if len(line) != len(header):
        raise UnreadableFile(where, f"{len(line)} cells", f"{len(header)} cells, as in the header")
    return Row(where, dict(zip(header, (cell.strip() for cell in line), strict=True)))
