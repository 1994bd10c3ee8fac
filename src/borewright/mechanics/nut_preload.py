"""The clamp force of a nut from the torque on its wrench, and back.

Answers how hard a tightened nut clamps:  F = T / (K d), with T the torque, d the nominal diameter
of the thread and K the nut factor, which holds the friction of thread and face together.
The tension in the thread is F / A_s on its stress area, which a table of threads gives.
Units: N·m, m, m², N, Pa, as floats or arrays that broadcast. Range: all above 0 (a force or torque
may be 0); OutsideModel otherwise. K is given, as a range: it is the weak number. By memory of
Shigley, Mechanical Engineering Design, table 8-15: about 0.12 with the best grease, 0.18 oiled, 0.2
as it comes, 0.3 bare; the force then scatters by a quarter either way at one and the same torque.
Weakness: torsion in the thread while the wrench turns is not in the tension; nothing in it knows
whether the nut bottoms, or whether the work under it creeps.
Source: F = T / (K d), Shigley, ch. 8 (from memory); checked against Wentzell, Machine Design,
Ex. 6.1.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num
from borewright.quantities.si import Ratio


def clamp_force(torque: Num, nut_factor: Num, diameter: Num) -> Num:
    """Clamp force (N) of a torque (N·m) on a nut of this nominal diameter (m): T / (K d).

    >>> round(clamp_force(20.0, 0.2, 0.010), 6)
    10000.0
    """
    not_below_zero("torque on the nut", torque, "N·m")
    _check(nut_factor, diameter)
    return torque / (nut_factor * diameter)


def clamp_range(torque: Num, nut_factors: tuple[Ratio, Ratio], diameter: Num) -> tuple[Num, Num]:
    """Least and greatest clamp force (N) for a nut factor between two values, the low one first.

    >>> least, most = clamp_range(18.0, (0.12, 0.30), 0.010)
    >>> round(least, 6), round(most, 6)
    (6000.0, 15000.0)
    """
    low, high = _ordered(nut_factors)
    return clamp_force(torque, high, diameter), clamp_force(torque, low, diameter)


def tightening_torque(force: Num, nut_factor: Num, diameter: Num) -> Num:
    """Torque (N·m) on the nut for a clamp force (N): K F d.

    >>> round(tightening_torque(10e3, 0.2, 0.010), 6)
    20.0
    """
    not_below_zero("clamp force", force, "N")
    _check(nut_factor, diameter)
    return nut_factor * force * diameter


def torque_that_clamps(force: Num, nut_factors: tuple[Ratio, Ratio], diameter: Num) -> Num:
    """Torque (N·m) that reaches the clamp force (N) even with the poorer nut factor of a range.

    The better one then clamps harder, by the ratio of the two: hold the thread to that.

    >>> round(torque_that_clamps(10e3, (0.12, 0.30), 0.010), 6)
    30.0
    """
    return tightening_torque(force, _ordered(nut_factors)[1], diameter)


def thread_tension(force: Num, stress_area: Num) -> Num:
    """Tension (Pa) in a thread of this stress area (m²) under a clamp force (N).

    >>> round(thread_tension(10e3, 50e-6) / 1e6, 6)
    200.0
    """
    not_below_zero("clamp force", force, "N")
    above_zero("stress area", stress_area, "m²")
    return force / stress_area


def force_at_tension(tension: Num, stress_area: Num) -> Num:
    """Clamp force (N) at which a thread of this stress area (m²) has this tension (Pa).

    >>> round(force_at_tension(200e6, 50e-6), 6)
    10000.0
    """
    not_below_zero("tension", tension, "Pa")
    above_zero("stress area", stress_area, "m²")
    return tension * stress_area


def _ordered(nut_factors: tuple[Ratio, Ratio]) -> tuple[Ratio, Ratio]:
    low, high = nut_factors
    refuse_unless(np.less_equal(low, high), "low nut factor", low, "", f"at most {high:.4g}")
    return low, high


def _check(nut_factor: Num, diameter: Num) -> None:
    above_zero("nut factor", nut_factor)
    above_zero("diameter of the thread", diameter, "m")
