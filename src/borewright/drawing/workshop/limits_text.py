"""A size as a drawing says it: both limits in full, so that nobody has to add at the lathe."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor
from typing import Literal

from borewright.answer.drawn_part import Limits
from borewright.drawing.workshop.look import Look
from borewright.quantities.inch_fractions import mixed_text, sixty_fourth
from borewright.quantities.show import inch_number
from borewright.quantities.si import Metre

Units = Literal["inch", "mm"]
FINEST = {"inch": 5, "mm": 4}
"""Most decimals: half a tenth of a thou, a tenth of a micrometre."""
PLAIN = {"inch": 3, "mm": 2}
"""Decimals of a size that has no limits of its own."""
EXACT = 1e-9
"""Of the unit: a number this close to a decimal is that decimal."""


def limits_text(limits: Limits, look: Look, across: bool = False) -> str:
    """The size in the drawing's units, in both where asked.

    >>> plug = Limits(0.016, 0.0, 2e-6)
    >>> limits_text(plug, Look("mm"), across=True), limits_text(Limits(0.0254), Look("inch", True))
    ('Ø16.000 to 16.002', '1 [25.4]')
    """
    other: Units = "mm" if look.units == "inch" else "inch"
    said = _one(limits, look.units)
    if look.both:
        said = f"{said} [{_one(limits, other)}]"
    sign = limits.prefix or ("Ø" if across else "")
    words = f"{sign}{said}{' ' + limits.after if limits.after else ''}"
    return f"({words})" if limits.reference else words


def _one(limits: Limits, units: Units) -> str:
    if limits.lower == limits.upper == 0.0:
        return plain_size(limits.size, units, limits.decimal)
    low, high = limits.size + limits.lower, limits.size + limits.upper
    count = max(_decimals(low, units), _decimals(high, units), 3 if units == "mm" else 4)
    count = FINEST[units] if limits.finest else count
    ends = _inward(_number(low, units), count, ceil), _inward(_number(high, units), count, floor)
    return f"{ends[0]:.{count}f} to {ends[1]:.{count}f}"


def _inward(number: float, count: int, way: Callable[[float], int]) -> float:
    """Rounded so that the limits said are never wider than the limits meant."""
    unit = float(10**count)
    counts = number * unit
    near = round(counts)
    return (near if abs(counts - near) < 10 * EXACT * unit else way(counts)) / unit


def plain_size(size: Metre, units: Units, decimal: bool = False) -> str:
    """A size under the general tolerance: a shop fraction where it is one and may be said so.

    >>> plain_size(0.028575, "inch"), plain_size(0.0285, "mm"), plain_size(0.0285, "inch")
    ('1 1/8', '28.5', '1.122')
    """
    number = _number(size, units)
    fraction = sixty_fourth(number) if units == "inch" and not decimal else None
    if fraction:
        return mixed_text(fraction)
    return f"{number:.{PLAIN[units]}f}".rstrip("0").rstrip(".")


def _number(size: Metre, units: Units) -> float:
    return inch_number(size) if units == "inch" else 1000 * size


def _decimals(size: Metre, units: Units) -> int:
    """Fewest decimals that say the number in full, at most the finest."""
    number = _number(size, units)
    exact = (n for n in range(FINEST[units]) if abs(round(number, n) - number) < EXACT * 10)
    return next(exact, FINEST[units])
