"""A web dishing: an annular plate between a stiff hub, which is pushed, and a rim that is held.

Thin-plate theory. With q = b/a (hub over rim radius), D = E t³ / (12 (1 - ν²)) and ρ = r/a the
dish is  w = F a² / (8 π D) · (ρ² ln ρ + B (ρ² - 1) + C ln ρ), where no slope at the hub and, at the
rim, no slope (clamped) or no bending (free to tilt) give
    clamped         2B = -1 + 2 q² ln q / (1 - q²)
    free to tilt    2B = -((3 + ν) + (1 - ν) q² (1 + 2 ln q)) / ((1 + ν) + (1 - ν) q²)
    both            C  = -q² (2 ln q + 1 + 2B).
The radial bending is greatest at the hub, M = F / (2π) · (1 + ln q + B), stress 6 M / t².
Source: the plate equation for a ring load, as in Timoshenko and Woinowsky-Krieger, Theory of Plates
and Shells (from memory); checked against its solid plate as q goes to 0 and against an integration
of the equation. Weakness: shear left out, so a web thicker than a fifth of its span dishes more;
the fillet at the hub left out, so the metal sees more; a real rim lies between the two ends.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.num import Num
from borewright.quantities.si import Metre


def plate_stiffness(modulus: Num, poisson: float, thickness: Metre) -> Num:
    """D (N·m) of a plate: modulus in Pa, thickness in m.

    >>> round(plate_stiffness(100e9, 0.25, 0.006), 3)
    1920.0
    """
    return modulus * thickness**3 / (12 * (1 - poisson**2))


def dish(
    force: Num,
    hub_radius: Metre,
    rim_radius: Metre,
    thickness: Metre,
    modulus: Num,
    poisson: float,
    *,
    clamped: bool = False,
) -> Num:
    """How far (m) the hub moves against the rim under an axial force (N) spread round the hub.

    Radii and thickness in m, 0 < hub radius < rim radius; modulus in Pa. The rim free to tilt
    unless `clamped`.

    >>> round(dish(10e3, 0.02, 0.08, 0.006, 100e9, 0.26) * 1e6)
    909
    """
    q = hub_radius / rim_radius
    b = _b(q, poisson, clamped=clamped)
    c = -(q**2) * (2 * float(np.log(q)) + 1 + 2 * b)
    shape = float(q**2 * np.log(q) + b * (q**2 - 1) + c * np.log(q))
    stiffness = plate_stiffness(modulus, poisson, thickness)
    return force * rim_radius**2 / (8 * np.pi * stiffness) * shape


def dish_stress(
    force: Num,
    hub_radius: Metre,
    rim_radius: Metre,
    thickness: Metre,
    poisson: float,
    *,
    clamped: bool = False,
) -> Num:
    """Greatest radial bending stress (Pa), where the web meets the hub; inputs as for `dish`.

    >>> round(dish_stress(10e3, 0.02, 0.08, 0.006, 0.26) / 1e6)
    425
    """
    q = hub_radius / rim_radius
    share = abs(float(1 + np.log(q)) + _b(q, poisson, clamped=clamped))
    moment = force / (2 * np.pi) * share
    return 6 * moment / thickness**2


def _b(q: float, poisson: float, *, clamped: bool) -> float:
    if clamped:
        return float(-1 + 2 * q**2 * np.log(q) / (1 - q**2)) / 2
    top = (3 + poisson) + (1 - poisson) * q**2 * (1 + 2 * np.log(q))
    return float(-top / ((1 + poisson) + (1 - poisson) * q**2)) / 2
