"""A ring pressed on a solid shaft that loses metal from its outside while it sits there.

The interference stays, the ring gets softer: with k = bore / outside and h = (1 + k²) / (1 - k²)
    p ∝ 1 / ((h + ν_w) / E_w + (1 - ν_m) / E_m)
so the grip falls as C_before / C_after, the hoop tension at the bore as p h, and von Mises'
stress there as p sqrt(h² + h + 1). Source: Lamé (any textbook on the strength of materials).
Weakness: a plain ring; the notches between gear teeth raise the tension at their roots.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from borewright.errors import OutsideModel
from borewright.quantities.si import Metre, Pascal, Ratio


@dataclass(frozen=True, slots=True)
class Softer:
    """After over before: pressure (and so grip), hoop tension and equivalent stress at the bore."""

    grip: Ratio
    tension: Ratio
    equivalent: Ratio


def turned_down(
    bore: Metre,
    before: Metre,
    after: Metre,
    work: tuple[Pascal, Ratio],
    mandrel: tuple[Pascal, Ratio],
) -> Softer:
    """Ratios for outsides before and after; `work` and `mandrel` are modulus and Poisson's ratio.

    OutsideModel unless bore < after <= before.

    >>> turned_down(0.016, 0.05, 0.05, (100e9, 0.3), (200e9, 0.3))
    Softer(grip=1.0, tension=1.0, equivalent=1.0)
    >>> round(turned_down(0.01, 1e9, 0.02, (1.0, 0.3), (1.0, 0.3)).grip, 6)  # 2 over 5/3 + 1
    0.75
    """
    if not bore < after <= before:
        raise OutsideModel("outside of the ring", f"{after:.4g} m", "more than the bore")
    h, left = _hoop(bore, before), _hoop(bore, after)
    grip = _give(h, work, mandrel) / _give(left, work, mandrel)
    return Softer(grip, grip * left / h, grip * _mises(left) / _mises(h))


def _hoop(bore: Metre, outside: Metre) -> float:
    k2 = (bore / outside) ** 2
    return (1 + k2) / (1 - k2)


def _mises(h: float) -> float:
    return math.sqrt(h * h + h + 1)


def _give(h: float, work: tuple[Pascal, Ratio], mandrel: tuple[Pascal, Ratio]) -> float:
    return (h + work[1]) / work[0] + (1 - mandrel[1]) / mandrel[0]
