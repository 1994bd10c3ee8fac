"""What every table must pass when it is read: numbers, bands, units, sources, unlike keys."""

from __future__ import annotations

from collections.abc import Container
from math import isfinite

from borewright.errors import UnreadableFile
from borewright.reference.certificate import Certificate, Column
from borewright.reference.table import Row


def check_rows(rows: tuple[Row, ...], certificate: Certificate, sources: Container[str]) -> None:
    """Refuse, with `UnreadableFile`, the first row that breaks a rule of the certificate."""
    if not rows:
        raise UnreadableFile(f"{certificate.table}.csv", "no rows", "at least one row")
    bands = _bands(certificate)
    for row in rows:
        for column in certificate.columns:
            _check_cell(row, column, sources)
        for band in bands:
            _check_band(row, band)
        _check_unit(row, certificate)


def index_rows(rows: tuple[Row, ...], certificate: Certificate) -> dict[tuple[str, ...], Row]:
    """The rows by their key columns; `UnreadableFile` where two rows share one key."""
    index: dict[tuple[str, ...], Row] = {}
    for row in rows:
        key = tuple(row.text(name) for name in certificate.key)
        if key in index:
            raise UnreadableFile(row.where, f"{', '.join(key)} a second time", "one row for each")
        index[key] = row
    return index


def _check_cell(row: Row, column: Column, sources: Container[str]) -> None:
    cell, where = row.text(column.name), f"{row.where}, column {column.name}"
    if column.kind in ("number", "number-or-empty"):
        _check_number(where, cell, column)
    elif column.kind == "source" and cell not in sources:
        raise UnreadableFile(where, repr(cell), "an id of the table sources")
    elif column.kind == "yes-no" and cell not in ("yes", "no"):
        raise UnreadableFile(where, repr(cell), "yes or no")
    elif column.kind == "text" and not cell:
        raise UnreadableFile(where, "an empty cell", "some text")
    if column.choices and cell not in column.choices:
        raise UnreadableFile(where, repr(cell), "one of: " + ", ".join(column.choices))


def _check_number(where: str, cell: str, column: Column) -> None:
    if not cell and column.kind == "number-or-empty":
        return
    try:
        value = float(cell)
    except ValueError:
        raise UnreadableFile(where, repr(cell), "a number") from None
    if not isfinite(value) or (column.least is not None and value < column.least):
        floor = "" if column.least is None else f" of {column.least:g} or more"
        raise UnreadableFile(where, cell, f"a finite number{floor}")


def _bands(certificate: Certificate) -> tuple[tuple[str, str, str], ...]:
    heads = [name.removesuffix("low") for name in certificate.headers if name.endswith("low")]
    triples = ((f"{head}low", f"{head}best", f"{head}high") for head in heads)
    return tuple(t for t in triples if set(t) <= set(certificate.headers))


def _check_band(row: Row, band: tuple[str, str, str]) -> None:
    low, best, high = (row.number(name) for name in band)
    if not low <= best <= high:
        raise UnreadableFile(row.where, f"{low:g}, {best:g}, {high:g}", "low <= best <= high")


def _check_unit(row: Row, certificate: Certificate) -> None:
    if not certificate.unit_of:
        return
    of = row.text(certificate.unit_of)
    if of not in certificate.units:
        allowed = "one of: " + ", ".join(certificate.units)
        raise UnreadableFile(f"{row.where}, column {certificate.unit_of}", repr(of), allowed)
    unit = certificate.units[of]
    if row.text("unit") != unit:
        raise UnreadableFile(f"{row.where}, column unit", repr(row.text("unit")), repr(unit))
