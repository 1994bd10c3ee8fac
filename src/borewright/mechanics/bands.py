"""Bounds in round numbers between which a field is drawn in one tint."""

from __future__ import annotations

from math import ceil, floor, log10
from typing import Final

ROUND: Final = (1.0, 2.0, 5.0)
"""The figures of a round number; each power of ten has all three."""

MOST_STEPS: Final = 5
"""Most even steps that the whole is cut into."""

LEAST: Final = 0.25
"""The highest band spans at least this share of a step; else the one below reaches to the end."""

FINER: Final = 3
"""How many more round numbers stand below the lowest step, as far down as the field reaches."""


def round_step(size: float, most: int) -> float:
    """The smallest 1-2-5 step of which no more than `most` are less than a size.

    >>> round_step(3400.0, 5), round_step(4.2, 5), round_step(10.1, 5)
    (1000.0, 1.0, 5.0)
    """
    power = 10.0 ** floor(log10(size / most) - 1e-9)
    return next(step * power for step in (*ROUND, 10.0, 20.0) if step * power * most >= size - 1e-9)


def round_bounds(lowest: float, largest: float) -> tuple[float, ...]:
    """Rising bounds strictly between the two: even steps of one size, finer ones below the first.

    `largest` above zero. A field that never falls far below its largest gets steps of its own.

    >>> round_bounds(0.0, 3400.0)
    (100.0, 200.0, 500.0, 1000.0, 2000.0, 3000.0)
    >>> round_bounds(3550.0, 4500.0)
    (3600.0, 3800.0, 4000.0, 4200.0, 4400.0)
    """
    step = round_step(largest, MOST_STEPS)
    if lowest > step:
        step = round_step(largest - lowest, MOST_STEPS)
    below = _below(step)
    even = [step * k for k in range(1, ceil(largest / step) + 1)]
    said = (float(f"{bound:.6g}") for bound in (*below, *even))
    return tuple(bound for bound in said if lowest < bound < largest - LEAST * step)


def _below(step: float) -> list[float]:
    """The next round numbers under a round number, rising."""
    power = 10.0 ** floor(log10(step) + 1e-9)
    series = [figure * power / tens for tens in (100.0, 10.0, 1.0) for figure in ROUND]
    return [number for number in series if number < step * (1 - 1e-9)][-FINER:]
