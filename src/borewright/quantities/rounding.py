"""Rounding a number to what a lathe hand can use, as text. No units here."""

from __future__ import annotations

import math
from typing import Final

_EXACT: Final = 1e-6
"""Relative: a value this near a shorter text was typed so, and is shown back as typed."""
_NOTHING: Final = 1e-30
"""In any unit: below it a value is float noise and its zeros would fill the line."""


def steps(value: float, step: float, decimals: int) -> str:
    """The nearest whole number of steps, printed with `decimals`.

    >>> steps(15.8877, 0.002, 3)
    '15.888'
    """
    return fixed(round(value / step) * step, decimals)


def fixed(value: float, decimals: int) -> str:
    """Printed with `decimals`, and never as minus zero.

    >>> fixed(-0.00001, 2), fixed(1.5, 2)
    ('0.00', '1.50')
    """
    text = f"{value:.{decimals}f}"
    return text.removeprefix("-") if not text.strip("-0.") else text


def trimmed(value: float, decimals: int) -> str:
    """As `fixed`, without trailing zeros.

    >>> trimmed(31.750, 2), trimmed(40.0, 2)
    ('31.75', '40')
    """
    text = fixed(value, decimals)
    return text.rstrip("0").rstrip(".") if "." in text else text


def is_exact(value: float, decimals: int) -> bool:
    """Whether so many decimals say the whole value.

    >>> is_exact(31.75, 2), is_exact(49.276, 2)
    (True, False)
    """
    return abs(value - round(value, decimals)) <= _EXACT


def shop(value: float) -> str:
    """Two significant figures; three where the first is a 1 or where three say it all.

    The rounding then changes nothing by more than 2.5 %, less than friction leaves in doubt.

    >>> [shop(x) for x in (337.2, 1512.0, 1.5, 12.53, 2.27, 0.01234)]
    ['340', '1510', '1.5', '12.5', '2.27', '0.0123']
    """
    if abs(value) < _NOTHING:
        return "0"
    two, three = significant(value, 2), significant(value, 3)
    typed = math.isclose(float(three), value, rel_tol=_EXACT)
    return three if typed or three.lstrip("-0.").startswith("1") else two


def significant(value: float, figures: int) -> str:
    """So many significant figures, without exponent or trailing zeros.

    >>> significant(15265.0, 3), significant(0.00012345, 2)
    ('15300', '0.00012')
    """
    if abs(value) < _NOTHING:
        return "0"
    places = figures - 1 - math.floor(math.log10(abs(value)))
    return trimmed(round(value, places), max(places, 0))
