"""Sizes of a table as a shop reads them: inches for inch rows, mm for metric ones, alike by column.

Only for tables whose rows are named by a size; JSON keeps metres. Nominal sizes stand as fractions
of an inch, every other inch size as a decimal with as many places as its column needs.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from borewright.quantities.inch_fractions import mixed_text, sixty_fourth
from borewright.quantities.rounding import fixed, is_exact
from borewright.reference.certificate import Column

NAMED_BY: Final = "size"
NOMINAL: Final = "nominal"
MOST_PLACES: Final = 6
UNITS: Final = {" in": ("in", 0.0254), " mm": ("mm", 0.001)}
"""The end of a size's name, the unit it is shown in, and that unit in metres."""

Rows = tuple[tuple[str, ...], ...]


def unit_of_rows(columns: Sequence[Column], rows: Rows) -> tuple[str, float] | None:
    """The unit that every row's size is named in, with its metres; None where they have none."""
    names = [column.name for column in columns]
    if NAMED_BY not in names or not rows:
        return None
    sizes = [row[names.index(NAMED_BY)] for row in rows]
    return next((u for end, u in UNITS.items() if all(s.endswith(end) for s in sizes)), None)


def in_shop_units(columns: Sequence[Column], rows: Rows) -> tuple[tuple[Column, ...], Rows]:
    """The columns and rows with every length in the unit that the rows are named in.

    >>> size = Column("size", "text", "none", ""), Column("nominal", "number", "m", "")
    >>> end = Column("end", "number", "m", "")
    >>> rows = (("1/2 in", "0.0127", "0.0111125"), ("1 in", "0.0254", "0.0254"))
    >>> in_shop_units((*size, end), rows)[1]
    (('1/2 in', '1/2', '0.4375'), ('1 in', '1', '1.0000'))
    """
    unit = unit_of_rows(columns, rows)
    if unit is None:
        return tuple(columns), rows
    name, metres = unit
    by_column = [
        _shown(column.name, cells, name, metres) if column.unit == "m" else cells
        for column, cells in zip(columns, zip(*rows, strict=True), strict=True)
    ]
    return tuple(_in(column, name) for column in columns), tuple(zip(*by_column, strict=True))


def _in(column: Column, unit: str) -> Column:
    if column.unit != "m":
        return column
    return Column(column.name, column.kind, unit, column.meaning, column.least, column.choices)


def _shown(name: str, cells: Sequence[str], unit: str, metres: float) -> tuple[str, ...]:
    sizes = [float(cell) / metres if cell else None for cell in cells]
    if name == NOMINAL and unit == "in":
        fractions = [None if size is None else sixty_fourth(size) for size in sizes]
        if None not in fractions:
            return tuple(mixed_text(f) for f in fractions if f is not None)
    places = _places([size for size in sizes if size is not None])
    return tuple("" if size is None else fixed(size, places) for size in sizes)


def _places(sizes: Sequence[float]) -> int:
    """As many as say every size of the column in full."""
    full = (p for p in range(MOST_PLACES) if all(is_exact(size, p) for size in sizes))
    return next(full, MOST_PLACES)
