"""Lookups of what loads a mandrel beside turning: grinding, gears, raw points of cutting force."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable
from typing import TypeVar

from borewright.quantities.si import Metre
from borewright.reference.cutting import ForcePoint, force_points_of
from borewright.reference.gears import (
    CutterNumber,
    GearCutter,
    GearTeeth,
    cutter_number_of,
    gear_cutter_of,
    gear_teeth_of,
)
from borewright.reference.materials import Material
from borewright.reference.ranges import Range, range_of
from borewright.reference.table import Table

Looked = TypeVar("Looked")


class LoadLookups(ABC):
    """The part of `Tables` that grinding and gear cutting ask, and what every part stands on."""

    @abstractmethod
    def table(self, name: str) -> Table:
        """One table, checked against its certificate."""

    @abstractmethod
    def ranged(self, table: str, name: str) -> Range:
        """A row of a table of ranges."""

    @abstractmethod
    def _once(self, key: tuple[str, ...], made: Callable[[], Looked]) -> Looked:
        """A record looked up once and kept."""

    @abstractmethod
    def material(self, name: str) -> Material:
        """A material by id, trade, UK or plain name."""

    def force_points(self, material: str) -> tuple[ForcePoint, ...]:
        """Raw points of specific cutting force, thin chips first; the fit stands in `kienzle`."""
        return force_points_of(self.table("force_points"), self.material(material).id)

    def grinding_energy(self, material: str) -> Range:
        """Specific grinding energy (J/m³); `UnknownName` for a metal not planned for grinding."""
        row = self.table("grinding_energy").row(self.material(material).cut_class)
        return range_of(row, unit="J/m³")

    def grinding(self, name: str) -> Range:
        """force_ratio, axial_share, heat_share, wheel_speed, work_speed, infeed, traverse, …"""
        return self.ranged("grinding", name)

    def gear_cutting(self, name: str) -> Range:
        """feed_per_tooth, speed_share, radial_share, impact, out_of_center, depth_error, …"""
        return self.ranged("gear_cutting", name)

    def gear_teeth(self, system: str) -> GearTeeth:
        """The full-depth teeth taken for a system of pitch: diametral-pitch or module.

        >>> from borewright.reference import tables
        >>> tables().gear_teeth("module").whole_depth
        2.25
        """
        return gear_teeth_of(self.table("gear_teeth"), system)

    def gear_cutter(self, system: str, module: Metre) -> GearCutter:
        """The usual disc cutter of the pitch nearest to this module (m).

        >>> from borewright.reference import tables
        >>> tables().gear_cutter("module", 0.002).diameter
        0.063
        """
        return gear_cutter_of(self.table("gear_cutters"), system, module)

    def gear_cutter_number(self, teeth: int) -> CutterNumber | None:
        """The cutter of the set of eight for so many teeth; None for fewer than it serves.

        >>> from borewright.reference import tables
        >>> number = tables().gear_cutter_number(24)
        >>> number.inch_number, number.module_number
        (5, 4)
        """
        return cutter_number_of(self.table("gear_cutter_numbers"), teeth)
