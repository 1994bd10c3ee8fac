"""What cutting a material asks: force constants, side forces, everyday cuts."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.errors import UnknownName
from borewright.quantities.si import Metre, Radian
from borewright.reference.ranges import Range, range_of
from borewright.reference.table import Row, Table


@dataclass(frozen=True, slots=True)
class Kienzle:
    """Constants of F = kc11 b h^(1 - mc) for b, h in mm and F in N; `kc11` is in N/mm²."""

    material: str
    kc11: Range
    mc: Range
    reference_rake: Radian
    source: str


@dataclass(frozen=True, slots=True)
class CuttingRatio:
    """Over the cutting force: `resultant` of feed and passive force, and the `least_passive`."""

    cut_class: str
    resultant: Range
    least_passive: Range


@dataclass(frozen=True, slots=True)
class CutDefaults:
    """Depth on radius and feed per turn when nobody states them, with the tool meant."""

    cut_class: str
    rough_depth: Metre
    rough_feed: Metre
    finish_depth: Metre
    finish_feed: Metre
    tool: str
    source: str


@dataclass(frozen=True, slots=True)
class ForcePoint:
    """A raw point: specific cutting force in N/mm² at an uncut chip of this thickness."""

    material: str
    chip: Metre
    force: float
    source: str


def force_points_of(table: Table, material: str) -> tuple[ForcePoint, ...]:
    """The points of a material, thin chips first; `UnknownName` where none are kept."""
    rows = [row for row in table.rows if row.text("material") == material]
    if not rows:
        known = tuple(dict.fromkeys(table.column("material")))
        raise UnknownName("raw force points of", material, known)
    points = (
        ForcePoint(material, row.number("chip"), row.number("force"), row.text("source"))
        for row in rows
    )
    return tuple(sorted(points, key=lambda point: point.chip))


def kienzle_of(row: Row) -> Kienzle:
    """The record in a row of the table `kienzle`."""
    return Kienzle(
        material=row.text("material"),
        kc11=range_of(row, "kc11_", "N/mm²"),
        mc=range_of(row, "mc_", ""),
        reference_rake=row.number("reference_rake"),
        source=row.text("source"),
    )


def cutting_ratio_of(table: Table, cut_class: str) -> CuttingRatio:
    """Both side-force ratios of a cutting class, from the table `cutting_ratios`."""
    resultant = range_of(table.row(cut_class, "resultant"))
    return CuttingRatio(cut_class, resultant, range_of(table.row(cut_class, "least_passive")))


def cut_defaults_of(row: Row) -> CutDefaults:
    """The record in a row of the table `cut_defaults`."""
    return CutDefaults(
        cut_class=row.text("cut_class"),
        rough_depth=row.number("rough_depth"),
        rough_feed=row.number("rough_feed"),
        finish_depth=row.number("finish_depth"),
        finish_feed=row.number("finish_feed"),
        tool=row.text("tool"),
        source=row.text("source"),
    )
