"""Sizes that nobody measures closely, brought to what a shop's rule or dial says."""

from __future__ import annotations

from math import ceil
from typing import Final, Literal

from borewright.quantities.si import Kelvin, Metre

STEP: Final[dict[str, Metre]] = {"inch": 0.0254 / 64, "mm": 1e-4}


def to_rule(size: Metre, units: Literal["inch", "mm"]) -> Metre:
    """The nearest 64th of an inch, or tenth of a millimetre; never none.

    >>> round(to_rule(0.0008, "inch") / 0.0254 * 64), round(to_rule(0.00108, "mm") * 1e3, 3)
    (2, 1.1)
    """
    step = STEP[units]
    return max(1, round(size / step)) * step


def up_to_rule(size: Metre, units: Literal["inch", "mm"]) -> Metre:
    """The same, never less than the size.

    >>> round(up_to_rule(0.00101, "mm") * 1e3, 3)
    1.1
    """
    step = STEP[units]
    return ceil(size / step - 1e-6) * step


def heat_words(low: Kelvin, high: Kelvin, units: Literal["inch", "mm"]) -> str:
    """A range of hot temperatures, to what a furnace or an eye can tell.

    >>> heat_words(1063.15, 1088.15, "inch")
    '1450 to 1500 °F (790 to 815 °C)'
    """
    celsius = " to ".join(f"{5 * round((t - 273.15) / 5)}" for t in (low, high)) + " °C"
    fahrenheit = " to ".join(f"{10 * round((t * 1.8 - 459.67) / 10)}" for t in (low, high)) + " °F"
    return f"{fahrenheit} ({celsius})" if units == "inch" else f"{celsius} ({fahrenheit})"
