"""Reading typed quantities: the forms of the contract, and one-sentence refusals for all else."""

from __future__ import annotations

import math
import pickle
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from borewright.errors import UnreadableQuantity
from borewright.quantities import (
    Speed,
    length_system,
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

READERS: tuple[Callable[[str, str], object], ...] = (
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


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("", "found nothing;"),
        ("   ", "found nothing;"),
        ("mm", "found mm;"),
        ("nan", "found nan;"),
        ("nanmm", "found nanmm;"),
        ("infin", "found infin;"),
        ("0,6255in", "found 0,6255in, which could be 0.6255in;"),
        ("1,250mm", "found 1,250mm, which could be 1.250mm or 1250mm;"),
        ("1,250.5mm", "found 1,250.5mm, which could be 1250.5mm;"),
        ("1,250,000um", "found 1,250,000um, which could be 1250000um;"),
        ("1 250 mm", "which is more than one number;"),
        ("1_000mm", "which is more than one number;"),
        ("1in 3mm", "found 1in 3mm, which is more than one number;"),
        ("18mm to 19mm", "which is more than one number;"),
        ("1 - 1/4in", "which is more than one number;"),
        ("16²", "which is more than one number;"),
        ("1½2in", "which is more than one number;"),
        ("½¼in", "which is more than one number;"),
        ("-3mm", "found -3mm; allowed is a length above zero"),
        ("-½in", "found -½in; allowed is a length above zero"),
        ("−3mm", "allowed is a length above zero"),
        ("0mm", "found 0mm; allowed is a length above zero"),
        ("25m", "from 0.001 um to 20 m (787 in)"),
        ("1e-9mm", "from 0.001 um to 20 m (787 in)"),
        ("1e99mm", "from 0.001 um to 20 m (787 in)"),
        ("1e999mm", "found 1e999mm;"),
        ("1e-999mm", "found 1e-999mm;"),
        ("٣mm", "found ٣mm;"),
        ("１６mm", "found １６mm;"),
        ("5/0in", "found 5/0in;"),
        ("1 5/4in", "found 1 5/4in;"),
        ("16 furlong", "has the unknown unit 'furlong';"),
        ("16..mm", "has the unknown unit '.mm';"),
        ("16N", "found 16N, which is a force;"),
        ("5\x00mm", "found 5?mm"),
        ("x" * 500, "found " + "x" * 40 + "… (500 characters);"),
        ("1\n6mm", "found 1 6mm, which is more than one number;"),
    ],
)
def test_a_length_that_does_not_read_says_what_was_read(text: str, found: str) -> None:
    message = refusal(read_length, text)
    assert found in message
    assert message.isprintable()


def test_zero_and_below_pass_only_where_asked() -> None:
    assert read_length("0mm", "--x", zero=True) == 0.0
    assert math.copysign(1.0, read_length("-0mm", "--x", zero=True)) == 1.0
    assert read_length("-3mm", "--x", negative=True) == -0.003
    assert read_angle("-3deg", "--x", negative=True) == pytest.approx(-math.radians(3))
    with pytest.raises(UnreadableQuantity, match="of zero or more"):
        read_length("-3mm", "--x", zero=True)


@pytest.mark.parametrize(
    ("read", "text"),
    [
        (read_length, "21m"),
        (read_feed, "51mm"),
        (read_roughness, "1.1mm"),
        (read_force, "10001kN"),
        (read_angle, "361deg"),
        (read_torque, "1000001Nm"),
        (read_pressure, "2001GPa"),
        (read_power, "1001kW"),
        (read_mass, "100001kg"),
        (read_spindle, "60001rpm"),
        (read_speed, "60001rpm"),
        (read_speed, "201m/s"),
        (read_time, "2800h"),
        (read_taper, "2.1:1"),
        (read_temperature, "-273.15C"),
        (read_temperature, "2301K"),
        (read_temperature_difference, "2301K"),
        (read_number, "1e13"),
    ],
)
def test_an_absurd_size_is_refused_with_the_limits(
    read: Callable[[str, str], object], text: str
) -> None:
    message = refusal(read, text, "--x")
    assert message.startswith(f"--x: found {text}; allowed is ")
    assert " from " in message
    assert " to " in message


@pytest.mark.parametrize("text", ["1:0", "1:", ":2000", "1:2:3", "1:2000mm", "3%", "0.0005in"])
def test_a_taper_that_does_not_read_is_refused(text: str) -> None:
    assert "a taper" in refusal(read_taper, text)


def test_a_number_takes_no_unit_and_keeps_its_bound() -> None:
    assert "allowed is a plain number" in refusal(read_number, "3mm")
    with pytest.raises(UnreadableQuantity, match="a number up to 1"):
        read_number("1.5", "--friction", most=1.0)


def test_a_length_tells_its_family() -> None:
    families = [length_system(text) for text in ("5/8in", "3thou", '1"', "16mm", "1m", "16", "?")]
    assert families == ["inch", "inch", "inch", "mm", "mm", None, None]


def test_a_refusal_survives_pickling() -> None:
    with pytest.raises(UnreadableQuantity) as caught:
        read_length("18.01", "--bore")
    assert str(pickle.loads(pickle.dumps(caught.value))) == str(caught.value)


NEARLY = st.text(alphabet='0123456789.,/-+ eEinmuµkN·"½¼°:CFKrpd\n²٣', max_size=20)


@pytest.mark.parametrize("read", READERS, ids=lambda read: read.__name__)
@given(text=st.one_of(st.text(), NEARLY, NEARLY.map(lambda t: f"1{t}")))
@example(text="\ud800")
@example(text="1" * 59 + "m")
@example(text="9" * 56 + "e99m")
@example(text="1/" + "0" * 50)
def test_any_text_reads_or_is_refused_in_one_line(
    read: Callable[[str, str], object], text: str
) -> None:
    try:
        value = read(text, "--x")
    except UnreadableQuantity as refused:
        message = str(refused)
        assert message.startswith("--x: found ")
        assert message.isprintable()
        assert len(message) < 400
    else:
        assert isinstance(value, Speed) or (isinstance(value, float) and math.isfinite(value))
