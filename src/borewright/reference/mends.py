"""What a mend of a blocked cut takes, and the edges that a tool can be given."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from borewright.reference.holding import SetupMinutes, setup_minutes_of
from borewright.reference.table import Row, Table


@dataclass(frozen=True, slots=True)
class MendMinutes:
    """Minutes of a mend beside the cutting; `never`: cutting classes of metal that bear it not."""

    id: str
    minutes: SetupMinutes
    never: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToolEdge:
    """An edge that a tool can be given: `value` in m or rad, and as it is said at the bench."""

    kind: str
    value: float
    as_said: str


def mend_minutes_of(row: Row) -> MendMinutes:
    """The record in a row of the table `mend_minutes`."""
    return MendMinutes(row.text("id"), setup_minutes_of(row), row.names("never"))


def tool_edges_of(table: Table, kind: str, shop: str) -> Iterator[ToolEdge]:
    """Those of one kind that a shop (inch or mm) has, in file order."""
    for row in table.rows:
        if row.text("kind") == kind and row.text("shop") in (shop, "both"):
            yield ToolEdge(kind, row.number("value"), row.text("as_said"))
