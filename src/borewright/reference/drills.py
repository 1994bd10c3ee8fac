"""Drills and reamers by name, and what they do to a hole."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from borewright.quantities.si import Metre
from borewright.reference.table import Row


@dataclass(frozen=True, slots=True)
class RoundTool:
    """A drill or reamer: its name, its series and its diameter as named, not as it cuts."""

    id: str
    series: str
    size: Metre
    as_named: str
    source: str


@dataclass(frozen=True, slots=True)
class DrillSet:
    """A usual set of drills: `step` is 0 where the sizes are those of a series of names."""

    id: str
    series: str
    step: Metre
    smallest: Metre
    largest: Metre
    source: str


def drill_set_of(row: Row) -> DrillSet:
    """The record in a row of the table `drill_sets`."""
    return DrillSet(
        id=row.text("id"),
        series=row.text("series"),
        step=row.number("step"),
        smallest=row.number("smallest"),
        largest=row.number("largest"),
        source=row.text("source"),
    )


def round_tool_of(row: Row) -> RoundTool:
    """The record in a row of the table `drills` or `reamers`."""
    return RoundTool(
        id=row.text("id"),
        series=row.text("series"),
        size=row.number("size"),
        as_named=row.text("as_named"),
        source=row.text("source"),
    )


def by_size(rows: Iterable[Row], series: Iterable[str] = ()) -> tuple[RoundTool, ...]:
    """Tools from small to large; only those of `series` when any is named."""
    wanted = frozenset(series)
    found = (round_tool_of(row) for row in rows)
    kept = (tool for tool in found if not wanted or tool.series in wanted)
    return tuple(sorted(kept, key=lambda tool: (tool.size, tool.id)))
