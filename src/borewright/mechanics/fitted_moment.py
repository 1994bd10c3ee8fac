"""A moment across a close fit, taken by pressure on opposite sides at its two ends.

A shaft that fits its bore over a length L can lean only by its clearance; then the two ends of the
fit bear, on opposite sides, with a pressure p on the projected area that grows from nothing in the
middle to its most at either end:
    each half    F = p d (L/2) / 2 = p d L / 4,   its middle L/3 from the middle of the fit
    moment       M = F 2 (L/3) = p d L² / 6
    leaning      s = c / L       c the clearance on diameter
Units: Pa, m, N·m, as floats or arrays that broadcast; all above 0 but the clearance, which may be
0; OutsideModel otherwise.
Source: own derivation, the linear pressure of a short pile or a socketed post. Weakness: shaft and
bore as rigid; a bell-mouthed bore bears on less than L.
"""

from __future__ import annotations

from borewright.mechanics.allowed import above_zero, not_below_zero
from borewright.mechanics.num import Num


def moment_of_fit(pressure: Num, diameter: Num, length: Num) -> Num:
    """Moment (N·m) at which the ends of a fit bear with this pressure (Pa, projected).

    >>> round(float(moment_of_fit(6e6, 0.020, 0.030)), 6)
    18.0
    """
    above_zero("pressure", pressure, "Pa")
    above_zero("diameter", diameter, "m")
    above_zero("length of the fit", length, "m")
    return pressure * diameter * length**2 / 6


def lean(clearance: Num, length: Num) -> Num:
    """Slope (rad) that a clearance on diameter (m) leaves over the length of a fit (m).

    >>> round(float(lean(5e-6, 0.050)), 9)
    0.0001
    """
    not_below_zero("clearance", clearance, "m")
    above_zero("length of the fit", length, "m")
    return clearance / length
