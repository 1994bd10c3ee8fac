"""`borewright mandrel`: sentences, JSON, refusals, and the two ways of being no use."""

from __future__ import annotations

import json
from typing import Any

import pytest
from tests.cli_run import ran, refused
from tests.unit.test_cli_process import HEAVY, imported_by

INCH = 0.0254
WORN = {"4in": 0.6247, "3in": 0.6251, "2in": 0.6256, "1in": 0.6256, "0.25in": 0.6263}
"""Counted from the large end; flat between 1 and 2 in."""


def at(places: dict[str, float]) -> list[str]:
    return [w for x, d in places.items() for w in ("--at", x, f"{d}in")]


def found(*arguments: str, code: int = 0) -> dict[str, Any]:
    done = ran("mandrel", *arguments, "--json")
    assert done.code == code, done
    answer: dict[str, Any] = json.loads(done.out)
    return answer


def test_two_places_give_the_taper_and_where_each_bore_stops() -> None:
    """By hand: 0.0011 in over 2.2 in is 1:2000; 0.6250 in stands 0.6 in past the first place."""
    answer = found("--at", "0.5in", "0.6247in", "--at", "2.7in", "0.6258in", "--length", "4in")
    assert answer["taper_m_per_m"] == pytest.approx(1 / 2000)
    assert answer["measured_from"] == "small"
    assert answer["straightness_m"] == pytest.approx(0.0, abs=1e-12)
    stops = {round(b["bore_m"] / INCH, 4): b["large_end_to_face_m"] / INCH for b in answer["bores"]}
    assert stops[0.6250] == pytest.approx(4 - 0.5 - 0.6, abs=1e-6)
    assert answer["bore_window_m"]["low"] / INCH == pytest.approx(0.62445)
    assert answer["bore_window_m"]["high"] / INCH == pytest.approx(0.62645)


def test_the_json_has_these_keys_and_says_what_was_taken() -> None:
    answer = found(*at({"0.25in": 0.6247, "3in": 0.6255}))
    assert set(answer) == {
        "taper_m_per_m", "measured_from", "ground_length_m", "straightness_m", "uncertainty_m",
        "growing_share", "bore_window_m", "stations", "flats", "bores", "assumed",
    }  # fmt: skip
    assert [a["what"] for a in answer["assumed"]] == ["ground_length", "uncertainty"]
    assert all(a["source"] for a in answer["assumed"])
    assert set(answer["stations"][0]) == {"x_m", "diameter_m", "residual_m"}


def test_counted_from_either_end_it_is_the_same_mandrel() -> None:
    turned = {f"{4.25 - float(x.removesuffix('in'))}in": d for x, d in WORN.items()}
    one, other = (found(*at(p), "--length", "4.25in") for p in (WORN, turned))
    assert (one.pop("measured_from"), other.pop("measured_from")) == ("large", "small")
    assert [b["large_end_to_face_m"] for b in one["bores"]] == pytest.approx(
        [b["large_end_to_face_m"] for b in other["bores"]]
    )
    assert one["taper_m_per_m"] == pytest.approx(other["taper_m_per_m"])
    assert one["straightness_m"] == pytest.approx(other["straightness_m"])


def test_a_worn_one_is_said_to_be_worn_and_flat() -> None:
    said = ran("mandrel", *at(WORN), "--length", "4.25in").out
    assert "The large end is the one you counted from." in said
    assert "Not straight: 1 in (25.4 mm) from the large end it is 0.0003 in" in said
    assert "Flat 1.00 to 2.00 in (25.4 to 50.8 mm) from the large end" in said
    assert "travel has no stop" in said
    answer = found(*at(WORN), "--length", "4.25in")
    (flat,) = answer["flats"]
    assert [flat["from_m"], flat["to_m"]] == pytest.approx([2.25 * INCH, 3.25 * INCH])


def test_readings_within_their_uncertainty_are_straight() -> None:
    nearly = {"0in": 0.6250, "1in": 0.62555, "2in": 0.6260}
    said = ran("mandrel", *at(nearly), "--length", "4in").out
    assert "Straight: the worst place" in said
    said = ran("mandrel", *at(nearly), "--length", "4in", "--uncertainty", "0.00001in").out
    assert "Not straight" in said


def test_two_places_say_nothing_of_straightness() -> None:
    assert "measure a third" in ran("mandrel", *at({"0in": 0.6247, "3in": 0.6255})).out


@pytest.mark.parametrize(
    ("places", "says"),
    [
        ({"0.25in": 0.6247, "3in": 0.6247}, "it is parallel as far as these readings tell"),
        ({"0.25in": 0.6247, "3in": 0.6248}, "it is parallel as far as these readings tell"),
        (
            {"0in": 0.624, "1in": 0.6255, "2in": 0.6245, "3in": 0.6252, "4in": 0.6257},
            "only 35% of it grows towards the large end",
        ),
    ],
    ids=["parallel", "within the uncertainty", "waisted"],
)
def test_one_that_is_no_taper_is_a_no(places: dict[str, float], says: str) -> None:
    done = ran("mandrel", *at(places), "--length", "4in")
    assert done.code == 3
    assert done.error_lines == [done.err.strip()]
    assert done.err.startswith("borewright: no: ")
    assert says in done.err
    assert json.loads(ran("mandrel", *at(places), "--json").out)["bore_window_m"]


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        ([], "--at: found no station; allowed is two or more"),
        (["--at", "1in", "0.62in"], "--at: found 1 station; allowed is two or more"),
        (at({"1in": 0.62, "1.0in": 0.63}), "--at: found 25.4 mm (1 in) twice"),
        (["--at", "1", "0.62in"], "--at, 1, place: found 1, which could be 1 mm"),
        (["--at", "1in", "0.62"], "--at, 1, diameter: found 0.62, which could be"),
        (["--at", "1in"], "--at: found"),
        (["--at", "1in", "16mm", "--at", "2in", "160mm"], "found diameters of 16 and 160 mm"),
        ([*at({"1in": 0.62, "5in": 0.622}), "--length", "4in"], "--at: found a station at 127 mm"),
        ([*at({"1in": 0.62, "5in": 0.622}), "--uncertainty", "x"], "--uncertainty: found x"),
        ([*at({"1in": 0.62, "5in": 0.622}), "--length", "0in"], "--length: found"),
        (["--ta", "1in"], "--ta: found no such option"),
    ],
    ids=lambda v: " ".join(v)[:40] if isinstance(v, list) else "",
)
def test_what_cannot_be_read_is_refused_in_one_line(arguments: list[str], says: str) -> None:
    assert says in refused("mandrel", *arguments)


def test_a_refusal_loads_nothing_heavy() -> None:
    assert not HEAVY & imported_by("mandrel", "--at", "1in", "0.62in", code=2)
    loaded = imported_by("mandrel", *at({"1in": 0.6247, "3in": 0.6255}), code=0)
    assert "pydantic" not in loaded
