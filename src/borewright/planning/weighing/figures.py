"""Results turned into figures that travel: value, band, rule, numbers in, sources."""

from __future__ import annotations

import math

from borewright.answer.records import Draws, Figure, Input
from borewright.mechanics.spread import ends, likely


def figure(
    name: str,
    best: float,
    unit: str,
    kind: str,
    formula: str,
    inputs: tuple[Input, ...] = (),
    sources: tuple[str, ...] = (),
    band: tuple[float, float] | None = None,
) -> Figure:
    """One number with its rule and sources; `band` is its 5 % and 95 % ends."""
    low, high = band if band else (None, None)
    return Figure(name, best, unit, low, high, formula, inputs, tuple(sorted(set(sources))), kind)


def spread(
    name: str,
    draws: Draws,
    unit: str,
    kind: str,
    formula: str,
    inputs: tuple[Input, ...] = (),
    sources: tuple[str, ...] = (),
) -> Figure:
    """A figure whose band is that of its draws, the likely case within it.

    A result that rises and falls with its inputs may have its likely case beyond nineteen in twenty.
    """
    best, (low, high) = likely(draws), ends(draws)
    band = min(low, best), max(high, best)
    return figure(name, best, unit, kind, formula, inputs, sources, band)


def given(label: str, value: float, unit: str = "", kind: str = "") -> Input:
    """One number that went into a figure."""
    return Input(label, value, unit, kind)


def times(margin: float) -> str:
    """A margin as a person says it.

    >>> times(3.14), times(0.4), times(math.inf)
    ('3.1 times', '0.4 times', 'many times')
    """
    if math.isinf(margin) or margin > 50:
        return "many times"
    return f"{margin:.1f} times"
