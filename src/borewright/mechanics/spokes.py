"""Spokes bending: equal beams from a stiff hub, which is pushed, to a rim that is held.

Each spoke of length L, width w (round the wheel) and thickness t (along it) carries F / n, with
I = w t³ / 12. Where the rim cannot tilt, both ends keep their slope: 12 E I / L³ each, and the
bending at either end is F L / (2 n). Where the rim tilts freely, 3 E I / L³ and F L / n at the hub.
Source: beam theory, closed form. Weakness: shear and the fillets left out; equal shares, and a real
rim lies between the two ends.
"""

from __future__ import annotations

from borewright.mechanics.num import Num
from borewright.quantities.si import Metre


def spokes_give(
    force: Num,
    number: int,
    length: Metre,
    width: Metre,
    thickness: Metre,
    modulus: Num,
    *,
    clamped: bool = False,
) -> Num:
    """How far (m) the hub moves against the rim under an axial force (N). Sizes in m, modulus Pa.

    >>> round(spokes_give(6e3, 6, 0.05, 0.02, 0.01, 100e9, clamped=True) * 1e6, 2)
    62.5
    """
    inertia = width * thickness**3 / 12
    ends = 12 if clamped else 3
    return force * length**3 / (ends * modulus * inertia * number)


def spokes_stress(
    force: Num,
    number: int,
    length: Metre,
    width: Metre,
    thickness: Metre,
    *,
    clamped: bool = False,
) -> Num:
    """Greatest bending stress (Pa) of a spoke, where it meets the hub; inputs as above.

    >>> round(spokes_stress(6e3, 6, 0.05, 0.02, 0.01, clamped=True) / 1e6, 6)
    75.0
    """
    moment = force * length / number / (2 if clamped else 1)
    return 6 * moment / (width * thickness**2)


def spokes_turning_stress(
    torque: Num, number: int, hub: Metre, rim: Metre, width: Metre, thickness: Metre
) -> Num:
    """Greatest bending stress (Pa) of spokes that carry a torque (N·m) from the rim to the hub.

    `hub` and `rim` are diameters (m) between which they stand. Each carries T / (n rim / 2) across
    itself at the rim, both ends keeping their slope, so that either end bends by half of that times
    its length; the width round the wheel resists. Torque alone: a force on one spoke is worse.

    >>> round(spokes_turning_stress(50.0, 5, 0.05, 0.15, 0.02, 0.01) / 1e6, 6)
    5.0
    """
    across = torque / (number * rim / 2)
    moment = across * (rim - hub) / 2 / 2
    return 6 * moment / (thickness * width**2)
