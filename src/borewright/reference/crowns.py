"""The crown of a flat-belt pulley by each rule that gives one; the rules disagree."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from borewright.errors import OutsideModel, UnknownName
from borewright.quantities.si import Metre
from borewright.reference.names import plain
from borewright.reference.table import Row, Table

FIRST_CHOICES: Final = ("iso-22", "eighth-on-radius")
"""Ours. The first goes by the pulley's diameter, is written for power belts and lies between the
others; the second says something of every pulley."""

STEEPEST: Final = 1 / 24
"""Ours: the rise of 1 in per ft on diameter, beyond which a first choice is passed over. It is met
only by a face narrower than some 14 mm."""


@dataclass(frozen=True, slots=True)
class Crown:
    """What one rule asks: how far the middle of the face stands above its edges, on radius.

    `belt`: the belts that the rule is for.
    """

    rule: str
    height: Metre
    as_published: str
    source: str
    note: str = ""
    belt: str = ""


def crown_of(table: Table, rule: str, diameter: Metre, face: Metre) -> Crown:
    """The crown by one rule; `OutsideModel` where the rule says nothing of this pulley."""
    _check(diameter, face)
    name = _rule_id(table, rule)
    rows = [row for row in table.rows if row.text("rule") == name]
    for row in rows:
        if _covers(row, rows, diameter, face):
            return _crown(row, face)
    least, most = rows[0].number("diameter_from"), rows[-1].number("diameter_to")
    allowed = f"{least * 1e3:g} to {most * 1e3:g} mm by {name}"
    raise OutsideModel("pulley diameter", f"{diameter * 1e3:g} mm", allowed)


def crowns_of(table: Table, diameter: Metre, face: Metre) -> tuple[Crown, ...]:
    """The crown by every rule that says something of this pulley, lowest first."""
    _check(diameter, face)
    groups = {n: [r for r in table.rows if r.text("rule") == n] for n in rule_ids(table)}
    said = (
        next((_crown(r, face) for r in rows if _covers(r, rows, diameter, face)), None)
        for rows in groups.values()
    )
    return tuple(sorted((c for c in said if c is not None), key=lambda crown: crown.height))


def recommended(crowns: Sequence[Crown], face: Metre) -> Crown:
    """The one to take of what the rules say of a pulley: the first choice that is not too steep.

    Without one (a shop's own table, say): the middle one by height. The crowns are lowest first.
    """
    by_rule = {crown.rule: crown for crown in crowns}
    chosen = [by_rule[rule] for rule in FIRST_CHOICES if rule in by_rule]
    slight = (c for c in chosen if c.height <= STEEPEST * face / 2 * (1 + 1e-9))
    return next(slight, crowns[(len(crowns) - 1) // 2])


def rule_ids(table: Table) -> tuple[str, ...]:
    """The rules there are, in file order."""
    return tuple(dict.fromkeys(table.column("rule")))


def _rule_id(table: Table, rule: str) -> str:
    for row in table.rows:
        if plain(rule) in {plain(name) for name in (row.text("rule"), *row.names("names"))}:
            return row.text("rule")
    raise UnknownName("crown rule", rule, rule_ids(table))


def _covers(row: Row, rows: list[Row], diameter: Metre, face: Metre) -> bool:
    """Whether a row is for this pulley; rows of one diameter go from narrow to wide faces."""
    over, to, face_to = row.number("diameter_from"), row.text("diameter_to"), row.text("face_to")
    first = diameter == over == rows[0].number("diameter_from")
    wide_enough = not face_to or face <= float(face_to)
    return (diameter > over or first) and (not to or diameter <= float(to)) and wide_enough


def _crown(row: Row, face: Metre) -> Crown:
    # A slope rises from either edge to the middle, so over half of the face.
    height = row.text("height")
    rise = float(height) if height else row.number("slope") * face / 2
    rule, said = row.text("rule"), row.text("as_published")
    return Crown(rule, rise, said, row.text("source"), row.text("note"), row.text("belt"))


def _check(diameter: Metre, face: Metre) -> None:
    for what, value in (("pulley diameter", diameter), ("width of the face", face)):
        if not 0.0 < value < float("inf"):
            raise OutsideModel(what, f"{value} m", "a length above zero")
