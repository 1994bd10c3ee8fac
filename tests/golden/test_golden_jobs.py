"""Six jobs a machinist knows the answer to, each with a twin that turns exactly one question.

The expected answers are the trade's (common practice, no source): a small wheel on its own-size
mandrel with a modest cut is everyday work; a big disc driven by a small bore slips; a brittle thin
hub cracks if forced; a bore larger than the large end falls through; too little travel slips; a
bore between two sizes wants a stub. None of them is our own earlier output.
"""

from pathlib import Path

import pytest
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.job import parse_job
from borewright.reference.library import Tables
from borewright.service import planned as service

JOBS = Path(__file__).parent / "jobs"

# name, question, verdict there, words in its reason, what the twin changes: (from, to)
GOLDEN = [
    ("everyday-wheel", "slip", Verdict.YES, "holds", ('feed = "0.004in"', 'feed = "0.030in"')),
    ("large-disc", "slip", Verdict.NO, "310 mm", ('outside = "310mm"', 'outside = "63mm"')),
    ("cracking-casting", "crack", Verdict.NO, "Brittle", ('"al-scrap-cast"', '"al-6061-t6"')),
    ("falls-through", "bore", Verdict.NO, "falls through", ('"0.6285in"', '"0.6251in"')),
    ("needs-travel", "slip", Verdict.NO, "holds", ('"2000N"', '"6000N"')),
    ("no-mandrel", "bore", Verdict.NO, "falls through", ('"19mm", "20mm"', '"19.5mm", "20mm"')),
]
NAMES = [row[0] for row in GOLDEN]


def planned(name: str, change: tuple[str, str] | None = None) -> Plan:
    text = (JOBS / f"{name}.toml").read_text(encoding="utf-8")
    if change:
        assert text.count(change[0]) == 1
        text = text.replace(*change)
    return plan(parse_job(text, name), source_tables=Tables())


def verdicts(answer: Plan) -> dict[str, Verdict]:
    return {q.id: q.verdict for q in answer.questions}


@pytest.mark.parametrize(("name", "question", "verdict", "words", "change"), GOLDEN, ids=NAMES)
def test_the_answer_is_the_trade_s(
    name: str, question: str, verdict: Verdict, words: str, change: tuple[str, str]
) -> None:
    answer = planned(name)
    asked = next(q for q in answer.questions if q.id == question)
    assert asked.verdict is verdict
    assert words in asked.reason
    others = {i: v for i, v in verdicts(answer).items() if i != question}
    assert Verdict.NO not in others.values()
    assert answer.verdict is verdict


@pytest.mark.parametrize(("name", "question", "verdict", "words", "change"), GOLDEN, ids=NAMES)
def test_the_twin_turns_exactly_that_question(
    name: str, question: str, verdict: Verdict, words: str, change: tuple[str, str]
) -> None:
    before, after = verdicts(planned(name)), verdicts(planned(name, change))
    turned = {i for i in before if before[i] is not after[i]}
    assert turned == {question}
    assert before[question] is not after[question]
    assert {before[question], after[question]} & {Verdict.YES, Verdict.CARE}


def test_more_travel_is_what_the_short_one_needs() -> None:
    answer = planned("needs-travel")
    slip = next(q for q in answer.questions if q.id == "slip")
    assert "The press allows" in slip.reason


def open_to_all(name: str, change: tuple[str, str] | None = None) -> Plan:
    """The plan with every way of holding weighed."""
    text = (JOBS / f"{name}.toml").read_text(encoding="utf-8")
    text = text.replace(*change) if change else text
    return service.plan(parse_job(text, name), source_tables=Tables())


@pytest.mark.parametrize(
    ("name", "ways"),
    [
        ("everyday-wheel", {"plain-taper"}),
        ("cracking-casting", {"turned-stub", "nut-mandrel", "spigot-plate"}),
        ("falls-through", {"turned-stub", "nut-mandrel"}),
        ("no-mandrel", {"turned-stub", "nut-mandrel"}),
    ],
)
def test_where_the_mandrel_will_not_do_another_way_is_carried_through(
    name: str, ways: set[str]
) -> None:
    answer = open_to_all(name)
    assert answer.chosen is not None
    assert answer.chosen.way in ways
    assert answer.steps


def test_the_large_disc_is_driven_near_its_rim_and_not_by_its_bore() -> None:
    answer = open_to_all("large-disc")
    rows = {c.way: c for c in reversed(answer.candidates)}
    assert rows["plain-taper"].verdict is rows["turned-stub"].verdict is Verdict.NO
    assert answer.chosen is not None
    assert answer.chosen.way in ("faceplate", "spigot-plate")
    assert answer.verdict is Verdict.CARE  # the bolts want holes in it


def test_an_empty_shelf_turns_a_stub_and_says_so_first() -> None:
    answer = open_to_all("no-mandrel", ('["18mm", "19mm", "20mm"]', '"none"'))
    assert answer.verdict is Verdict.YES
    assert "turn a stub" in answer.headline
