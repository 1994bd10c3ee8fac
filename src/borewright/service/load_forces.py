"""load: one grinding or gear-cutting pass on one material -> forces, torque, power."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.answer.records import Cut
from borewright.cutting.demand import PER_SQUARE_MILLIMETRE, form_cutter_factors
from borewright.cutting.load_demand import engaged, space_cut
from borewright.cutting.loads import gear_for, grind_cut, ground_energy, system_of
from borewright.job.records import CutWish
from borewright.mechanics.grinding import (
    grinding_power,
    grinding_removal_rate,
    heat_in_work,
    normal_force,
    tangential_force,
)
from borewright.mechanics.milling import (
    along_and_across,
    chip_thickness,
    mean_force,
    peak_force,
    space_removal_rate,
    table_feed,
    teeth_in_cut,
)
from borewright.quantities.si import (
    CubicMetrePerSecond,
    Metre,
    MetrePerSecond,
    Newton,
    NewtonMetre,
    Radian,
    Ratio,
    RevPerSecond,
    Watt,
)
from borewright.reference.cutting import Kienzle
from borewright.reference.library import Tables
from borewright.reference.ranges import Range
from borewright.service.fit_records import Taken


@dataclass(frozen=True, slots=True)
class GrindResult:
    """A traverse grinding pass: forces on the work, and where the power goes."""

    tangential_force: Newton
    normal_force: Newton
    axial_force: Newton
    torque: NewtonMetre
    power: Watt
    heat_in_work: Watt
    removal_rate: CubicMetrePerSecond
    work_speed: MetrePerSecond
    spindle_speed: RevPerSecond
    wheel_speed: MetrePerSecond
    assumed: tuple[Taken, ...]


@dataclass(frozen=True, slots=True)
class GearResult:
    """A form cutter in one tooth space: the last pass at the whole depth.

    Forces are the peak on the work where the chip is thickest, of a sharp cutter and without its
    blow: along the mandrel (towards the large end when fed as told), and across it (milling against
    the turn of the cutter, + away from the mandrel; climbing it pushes towards it).
    `planned_peak_force` is the peak that a plan counts with, its cutter worn and its blow in it.
    """

    outside_diameter: Metre
    whole_depth: Metre
    depth: Metre
    cutter_diameter: Metre
    engagement_angle: Radian
    chip_thickness: Metre
    teeth_in_cut: Ratio
    peak_force: Newton
    planned_peak_force: Newton
    mean_force: Newton
    axial_force: Newton
    radial_force: Newton
    climbing_radial_force: Newton
    torque: NewtonMetre
    power: Watt
    removal_rate: CubicMetrePerSecond
    cutting_speed: MetrePerSecond
    spindle_speed: RevPerSecond
    table_feed: MetrePerSecond
    assumed: tuple[Taken, ...]


def grind(wish: CutWish, material: str, diameter: Metre, tables: Tables) -> GrindResult:
    """Best values of the tables. RefusedInput for a material that is not planned for grinding."""
    energy = ground_energy(material, tables, "--material")
    cut = grind_cut(wish, 1, 1, diameter, tables)
    ratio, axial, heat = (tables.grinding(n) for n in ("force_ratio", "axial_share", "heat_share"))
    removal = grinding_removal_rate(diameter, cut.depth, cut.feed, cut.spindle_speed)
    power = float(grinding_power(energy.best, removal))
    wheel = cut.wheel_speed or 1.0
    force = float(tangential_force(power, wheel))
    taken = [
        _taken("specific_grinding_energy", energy),
        _taken("force_ratio", ratio),
        _taken("axial_share", axial),
        _taken("heat_share", heat),
    ]
    if wish.wheel_speed is None:
        taken.insert(0, _taken("wheel_speed", tables.grinding("wheel_speed")))
    return GrindResult(
        tangential_force=force,
        normal_force=float(normal_force(force, ratio.best)),
        axial_force=force * axial.best,
        torque=force * diameter / 2,
        power=power,
        heat_in_work=float(heat_in_work(power, heat.best)),
        removal_rate=removal,
        work_speed=cut.cutting_speed,
        spindle_speed=cut.spindle_speed,
        wheel_speed=wheel,
        assumed=tuple(taken),
    )


def _option(key: str) -> str:
    return "--material" if key == "kind" else f"--{key.replace('_', '-')}"


def gear(
    wish: CutWish, material: str, tables: Tables, units: Literal["inch", "mm"] = "mm"
) -> GearResult:
    """A sharp cutter, best values of the tables, no blow counted."""
    cut = gear_for(wish, 1, material, tables, units, _option)
    space, (arc, width, edge) = space_cut(cut), engaged(cut)
    k = tables.kienzle(material)
    how = (cut.feed, arc, space.cutter_teeth, width, edge)
    kc11 = k.kc11.best * PER_SQUARE_MILLIMETRE
    peak, mean = (float(f(*how, kc11, k.mc.best)) for f in (peak_force, mean_force))
    side, share = tables.gear_cutting("radial_share"), tables.gear_cutting("out_of_center")
    impact = tables.gear_cutting("impact").best
    along, across = along_and_across(peak, side.best, arc)
    _, climbing = along_and_across(peak, side.best, arc, climb=True)
    table = table_feed(cut.feed, space.cutter_teeth, cut.spindle_speed)
    return GearResult(
        outside_diameter=cut.diameter,
        whole_depth=space.whole_depth,
        depth=cut.depth,
        cutter_diameter=space.cutter_diameter,
        engagement_angle=arc,
        chip_thickness=chip_thickness(cut.feed, arc),
        teeth_in_cut=teeth_in_cut(space.cutter_teeth, arc),
        peak_force=peak,
        planned_peak_force=peak * form_cutter_factors(tables) * impact,
        mean_force=mean,
        axial_force=float(along),
        radial_force=float(across),
        climbing_radial_force=float(climbing),
        torque=share.best * peak * cut.diameter / 2,
        power=mean * cut.cutting_speed,
        removal_rate=space_removal_rate(width, cut.depth, table),
        cutting_speed=cut.cutting_speed,
        spindle_speed=cut.spindle_speed,
        table_feed=table,
        assumed=_gear_taken(wish, cut, k, tables),
    )


def _gear_taken(wish: CutWish, cut: Cut, k: Kienzle, tables: Tables) -> tuple[Taken, ...]:
    form, space = tables.gear_teeth(system_of(wish)), space_cut(cut)
    cutter = tables.gear_cutter(system_of(wish), space.module).source
    taken = []
    if wish.cutter_diameter is None:
        taken.append(Taken("cutter_diameter", space.cutter_diameter, "m", cutter))
    if wish.cutter_teeth is None:
        taken.append(Taken("cutter_teeth", space.cutter_teeth, "", cutter))
    if wish.feed is None:
        taken.append(_taken("feed_per_tooth", tables.gear_cutting("feed_per_tooth")))
    if wish.speed is None and wish.spindle_speed is None:
        source = tables.gear_cutting("speed_share").source
        taken.append(Taken("cutting_speed", cut.cutting_speed, "m/s", source))
    taken += [
        Taken("pressure_angle", form.pressure_angle, "rad", form.source),
        Taken("whole_depth_in_modules", form.whole_depth, "", form.source),
        Taken("kc11", k.kc11.best * PER_SQUARE_MILLIMETRE, "Pa", k.source),
        Taken("exponent", k.mc.best, "", k.source),
        _taken("radial_share", tables.gear_cutting("radial_share")),
        _taken("out_of_center", tables.gear_cutting("out_of_center")),
    ]
    arc, width, edge = engaged(cut)
    thin, least = (
        chip_thickness(cut.feed, arc) * width / edge,
        tables.cutting_correction("least_chip"),
    )
    if thin < least.best * (1 - 1e-9):
        what = "chip thinner than the force law was fitted for"
        taken.append(Taken(what, thin, "m", least.source))
    return tuple(taken)


def _taken(what: str, found: Range) -> Taken:
    return Taken(what, found.best, found.unit, found.source)
