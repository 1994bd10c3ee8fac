"""What guides an answer: where yes ends, the pencil rules, and the cautions."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import inf

from borewright.reference.table import Row, Table


@dataclass(frozen=True, slots=True)
class Threshold:
    """Least margins, likely and low, for yes and for with care. −inf where none is asked."""

    question: str
    yes_likely: float
    yes_low: float
    care_likely: float
    care_low: float
    source: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Formula:
    """A rule as a pencil check, with its symbols, source and weakness."""

    id: str
    title: str
    rule: str
    symbols: str
    source: str
    weakness: str


@dataclass(frozen=True, slots=True)
class Hazard:
    """One caution; a lower `order` is worse and is said first."""

    id: str
    applies_to: tuple[str, ...]
    order: float
    text: str
    source: str


def threshold_of(row: Row) -> Threshold:
    """The record in a row of the table `thresholds`."""
    asked = row.text("care_low")
    return Threshold(
        question=row.text("question"),
        yes_likely=row.number("yes_likely"),
        yes_low=row.number("yes_low"),
        care_likely=row.number("care_likely"),
        care_low=float(asked) if asked else -inf,
        source=row.text("source"),
        note=row.text("note"),
    )


def formula_of(row: Row) -> Formula:
    """The record in a row of the table `formulas`."""
    return Formula(
        id=row.text("id"),
        title=row.text("title"),
        rule=row.text("rule"),
        symbols=row.text("symbols"),
        source=row.text("source"),
        weakness=row.text("weakness"),
    )


def hazards_of(table: Table, tags: Iterable[str], ids: Iterable[str]) -> tuple[Hazard, ...]:
    """Those with all of their tags present, worst first.

    A material that names a row in `ids` gives the first of its tags: what the material is. The rest
    are of the operation, and must be among `tags`.
    """
    rows, named = [_hazard(row) for row in table.rows], set(ids)
    present = {*tags, "always", *(h.applies_to[0] for h in rows if h.id in named)}
    called = (h for h in rows if set(h.applies_to) <= present)
    return tuple(sorted(called, key=lambda h: h.order))


def _hazard(row: Row) -> Hazard:
    tags, order = row.names("applies_to"), row.number("order")
    return Hazard(row.text("id"), tags, order, row.text("text"), row.text("source"))
