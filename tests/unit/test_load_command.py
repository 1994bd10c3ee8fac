"""`borewright load`: what it says, and everything it refuses."""

from __future__ import annotations

import json

import pytest
from tests.cli_run import ran, refused, words

GRIND = {
    "--material": "o1 hardened",
    "--diameter": "40mm",
    "--depth": "5um",
    "--feed": "3mm",
    "--speed": "120rpm",
}
GEAR = {"--material": "mild steel", "--teeth": "24", "--module": "2mm"}


def test_grinding_is_said_in_sentences_and_in_both_units() -> None:
    out = ran("load", "grind", *words(GRIND)).out
    assert "both ways" in out
    assert "warms the work" in out
    assert "J/mm³" in out


def test_a_gear_is_said_in_sentences_in_the_units_of_its_pitch() -> None:
    assert "Outside 52 mm" in ran("load", "gear", *words(GEAR)).out
    by_pitch = words(GEAR, module=None, diametral_pitch="10")
    assert "Outside 2.60 in" in ran("load", "gear", *by_pitch).out


def test_the_depth_of_a_tooth_is_said_to_a_thou() -> None:
    """2.157 / 16 is 0.1348 in; a depth of 0.13 in would leave the teeth fat."""
    by_pitch = words(GEAR, module=None, diametral_pitch="16")
    assert "whole depth 0.135 in (3.42 mm)" in ran("load", "gear", *by_pitch).out


def test_a_chip_thinner_than_the_law_was_fitted_for_is_not_said_to_be_nothing() -> None:
    """0.05 mm a tooth over 29 degrees of arc, laid along the flanks, is 7 µm."""
    by_pitch = words(GEAR, module=None, diametral_pitch="16")
    out = ran("load", "gear", *by_pitch).out
    assert "fitted for 0.0003 in (6.9 µm)" in out
    assert "0.000 in" not in out


def test_the_sharp_cutter_of_the_command_is_told_from_the_worn_one_of_a_plan() -> None:
    out = ran("load", "gear", *words(GEAR)).out
    assert "a sharp cutter that does not strike; a plan counts a worn one and its blow" in out


@pytest.mark.parametrize(("name", "base"), [("grind", GRIND), ("gear", GEAR)])
def test_json_is_flat_numbers_with_their_units_and_what_was_assumed(
    name: str, base: dict[str, str]
) -> None:
    told = json.loads(ran("load", name, "--json", *words(base)).out)
    assumed = told.pop("assumed")
    assert all(isinstance(value, float) for value in told.values())
    assert all({"what", "taken", "unit", "source"} == set(a) for a in assumed)


def test_what_is_stated_is_not_assumed() -> None:
    stated = words(GEAR, cutter_diameter="63mm", cutter_teeth="12", feed="0.05mm", speed="20m/min")
    told = json.loads(ran("load", "gear", "--json", *stated).out)
    taken = {a["what"] for a in told["assumed"]}
    assert not taken & {"cutter_diameter", "cutter_teeth", "feed_per_tooth", "cutting_speed"}


REFUSED = {
    "no such load": (["load", "gind"], "load: found 'gind'; allowed is 'grind' or one of"),
    "no material": (["load", "grind", *words(GRIND, material=None)], "--material: found nothing"),
    "no speed": (["load", "grind", *words(GRIND, speed=None)], "--speed: found nothing"),
    "wood": (["load", "grind", *words(GRIND, material="maple")], "--material: found grinding of"),
    "a wheel in rpm": (
        ["load", "grind", *words(GRIND, wheel_speed="3000rpm")],
        "--wheel-speed: found 3000rpm; allowed is the speed of the wheel's rim",
    ),
    "an infeed through the work": (
        ["load", "grind", *words(GRIND, depth="25mm")],
        "--depth: found 25mm; allowed is less than half",
    ),
    "no teeth": (["load", "gear", *words(GEAR, teeth=None)], "--teeth: found nothing"),
    "half a tooth": (["load", "gear", *words(GEAR, teeth="24.5")], "--teeth: found 24.5; allowed"),
    "no pitch": (["load", "gear", *words(GEAR, module=None)], "found neither of them; allowed is"),
    "two pitches": (["load", "gear", *words(GEAR, diametral_pitch="10")], "found both; allowed"),
    "a huge module": (["load", "gear", *words(GEAR, module="1in")], "--module: found 1in; allowed"),
    "a huge pitch": (
        ["load", "gear", *words(GEAR, module=None, diametral_pitch="500")],
        "--diametral-pitch: found 500; allowed is a number from 2 to 120",
    ),
    "too small a cutter": (
        ["load", "gear", *words(GEAR, cutter_diameter="10mm")],
        "--cutter-diameter: found 10 mm",
    ),
    "deeper than the teeth": (["load", "gear", *words(GEAR, depth="9mm")], "--depth: found 9 mm"),
    "a hardened blank": (
        ["load", "gear", *words(GEAR, material="o1 hardened")],
        "--material: found a form cutter in",
    ),
}


@pytest.mark.parametrize(("arguments", "says"), REFUSED.values(), ids=REFUSED)
def test_what_cannot_be_is_refused_in_one_line(arguments: list[str], says: str) -> None:
    assert says in refused(*arguments)
