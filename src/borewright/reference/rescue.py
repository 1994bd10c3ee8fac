"""What can be wrong with a bore or a mandrel, in the words of the trade."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.reference.table import Row


@dataclass(frozen=True, slots=True)
class Trouble:
    """`found` is what was found, as a clause; of several the one of lower `order` is said first."""

    id: str
    found: str
    order: float


def trouble_of(row: Row) -> Trouble:
    """The record in a row of the table `troubles`."""
    return Trouble(row.text("id"), row.text("found"), row.number("order"))
