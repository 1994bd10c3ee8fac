"""What a process usually gives: tolerance grade and finish."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.reference.ranges import Range, range_of
from borewright.reference.table import Row


@dataclass(frozen=True, slots=True)
class Process:
    """`grade` counts in IT grades, low the finest; `ra` is in metres."""

    id: str
    grade: Range
    ra: Range


def process_of(row: Row) -> Process:
    """The record in a row of the table `process_grades`."""
    return Process(row.text("id"), range_of(row, "grade_", ""), range_of(row, "ra_", "m"))
