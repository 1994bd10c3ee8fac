"""Wax that balances work, turned into a hole drilled on its heavy side.

Answers, for an out of balance U = wax × its radius (kg·m), and a drill of diameter d used along the
axis at a radius r on the heavy side, opposite the wax:
    metal to take out   m = U / r,  V = m / density
    cone of the point   h_p = d / (2 tan(point angle / 2)),  V_p = π d² h_p / 12
    depth at the tip    H = (V − V_p) / (π d² / 4) + h_p where V ≥ V_p, else h_p (V / V_p)^(1/3)
A flat-bottomed hole has V_p = h_p = 0. Several lumps and a weight added instead: `unbalance`.
On knife edges or in easy bench centers the work stays where it is put once U is below what holds:
    least shown   U = mass × arm    arm: rolling friction on edges; friction × radius of centers
Units: kg, m, kg/m³, rad, as floats or arrays that broadcast. Range: above 0, point angle above 0 to
π (a flat bottom); OutsideModel otherwise. Weakness: the hole's middle is taken at the drill's
radius; a through hole leaves no cone, and one in a sloping face less metal; one plane only.
Source: volumes of cylinder and cone, closed form.
"""

from __future__ import annotations

import math

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Floats, Num
from borewright.quantities.si import Radian

POINT = math.radians(118)
"""Point angle of a common drill (practice)."""


def point_height(diameter: Num, point: Radian = POINT) -> Num:
    """Height (m) of the cone of a drill's point.

    >>> round(point_height(0.008) * 1e3, 3)
    2.403
    """
    above_zero("diameter of the drill", diameter, "m")
    refuse_unless(0 < point <= math.pi, "point angle", point, "rad", "above 0 to pi")
    flat = point >= math.pi - 1e-9
    return diameter * 0.0 if flat else diameter / (2 * math.tan(point / 2))


def hole_volume(depth: Num, diameter: Num, point: Radian = POINT) -> Floats:
    """Metal (m³) that a hole takes out, its depth (m) at the tip of the point.

    >>> round(float(hole_volume(0.01, 0.008)) * 1e9, 1)
    422.1
    """
    not_below_zero("depth", depth, "m")
    tip = np.asarray(point_height(diameter, point))
    area = np.pi * np.square(diameter) / 4
    with np.errstate(invalid="ignore", divide="ignore"):
        in_cone = area * tip / 3 * (depth / tip) ** 3
    drilled = np.where(depth >= tip, area * (depth - tip * 2 / 3), in_cone)
    return np.asarray(drilled, dtype=np.float64)


def hole_depth(volume: Num, diameter: Num, point: Radian = POINT) -> Floats:
    """Depth (m) at the tip of a hole that takes out so much metal (m³).

    >>> round(float(hole_depth(422.1e-9, 0.008)) * 1e3, 3)
    10.0
    """
    not_below_zero("metal to take out", volume, "m³")
    tip = np.asarray(point_height(diameter, point))
    area = np.pi * np.square(diameter) / 4
    cone = area * tip / 3
    with np.errstate(invalid="ignore", divide="ignore"):
        in_cone = tip * np.cbrt(volume / cone)
    deep = np.where(volume >= cone, (volume - cone) / area + tip, in_cone)
    return np.asarray(deep, dtype=np.float64)


def metal_for(unbalance: Num, radius: Num, density: Num) -> Num:
    """Metal (m³) to take out at a radius (m) for an out of balance (kg·m).

    >>> round(metal_for(0.012 * 0.08, 0.07, 7200.0) * 1e6, 4)
    1.9048
    """
    not_below_zero("out of balance", unbalance, "kg·m")
    above_zero("radius of the hole", radius, "m")
    above_zero("density", density, "kg/m³")
    return unbalance / radius / density


def least_shown(mass: Num, arm: Num) -> Num:
    """Out of balance (kg·m) that what carries the work still holds, its friction as an arm (m).

    >>> round(least_shown(4.0, 0.00005) * 1e6, 6)
    200.0
    """
    not_below_zero("mass", mass, "kg")
    not_below_zero("arm of friction", arm, "m")
    return mass * arm
