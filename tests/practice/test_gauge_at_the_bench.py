"""What a toolmaker needs of a plug gauge's papers: what a small shop knows, how deep it goes."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from tests.cli_run import ran

GAUGE = ("make", "gauge", "--bore", "16 H7")
STEPPED = (*GAUGE, "--stepped")


def answered(*asked: str) -> dict[str, Any]:
    done = ran(*asked, "--json")
    assert done.code == 0, done.err
    answer: dict[str, Any] = json.loads(done.out)
    return answer


def told(*asked: str) -> str:
    done = ran(*asked)
    assert done.code == 0, done.err
    return " ".join(done.out.split())


def test_a_bench_comparator_gives_back_a_third_of_the_window_and_the_papers_say_so() -> None:
    """1 µm either way and 1 µm hit: 3 at each end, 7.8 of 18 in place of 13.8."""
    answer = answered(*GAUGE, "--comparator")
    ends = [answer[f"{end}_m"] for end in ("go_smallest", "go_largest", "not_go_smallest")]
    assert ends == pytest.approx([16.0018e-3, 16.0048e-3, 16.0150e-3], abs=1e-10)
    assert answer["window_lost_worst"] == pytest.approx((1.8 + 3 + 3) / 18)
    words = told(*GAUGE)
    assert "bench comparator" in words
    assert "lose 43% at the worst" in words
    assert "or buy" in words
    assert "comparator, which" not in told(*GAUGE, "--comparator")


def test_no_micrometer_is_said_to_know_a_plug_to_a_micrometre() -> None:
    assert answered(*GAUGE)["known_m"] >= 2e-6


def test_the_handle_stops_the_plug_plainly_or_goes_in_plainly() -> None:
    for bore in ("6 H9", "16 H7", "21 H7", "25 H9", "60 H9"):
        answer = answered("make", "gauge", "--bore", bore)
        over = answer["handle_diameter_m"] - answer["largest_bore_m"]
        assert abs(over) >= 1.9e-3
        assert ("goes_deep_m" in answer) is (over > 0)
    assert "the handle stops it" in told(*GAUGE)
    assert "goes right through" in told("make", "gauge", "--bore", "60 H9")


def test_the_going_end_feels_the_whole_of_a_bore_whose_length_is_known() -> None:
    usual, longer = answered(*GAUGE), answered(*GAUGE, "--length", "33mm")
    assert usual["go_length_m"] == pytest.approx(0.020)
    assert longer["go_length_m"] == pytest.approx(0.033)
    shallow = answered(*GAUGE, "--length", "10mm", "--blind")
    assert shallow["gauging_length_m"] <= 0.010 + 1e-9


def test_the_steps_are_as_short_as_a_blind_bore_is_deep_down_to_the_shortest_of_use() -> None:
    """25 mm: 3 of pilot, 3 grooves of 1, four steps: 4.75, 4.5 as turned. 15 mm: 2.25, too short."""
    stepped = ("make", "gauge", "--bore", "25 H9", "--stepped", "--blind")
    answer = answered(*stepped, "--length", "25mm")
    assert answer["step_length_m"] == pytest.approx(0.0045)
    assert answer["gauging_length_m"] == pytest.approx(0.003 + 0.003 + 4 * 0.0045)
    done = ran(*stepped, "--length", "15mm", "--json")
    assert done.code == 3
    assert "2.5 mm" in json.loads(done.out)["reason"]
    assert ran(*stepped, "--length", "15mm", "--steps", "3").code == 0
    through = told("make", "gauge", "--bore", "25 H9", "--stepped", "--length", "15mm")
    assert "stand out of its far end" in through


@pytest.mark.parametrize(
    "asked", [GAUGE, STEPPED, ("make", "gauge", "--bore", "25 H9", "--stepped")]
)
def test_the_drawing_of_a_plug_has_its_knurl_its_necks_and_every_step(
    asked: tuple[str, ...], tmp_path: Path
) -> None:
    drawing = tmp_path / "plug.svg"
    assert ran(*asked, "--drawing", str(drawing)).code == 0
    svg = drawing.read_text(encoding="utf-8")
    assert "knurled" in svg
    assert svg.count(">4<") >= (1 if "--stepped" in asked else 2)  # necks of 4 mm
    answer = answered(*asked)
    if "--stepped" in asked:
        step = f">{1e3 * answer['step_length_m']:g}<"
        assert svg.count(step) == answer["steps"]
    else:
        assert "does not go" in svg
        assert "16.0120 to 16.0180 does not go" in svg
    assert ("lapped" in svg) is (answer["finish"] == "lapped")


@pytest.mark.parametrize(
    ("more", "reads"),
    [((), "16.0020 mm"), (("--comparator",), "16.0010 mm"), (("--stepped",), "16.0020 mm")],
)
def test_a_plug_is_worn_out_as_soon_as_its_reading_could_be_the_smallest_bore(
    more: tuple[str, ...], reads: str
) -> None:
    """16 mm, known to 2 µm by micrometer and to 1 on a comparator: the true size may be 16.000."""
    words = told(*GAUGE, *more)
    end = "the first step" if "--stepped" in more else "the going end"
    assert f"Worn out when {end} reads {reads}" in words
    assert answered(*GAUGE, *more)["worn_out_m"] == pytest.approx(
        1e-3 * float(reads.split(maxsplit=1)[0])
    )


def test_in_a_blind_bore_the_plug_stops_on_the_bottom_and_has_one_mouth_to_try() -> None:
    """10 mm deep: 3 of pilot and half a mm to spare leave 6.5; with 4 of neck the handle is 3.5 clear."""
    shallow = (*GAUGE, "--length", "10mm", "--blind")
    answer, words = answered(*shallow), told(*shallow)
    assert answer["go_length_m"] == pytest.approx(0.0065)
    assert answer["goes_deep_m"] == pytest.approx(0.010)
    assert "stops on the bottom, 10 mm" in words
    assert "the handle clear by 3.5 mm" in words
    assert "The last 3 mm (0.118 in) above the bottom is not felt" in words
    assert "one mouth, two ways round" in words
    assert "both mouths" not in words
    assert "there the handle stops it" not in words
    assert "both mouths" in told(*GAUGE)


def test_a_blind_bore_deeper_than_the_plug_is_told_that_the_handle_stops_it_first() -> None:
    """20 of going end, 3 of pilot, 4 of neck: 27 of 40 mm, and 24 of them felt."""
    deep = (*GAUGE, "--length", "40mm", "--blind")
    words = told(*deep)
    assert answered(*deep)["goes_deep_m"] == pytest.approx(0.027)
    assert "there the handle stops it, 13 mm" in words
    assert "deeper than 24 mm" in words
    assert "both mouths" not in words


def test_a_stepped_plug_in_a_blind_bore_is_told_what_stops_it() -> None:
    stepped = ("make", "gauge", "--bore", "25 H9", "--stepped", "--blind")
    assert "It stops on the bottom, 25 mm" in told(*stepped, "--length", "25mm")
    assert "there the handle stops it" in told(*STEPPED, "--blind", "--length", "80mm")


@pytest.mark.parametrize("asked", [GAUGE, STEPPED, ("make", "gauge", "--bore", "25 H9")])
def test_a_plug_stays_soft_because_no_step_does_more(
    asked: tuple[str, ...], tmp_path: Path
) -> None:
    drawing, words = tmp_path / "plug.svg", told(*asked, "--drawing", str(tmp_path / "plug.svg"))
    assert "or mild steel, left soft" in words
    assert words.count("harden") == 1
    assert "A hardened plug is bought" in words
    svg = drawing.read_text(encoding="utf-8")
    assert "left soft" in svg
    assert "harden" not in svg
