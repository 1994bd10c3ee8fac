"""Gauge sizes as words: finer than a bore is said, limits never wider than they are meant.

Four decimals of a millimetre, five of an inch: as the drawing says them.
"""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor
from typing import Final

from borewright.quantities.show import inch_number
from borewright.quantities.si import Metre

DECIMALS: Final = {"inch": 5, "mm": 4}
EXACT: Final = 1e-4
"""Of the last figure: a number this close to it is that figure."""


def limits(zone: tuple[Metre, Metre], units: str) -> str:
    """Limits (m) rounded inward: what is within them is within those that are meant.

    >>> limits((0.0160018, 0.01600484), "mm")
    '16.0018 to 16.0048 mm (0.63000 to 0.63011 in)'
    """
    return _both(zone, units, ceil, floor)


def bounds(zone: tuple[Metre, Metre], units: str) -> str:
    """Bounds (m) rounded outward: what is meant lies within what is said.

    >>> bounds((0.0160018, 0.01600484), "mm")
    '16.0018 to 16.0049 mm (0.62999 to 0.63012 in)'
    """
    return _both(zone, units, floor, ceil)


def at_least(size: Metre, units: str) -> str:
    """One size (m), rounded down."""
    return _single(size, units, floor)


def below(size: Metre, units: str) -> str:
    """One size (m), rounded up."""
    return _single(size, units, ceil)


def _both(
    zone: tuple[Metre, Metre],
    units: str,
    low: Callable[[float], int],
    high: Callable[[float], int],
) -> str:
    texts = {u: f"{_number(zone[0], u, low)} to {_number(zone[1], u, high)}" for u in DECIMALS}
    return _beside(texts, units)


def _single(size: Metre, units: str, way: Callable[[float], int]) -> str:
    return _beside({u: _number(size, u, way) for u in DECIMALS}, units)


def _beside(texts: dict[str, str], units: str) -> str:
    inch, metric = f"{texts['inch']} in", f"{texts['mm']} mm"
    return f"{inch} ({metric})" if units == "inch" else f"{metric} ({inch})"


def _number(size: Metre, units: str, way: Callable[[float], int]) -> str:
    count = DECIMALS[units]
    value = (inch_number(size) if units == "inch" else 1e3 * size) * 10**count
    near = round(value)
    whole = near if abs(value - near) < EXACT else way(value)
    return f"{whole / 10**count:.{count}f}"
