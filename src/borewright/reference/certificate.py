"""The birth certificate of a table: what it answers, where it comes from, what a column means."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

KINDS = ("text", "names", "note", "number", "number-or-empty", "yes-no", "unit", "source")
"""What a column may hold. `names` are separated by ;, `source` is an id of the table `sources`."""


@dataclass(frozen=True, slots=True)
class Column:
    """One column. `unit` is an SI symbol, "" for a plain ratio, "none" where it is no number.

    `least` is the smallest number allowed, `choices` the only words allowed, where there are any.
    """

    name: str
    kind: str
    unit: str
    meaning: str
    least: float | None = None
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Certificate:
    """What is known of a table. `kind` is measured, defined, practice, memory, ours or mixed.

    `key` names the columns that tell one row from another. Where rows differ in unit, `unit_of`
    names the column that decides it and `units` says which unit each of its values has.
    """

    table: str
    title: str
    answers: str
    version: int
    kind: str
    provenance: str
    uncertainty: str
    licence: str
    key: tuple[str, ...]
    columns: tuple[Column, ...]
    unit_of: str
    units: dict[str, str]

    @property
    def headers(self) -> tuple[str, ...]:
        """The column names, in the order of the file."""
        return tuple(column.name for column in self.columns)


def read_certificate(data: Path, table: str) -> Certificate:
    """Read `table`.toml in the folder `data`.

    >>> read_certificate(Path(__file__).parent / "data", "friction").key
    ('family', 'lubrication', 'quantity')
    """
    stated: dict[str, Any] = tomllib.loads((data / f"{table}.toml").read_text("utf-8"))
    return Certificate(
        table=table,
        title=stated["title"],
        answers=stated["answers"],
        version=stated["version"],
        kind=stated["kind"],
        provenance=stated["provenance"],
        uncertainty=stated["uncertainty"],
        licence=stated["licence"],
        key=tuple(stated["key"]),
        columns=tuple(_column(column) for column in stated["columns"]),
        unit_of=stated.get("unit_of", ""),
        units=stated.get("units", {}),
    )


def _column(stated: dict[str, Any]) -> Column:
    return Column(**{**stated, "choices": tuple(stated.get("choices", ()))})
