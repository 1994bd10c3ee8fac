"""Cutting force from the metal's shear strength: a second road, beside a fitted power law.

A chip sheared off along one plane at the angle φ to the cut, the tool straight across it:
    φ = π/4 + α/2 - λ/2,   tan λ = μ        α rake, μ friction of chip on tool
    F = τ · w · t / sin φ · cos(λ - α) / cos(φ + λ - α)
Source: M. E. Merchant, 1945 (from memory); checked against Ghosh & Mallik, Manufacturing Science,
Ex. 4.3. Weakness: a keen edge, no built-up edge, one plane; real angles are smaller and forces
larger, by a quarter and more.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.num import Num
from borewright.quantities.si import Metre, Pascal, Radian


def shear_angle(rake: Radian, friction: float) -> Radian:
    """Angle (rad) of the plane that takes the least force.

    >>> round(float(np.degrees(shear_angle(np.radians(10), 0.5))), 1)
    36.7
    """
    return float(np.pi / 4 + rake / 2 - np.arctan(friction) / 2)


def shear_force(
    strength: Pascal, width: Metre, thickness: Metre, rake: Radian, friction: float
) -> Num:
    """Cutting force (N) for a chip (m) of metal with this shear strength (Pa).

    >>> round(float(shear_force(400e6, 2e-3, 0.2e-3, np.radians(10), 0.5)))
    429
    """
    angle, slide = shear_angle(rake, friction), float(np.arctan(friction))
    area = width * thickness / np.sin(angle)
    return float(strength * area * np.cos(slide - rake) / np.cos(angle + slide - rake))
