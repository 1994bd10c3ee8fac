"""Showing SI values as a shop writes them, first in its own units, the other units beside.

`Show("inch").bore(0.0158877)` is `0.6255 in (15.888 mm)`. Rounding is to what can be measured or
dialled, never finer; a size that was typed as a shop fraction comes back as one. Raises nothing for
any float: infinity reads "without limit", not-a-number "not known".
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Final, Literal

from borewright.quantities import rounding
from borewright.quantities.inch_fractions import mixed_text, sixty_fourth
from borewright.quantities.kinds import OWN_METHOD, canonical, kind_of
from borewright.quantities.scales import SCALES, Scale
from borewright.quantities.si import (
    Kelvin,
    Kilogram,
    Metre,
    MetrePerMetre,
    MetrePerSecond,
    Newton,
    NewtonMetre,
    Pascal,
    Radian,
    RevPerSecond,
    Second,
    Watt,
)
from borewright.quantities.units import unit

TOO_LARGE: Final = 1e30
"""In SI: nothing measured comes near, and a float this large is a stand-in for infinity."""

PENCIL: Final = 4
"""Significant figures that a sum is given where the usual rounding is coarser."""

CLOSE_ENOUGH: Final = 1e-3
"""A rounding that changes less than this leaves a pencil sum right."""


@dataclass(frozen=True, slots=True)
class Show:
    """How one reader wants quantities: `units` is the system that comes first."""

    units: Literal["inch", "mm"]

    def bore(self, size: Metre) -> str:
        """A measured diameter: to 0.0001 in and 0.002 mm; one typed in whole µm stays as typed.

        >>> Show("inch").bore(0.0158877), Show("mm").bore(0.01801)
        ('0.6255 in (15.888 mm)', '18.010 mm (0.7091 in)')
        """
        return self._one("bore", size)

    def length(self, size: Metre) -> str:
        """A length for rule and caliper: a 64th where it is one, else 0.01 in and 0.1 mm.

        >>> Show("inch").length(0.03175), Show("inch").length(0.0493)
        ('1 1/4 in (31.75 mm)', '1.94 in (49.3 mm)')
        >>> Show("mm").length(0.04)
        '40 mm (1.57 in)'
        """
        if not _sayable(size):
            return _no_number(size)
        return self._both(*_lengths(size))

    def rule(self, size: Metre) -> str:
        """A length read by a rule: as `length`, but beside a fraction of an inch half millimetres.

        >>> Show("inch").rule(0.0460375), Show("inch").length(0.0460375)
        ('1 13/16 in (46 mm)', '1 13/16 in (46.04 mm)')
        >>> Show("mm").rule(0.037)
        '37 mm (1.46 in)'
        """
        fraction = sixty_fourth(inch_number(size)) if _sayable(size) else None
        if self.units == "mm" or not fraction:
            return self.length(size)
        return f"{mixed_text(fraction)} in ({rounding.trimmed(round(2000 * size) / 2, 1)} mm)"

    def turned(self, size: Metre) -> str:
        """A diameter to turn to: a thou and 0.01 mm, a figure finer where that is not all of it.

        >>> Show("inch").turned(0.0635), Show("mm").turned(0.0634873)
        ('2.500 in (63.50 mm)', '63.487 mm (2.4995 in)')
        """
        return self._one("turned", size)

    def depth(self, size: Metre) -> str:
        """A depth of cut or of a tooth, as a dial is read: to 0.001 in and 0.01 mm.

        >>> Show("inch").depth(0.0034242), Show("mm").depth(0.0045)
        ('0.135 in (3.42 mm)', '4.5 mm (0.177 in)')
        """
        return self._one("depth", size)

    def small(self, size: Metre) -> str:
        """An interference or growth: tenths of a thou and µm.

        >>> Show("inch").small(15e-6), Show("mm").small(5.6e-6)
        ('0.0006 in (15 µm)', '5.6 µm (0.0002 in)')
        """
        return self._one("small", size)

    def feed(self, feed: Metre) -> str:
        """A feed a turn.

        >>> Show("inch").feed(0.0001016)
        '0.004 in/rev (0.102 mm/rev)'
        """
        return self._one("feed", feed)

    def force(self, force: Newton) -> str:
        """A force.

        >>> Show("inch").force(1512.0), Show("mm").force(88.96)
        ('340 lbf (1.51 kN)', '89 N (20 lbf)')
        """
        return self._one("force", force)

    def torque(self, torque: NewtonMetre) -> str:
        """A torque.

        >>> Show("inch").torque(22.0), Show("mm").torque(1.0)
        ('195 lbf·in (22 N·m)', '1 N·m (8.9 lbf·in)')
        """
        return self._one("torque", torque)

    def pressure(self, pressure: Pascal) -> str:
        """A pressure, stress or modulus.

        >>> Show("inch").pressure(12.34e6), Show("mm").pressure(207e9)
        ('1790 psi (12.3 MPa)', '207 GPa (30000 ksi)')
        """
        return self._one("pressure", pressure)

    def power(self, power: Watt) -> str:
        """A power.

        >>> Show("inch").power(560.0)
        '0.75 hp (560 W)'
        """
        return self._one("power", power)

    def weight(self, mass: Kilogram) -> str:
        """A weight on the scales.

        >>> Show("inch").weight(2.27)
        '5 lb (2.27 kg)'
        """
        return self._one("mass", mass)

    def surface(self, speed: MetrePerSecond) -> str:
        """A cutting speed.

        >>> Show("inch").surface(0.508)
        '100 ft/min (30 m/min)'
        """
        return self._one("surface", speed)

    def spindle(self, speed: RevPerSecond) -> str:
        """A spindle speed.

        >>> Show("inch").spindle(350 / 60)
        '350 rpm'
        """
        return self._one("spindle", speed)

    def angle(self, angle: Radian) -> str:
        """An angle.

        >>> Show("inch").angle(math.pi / 2), Show("mm").angle(math.atan(0.00025))
        ('90°', '0.0143°')
        """
        return self._one("angle", angle)

    def temperature_difference(self, rise: Kelvin) -> str:
        """A difference of temperature.

        >>> Show("inch").temperature_difference(30.0)
        '54 °F (30 °C)'
        """
        return self._one("temperature difference", rise)

    def temperature(self, temperature: Kelvin) -> str:
        """A temperature.

        >>> Show("inch").temperature(293.15), Show("mm").temperature(293.15)
        ('68 °F (20 °C)', '20 °C (68 °F)')
        """
        if not _sayable(temperature):
            return _no_number(temperature)
        fahrenheit, celsius = (
            rounding.fixed(unit("temperature", s).from_si(temperature), 0) for s in "FC"
        )
        return self._both(f"{fahrenheit} °F", f"{celsius} °C")

    def time(self, time: Second) -> str:
        """A time.

        >>> Show("inch").time(10.2), Show("inch").time(180.0)
        ('10.2 s', '3 min')
        """
        return self._one("time", time)

    def taper(self, taper: MetrePerMetre) -> str:
        """A taper on diameter, by the foot and as one in so many.

        >>> Show("inch").taper(0.0005), Show("mm").taper(0.0005)
        ('0.006 in/ft (1:2000)', '1:2000 (0.006 in/ft)')
        """
        if not _sayable(taper):
            return _no_number(taper)
        one_in = f"1:{rounding.significant(1 / taper, 3)}" if abs(taper) > 1e-12 else "parallel"
        return self._both(f"{rounding.significant(taper * 12, 3)} in/ft", one_in)

    def ratio(self, ratio: float) -> str:
        """A plain number to three figures.

        >>> Show("mm").ratio(1.34159)
        '1.34'
        """
        return self._one("ratio", ratio)

    def band(self, low: float, high: float, kind: str) -> str:
        """From low to high in one unit; the kinds are those of `scales.SCALES` and their aliases.

        >>> Show("inch").band(0.0493, 0.0544, "length")
        '1.94 to 2.14 in (49.3 to 54.4 mm)'
        >>> Show("mm").band(900.0, 1500.0, "force")
        '0.9 to 1.5 kN (200 to 340 lbf)'
        """
        if not (_sayable(low) and _sayable(high)):
            return f"{self.quantity(low, '', kind)} to {self.quantity(high, '', kind)}"
        if canonical(kind) not in SCALES:
            return f"{self.quantity(low, '', kind)} to {self.quantity(high, '', kind)}"
        return self._both(*_ranges(kind, low, high))

    def quantity(self, value: float, unit_symbol: str, kind: str = "") -> str:
        """A figure by its kind, else by its SI unit; an unknown unit is shown as it is.

        >>> show = Show("inch")
        >>> show.quantity(0.0158877, "m", "bore"), show.quantity(22.0, "N·m")
        ('0.6255 in (15.888 mm)', '195 lbf·in (22 N·m)')
        >>> show.quantity(1.2e-11, "1/Pa")
        '0.000000000012 1/Pa'
        """
        name = kind_of(unit_symbol, kind)
        if name in OWN_METHOD:
            own = {
                "length": self.length,
                "rule": self.rule,
                "taper": self.taper,
                "temperature": self.temperature,
            }
            return own[name](value)
        if name:
            return self._one(name, value)
        if not _sayable(value):
            return _no_number(value)
        return f"{rounding.significant(value, 3)} {unit_symbol}"

    def pencil(self, value: float, unit_symbol: str, kind: str = "") -> str:
        """As `quantity`, with the digits that a sum needs where the usual rounding is coarser.

        >>> Show("inch").pencil(3.3e-6, "m", "small"), Show("mm").pencil(0.016006, "m", "bore")
        ('0.0001299 in', '16.006 mm (0.6302 in)')
        """
        name = kind_of(unit_symbol, kind)
        if not _sayable(value) or name in ("taper", "temperature"):
            return self.quantity(value, unit_symbol, kind)
        if not name:
            return f"{rounding.significant(value, PENCIL)} {unit_symbol}".rstrip()
        inch, metric = _pair(name, value)
        scale = inch if self.units == "inch" or metric is None else metric
        exact, shown = value * scale.per_si, float(scale.number(value))
        fraction = name == "length" and sixty_fourth(exact) is not None and scale is inch
        if fraction or math.isclose(exact, shown, rel_tol=CLOSE_ENOUGH):
            return self.quantity(value, unit_symbol, kind)
        return f"{rounding.significant(exact, PENCIL)}{scale.join}{scale.symbol}"

    def _one(self, kind: str, value: float) -> str:
        if not _sayable(value):
            return _no_number(value)
        return self._both(*_labels(kind, value))

    def _both(self, inch: str, metric: str) -> str:
        if not metric or not inch:
            return inch or metric
        return f"{inch} ({metric})" if self.units == "inch" else f"{metric} ({inch})"


def inch_number(size: Metre) -> float:
    """Inches in a length.

    >>> inch_number(0.0254)
    1.0
    """
    return float(Fraction(size) / unit("length", "in").factor)


def _pair(kind: str, value: float) -> tuple[Scale, Scale | None]:
    return SCALES[canonical(kind)](abs(value))


def _label(scale: Scale | None, value: float) -> str:
    return f"{scale.number(value)}{scale.join}{scale.symbol}" if scale else ""


SAID: Final = 4096
"""Texts kept: a plan says the same few sizes, speeds and depths of every hold that it weighs."""


@lru_cache(maxsize=SAID, typed=True)
def _labels(kind: str, value: float) -> tuple[str, str]:
    """A value in the inch shop's unit and in the metric one."""
    inch, metric = _pair(kind, value)
    return _label(inch, value), _label(metric, value)


@lru_cache(maxsize=SAID, typed=True)
def _lengths(size: Metre) -> tuple[str, str]:
    """The same of a length: a fraction of an inch with its exact millimetres, where it is one."""
    fraction = sixty_fourth(inch_number(size))
    if not fraction:
        return _labels("length", size)
    return f"{mixed_text(fraction)} in", f"{rounding.trimmed(size * 1000, 2)} mm"


@lru_cache(maxsize=SAID, typed=True)
def _ranges(kind: str, low: float, high: float) -> tuple[str, str]:
    """From low to high in the inch shop's unit and in the metric one."""
    inch, metric = _pair(kind, max(abs(low), abs(high)))
    return _range(inch, low, high), _range(metric, low, high) if metric else ""


def _range(scale: Scale, low: float, high: float) -> str:
    return f"{scale.number(low)} to {scale.number(high)}{scale.join}{scale.symbol}"


def _sayable(value: float) -> bool:
    return abs(value) < TOO_LARGE


def _no_number(value: float) -> str:
    return "not known" if math.isnan(value) else "without limit"
