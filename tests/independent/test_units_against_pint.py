"""Every unit of our exact table against Pint's own table, which our code never imports."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.quantities.units import UNITS, NamedUnit

REGISTRY = pint.UnitRegistry()
ROUNDING = 1e-9
"""Pint works in floats and rounds its π and its pound a few bits away from ours."""

SI = {
    "length": "m", "feed": "m", "roughness": "m", "force": "N", "angle": "rad", "torque": "N*m",
    "pressure": "Pa", "power": "W", "mass": "kg", "spindle": "revolution/second", "surface": "m/s",
    "time": "s", "taper": "m/m", "temperature": "K", "temperature difference": "delta_degC",
}  # fmt: skip
PINTS_NAME = {
    "in": "inch", "thou": "thou", "uin": "microinch", "um": "micrometer", "lbf": "pound_force",
    "ozf": "ounce_force", "kgf": "kilogram_force", "N·m": "newton*meter", "N·mm": "newton*mm",
    "lbf·in": "pound_force*inch", "lbf·ft": "pound_force*foot", "hp": "horsepower", "lb": "pound",
    "oz": "ounce", "rpm": "revolution/minute", "rev/s": "revolution/second", "h": "hour",
    "in/rev": "inch", "thou/rev": "thou", "um/rev": "micrometer", "mm/rev": "millimeter",
    "in/ft": "inch/foot", "in/in": "inch/inch", "thou/in": "thou/inch", "um/mm": "micrometer/mm",
}  # fmt: skip
DEGREES = {"C": "degC", "F": "degF", "K": "kelvin"}


def pints_value(number: float, unit: NamedUnit) -> float:
    if unit.kind == "temperature":
        return REGISTRY.Quantity(number, DEGREES[unit.symbol]).to("kelvin").magnitude
    if unit.kind == "temperature difference":
        name = "delta_degC" if unit.symbol == "K" else f"delta_{DEGREES[unit.symbol]}"
        return REGISTRY.Quantity(number, name).to("delta_degC").magnitude
    name = PINTS_NAME.get(unit.symbol, unit.symbol)
    return REGISTRY.Quantity(number, name).to(SI[unit.kind]).magnitude


def name_of(unit: NamedUnit) -> str:
    return f"{unit.kind} in {unit.symbol}"


@pytest.mark.parametrize("unit", UNITS, ids=name_of)
@pytest.mark.parametrize("number", [1.0, 37.5])
def test_a_unit_is_worth_what_pint_says(unit: NamedUnit, number: float) -> None:
    assert unit.to_si(Fraction(number)) == pytest.approx(pints_value(number, unit), rel=ROUNDING)


@given(st.sampled_from(UNITS), st.fractions(min_value=-1000, max_value=1000, max_denominator=10**6))
def test_a_value_goes_to_si_and_back(unit: NamedUnit, number: Fraction) -> None:
    assert unit.from_si(unit.to_si(number)) == pytest.approx(float(number), rel=1e-12, abs=1e-9)


@pytest.mark.parametrize(
    ("name", "symbol"), [("length", "in"), ("force", "lbf"), ("mass", "lb"), ("force", "kgf")]
)
def test_the_units_defined_exactly_are_exact(name: str, symbol: str) -> None:
    """The decimal expansions end, so pint's float is the nearest one to ours."""
    unit = next(u for u in UNITS if (u.kind, u.symbol) == (name, symbol))
    exact = {"in": "0.0254", "lbf": "4.4482216152605", "lb": "0.45359237", "kgf": "9.80665"}
    assert unit.factor == Fraction(exact[symbol])
