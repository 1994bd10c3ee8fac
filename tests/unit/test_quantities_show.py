"""Showing quantities: shop units first, no finer than can be measured, and readable back."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.quantities import (
    Show,
    ascii_text,
    read_angle,
    read_force,
    read_length,
    read_mass,
    read_power,
    read_pressure,
    read_temperature_difference,
    read_torque,
)
from borewright.quantities.kinds import kind_of
from borewright.quantities.scales import SCALES
from borewright.quantities.si import Unit

INCH, MM = Show("inch"), Show("mm")
IN = 0.0254


@pytest.mark.parametrize(
    ("shown", "text"),
    [
        (INCH.bore(0.6255 * IN), "0.6255 in (15.888 mm)"),
        (MM.bore(0.01801), "18.010 mm (0.7091 in)"),
        (MM.bore(0.018011), "18.011 mm (0.7091 in)"),
        (MM.bore(0.0180113), "18.012 mm (0.7091 in)"),
        (INCH.length(1.25 * IN), "1 1/4 in (31.75 mm)"),
        (INCH.length(3 * IN), "3 in (76.2 mm)"),
        (INCH.length(1.94 * IN), "1.94 in (49.3 mm)"),
        (INCH.length(0.02 * IN), "0.020 in (0.51 mm)"),
        (INCH.length(0.0), "0.000 in (0 mm)"),
        (MM.length(0.04), "40 mm (1.57 in)"),
        (MM.length(0.0403), "40.3 mm (1.59 in)"),
        (MM.length(0.5 * IN), "12.7 mm (1/2 in)"),
        (INCH.small(15e-6), "0.0006 in (15 µm)"),
        (MM.small(15e-6), "15 µm (0.0006 in)"),
        (MM.small(5.6e-6), "5.6 µm (0.0002 in)"),
        (MM.small(0.0), "0 µm (0.0000 in)"),
        (INCH.small(1.524e-3), "0.0600 in (1.524 mm)"),
        (INCH.force(1500.0), "340 lbf (1.5 kN)"),
        (MM.force(1500.0), "1.5 kN (340 lbf)"),
        (MM.force(1250.0), "1.25 kN (280 lbf)"),
        (INCH.torque(1.0), "8.9 lbf·in (1 N·m)"),
        (INCH.torque(22.0), "195 lbf·in (22 N·m)"),
        (INCH.pressure(12.3e6), "1780 psi (12.3 MPa)"),
        (MM.pressure(207e9), "207 GPa (30000 ksi)"),
        (INCH.spindle(350 / 60), "350 rpm"),
        (INCH.surface(0.508), "100 ft/min (30 m/min)"),
        (INCH.feed(0.004 * IN), "0.004 in/rev (0.102 mm/rev)"),
        (MM.angle(math.pi / 2), "90°"),
        (MM.temperature_difference(30.0), "30 °C (54 °F)"),
        (INCH.temperature(293.15), "68 °F (20 °C)"),
        (INCH.weight(2.0), "4.4 lb (2 kg)"),
        (INCH.weight(0.2), "7.1 oz (200 g)"),
        (INCH.power(373.0), "0.5 hp (373 W)"),
        (INCH.time(10.0), "10 s"),
        (INCH.taper(0.0005), "0.006 in/ft (1:2000)"),
        (MM.taper(0.0), "parallel (0 in/ft)"),
        (MM.ratio(0.12), "0.12"),
        (INCH.band(0.0493, 0.0544, "length"), "1.94 to 2.14 in (49.3 to 54.4 mm)"),
        (MM.band(0.018, 0.01802, "bore"), "18.000 to 18.020 mm (0.7087 to 0.7094 in)"),
        (MM.band(5e-6, 2e-3, "growth"), "0.005 to 2.000 mm (0.0002 to 0.0787 in)"),
        (INCH.band(1.0, 2.0, "ratio"), "1 to 2"),
        (INCH.band(1.0, math.inf, "margin"), "1 to without limit"),
        (INCH.band(0.0005, 0.001, "taper"), "0.006 in/ft (1:2000) to 0.012 in/ft (1:1000)"),
    ],
)
def test_a_quantity_is_shown_as_the_shop_writes_it(shown: str, text: str) -> None:
    assert shown == text


@pytest.mark.parametrize(
    ("unit", "kind", "text"),
    [
        ("m", "bore", "39.3701 in (1000.000 mm)"),
        ("m", "", "39.37 in (1000 mm)"),
        ("m", "position", "39.37 in (1000 mm)"),
        ("N", "", "0.22 lbf (1 N)"),
        ("Pa", "", "0.000145 psi (1 Pa)"),
        ("K", "", "1.8 °F (1 °C)"),
        ("K", "temperature", "-458 °F (-272 °C)"),
        ("rev/s", "", "60 rpm"),
        ("m/s", "", "197 ft/min (60 m/min)"),
        ("rad", "", "57.3°"),
        ("", "margin", "1"),
        ("1/K", "", "1 1/K"),
        ("m", "no such kind", "39.37 in (1000 mm)"),
    ],
)
def test_a_figure_is_shown_by_its_kind_else_by_its_unit(unit: str, kind: str, text: str) -> None:
    assert INCH.quantity(1.0, unit, kind) == text


def test_every_common_si_unit_has_a_kind() -> None:
    symbols = ("m", "m/m", "m³/s", "N", "N·m", "N/m", "Pa", "W", "K", "s", "m/s", "rev/s", "rad")
    assert all(kind_of(symbol) for symbol in (*symbols, "kg", ""))
    assert Unit("N·m", "Nm").symbol in symbols


def test_infinity_and_nonsense_are_words() -> None:
    methods = [getattr(INCH, name) for name in dir(INCH) if name in ("bore", "length", "taper")]
    methods += [INCH.force, INCH.temperature, lambda x: INCH.quantity(x, "1/K")]
    assert {show(math.inf) for show in methods} == {"without limit"}
    assert {show(math.nan) for show in methods} == {"not known"}


@given(st.sampled_from(sorted(SCALES)), st.floats(allow_nan=True, allow_infinity=True))
def test_any_float_can_be_shown(kind: str, value: float) -> None:
    for show in (INCH, MM):
        assert show.quantity(value, "", kind)
        assert show.band(value, value, kind)


SIZES = st.floats(min_value=1e-3, max_value=2.0)


@given(SIZES)
def test_a_bore_reads_back_within_its_rounding(size: float) -> None:
    inch, _, metric = INCH.bore(size).rstrip(")").partition(" (")
    assert abs(read_length(inch, "x") - size) <= 0.00005 * IN + 1e-12
    assert abs(read_length(metric, "x") - size) <= 0.001e-3 + 1e-12


@given(SIZES)
def test_a_length_reads_back_within_its_rounding(size: float) -> None:
    inch, _, metric = INCH.length(size).rstrip(")").partition(" (")
    assert abs(read_length(inch, "x") - size) <= 0.005 * IN + 1e-12
    assert abs(read_length(metric, "x") - size) <= 0.05e-3 + 1e-12


@given(st.floats(min_value=1e-6, max_value=5e-3))
def test_an_interference_reads_back_within_its_rounding(size: float) -> None:
    inch, _, metric = INCH.small(size).rstrip(")").partition(" (")
    assert abs(read_length(inch, "x") - size) <= 0.00005 * IN + 1e-12
    assert abs(read_length(metric, "x") - size) <= 0.5e-6 + 1e-12


@given(st.integers(1, 640))
def test_a_shop_fraction_comes_back_as_itself(sixty_fourths: int) -> None:
    size = sixty_fourths / 64 * IN
    assert read_length(INCH.length(size).partition(" (")[0], "x") == pytest.approx(size, rel=1e-15)
    assert "." not in INCH.length(size).partition(" (")[0]


ROUND_TRIPS = [
    (Show.force, read_force, 1e-2, 1e6),
    (Show.torque, read_torque, 1e-2, 1e5),
    (Show.pressure, read_pressure, 1e3, 1e12),
    (Show.power, read_power, 1.0, 1e5),
    (Show.weight, read_mass, 1e-3, 1e4),
]


@pytest.mark.parametrize(("show", "read", "low", "high"), ROUND_TRIPS)
@given(data=st.data())
def test_a_load_reads_back_within_2_5_percent(
    show: Callable[[Show, float], str],
    read: Callable[[str, str], float],
    low: float,
    high: float,
    data: st.DataObject,
) -> None:
    value = data.draw(st.floats(min_value=low, max_value=high))
    for text in show(INCH, value).rstrip(")").split(" ("):
        assert read(text, "x") == pytest.approx(value, rel=0.0251)


@given(st.floats(min_value=1e-4, max_value=math.tau))
def test_an_angle_reads_back_within_its_rounding(angle: float) -> None:
    assert read_angle(MM.angle(min(angle, 6.28)), "x") == pytest.approx(
        min(angle, 6.28), rel=0.005, abs=1e-9
    )


@given(st.floats(min_value=10, max_value=500))
def test_a_rise_reads_back_within_half_a_degree(rise: float) -> None:
    for text in INCH.temperature_difference(rise).rstrip(")").split(" ("):
        assert abs(read_temperature_difference(text, "x") - rise) <= 0.5 + 1e-9


def test_a_terminal_without_utf8_gets_stand_ins() -> None:
    assert ascii_text("≤ 12 µm – 3 N·m × 90° ± 2 °C … “x” é ☃") == (
        '<= 12 um - 3 N.m x 90 deg +/- 2 deg C ... "x" e ?'
    )


@given(st.text())
def test_stand_ins_are_always_ascii_and_leave_ascii_alone(text: str) -> None:
    assert ascii_text(text).isascii()
    assert not text.isascii() or ascii_text(text) == text
