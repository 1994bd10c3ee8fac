"""A length measured away from 20 °C, and how sure a sum of measured things is.

Source: ISO 1 (sizes are meant at 20 °C); JCGM 100:2008 for combining standard uncertainties.
Weakness: inputs taken as independent, and the sum as nearly straight in each of them.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from borewright.quantities.si import Kelvin, Metre, PerKelvin

REFERENCE_TEMPERATURE = 293.15
"""20 °C in K, by ISO 1."""


def length_at_reference(length: Metre, expansion: PerKelvin, temperature: Kelvin) -> Metre:
    """What a length (m) read at a temperature (K) will be at 20 °C.

    >>> round(length_at_reference(0.1, 23e-6, 303.15), 9)
    0.099977005
    """
    return length / (1 + expansion * (temperature - REFERENCE_TEMPERATURE))


def length_read_at(length: Metre, expansion: PerKelvin, temperature: Kelvin) -> Metre:
    """What a length (m) that is so at 20 °C reads at a temperature (K), the gauge itself at 20 °C.

    >>> round(length_read_at(0.1, 23e-6, 303.15), 9)
    0.100023
    """
    return length * (1 + expansion * (temperature - REFERENCE_TEMPERATURE))


def combined_uncertainty(contributions: Sequence[float]) -> float:
    """Root of the sum of squares of standard uncertainties, each already times its sensitivity.

    >>> combined_uncertainty([3.0, 4.0])
    5.0
    """
    return math.sqrt(math.fsum(u * u for u in contributions))
