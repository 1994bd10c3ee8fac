"""A key or a pin between work and mandrel: what force shears it or crushes its side.

Answers what a positive drive carries, whichever gives way first:
    key      shear  τ w l              bearing  σ h l      h: depth in the shallower side
    pin      shear  τ n π d² / 4       bearing  σ d l      n: planes cut, 1 (single) or 2 (double)
    torque   force × half the diameter of the circle on which it acts
A pin through the shaft and both walls of a hub stands in double shear on the circle of the bore. A
round pin driven along the joint, half in each, is a key: w its diameter, h half of it.
Units: N, m, Pa, N·m, as floats or arrays that broadcast. Range: sizes and strengths above 0, planes
1 or 2; OutsideModel otherwise. `strength` is what is allowed: margins are the caller's.
Weakness: shear and pressure taken as even; a loose key tips and bears on an edge, a long one bears
most at the driven end, and a keyway notches its shaft, none of which is in it.
Source: force over area, as in any textbook (Shigley, Mechanical Engineering Design, sect. 7-7, from
memory).
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num


def key_shear_force(width: Num, length: Num, strength: Num) -> Num:
    """Force (N) that shears a key of this width and length (m); shear strength in Pa.

    >>> round(key_shear_force(0.004, 0.020, 100e6), 6)
    8000.0
    """
    _sizes(width, length, strength)
    return strength * width * length


def key_bearing_force(depth: Num, length: Num, strength: Num) -> Num:
    """Force (N) that crushes the side of a key: its depth (m) in the shallower of shaft and hub.

    Length in m, bearing strength in Pa, of the softest of key, shaft and hub.

    >>> round(key_bearing_force(0.002, 0.020, 150e6), 6)
    6000.0
    """
    _sizes(depth, length, strength)
    return strength * depth * length


def pin_shear_force(diameter: Num, strength: Num, planes: Num = 1) -> Num:
    """Force (N) that shears a pin (m) in one plane, or in two; shear strength in Pa.

    >>> round(pin_shear_force(0.004, 100e6, planes=2), 3)
    2513.274
    """
    _sizes(diameter, diameter, strength)
    refuse_unless(np.isin(planes, (1, 2)), "planes cut", planes, "", "1 (single) or 2 (double)")
    return strength * planes * np.pi * diameter**2 / 4


def pin_bearing_force(diameter: Num, length: Num, strength: Num) -> Num:
    """Force (N) that crushes a pin (m) or its hole over a length (m) of bearing; strength in Pa.

    >>> round(pin_bearing_force(0.004, 0.010, 150e6), 6)
    6000.0
    """
    _sizes(diameter, length, strength)
    return strength * diameter * length


def torque_on_circle(force: Num, diameter: Num) -> Num:
    """Torque (N·m) of a force (N) that acts along a circle of this diameter (m).

    >>> torque_on_circle(8000.0, 0.020)
    80.0
    """
    not_below_zero("force", force, "N")
    above_zero("diameter", diameter, "m")
    return force * diameter / 2


def key_torque(width: Num, depth: Num, length: Num, shear: Num, bearing: Num, diameter: Num) -> Num:
    """Torque (N·m) of a key on a shaft (m): the lesser of shear and bearing; strengths in Pa.

    >>> round(float(key_torque(0.004, 0.002, 0.020, 100e6, 150e6, 0.020)), 6)
    60.0
    """
    cut, crushed = key_shear_force(width, length, shear), key_bearing_force(depth, length, bearing)
    return torque_on_circle(np.minimum(cut, crushed), diameter)


def _sizes(across: Num, along: Num, strength: Num) -> None:
    above_zero("width, depth or diameter", across, "m")
    above_zero("length", along, "m")
    above_zero("strength", strength, "Pa")
