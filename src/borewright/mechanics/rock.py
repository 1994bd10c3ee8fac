"""Rocking: a moment tilts the work on its grip, and one end of the grip lifts.

Ring springs along the contact: a tilt changes the pressure by an amount that grows from the middle
of the grip to its ends and goes as the cosine round the bore. With normal force N spread over a
contact length L, the change at the ends equals the mean pressure at  M = N L / 12.
Source: our own derivation, closed form (integral of the spring forces). Weakness: mean pressure,
springs that do not help each other, and the axial friction that also resists the tilt left out.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.num import Num
from borewright.quantities.si import Metre


def lift_moment(normal: Num, contact_length: Num) -> Num:
    """Moment (N·m) at which the mean pressure is just lifted at the ends of the grip.

    >>> lift_moment(12e3, 0.025)
    25.0
    """
    return normal * contact_length / 12


def rocking_moment(passive: Num, axial: Num, tangential: Num, arm: Metre, radius: Metre) -> Num:
    """Moment (N·m) of a cut about the middle of the grip.

    The passive force at its arm and the axial force at its radius tilt in one plane, the cutting
    force at its arm in the other. On discs the axial force at the rim is most of it.

    >>> round(float(rocking_moment(0.0, 250.0 / 2.8, 0.0, 0.003, 0.14)), 6)
    12.5
    """
    return np.hypot(passive * arm + np.abs(axial) * radius, tangential * arm)
