"""The scale along an edge of a line chart: the shop's unit, the range, ticks at round numbers."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor, isfinite

from borewright.mechanics.bands import round_step
from borewright.quantities.inch_fractions import mixed_text
from borewright.quantities.kinds import canonical
from borewright.quantities.scales import SCALES
from borewright.quantities.show import TOO_LARGE, Show
from borewright.quantities.units import unit

INCH_STEPS = (1 / 16, 1 / 8, 1 / 4, 1 / 2, 1.0)
"""Steps of a scale in inches that a rule shows; above the last, round numbers."""
_RULED = ("length", "rule")
_SIZES = ("bore", "turned", "temperature")
"""Kinds whose nothing is far below all that is read: their scale does not begin there."""
_NOTHING, _NO_SHARE = 1e-6, 1e-5
"""A scale shorter than this, in its unit or as a share of its ends, has nothing to tell apart."""


@dataclass(frozen=True, slots=True)
class Axis:
    """A scale from `low` to `high` in its unit, laid from `start` to `end` on paper (mm).

    A value in SI is `per_si` times itself and `zero` in the unit; `ruled` ticks are fractions.
    """

    symbol: str
    per_si: float
    zero: float
    low: float
    high: float
    step: float
    ruled: bool = False
    start: float = 0.0
    end: float = 1.0

    def at(self, value: float) -> float:
        """The place of an SI value, mm on paper."""
        return self._place(value * self.per_si + self.zero)

    def laid(self, start: float, end: float) -> Axis:
        """The same scale elsewhere on paper."""
        return replace(self, start=start, end=end)

    @property
    def ticks(self) -> tuple[tuple[float, str], ...]:
        """Places on paper (mm) and numbers, rising."""
        first = ceil(self.low / self.step - 1e-6)
        last = floor(self.high / self.step + 1e-6)
        return tuple((self._place(k * self.step), self._number(k)) for k in range(first, last + 1))

    def _place(self, number: float) -> float:
        share = (number - self.low) / (self.high - self.low)
        return self.start + share * (self.end - self.start)

    def _number(self, k: int) -> str:
        if self.ruled and self.step < 1:
            return mixed_text(k * Fraction(self.step))
        return f"{k * self.step + 0.0:,.10g}"


def value_axis(kind: str, values: Iterable[float], show: Show, most: int) -> Axis:
    """A scale for what is read: from nothing, where that is near, to the next tick over all.

    >>> axis = value_axis("force", (0.0, 1730.0), Show("mm"), 5)
    >>> axis.symbol, axis.high, [number for _, number in axis.ticks]
    ('kN', 2.0, ['0', '0.5', '1', '1.5', '2'])
    """
    axis = _fitted(kind, values, show, most, from_nothing=canonical(kind) not in _SIZES)
    low, high = floor(axis.low / axis.step + 1e-6), ceil(axis.high / axis.step - 1e-6)
    return replace(axis, low=low * axis.step, high=high * axis.step)


def place_axis(kind: str, values: Iterable[float], show: Show, most: int) -> Axis:
    """A scale for places: just as long as the places reach.

    >>> axis = place_axis("rule", (0.0254, 0.0635), Show("inch"), 6)
    >>> [number for _, number in axis.ticks]
    ['1', '1 1/4', '1 1/2', '1 3/4', '2', '2 1/4', '2 1/2']
    """
    return _fitted(kind, values, show, most, from_nothing=False)


def usable(value: float) -> bool:
    """Whether a number can be drawn at all."""
    return isfinite(value) and abs(value) < TOO_LARGE


def _fitted(
    kind: str, values: Iterable[float], show: Show, most: int, *, from_nothing: bool
) -> Axis:
    found = [v for v in values if usable(v)] or [0.0]
    symbol, per_si, zero = _unit(kind, max(map(abs, found)), show)
    low, high = (end(found) * per_si + zero for end in (min, max))
    if from_nothing:
        low, high = min(low, 0.0), max(high, 0.0)
    if high - low <= max(_NO_SHARE * max(abs(low), abs(high)), _NOTHING):
        high = low + max(abs(low), 1.0)
    ruled = symbol == "in" and canonical(kind) in _RULED
    return Axis(symbol, per_si, zero, low, high, _step(high - low, most, ruled), ruled)


def _step(size: float, most: int, ruled: bool) -> float:
    fractions = INCH_STEPS if ruled else ()
    return next((s for s in fractions if s * most >= size >= 2 * s), round_step(size, most))


def _unit(kind: str, size: float, show: Show) -> tuple[str, float, float]:
    """Symbol, units in one SI unit, and the number at nothing in SI."""
    named = canonical(kind)
    if named == "temperature":
        symbol = "F" if show.units == "inch" else "C"
        degrees = unit("temperature", symbol).from_si
        return f"°{symbol}", degrees(1.0) - degrees(0.0), degrees(0.0)
    if named not in SCALES:
        return "", 1.0, 0.0
    inch, metric = SCALES["length" if named == "rule" else named](size)
    scale = inch if show.units == "inch" or metric is None else metric
    return scale.symbol, scale.per_si, 0.0
