"""Results of a hold turned into figures that travel: value, band, rule, numbers in, source."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Draws, Figure, Input
from borewright.mechanics.runout import root_sum_square
from borewright.mechanics.spread import ends, likely

Throws = tuple[tuple[str, Draws], ...]
"""Shares of a runout by name, each a whole reading (m)."""


def thrown(throws: Throws) -> Draws:
    """Root-sum-square of the shares (m)."""
    return np.asarray(root_sum_square([share for _, share in throws]))


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
    best, (low, high) = likely(draws), ends(draws)
    return Figure(
        name, best, unit, min(low, best), max(high, best), formula, inputs, (source,), kind
    )
