"""Warming work until it slides on, and until it comes off.

    on    ΔT = (δ + c) / (α_w d)            the work alone is warm; c is the room left to slide in
    on    ΔT = (δ + c) / (α_m d)            the mandrel alone is cooled by this
    off   ΔT = δ / ((α_w - α_m) d)          both warm alike, pressed parts that cannot be parted
Source: free expansion, closed form. Weakness: both bodies at one temperature each, α as between the
two temperatures; the work cools from the bore as soon as it touches, so c buys seconds.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num
from borewright.quantities.si import PerKelvin


def change_to_slide_on(interference: Num, clearance: Num, bore: Num, expansion: PerKelvin) -> Num:
    """How much (K) to warm the work, or cool the mandrel, so that it slides on with a clearance.

    `interference` and `clearance` (m) on diameter; `expansion` (1/K) of the body that is warmed or
    cooled. OutsideModel unless bore and expansion are above 0 and the opening is not below 0.

    >>> round(change_to_slide_on(12e-6, 10e-6, 0.016, 23e-6), 1)
    59.8
    """
    above_zero("bore", bore)
    above_zero("expansion", expansion)
    not_below_zero("interference and clearance together", np.add(interference, clearance))
    return (interference + clearance) / (expansion * bore)


def change_to_come_off(
    interference: Num, bore: Num, work_expansion: PerKelvin, mandrel_expansion: PerKelvin
) -> Num:
    """How much (K) to warm work and mandrel together until nothing presses.

    OutsideModel unless the work grows more than the mandrel, and the bore (m) is above 0.

    >>> round(change_to_come_off(12e-6, 0.016, 23e-6, 11.5e-6), 1)
    65.2
    """
    above_zero("bore", bore)
    not_below_zero("interference", interference)
    more = np.subtract(work_expansion, mandrel_expansion)
    refuse_unless(more > 0, "expansion of the work less the mandrel's", more, "", "above 0")
    return interference / ((work_expansion - mandrel_expansion) * bore)
