"""Spur gear teeth and the disc cutters that mill them."""

from __future__ import annotations

from dataclasses import dataclass
from math import log

from borewright.quantities.si import Metre, Radian
from borewright.reference.table import Row, Table

PITCH, MODULE = "diametral-pitch", "module"
"""The two systems of pitch, as the tables name them."""


@dataclass(frozen=True, slots=True)
class GearTeeth:
    """Proportions of full-depth teeth: addendum and whole depth in modules."""

    id: str
    pressure_angle: Radian
    addendum: float
    whole_depth: float
    source: str


@dataclass(frozen=True, slots=True)
class GearCutter:
    """A disc form cutter of about this module."""

    module: Metre
    diameter: Metre
    teeth: int
    source: str


@dataclass(frozen=True, slots=True)
class CutterNumber:
    """A cutter of the set of eight: the teeth it serves, and its number in either system of pitch.

    `most` is None where it serves everything up to a rack.
    """

    fewest: int
    most: int | None
    inch_number: int
    module_number: int
    source: str


def gear_teeth_of(table: Table, system: str) -> GearTeeth:
    """The teeth taken for a system of pitch, from the table `gear_teeth`."""
    row = next(r for r in table.rows if r.text("taken_for") == system)
    return GearTeeth(
        id=row.text("id"),
        pressure_angle=row.number("pressure_angle"),
        addendum=row.number("addendum"),
        whole_depth=row.number("whole_depth"),
        source=row.text("source"),
    )


def gear_cutter_of(table: Table, system: str, module: Metre) -> GearCutter:
    """The cutter of the nearest pitch of a system, from the table `gear_cutters`."""
    rows = [r for r in table.rows if r.text("system") == system]
    return _cutter(min(rows, key=lambda r: abs(log(r.number("module") / module))))


def cutter_number_of(table: Table, teeth: int) -> CutterNumber | None:
    """The cutter for so many teeth, from `gear_cutter_numbers`; None for fewer than any serves."""
    numbers = (_number(row) for row in table.rows)
    return next((n for n in numbers if n.fewest <= teeth <= (n.most or teeth)), None)


def _number(row: Row) -> CutterNumber:
    most = row.text("most")
    return CutterNumber(
        fewest=round(row.number("fewest")),
        most=int(most) if most else None,
        inch_number=round(row.number("inch_number")),
        module_number=round(row.number("module_number")),
        source=row.text("source"),
    )


def _cutter(row: Row) -> GearCutter:
    return GearCutter(
        module=row.number("module"),
        diameter=row.number("diameter"),
        teeth=round(row.number("teeth")),
        source=row.text("source"),
    )
