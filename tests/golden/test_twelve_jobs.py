"""Twelve jobs that shops bring (invented parts): each served or refused with its reason in words,
each with a twin in which one input is changed and the named question turns.

The answers are those of the trade (common practice, no source), not our earlier output: a caliper
cannot pick a mandrel; a reamed bore on its own size is everyday; a lathe that only goes fast cannot
turn a flywheel; a thin ring, an empty shelf and a worn oval bore want another way of holding, named.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from borewright.answer.records import Plan, Verdict
from borewright.job import parse_job, read_shelf
from borewright.reference.library import Tables
from borewright.service.planned import plan

TWELVE = Path(__file__).resolve().parents[2] / "examples" / "twelve"
SHELF = TWELVE / "12-job-shop-shelf.toml"
BIG = (
    '[{ size = "100mm", small_end = "99.99mm", ground_length = "120mm", overall_length = "180mm" }]'
)
YES, CARE, NO = Verdict.YES, Verdict.CARE, Verdict.NO

# job, its verdict, words of its answer, the question its twin turns, what the twin changes
ROWS = [
    ("01-beginner-pulley", CARE, "the mandrel can", "bore", ('"caliper"', '"plug gauge"')),
    ("02-class-blanks", YES, "5/8 in mandrel", "bore", ('"0.6251in"', '"0.6290in"')),
    ("03-locomotive-wheels", YES, "18 mm mandrel", "bend", ('"0.02mm"', '"0.002mm"')),
    ("04-flywheel", YES, "3/4 in mandrel", "speed", ('"28rpm", "60rpm", "120rpm"', '"180rpm"')),
    ("05-drive-wheel", YES, "7/8 in mandrel", "reach", ('"8in"', '"4in"')),
    ("06-bronze-bush", CARE, "warmer", "crack", ('"28.6mm"', '"24mm"')),
    ("07-thin-ring", NO, "soft jaws", "bore", ('["20mm", "25mm"]', BIG)),
    ("08-home-cast-pulley", CARE, "try it on first", "slip", ('"scrap aluminium"', '"al-cast"')),
    ("10-gear-blanks", YES, "15 mm mandrel", "bore", ('"15.008mm"', '"15.05mm"')),
    ("11-worn-pulley", NO, "Do not press it on a doubt", "bore", ('"1.2580in"', '"1.2505in"')),
    ("12-job-shop", YES, "past touch", "bore", ('"0.7502in"', '"0.7202in"')),
]
NAMES = [r[0] for r in ROWS]


def planned(name: str, change: tuple[str, str] | None = None) -> Plan:
    text = (TWELVE / f"{name}.toml").read_text(encoding="utf-8")
    if change:
        assert text.count(change[0]) == 1
        text = text.replace(*change)
    shelf = read_shelf(SHELF) if name.startswith("12") else None
    return plan(parse_job(text, name), shelf, source_tables=Tables())


def verdict_of(answer: Plan, question: str) -> Verdict:
    """Of the question; of the whole plan where no mandrel comes near the bore and nothing is asked."""
    return next((q.verdict for q in answer.questions if q.id == question), answer.verdict)


@pytest.mark.parametrize(("name", "verdict", "words", "question", "change"), ROWS, ids=NAMES)
def test_each_is_served_or_refused_in_words(
    name: str, verdict: Verdict, words: str, question: str, change: tuple[str, str]
) -> None:
    answer = planned(name)
    assert answer.verdict is verdict
    assert words in answer.headline
    assert bool(answer.steps) == (verdict is not NO)


@pytest.mark.parametrize(("name", "verdict", "words", "question", "change"), ROWS, ids=NAMES)
def test_each_twin_turns_the_named_question(
    name: str, verdict: Verdict, words: str, question: str, change: tuple[str, str]
) -> None:
    assert verdict_of(planned(name), question) is not verdict_of(planned(name, change), question)


def test_the_worn_pulley_without_its_doubt_still_bears_on_two_lines() -> None:
    sure = planned("11-worn-pulley", ('"suspected"', '"none"'))
    assert "two lines" in next(q.reason for q in sure.questions if q.id == "bore")
    assert verdict_of(sure, "bore") is NO
    assert "on a doubt" not in sure.headline


def test_the_empty_shelf_is_a_no_that_says_to_turn_a_stub_and_its_twin_is_served() -> None:
    empty = planned("09-no-mandrels")
    assert empty.verdict is NO
    assert "turn a stub" in empty.headline
    assert planned("09-no-mandrels", ('mandrels = "none"', 'mandrels = ["16mm"]')).verdict is not NO


@pytest.mark.parametrize(
    ("name", "way"),
    [
        ("07-thin-ring", "soft-jaws"),
        ("08-home-cast-pulley", "faceplate"),
        ("09-no-mandrels", "turned-stub"),
        ("10-gear-blanks", "nut-mandrel"),
        ("11-worn-pulley", "faceplate"),
    ],
)
def test_those_that_need_another_way_name_it(name: str, way: str) -> None:
    assert planned(name).better_ways[0].way == way


def test_there_are_twelve() -> None:
    assert len(list(TWELVE.glob("[01]*.toml"))) - 1 == 12
