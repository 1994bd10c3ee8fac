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


def _cutter(row: Row) -> GearCutter:
    return GearCutter(
        module=row.number("module"),
        diameter=row.number("diameter"),
        teeth=round(row.number("teeth")),
        source=row.text("source"),
    )
