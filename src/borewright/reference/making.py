"""What a shop makes its mandrels from: steels with their heat treatment, round bar as sold."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.errors import OutsideModel
from borewright.quantities.si import Metre
from borewright.reference.centers import Center, center_of
from borewright.reference.table import Row, Table


@dataclass(frozen=True, slots=True)
class Steel:
    """A steel for mandrels. `treatment` is through, case or none; temperatures in K, None for none.
    `medium` it is quenched in: oil, water, air or nothing.

    `soak` is time at heat for 25 mm of thickness (s), `case` the depth of the skin (m).
    """

    id: str
    name: str
    material: str
    treatment: str
    harden: tuple[float, float] | None
    medium: str
    quench: str
    soak: float
    temper: tuple[float, float] | None
    hardness: str
    case: Metre | None
    source: str
    note: str

    @property
    def hard(self) -> bool:
        """Whether it is hardened at all."""
        return self.treatment != "none"


def steel_of(row: Row) -> Steel:
    """The record in a row of the table `mandrel_steels`."""
    return Steel(
        row.text("id"),
        row.text("name"),
        row.text("material"),
        row.text("treatment"),
        _pair(row, "harden"),
        row.text("medium"),
        row.text("quench"),
        row.number("soak") if row.text("soak") else 0.0,
        _pair(row, "temper"),
        row.text("hardness"),
        row.number("case") if row.text("case") else None,
        row.text("source"),
        row.text("note"),
    )


def _pair(row: Row, name: str) -> tuple[float, float] | None:
    if not row.text(f"{name}_low"):
        return None
    return row.number(f"{name}_low"), row.number(f"{name}_high")


@dataclass(frozen=True, slots=True)
class Bar:
    """A size of round bar as sold."""

    size: str
    diameter: Metre
    source: str


def bars_of(table: Table, units: Literal["inch", "mm"]) -> tuple[Bar, ...]:
    """Every size sold by these units, smallest first."""
    rows = (row for row in table.rows if row.text("units") == units)
    bars = [Bar(r.text("size"), r.number("diameter"), r.text("source")) for r in rows]
    return tuple(sorted(bars, key=lambda bar: bar.diameter))


def next_bar(bars: tuple[Bar, ...], least: Metre) -> Bar:
    """The smallest bar of at least this diameter (m). OutsideModel where none is so thick."""
    for bar in bars:
        if bar.diameter >= least - 1e-9:
            return bar
    most = f"{1000 * bars[-1].diameter:.4g} mm ({bars[-1].size}), the thickest listed"
    raise OutsideModel("round bar", f"{1000 * least:.4g} mm", f"at most {most}")


def center_within(table: Table, mouth: Metre, units: Literal["inch", "mm"]) -> Center | None:
    """The largest protected center whose mouth is at most this wide (m), else the largest plain.

    ISO 6411 for mm, the inch series for inch. None where even the smallest is too wide.
    """
    series = ("inch-bell", "inch-plain") if units == "inch" else ("iso-b", "iso-a")
    for name in series:
        found = [center_of(row) for row in table.rows if row.text("series") == name]
        within = [c for c in found if _mouth(c) <= mouth * (1 + 1e-9)]
        if within:
            return max(within, key=lambda center: center.pilot)
    return None


PLAIN_MOUTH = 2.1
"""Width of the cone of a plain inch center over its pilot, where it is made as wide as wanted."""


def _mouth(center: Center) -> Metre:
    return center.bell or center.cone or PLAIN_MOUTH * center.pilot
