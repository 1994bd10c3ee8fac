"""The answer on a terminal, and the explanation of its figures."""

from __future__ import annotations

from dataclasses import replace
from math import inf

import pytest
from tests.sample_plan import sample_plan

from borewright.answer.plan import Plan
from borewright.answer.records import Figure, Input, Step
from borewright.quantities.show import Show
from borewright.reference import tables
from borewright.report import explain_text, plan_text
from borewright.report.words import figure_words, show_for


def squeezed(text: str) -> str:
    return " ".join(text.split())


def with_figure(figure: Figure) -> Plan:
    plan = sample_plan()
    return replace(plan, figures=(figure,), questions=(), push=None, steps=())


def test_sentences_come_first_then_questions_then_steps() -> None:
    text = plan_text(sample_plan())
    order = ["hold it on the 5/8 in mandrel", "expect 430 lbf", "Proof load", "Questions", "Steps"]
    places = [text.index(words) for words in order]
    assert places == sorted(places)


@pytest.mark.parametrize("units", ["inch", "mm"])
@pytest.mark.parametrize("big", [False, True])
def test_no_line_is_wider_than_ninety_columns(units: str, big: bool) -> None:
    assert max(len(line) for line in plan_text(sample_plan(units, big=big)).splitlines()) <= 90


@pytest.mark.parametrize(
    ("units", "first"), [("inch", "430 lbf (1.9 kN)"), ("mm", "1.9 kN (430 lbf)")]
)
def test_the_units_typed_come_first(units: str, first: str) -> None:
    assert f"expect {first}" in plan_text(sample_plan(units))


def test_every_figure_and_blank_of_every_step_is_there() -> None:
    plan = sample_plan(big=True)
    text = squeezed(plan_text(plan))
    for step in plan.steps:
        assert all(figure_words(f, show_for(plan)) in text for f in step.figures)
        assert all(f"{name}: ____" in text for name in step.blanks)


def test_a_figure_that_a_step_says_in_words_is_not_said_again() -> None:
    plan = sample_plan()
    figure = Figure("push", 1900.0, "N", kind="force")
    step = Step(1, "Press", "expect 430 lbf (1.9 kN) at the end.", (figure,))
    assert plan_text(replace(plan, steps=(step,), push=None)).count("430 lbf (1.9 kN)") == 1


def test_a_longer_number_does_not_stand_for_a_figure() -> None:
    figure = Figure("push", 1900.0, "N", kind="force")
    step = Step(1, "Press", "Not 1430 lbf (1.9 kN).", (figure,))
    assert "push: 430 lbf (1.9 kN)." in plan_text(replace(sample_plan(), steps=(step,), cuts=()))


def test_every_question_says_its_verdict_in_words() -> None:
    plan = sample_plan()
    text = squeezed(plan_text(plan))
    assert all(f"{q.id}: {q.verdict.value}, margin" in text for q in plan.questions)


def test_a_question_without_a_margin_shows_none() -> None:
    plan = sample_plan()
    question = replace(plan.questions[0], margin=inf, margin_low=inf)
    assert "seat: with care. the seat" in plan_text(replace(plan, questions=(question,)))


def test_cautions_and_assumptions_stand_with_their_source() -> None:
    text = squeezed(plan_text(sample_plan()))
    assert "Never let the tool touch a hard mandrel. (common practice, no source)" in text
    assert "oiled steel on aluminium (common practice, no source)" in text


def test_empty_parts_have_no_heading() -> None:
    text = plan_text(replace(sample_plan(), cuts=(), notes=(), better_ways=()))
    assert "Cuts\n" not in text
    assert "Notes\n" not in text
    assert "Other ways" not in text


def test_a_pencil_line_has_rule_numbers_source_and_weakness() -> None:
    formula = tables().formula("bore_window")
    inputs = (Input("travel", 0.0381, "m"),)
    figure = Figure("bore_high", 0.0159, "m", formula=formula.id, inputs=inputs, kind="bore")
    line = squeezed(explain_text(with_figure(figure)))
    show = Show("inch")
    assert line.startswith(f"bore high = {show.bore(0.0159)}; rule: {formula.rule}")
    assert f"in: travel {show.length(0.0381)}" in line
    assert tables().source(formula.source).citation.rstrip(".") in line
    assert formula.weakness.rstrip(".") in line


def test_a_figure_of_an_unknown_formula_is_still_explained() -> None:
    line = explain_text(with_figure(Figure("odd", 2.0, "N", formula="nobody-knows")))
    assert "odd = " in line
    assert "nobody-knows" in line
    assert "none stated" in line


def test_a_figure_with_neither_rule_nor_source_was_stated_or_chosen() -> None:
    line = explain_text(with_figure(Figure("depth", 0.0254, "m", kind="length")))
    assert line == "depth = 1 in (25.4 mm); source: as stated or chosen.\n"


def test_what_is_not_judged_stands_in_words_on_one_line() -> None:
    plan = replace(sample_plan(), not_judged=("rock", "heat", "true", "speed", "balance"))
    lines = plan_text(plan).splitlines()
    assert lines[lines.index("Not judged") + 1].strip() == (
        "whether it rocks; heat; how true it runs; whether the lathe goes slow enough; balance"
    )


def test_every_figure_is_explained_once() -> None:
    plan = sample_plan(big=True)
    text = explain_text(plan)
    assert text.count("\npush expected = ") + text.startswith("push expected = ") == 1
    for question in plan.questions:
        assert f"{question.id} force = " in text


def test_no_heading_stands_twice() -> None:
    lines = plan_text(sample_plan()).splitlines()
    headings = [line for line in lines if line and not line.startswith(" ") and line.istitle()]
    assert len(headings) == len(set(headings))
    for heading in ("Other ways", "Questions", "Have ready", "Steps", "Weighed"):
        assert lines.count(heading) <= 1, heading
