"""Center holes: pilot, 60 degree cone and protecting bell, by series."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.quantities.si import Metre
from borewright.reference.table import Row


@dataclass(frozen=True, slots=True)
class Center:
    """A center by name. None: as wide as wanted, not there, or not remembered."""

    id: str
    series: str
    pilot: Metre
    cone: Metre | None
    bell: Metre | None
    body: Metre | None
    as_named: str
    source: str
    note: str = ""


def center_of(row: Row) -> Center:
    """The record in a row of the table `centers`."""
    return Center(
        id=row.text("id"),
        series=row.text("series"),
        pilot=row.number("pilot"),
        cone=_given(row, "cone"),
        bell=_given(row, "bell"),
        body=_given(row, "body"),
        as_named=row.text("as_named"),
        source=row.text("source"),
        note=row.text("note"),
    )


def _given(row: Row, column: str) -> Metre | None:
    return row.number(column) if row.text(column) else None
