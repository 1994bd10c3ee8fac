"""For each kind of quantity: the inch shop's unit and the metric one at a size, and how fine.

A `Scale` turns an SI value into a number's text. The choice of unit (N or kN, psi or ksi) looks at
a size, so that both ends of a band get the same.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache, partial
from types import MappingProxyType
from typing import Final

from borewright.quantities import rounding
from borewright.quantities.units import unit


@dataclass(frozen=True, slots=True)
class Scale:
    """A unit as shown, what one SI unit is in it, and its rounding."""

    symbol: str
    per_si: float
    text: Callable[[float], str]
    join: str = " "

    def number(self, value: float) -> str:
        """The number of an SI value, without its unit."""
        return self.text(value * self.per_si)


Pair = tuple[Scale, Scale | None]
"""Inch shop first; None where both shops use the same unit."""


EIGHTH: Final = 0.003175
"""Metres, 1/8 in: below it a length is a depth of cut or a chamfer and is read to a thou."""


def _named(kind: str, symbol: str, text: Callable[[float], str], shown: str = "") -> Scale:
    return Scale(shown or symbol, _per_si(kind, symbol), text)


@cache
def _per_si(kind: str, symbol: str) -> float:
    """What one SI unit is in this one; the exact factors are asked once."""
    return float(1 / unit(kind, symbol).factor)


def _bore_mm(value: float) -> str:
    if rounding.is_exact(value, 3):
        return rounding.fixed(value, 3)
    return rounding.steps(value, 0.002, 3)


def _length_mm(value: float, decimals: int) -> str:
    if rounding.is_exact(value, 2):
        return rounding.trimmed(value, 2)
    return rounding.fixed(value, decimals)


def _small_in(value: float) -> str:
    return rounding.fixed(value, 4 if abs(value) >= 0.000095 or value == 0 else 5)


def _small_um(value: float) -> str:
    return rounding.trimmed(value, 0 if abs(value) >= 10 else 1)


def _bore(size: float) -> Pair:
    inch = _named("length", "in", partial(rounding.fixed, decimals=4))
    return inch, _named("length", "mm", _bore_mm)


def _length(size: float) -> Pair:
    fine = size < EIGHTH
    inch = _named("length", "in", partial(rounding.fixed, decimals=3 if fine else 2))
    return inch, _named("length", "mm", partial(_length_mm, decimals=2 if fine else 1))


def _turned_in(value: float) -> str:
    return rounding.fixed(value, 3 if rounding.is_exact(value, 3) else 4)


def _turned_mm(value: float) -> str:
    return rounding.fixed(value, 2 if rounding.is_exact(value, 2) else 3)


def _turned(size: float) -> Pair:
    inch = _named("length", "in", _turned_in)
    return inch, _named("length", "mm", _turned_mm)


def _depth_mm(value: float) -> str:
    return rounding.trimmed(value, 2)


def _depth(size: float) -> Pair:
    """As a dial is read: to a thou and a hundredth, however deep."""
    inch = _named("length", "in", partial(rounding.fixed, decimals=3))
    return inch, _named("length", "mm", _depth_mm)


def _small(size: float) -> Pair:
    inch = _named("length", "in", _small_in)
    if size >= 1e-3:
        return inch, _named("length", "mm", partial(rounding.fixed, decimals=3))
    return inch, _named("length", "um", _small_um, "µm")


def _feed(size: float) -> Pair:
    inch = _named("feed", "in/rev", partial(rounding.trimmed, decimals=4))
    return inch, _named("feed", "mm/rev", partial(rounding.trimmed, decimals=3))


def _force(size: float) -> Pair:
    inch = _named("force", "lbf", rounding.shop)
    return inch, _named("force", "kN" if size >= 1000 else "N", rounding.shop)


def _torque(size: float) -> Pair:
    inch = _named("torque", "lbf·ft" if size >= 1000 else "lbf·in", rounding.shop)
    return inch, _named("torque", "N·m", rounding.shop)


def _pressure(size: float) -> Pair:
    metric = "GPa" if size >= 1e10 else "MPa" if size >= 1e6 else "kPa" if size >= 1e3 else "Pa"
    inch = _named("pressure", "ksi" if size >= 5e8 else "psi", rounding.shop)
    return inch, _named("pressure", metric, rounding.shop)


def _power(size: float) -> Pair:
    inch = _named("power", "hp", rounding.shop)
    return inch, _named("power", "kW" if size >= 1000 else "W", rounding.shop)


def _mass(size: float) -> Pair:
    light = size < 0.45
    inch = _named("mass", "oz" if light else "lb", rounding.shop)
    return inch, _named("mass", "g" if light else "kg", rounding.shop)


def _surface(size: float) -> Pair:
    inch = _named("surface", "ft/min", rounding.shop)
    return inch, _named("surface", "m/min", rounding.shop)


def _rpm(value: float) -> str:
    return rounding.fixed(value, 0) if abs(value) >= 20 else rounding.trimmed(value, 1)


def _degrees(value: float) -> str:
    return rounding.trimmed(value, 2) if abs(value) >= 1 else rounding.significant(value, 3)


def _spindle(size: float) -> Pair:
    return _named("spindle", "rpm", _rpm), None


def _angle(size: float) -> Pair:
    degrees = _named("angle", "deg", _degrees)
    return Scale("°", degrees.per_si, _degrees, join=""), None


def _whole_degrees(value: float) -> str:
    return rounding.trimmed(value, 0 if abs(value) >= 10 else 1)


def _warmer(size: float) -> Pair:
    inch = _named("temperature difference", "F", _whole_degrees, "°F")
    return inch, _named("temperature difference", "C", _whole_degrees, "°C")


def _time(size: float) -> Pair:
    symbol = "s" if size < 90 else "min" if size < 5400 else "h"
    return _named("time", symbol, rounding.shop), None


def _ratio(size: float) -> Pair:
    return Scale("", 1.0, partial(rounding.significant, figures=3), join=""), None


def _rate(size: float) -> Pair:
    # 60 s/min over the cubes of the inch and the centimetre
    inch = Scale("in³/min", 60 / 0.0254**3, rounding.shop)
    return inch, Scale("cm³/min", 60e6, rounding.shop)


def _stiffness(size: float) -> Pair:
    per_inch = unit("length", "in").factor / unit("force", "lbf").factor
    return Scale("lbf/in", float(per_inch), rounding.shop), Scale("N/µm", 1e-6, rounding.shop)


SCALES: Final[Mapping[str, Callable[[float], Pair]]] = MappingProxyType(
    {
        "bore": _bore,
        "length": _length,
        "rule": _length,
        "turned": _turned,
        "depth": _depth,
        "small": _small,
        "feed": _feed,
        "force": _force,
        "torque": _torque,
        "pressure": _pressure,
        "power": _power,
        "mass": _mass,
        "surface": _surface,
        "spindle": _spindle,
        "angle": _angle,
        "temperature difference": _warmer,
        "time": _time,
        "ratio": _ratio,
        "rate": _rate,
        "stiffness": _stiffness,
    }
)
