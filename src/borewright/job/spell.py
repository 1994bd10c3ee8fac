"""SI values as text that a person can read and that reads back as the very same float."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from typing import Final

from borewright.quantities.inch_fractions import mixed_text, sixty_fourth
from borewright.quantities.units import NamedUnit, unit

_CHOICES: Final[dict[str, dict[str, tuple[str, ...]]]] = {
    "length": {"inch": ("in", "mm", "m"), "mm": ("mm", "in", "m")},
    "feed": {"inch": ("in", "mm", "m"), "mm": ("mm", "in", "m")},
    "force": {"inch": ("lbf", "kN", "N"), "mm": ("kN", "lbf", "N")},
    "power": {"inch": ("hp", "kW", "W"), "mm": ("kW", "hp", "W")},
    "mass": {"inch": ("lb", "kg"), "mm": ("kg", "lb", "kg")},
    "spindle": {"inch": ("rpm", "rev/s"), "mm": ("rpm", "rev/s")},
    "surface": {"inch": ("ft/min", "m/min", "m/s"), "mm": ("m/min", "ft/min", "m/s")},
    "angle": {"inch": ("deg", "rad"), "mm": ("deg", "rad")},
    "taper": {"inch": ("in/ft", "in/in"), "mm": ("mm/m", "mm/mm")},
}
"""Units to try, liked best first; the last has factor 1, where 17 figures are always exact."""
SHORT: Final = 8
"""Figures: a value a person typed is this short in the unit they typed it in."""
LONG: Final = 17
"""Figures that always tell two floats apart."""


def spell(value: float, kind: str, units: str) -> str:
    """The shortest exact spelling, in the shop's units where they give one.

    >>> spell(0.015875, "length", "inch"), spell(0.01601, "length", "inch")
    ('5/8in', '16.01mm')
    >>> spell(0.0, "length", "mm")
    '0mm'
    """
    named = [unit(kind, symbol) for symbol in _CHOICES[kind][units]]
    tries = (*_spellings(value, named, SHORT), *_spellings(value, named, LONG))
    return tries[0]


def _spellings(value: float, units: list[NamedUnit], figures: int) -> Iterator[str]:
    for named in units:
        exact = Fraction(value) / named.factor
        fraction = sixty_fourth(float(exact)) if named.symbol == "in" else None
        if fraction is not None and named.to_si(fraction) == value:
            yield f"{mixed_text(fraction)}{named.symbol}"
        for count in range(1, figures + 1):
            text = f"{Decimal(f'{float(exact):.{count}g}'):f}"
            if named.to_si(Fraction(text)) == value:
                yield f"{text}{named.symbol}"
                break
