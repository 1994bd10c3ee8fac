"""What a change to the part costs: time for one piece, and what of the drawing it touches."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.reference.ranges import Range, range_of
from borewright.reference.table import Row


@dataclass(frozen=True, slots=True)
class PartChange:
    """A change to the blank or to the order of work; `time` in seconds for one piece."""

    id: str
    time: Range
    drawing: str


def part_change_of(row: Row) -> PartChange:
    """The record in a row of the table `part_changes`."""
    return PartChange(row.text("id"), range_of(row), row.text("drawing"))
