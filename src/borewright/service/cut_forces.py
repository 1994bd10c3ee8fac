"""cut: one turning cut on one material -> forces, torque, power."""

from __future__ import annotations

import math
from dataclasses import dataclass

from borewright.cutting.demand import PER_SQUARE_MILLIMETRE
from borewright.mechanics.kienzle import Chip, chip_of, feed_and_passive, kienzle_force
from borewright.mechanics.roughness import ridge_height
from borewright.mechanics.shear_plane import shear_angle, shear_force
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
    Pascal,
    Radian,
    Ratio,
    RevPerSecond,
    Second,
    Watt,
)
from borewright.reference.library import Tables
from borewright.service.fit_records import Taken, material_taken

CHIP_FRICTION = 0.5
"""Friction of the chip on the tool where none is stated (textbook value, from memory)."""


@dataclass(frozen=True, slots=True)
class CutInput:
    """What `cut` is given. One of `surface` and `spindle` is the speed.

    `kind` is turn, face or groove; a groove has no `depth` of its own: it is the `width` of the
    tool. `length`: how far the tool goes in one pass, for the time; None leaves that out. `rake`
    None is that of the constants; `tool` is "" for the carbide they are for, or hss. With a
    `shear_strength` of the metal the force is worked out by one shear plane too.
    """

    material: str
    diameter: Metre
    depth: Metre
    feed: Metre
    surface: MetrePerSecond | None = None
    spindle: RevPerSecond | None = None
    edge_angle: Radian | None = None
    nose_radius: Metre | None = None
    kind: str = "turn"
    length: Metre | None = None
    rake: Radian | None = None
    tool: str = ""
    worn: bool = False
    interrupted: bool = False
    shear_strength: Pascal | None = None
    chip_friction: Ratio = CHIP_FRICTION


@dataclass(frozen=True, slots=True)
class CutResult:
    """Forces on the work, torque about its axis, power at the cut.

    `axial_force` is along the work, `radial_force` across it. The factors are those of the force,
    one by one; 1 where nothing is said. `specific_energy` is power over metal removed. `ridge_height`
    is f² / (8 r), NaN for a sharp corner; `time` that of one pass, NaN without a length; the shear
    plane's are NaN without a shear strength.
    """

    cutting_force: Newton
    feed_force: Newton
    passive_force: Newton
    torque: NewtonMetre
    power: Watt
    cutting_speed: MetrePerSecond
    spindle_speed: RevPerSecond
    removal_rate: CubicMetrePerSecond
    axial_force: Newton
    radial_force: Newton
    chip_thickness: Metre
    chip_width: Metre
    specific_energy: Pascal
    rake_factor: Ratio
    wear_factor: Ratio
    tool_factor: Ratio
    knock_factor: Ratio
    ridge_height: Metre
    time: Second
    shear_plane_force: Newton
    shear_angle: Radian
    assumed: tuple[Taken, ...]


def cut(asked: CutInput, tables: Tables) -> CutResult:
    """Kienzle force with the best constants, and the factors for rake, wear, tool and knocks.

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
    factors = _factors(asked, constants.reference_rake, tables)
    kc11 = constants.kc11.best * PER_SQUARE_MILLIMETRE
    force = float(kienzle_force(chip, kc11, constants.mc.best, math.prod(factors)))
    feed, passive = feed_and_passive(force, chip, ratios.resultant.best, ratios.least_passive.best)
    _note_constants(constants.kc11.best, constants.mc.best, constants.source, taken)
    _note_thin_chip(chip.thickness, tables, taken)
    surface = (
        asked.surface
        if asked.surface is not None
        else surface_speed(asked.spindle or 0.0, asked.diameter)
    )
    spindle = spindle_speed(surface, asked.diameter)
    axial, radial = _along_and_across(asked.kind, float(feed), float(passive))
    removed = _removed(asked, spindle)
    power = float(cutting_power(force, surface))
    return CutResult(
        cutting_force=force,
        feed_force=float(feed),
        passive_force=float(passive),
        torque=force * asked.diameter / 2,
        power=power,
        cutting_speed=surface,
        spindle_speed=spindle,
        removal_rate=removed,
        axial_force=axial,
        radial_force=radial,
        chip_thickness=chip.thickness,
        chip_width=chip.width,
        specific_energy=power / removed,
        rake_factor=factors[0],
        wear_factor=factors[1],
        tool_factor=factors[2],
        knock_factor=factors[3],
        ridge_height=float(ridge_height(asked.feed, nose)) if nose > 0 else math.nan,
        **_sheared(asked, chip, constants.reference_rake),
        time=math.nan if asked.length is None else asked.length / (asked.feed * spindle),
        assumed=tuple(taken),
    )


def _factors(asked: CutInput, reference: Radian, tables: Tables) -> tuple[float, ...]:
    """Of rake, wear, tool and knocks. RefusedInput for a rake too far from the constants' own."""
    correction = tables.cutting_correction
    rake = 1.0
    if asked.rake is not None:
        rake = 1 - correction("rake_per_radian").best * (asked.rake - reference)
    return (
        rake,
        correction("tool_wear").best if asked.worn else 1.0,
        correction("hss_tool").best if asked.tool == "hss" else 1.0,
        correction("interrupted_impact").best if asked.interrupted else 1.0,
    )


def _sheared(asked: CutInput, chip: Chip, reference: Radian) -> dict[str, float]:
    """Force and angle of the shear plane; NaN where no shear strength is given."""
    if asked.shear_strength is None:
        return {"shear_plane_force": math.nan, "shear_angle": math.nan}
    rake = reference if asked.rake is None else asked.rake
    size = chip.width, chip.thickness
    force = shear_force(asked.shear_strength, *size, rake, asked.chip_friction)
    angle = shear_angle(rake, asked.chip_friction)
    return {"shear_plane_force": float(force), "shear_angle": angle}


def _along_and_across(kind: str, feed: Newton, passive: Newton) -> tuple[Newton, Newton]:
    """Force along the work and across it: in facing the tool is fed across, in grooving straight in."""
    if kind == "groove":
        return 0.0, feed
    return (feed, passive) if kind == "turn" else (passive, feed)


def _removed(asked: CutInput, spindle: RevPerSecond) -> CubicMetrePerSecond:
    """Metal removed: in turning at the mean diameter; a face or groove where it begins."""
    if asked.kind == "turn":
        return removal_rate(asked.diameter, asked.depth, asked.feed, spindle)
    return math.pi * asked.diameter * asked.depth * asked.feed * spindle


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
