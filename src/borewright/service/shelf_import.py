"""shelf import: a maker's or own spreadsheet export as a shelf file."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Literal

from borewright.errors import RefusedInput
from borewright.errors.tree import one_line
from borewright.job.csv_kinds import table_of
from borewright.job.csv_shelf import CsvRead, read_entries
from borewright.job.csv_table import SEPARATORS, read_csv
from borewright.job.records import Shelf
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service.shelf_doubts import Doubt, doubts_of
from borewright.service.shelf_read import ShelfFile, load_shelf

LINES_NAMED = 12
"""As many bad lines as a refusal names, to stay one line that can be read."""


@dataclass(frozen=True, slots=True)
class Imported:
    """What was read, the shelf file's text that says it, and what is doubted."""

    read: CsvRead
    text: str
    doubts: tuple[Doubt, ...]


def import_csv(
    path: str,
    kind: str,
    tables: Tables,
    *,
    columns: str | None = None,
    units: Literal["inch", "mm"] | None = None,
    keep_good: bool = False,
    base: ShelfFile | None = None,
) -> Imported:
    """The rows of a CSV file as `kind` of a shelf: a new one, or `base` with its `kind` replaced.

    RefusedInput for a file, a header or units that cannot be settled, and for bad rows unless
    `keep_good`; never for doubts, which are told.
    """
    from borewright.job.write_shelf import checked_shelf_text

    read = read_entries(read_csv(path), kind, columns, units)
    _check_bad(read, keep_good)
    system = base.units if base is not None else units or "inch"
    shelf = with_entries(base.shelf if base is not None else Shelf(), read)
    labels = [f"line {line}" for line in read.lines]
    doubts = doubts_of(table_of(kind), read.entries, labels, tables, Show(system))
    return Imported(read, checked_shelf_text(shelf, path, system), tuple(doubts))


def base_shelf(into: str | None, overwrite: bool) -> ShelfFile | None:
    """The shelf file to be changed, None for a new one; RefusedInput without leave to change it."""
    if into is None:
        if overwrite:
            raise RefusedInput("--overwrite", "no --into beside it", "--into SHELF.toml as well")
        return None
    if not _there(into):
        return None
    if not overwrite:
        allowed = "a new name, or --overwrite to replace what it lists of this kind"
        raise RefusedInput("--into", f"{into!r}, which is there already", allowed)
    return load_shelf(into)


def with_entries(shelf: Shelf, read: CsvRead) -> Shelf:
    """The shelf with its list of one kind replaced; the first lathe or press is the one used."""
    entries: Any = read.entries
    changes: dict[str, dict[str, Any]] = {
        "mandrels": {"mandrels": entries, "stated": True},
        "lathes": {"lathes": entries, "machine": entries[0]},
        "presses": {"presses": entries},
    }
    changed = replace(shelf, **changes.get(read.kind, {read.kind: entries}))
    if read.kind != "presses":
        return changed
    return replace(changed, press=entries[0].called, press_force=entries[0].force)


def import_lines(done: Imported) -> list[str]:
    """How the file was understood, in sentences."""
    read = done.read
    bad = f", {len(read.bad)} bad" if read.bad else ""
    empty = f", {read.empty_rows} empty passed over" if read.empty_rows else ""
    how = "guessed" if read.guessed else "as told"
    said = [
        f"{read.file}, cells parted by {SEPARATORS[read.separator]}: {read.rows} rows,"
        f" {len(read.entries)} {read.kind} read{bad}{empty}.",
        f"Columns, {how}: {', '.join(m.words for m in read.columns)}.",
    ]
    if read.unread:
        said.append(f"Not read: {', '.join(read.unread)}.")
    return [one_line(line) for line in (*said, *(f"Doubt, {doubt}" for doubt in done.doubts))]


def import_object(done: Imported, written: str | None) -> dict[str, Any]:
    """The same as one JSON object; `shelf_file` is the TOML text."""
    read = done.read
    return {
        "kind": read.kind,
        "rows": read.rows,
        "good": len(read.entries),
        "bad": [{"line": row.line, "reason": row.reason} for row in read.bad],
        "empty_rows": read.empty_rows,
        "separator": SEPARATORS[read.separator],
        "columns": {m.field.key: m.header for m in read.columns},
        "guessed": read.guessed,
        "not_read": list(read.unread),
        "doubts": [{"of": doubt.of, "what": doubt.what} for doubt in done.doubts],
        "written": written,
        "shelf_file": done.text,
    }


def _check_bad(read: CsvRead, keep_good: bool) -> None:
    if not read.bad or (keep_good and read.entries):
        return
    count = len(read.bad)
    lines = ", ".join(str(row.line) for row in read.bad[:LINES_NAMED])
    more = f" and {count - LINES_NAMED} more" if count > LINES_NAMED else ""
    rows = "1 bad row" if count == 1 else f"{count} bad rows"
    place = f"on line {lines}" if count == 1 else f"on lines {lines}{more}"
    found = f"{rows} of {read.rows}, {place}, the first for its {read.bad[0].in_brackets}"
    good = len(read.entries)
    allowed = f"rows that all read, or --keep-good to take the other {good} and list every bad row"
    raise RefusedInput(read.file, found, allowed if good else "at least one row that reads")


def _there(into: str) -> bool:
    try:
        return Path(into).is_file()
    except (OSError, ValueError):
        return False
