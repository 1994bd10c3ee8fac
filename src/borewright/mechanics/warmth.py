"""Heat from the cut, the work taken as one body at one temperature, and what it takes from a fit.

    m c dT/dt = q - h A T   ->   T = (q / h A) (1 - exp(-h A t / (m c)))
Source: lumped capacity, closed form (any textbook on heat transfer). Weakness: thin parts warm
unevenly; the share of the cutting power that stays in the work is known only as a wide range.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.num import Num
from borewright.quantities.si import Kelvin, Metre, MetrePerSecond, PerKelvin, Second, SquareMetre


def temperature_rise(
    power: Num, seconds: Num, heat_capacity: Num, loss: Num, area: SquareMetre
) -> Num:
    """Rise (K) after heating with `power` (W) for `seconds`.

    `heat_capacity` of the whole body m c (J/K); `loss` (W/m²K) over `area` (m²).

    >>> round(float(temperature_rise(10.0, 100.0, 100.0, 1e-9, 0.01)), 4)
    10.0
    """
    rate = loss * area
    return np.asarray(power / rate * -np.expm1(-rate * seconds / heat_capacity), dtype=np.float64)


def cooling_time(share_left: float, heat_capacity: Num, loss: Num, area: SquareMetre) -> Num:
    """Time (s) in which the rise falls to this share of itself.

    >>> round(float(cooling_time(np.exp(-1), 100.0, 20.0, 0.05)), 6)
    100.0
    """
    return np.asarray(-np.log(share_left) * heat_capacity / (loss * area), dtype=np.float64)


def cutting_time(length: Metre, feed: Metre, surface: MetrePerSecond, diameter: Metre) -> Second:
    """Time (s) of one pass along a length at a feed per turn."""
    return length * np.pi * diameter / (feed * surface)


def squeeze_lost(bore: Metre, expansion: PerKelvin, rise: Kelvin) -> Metre:
    """Interference on diameter (m) lost when only the work warms.

    >>> round(squeeze_lost(0.016, 23e-6, 30.0) * 1e6, 1)
    11.0
    """
    return bore * expansion * rise


def squeeze_lost_by_both(bore: Metre, work: tuple[Num, Num], mandrel: tuple[Num, Num]) -> Num:
    """Interference on diameter (m) lost when both warm; each is its expansion (1/K) and warmth (K).

    Negative where the mandrel grows more than the bore.

    >>> round(float(squeeze_lost_by_both(0.016, (23.1e-6, 30.0), (11.5e-6, 30.0))) * 1e6, 1)
    5.6
    """
    return np.asarray(bore * (work[0] * work[1] - mandrel[0] * mandrel[1]), dtype=np.float64)
