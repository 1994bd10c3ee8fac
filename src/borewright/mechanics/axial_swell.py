"""How much the outside of a ring grows while its faces are clamped.

Clamped along its axis by a force F anywhere on both faces, a ring of bore d and outside D grows at
its outside, on the mean of its length, by
    swell    ΔD = 4 ν F D / (π (D² - d²) E)         that is ν σ D / E with σ the mean pressure
It comes off so much smaller, and so much out of straight as the clamp is uneven.
Source: reciprocity with the ring under an even pull at its outside, whose radial and hoop stress
add up to 2 q D² / (D² - d²) everywhere (Lamé), so that it shortens evenly along its axis. Exact for
a ring of one outside however the force is spread over its faces. Units: N, m (diameters), Pa; force
0 or more, 0 <= d < D, E above 0; OutsideModel otherwise.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num


def swell(force: Num, bore: Num, outside: Num, modulus: Num, poisson: float) -> Num:
    """Growth (m, on diameter) of the outside under an axial clamp of `force` (N).

    >>> round(float(swell(10e3, 0.020, 0.025, 97e9, 0.33)) * 1e6, 2)
    4.81
    """
    _check(force, bore, outside, modulus)
    return 4 * poisson * force * outside / (np.pi * (outside**2 - bore**2) * modulus)


def force_for_swell(allowed: Num, bore: Num, outside: Num, modulus: Num, poisson: float) -> Num:
    """Clamp (N) that swells the outside by so much (m, on diameter).

    >>> round(float(force_for_swell(4.81e-6, 0.020, 0.025, 97e9, 0.33)), -1)
    9990.0
    """
    not_below_zero("growth", allowed, "m")
    return allowed / swell(1.0, bore, outside, modulus, poisson)


def _check(force: Num, bore: Num, outside: Num, modulus: Num) -> None:
    not_below_zero("clamp force", force, "N")
    not_below_zero("bore", bore, "m")
    above_zero("modulus", modulus, "Pa")
    refuse_unless(np.greater(outside, bore), "outside", outside, "m", "more than the bore")
