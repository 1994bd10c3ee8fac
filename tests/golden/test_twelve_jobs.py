"""Twelve jobs that shops bring (invented parts): each held as a machinist would hold it, each with a
twin in which one input is changed and the answer turns.

The answers are those of the trade (common practice, no source), not our earlier output: a caliper
cannot pick a mandrel, but sliding it on can; a reamed bore on its own size is everyday; many thin
blanks go in a gang; a thin ring is clamped by its faces and never in a three-jaw; a home-cast pulley
is turned on a stub made for it; a worn oval bore is set true by indicator and bored; a doubt at a key
corner stays a doubt.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.job import parse_job, read_shelf
from borewright.reference.library import Tables
from borewright.service.planned import plan

TWELVE = Path(__file__).resolve().parents[2] / "examples" / "twelve"
SHELF = TWELVE / "12-job-shop-shelf.toml"
BIG = (
    '[{ size = "100mm", small_end = "99.99mm", ground_length = "120mm", overall_length = "180mm" }]'
)
YES, CARE, NO = Verdict.YES, Verdict.CARE, Verdict.NO

# job, its verdict, the way, words of its answer; what the twin changes, and its way or ways
ROWS = [
    (
        *("01-beginner-pulley", CARE, "plain-taper", "the mandrel can"),
        *(('"caliper"', '"plug gauge"'), ("turned-stub",)),
    ),
    (
        *("02-class-blanks", YES, "plain-taper", "5/8 in mandrel"),
        *(('"0.6251in"', '"0.6290in"'), ("nut-mandrel", "turned-stub")),
    ),
    (
        *("03-locomotive-wheels", YES, "plain-taper", "18 mm mandrel"),
        *(('"18.008mm"', '"18.4mm"'), ("soft-mandrel", "nut-mandrel", "turned-stub")),
    ),
    (
        *("04-flywheel", YES, "plain-taper", "3/4 in mandrel"),
        *(('"3/4in"', '"1/2in"'), ("faceplate", "spigot-plate")),
    ),
    (
        *("05-drive-wheel", YES, "plain-taper", "7/8 in mandrel"),
        *(('"7/8in"', '"1/2in"'), ("turned-stub", "nut-mandrel")),
    ),
    (
        *("06-bronze-bush", YES, "nut-mandrel", "shoulder"),
        *(("quantity = 6", "quantity = 1"), ("turned-stub",)),
    ),
    (
        *("07-thin-ring", YES, "endwise", "clamp it by its faces"),
        *(('["20mm", "25mm"]', BIG), ("endwise", "faceplate")),
    ),
    (
        *("08-home-cast-pulley", YES, "turned-stub", "if the casting is sound"),
        *(('"scrap aluminium"', '"al-cast"'), ("plain-taper",)),
    ),
    (
        *("09-no-mandrels", YES, "turned-stub", "turn a stub"),
        *(('mandrels = "none"', 'mandrels = ["16mm"]'), ("plain-taper",)),
    ),
    (
        *("10-gear-blanks", YES, "gang", "7 at a time"),
        *(("quantity = 20", "quantity = 1"), ("plain-taper",)),
    ),
    (
        *("11-worn-pulley", CARE, "four-jaw", "only if no crack is found"),
        *(('"suspected"', '"none"'), ("four-jaw",)),
    ),
    (
        *("12-job-shop", YES, "plain-taper", "past touch"),
        *(('"0.7502in"', '"0.7202in"'), ("nut-mandrel", "turned-stub")),
    ),
]
NAMES = [r[0] for r in ROWS]


def planned(name: str, change: tuple[str, str] | None = None, use: str = "") -> Plan:
    text = (TWELVE / f"{name}.toml").read_text(encoding="utf-8")
    if change:
        assert text.count(change[0]) == 1, change
        text = text.replace(*change)
    shelf = read_shelf(SHELF) if name.startswith("12") else None
    return plan(parse_job(text, name), shelf, use=use, source_tables=Tables())


def way_of(answer: Plan) -> str:
    assert answer.chosen is not None, answer.headline
    return answer.chosen.way


@pytest.mark.parametrize(("name", "verdict", "way", "words", "change", "ways"), ROWS, ids=NAMES)
def test_each_is_held_as_a_machinist_would_argue(
    name: str, verdict: Verdict, way: str, words: str, change: tuple[str, str], ways: tuple
) -> None:
    answer = planned(name)
    assert answer.verdict is verdict
    assert way_of(answer) == way
    assert words in answer.headline
    assert answer.steps


@pytest.mark.parametrize(("name", "verdict", "way", "words", "change", "ways"), ROWS, ids=NAMES)
def test_each_twin_is_held_otherwise_or_answered_otherwise(
    name: str, verdict: Verdict, way: str, words: str, change: tuple[str, str], ways: tuple
) -> None:
    before, twin = planned(name), planned(name, change)
    assert way_of(twin) in ways
    assert before.candidates != twin.candidates


# On the mandrel alone: the question that the twin turns, and what the twin changes.
ON_THE_MANDREL = [
    ("01-beginner-pulley", "bore", ('"caliper"', '"plug gauge"')),
    ("02-class-blanks", "bore", ('"0.6251in"', '"0.6290in"')),
    ("03-locomotive-wheels", "bend", ('"0.02mm"', '"0.002mm"')),
    ("04-flywheel", "speed", ('"28rpm", "60rpm", "120rpm"', '"180rpm"')),
    ("05-drive-wheel", "reach", ('"8in"', '"4in"')),
    ("06-bronze-bush", "crack", ('"28.6mm"', '"24mm"')),
    ("07-thin-ring", "bore", ('["20mm", "25mm"]', BIG)),
    ("08-home-cast-pulley", "slip", ('"200rpm"]', '"200rpm"]\nfeeds = ["0.005in/rev"]')),
    ("10-gear-blanks", "bore", ('"15.008mm"', '"15.05mm"')),
    ("11-worn-pulley", "bore", ('"1.2580in"', '"1.2505in"')),
    ("12-job-shop", "bore", ('"0.7502in"', '"0.7202in"')),
]


def verdict_of(answer: Plan, question: str) -> Verdict:
    """Of the question; of the whole plan where no mandrel comes near the bore and nothing is asked."""
    return next((q.verdict for q in answer.questions if q.id == question), answer.verdict)


@pytest.mark.parametrize(("name", "question", "change"), ON_THE_MANDREL)
def test_on_the_mandrel_the_twin_turns_the_named_question(
    name: str, question: str, change: tuple[str, str]
) -> None:
    before, after = (planned(name, c, use="plain-taper") for c in (None, change))
    assert verdict_of(before, question) is not verdict_of(after, question)


def row(answer: Plan, way: str) -> tuple[Verdict | None, str]:
    best = next(c for c in answer.candidates if c.way == way)
    return best.verdict, best.reason


def test_the_thin_ring_springs_in_a_scroll_chuck_and_not_by_its_faces() -> None:
    answer = planned("07-thin-ring")
    verdict, reason = row(answer, "three-jaw")
    assert verdict is NO
    assert "springs" in reason
    assert row(answer, "soft-jaws")[0] is YES


def test_the_flywheel_slips_on_a_stub_and_is_strapped_by_its_spokes() -> None:
    answer = planned("04-flywheel")
    verdict, reason = row(answer, "turned-stub")
    assert verdict is NO
    assert "The hold gives" in reason
    assert row(answer, "faceplate")[0] is YES


def test_the_worn_pulley_takes_nothing_that_finds_its_bore_round() -> None:
    answer = planned("11-worn-pulley")
    for way in ("plain-taper", "turned-stub", "nut-mandrel", "expanding", "cone-centers"):
        assert row(answer, way)[0] is NO, way
    assert answer.steps[0].title == "Look for the flaw first"


def test_the_worn_pulley_with_a_flaw_that_is_seen_is_a_no_however_it_is_held() -> None:
    seen = planned("11-worn-pulley", ('"suspected"', '"seen"'))
    assert seen.verdict is NO
    assert {c.verdict for c in seen.candidates} == {NO}
    assert seen.steps == ()


def test_the_worn_pulley_without_its_doubt_still_bears_on_two_lines() -> None:
    sure = planned("11-worn-pulley", ('"suspected"', '"none"'), use="plain-taper")
    assert "two lines" in next(q.reason for q in sure.questions if q.id == "bore")
    assert verdict_of(sure, "bore") is NO
    assert "on a doubt" not in sure.headline


def test_the_empty_shelf_insisting_on_a_mandrel_is_a_no() -> None:
    assert planned("09-no-mandrels", use="plain-taper").verdict is NO


def test_there_are_twelve() -> None:
    assert len(list(TWELVE.glob("[01]*.toml"))) - 1 == 12
