"""Where a number comes from, as a record that can be printed beside it."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.reference.table import Row

SOURCE_KINDS = ("published", "standard", "practice", "memory", "ours")


@dataclass(frozen=True, slots=True)
class Source:
    """One source. `kind` is one of `SOURCE_KINDS`; `note` says what it is cited for."""

    id: str
    kind: str
    citation: str
    note: str


def source_of(row: Row) -> Source:
    """The record in a row of the table `sources`."""
    return Source(row.text("id"), row.text("kind"), row.text("citation"), row.text("note"))
