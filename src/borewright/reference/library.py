"""Looking things up: every table behind one object, each read on first use."""

from __future__ import annotations

import os
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path
from typing import Any, TypeVar

from borewright.errors import UnknownName, UnreadableFile
from borewright.quantities.si import Metre
from borewright.reference.certificate import read_certificate
from borewright.reference.checks import check_rows, index_rows
from borewright.reference.cutting import (
    CutDefaults,
    CuttingRatio,
    Kienzle,
    cut_defaults_of,
    cutting_ratio_of,
    kienzle_of,
)
from borewright.reference.friction import Friction, friction_of
from borewright.reference.guidance import (
    Formula,
    Hazard,
    Threshold,
    formula_of,
    hazards_of,
    threshold_of,
)
from borewright.reference.making_lookups import MakingLookups
from borewright.reference.mandrels import PlainMandrel, mandrel_of
from borewright.reference.materials import (
    BroadMaterial,
    Material,
    broad_material_of,
    material_of,
)
from borewright.reference.names import find
from borewright.reference.part_changes import PartChange, part_change_of
from borewright.reference.provenance import Source, source_of
from borewright.reference.ranges import Range, range_of
from borewright.reference.shop import Gauge, Press, Way, gauge_of, press_of, way_of
from borewright.reference.table import Table, read_rows

Looked = TypeVar("Looked")

DATA = Path(__file__).parent / "data"
SETTING = "BOREWRIGHT_TABLES"


class Tables(MakingLookups):
    """The built-in tables, with those of a folder of your own in their place.

    A CSV file in `directory` replaces the built-in table of that name and must have the same
    columns; only `sources.csv` adds to the built-in list instead, because every table cites it.
    Refuses with `UnreadableFile` a folder or table it cannot use, with `UnknownName` a name it
    does not know.

    >>> Tables().material("Mild Steel").id
    'steel-1018'
    >>> Tables().friction("al-6061-t6", "oiled").mu_on.best
    0.12
    >>> Tables().drill("#7").as_named
    '0.2010 in'
    """

    def __init__(self, directory: Path | None = None) -> None:
        self.directory = directory
        self._own = _own_files(directory)
        self._read: dict[str, Table] = {}
        self._materials: dict[str, Material] = {}
        self._thresholds: dict[str, Threshold] = {}
        self._ranges: dict[tuple[str, str], Range] = {}
        self._kept: dict[tuple[str, ...], Any] = {}

    @property
    def has_own(self) -> bool:
        """True where a folder of own tables stands in for any of ours."""
        return bool(self._own)

    def table(self, name: str) -> Table:
        """One table; the user's own are checked against the certificate when first asked for."""
        if name not in self._read:
            if name not in table_names():
                raise UnknownName("table", name, table_names())
            self._read[name] = self._load(name)
        return self._read[name]

    def source(self, name: str) -> Source:
        """Where a number comes from."""
        return source_of(self.table("sources").row(name))

    def material(self, name: str) -> Material:
        """A material by id, trade, UK or plain name."""
        if name not in self._materials:
            self._materials[name] = material_of(find(self.table("materials"), name, "material"))
        return self._materials[name]

    def broad_material(self, name: str) -> BroadMaterial | None:
        """What is taken for a word that leaves the material open; None for one that does not.

        >>> from borewright.reference import tables
        >>> word = tables().broad_material("Aluminum")
        >>> word.taken("bar"), word.taken("unknown"), tables().broad_material("6061")
        ('al-6061-t6', 'al-scrap-cast', None)
        """
        try:
            row = find(self.table("broad_materials"), name, "material")
        except UnknownName:
            return None
        return broad_material_of(row)

    def work_materials(self) -> tuple[str, ...]:
        """Ids of the materials that work is made of."""
        return tuple(r.text("id") for r in self.table("materials").rows if r.text("use") == "work")

    def material_range(self, material: str, quantity: str) -> Range:
        """modulus, poisson, expansion, density, heat_capacity, conductivity, yield or tensile."""
        key = ("property", material, quantity)
        return self._once(
            key,
            lambda: range_of(
                self.table("material_properties").row(self.material(material).id, quantity)
            ),
        )

    def friction(self, material: str, lubrication: str = "oiled") -> Friction:
        """Friction on a hard ground mandrel, by material or by family."""
        return self._once(
            ("friction", material, lubrication), lambda: self._friction(material, lubrication)
        )

    def _friction(self, material: str, lubrication: str) -> Friction:
        table = self.table("friction")
        family = material if material in table.column("family") else self.material(material).family
        return friction_of(table, family, lubrication)

    def kienzle(self, material: str) -> Kienzle:
        """Cutting-force constants."""
        name = self.material(material).id
        return self._once(("kienzle", name), lambda: kienzle_of(self.table("kienzle").row(name)))

    def cutting_ratio(self, material: str) -> CuttingRatio:
        """Feed and passive force beside the cutting force."""
        kind = self.material(material).cut_class
        return self._once(
            ("ratio", kind), lambda: cutting_ratio_of(self.table("cutting_ratios"), kind)
        )

    def cutting_correction(self, name: str) -> Range:
        """rake_per_radian, tool_wear, hss_tool, interrupted_impact, least_chip, nose_radius, …"""
        return self.ranged("cutting_corrections", name)

    def cutting_speed(self, material: str, tool: str = "hss") -> Range:
        """Surface speed in m/s for a tool of hss or carbide."""
        name = self.material(material).id
        return self._once(
            ("speed", name, tool), lambda: range_of(self.table("cutting_speeds").row(name, tool))
        )

    def cut_defaults(self, material: str) -> CutDefaults:
        """Depth and feed when nobody states them."""
        kind = self.material(material).cut_class
        return self._once(
            ("defaults", kind), lambda: cut_defaults_of(self.table("cut_defaults").row(kind))
        )

    def roughness(self, process: str) -> Range:
        """Rz in metres of a surface made by this process."""
        return range_of(find(self.table("roughness"), process, "made by"))

    def roughness_id(self, process: str) -> str:
        """The id of a way of making a bore, by any of its names."""
        return find(self.table("roughness"), process, "made by").text("id")

    def gauge(self, name: str) -> Gauge:
        """What a way of measuring a bore is worth."""
        return gauge_of(find(self.table("gauges"), name, "measured with"))

    def press(self, name: str) -> Press:
        """What presses the work on."""
        return press_of(find(self.table("presses"), name, "press"))

    def way(self, name: str) -> Way:
        """A way of holding, by any of its names."""
        return way_of(find(self.table("ways"), name, "way of holding"))

    def ways(self) -> tuple[Way, ...]:
        """Every way of holding, computed or only named."""
        return tuple(way_of(row) for row in self.table("ways").rows)

    def allowance(self, name: str) -> Range:
        """A reserve, usual value or factor."""
        return self.ranged("allowances", name)

    def threshold(self, question: str) -> Threshold:
        """Where yes ends and no begins for a question of the plan."""
        if question not in self._thresholds:
            self._thresholds[question] = threshold_of(self.table("thresholds").row(question))
        return self._thresholds[question]

    def part_change(self, name: str) -> PartChange:
        """What a change to the part costs."""
        return part_change_of(self.table("part_changes").row(name))

    def formula(self, name: str) -> Formula:
        """The pencil rule behind a figure."""
        return formula_of(self.table("formulas").row(name))

    def cautions(self, *tags: str, material: str = "") -> tuple[Hazard, ...]:
        """Hazards of an operation (mandrel, press, facing, …) and of a material, worst first."""
        if not material:
            return hazards_of(self.table("cautions"), tags, ())
        stuff = self.material(material)
        return hazards_of(self.table("cautions"), (*tags, stuff.behaviour), stuff.cautions)

    def mandrel_row(self, nominal: Metre) -> PlainMandrel:
        """What an unmeasured plain mandrel of this nominal size probably is."""
        return mandrel_of(self.table("plain_mandrels"), nominal)

    def ranged(self, table: str, name: str) -> Range:
        """A row of a table of ranges, kept once read."""
        if (table, name) not in self._ranges:
            self._ranges[table, name] = range_of(self.table(table).row(name))
        return self._ranges[table, name]

    def _once(self, key: tuple[str, ...], made: Callable[[], Looked]) -> Looked:
        """A record looked up once and kept."""
        if key not in self._kept:
            self._kept[key] = made()
        kept: Looked = self._kept[key]
        return kept

    def _load(self, name: str) -> Table:
        certificate = read_certificate(DATA, name)
        own = self._own.get(name)
        rows = read_rows(own or DATA / f"{name}.csv", certificate)
        if name == "sources" and own:
            rows = (*read_rows(DATA / "sources.csv", certificate), *rows)
        if own:
            # Ours are checked by a test: at every start it would only cost time.
            named = name != "sources"
            known = frozenset(self.table("sources").column("id")) if named else frozenset()
            check_rows(rows, certificate, known)
        return Table(certificate, rows, index_rows(rows, certificate), own=own is not None)


@lru_cache(maxsize=1)
def table_names() -> tuple[str, ...]:
    """Every table there is.

    >>> "friction" in table_names()
    True
    """
    return tuple(sorted(path.stem for path in DATA.glob("*.csv")))


def tables() -> Tables:
    """The tables in use: built in, or with those of the folder that BOREWRIGHT_TABLES names.

    The same object each time; a file changed while the program runs is not read again.
    """
    return _tables_of(os.environ.get(SETTING, ""))


@lru_cache(maxsize=8)
def _tables_of(directory: str) -> Tables:
    return Tables(Path(directory) if directory else None)


def _is_folder(directory: Path) -> bool:
    try:
        return directory.is_dir()
    except (OSError, ValueError):
        return False


def _own_files(directory: Path | None) -> dict[str, Path]:
    if directory is None:
        return {}
    if not _is_folder(directory):
        raise UnreadableFile("folder of tables", str(directory)[:80], "an existing folder")
    own = {path.stem: path for path in sorted(directory.glob("*.csv"))}
    for name in own:
        if name not in table_names():
            raise UnknownName(f"folder of tables, {name}.csv", name, table_names())
    return own
