"""Work that is heavy on one side: what balances it, and the force it turns with.

Answers, for a lump of mass m whose middle is r from the axis:
    out of balance   U = m r                     counterweight   m r / r_2, opposite
    turning force    F = m r ω²,  ω = 2 π n      speed for F     n = sqrt(F / U) / 2π
Several lumps add as arrows. The force goes round with the work and grows with the square of the
speed; once it nears the weight of what holds the work, the lathe or the bench starts to hop, so a
speed is given at which it is a chosen share of a chosen weight.
Units: kg, m, kg·m, N, rev/s, rad, as floats or arrays that broadcast. Range: mass, radius and speed
0 or more, a counterweight's radius and a weight above 0, a share above 0; OutsideModel otherwise.
Weakness: static balance, one plane: lumps in two planes that cancel still rock the work (dynamic
unbalance); a stiff mandrel is taken, far below its whirling speed.
Source: F = m r ω², mechanics, closed form.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero
from borewright.mechanics.num import Floats, Num


def out_of_balance(mass: Num, radius: Num) -> Num:
    """Out of balance (kg·m) of a lump (kg) whose middle is at a radius (m).

    >>> out_of_balance(0.5, 0.08)
    0.04
    """
    not_below_zero("mass", mass, "kg")
    not_below_zero("radius of the lump", radius, "m")
    return mass * radius


def sum_of_lumps(amounts: Floats, angles: Floats) -> tuple[float, float]:
    """Size (kg·m) and angle (rad) of several out-of-balances (k,) at angles (k,) taken together.

    >>> size, angle = sum_of_lumps(np.array([3.0, 4.0]), np.array([0.0, np.pi / 2]))
    >>> round(size, 6), round(float(np.degrees(angle)), 2)
    (5.0, 53.13)
    """
    not_below_zero("out of balance", amounts, "kg·m")
    along = float(np.sum(amounts * np.cos(angles)))
    across = float(np.sum(amounts * np.sin(angles)))
    return float(np.hypot(along, across)), float(np.arctan2(across, along))


def counterweight(unbalance: Num, radius: Num) -> Num:
    """Mass (kg) that balances an out of balance (kg·m) from the opposite side at a radius (m).

    Taken out by drilling instead, the same mass on the heavy side does it.

    >>> round(counterweight(0.04, 0.10), 6)
    0.4
    """
    not_below_zero("out of balance", unbalance, "kg·m")
    above_zero("radius of the counterweight", radius, "m")
    return unbalance / radius


def turning_force(unbalance: Num, spindle: Num) -> Num:
    """Force (N) that goes round with an out of balance (kg·m) at a spindle speed (rev/s).

    >>> round(turning_force(0.04, 5.0), 3)
    39.478
    """
    not_below_zero("out of balance", unbalance, "kg·m")
    not_below_zero("spindle speed", spindle, "rev/s")
    return unbalance * (2 * np.pi * spindle) ** 2


def speed_for_share(unbalance: Num, weight: Num, share: Num) -> Num:
    """Spindle speed (rev/s) at which the turning force is a share of a weight (N).

    >>> n = speed_for_share(0.04, 400.0, 0.1)
    >>> round(float(turning_force(0.04, n)), 6)
    40.0
    """
    above_zero("out of balance", unbalance, "kg·m")
    above_zero("weight", weight, "N")
    above_zero("share of the weight", share)
    return np.sqrt(share * weight / unbalance) / (2 * np.pi)
