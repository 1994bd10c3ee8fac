"""borewright crown: flat numbers, every rule beside the other, refusals in one line."""

from __future__ import annotations

import json
import math
from typing import Any

import pytest
from tests.cli_run import ran, refused, words

INCH = 0.0254
PULLEY = {"--diameter": "5in", "--face": "2in"}
CONTRACT = [
    "height_m",
    "diameter_m",
    "edge_diameter_m",
    "face_m",
    "flat_m",
    "top_slide_angle_rad",
    "slide_travel_m",
    "slide_reading_m",
    "arc_radius_m",
    "recommended_height_m",
    "lowest_rule_height_m",
    "highest_rule_height_m",
]


def answered(**changes: str | None) -> dict[str, Any]:
    done = ran("crown", *words(PULLEY, **changes), "--json")
    assert done.code == 0, done.err
    answer: dict[str, Any] = json.loads(done.out)
    return answer


def told(**changes: str | None) -> str:
    done = ran("crown", *words(PULLEY, **changes))
    assert done.code == 0, done.err
    return done.out


def test_the_answer_is_one_flat_object_of_plain_numbers() -> None:
    answer = answered()
    assert list(answer)[: len(CONTRACT)] == CONTRACT
    for key, value in answer.items():
        if key != "assumed":
            assert type(value) in (int, float), key
            assert math.isfinite(value), key


def test_dooleys_three_quarters_in_a_foot_over_two_inches() -> None:
    """0.031 in on radius, top slide at atan(3/8 in 12): published rule, angle by hand."""
    answer = answered(rule="dooley")
    assert answer["height_m"] / INCH == pytest.approx(0.03125)
    assert answer["edge_diameter_m"] / INCH == pytest.approx(5 - 0.0625)
    assert math.degrees(answer["top_slide_angle_rad"]) == pytest.approx(1.78991, abs=5e-6)
    assert answer["slide_reading_m"] / INCH == pytest.approx(math.sin(math.atan(3 / 8 / 12)))
    assert answer["arc_radius_m"] / INCH == pytest.approx((1 + 0.03125**2) / (2 * 0.03125))


def test_without_a_rule_the_one_by_diameter_is_taken_and_said() -> None:
    answer = answered()
    assert answer["height_m"] == answer["height_by_iso_22_m"] == pytest.approx(0.4e-3)
    assumed = {a["what"]: a["taken"] for a in answer["assumed"]}
    assert assumed["rule"] == "iso-22"
    assert set(assumed) == {
        "rule",
        "shape",
        "flat in the middle",
        "slide travel",
        "dial",
        "dial division",
        "step of the saddle",
    }


def test_what_is_given_is_not_assumed() -> None:
    answer = answered(
        rule="dooley",
        shape="taper",
        flat="0in",
        slide_travel="2in",
        dial="radius",
        division="0.001in",
        steps="8",
    )
    assert answer["assumed"] == []


def test_every_rule_has_its_height_and_they_disagree() -> None:
    """By hand, on radius over half of 2 in: slopes times 1 in."""
    answer = answered()
    by_hand = {
        "eighth_on_diameter": 1 / 8 / 12 / 2,
        "eighth_on_radius": 1 / 8 / 12,
        "face_192nd": 2 / 192,
        "face_96th": 2 / 96,
        "face_24th": 2 / 24,
        "dooley_three_quarter": 3 / 4 / 12 / 2,
        "dooley_one": 1 / 12 / 2,
    }
    for rule, height in by_hand.items():
        assert answer[f"height_by_{rule}_m"] / INCH == pytest.approx(height), rule
    assert answer["highest_rule_height_m"] / answer["lowest_rule_height_m"] == pytest.approx(16)


def test_stairs_count_whole_divisions_on_radius_or_on_diameter() -> None:
    """Ten steps of 0.1 in under an arc of 0.05 in: depths by the circle, rounded by hand."""
    height, half = 0.05, 1.0
    radius = (half**2 + height**2) / (2 * height)
    for dial, per_radius in (("radius", 1), ("diameter", 2)):
        answer = answered(height="0.05in", shape="arc", steps="10", dial=dial)
        assert answer["dial_per_radius"] == per_radius
        count = answer["cuts_in_half_the_face"]
        for k in range(1, count + 1):
            from_edge = answer[f"cut_{k}_from_edge_m"] / INCH
            z = half - from_edge
            depth = radius - math.sqrt(radius**2 - z**2)
            thou = math.floor(1000 * per_radius * depth + 0.5)
            assert answer[f"cut_{k}_dial_m"] / INCH * 1000 == pytest.approx(thou)
        assert answer["largest_rounding_m"] / INCH <= 0.0005 / per_radius + 1e-9


def test_a_crown_too_slight_for_the_dial_has_no_stairs_and_says_so() -> None:
    assert answered(division="0.1in")["cuts_in_half_the_face"] == 0
    assert "Too slight for stairs on a dial of 0.100 in" in told(division="0.1in")


def test_the_text_says_all_rules_with_the_recommended_first_and_both_units() -> None:
    text = told()
    rows = [
        line.split("  ")[1]
        for line in text.splitlines()
        if "(0.40 mm)  " in line and "  0.4 mm  " in line
    ]
    assert rows[:1] == ["iso-22 (recommended)"]
    lines = text.splitlines()
    first = next(k for k, line in enumerate(lines) if "iso-22 (recommended)" in line)
    assert lines[first - 1].split() == [
        "rule",
        "height",
        "on",
        "radius",
        "its",
        "words",
        "from",
        "for",
    ]
    for rule in ("dooley-three-quarter", "eighth-on-radius", "face-24th"):
        assert any(line.startswith(f"  {rule}") for line in lines[first:])
    assert "The rules disagree 16 times: 0.0052 to 0.0833 in (0.132 to 2.117 mm)" in text


def test_the_text_says_what_is_out_of_scope_why_it_climbs_and_which_pulley() -> None:
    text = told()
    for said in (
        "abrasive band",
        "band saw",
        "Why a belt climbs",
        "Fast and loose",
        "common practice, no source",
        "The middle stays 5.000 in",
    ):
        assert said in text


def test_the_unit_typed_comes_first() -> None:
    text = told(diameter="127mm", face="50.8mm")
    assert "The middle stays 127.00 mm (5.000 in)" in text
    assert "25 mm (0.98 in) of top slide must read 0.394 mm" in text


def test_the_dial_is_read_from_the_right_side_and_said() -> None:
    assert "twice the depth" in told(dial="diameter")
    assert "a dial that counts diameter is turned twice as far" in told()
    assert "backlash always on one side" in told()


def test_a_travel_longer_than_the_face_is_read_along_a_bar() -> None:
    assert "on the face, still parallel" in told()
    assert "along a bar that is parallel" in told(slide_travel="3in")


def test_a_stated_height_beyond_every_rule_is_said_to_be() -> None:
    assert "more than any rule here asks" in told(height="0.1in")
    assert "less than any rule here asks" in told(height="0.001in")


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"diameter": None}, "--diameter: found nothing"),
        ({"face": None}, "--face: found nothing"),
        ({"rule": "dolly"}, "crown rule: found 'dolly'"),
        ({"rule": "dooley", "height": "1mm"}, "--rule, --height: found both"),
        ({"diameter": "1in", "rule": "iso-22"}, "allowed is 40 to 710 mm by iso-22"),
        ({"height": "2in"}, "height of the crown: found 2.000 in"),
        ({"height": "0in"}, "--height: found 0in"),
        ({"shape": "arc", "flat": "0.1in"}, "a flat with the taper only"),
        ({"shape": "round"}, "--shape"),
        ({"flat": "2in"}, "one narrower than the face"),
        ({"steps": "1"}, "allowed is 2 to 200"),
        ({"steps": "many"}, "--steps: found 'many'"),
        ({"diameter": "5"}, "which could be 5 mm"),
        ({"face": "700in"}, "width of the face"),
        ({"template": "crown.png"}, "a name that ends in .svg, .dxf, .pdf"),
        ({"template": "/nowhere/at/all/crown.svg"}, "No such file or directory"),
    ],
)
def test_what_makes_no_crown_is_refused_in_one_line(
    changes: dict[str, str | None], said: str
) -> None:
    assert said in refused("crown", *words(PULLEY, **changes))
