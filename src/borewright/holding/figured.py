"""Results of a hold turned into figures that travel: value, band, rule, numbers in, source."""

from __future__ import annotations

from borewright.answer.records import Draws, Figure, Input
from borewright.mechanics.spread import high_end, likely, low_end


def drawn_figure(
    name: str,
    draws: Draws,
    unit: str,
    kind: str,
    formula: str,
    inputs: tuple[Input, ...],
    source: str,
) -> Figure:
    """A figure whose band is that of its draws."""
    best = likely(draws)
    low, high = min(low_end(draws), best), max(high_end(draws), best)
    return Figure(name, best, unit, low, high, formula, inputs, (source,), kind)
