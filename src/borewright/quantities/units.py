"""The unit table: what each unit symbol a shop types is worth in SI, as exact fractions.

Sources. Defined exactly, written from memory and refereed by Pint's table in
`tests/independent/test_units_against_pint.py`: inch 25.4 mm and pound 0.45359237 kg
(international yard and pound agreement, 1959); standard gravity 9.80665 m/s² (3rd CGPM, 1901);
horsepower 550 ft·lbf/s; the rest follows by arithmetic. π is the nearest float.
Imports `fractions` and `math` only, so that a refusal stays quick.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

INCH: Final = Fraction(254, 10_000)
FOOT: Final = 12 * INCH
POUND: Final = Fraction(45_359_237, 100_000_000)
GRAVITY: Final = Fraction(980_665, 100_000)
POUND_FORCE: Final = POUND * GRAVITY
PSI: Final = POUND_FORCE / INCH**2
_MICRO = Fraction(1, 1_000_000)
_MILLI = Fraction(1, 1_000)
_PI = Fraction(math.pi)


@dataclass(frozen=True, slots=True)
class NamedUnit:
    """A unit of one kind: `SI value = number · factor + offset`. `names` are other spellings."""

    symbol: str
    kind: str
    factor: Fraction
    names: tuple[str, ...] = ()
    offset: Fraction = Fraction(0)

    def to_si(self, number: Fraction) -> float:
        """The SI value nearest to `number` of this unit.

        >>> find_unit("length", "thou").to_si(Fraction(1, 2))
        1.27e-05
        """
        return float(number * self.factor + self.offset)

    def from_si(self, value: float) -> float:
        """How many of this unit an SI value is (a float; for showing).

        >>> find_unit("pressure", "MPa").from_si(2.5e6)
        2.5
        """
        return float((Fraction(value) - self.offset) / self.factor)


def _kind(kind: str, *rows: tuple[str, Fraction | int, str]) -> tuple[NamedUnit, ...]:
    return tuple(NamedUnit(s, kind, Fraction(f), tuple(names.split())) for s, f, names in rows)


_LENGTHS = (
    ("in", INCH, '" inch inches ins'),
    ("thou", INCH / 1000, "thous"),
    ("uin", INCH * _MICRO, "microinch microinches"),
    ("ft", FOOT, "foot feet"),
    ("um", _MICRO, "micron microns micrometre micrometer"),
    ("mm", _MILLI, "millimetre millimetres millimeter millimeters"),
    ("cm", Fraction(1, 100), "centimetre centimetres centimeter centimeters"),
    ("m", Fraction(1), "metre metres meter meters"),
)
_FEEDS = tuple((f"{s}/rev", f, f"{s}/r") for s, f, _ in _LENGTHS if s in ("in", "thou", "um", "mm"))

UNITS: Final[tuple[NamedUnit, ...]] = (
    *_kind("length", *_LENGTHS),
    *_kind("feed", *_LENGTHS, *_FEEDS),
    *_kind("roughness", *(row for row in _LENGTHS if row[0] in ("uin", "thou", "in", "um", "mm"))),
    *_kind(
        "force",
        ("lbf", POUND_FORCE, "lb lbs lbfs pound pounds"),
        ("ozf", POUND_FORCE / 16, "oz"),
        ("N", 1, "newton newtons"),
        ("kN", 1000, "kilonewton kilonewtons"),
        ("kgf", GRAVITY, "kp"),
    ),
    *_kind("angle", ("deg", _PI / 180, "° degs degree degrees"), ("rad", 1, "rads radian radians")),
    *_kind(
        "torque",
        ("N·m", 1, ""),
        ("N·mm", _MILLI, ""),
        ("lbf·in", POUND_FORCE * INCH, "in·lbf lb·in in·lb"),
        ("lbf·ft", POUND_FORCE * FOOT, "ft·lbf lb·ft ft·lb"),
    ),
    *_kind(
        "pressure",
        ("Pa", 1, "N/m2 N/m²"),
        ("kPa", 10**3, ""),
        ("MPa", 10**6, "N/mm2 N/mm²"),
        ("GPa", 10**9, "kN/mm2 kN/mm²"),
        ("bar", 10**5, ""),
        ("psi", PSI, "lbf/in2 lb/in2 lbf/in² lb/in²"),
        ("ksi", PSI * 1000, ""),
    ),
    *_kind(
        "power",
        ("W", 1, "watt watts"),
        ("kW", 1000, "kilowatt kilowatts"),
        ("hp", 550 * FOOT * POUND_FORCE, "horsepower"),
    ),
    *_kind(
        "mass",
        ("kg", 1, "kilogram kilograms"),
        ("g", _MILLI, "gram grams"),
        ("lb", POUND, "lbs pound pounds"),
        ("oz", POUND / 16, "ounce ounces"),
    ),
    *_kind("spindle", ("rpm", Fraction(1, 60), "rev/min r/min"), ("rev/s", 1, "rps r/s")),
    *_kind(
        "surface",
        ("ft/min", FOOT / 60, "fpm sfm sfpm"),
        ("ft/s", FOOT, ""),
        ("m/min", Fraction(1, 60), ""),
        ("m/s", 1, ""),
    ),
    *_kind(
        "time",
        ("s", 1, "sec secs second seconds"),
        ("min", 60, "mins minute minutes"),
        ("h", 3600, "hr hrs hour hours"),
    ),
    *_kind(
        "taper",
        ("in/ft", Fraction(1, 12), ""),
        ("in/in", 1, ""),
        ("thou/in", _MILLI, ""),
        ("mm/mm", 1, ""),
        ("mm/m", _MILLI, ""),
        ("um/mm", _MILLI, ""),
    ),
    NamedUnit("C", "temperature", Fraction(1), ("°C", "degC"), Fraction(27_315, 100)),
    NamedUnit(
        "F", "temperature", Fraction(5, 9), ("°F", "degF"), Fraction(45_967, 100) * Fraction(5, 9)
    ),
    NamedUnit("K", "temperature", Fraction(1), ("kelvin",)),
    NamedUnit("C", "temperature difference", Fraction(1), ("°C", "degC")),
    NamedUnit("F", "temperature difference", Fraction(5, 9), ("°F", "degF")),
    NamedUnit("K", "temperature difference", Fraction(1), ("kelvin", "kelvins")),
)

KINDS: Final = tuple(dict.fromkeys(unit.kind for unit in UNITS))
_LOOSE = re.compile(r"[\s·⋅*.\-]")


def _key(name: str) -> str:
    return _LOOSE.sub("", name)


def _by_name() -> tuple[dict[tuple[str, str], NamedUnit], dict[tuple[str, str], NamedUnit]]:
    exact: dict[tuple[str, str], NamedUnit] = {}
    loose: dict[tuple[str, str], NamedUnit] = {}
    for unit in UNITS:
        for name in (unit.symbol, *unit.names):
            exact.setdefault((unit.kind, _key(name)), unit)
            loose.setdefault((unit.kind, _key(name).lower()), unit)
    return exact, loose


_EXACT, _LOOSE_CASE = _by_name()


def find_unit(kind: str, name: str) -> NamedUnit | None:
    """The unit of that kind with that spelling, or None. Dots, spaces and (last) case are forgiven.

    >>> find_unit("torque", "ft lbf").symbol
    'lbf·ft'
    >>> find_unit("length", "N") is None
    True
    """
    if name[:1] in set("·⋅*."):
        return None
    key = _key(name)
    return _EXACT.get((kind, key)) or _LOOSE_CASE.get((kind, key.lower()))


def unit(kind: str, symbol: str) -> NamedUnit:
    """The unit of that kind with exactly that symbol; KeyError if the table has none.

    >>> unit("force", "kN").factor
    Fraction(1000, 1)
    """
    return _EXACT[kind, _key(symbol)]


def symbols(kind: str) -> tuple[str, ...]:
    """The symbols of a kind, in the table's order.

    >>> symbols("angle")
    ('deg', 'rad')
    """
    return tuple(unit.symbol for unit in UNITS if unit.kind == kind)


def kinds_of(name: str) -> tuple[str, ...]:
    """The kinds that know this spelling.

    >>> kinds_of("kN")
    ('force',)
    """
    return tuple(kind for kind in KINDS if find_unit(kind, name))
