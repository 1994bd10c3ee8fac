"""What a grinding or gear-cutting pass asks of the hold, as draws."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Cut, Demand, Draws, ToothSpace
from borewright.answer.streams import Stream, positive
from borewright.job.records import Job
from borewright.mechanics.gear_teeth import developed_edge, pass_width
from borewright.mechanics.grinding import (
    grinding_power,
    grinding_removal_rate,
    normal_force,
    tangential_force,
)
from borewright.mechanics.milling import (
    along_and_across,
    engagement_angle,
    mean_force,
    peak_force,
)
from borewright.mechanics.turned_down import Softer, turned_down
from borewright.quantities.si import Metre, Radian
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

MANDREL = "mandrel-steel-hard"
"""What the mandrel is taken to be made of here: its own give hardly matters."""

LEAST_RING = 0.02
"""Teeth cut down to the bore leave a ring this thin (wall over radius) in the sums (ours)."""


def grind_demand(cut: Cut, material: str, tables: Tables) -> Demand:
    """Force along the rim from the energy of the metal ground away; the loosening stroke."""
    energy = _draws(tables.grinding_energy(material), Stream.CUTTING)
    removal = grinding_removal_rate(cut.diameter, cut.depth, cut.feed, cut.spindle_speed)
    power = np.asarray(grinding_power(energy, removal))
    along_rim = np.asarray(tangential_force(power, cut.wheel_speed or 1.0))
    ratio = _draws(tables.grinding("force_ratio"), Stream.RESULTANT)
    share = _draws(tables.grinding("axial_share"), Stream.CENTERING)
    push = np.asarray(normal_force(along_rim, ratio))
    radius = cut.diameter / 2
    return Demand(cut.id, along_rim * radius, -share * along_rim, push, along_rim, radius, power)


def gear_demand(cut: Cut, kc11: Draws, exponent: float, tables: Tables) -> Demand:
    """Peak forces of the form cutter on the work; `kc11` (Pa) with its corrections.

    The cutter's force lies in the plane of the mandrel's axis: along it, + towards the large end,
    and across it (the larger of the two ways of feeding). Torque comes only of a cutter out of
    center and flanks that cut unevenly: a share of the peak at the outside of the blank.
    """
    space = space_cut(cut)
    arc, width, edge = engaged(cut)
    feed, teeth = cut.feed, space.cutter_teeth
    steady = peak_force(feed, arc, teeth, width, edge, kc11, exponent)
    peak = np.asarray(steady * tables.gear_cutting("impact").best)
    mean = np.asarray(mean_force(feed, arc, teeth, width, edge, kc11, exponent))
    side = _draws(tables.gear_cutting("radial_share"), Stream.RESULTANT)
    along, _ = along_and_across(peak, side, arc)
    _, across = along_and_across(peak, side, arc, climb=True)
    round_it = np.asarray(_draws(tables.gear_cutting("out_of_center"), Stream.CENTERING) * peak)
    radius = cut.diameter / 2
    return Demand(
        cut.id,
        round_it * radius,
        np.asarray(along),
        np.abs(across),
        round_it,
        radius,
        mean * cut.cutting_speed,
    )


def softer(cut: Cut, job: Job, tables: Tables) -> Softer:
    """What is left when the teeth are cut and only the ring under their roots goes on squeezing."""
    bore, t = job.work.bore.size, tables.material_range
    on_bore = (p.outside for p in job.work.pieces if p.inside is None)
    hub = min(on_bore, default=job.work.outside)
    root = cut.diameter - 2 * space_cut(cut).whole_depth
    after = max(min(hub, root), bore * (1 + LEAST_RING))
    work = (t(job.work.material, "modulus").best, t(job.work.material, "poisson").best)
    shaft = (t(MANDREL, "modulus").best, t(MANDREL, "poisson").best)
    return turned_down(bore, max(hub, after), after, work, shaft)


def space_cut(cut: Cut) -> ToothSpace:
    """The tooth space of a gear cut."""
    assert cut.space is not None, cut.kind
    return cut.space


def engaged(cut: Cut) -> tuple[Radian, Metre, Metre]:
    """Arc (rad), mean width of the last pass (m) and edge laid flat (m) of a gear cut."""
    s = space_cut(cut)
    return (
        engagement_angle(cut.depth, s.cutter_diameter),
        pass_width(s.root_width, s.pressure_angle, s.whole_depth, cut.depth),
        developed_edge(s.root_width, s.pressure_angle, s.whole_depth),
    )


def _draws(r: Range, stream: Stream) -> Draws:
    return positive(r.low, r.best, r.high, stream)
