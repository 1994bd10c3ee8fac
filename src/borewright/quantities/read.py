"""Reading what a person types: each function gives SI floats or one refusal, nothing else.

`where` names the place (`--bore`, `job.toml: work.bore.size`) and opens the refusal. `bare` says
what a number without a unit means; None refuses it and shows both readings. A bare angle, torque,
time or speed stays refused whatever `bare` says, because inch and metric shops each use two
units for it. `zero` and `negative` allow those values. Every refusal is an `UnreadableQuantity`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal

from borewright.errors.tree import UnreadableQuantity
from borewright.quantities import refusals
from borewright.quantities.grammar import LONGEST, Split, split, tidy
from borewright.quantities.limits import LIMITS
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
from borewright.quantities.units import NamedUnit, find_unit, unit

System = Literal["inch", "mm"]
_INCH_WORDS: Final = frozenset({"in", "thou", "uin", "ft"})


@dataclass(frozen=True, slots=True)
class Speed:
    """A speed as stated: of the spindle or of the cut; the other is None."""

    spindle: RevPerSecond | None = None
    surface: MetrePerSecond | None = None


def read_length(
    text: str, where: str, *, bare: System | None = None, zero: bool = False, negative: bool = False
) -> Metre:
    """A length in metres.

    >>> read_length("5/8in", "--bore"), read_length("0.5thou", "--error")
    (0.015875, 1.27e-05)
    >>> read_length("18.01", "--bore")  # doctest: +NORMALIZE_WHITESPACE
    Traceback (most recent call last):
    borewright.errors.tree.UnreadableQuantity: --bore: found 18.01, which could be 18.01 mm
    (0.7091 in) or 18.01 in (457.45 mm); allowed is a number with its unit, such as 18.01mm or
    18.01in, or --units inch|mm
    """
    return _read(text, where, ("length",), bare, zero, negative)[1]


def length_system(text: str) -> System | None:
    """Whether a readable length was typed in inches or in metric units; None for a bare number.

    >>> length_system("5/8in"), length_system("18.01mm"), length_system("18")
    ('inch', 'mm', None)
    """
    found = split(tidy(text))
    named = find_unit("length", found.unit) if found else None
    if named is None:
        return None
    return "inch" if named.symbol in _INCH_WORDS else "mm"


def read_feed(text: str, where: str, *, bare: System | None = None, zero: bool = False) -> Metre:
    """A feed in metres a turn; `/rev` may be left out.

    >>> read_feed("0.1mm/rev", "--feed"), read_feed("0.1mm", "--feed")
    (0.0001, 0.0001)
    """
    return _read(text, where, ("feed",), bare, zero)[1]


def read_roughness(
    text: str, where: str, *, bare: System | None = None, zero: bool = True
) -> Metre:
    """A roughness height in metres; a bare number is µm, or millionths in an inch shop.

    >>> read_roughness("8um", "--roughness")
    8e-06
    """
    return _read(text, where, ("roughness",), bare, zero)[1]


def read_force(
    text: str, where: str, *, bare: System | None = None, zero: bool = False, negative: bool = False
) -> Newton:
    """A force in newtons; pounds are pounds-force here.

    >>> read_force("1.5kN", "--push"), round(read_force("20lbf", "--push"), 3)
    (1500.0, 88.964)
    """
    return _read(text, where, ("force",), bare, zero, negative)[1]


def read_angle(text: str, where: str, *, zero: bool = False, negative: bool = False) -> Radian:
    """An angle in radians.

    >>> round(read_angle("90deg", "--edge-angle"), 4)
    1.5708
    """
    return _read(text, where, ("angle",), None, zero, negative)[1]


def read_temperature(text: str, where: str, *, bare: System | None = None) -> Kelvin:
    """A temperature in kelvin above absolute zero.

    >>> round(read_temperature("68F", "--room"), 6), read_temperature("20 °C", "--room")
    (293.15, 293.15)
    """
    return _read(text, where, ("temperature",), bare)[1]


def read_temperature_difference(
    text: str, where: str, *, bare: System | None = None, zero: bool = False, negative: bool = False
) -> Kelvin:
    """A rise or fall in kelvin.

    >>> read_temperature_difference("54F", "--warmer")
    30.0
    """
    return _read(text, where, ("temperature difference",), bare, zero, negative)[1]


def read_torque(text: str, where: str, *, zero: bool = False) -> NewtonMetre:
    """A torque in newton metres.

    >>> round(read_torque("10 lbf·ft", "--torque"), 3)
    13.558
    """
    return _read(text, where, ("torque",), None, zero)[1]


def read_pressure(
    text: str, where: str, *, bare: System | None = None, zero: bool = False
) -> Pascal:
    """A pressure, stress or modulus in pascals.

    >>> read_pressure("100GPa", "--work-modulus")
    100000000000.0
    """
    return _read(text, where, ("pressure",), bare, zero)[1]


def read_power(text: str, where: str, *, bare: System | None = None, zero: bool = False) -> Watt:
    """A power in watts.

    >>> read_power("1.5kW", "--power")
    1500.0
    """
    return _read(text, where, ("power",), bare, zero)[1]


def read_mass(text: str, where: str, *, bare: System | None = None, zero: bool = False) -> Kilogram:
    """A mass in kilograms.

    >>> read_mass("250g", "--weight")
    0.25
    """
    return _read(text, where, ("mass",), bare, zero)[1]


def read_time(text: str, where: str, *, zero: bool = False) -> Second:
    """A time in seconds.

    >>> read_time("3min", "--wait")
    180.0
    """
    return _read(text, where, ("time",), None, zero)[1]


def read_spindle(text: str, where: str, *, bare: System | None = None) -> RevPerSecond:
    """A spindle speed in turns a second; with units stated a bare number is rpm in either system.

    >>> read_spindle("300rpm", "machine.speeds")
    5.0
    """
    found = None if bare is None else _number(text, where, ("spindle",))
    typed = f"{text} rpm" if found and not found.unit else text
    return _read(typed, where, ("spindle",), None)[1]


def read_speed(text: str, where: str) -> Speed:
    """A spindle speed or a cutting speed, whichever the unit says.

    >>> read_speed("300rpm", "--speed")
    Speed(spindle=5.0, surface=None)
    >>> read_speed("30m/min", "--speed")
    Speed(spindle=None, surface=0.5)
    """
    kind, value = _read(text, where, ("spindle", "surface"), None)
    return Speed(spindle=value) if kind == "spindle" else Speed(surface=value)


def read_taper(text: str, where: str, *, zero: bool = False) -> MetrePerMetre:
    """A taper on diameter per length: a plain ratio, `1:2000`, or with its unit.

    >>> read_taper("0.0005", "--taper"), read_taper("1:2000", "--taper")
    (0.0005, 0.0005)
    >>> read_taper("0.006in/ft", "--taper")
    0.0005
    """
    parts = tidy(text).split(":")
    if len(text) <= LONGEST and len(parts) == 2:
        value = _one_in(text, where, parts)
    else:
        found = _number(text, where, ("taper",))
        named = find_unit("taper", found.unit) if found.unit else unit("taper", "mm/mm")
        if named is None:
            raise refusals.wrong_unit(where, text, found, ("taper",))
        value = named.to_si(found.number)
    return _within(value, text, where, "taper", zero, False)


def read_number(
    text: str, where: str, *, zero: bool = False, negative: bool = False, most: float = 1e12
) -> float:
    """A plain number without a unit, at most `most`.

    >>> read_number("0.12", "--friction")
    0.12
    """
    found = _number(text, where, ("number",))
    if found.unit:
        raise refusals.wrong_unit(where, text, found, ("number",))
    value = _within(float(found.number), text, where, "number", zero, negative)
    if abs(value) > most:
        raise UnreadableQuantity(where, refusals.shorten(text), f"a number up to {most:g}")
    return value


def _read(
    text: str,
    where: str,
    kinds: Sequence[str],
    bare: System | None,
    zero: bool = False,
    negative: bool = False,
) -> tuple[str, float]:
    found = _number(text, where, kinds)
    named = _unit_of(found, text, where, kinds, bare)
    value = named.to_si(found.number)
    return named.kind, _within(value, text, where, named.kind, zero, negative)


def _number(text: str, where: str, kinds: Sequence[str]) -> Split:
    found = split(tidy(text)) if len(text) <= LONGEST else None
    if found is None:
        raise refusals.unreadable(where, text.strip(), kinds)
    if found.unit.startswith(","):
        raise refusals.unreadable(where, tidy(text), kinds)
    return found


def _unit_of(
    found: Split, text: str, where: str, kinds: Sequence[str], bare: System | None
) -> NamedUnit:
    for kind in kinds:
        named = find_unit(kind, found.unit) if found.unit else None
        if named:
            return named
    if found.unit:
        raise refusals.wrong_unit(where, text, found, kinds)
    if bare is None or kinds[0] not in refusals.READINGS:
        raise refusals.bare_number(where, found, kinds)
    metric, inch = refusals.READINGS[kinds[0]]
    return unit(kinds[0], inch if bare == "inch" else metric)


def _one_in(text: str, where: str, parts: Sequence[str]) -> float:
    top, bottom = (split(part.strip()) for part in parts)
    if top is None or bottom is None or top.unit or bottom.unit or not bottom.number:
        raise refusals.unreadable(where, text.strip(), ("taper",))
    return float(Fraction(top.number, bottom.number))


def _within(value: float, text: str, where: str, kind: str, zero: bool, negative: bool) -> float:
    limits = LIMITS[kind]
    if not limits.allow(value, zero=zero, negative=negative):
        allowed = limits.sentence(refusals.noun(kind), zero=zero, negative=negative)
        raise UnreadableQuantity(where, refusals.shorten(text), allowed)
    return value + 0.0  # "-0" reads as plain zero
