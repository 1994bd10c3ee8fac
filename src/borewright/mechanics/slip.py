"""Friction between bore and mandrel carries torque and axial force together.

The joint holds while  sqrt((2 M / d)² + F²)  <= μ N.  F is what friction must carry along the
mandrel: the cut's axial force, signed, + towards the large end, against the taper's own thrust
N T / 2 towards the small end. Source: Coulomb; torque alone is Shigley, 9th ed., eqs 7-48, 7-49.
Weakness: the grip is taken as spread evenly; a load that tilts the work is not in it.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.num import Num
from borewright.quantities.si import Metre, MetrePerMetre


def slip_torque(normal: Num, friction: Num, diameter: Num) -> Num:
    """Torque (N·m) at which the joint slips with no axial load: μ N d / 2.

    >>> slip_torque(10e3, 0.1, 0.02)
    10.0
    """
    return friction * normal * diameter / 2


def axial_on_friction(axial: Num, normal: Num, taper: MetrePerMetre) -> Num:
    """Axial force (N) left for friction: |N T/2 - axial|; axial + towards the large end.

    >>> bool(axial_on_friction(-100.0, 10e3, 0.0005) > axial_on_friction(100.0, 10e3, 0.0005))
    True
    """
    return np.asarray(np.abs(normal * taper / 2 - axial), dtype=np.float64)


def friction_demand(torque: Num, diameter: Num, axial: Num) -> Num:
    """Resultant (N) that friction must carry: sqrt((2 M / d)² + F²).

    >>> float(friction_demand(0.3, 0.2, 4.0))
    5.0
    """
    return np.hypot(2 * torque / diameter, axial)


def slip_margin(friction_force: Num, demand: Num) -> Num:
    """What friction can carry (N) over what it must (N)."""
    return friction_force / demand


def slip_radius(friction_force: Num, diameter: Metre, cutting_force: Num, axial: Num) -> Num:
    """Radius (m) at which a cut of this tangential force (N) just slips; 0 if axial alone does."""
    left = np.sqrt(np.maximum(0.0, np.square(friction_force) - np.square(axial)))
    return np.asarray(left * (diameter / 2) / cutting_force, dtype=np.float64)


def proof_torque(demand: Num, diameter: Num, factor: float) -> Num:
    """Pure torque (N·m) that loads the joint `factor` times as hard as the cut's demand (N)."""
    return factor * demand * diameter / 2
