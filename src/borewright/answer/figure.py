"""The number that travels, and what is said beside it: what was assumed, what is dangerous.

`records` gives the same names on, so that they can be had from either.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Input:
    """One number that went into a figure."""

    label: str
    value: float
    unit: str
    kind: str = ""


@dataclass(frozen=True, slots=True)
class Figure:
    """One number: `name` is the JSON key without its unit, `unit` the SI symbol of `quantities.si`.

    `low` and `high` are the 5 % and 95 % ends where the value is uncertain, else None.
    `formula` is an id of the reference table `formulas`; `sources` are ids of the table `sources`.
    `kind` tells the display how fine to round: bore, length, growth, force, torque, pressure, …
    """

    name: str
    best: float
    unit: str
    low: float | None = None
    high: float | None = None
    formula: str = ""
    inputs: tuple[Input, ...] = ()
    sources: tuple[str, ...] = ()
    kind: str = ""


@dataclass(frozen=True, slots=True)
class Caution:
    """A hazard of this operation or this material, worst first."""

    id: str
    text: str
    source: str


@dataclass(frozen=True, slots=True)
class Assumption:
    """Something not stated, and what was taken instead."""

    what: str
    taken: str
    source: str
