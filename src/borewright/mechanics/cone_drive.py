"""Work between cones: what a cone in the mouth of a bore drives, and what lifts the work off it.

With F the axial force, a the half angle and r the radius where the mouth touches:
    normal force    N = F / sin a      (friction along the slope gone, as it is once it has turned)
    torque          T = μ N r          on a chamfer from r_1 to r_2, uniform wear, r their mean
    lift            W = F / (2 tan a)  the force across one cone at which its far side lets go:
                                       n(φ) = N / 2π (1 + k cos φ), k = 1
    hoop pull       H = F / (2 π tan a) in the ring round the mouth
    driver stud     P = σ π d³ / (32 e) the force at its end, e out from where it is held
Units: N, m, rad, Pa, as floats or arrays that broadcast. Range: 0 < a < π/2, sizes and strength
above 0, force and friction 0 or more; OutsideModel otherwise.
Source: own derivation, equilibrium and Coulomb friction, as of a cone clutch (Shigley, Mechanical
Engineering Design, ch. 16, from memory). Weakness: a mouth that is not round or has a burr touches
in two or three places; the axial force of a hand is the least known number.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num


def cone_torque(force: Num, friction: Num, half_angle: float, inside: Num, outside: Num) -> Num:
    """Torque (N·m) of one cone that touches between two diameters (m); alike for a sharp mouth.

    >>> round(float(cone_torque(1000.0, 0.12, np.pi / 6, 0.050, 0.050)), 6)
    6.0
    """
    not_below_zero("friction", friction)
    above_zero("inside of the mouth", inside, "m")
    refuse_unless(
        np.greater_equal(outside, inside), "outside of the mouth", outside, "m", "at least inside"
    )
    return friction * normal_force(force, half_angle) * (inside + outside) / 4


def normal_force(force: Num, half_angle: float) -> Num:
    """Normal force (N), summed round the cone, of an axial force (N).

    >>> round(float(normal_force(1000.0, np.pi / 6)), 6)
    2000.0
    """
    _check(force, half_angle)
    return force / float(np.sin(half_angle))


def lifts(force: Num, half_angle: float) -> Num:
    """Force (N) across one cone at which its far side lets go.

    >>> round(float(lifts(1000.0, np.pi / 4)), 6)
    500.0
    """
    _check(force, half_angle)
    return force / (2 * float(np.tan(half_angle)))


def hoop_pull(force: Num, half_angle: float) -> Num:
    """Pull (N) round the mouth that an axial force (N) makes.

    >>> round(float(hoop_pull(1000.0, np.pi / 4)), 3)
    159.155
    """
    _check(force, half_angle)
    return force / (2 * np.pi * float(np.tan(half_angle)))


def stud_force(strength: Num, diameter: Num, out: Num) -> Num:
    """Force (N) across the end of a stud (m) at which it bends for good, that far (m) out.

    >>> round(float(stud_force(300e6, 0.012, 0.05)))
    1018
    """
    for name, value, unit in (
        ("yield", strength, "Pa"),
        ("stud", diameter, "m"),
        ("out", out, "m"),
    ):
        above_zero(name, value, unit)
    return strength * np.pi * diameter**3 / (32 * out)


def _check(force: Num, half_angle: float) -> None:
    not_below_zero("axial force", force, "N")
    refuse_unless(0 < half_angle < np.pi / 2, "half angle", half_angle, "rad", "0 to π/2")
