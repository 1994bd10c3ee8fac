"""Texts that are no quantity: one sentence that shows what was read, and never anything else."""

from __future__ import annotations

import math
import pickle
from collections.abc import Callable

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
