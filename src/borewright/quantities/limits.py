"""The sizes within which a quantity of this trade can lie; outside it was mistyped.

Ours: wide on purpose, far outside any manual lathe, so that only slips of unit or key are caught.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import Final


@dataclass(frozen=True, slots=True)
class Limits:
    """SI ends of a quantity's size, and how those ends read to a person."""

    least: float
    most: float
    least_text: str
    most_text: str
    zero_text: str = "zero"

    def allow(self, value: float, *, zero: bool, negative: bool) -> bool:
        """Whether an SI value may stand.

        >>> LIMITS["length"].allow(0.0, zero=False, negative=False)
        False
        """
        if value == 0:
            return zero
        return (value > 0 or negative) and self.least <= abs(value) <= self.most

    def sentence(self, noun: str, *, zero: bool, negative: bool) -> str:
        """What is allowed, in words.

        >>> LIMITS["length"].sentence("a length", zero=False, negative=False)
        'a length above zero, from 0.001 um to 20 m (787 in)'
        """
        above = f"of {self.zero_text} or more" if zero else f"above {self.zero_text}"
        start = "of either sign" if negative else above
        none = " (or zero)" if zero and negative else ""
        return f"{noun} {start}{none}, from {self.least_text} to {self.most_text}"


LIMITS: Final = {
    "length": Limits(1e-9, 20.0, "0.001 um", "20 m (787 in)"),
    "feed": Limits(1e-9, 0.05, "0.001 um", "50 mm (2 in)"),
    "roughness": Limits(1e-9, 1e-3, "0.001 um", "1 mm (39 thou)"),
    "force": Limits(1e-6, 1e7, "0.000001 N", "10000 kN (2250000 lbf)"),
    "angle": Limits(1e-9, 2 * pi, "0.0000001 deg", "360 deg"),
    "torque": Limits(1e-6, 1e6, "0.000001 N·m", "1000000 N·m (738000 lbf·ft)"),
    "pressure": Limits(1e-3, 2e12, "0.001 Pa", "2000 GPa (290000 ksi)"),
    "power": Limits(1e-6, 1e6, "0.000001 W", "1000 kW (1340 hp)"),
    "mass": Limits(1e-9, 1e5, "0.000001 g", "100000 kg (220000 lb)"),
    "spindle": Limits(1e-3, 1000.0, "0.06 rpm", "60000 rpm"),
    "surface": Limits(1e-6, 200.0, "0.00006 m/min", "200 m/s (39400 ft/min)"),
    "time": Limits(1e-3, 1e7, "0.001 s", "2780 h"),
    "taper": Limits(1e-9, 2.0, "1:1000000000", "2:1"),
    "temperature": Limits(1.0, 2300.0, "1 K (-457.87 F)", "2300 K (3680 F)", "absolute zero"),
    "temperature difference": Limits(1e-6, 2300.0, "0.000001 K", "2300 K (4140 F)"),
    "number": Limits(1e-12, 1e12, "1e-12", "1e12"),
}
