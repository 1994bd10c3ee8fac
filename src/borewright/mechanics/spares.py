"""How many to make so that enough are good: each is scrap by a chance of its own.

    P(n are enough) = Σ C(N - 1 + k, k) (1 - p)^N pᵏ,  k = 0 … n - N

the chance that the Nth good one comes at the nth try or before; N good ones wanted, p the chance of
scrap. Source: the negative binomial distribution. Weakness: castings of one heat fail together, so
that a bad heat spoils more at once than chance does.
"""

from __future__ import annotations

import math
from typing import Final

from borewright.errors import OutsideModel

MOST_SPARE: Final = 20_000
"""Beyond so many spares the process is at fault, not the number."""

ROUNDING: Final = 1e-12
"""Of a chance: what a sum of logarithms may be out."""


def chance_enough(wanted: int, tries: int, scrap: float) -> float:
    """Chance that of so many tries at least `wanted` are good; `scrap` is the chance of one bad.

    OutsideModel for a chance outside 0 to below 1, or fewer than one wanted.

    >>> round(chance_enough(3, 4, 0.1), 4)
    0.9477
    """
    _check(wanted, scrap)
    if tries < wanted:
        return 0.0
    return min(1.0, math.fsum(_terms(wanted, tries - wanted, scrap)))


def tries_needed(wanted: int, scrap: float, sure: float) -> int:
    """Fewest tries of which at least `wanted` are good with the chance `sure`, above 0 below 1.

    >>> tries_needed(3, 0.1, 0.94), tries_needed(3, 0.1, 0.95)
    (4, 5)
    """
    _check(wanted, scrap)
    if not 0.0 < sure < 1.0:
        raise OutsideModel("chance wanted", f"{sure:g}", "above 0 and below 1")
    if chance_enough(wanted, wanted + MOST_SPARE, scrap) < sure - ROUNDING:
        raise OutsideModel("chance wanted", f"{sure:g}", f"had with {MOST_SPARE} spares")
    # The chance only rises with the tries: halve what is left of the range.
    low, high = wanted, wanted + MOST_SPARE
    while low < high:
        middle = (low + high) // 2
        if chance_enough(wanted, middle, scrap) >= sure - ROUNDING:
            high = middle
        else:
            low = middle + 1
    return low


def _terms(wanted: int, most_spare: int, scrap: float) -> list[float]:
    return [math.exp(_log_term(wanted, k, scrap)) for k in range(most_spare + 1)]


def _log_term(wanted: int, bad: int, scrap: float) -> float:
    """Logarithm of C(N - 1 + k, k) (1 - p)^N p^k: the factors alone would leave the floats."""
    if bad and scrap == 0.0:
        return -math.inf
    ways = math.lgamma(wanted + bad) - math.lgamma(wanted) - math.lgamma(bad + 1)
    return ways + wanted * math.log1p(-scrap) + (bad * math.log(scrap) if bad else 0.0)


def _check(wanted: int, scrap: float) -> None:
    if wanted < 1:
        raise OutsideModel("good ones wanted", str(wanted), "1 or more")
    if not 0.0 <= scrap < 1.0:
        raise OutsideModel("chance of scrap", f"{scrap:g}", "0 to below 1")
