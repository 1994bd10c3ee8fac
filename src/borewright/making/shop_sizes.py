"""Sizes that nobody measures closely, brought to what a shop's rule or dial says."""

from __future__ import annotations

from math import ceil, floor
from typing import Final, Literal

from borewright.quantities.si import Kelvin, Metre

STEP: Final[dict[str, Metre]] = {"inch": 0.0254 / 64, "mm": 1e-4}

SHOP: Final[dict[str, Metre]] = {"inch": 0.0254 / 32, "mm": 5e-4}
"""What a length or a shoulder is turned to where no fit asks for more."""
EXACT: Final = 1e-6
"""Of a step: a size this close to one is that step."""


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
    return ceil(size / step - EXACT) * step


def up_to_shop(size: Metre, units: Literal["inch", "mm"]) -> Metre:
    """The next 32nd of an inch, or half millimetre, that is not less than the size.

    >>> round(up_to_shop(0.01051, "mm") * 1e3, 3), up_to_shop(0.0254, "inch")
    (11.0, 0.0254)
    """
    return ceil(size / SHOP[units] - EXACT) * SHOP[units]


def down_to_shop(size: Metre, units: Literal["inch", "mm"]) -> Metre:
    """The last one that is not more.

    >>> round(down_to_shop(0.03556, "inch") / 0.0254, 5), round(down_to_shop(0.0224, "mm") * 1e3, 3)
    (1.375, 22.0)
    """
    return floor(size / SHOP[units] + EXACT) * SHOP[units]


def to_dial(size: Metre, units: Literal["inch", "mm"]) -> Metre:
    """A diameter to the nearest thou, or hundredth of a millimetre.

    >>> round(to_dial(0.0256492, "inch") / 0.0254, 4)
    1.01
    """
    step = 2.54e-5 if units == "inch" else 1e-5
    return step * round(size / step)


def to_tenth(size: Metre, units: Literal["inch", "mm"]) -> Metre:
    """A size to the last figure that a shop measures: a tenth of a thou, or a micrometre.

    >>> round(to_tenth(0.01600047, "mm") * 1e3, 4), round(to_tenth(0.0254038, "inch") / 0.0254, 5)
    (16.0, 1.0001)
    """
    step = 2.54e-6 if units == "inch" else 1e-6
    return step * round(size / step)


def general_tolerance(inch: float, mm: float, units: Literal["inch", "mm"]) -> str:
    """The general tolerance of a drawing, in its own unit first and the same in both.

    >>> general_tolerance(0.005, 0.1, "inch"), general_tolerance(0.005, 0.1, "mm")
    ('±0.005 in (0.13 mm) where no limits stand', '±0.1 mm (0.004 in) where no limits stand')
    """
    if units == "inch":
        return f"±{inch:.3f} in ({25.4 * inch:.2f} mm) where no limits stand"
    return f"±{mm:g} mm ({mm / 25.4:.3f} in) where no limits stand"


def heat_words(low: Kelvin, high: Kelvin, units: Literal["inch", "mm"]) -> str:
    """A range of hot temperatures, to what a furnace or an eye can tell.

    >>> heat_words(1063.15, 1088.15, "inch")
    '1450 to 1500 °F (790 to 815 °C)'
    """
    celsius = " to ".join(f"{5 * round((t - 273.15) / 5)}" for t in (low, high)) + " °C"
    fahrenheit = " to ".join(f"{10 * round((t * 1.8 - 459.67) / 10)}" for t in (low, high)) + " °F"
    return f"{fahrenheit} ({celsius})" if units == "inch" else f"{celsius} ({fahrenheit})"
