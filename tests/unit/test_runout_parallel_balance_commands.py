"""`borewright runout`, `parallel` and `balance`: what they say, and everything they refuse."""

from __future__ import annotations

import cmath
import json
import math

import pytest
from tests.cli_run import ran, refused, words

SPLIT = {"--first": "0.08mm", "--first-at": "30deg", "--second": "0.05mm", "--second-at": "200deg"}
FIND = {"--where": "rim", "--highs": "3", "--when": "after-release"}
PARALLEL = {
    "--headstock-end": "25.020mm",
    "--tailstock-end": "25.005mm",
    "--apart": "150mm",
    "--between-centers": "300mm",
}
BALANCE = {
    "--wax": "12g",
    "--radius": "80mm",
    "--at": "70mm",
    "--material": "gray-iron-30",
    "--drill": "8mm",
}
FLAT = (
    (["runout", "split", *words(SPLIT)]),
    (["parallel", *words(PARALLEL)]),
    (["balance", *words(BALANCE, mass="4kg")]),
)


def told(*arguments: str) -> dict:  # type: ignore[type-arg]
    return json.loads(ran(*arguments, "--json").out)


@pytest.mark.parametrize("asked", FLAT, ids=lambda a: a[0])
def test_json_is_flat_numbers_with_their_units_and_what_was_assumed(asked: list[str]) -> None:
    said = told(*asked)
    assumed = said.pop("assumed")
    assert all(isinstance(value, float) for value in said.values())
    assert assumed
    assert all({"what", "taken", "unit", "source"} == set(a) for a in assumed)


@pytest.mark.parametrize("asked", FLAT, ids=lambda a: a[0])
def test_the_same_question_is_answered_in_the_same_bytes(asked: list[str]) -> None:
    assert ran(*asked).out == ran(*asked).out
    assert ran(*asked, "--json").out == ran(*asked, "--json").out


# runout split


def test_with_places_the_split_is_that_of_arrows() -> None:
    said = told("runout", "split", *words(SPLIT))
    first = cmath.rect(80e-6, math.radians(30))
    second = cmath.rect(50e-6, math.radians(200))
    assert said["mandrel_share_m"] == pytest.approx(abs(first + second) / 2, rel=1e-12)
    assert said["work_share_m"] == pytest.approx(abs(first - second) / 2, rel=1e-12)
    turned = cmath.rect(said["work_share_m"], said["work_at_rad"])
    assert turned == pytest.approx((first - second) / 2, rel=1e-9)


def test_amounts_alone_are_bounds_and_say_how_to_tell() -> None:
    alone = words(SPLIT, first_at=None, second_at=None)
    said = told("runout", "split", *alone)
    assert said["mandrel_share_m"] is None
    assert said["work_share_m"] is None
    assert said["least_share_m"] == pytest.approx(15e-6)
    assert said["most_share_m"] == pytest.approx(65e-6)
    assert said["together_m"] == pytest.approx(math.sqrt((80**2 + 50**2) / 2) * 1e-6)
    out = ran("runout", "split", *alone).out
    assert "do not say which is whose" in out
    assert "Pencil the high spot" in out


def test_amounts_alone_need_no_error_of_a_place() -> None:
    alone = told("runout", "split", *words(SPLIT, first_at=None, second_at=None))
    assert {a["what"] for a in alone["assumed"]} == {"error_of_a_reading"}


@pytest.mark.parametrize(("second_at", "whose"), [("30deg", "mandrel's"), ("210deg", "work's")])
def test_a_high_spot_that_stays_is_the_mandrels_and_one_that_goes_round_the_works(
    second_at: str, whose: str
) -> None:
    out = ran("runout", "split", *words(SPLIT, second="0.07mm", second_at=second_at)).out
    assert f"Most of it is the {whose}" in out


def test_a_perfect_second_reading_is_an_answer_too() -> None:
    said = told("runout", "split", *words(SPLIT, second="0mm"))
    assert said["mandrel_share_m"] == said["work_share_m"] == pytest.approx(40e-6)


# runout find


def test_three_highs_after_release_point_first_at_the_jaws() -> None:
    causes = told("runout", "find", *words(FIND))["causes"]
    assert causes[0]["id"] == "three-jaws"
    assert causes[-1]["id"] == "reading"
    assert all({"id", "cause", "check", "mend", "source"} == set(c) for c in causes)


def test_causes_are_numbered_and_each_has_its_next_check() -> None:
    out = ran("runout", "find", *words(FIND)).out
    assert out.startswith("1. ")
    assert out.count("Check: ") == len(told("runout", "find", *words(FIND))["causes"])
    assert "Common practice, no source" in out


def test_a_tapered_rim_points_at_the_tailstock_and_names_the_command() -> None:
    causes = told("runout", "find", "--where", "rim", "--shape", "taper")["causes"]
    assert causes[0]["id"] == "tailstock-off"
    assert "borewright parallel" in causes[0]["check"]


def test_what_wobbles_only_on_its_shaft_points_at_the_set_screw() -> None:
    for where in ("rim", "face"):
        asked = ("--where", where, "--highs", "1", "--when", "on-its-shaft")
        assert "screw" in told("runout", "find", *asked)["causes"][0]["id"]


# parallel


def test_the_set_over_is_half_the_difference_in_proportion_to_the_lengths() -> None:
    said = told("parallel", *words(PARALLEL))
    assert said["set_over_m"] == pytest.approx(-15e-6 / 2 * 300 / 150, rel=1e-9)
    assert said["taper_m_per_m"] == pytest.approx(-15e-6 / 0.150, rel=1e-9)
    assert said["work_error_m"] == pytest.approx(15e-6, rel=1e-9)


@pytest.mark.parametrize(
    ("tail", "way"), [("25.060mm", "towards the tool"), ("24.980mm", "away from the tool")]
)
def test_the_larger_end_says_which_way_the_center_goes(tail: str, way: str) -> None:
    assert way in ran("parallel", *words(PARALLEL, tailstock_end=tail)).out


def test_a_taper_that_does_not_show_over_the_work_is_left_alone() -> None:
    out = ran("parallel", *words(PARALLEL, work_length="20mm")).out
    assert "Parallel enough for this work: leave it." in out
    assert "Move the tailstock" not in out


def test_bands_that_differ_by_less_than_their_readings_move_nothing() -> None:
    asked = words(PARALLEL, tailstock_end="25.018mm", tolerance="0.004mm", reading_error="0.002mm")
    out = ran("parallel", *asked).out
    assert "before anything is moved" in out
    assert "Move the tailstock" not in out


def test_equal_bands_that_are_too_close_together_prove_nothing() -> None:
    asked = words(PARALLEL, tailstock_end="25.020mm", apart="10mm", work_length="100mm")
    out = ran("parallel", *asked).out
    assert "would tell" in out
    assert "leave it" not in out


def test_a_closer_tolerance_never_makes_a_lathe_parallel() -> None:
    wide, close = (told("parallel", *words(PARALLEL, tolerance=t)) for t in ("0.1mm", "0.01mm"))
    assert wide["work_error_m"] <= wide["allowed_error_m"]
    assert close["work_error_m"] > close["allowed_error_m"]


# balance


def test_the_hole_takes_out_what_the_wax_balanced() -> None:
    """12 g at 80 mm is 13.714 g at 70 mm; a cylinder of 8 mm in that iron and a 118 degree point."""
    said = told("balance", *words(BALANCE))
    density = next(a["taken"] for a in said["assumed"] if a["what"] == "density")
    tip = 0.004 / math.tan(math.radians(59))
    cone = math.pi * 0.004**2 * tip / 3
    deep = (0.012 * 80 / 70 / density - cone) / (math.pi * 0.004**2) + tip
    assert said["metal_kg"] == pytest.approx(0.012 * 80 / 70)
    assert said["hole_depth_m"] == pytest.approx(deep, rel=1e-9)
    assert said["out_of_balance_kg_m"] == pytest.approx(0.00096)


def test_a_flat_bottomed_hole_is_shallower_at_its_bottom() -> None:
    pointed, flat = (told("balance", *words(BALANCE, point=p)) for p in ("118deg", "180deg"))
    assert flat["hole_depth_m"] < pointed["hole_depth_m"]


def test_without_a_drill_it_is_the_weight_to_add() -> None:
    said = told("balance", *words(BALANCE, drill=None, material=None))
    assert said["hole_depth_m"] is None
    assert said["weight_to_add_kg"] == pytest.approx(0.012 * 80 / 70)


def test_bench_centers_hide_more_than_knife_edges() -> None:
    edges, centers = (
        told("balance", *words(BALANCE, mass="4kg", on=on))["least_shown_kg_m"]
        for on in ("knife-edges", "bench-centers")
    )
    assert centers > 3 * edges


def test_balance_says_what_is_never_drilled_and_never_that_it_is_safe() -> None:
    out = ran("balance", *words(BALANCE)).out
    assert "Never into a spoke" in out
    assert "does not say that the wheel is safe" in out


REFUSED = {
    "a hole through the rim": (
        ["balance", *words(BALANCE, thickness="30mm")],
        "--thickness: found 30 mm",
    ),
    "a hole that leaves too little": (
        ["balance", *words(BALANCE, thickness="45mm")],
        "which leaves a third of the metal",
    ),
    "no wax": (["balance", *words(BALANCE, wax=None)], "--wax: found nothing"),
    "a drill and no metal": (
        ["balance", *words(BALANCE, material=None)],
        "--material: found nothing",
    ),
    "a drill past the axis": (["balance", *words(BALANCE, drill="150mm")], "--drill: found 150mm"),
    "a metal that is not known": (["balance", *words(BALANCE, material="cheese")], "cheese"),
    "a needle of a point": (["balance", *words(BALANCE, point="5deg")], "--point: found 5deg"),
    "a bare radius": (
        ["balance", *words(BALANCE, radius="80")],
        "--radius: found 80, which could be",
    ),
    "bands past the centers": (
        ["parallel", *words(PARALLEL, apart="400mm")],
        "--apart: found 400mm",
    ),
    "a work longer than the bar": (
        ["parallel", *words(PARALLEL, work_length="400mm")],
        "--work-length: found 400mm",
    ),
    "two bars": (
        ["parallel", *words(PARALLEL, tailstock_end="250mm")],
        "--tailstock-end: found 250mm",
    ),
    "no second band": (
        ["parallel", *words(PARALLEL, tailstock_end=None)],
        "--tailstock-end: found nothing",
    ),
    "one place of two": (
        ["runout", "split", *words(SPLIT, second_at=None)],
        "--first-at, --second-at: found one of them",
    ),
    "no reading": (["runout", "split", *words(SPLIT, first=None)], "--first: found nothing"),
    "a reading below nothing": (["runout", "split", *words(SPLIT, first="-1mm")], "--first"),
    "an error of more than half a turn": (
        ["runout", "split", *words(SPLIT, angle_error="200deg")],
        "--angle-error: found 200deg",
    ),
    "no such command": (["runout", "splt"], "runout: found 'splt'; allowed is 'split' or one of"),
    "no question": (["runout", "find"], "runout find: found nothing"),
    "highs and shape at once": (
        ["runout", "find", "--highs", "1", "--shape", "taper"],
        "--highs, --shape: found both",
    ),
    "no such place": (["runout", "find", "--where", "spoke"], "--where: found 'spoke'"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_cannot_be_answered_is_refused_in_one_line(case: str) -> None:
    asked, said = REFUSED[case]
    assert said in refused(*asked)
