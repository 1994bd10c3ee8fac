"""Stock on a casting by habit and by a standard; what melting and pouring take, metal by metal."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.errors import OutsideModel, UnknownName
from borewright.quantities.si import Kelvin, Metre
from borewright.reference.ranges import Range, range_of
from borewright.reference.table import Row, Table

SAME: Metre = 1e-9
"""A size of 40 mm belongs to the band that ends there, whatever its last binary digit."""


@dataclass(frozen=True, slots=True)
class CastingStock:
    """Metal to come off one face (m), by habit and by a standard, with what each is called."""

    place: str
    habit: Metre
    habit_said: str
    standard: Metre
    standard_said: str
    sources: tuple[str, str]

    @property
    def more(self) -> Metre:
        """The larger of the two."""
        return max(self.habit, self.standard)


@dataclass(frozen=True, slots=True)
class FoundryMetal:
    """A metal at the furnace: shares, each a range, and what a caster must know of it.

    `pour`: usual heat at the pour (K), for heavy and for thin sections. `small_shop`: else
    it is work for a foundry. `swells`: it feeds itself as it freezes, or nearly.
    """

    family: str
    yield_share: Range
    loss: Range
    scrap: Range
    note: str
    pour: tuple[Kelvin, Kelvin]
    small_shop: bool
    swells: bool


@dataclass(frozen=True, slots=True)
class NotForCasting:
    """Why a material is none that a caster would choose, and one near it that is."""

    material: str
    instead: str
    source: str
    note: str


def not_for_casting_of(table: Table, material: str) -> NotForCasting | None:
    """The row of a material (its id); None for one that is cast, or whose family says enough."""
    row = table.index.get((material,))
    if row is None:
        return None
    return NotForCasting(material, row.text("instead"), row.text("source"), row.text("note"))


def casting_stock_of(table: Table, family: str, place: str, largest: Metre) -> CastingStock:
    """Stock at a place of the mould (side, down, up, bore) of a casting of this largest size (m).

    UnknownName for a family that the table lacks, OutsideModel for a casting beyond it.
    """
    rows = [row for row in table.rows if row.text("family") == family]
    if not rows:
        families = tuple(dict.fromkeys(table.column("family")))
        raise UnknownName("material to be cast", family, families)
    habit = _banded([r for r in rows if r.text("place") == place], largest)
    standard = _banded([r for r in rows if r.text("by") == "standard"], largest)
    return CastingStock(
        place,
        habit.number("stock"),
        habit.text("as_said"),
        standard.number("stock"),
        standard.text("as_said"),
        (habit.text("source"), standard.text("source")),
    )


def foundry_metal_of(row: Row) -> FoundryMetal:
    """The record in a row of the table `foundry_metals`."""
    scrap = range_of(row, "scrap_", unit="")
    ours = Range(scrap.low, scrap.best, scrap.high, "", row.text("scrap_source"))
    given, lost = (range_of(row, f"{name}_", unit="") for name in ("yield", "loss"))
    pour = row.number("pour_low"), row.number("pour_high")
    return FoundryMetal(
        row.text("family"),
        given,
        lost,
        ours,
        row.text("note"),
        pour,
        row.yes("small_shop"),
        row.yes("swells"),
    )


def _banded(rows: list[Row], largest: Metre) -> Row:
    for row in rows:
        if row.number("over") + SAME < largest <= row.number("up_to") + SAME:
            return row
    most = max(row.number("up_to") for row in rows)
    raise OutsideModel("size of the casting", f"{largest:.4g} m", f"at most {most:g} m")
