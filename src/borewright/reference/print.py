"""A table made ready to show: headers with units, rows, certificate, and the sources it cites."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Any

from borewright.reference.certificate import Certificate, Column
from borewright.reference.library import Tables, tables
from borewright.reference.provenance import Source
from borewright.reference.shown_sizes import in_shop_units
from borewright.reference.table import Table


@dataclass(frozen=True, slots=True)
class TableView:
    """One table as a reader sees it. `own` tells that a shop's own file stands in its place."""

    name: str
    certificate: Certificate
    rows: tuple[tuple[str, ...], ...]
    sources: tuple[Source, ...]
    own: bool

    @property
    def headers(self) -> tuple[str, ...]:
        """Column heads with their unit, as in `ground_length [m]`."""
        return tuple(_head(column) for column in self.certificate.columns)

    def as_dict(self) -> dict[str, Any]:
        """Plain values for JSON; each row under its column names, numbers as numbers."""
        columns = self.certificate.columns
        return {
            "table": self.name,
            "own": self.own,
            "certificate": asdict(self.certificate),
            "rows": [
                {c.name: _value(c, cell) for c, cell in zip(columns, row, strict=True)}
                for row in self.rows
            ],
            "sources": [asdict(source) for source in self.sources],
        }


def describe_table(name: str, library: Tables | None = None) -> TableView:
    """The view of one table; `UnknownName` with the nearest when there is none of that name.

    Words of a name may be apart, or joined by a hyphen.

    >>> describe_table("thresholds").headers[:2], describe_table("plain-mandrels").name
    (('question', 'yes_likely'), 'plain_mandrels')
    """
    library = library or tables()
    name = "_".join(name.casefold().replace("-", " ").replace("_", " ").split())
    table = library.table(name)
    rows = tuple(tuple(row.text(h) for h in table.certificate.headers) for row in table.rows)
    cited = tuple(library.source(name) for name in cited_sources(table))
    return TableView(name, table.certificate, rows, cited, table.own)


def cited_sources(table: Table) -> tuple[str, ...]:
    """The ids of `sources` that a table cites, in the order they first stand in it."""
    columns = [c.name for c in table.certificate.columns if c.kind == "source"]
    return tuple(dict.fromkeys(row.text(name) for row in table.rows for name in columns))


def table_lines(view: TableView) -> tuple[str, ...]:
    """The view as plain lines of text, columns lined up, sources below.

    Where the rows are named by a size, lengths stand in its unit instead of metres.

    >>> table_lines(describe_table("thresholds"))[0]
    'Where yes ends and no begins'
    """
    certificate = view.certificate
    about = (certificate.title, certificate.answers, certificate.provenance)
    sources = (f"  {s.id} ({s.kind}): {s.citation}. {s.note}" for s in view.sources)
    uncertainty = f"How sure: {certificate.uncertainty}"
    columns, rows = in_shop_units(certificate.columns, view.rows)
    return (
        *about,
        uncertainty,
        "",
        *_lined_up((tuple(map(_head, columns)), *rows)),
        "",
        "Sources",
        *sources,
    )


def _lined_up(rows: tuple[tuple[str, ...], ...]) -> list[str]:
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return ["  ".join(map(str.ljust, row, widths)).rstrip() for row in rows]


def _head(column: Column) -> str:
    return (
        column.name
        if column.unit in ("", "none", "see column unit")
        else f"{column.name} [{column.unit}]"
    )


def _value(column: Column, cell: str) -> str | float | bool | list[str] | None:
    if column.kind in ("number", "number-or-empty"):
        return float(cell) if cell else None
    if column.kind == "yes-no":
        return cell == "yes"
    if column.kind == "names":
        return [part.strip() for part in cell.split(";") if part.strip()]
    return cell
