"""What may be behind work that is out of true, by what shows, where and when."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.errors import UnknownName
from borewright.reference.table import Row, Table

WHERE = ("rim", "face")
HIGHS = ("1", "2", "3", "many")
SHAPES = ("taper", "bell", "barrel", "chatter")
SHOWS = (*HIGHS, *SHAPES)
WHEN = ("while-held", "after-release", "turned-on-mandrel", "on-its-shaft")
"""The words of the table's three columns; `any` in a row stands for all of them."""


@dataclass(frozen=True, slots=True)
class Cause:
    """One likely cause, the next check at the machine, and what mends it."""

    id: str
    cause: str
    check: str
    mend: str
    source: str


def causes_of(
    table: Table, where: str | None, shows: str | None, when: str | None
) -> tuple[Cause, ...]:
    """Causes of what is seen, likeliest first; None leaves one of the three open.

    UnknownName for a word that is not one of the table's.
    """
    asked = {"where": _known(where, WHERE), "shows": _known(shows, SHOWS)}
    asked["when"] = _known(when, WHEN)
    found = [row for row in table.rows if all(_fits(row, *pair) for pair in asked.items())]
    return tuple(_cause(row) for row in sorted(found, key=lambda row: row.number("order")))


def _known(word: str | None, words: tuple[str, ...]) -> str | None:
    if word is not None and word not in words:
        raise UnknownName("what is out of true", word, words)
    return word


def _fits(row: Row, column: str, word: str | None) -> bool:
    names = row.names(column)
    return word is None or word in names or "any" in names


def _cause(row: Row) -> Cause:
    return Cause(*(row.text(name) for name in ("id", "cause", "check", "mend", "source")))
