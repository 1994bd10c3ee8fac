"""What a hand reads at the dividing head and at the grinder: depths, tooth figures, passes, cutters,
what to fetch, and nothing of the lathe where nothing is turned. Hollow Brook and its parts are invented."""

from __future__ import annotations

import pytest
from tests.load_jobs import BLANK, BUSH, PINION, planned, question

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.reference.library import Tables
from borewright.report.explain import explain_text, plan_figures
from borewright.report.terminal import plan_text

YES, CARE = Verdict.YES, Verdict.CARE
LATHE = ('between_centers = "500mm"', 'between_centers = "500mm"\nname = "the small lathe"')


def step(answer: Plan, title: str) -> str:
    return next(s.text for s in answer.steps if s.title == title)


# Depths


def test_the_depth_of_teeth_is_said_to_a_thou_in_step_table_and_pencil_check() -> None:
    """2.157 / 16 is 0.1348 in: two digits would leave the teeth five thou shallow."""
    answer = planned(BLANK)
    assert "Depth from touching the outside: 0.135 in (3.42 mm)" in step(answer, "Cut the teeth")
    each = answer.cuts[-1].passes // 24
    deep = 2.157 / 16 / each
    said = " ".join(plan_text(answer).split())
    assert f"{deep:.3f} in ({25.4 * deep:.2f} mm) deep, {24 * each} passes" in said
    said = " ".join(explain_text(answer, Tables()).split())
    assert f"depth {deep:.4g} in" in said
    assert "0.13 in" not in said


def test_a_deep_pass_of_a_stated_depth_keeps_its_hundredths() -> None:
    coarse = planned(PINION, ('"2mm"', '"2mm"\ndepth = "3.32mm"'))
    assert coarse.cuts[-1].passes == 48
    assert "2.25 mm (0.089 in) deep, 48 passes" in " ".join(plan_text(coarse).split())


# Teeth


def test_the_step_gives_figures_to_measure_a_tooth_against_and_says_what_is_not_in_them() -> None:
    """Of 24 teeth of 1 DP: chord 1.5697, height 1.0257; span over 2 at 14 1/2 degrees 4.6906."""
    said = step(planned(BLANK), "Cut the teeth")
    assert f"{1.5697 / 16:.4f} in" in said
    assert f"{1.0257 / 16:.4f} in" in said
    assert f"after 3 spaces, {4.6906 / 16:.4f} in" in said
    assert "No backlash is in these" in said


def test_the_tooth_figures_are_explained() -> None:
    figures = {f.name: f for f in plan_figures(planned(BLANK))}
    for name in ("tooth_chord", "tooth_height", "tooth_span"):
        assert figures[name].formula == name
        assert figures[name].sources


# What to fetch


def test_the_milling_machine_the_cutter_by_its_number_and_the_caliper_are_fetched() -> None:
    ready = "; ".join(planned(BLANK).have_ready)
    for wanted in (
        "milling machine",
        "dividing head",
        "form cutter No. 5 (21 to 25 teeth",
        "caliper",
    ):
        assert wanted in ready
    assert "marked for 24 teeth" not in ready


def test_a_grinder_is_fetched_for_the_bush_and_no_lathe() -> None:
    ready = "; ".join(planned(BUSH, LATHE).have_ready)
    assert "grinder" in ready
    assert "lathe" not in ready
    assert "the small lathe" in "; ".join(planned(PINION, LATHE).have_ready)


# Passes


def test_an_ordinary_blank_is_a_plain_yes() -> None:
    answer = planned(BLANK)
    assert question(answer, "slip").verdict is question(answer, "rock").verdict is YES
    assert answer.verdict is YES


def stubby(length: str, *more: tuple[str, str]) -> Plan:
    return planned(PINION, ('length = "25mm"', f'length = "{length}"'), *more)


@pytest.mark.parametrize("length", ["10mm", "9mm"])
def test_a_stubby_pinion_gets_the_fewest_passes_that_leave_slip_and_rock_a_yes(length: str) -> None:
    answer = stubby(length)
    each, left = divmod(answer.cuts[-1].passes, 24)
    assert (each > 1, left) == (True, 0)
    assert question(answer, "slip").verdict is question(answer, "rock").verdict is YES
    assert f"in {each} equal passes" in step(answer, "Cut the teeth")
    taken = {a.what: a.taken for a in answer.assumed}
    assert taken["passes through each space"].startswith(f"{each} equal ones")
    # one pass fewer, asked for, is not a yes
    fewer = 4.5 / (each - 1)
    asked = stubby(length, ('module = "2mm"', f'module = "2mm"\ndepth = "{fewer}mm"'))
    assert asked.cuts[-1].passes == 24 * (each - 1)
    assert {question(asked, name).verdict for name in ("slip", "rock")} != {YES}


def test_passes_that_are_stated_are_kept_and_nothing_is_assumed_of_them() -> None:
    asked = stubby("14mm", ('module = "2mm"', 'module = "2mm"\ndepth = "4.5mm"'))
    assert asked.cuts[-1].passes == 24
    assert "passes through each space" not in {a.what for a in asked.assumed}


def test_where_no_number_of_passes_serves_one_is_kept_and_the_answer_says_what_helps() -> None:
    coarse = planned(PINION, ("teeth = 24", "teeth = 11"), ('"2mm"', '"4mm"'))
    assert coarse.cuts[-1].passes == 11
    for name in ("slip", "rock"):
        said = question(coarse, name).changes_it
        assert "more passes" in said
        assert "lighter feed" in said


# Where nothing is turned


@pytest.mark.parametrize("text", [BUSH, BLANK], ids=["grind", "gear"])
def test_the_lathe_of_the_shelf_is_not_judged_where_nothing_is_turned(text: str) -> None:
    swing = "150mm" if text is BUSH else "6in"
    named = LATHE if text is BUSH else ("diametral_pitch = 16", "diametral_pitch = 16.0")
    answer = planned(text, (f'slide = "{swing}"', 'slide = "30mm"'), named)
    reach = question(answer, "reach")
    assert reach.verdict is YES
    assert "the small lathe" not in reach.reason
    assert ("grinder" if text is BUSH else "dividing head") in reach.reason
    assert "of swing and" in reach.reason
    assert "length between centers" in reach.reason
    assert "lathe" not in reach.reason


def test_a_large_ground_work_is_never_worse_than_with_care_for_reach() -> None:
    large = planned(BUSH, ('"40.02mm"', '"300.02mm"'), ('"40mm"', '"300mm"'))
    assert question(large, "reach").verdict is CARE
    assert "check" in question(large, "reach").reason


def test_coolant_is_not_advised_where_it_already_runs() -> None:
    dry, wet = planned(BUSH), planned(BUSH + "coolant = true\n")
    assert "coolant at once" in question(dry, "heat").changes_it
    assert "coolant at once" not in question(wet, "heat").changes_it
    assert "more coolant" in question(wet, "heat").changes_it


@pytest.mark.parametrize("text", [BUSH, BLANK], ids=["grind", "gear"])
def test_nothing_is_said_of_facing_or_of_turning_tools_where_nothing_is_turned(text: str) -> None:
    answer, turned = planned(text), planned(PINION)
    for tool in ("hard-mandrel", "hot-chips", "facing-loosens"):
        assert tool in {c.id for c in turned.cautions}
        assert tool not in {c.id for c in answer.cautions}
    assert not {"hard-work", "steel-swarf"} & {c.id for c in answer.cautions}
    assert "facing stops in the chamfer" in step(turned, "Check the bore")
    assert "Chamfer" not in step(answer, "Check the bore")
    assert "facing" not in plan_text(answer).lower()
