"""cut: one turning cut on one material -> forces, torque, power."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.cutting.demand import PER_SQUARE_MILLIMETRE
from borewright.mechanics.kienzle import chip_of, feed_and_passive, kienzle_force
from borewright.mechanics.turning import (
    cutting_power,
    removal_rate,
    spindle_speed,
    surface_speed,
)
from borewright.quantities.si import (
    CubicMetrePerSecond,
    Metre,
    MetrePerSecond,
    Newton,
    NewtonMetre,
    Radian,
    RevPerSecond,
    Watt,
)
from borewright.reference.library import Tables
from borewright.service.fit_records import Taken, material_taken


@dataclass(frozen=True, slots=True)
class CutInput:
    """What `cut` is given. One of `surface` and `spindle` is the speed."""

    material: str
    diameter: Metre
    depth: Metre
    feed: Metre
    surface: MetrePerSecond | None = None
    spindle: RevPerSecond | None = None
    edge_angle: Radian | None = None
    nose_radius: Metre | None = None


@dataclass(frozen=True, slots=True)
class CutResult:
    """Forces on the work, torque about its axis, power at the cut."""

    cutting_force: Newton
    feed_force: Newton
    passive_force: Newton
    torque: NewtonMetre
    power: Watt
    cutting_speed: MetrePerSecond
    spindle_speed: RevPerSecond
    removal_rate: CubicMetrePerSecond
    assumed: tuple[Taken, ...]


def cut(asked: CutInput, tables: Tables) -> CutResult:
    """Kienzle force with the best constants for a sharp tool of the reference rake.

    Torque, power and cutting speed are at the outside diameter; the removal rate is taken at the
    mean diameter. UnknownName for a material that is not in the tables; RefusedInput for an edge
    angle outside 0 to 90 degrees or a cut deeper than the radius is left to the caller's reading.
    """
    taken: list[Taken] = [*material_taken(asked.material, tables)]
    angle = _or("edge_angle", asked.edge_angle, "rad", tables, taken)
    nose = asked.nose_radius
    if nose is None:
        nose = 0.0
        taken.append(Taken("nose_radius", 0.0, "m", "a sharp corner"))
    chip = chip_of(asked.depth, asked.feed, angle, nose)
    constants, ratios = tables.kienzle(asked.material), tables.cutting_ratio(asked.material)
    force = float(
        kienzle_force(chip, constants.kc11.best * PER_SQUARE_MILLIMETRE, constants.mc.best)
    )
    feed, passive = feed_and_passive(force, chip, ratios.resultant.best, ratios.least_passive.best)
    _note_constants(constants.kc11.best, constants.mc.best, constants.source, taken)
    _note_thin_chip(chip.thickness, tables, taken)
    surface = (
        asked.surface
        if asked.surface is not None
        else surface_speed(asked.spindle or 0.0, asked.diameter)
    )
    spindle = spindle_speed(surface, asked.diameter)
    return CutResult(
        cutting_force=force,
        feed_force=float(feed),
        passive_force=float(passive),
        torque=force * asked.diameter / 2,
        power=float(cutting_power(force, surface)),
        cutting_speed=surface,
        spindle_speed=spindle,
        removal_rate=removal_rate(asked.diameter, asked.depth, asked.feed, spindle),
        assumed=tuple(taken),
    )


def _or(what: str, given: float | None, unit: str, tables: Tables, taken: list[Taken]) -> float:
    if given is not None:
        return given
    usual = tables.cutting_correction(what)
    taken.append(Taken(what, usual.best, unit, usual.source))
    return usual.best


def _note_constants(kc11: float, exponent: float, source: str, taken: list[Taken]) -> None:
    taken.append(Taken("kc11", kc11 * PER_SQUARE_MILLIMETRE, "Pa", source))
    taken.append(Taken("exponent", exponent, "", source))


def _note_thin_chip(thickness: Metre, tables: Tables, taken: list[Taken]) -> None:
    least = tables.cutting_correction("least_chip")
    if thickness < least.best * (1 - 1e-9):
        what = "chip thinner than the force law was fitted for"
        taken.append(Taken(what, thickness, "m", least.source))
