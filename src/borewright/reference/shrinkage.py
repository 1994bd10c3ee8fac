"""Pattern shrinkage: what each source says of a metal."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.errors import UnknownName
from borewright.quantities.si import MetrePerMetre
from borewright.reference.table import Row, Table


@dataclass(frozen=True, slots=True)
class Shrinkage:
    """One source's word: how much longer the pattern is than the casting, per length."""

    family: str
    shrinkage: MetrePerMetre
    as_published: str
    source: str
    note: str = ""


def shrinkages_of(table: Table, family: str) -> tuple[Shrinkage, ...]:
    """Every source's figure for a material family, least first; none is *the* figure."""
    found = [_shrinkage(row) for row in table.rows if row.text("family") == family]
    if not found:
        families = tuple(dict.fromkeys(table.column("family")))
        raise UnknownName("pattern shrinkage of", family, families)
    return tuple(sorted(found, key=lambda said: said.shrinkage))


def _shrinkage(row: Row) -> Shrinkage:
    return Shrinkage(
        family=row.text("family"),
        shrinkage=row.number("shrinkage"),
        as_published=row.text("as_published"),
        source=row.text("source"),
        note=row.text("note"),
    )
