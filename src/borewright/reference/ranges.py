"""A value with its ends and its source: what a row of a table becomes."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.reference.table import Row


@dataclass(frozen=True, slots=True)
class Range:
    """`low` and `high` are the 5 % and 95 % ends; `unit` is an SI symbol, "" for a plain ratio.

    `source` is the id behind `best`, `ends_source` the one behind the ends where it differs.
    """

    low: float
    best: float
    high: float
    unit: str
    source: str
    note: str = ""
    ends_source: str = ""

    @property
    def sources(self) -> tuple[str, ...]:
        """Every source id that the three numbers stand on.

        >>> Range(1.0, 2.0, 3.0, "N", "practice").sources
        ('practice',)
        """
        return tuple(dict.fromkeys(s for s in (self.source, self.ends_source) if s))


def range_of(row: Row, prefix: str = "", unit: str | None = None) -> Range:
    """The range in columns low, best, high of a row, or in those that begin with `prefix`."""
    return Range(
        low=row.number(f"{prefix}low"),
        best=row.number(f"{prefix}best"),
        high=row.number(f"{prefix}high"),
        unit=row.text("unit") if unit is None else unit,
        source=row.text("source"),
        note=row.cells.get("note", ""),
        ends_source=row.cells.get("ends_source", ""),
    )
