"""Finding a row by its id or by any trade, UK or plain name."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches
from functools import lru_cache

from borewright.errors import UnknownName, UnreadableFile
from borewright.reference.table import Row, Table


@lru_cache(maxsize=8192)
def plain(name: str) -> str:
    """A name with case, spaces, hyphens, underscores and quotes ironed out.

    >>> plain("  Grey_Cast  Iron ") == plain("grey-cast-iron")
    True
    """
    kept = "".join(c if c.isalnum() or c in "./" else " " for c in name.casefold() if c not in "'’")
    return "-".join(kept.split())


def find(table: Table, name: str, where: str, rows: Iterable[Row] | None = None) -> Row:
    """The row that `name` means, else `UnknownName` with the nearest name and the ids."""
    if rows is None and not table.by_name:
        table.by_name.update(_by_name(table.rows))
    among = tuple(table.rows if rows is None else rows)
    known = table.by_name if rows is None else _by_name(among)
    row = known.get(plain(name))
    if row is None:
        ids = tuple(row.text("id") for row in among)
        near = get_close_matches(plain(name), known, n=1, cutoff=0.5)
        raise UnknownName(where, name, tuple(dict.fromkeys((*near, *ids))))
    return row


def _by_name(rows: tuple[Row, ...]) -> dict[str, Row]:
    known: dict[str, Row] = {}
    for row in rows:
        told = row.cells.get("name", "")
        for name in (row.text("id"), *row.names("names"), *([told] if told else [])):
            if known.setdefault(plain(name), row) is not row:
                raise UnreadableFile(
                    row.where, f"the name {name!r} again", "a name for one row only"
                )
    return known
