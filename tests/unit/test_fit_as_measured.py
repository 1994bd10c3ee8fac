"""`fit --at` and `--bore-at`: closed forms, properties, sentences and refusals."""

from __future__ import annotations

import json
import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.cli_run import FIT, ran, refused, words
from tests.unit.test_cli_process import HEAVY, imported_by

SAME = 1e-9
GIVEN = {"friction": "0.12", "roughness": "0um"}
STRAIGHT = {0: 17.99, 40: 18.01, 110: 18.045}
FLAT = {0: 17.99, 40: 18.01, 70: 18.01, 110: 18.03}


def at(places: dict[float, float], option: str = "--at") -> list[str]:
    return [w for x, d in places.items() for w in (option, f"{x}mm", f"{d}mm")]


def fitted(mandrel: dict[float, float], *more: str, **changes: str | None) -> dict[str, Any]:
    changed = {"small_end": None, "taper": None, **GIVEN, **changes}
    done = ran("fit", "--json", *words(FIT, **changed), *at(mandrel), *more)
    assert done.code in (0, 3), done.err
    answer: dict[str, Any] = json.loads(done.out)
    return answer


def plain(**changes: str | None) -> dict[str, Any]:
    answer: dict[str, Any] = json.loads(
        ran("fit", "--json", *words(FIT, **{**GIVEN, **changes})).out
    )
    return answer


def numbers(answer: dict[str, Any]) -> dict[str, float]:
    window = answer["bore_window_m"]
    one = {k: v for k, v in answer.items() if isinstance(v, float)}
    return {**one, "low": window["low"], "high": window["high"]}


@pytest.mark.parametrize("places", [(0, 110), (0, 40, 110), (110, 70, 40, 5)])
def test_stations_on_a_straight_taper_give_the_straight_mandrel_s_answer(
    places: tuple[int, ...],
) -> None:
    measured = fitted({x: 17.99 + 0.0005 * x for x in places})
    assert numbers(measured) == pytest.approx(numbers(plain()), rel=SAME)
    assert set(measured) == set(plain())


def test_counted_from_the_large_end_it_is_the_same_mandrel() -> None:
    turned = fitted({110 - x: d for x, d in FLAT.items()})
    assert numbers(turned) == pytest.approx(numbers(fitted(FLAT)), rel=SAME)


def test_on_a_flat_stretch_more_travel_adds_nothing() -> None:
    """p = δ/(d C) all along, N = π δ L / C, once all 30 mm lie on the 30 mm that are flat."""
    k2 = (18.005 / 40) ** 2
    compliance = ((1 + k2) / (1 - k2) + 0.26) / 100e9 + (1 - 0.29) / 207e9
    there = fitted(FLAT, "--model", "rings", bore="18.005mm", travel="40mm")
    assert there["touch_position_m"] == pytest.approx(0.03, abs=1e-9)
    force = math.pi * 5e-6 * 0.03 / compliance
    assert there["normal_force_N"] == pytest.approx(force, rel=SAME)
    elastic = fitted(FLAT, bore="18.005mm", travel="40mm")["normal_force_N"]
    assert elastic == pytest.approx(force, rel=2e-2)  # the ends of the hub add a little


def test_a_bore_as_large_as_the_flat_has_no_stop_on_it() -> None:
    """It touches where the flat begins; pressed anywhere along the flat nothing grips it."""
    for travel in ("1mm", "15mm", "30mm"):
        answer = fitted(FLAT, bore="18.01mm", travel=travel)
        assert answer["touch_position_m"] == pytest.approx(0.04, abs=1e-9)
        assert answer["normal_force_N"] == pytest.approx(0.0, abs=1e-6)
    assert fitted(FLAT, bore="18.01mm", travel="31mm")["normal_force_N"] > 1


def test_it_says_that_the_mandrel_is_flat_only_where_the_work_goes_over_it() -> None:
    base = words(FIT, small_end=None, taper=None, bore="18.005mm")
    said = ran("fit", *base, *at(FLAT)).out
    assert "The mandrel is not straight: " in said
    assert "flat 40 to 70 mm (1.57 to 2.76 in) from the large end" in said
    assert "travel has no stop" in said
    past = words(FIT, small_end=None, taper=None, bore="18.015mm")
    assert "flat" not in ran("fit", *past, *at(FLAT)).out
    straight = ran("fit", *base, *at(STRAIGHT)).out
    assert "flat" not in straight
    assert "not straight" not in straight


def test_a_bore_that_tapers_like_the_mandrel_bears_on_its_whole_length_at_any_travel() -> None:
    """δ = T s everywhere, so the contact is full at once and N = π T s L / C, d the mean bore."""
    closing = at({0: 18.01, 30: 17.995}, "--bore-at")
    k2 = (18.0025 / 40) ** 2
    compliance = ((1 + k2) / (1 - k2) + 0.26) / 100e9 + (1 - 0.29) / 207e9
    for travel in (1, 10, 25):
        by_rings = [*closing, "--model", "rings"]
        answer = fitted(STRAIGHT, *by_rings, bore=None, travel=f"{travel}mm")
        assert answer["touch_position_m"] == pytest.approx(0.04, abs=1e-9)
        assert answer["contact_length_m"] == pytest.approx(0.03, abs=1e-9)
        force = math.pi * 0.0005 * travel * 1e-3 * 0.03 / compliance
        assert answer["normal_force_N"] == pytest.approx(force, rel=1e-7)
        elastic = fitted(STRAIGHT, *closing, bore=None, travel=f"{travel}mm")
        assert elastic["contact_length_m"] == pytest.approx(0.03, abs=1e-9)
        assert elastic["normal_force_N"] == pytest.approx(force, rel=2e-2)


def test_a_bell_mouth_moves_the_touch_up_to_where_the_bore_is_small() -> None:
    """The mouth of 18.03 would touch at 80 mm, the 18.01 that begins 6 mm in at 40 + 6."""
    bell = at({0: 18.03, 6: 18.01, 30: 18.01}, "--bore-at")
    assert fitted(STRAIGHT, *bell, bore=None)["touch_position_m"] == pytest.approx(0.046, abs=1e-9)


def test_a_bore_read_once_is_that_bore_and_may_be_left_out() -> None:
    one = fitted(STRAIGHT, *at({15: 18.01}, "--bore-at"), bore=None)
    assert numbers(one) == pytest.approx(numbers(plain()), rel=SAME)


def test_at_one_depth_the_smallest_reading_rules() -> None:
    twice = [*at({0: 18.02}, "--bore-at"), *at({0: 18.01}, "--bore-at")]
    assert fitted(STRAIGHT, *twice, bore=None)["touch_position_m"] == pytest.approx(0.04)


def test_the_bore_readings_serve_a_mandrel_that_is_only_stated() -> None:
    bell = at({0: 18.03, 6: 18.01, 30: 18.01}, "--bore-at")
    done = ran("fit", "--json", *words(FIT, bore=None, **GIVEN), *bell)
    assert json.loads(done.out)["touch_position_m"] == pytest.approx(0.046, abs=1e-9)


def test_past_the_large_end_of_a_measured_mandrel_only_what_lies_on_it_bears() -> None:
    """At 125 mm the first 15 mm hang over the end at 110."""
    answer = fitted({0: 17.99, 40: 18.01, 70: 18.02, 110: 18.045}, travel=None, position="125mm")
    assert answer["contact_length_m"] == pytest.approx(0.015, abs=1e-9)


def test_a_mandrel_without_taper_is_a_no() -> None:
    done = ran("fit", *words(FIT, small_end=None, taper=None), *at({0: 18.0, 100: 18.004}))
    assert done.code == 3
    assert "parallel as far as these readings tell" in done.err


def test_a_bore_smaller_than_the_small_end_does_not_go_on() -> None:
    base = words(FIT, small_end=None, taper=None, bore="17.98mm")
    done = ran("fit", *base, *at(FLAT))
    assert (done.code, "does not go on" in done.err) == (3, True)


ERRORS = st.lists(st.integers(0, 6), min_size=4, max_size=4)


@settings(deadline=None, max_examples=25)
@given(errors=ERRORS, travel=st.integers(5, 40), more=st.integers(0, 20))
def test_on_a_mandrel_that_grows_all_along_more_travel_grips_no_less(
    errors: list[int], travel: int, more: int
) -> None:
    sizes = [17.99 + 0.0005 * x + 0.001 * e for x, e in zip((0, 30, 60, 110), errors, strict=True)]
    mandrel = dict(zip((0, 30, 60, 110), sorted(sizes), strict=True))
    less, longer = (
        fitted(mandrel, travel=f"{s}mm", ground_length="200mm") for s in (travel, travel + more)
    )
    assert longer["normal_force_N"] >= less["normal_force_N"] * (1 - 1e-9)
    assert longer["touch_position_m"] == less["touch_position_m"]


@settings(deadline=None, max_examples=25)
@given(errors=ERRORS, bore=st.integers(0, 20), larger=st.integers(0, 10))
def test_a_larger_bore_stops_no_sooner(errors: list[int], bore: int, larger: int) -> None:
    mandrel = {x: 17.99 + 0.0005 * x + 0.001 * e for x, e in zip((0, 30, 60, 110), errors, strict=True)}  # fmt: skip
    one, other = (
        fitted(mandrel, bore=f"{18 + b / 1000:.3f}mm")["touch_position_m"]
        for b in (bore, bore + larger)
    )
    assert other >= one


MEASURED = words(FIT, small_end=None, taper=None)


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        ([*words(FIT, taper=None), *at(FLAT)], "--at: found --small-end beside it; allowed is one"),
        ([*words(FIT), *at(FLAT)], "--at: found --small-end and --taper beside it; allowed is one"),
        ([*MEASURED, *at({0: 17.99})], "--at: found 1 station; allowed is two or more"),
        ([*MEASURED, *at({0: 17.99, 120: 18.05})], "--at: found a station at 120 mm"),
        ([*MEASURED, "--at", "0", "18mm"], "--at, 1, place: found"),
        ([*MEASURED, *at({0: 17.99, 90: 180.5})], "found diameters of 17.99 and 180.5 mm"),
        ([*MEASURED, *at({0: 25.0, 90: 25.04})], "found 25 mm on a mandrel of 18mm"),
        ([*MEASURED, *at({0: 18.0, 90: 18.0})], "found 2 diameters that show no taper"),
        ([*words(FIT), *at({40: 18.01}, "--bore-at")], "--bore-at: found a bore reading at depth 40 mm"),
        ([*words(FIT, bore=None), *at({3: 41}, "--bore-at")], "--outside: found 40mm"),
        ([*words(FIT), *at({3: 25}, "--bore-at")], "--bore-at: found a bore of 18.01mm beside"),
        ([*words(FIT, bore=None)], "--bore: found nothing"),
        ([*words(FIT), "--bore-at", "3mm"], "--bore-at: found"),
    ],
    ids=lambda v: v if isinstance(v, str) else "",
)  # fmt: skip
def test_what_cannot_be_is_refused_in_one_line(arguments: list[str], says: str) -> None:
    assert says in refused("fit", *arguments)


def test_a_refusal_of_stations_loads_nothing_heavy() -> None:
    assert not HEAVY & imported_by("fit", *MEASURED, *at({0: 17.99}), code=2)
