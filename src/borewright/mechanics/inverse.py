"""The input at which a rising curve reaches a wanted value."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from borewright.mechanics.num import Floats


def where_it_reaches(
    curve: Callable[[float], float], wanted: float, low: float, high: float, steps: int = 60
) -> float | None:
    """Smallest input in [low, high] whose `curve` is at least `wanted`, by bisection; None if none.

    `curve` must not fall between low and high.

    >>> round(where_it_reaches(lambda s: s * s, 2.0, 0.0, 4.0), 9)
    1.414213562
    """
    if curve(low) >= wanted:
        return low
    if not high > low or curve(high) < wanted:
        return None
    for _ in range(steps):
        middle = 0.5 * (low + high)
        low, high = (low, middle) if curve(middle) >= wanted else (middle, high)
    return high


def where_it_reaches_by_rows(
    curve: Callable[[Floats], Floats], wanted: float, low: float, high: float, rounds: int = 4
) -> float | None:
    """The same for a curve that answers many inputs at once: each round looks at 64 and goes in
    between two of them, so that four rounds tell a part in ten million.

    >>> round(where_it_reaches_by_rows(lambda s: s * s, 2.0, 0.0, 4.0), 6)
    1.414214
    """
    for _ in range(rounds):
        places = np.linspace(low, high, ROW)
        reached = np.asarray(curve(places)) >= wanted
        if not reached.any():
            return None
        first = int(reached.argmax())
        if first == 0:
            return low
        low, high = float(places[first - 1]), float(places[first])
    return high


ROW = 65
"""Inputs looked at in one round."""


def where_it_first_reaches(
    curve: Callable[[float], float], wanted: float, low: float, high: float, looks: int = 200
) -> float | None:
    """The same for a curve that may fall in between; None where no look reaches `wanted`.

    Looks at so many even steps and halves the first that reaches it. Weakness: a rise and fall
    within one step is missed.

    >>> from math import sin
    >>> round(where_it_first_reaches(sin, 0.5, 0.0, 6.0), 6)
    0.523599
    """
    marks = [low + k * (high - low) / looks for k in range(looks)] + [high]
    reached = next((k for k, s in enumerate(marks) if curve(s) >= wanted), None)
    if reached is None:
        return None
    return where_it_reaches(curve, wanted, marks[max(reached - 1, 0)], marks[reached])
