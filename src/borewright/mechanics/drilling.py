"""The torque that a drill asks of what holds the work.

    T = k_c f d² / 8,    k_c = k_c11 h^(-m) K,    h = f/2 · sin(half the point angle)
Each lip takes half of the feed over half of the diameter, its force at a quarter of the diameter
from the axis; d in m, f in m each turn, h in mm within k_c.
Source: common to cutting handbooks (from memory). Weakness: a fitted power law for turning, with
no chisel edge, no friction of chips and margins: up to half as much again where chips pack; a
pilot hole takes its share off.
"""

from __future__ import annotations

import math

from borewright.mechanics.num import Num
from borewright.quantities.si import Metre

_MM = 1e3

HALF_POINT_SINE = math.sin(math.radians(59.0))
"""Of half the point angle of an everyday drill."""


def drill_chip(feed: Num) -> Num:
    """Thickness (m) of the chip of one lip; `feed` in m each turn.

    >>> round(float(drill_chip(0.2e-3)) * 1e3, 4)
    0.0857
    """
    return feed / 2 * HALF_POINT_SINE


def specific_force(thickness: Num, kc11: Num, exponent: float, correction: Num = 1.0) -> Num:
    """Force on a chip over its section (Pa); `thickness` in m, `kc11` in Pa.

    >>> round(float(specific_force(1e-3, 1500e6, 0.25)) / 1e6)
    1500
    """
    return kc11 * (thickness * _MM) ** (-exponent) * correction


def drill_torque(force: Num, feed: Num, diameter: Metre) -> Num:
    """Torque (N·m) of a drill from the solid; `force` is k_c in Pa, `feed` in m each turn.

    >>> round(float(drill_torque(2000e6, 0.2e-3, 0.010)), 6)
    5.0
    """
    return force * feed * diameter**2 / 8
