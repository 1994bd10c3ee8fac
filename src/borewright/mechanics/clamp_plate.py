"""A round plate with a hole, pressed at the hole by a bolt and borne all round near its edge.

Thin-plate theory: with b the radius of the hole, a that of the ring it bears on, q = b/a, the plate
free to tilt at both, bending round the hole is greatest at its edge,
    M = F / (4 π) · ((1 - ν) + 2 (1 + ν) ln(1/q) / (1 - q²)),   stress 6 M / t².
As q goes to 1 it is the twisted ring, M = F / (2 π).
Source: the plate equation for a ring load, as in Timoshenko and Woinowsky-Krieger, Theory of Plates
and Shells (from memory); checked against an integration of the equation and the twisted ring.
Weakness: the bolt's head spreads its push past the hole and the plate goes on past the ring: both
make it stronger than said.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.num import Num
from borewright.quantities.si import Metre


def moment_at_hole(force: Num, hole: Metre, ring: Metre, poisson: float) -> Num:
    """Bending round the hole (N) under a force (N); radii in m, 0 < hole < ring.

    >>> round(moment_at_hole(10e3, 0.0125, 0.05, 0.3))
    3617
    """
    q = hole / ring
    turn = 2 * (1 + poisson) * float(np.log(1 / q)) / (1 - q**2)
    return force / (4 * np.pi) * ((1 - poisson) + turn)


def thickness_for(stress: float, force: Num, hole: Metre, ring: Metre, poisson: float) -> Num:
    """Thickness (m) at which the edge of the hole is bent to `stress` (Pa); the rest as above.

    >>> round(thickness_for(150e6, 10e3, 0.0125, 0.05, 0.3) * 1e3, 2)
    12.03
    """
    return (6 * moment_at_hole(force, hole, ring, poisson) / stress) ** 0.5
