"""Shop fractions of an inch: finding one in a decimal and writing it as a hand would."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

FINEST: Final = 64
NEAR_ENOUGH_IN: Final = 1e-6
"""How far from a 64th, in inches, a size may lie and still be written as that fraction: float
noise and one rounding through millimetres pass, nothing a micrometer could see does."""


def sixty_fourth(inches: float) -> Fraction | None:
    """The fraction with denominator up to 64 that `inches` is, or None when it is none.

    >>> sixty_fourth(0.625), sixty_fourth(0.6255)
    (Fraction(5, 8), None)
    """
    nearest = Fraction(round(inches * FINEST), FINEST)
    return nearest if abs(inches - nearest) <= NEAR_ENOUGH_IN else None


def mixed_text(value: Fraction) -> str:
    """A fraction as whole and part.

    >>> mixed_text(Fraction(5, 4)), mixed_text(Fraction(3)), mixed_text(Fraction(-5, 8))
    ('1 1/4', '3', '-5/8')
    """
    sign = "-" if value < 0 else ""
    whole, part = divmod(abs(value), 1)
    if not part:
        return f"{sign}{whole}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"
