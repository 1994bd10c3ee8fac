"""What one cut asks of whatever holds the work, as draws."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from borewright.answer.records import Cut, Demand, Draws
from borewright.answer.streams import Stream, positive
from borewright.cutting.directions import TIGHTENS
from borewright.cutting.knock import NO_KNOCK
from borewright.cutting.load_demand import engaged, gear_demand, grind_demand
from borewright.mechanics.kienzle import Chip, chip_of, feed_and_passive, kienzle_force
from borewright.mechanics.milling import chip_thickness
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

PER_SQUARE_MILLIMETRE = 1e6
"""The table gives k_c1.1 in N/mm², as it is printed everywhere."""


def demand_of(cut: Cut, material: str, tables: Tables, knock: Range = NO_KNOCK) -> Demand:
    """Torque (N·m) about the axis, signed axial force, radial and tangential force (N) of a cut.

    `knock`: peak over steady force where something interrupts it.
    """
    if cut.kind == "grind":
        return grind_demand(cut, material, tables)
    if cut.kind == "gear":
        return gear_demand(cut, *_hss_force(material, tables), tables)
    return demand_from(cut, edge_forces(material, tables, knock))


@dataclass(frozen=True, slots=True, eq=False)
class EdgeForces:
    """What does not change from cut to cut of one metal: k_c11 (Pa) with all factors and the ratio
    of feed and passive force to it, as draws; the exponent and the least passive share."""

    kc11: Draws
    exponent: float
    resultant: Draws
    least_passive: float


@lru_cache(maxsize=64)
def edge_forces(material: str, tables: Tables, knock: Range = NO_KNOCK) -> EdgeForces:
    """Those of a lathe tool in this metal; `knock` as in `demand_of`. Kept: do not write to it."""
    k, ratios = tables.kienzle(material), tables.cutting_ratio(material)
    wear = _draws(tables.cutting_correction("tool_wear"), Stream.CUTTING)
    kc11 = _draws(k.kc11, Stream.CUTTING) * PER_SQUARE_MILLIMETRE * wear
    factor = _tool_factor(tables, material) * _draws(knock, Stream.CUTTING)
    return EdgeForces(
        np.asarray(kc11 * factor),
        k.mc.best,
        _draws(ratios.resultant, Stream.RESULTANT),
        ratios.least_passive.best,
    )


def chip_taken(cut: Cut) -> Chip:
    """The chip of a lathe cut; of an edge that of the whole slope, as wide as it is at the end."""
    width = math.sqrt(2) * cut.depth if cut.kind == "edge" else cut.depth
    return chip_of(width, cut.feed, cut.edge_angle, cut.nose_radius)


def demand_from(cut: Cut, forces: EdgeForces) -> Demand:
    """What a lathe cut asks, from the forces of its metal."""
    chip = chip_taken(cut)
    force = np.asarray(kienzle_force(chip, forces.kc11, forces.exponent))
    split = feed_and_passive(force, chip, forces.resultant, forces.least_passive)
    feed, passive = np.asarray(split[0]), np.asarray(split[1])
    if cut.kind == "groove":  # the tool goes straight in: all of it presses across the work
        along, across = np.zeros_like(force), feed
    elif cut.kind == "edge":  # straight into a slope of 45 degrees: half of it either way
        along = across = feed / math.sqrt(2)
    else:
        along, across = (passive, feed) if cut.kind == "face" else (feed, passive)
    sign = 1.0 if cut.seat_effect == TIGHTENS else -1.0
    radius = cut.diameter / 2
    torque, power = np.asarray(force * radius), np.asarray(force * cut.cutting_speed)
    return Demand(cut.id, torque, sign * along, across, force, radius, power)


def _hss_force(material: str, tables: Tables) -> tuple[Draws, float]:
    """k_c11 (Pa) with the factors for a worn form cutter of high-speed steel, and the exponent."""
    k = tables.kienzle(material)
    kc11 = _draws(k.kc11, Stream.CUTTING) * PER_SQUARE_MILLIMETRE
    wear = _draws(tables.cutting_correction("tool_wear"), Stream.CUTTING)
    return np.asarray(kc11 * wear * tables.cutting_correction("hss_tool").best), k.mc.best


def force_factors(material: str, tables: Tables) -> float:
    """The likely product of the factors for a worn tool and for its kind."""
    return tables.cutting_correction("tool_wear").best * _tool_factor(tables, material)


def form_cutter_factors(tables: Tables) -> float:
    """The same for a form cutter: of high-speed steel, whatever the metal is turned with."""
    correction = tables.cutting_correction
    return correction("tool_wear").best * correction("hss_tool").best


def chip_is_thin(cut: Cut, tables: Tables) -> bool:
    """True where the chip is thinner than the force law was fitted for."""
    if cut.kind == "grind":
        return False
    if cut.kind == "gear":
        arc, width, edge = engaged(cut)
        thickness = chip_thickness(cut.feed, arc) * width / edge
    else:
        thickness = chip_taken(cut).thickness
    return thickness < tables.cutting_correction("least_chip").best * (1 - 1e-9)


def _tool_factor(tables: Tables, material: str) -> float:
    tool = tables.cut_defaults(material).tool
    return tables.cutting_correction("hss_tool").best if tool == "hss" else 1.0


def _draws(r: Range, stream: Stream) -> Draws:
    return positive(r.low, r.best, r.high, stream)
