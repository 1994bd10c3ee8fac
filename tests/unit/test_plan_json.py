"""A plan as JSON: SI values, keys with their unit, finite, stable, and as the schema says."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator, ValidationError, validate
from tests.sample_plan import SHAPES, sample_plan

from borewright.answer.plan import Plan
from borewright.answer.records import Figure
from borewright.report import plan_json
from borewright.report.schema import plan_schema, plan_schema_text

SCHEMA_FILE = Path(__file__).parents[2] / "docs" / "schemas" / "plan.schema.json"
QUESTION_KEYS = {"id", "verdict", "margin", "margin_low", "reason", "changes_it", "figures"}
FIXED_KEYS = {
    *("verdict", "chosen", "questions", "candidates", "better_ways", "steps", "cautions", "cuts"),
    *("push", "proof", "layout", "bore_window_m", "assumed", "not_judged", "sources"),
}


def loaded(plan: Plan) -> dict[str, Any]:
    read: dict[str, Any] = json.loads(plan_json(plan))
    return read


def numbers(value: Any) -> list[float]:
    if isinstance(value, dict):
        return [n for part in value.values() for n in numbers(part)]
    if isinstance(value, list):
        return [n for part in value for n in numbers(part)]
    return [value] if isinstance(value, float) else []


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("big", [False, True])
def test_it_fits_the_schema(shape: str, big: bool) -> None:
    validate(loaded(sample_plan("mm", big=big, shape=shape)), plan_schema())


def test_a_bare_plan_fits_the_schema() -> None:
    bare = replace(
        sample_plan(), layout=None, push=None, proof=None, cuts=(), bore_window=None, chosen=None
    )
    validate(loaded(bare), plan_schema())
    assert loaded(bare)["bore_window_m"] is None


@pytest.mark.parametrize("key", sorted(FIXED_KEYS))
def test_a_plan_without_one_of_the_fixed_keys_does_not_fit(key: str) -> None:
    short = {k: v for k, v in loaded(sample_plan()).items() if k != key}
    with pytest.raises(ValidationError):
        validate(short, plan_schema())


def test_a_number_as_text_does_not_fit() -> None:
    wrong = loaded(sample_plan())
    wrong["proof"]["arm_m"] = "12 in"
    with pytest.raises(ValidationError):
        validate(wrong, plan_schema())


def test_the_schema_is_itself_a_schema() -> None:
    Draft202012Validator.check_schema(plan_schema())


def test_the_published_schema_is_the_current_one() -> None:
    """Write it anew with `plan_schema_text()` of `borewright.report`."""
    assert SCHEMA_FILE.read_text(encoding="utf-8") == plan_schema_text()


def test_every_question_has_its_fixed_keys() -> None:
    for question in loaded(sample_plan())["questions"]:
        assert question.keys() >= QUESTION_KEYS


def test_keys_carry_units_and_values_are_si() -> None:
    plan = sample_plan()
    assert plan.proof is not None
    assert plan.layout is not None
    read = loaded(plan)
    assert read["proof"]["torque_Nm"] == plan.proof.torque
    assert read["proof"]["force_N"] == plan.proof.force
    assert read["layout"]["seat_m"]["low"] == plan.layout.seat.low
    assert read["layout"]["rings"][0]["outside_m"] == plan.layout.rings[0].outside
    assert read["layout"]["interference_m"] == list(plan.layout.interference)
    assert read["cuts"][0]["spindle_speed_rev_per_s"] == plan.cuts[0].spindle_speed
    assert read["cuts"][0]["edge_angle_rad"] == plan.cuts[0].edge_angle
    assert read["push"]["proves_torque_Nm"]["best"] == plan.push.proves_torque.best  # type: ignore[union-attr]


def test_the_bore_window_is_low_and_high() -> None:
    plan = sample_plan()
    assert plan.bore_window is not None
    low, high = plan.bore_window
    assert loaded(plan)["bore_window_m"] == {"low": low, "high": high}


def test_a_figure_keeps_band_formula_inputs_and_sources() -> None:
    plan = sample_plan()
    written, figure = loaded(plan)["figures"]["push_N"], plan.figures[0]
    assert (written["low"], written["best"], written["high"]) == (
        figure.low,
        figure.best,
        figure.high,
    )
    assert written["sources"] == list(figure.sources)
    assert written["formula"] == figure.formula
    assert [i["label"] for i in written["inputs"]] == [i.label for i in figure.inputs]


def test_two_figures_of_one_name_are_both_kept() -> None:
    figures = (Figure("push", 1.0, "N"), Figure("push", 2.0, "N"))
    written = loaded(replace(sample_plan(), figures=figures))["figures"]
    assert sorted(f["best"] for f in written.values()) == [1.0, 2.0]


@pytest.mark.parametrize("value", [math.inf, -math.inf, math.nan])
def test_what_is_not_finite_becomes_null(value: float) -> None:
    plan = sample_plan()
    question = replace(plan.questions[0], margin=value)
    read = loaded(replace(plan, questions=(question,)))
    assert read["questions"][0]["margin"] is None
    assert all(math.isfinite(n) for n in numbers(read))
    validate(read, plan_schema())


def test_the_same_plan_gives_the_same_text() -> None:
    assert plan_json(sample_plan(big=True)) == plan_json(sample_plan(big=True))


def test_words_of_any_script_stay_as_typed() -> None:
    assert loaded(replace(sample_plan(), title="Rad „Öl“ 磨"))["title"] == "Rad „Öl“ 磨"
