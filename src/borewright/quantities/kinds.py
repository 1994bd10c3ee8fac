"""The names of the kinds of quantity a figure can be shown as, and which an SI unit means."""

from __future__ import annotations

from typing import Final

from borewright.quantities.scales import SCALES

_ALIASES: Final = {
    "growth": "small",
    "interference": "small",
    "travel": "length",
    "position": "length",
    "stress": "pressure",
    "tension": "pressure",
    "warmer": "temperature difference",
    "weight": "mass",
    "margin": "ratio",
    "friction": "ratio",
}
_BY_UNIT: Final = {
    "m": "length",
    "N": "force",
    "N·m": "torque",
    "Pa": "pressure",
    "W": "power",
    "K": "temperature difference",
    "s": "time",
    "m/s": "surface",
    "rev/s": "spindle",
    "rad": "angle",
    "kg": "mass",
    "m/m": "taper",
    "m³/s": "rate",
    "N/m": "stiffness",
    "": "ratio",
}
OWN_METHOD: Final = frozenset({"length", "rule", "taper", "temperature"})
"""Kinds that `Show` writes by a rule of their own."""


def canonical(kind: str) -> str:
    """The kind that an alias stands for.

    >>> canonical("growth"), canonical("bore")
    ('small', 'bore')
    """
    return _ALIASES.get(kind, kind)


def kind_of(unit_symbol: str, kind: str = "") -> str:
    """The kind a figure is shown as: its own where known, else its unit's, else empty.

    >>> kind_of("m", "growth"), kind_of("N"), kind_of("mol")
    ('small', 'force', '')
    """
    named = canonical(kind)
    return named if named in SCALES or named in OWN_METHOD else _BY_UNIT.get(unit_symbol, "")
