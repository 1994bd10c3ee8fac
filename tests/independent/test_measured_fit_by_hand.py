"""`fit --at --bore-at` against the same fit worked from the definitions in `hand_measured`."""

from __future__ import annotations

import json
from typing import Any

import pytest
from mpmath import mpf
from tests.cli_run import ran
from tests.independent.hand_measured import HandMeasured

SAME = 1e-8
"""Both routes are exact but for rounding; a rounding of 1e-15 m of size is 2e-12 m of seat."""

STRAIGHT = (("0", "0.01799"), ("0.110", "0.018045"))
WORN = (("0.005", "0.017992"), ("0.04", "0.018008"), ("0.065", "0.018016"), ("0.1", "0.01804"))
FLAT = (("0", "0.01799"), ("0.04", "0.01801"), ("0.07", "0.01801"), ("0.11", "0.018035"))
EVEN = (("0", "0.01801"),)
TAPERED = (("0", "0.01802"), ("0.03", "0.018008"))
"""Slighter than the mandrel: 12 µm on 30 mm against 15."""
BELLED = (("0", "0.01803"), ("0.006", "0.01801"), ("0.03", "0.01801"))
BACKWARDS = (("0", "0.018006"), ("0.03", "0.01801"))


def hand(mandrel: Any, bore: Any, rough: str = "0") -> HandMeasured:
    return HandMeasured(mandrel, bore, "0.040", "0.030", "0.110", "0.12", rough)


CASES = {
    "straight in straight": (hand(STRAIGHT, EVEN), "0.025"),
    "a worn mandrel": (hand(WORN, EVEN), "0.030"),
    "a worn mandrel, rough": (hand(WORN, EVEN, "3"), "0.045"),
    "a worn mandrel, past its large end": (hand(WORN, EVEN), "0.085"),
    "a flat one, on the flat": (hand(FLAT, (("0", "0.018005"),)), "0.040"),
    "a tapered bore": (hand(STRAIGHT, TAPERED), "0.025"),
    "a tapered bore on a worn mandrel": (hand(WORN, TAPERED), "0.030"),
    "a bell mouth": (hand(STRAIGHT, BELLED), "0.025"),
    "a bell mouth on a worn mandrel, rough": (hand(WORN, BELLED, "2"), "0.035"),
    "a bore that closes towards its leading face": (hand(WORN, BACKWARDS), "0.030"),
}


def options(h: HandMeasured) -> list[str]:
    at = [w for x, d in h.mandrel for w in ("--at", f"{x}m", f"{d}m")]
    bore = [w for z, d in h.bore for w in ("--bore-at", f"{z}m", f"{d}m")]
    return [
        "fit", "--model", "rings", "--json", *at, *bore, "--outside", f"{h.outside}m", "--length", f"{h.length}m",
        "--ground-length", f"{h.ground}m", "--friction", h.friction,
        "--roughness", f"{h.lost_um}um",
        "--work-modulus", f"{h.work[0]}Pa", "--work-poisson", h.work[1],
        "--mandrel-modulus", f"{h.steel[0]}Pa", "--mandrel-poisson", h.steel[1],
    ]  # fmt: skip


def fitted(h: HandMeasured, *setting: str) -> dict[str, Any]:
    done = ran(*options(h), *setting)
    assert done.code in (0, 3), done.err
    answer: dict[str, Any] = json.loads(done.out)
    return answer


@pytest.mark.parametrize(("by_hand", "travel"), CASES.values(), ids=CASES)
def test_the_measured_fit_is_what_the_definitions_give(by_hand: HandMeasured, travel: str) -> None:
    told = fitted(by_hand, "--travel", f"{travel}m")
    assert [a["what"] for a in told["assumed"]] == ["uncertainty"]
    expected = by_hand.answer(by_hand.touch + mpf(travel))
    for key, value in expected.items():
        assert told[key] == pytest.approx(float(value), rel=SAME, abs=1e-11), key
    low, high = by_hand.window(mpf(travel))
    assert told["bore_window_m"]["low"] == pytest.approx(float(low), abs=1e-12)
    assert told["bore_window_m"]["high"] == pytest.approx(float(high), abs=1e-12)


@pytest.mark.parametrize("push", ["300", "1000", "3000"])
def test_a_push_on_a_worn_mandrel_comes_back_at_the_travel_it_needs(push: str) -> None:
    case = hand(WORN, TAPERED, "1")
    told = fitted(case, "--push", f"{push}N")
    assert told["push_on_force_N"] == pytest.approx(float(push), rel=1e-7)
    worked = case.answer(mpf(told["seat_position_m"]))
    assert told["push_on_force_N"] == pytest.approx(float(worked["push_on_force_N"]), rel=SAME)
    short = case.answer(mpf(told["seat_position_m"]) - mpf("0.001"))
    assert short["push_on_force_N"] < mpf(push)


def test_a_position_is_reached_from_the_measured_touch() -> None:
    case = hand(WORN, BELLED)
    told = fitted(case, "--position", "0.07m")
    assert told["travel_m"] == pytest.approx(float(mpf("0.07") - case.touch), abs=1e-11)
