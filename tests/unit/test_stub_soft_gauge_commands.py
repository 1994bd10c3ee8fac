"""borewright make stub, soft, gauge: flat numbers, papers, files, refusals, the answer no."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

import pytest
from tests.cli_run import Ran, ran, refused
from tests.house_files import ROOT

STUB = ("make", "stub", "--bore", "0.6251in", "--length", "1 1/8in", "--outside", "2 5/8in")
EXPANDING = ("make", "stub", "--bore", "25 H7", "--length", "40mm", "--expanding")
TURNED = ("make", "soft", "--bore", "16.01mm", "--length", "30mm")
DRAWN = (*TURNED, "--as-drawn", "--outside", "40mm", "--hub-out", "12mm")
GAUGE = ("make", "gauge", "--bore", "16 H7")
STEPPED = (*GAUGE, "--stepped")
ALL = (STUB, EXPANDING, TURNED, DRAWN, GAUGE, STEPPED)
IDS = ("stub", "expanding", "turned", "as drawn", "gauge", "stepped")
WORDS = ("verdict", "reason", "screw", "tap_drill", "plug", "form", "center", "set_screw", "finish")
LENGTHS = ("_m", "_Pa", "_rad", "_N", "_Nm", "_N_per_m", "_kg", "_m_per_m")
EVERY = pytest.mark.parametrize("asked", ALL, ids=IDS)


def answered(*asked: str) -> dict[str, Any]:
    done = ran(*asked, "--json")
    assert done.code == 0, done.err
    answer: dict[str, Any] = json.loads(done.out)
    return answer


def told(*asked: str) -> str:
    done = ran(*asked)
    assert done.code == 0, done.err
    return " ".join(done.out.split())


# What all have


@EVERY
def test_the_answer_is_one_flat_object_of_plain_numbers_with_their_units(
    asked: tuple[str, ...],
) -> None:
    answer = answered(*asked)
    assert list(answer)[:2] == ["verdict", "reason"]
    assert answer["verdict"] in ("yes", "with care")
    for key, value in answer.items():
        if key == "assumed":
            continue
        assert isinstance(value, str | int | float), key
        if isinstance(value, float):
            assert math.isfinite(value), key
            ratio = "_per_slide" in key or "_over_diameter" in key or "window_lost" in key
            assert key.endswith(LENGTHS) or ratio, key


@EVERY
def test_the_same_input_gives_the_same_bytes(asked: tuple[str, ...]) -> None:
    assert ran(*asked, "--json").out == ran(*asked, "--json").out


@EVERY
def test_the_papers_begin_with_local_codes_and_cautions_of_this_work(
    asked: tuple[str, ...],
) -> None:
    words = told(*asked)
    assert "Local codes and licensed practice come first" in words
    assert "ROUTE" in words


@EVERY
def test_papers_and_drawings_are_written(asked: tuple[str, ...], tmp_path: Path) -> None:
    paper, drawing = tmp_path / "all.pdf", tmp_path / "part.svg"
    done = ran(*asked, "--out", str(paper), "--drawing", str(drawing))
    assert done.code == 0, done.err
    assert paper.read_bytes().startswith(b"%PDF")
    assert "<svg" in drawing.read_text(encoding="utf-8")
    scale = float(_scale(drawing.read_text(encoding="utf-8")))
    assert scale >= 0.5  # words that leave no room for the part would shrink it to nothing


def _scale(svg: str) -> str:
    for at in ('data-scale="', "data-scale='"):
        if at in svg:
            return svg.partition(at)[2].partition(at[-1])[0]
    raise AssertionError("no scale is said")


def test_sizes_typed_in_inches_come_back_in_inches_first() -> None:
    assert "0.6249 to 0.6251 in (15.872 to 15.878 mm)" in told(*STUB)
    assert "16.0018 to 16.0078 mm" in told(*GAUGE)


# The stub


def test_the_stub_by_hand() -> None:
    """5/8 bore: half of it is 5/16; 1.4 bores of shoulder; none to 6 µm under; 1 1/2 threads.

    Washer 5/32, 0.056 past the end, 15/32 of thread: 0.681 in. A 3/4 screw serves, its thread
    0.537 in and one pitch more, 0.593, which a rule says as 19/32.
    """
    answer = answered(*STUB)
    assert answer["screw"] == "5/16-18"
    assert answer["tap_drill"] == "F"
    assert answer["shoulder_diameter_m"] == pytest.approx(7 / 8 * 0.0254)
    assert answer["spigot_largest_m"] == pytest.approx(0.6251 * 0.0254)
    assert answer["spigot_largest_m"] - answer["spigot_smallest_m"] == pytest.approx(6e-6)
    assert answer["spigot_length_m"] == pytest.approx(0.95 * 1.125 * 0.0254)
    assert answer["screw_length_m"] == pytest.approx(0.75 * 0.0254)
    assert answer["thread_depth_m"] == pytest.approx(19 / 32 * 0.0254)
    assert answer["washer_thickness_m"] == pytest.approx(5 / 32 * 0.0254)


def test_a_job_file_and_the_same_sizes_typed_give_the_same_stub() -> None:
    example = ROOT / "examples" / "hollow-brook-drive-wheel.toml"
    by_job = answered("make", "stub", str(example))
    typed = answered(*STUB, "--measured-with", "bore gauge")
    for key in ("spigot_diameter_m", "screw", "shoulder_diameter_m", "washer_outside_m"):
        assert by_job[key] == typed[key] or by_job[key] == pytest.approx(typed[key])


def test_a_batch_is_turned_to_its_smallest_bore_and_told_how_the_largest_shakes() -> None:
    answer = answered("make", "stub", "--bore", "16 H7", "--length", "20mm")
    assert answer["spigot_largest_m"] == pytest.approx(0.016)
    assert answer["largest_shake_m"] == pytest.approx(18e-6 + 6e-6)
    assert answer["verdict"] == "with care"
    assert "sort the pieces" in answer["reason"]


def test_the_last_tenths_are_told_with_what_to_do_when_it_went_under() -> None:
    words = told(*STUB)
    assert "2.87° (1 in 10)" in words
    assert "If it went under size" in words
    assert "50 to 120 µm" in words  # the gap of retaining compound, from its own table


def test_an_expanding_stub_is_slit_last_and_finished_with_the_plug_nipped() -> None:
    words = told(*EXPANDING)
    assert words.index("Saw the slits") < words.index("Nip the plug")
    assert words.index("Nip the plug") < words.index("one division of 20 µm")
    answer = answered(*EXPANDING)
    assert answer["opening_needed_m"] >= 21e-6  # at least the window of 25 H7
    assert answer["plug_travel_needed_m"] == pytest.approx(16 * answer["opening_needed_m"])


def test_a_long_stub_wants_the_tailstock() -> None:
    answer = answered("make", "stub", "--bore", "12mm", "--length", "60mm")
    assert answer["verdict"] == "with care"
    assert "tailstock" in answer["reason"]


# The soft mandrel


def test_a_turned_bar_by_hand() -> None:
    """16.01 mm, 30 long, a quarter bore past each face, half a micrometre per millimetre.

    4.0025 mm of it, 4.1 as a caliper says it; 0.00015 in over the bore at the face.
    """
    answer, over = answered(*TURNED), 0.00015 * 0.0254
    assert answer["leading_face_diameter_m"] == pytest.approx(16.01e-3 + over)
    assert answer["large_end_m"] == pytest.approx(16.01e-3 + over + 0.0005 * 4.1e-3)
    assert answer["small_end_m"] == pytest.approx(16.01e-3 + over - 0.0005 * 34.1e-3)
    assert "set back to zero" in told(*TURNED)


def test_a_drawn_bar_tells_how_far_out_it_throws_the_work_and_where_the_screw_sits() -> None:
    answer, words = answered(*DRAWN), told(*DRAWN)
    assert answer["bar_diameter_m"] == pytest.approx(0.016)
    assert answer["runout_low_m"] == pytest.approx(10e-6)
    assert answer["thrown_over_m"] == pytest.approx(answer["runout_m"] / 2)
    # ISO 286-1: 10 to 18 mm, IT10 70 and IT11 110 µm.
    assert answer["under_by_h10_m"] == pytest.approx(70e-6)
    assert answer["under_by_h11_m"] == pytest.approx(110e-6)
    assert "the work's own hub" in words
    assert "the micrometer decides" in words


def test_a_measured_bar_leaves_nothing_to_guess() -> None:
    answer = answered(*DRAWN, "--bar", "15.99mm")
    assert answer["runout_low_m"] == answer["runout_high_m"] == pytest.approx(20e-6)


def test_a_hub_nobody_described_is_assumed_and_said() -> None:
    assumed = answered(*TURNED, "--as-drawn")["assumed"]
    assert "hub stands out" in {a["what"] for a in assumed}


# The gauge


def test_the_gauge_of_16_h7_by_hand() -> None:
    """18 µm: lapped, 6 µm at each end because a tenth is 1.8, a micrometer knows 2 either way and
    the hand hits within 2; 1.8 of wear."""
    answer = answered(*GAUGE)
    ends = [answer[f"{end}_m"] for end in ("go_smallest", "go_largest", "not_go_smallest")]
    assert ends == pytest.approx([16.0018e-3, 16.0078e-3, 16.0120e-3], abs=1e-10)
    assert answer["window_lost_worst"] == pytest.approx((1.8 + 6 + 6) / 18)
    assert answer["tenth_of_window_m"] == pytest.approx(1.8e-6)
    assert "the window pays" in told(*GAUGE)


def test_the_end_that_does_not_go_is_the_shorter_and_is_marked() -> None:
    answer, words = answered(*GAUGE), told(*GAUGE)
    assert answer["not_go_length_m"] == pytest.approx(answer["go_length_m"] / 2, rel=0.02)
    assert "filled red" in words


def test_a_blind_bore_gets_a_flat_for_the_air() -> None:
    assert answered(*GAUGE)["vent_depth_m"] == 0.0
    assert answered(*GAUGE, "--blind")["vent_depth_m"] > 0.0
    assert "lets the air out" in told(*GAUGE, "--blind")


def test_what_goes_in_is_read_as_a_bore() -> None:
    words = told(*STEPPED)
    assert "step 1, not step 2" in words
    answer = answered(*STEPPED)
    assert answer["entered_0"] == "too small"
    assert answer[f"entered_{answer['steps']}"] == "too large"
    assert answer["entered_1"] == "good"
    assert answer["entered_1_bore_at_least_m"] >= 0.016


def test_limits_shown_are_never_wider_than_those_meant() -> None:
    """0.6248 to 0.6252 in: five decimals of an inch, inward."""
    asked = ("make", "gauge", "--bore-low", "0.6248in", "--bore-high", "0.6252in", "--comparator")
    answer, words = answered(*asked), told(*asked)
    low, high = 0.62484, 0.62495
    assert "goes 0.62484 to 0.62495 in" in words
    assert low * 0.0254 >= answer["go_smallest_m"]
    assert high * 0.0254 <= answer["go_largest_m"]


TO_BE_BORED = """
title = "Blank to be bored"
units = "inch"
[work]
material = "steel-1018"
blank = "bar"
outside = "2 1/2in"
length = "1in"
[work.bore]
size = "39/64in"
measured_with = "caliper"
made_by = "drilled"
[hold]
mandrels = ["5/8in"]
"""


def test_a_job_whose_bore_is_still_to_be_made_gives_the_window_that_the_plan_bores_to(
    tmp_path: Path,
) -> None:
    job = tmp_path / "job.toml"
    job.write_text(TO_BE_BORED, encoding="utf-8")
    planned = json.loads(ran("plan", str(job), "--json").out)["bore_route"]["plug_steps"]
    answer = answered("make", "gauge", str(job))
    assert answer["smallest_bore_m"] == planned[0]["best"]
    assert answer["largest_bore_m"] == planned[-1]["best"]
    assert answer["assumed"][0]["what"] == "limits"


# Refused, and no

BAD = {
    "no bore": ("make", "stub", "--length", "20mm"),
    "no length": ("make", "stub", "--bore", "16mm"),
    "one limit": ("make", "stub", "--bore-low", "16mm", "--length", "20mm"),
    "limits crossed": ("make", "gauge", "--bore-low", "16.02mm", "--bore-high", "16mm"),
    "bore twice": ("make", "gauge", "--bore", "16 H7", "--bore-low", "16mm"),
    "no limits": ("make", "gauge", "--bore", "16mm"),
    "no unit": ("make", "stub", "--bore", "16", "--length", "20mm"),
    "too large": ("make", "stub", "--bore", "200mm", "--length", "20mm"),
    "too small": ("make", "soft", "--bore", "0.5mm", "--length", "20mm"),
    "outside in the bore": (*TURNED, "--outside", "15mm"),
    "plug alone": (*STUB, "--plug", "cone"),
    "bar alone": (*TURNED, "--bar", "16mm"),
    "hub longer than the bore": (*TURNED, "--as-drawn", "--hub-out", "40mm"),
    "material": (*STUB, "--material", "unobtainium"),
    "gauge": (*STUB, "--measured-with", "crystal ball"),
    "steps": (*GAUGE, "--steps", "1"),
    "too many steps": (*GAUGE, "--steps", "9"),
    "class beyond the tables": ("make", "gauge", "--bore", "190 H7"),
    "sizes beside a job": ("make", "stub", "job.toml", "--bore", "16mm"),
    "ending": (*STUB, "--drawing", "stub.doc"),
}


@pytest.mark.parametrize("asked", BAD.values(), ids=list(BAD))
def test_bad_input_is_one_sentence(asked: tuple[str, ...]) -> None:
    refused(*asked)


NO = {
    "large bore": ("make", "stub", "--bore", "80mm", "--length", "20mm"),
    "small bore": ("make", "stub", "--bore", "4mm", "--length", "20mm"),
    "thin disc on fingers": (
        "make", "stub", "--bore", "50mm", "--length", "10mm", "--expanding",
    ),
    "thin wall": (
        "make", "stub", "--bore", "20mm", "--length", "20mm", "--outside", "20.2mm",
    ),
    "heavy bar": ("make", "soft", "--bore", "100mm", "--length", "50mm"),
    "loose bar": (
        "make", "soft", "--bore", "16.6mm", "--length", "30mm", "--as-drawn",
    ),
    "narrow window": ("make", "gauge", "--bore-low", "16mm", "--bore-high", "16.006mm"),
    "heavy plug": ("make", "gauge", "--bore", "100 H7"),
    "batch too wide": ("make", "soft", "--bore", "16 H11", "--length", "30mm"),
}  # fmt: skip


@pytest.mark.parametrize("asked", NO.values(), ids=list(NO))
def test_the_answer_no_says_why_and_what_instead(asked: tuple[str, ...], tmp_path: Path) -> None:
    out = tmp_path / "all.pdf"
    done: Ran = ran(*asked, "--out", str(out), "--json")
    assert done.code == 3, done.out
    answer = json.loads(done.out)
    assert answer["verdict"] == "no"
    assert answer["reason"].count(". ") >= 1
    assert not out.exists()
