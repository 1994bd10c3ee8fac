"""Ranges turned into draws, and draws into likely, low and high.

A table range (low, best, high) is read as 5 %, middle and 95 % of a two-sided lognormal (or, for
quantities that can be zero or negative, normal) spread. Draws come from an additive recurrence
with irrational steps (Richtmyer: the order of the fractional parts of k √prime), so the same input
gives the same numbers, and each input fills its range in equal shares. Element 0 of every set of
draws is the likely case.
Source: additive recurrence, e.g. Niederreiter, Random Number Generation and Quasi-Monte Carlo
Methods (from memory). Weakness: inputs are taken as independent unless one is built from another.
"""

from __future__ import annotations

import math
from functools import cache
from statistics import NormalDist

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.num import Floats

_PRIMES = (2, 3, 5, 13, 31, 43, 79, 101, 257, 271, 997, 1153, 1613, 2399, 3803, 7829)
# Picked in order from the primes so that no two streams correlate by more than 0.05 at COUNT.
_Z95 = NormalDist().inv_cdf(0.95)
COUNT = 256
"""Drawn cases beside the likely one."""


@cache
def standard_normals(stream: int, count: int = COUNT) -> Floats:
    """Shape (count + 1,): 0 first (the likely case), then `count` evenly spread normal draws.

    `stream` picks an independent set, 0 to 15.

    >>> z = standard_normals(0)
    >>> float(z[0]), len(z), round(abs(float(z[1:].mean())), 9)
    (0.0, 257, 0.0)
    """
    if not 0 <= stream < len(_PRIMES):
        raise OutsideModel("stream", stream, f"0 to {len(_PRIMES) - 1}")
    step = math.sqrt(_PRIMES[stream])
    order = np.argsort(np.argsort((step * np.arange(1, count + 1)) % 1.0))
    normal = NormalDist()
    drawn = np.array([0.0, *(normal.inv_cdf((k + 0.5) / count) for k in order.tolist())])
    drawn.flags.writeable = False
    return drawn


def lognormal_draws(low: float, best: float, high: float, z: Floats) -> Floats:
    """Draws of a positive range whose 5 %, 50 % and 95 % are low, best and high.

    >>> float(lognormal_draws(1.0, 2.0, 8.0, np.array([0.0]))[0])
    2.0
    """
    if not 0 < low <= best <= high:
        raise OutsideModel("range", f"{low}, {best}, {high}", "0 < low <= best <= high")
    up, down = math.log(high / best), math.log(best / low)
    return np.asarray(best * np.exp(np.where(z > 0, up, down) * z / _Z95), dtype=np.float64)


def normal_draws(low: float, best: float, high: float, z: Floats) -> Floats:
    """Draws of a range that may cross zero; 5 %, 50 % and 95 % are low, best and high."""
    if not low <= best <= high:
        raise OutsideModel("range", f"{low}, {best}, {high}", "low <= best <= high")
    return np.asarray(best + np.where(z > 0, high - best, best - low) * z / _Z95, dtype=np.float64)


def likely(draws: Floats) -> float:
    """The case with every input at its best value."""
    return float(draws[0])


def low_end(draws: Floats, percent: float = 5.0) -> float:
    """The value that `percent` of the drawn cases fall below."""
    return _percentile(draws[1:], percent)


def high_end(draws: Floats, percent: float = 95.0) -> float:
    """The value that `percent` of the drawn cases fall below, from above."""
    return _percentile(draws[1:], percent)


def ends(draws: Floats) -> tuple[float, float]:
    """`low_end` and `high_end` in one.

    >>> z = standard_normals(0)
    >>> ends(z) == (low_end(z), high_end(z))
    True
    """
    ordered = _ordered(draws[1:])
    return _at(ordered, 5.0), _at(ordered, 95.0)


def _ordered(drawn: Floats) -> Floats:
    """From small to large: sooner, of some hundreds, than two of them are picked out."""
    ordered = drawn.copy()
    ordered.sort()
    return ordered


def _percentile(drawn: Floats, percent: float) -> float:
    """What `percent` of these cases fall below.

    >>> _percentile(np.array([3.0, 1.0, 2.0]), 75.0)
    2.5
    """
    return _at(_ordered(drawn), percent)


def _at(ordered: Floats, percent: float) -> float:
    """By a line between the two ordered cases beside it, as numpy's percentile draws it.

    Between two infinite margins there is no line to draw: the lower one is taken. Written out here
    because the general routine costs ten times as much, and a plan asks for some hundreds.
    """
    place = percent / 100 * (ordered.size - 1)
    below = int(place)
    above = min(below + 1, ordered.size - 1)
    low, high = float(ordered[below]), float(ordered[above])
    return low if low == high else low + (place - below) * (high - low)
