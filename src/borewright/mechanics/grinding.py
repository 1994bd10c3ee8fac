"""Cylindrical traverse grinding between centres: forces and heat from the energy of the metal.

    Q = π d a f n          removal rate: d work diameter, a infeed on radius, f traverse a turn
    P = u Q                u specific grinding energy
    F_t = P / v_s          v_s speed of the wheel's rim (the work's own speed is left out)
    F_n = F_t / r          r force ratio, tangential over normal
Source: energy balance; u, r and the shares are ranges of a table. Weakness: u depends on wheel,
dressing and infeed as much as on the metal; a blunt or loaded wheel pushes several times as hard;
the elastic give of wheel and work makes the real infeed of the first passes less than set.
"""

from __future__ import annotations

import math

from borewright.mechanics.num import Num
from borewright.quantities.si import (
    CubicMetrePerSecond,
    Metre,
    MetrePerSecond,
    RevPerSecond,
)


def grinding_removal_rate(
    diameter: Metre, infeed: Metre, traverse: Metre, spindle: RevPerSecond
) -> CubicMetrePerSecond:
    """Metal removed (m³/s): π d a f n.

    >>> round(grinding_removal_rate(0.05, 5e-6, 3e-3, 2.0) * 1e9, 3)
    4.712
    """
    return math.pi * diameter * infeed * traverse * spindle


def grinding_power(energy: Num, removal: CubicMetrePerSecond) -> Num:
    """Power (W) at the wheel: u Q; `energy` in J/m³.

    >>> grinding_power(40e9, 5e-9)
    200.0
    """
    return energy * removal


def tangential_force(power: Num, wheel_speed: MetrePerSecond) -> Num:
    """Tangential force (N): P / v_s.

    >>> tangential_force(300.0, 30.0)
    10.0
    """
    return power / wheel_speed


def normal_force(tangential: Num, ratio: Num) -> Num:
    """Force (N) with which wheel and work push apart: F_t / r.

    >>> normal_force(10.0, 0.4)
    25.0
    """
    return tangential / ratio


def heat_in_work(power: Num, share: Num) -> Num:
    """Heat (W) that goes into the work.

    >>> heat_in_work(200.0, 0.6)
    120.0
    """
    return power * share
