"""Reading typed quantities: the forms of the contract, and one-sentence refusals for all else."""

from __future__ import annotations

import math
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.errors import UnreadableQuantity
from borewright.quantities import (
    Speed,
    read_angle,
    read_feed,
    read_force,
    read_length,
    read_mass,
    read_number,
    read_power,
    read_pressure,
    read_roughness,
    read_speed,
    read_spindle,
    read_taper,
    read_temperature,
    read_temperature_difference,
    read_time,
    read_torque,
)


def refusal(read: Callable[[str, str], object], text: str, where: str = "--bore") -> str:
    with pytest.raises(UnreadableQuantity) as caught:
        read(text, where)
    return str(caught.value)


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("5/8in", "15.875"),
        ("1-1/4in", "31.75"),
        ("1 1/4 in", "31.75"),
        ("0.6255in", "15.8877"),
        ('0.6255"', "15.8877"),
        ("0.6255″", "15.8877"),
        ("16mm", "16"),
        ("16 mm", "16"),
        ("1.6cm", "16"),
        ("0.016m", "16"),
        ("12um", "0.012"),
        ("12µm", "0.012"),
        ("12 μm", "0.012"),
        ("0.5thou", "0.0127"),
        ("30uin", "0.000762"),
        ("½in", "12.7"),
        ("1½″", "38.1"),
        ("12 ¾ in", "323.85"),
        ("2ft", "609.6"),
        (".5in", "12.7"),
        ("5.mm", "5"),
        ("+5mm", "5"),
        ("1e1mm", "10"),
        ("16 IN.", "406.4"),
        ("2 Inches", "50.8"),
        ("  16mm  ", "16"),
    ],
)
def test_a_length_is_the_nearest_float_to_what_was_typed(text: str, millimetres: str) -> None:
    assert read_length(text, "--bore") == float(Fraction(millimetres) / 1000)


@given(st.integers(0, 20), st.integers(1, 63))
def test_a_shop_fraction_is_read_exactly(whole: int, part: int) -> None:
    value = float((whole + Fraction(part, 64)) * Fraction(254, 10_000))
    assert read_length(f"{whole} {part}/64in", "--bore") == value
    assert read_length(f'{whole}-{part}/64"', "--bore") == value


def test_a_bare_length_shows_both_readings() -> None:
    assert refusal(read_length, "18.01") == (
        "--bore: found 18.01, which could be 18.01 mm (0.7091 in) or 18.01 in (457.45 mm); allowed "
        "is a number with its unit, such as 18.01mm or 18.01in, or --units inch|mm"
    )


def test_in_a_file_the_way_out_is_the_units_line() -> None:
    text = refusal(read_length, "3.0", "job.toml: work.length")
    assert text.endswith('or units = "inch" or "mm" in the file')


@pytest.mark.parametrize(
    ("read", "text", "both"),
    [
        (read_force, "340", "340 N (76.44 lbf) or 340 lbf (1512 N)"),
        (read_pressure, "100", "100 MPa (1.45e+04 psi) or 100 psi (0.6895 MPa)"),
        (read_temperature, "20", "20 C (68 F) or 20 F (-6.667 C)"),
        (read_temperature_difference, "30", "30 K (54 F) or 30 F (16.67 K)"),
        (read_power, "2", "2 kW (2.682 hp) or 2 hp (1.491 kW)"),
        (read_mass, "2", "2 kg (4.409 lb) or 2 lb (0.9072 kg)"),
        (read_roughness, "8", "8 um (315 uin) or 8 uin (0.2032 um)"),
        (read_feed, "0.1", "0.1 mm (0.003937 in) or 0.1 in (2.54 mm)"),
        (read_angle, "30", "30 deg (0.5236 rad) or 30 rad (1719 deg)"),
        (read_torque, "10", "10 N·m (88.51 lbf·in) or 10 lbf·in (1.13 N·m)"),
        (read_time, "90", "90 s (1.5 min) or 90 min (5400 s)"),
        (read_spindle, "100", "100 rpm (1.667 rev/s) or 100 rev/s (6000 rpm)"),
        (read_speed, "100", "100 rpm or 100 ft/min"),
    ],
)
def test_every_bare_quantity_shows_both_readings(
    read: Callable[[str, str], object], text: str, both: str
) -> None:
    assert f"found {text}, which could be {both}; allowed" in refusal(read, text, "--x")


@pytest.mark.parametrize(
    ("read", "inch", "metric"),
    [
        (read_length, 0.0254, 0.001),
        (read_feed, 0.0254, 0.001),
        (read_roughness, 2.54e-8, 1e-6),
        (read_force, 4.4482216152605, 1.0),
        (read_pressure, 6894.757293168, 1e6),
        (read_power, 745.6998715822702, 1000.0),
        (read_mass, 0.45359237, 1.0),
        (read_temperature, 255.9277777777778, 274.15),
        (read_temperature_difference, 5 / 9, 1.0),
    ],
)
def test_the_stated_system_reads_a_bare_number(
    read: Callable[..., float], inch: float, metric: float
) -> None:
    assert read("1", "--x", bare="inch") == pytest.approx(inch, rel=1e-12)
    assert read("1", "--x", bare="mm") == pytest.approx(metric, rel=1e-12)


def test_a_bare_spindle_speed_is_rpm_once_units_are_stated() -> None:
    assert read_spindle("120", "--x", bare="mm") == read_spindle("120", "--x", bare="inch") == 2.0
    assert read_spindle("3rev/s", "--x", bare="mm") == 3.0


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (read_force, "1.5kN", 1500.0),
        (read_force, "20 lb", 88.96443230521),
        (read_force, "10kgf", 98.0665),
        (read_angle, "90°", math.pi / 2),
        (read_angle, "1 rad", 1.0),
        (read_temperature, "68 °F", 293.15),
        (read_temperature, "68℉", 293.15),
        (read_temperature, "-10C", 263.15),
        (read_temperature, "293.15K", 293.15),
        (read_torque, "10 N·m", 10.0),
        (read_torque, "10Nm", 10.0),
        (read_torque, "10 N.m", 10.0),
        (read_torque, "1 in·lbf", 0.1129848290276167),
        (read_torque, "1 ft-lbf", 1.3558179483314004),
        (read_pressure, "100GPa", 1e11),
        (read_pressure, "250 N/mm²", 2.5e8),
        (read_pressure, "1 lbf/in2", 6894.757293168361),
        (read_power, "1hp", 745.6998715822702),
        (read_mass, "8oz", 0.226796185),
        (read_roughness, "0", None),
        (read_feed, "0.1mm/rev", 1e-4),
        (read_feed, "4thou/rev", 1.016e-4),
        (read_time, "2min", 120.0),
        (read_taper, "0.0005", 0.0005),
        (read_taper, "1:2000", 0.0005),
        (read_taper, "1 : 2000", 0.0005),
        (read_taper, "0.006in/ft", 0.0005),
        (read_taper, "0.5 mm/m", 0.0005),
        (read_number, "0.12", 0.12),
        (read_number, "1/8", 0.125),
        (read_speed, "100 ft/min", Speed(surface=0.508)),
        (read_speed, "30m/min", Speed(surface=0.5)),
        (read_speed, "350 rpm", Speed(spindle=float(Fraction(350, 60)))),
    ],
)
def test_the_other_quantities_read(
    read: Callable[[str, str], object], text: str, value: object
) -> None:
    if value is None:
        assert "could be" in refusal(read, text)
    elif isinstance(value, float):
        assert read(text, "--x") == pytest.approx(value, rel=1e-14)
    else:
        assert read(text, "--x") == value
