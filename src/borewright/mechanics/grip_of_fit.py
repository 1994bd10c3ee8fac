"""An even fit, such as work shrunk or pressed on a parallel shaft: grip, and the fit for a grip.

    F = π f p l d,   T = π f p l d² / 2,   p = δ / (d C);  for T and F together the least
    δ = C sqrt((2 T / d)² + F²) / (π f l)
with C as `rings.ring_compliance` gives it. Source: Shigley, Mechanical Engineering Design, 9th ed.,
eqs 7-48, 7-49; both together by the resultant. Weakness: pressure as even along the bore (it is
higher at the ends of a short hub on a long shaft); flattened roughness is not in δ.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero
from borewright.mechanics.num import Num
from borewright.mechanics.slip import friction_demand, slip_torque


def fit_axial(friction: Num, pressure: Num, length: Num, diameter: Num) -> Num:
    """Axial force (N) at which an even fit slips with no torque: π f p l d.

    OutsideModel for a friction or pressure (Pa) below 0, length or diameter (m) not above 0.

    >>> round(fit_axial(0.1, 10e6, 0.03, 0.02), 2)
    1884.96
    """
    not_below_zero("friction", friction)
    not_below_zero("pressure", pressure)
    above_zero("length of the fit", length)
    above_zero("diameter of the fit", diameter)
    return np.pi * friction * pressure * length * diameter


def fit_torque(friction: Num, pressure: Num, length: Num, diameter: Num) -> Num:
    """Torque (N·m) at which an even fit slips with no axial force: π f p l d² / 2; as above.

    >>> round(fit_torque(0.1, 10e6, 0.03, 0.02), 4)
    18.8496
    """
    return slip_torque(fit_axial(1.0, pressure, length, diameter), friction, diameter)


def least_interference(
    torque: Num, axial: Num, friction: Num, length: Num, diameter: Num, compliance: Num
) -> Num:
    """Interference on diameter (m) that just carries a torque (N·m) with an axial force (N).

    `compliance` C (1/Pa) of the rings. OutsideModel unless friction, sizes and C are above 0.

    >>> round(float(least_interference(0.03, 4.0, 0.1, 0.1 / np.pi, 0.02, 1e-11)) * 1e9, 6)
    5.0
    """
    above_zero("friction", friction)
    above_zero("compliance", compliance)
    per_pressure = fit_axial(friction, 1.0, length, diameter)
    pressure = friction_demand(torque, diameter, axial) / per_pressure
    return np.asarray(pressure * diameter * compliance, dtype=np.float64)
