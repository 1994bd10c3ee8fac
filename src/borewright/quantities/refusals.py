"""The one-sentence refusals of a quantity: what was read, and what would have been allowed."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from borewright.errors.tree import UnreadableQuantity, one_line
from borewright.quantities.grammar import LONGEST, Split
from borewright.quantities.units import NamedUnit, find_unit, kinds_of, symbols, unit

SHOWN: Final = 40
NOUNS: Final = {
    "angle": "an angle",
    "surface": "a cutting speed",
    "spindle": "a spindle speed",
    "feed": "a feed per turn",
}
EXAMPLES: Final = {
    "length": "5/8in, 0.6255in or 16mm",
    "feed": "0.004in or 0.1mm",
    "roughness": "8um or 32uin",
    "force": "340lbf or 1.5kN",
    "angle": "90deg",
    "torque": "10N·m or 90lbf·in",
    "pressure": "100GPa or 15000psi",
    "power": "1.5kW or 2hp",
    "mass": "2kg or 4.5lb",
    "spindle": "350rpm",
    "surface": "100ft/min or 30m/min",
    "time": "10s or 3min",
    "taper": "0.0005, 1:2000 or 0.006in/ft",
    "temperature": "68F or 20C",
    "temperature difference": "30K or 54F",
    "number": "0.12",
}
READINGS: Final = {
    "length": ("mm", "in"),
    "feed": ("mm", "in"),
    "roughness": ("um", "uin"),
    "force": ("N", "lbf"),
    "pressure": ("MPa", "psi"),
    "power": ("kW", "hp"),
    "mass": ("kg", "lb"),
    "temperature": ("C", "F"),
    "temperature difference": ("K", "F"),
}
"""The metric and the inch shop's reading of a bare number, where the system of units settles it."""
UNSETTLED: Final = {"torque": ("N·m", "lbf·in"), "angle": ("deg", "rad"), "time": ("s", "min")}
"""The two likeliest readings of a bare number where the system of units does not settle it."""
_COMMA = re.compile(r"([+-]?[0-9]+(?:,[0-9]+)+)((?:\.[0-9]+)?)(.*)")


def noun(kind: str) -> str:
    """The kind with its article.

    >>> noun("angle"), noun("force")
    ('an angle', 'a force')
    """
    return NOUNS.get(kind, f"a {kind}")


def shorten(text: str) -> str:
    """What was typed, on one line and not for ever.

    >>> shorten(""), len(shorten("9" * 1000))
    ('nothing', 41)
    """
    line = one_line(text)
    return line[:SHOWN] + "…" if len(line) > SHOWN else line or "nothing"


def form(kind: str) -> str:
    """How a quantity of this kind is written.

    >>> form("force")
    'a force as a number with its unit, such as 340lbf or 1.5kN'
    """
    if kind == "number":
        return "a plain number, such as 0.12"
    if kind == "taper":
        return f"a taper, such as {EXAMPLES[kind]}"
    return f"{noun(kind)} as a number with its unit, such as {EXAMPLES[kind]}"


def unreadable(where: str, text: str, kinds: Sequence[str]) -> UnreadableQuantity:
    """For a text in which no number of the known forms stands."""
    allowed = " or ".join(form(kind) for kind in kinds)
    if len(text) > LONGEST:
        found = f"{shorten(text)} ({len(text)} characters)"
        return UnreadableQuantity(where, found, f"{allowed}, in at most {LONGEST} characters")
    comma = _comma_readings(text, kinds)
    if comma:
        how = "a number written with a decimal point and no commas"
        return UnreadableQuantity(where, f"{shorten(text)}, which could be {comma}", how)
    return UnreadableQuantity(where, shorten(text), allowed)


def _comma_readings(text: str, kinds: Sequence[str]) -> str:
    match = _COMMA.fullmatch(text)
    if not match or not any(find_unit(k, match[3]) or not match[3].strip() for k in kinds):
        return ""
    groups = match[1].split(",")
    joined = "".join(groups) + match[2] + match[3]
    pointed = f"{groups[0]}.{groups[1]}{match[3]}"
    if len(groups) > 2 or match[2]:
        return joined
    return f"{pointed} or {joined}" if len(groups[1]) == 3 else pointed


def wrong_unit(where: str, text: str, found: Split, kinds: Sequence[str]) -> UnreadableQuantity:
    """For a number followed by a word that is not a unit of the kind asked for."""
    known = ", ".join(name for kind in kinds for name in symbols(kind))
    wanted = " or ".join(noun(kind) for kind in kinds)
    allowed = f"{wanted} in one unit: {known}" if known else form(kinds[0])
    if any(c.isnumeric() for c in found.unit):
        return UnreadableQuantity(where, f"{shorten(text)}, which is more than one number", allowed)
    others = kinds_of(found.unit)
    why = f"is {noun(others[0])}" if others else f"has the unknown unit {shorten(found.unit)!r}"
    return UnreadableQuantity(where, f"{shorten(text)}, which {why}", allowed)


def bare_number(where: str, found: Split, kinds: Sequence[str]) -> UnreadableQuantity:
    """For a number without a unit: both readings, each with its worth in the other unit."""
    first, second = _readings(kinds)
    written = found.written
    could = f"{_reading(found, first, second)} or {_reading(found, second, first)}"
    allowed = f"a number with its unit, such as {written}{first.symbol} or {written}{second.symbol}"
    settle = "--units inch|mm" if where.startswith("-") else 'units = "inch" or "mm" in the file'
    if all(kind in READINGS for kind in kinds):
        allowed += f", or {settle}"
    return UnreadableQuantity(where, f"{written}, which could be {could}", allowed)


def _readings(kinds: Sequence[str]) -> tuple[NamedUnit, NamedUnit]:
    if len(kinds) > 1:
        return unit(kinds[0], symbols(kinds[0])[0]), unit(kinds[1], symbols(kinds[1])[0])
    metric, inch = READINGS.get(kinds[0]) or UNSETTLED.get(kinds[0]) or symbols(kinds[0])[:2]
    return unit(kinds[0], metric), unit(kinds[0], inch)


def _reading(found: Split, as_unit: NamedUnit, other: NamedUnit) -> str:
    text = f"{found.written} {as_unit.symbol}"
    if as_unit.kind != other.kind:
        return text
    return f"{text} ({_worth(other.from_si(as_unit.to_si(found.number)), other.symbol)})"


def _worth(value: float, symbol: str) -> str:
    decimals = {"in": 4, "mm": 2}.get(symbol)
    if decimals is not None and 0.01 <= abs(value) < 1e6:
        return f"{value:.{decimals}f} {symbol}"
    return f"{value:.4g} {symbol}"
