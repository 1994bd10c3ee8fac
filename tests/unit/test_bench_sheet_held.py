"""The bench sheet of work held in other ways: one page, what it needs, what else would hold it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from tests.sample_held import HELD, sample_held, wordiest_held
from tests.sample_plan import sample_plan
from tests.unit.test_bench_sheet import HOSTILE, pages, pieces_of, sheet_of, squeezed
from tests.unit.test_drawing_labels import off_the_plate, overlapping, run_through, struck

from borewright.answer.held_picture import HeldNote, Role
from borewright.answer.plan import Plan
from borewright.answer.records import Have, Need, Verdict
from borewright.drawing import draw_plan
from borewright.holding.registry import WAYS
from borewright.job import read_job
from borewright.report.sheet_data import sheet_data
from borewright.report.sheet_trim import MOST_TRIM, trim
from borewright.report.taken_words import schedule_of
from borewright.report.words import way_words
from borewright.service.files import drawing_text, is_drawn, sheet_bytes
from borewright.service.planned import plan

TWELVE = sorted((Path(__file__).parents[2] / "examples" / "twelve").glob("*.toml"))
JOBS = [path for path in TWELVE if "shelf" not in path.name]


@pytest.mark.parametrize("shape", HELD)
@pytest.mark.parametrize(("units", "paper"), [("inch", "letter"), ("mm", "a4")])
def test_the_wordiest_hold_is_one_page_with_steps_cautions_and_cuts_whole(
    shape: str, units: str, paper: str
) -> None:
    held = wordiest_held(shape, units)
    (text,) = pages(sheet_of(held, paper=paper))
    assert [p for p in pieces_of(held) if squeezed(p) not in squeezed(text)] == []
    assert "Side view" in text


def front(answer: Plan) -> str:
    """The one page of a plan, beside that of the cutting where there is one."""
    first, *rest = pages(sheet_bytes(answer))
    assert len(rest) == (schedule_of(answer) is not None)
    return first


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_every_one_of_the_twelve_jobs_on_a_stub_is_one_page(path: Path) -> None:
    """A job that a stub does not suit says so on its page, without a drawing."""
    answer = plan(read_job(str(path)), use="turned-stub")
    text = front(answer)
    assert ("End view from the tailstock" in text) is (is_drawn(answer) and answer.goes_on)
    assert squeezed(answer.headline[-40:]) in squeezed(text)


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_the_best_plan_of_every_one_of_the_twelve_jobs_is_one_page(path: Path) -> None:
    answer = plan(read_job(str(path)))
    text = front(answer)
    missing = [s for s in answer.steps if squeezed(s.text) not in squeezed(text)]
    assert [s.title for s in missing] == []


@pytest.mark.parametrize("way", WAYS)
def test_every_way_that_can_hold_one_of_the_twelve_jobs_is_drawn_on_one_page(way: str) -> None:
    """The first job that the way serves; a threaded bore is in none of them."""
    plans = (plan(read_job(str(path)), use=way) for path in JOBS)
    served = next((p for p in plans if p.held is not None and p.goes_on), None)
    if served is None:
        assert way in ("threaded", "one-chucking")
        return
    scene = draw_plan(served)
    for fault in (overlapping, off_the_plate, struck, run_through):
        assert fault(scene) == []
    text = front(served)
    assert "Side view" in text
    assert "What it needs" in text or not served.chosen


def test_it_says_what_comes_from_the_shelf_what_is_made_and_what_is_bought() -> None:
    (text,) = pages(sheet_of(sample_held("jaws on a hub")))
    for words in (
        "From the shelf: three-jaw chuck.",
        "To be made: the stub and its washer, with a 5/16 in screw (about 25 min, a guess).",
        "To be bought: retaining compound.",
        "Time to set up: about 40 min for the batch, making included, cutting not: a guess.",
    ):
        assert squeezed(words) in squeezed(text)


def test_what_it_needs_is_not_said_again_under_have_ready() -> None:
    held = sample_held("jaws on a hub")
    held = replace(
        held,
        have_ready=(
            "three-jaw chuck",
            "the stub and its washer, with a 5/16 in screw (to be made)",
            "three-jaw chuck key",
            "lead pencil",
        ),
    )
    assert sheet_data(held)["have_ready"] == "three-jaw chuck key; lead pencil"


def test_the_best_three_other_ways_stand_with_verdict_minutes_runout_and_one_reason() -> None:
    held = sample_held("jaws on a hub", "mm")
    lines = sheet_data(held)["other_ways"]
    assert lines == [
        "way 0 of holding it: yes, 30 min to set up, runs out 3 µm. Reason 0.",
        "way 1 of holding it: with care, 50 min to set up, runs out 4 µm. Reason 1.",
        "way 2 of holding it: with care, 65 min to set up, runs out 5 µm. Reason 2.",
    ]


def test_where_fewer_serve_the_next_best_say_why_not() -> None:
    held = sample_held("jaws on a hub")
    no = replace(
        held.candidates[-1], reason="The bore is worn oval. And more is said.", decided_by="cannot"
    )
    held = replace(held, better_ways=(), candidates=(held.candidates[0], no))
    (line,) = sheet_data(held)["other_ways"]
    assert line == "way 3 of holding it: no. The bore is worn oval."


def test_the_chosen_way_is_none_of_the_others_and_each_stands_once() -> None:
    held = sample_held("jaws on a hub")
    assert held.chosen is not None
    other_face = replace(held.chosen, leading_face="A")
    twice = replace(held.better_ways[0], leading_face="B")
    held = replace(held, candidates=(other_face, twice, *held.candidates))
    lines = sheet_data(held)["other_ways"]
    assert len(lines) == 3
    assert not [line for line in lines if "stub turned" in line]
    assert len([line for line in lines if "way 0" in line]) == 1


def test_a_long_reason_is_cut_to_stay_on_two_lines() -> None:
    held = sample_held("jaws on a hub")
    long = replace(held.better_ways[0], reason="it goes on and on " * 20)
    line = sheet_data(replace(held, better_ways=(long,), candidates=()))["other_ways"][0]
    assert line.endswith("…")
    assert len(line) < 150


def test_a_way_that_nothing_decides_against_says_only_what_it_costs_more() -> None:
    held = sample_held("jaws on a hub")
    easy = replace(
        held.better_ways[0], decided_by="", minutes=90.0, tool="stub turned to 0.5 in (12.7 mm)"
    )
    quick = replace(easy, way="quick", minutes=10.0)
    lines = sheet_data(replace(held, better_ways=(easy, quick), candidates=()))["other_ways"]
    assert lines == [
        "stub turned to 0.5 in: yes, 90 min to set up, runs out 0.0001 in. Takes longer.",
        "stub turned to 0.5 in: yes, 10 min to set up, runs out 0.0001 in.",
    ]


def test_on_a_plain_taper_the_other_ways_stand_as_ever_and_nothing_is_needed() -> None:
    taper = sample_plan()
    data = sheet_data(taper)
    assert data["other_ways"] == [way_words(candidate) for candidate in taper.better_ways]
    assert data["needs"] == []
    assert data["have_ready"] == "; ".join(taper.have_ready)


def test_however_much_is_left_out_needs_steps_and_cautions_stay() -> None:
    whole = sheet_data(wordiest_held("jaws on a hub"))
    for level in range(MOST_TRIM + 1):
        left = trim(whole, level)
        for kept in ("needs", "cautions", "cuts"):
            assert left[kept] == whole[kept]
        assert [s["text"] for s in left["steps"]] == [s["text"] for s in whole["steps"]]
    assert len(trim(whole, MOST_TRIM)["other_ways"]) == 2
    assert "other ways after the first two" in trim(whole, MOST_TRIM)["left_out"]


@pytest.mark.parametrize("nasty", [text for text in HOSTILE if text])
def test_markup_in_needs_ways_and_notes_is_printed_as_typed(nasty: str) -> None:
    held = sample_held("jaws on a hub")
    assert held.chosen is not None
    assert held.held is not None
    chosen = replace(held.chosen, needs=(Need(nasty, Have.MAKE, 5.0),), tool=nasty)
    held = replace(
        held,
        chosen=chosen,
        better_ways=(replace(held.better_ways[0], tool=nasty),),
        held=replace(held.held, notes=(HeldNote(Role.JAW, nasty),)),
    )
    (text,) = pages(sheet_of(held))
    printed = squeezed("".join(c if c.isascii() else "?" for c in nasty))[:40]
    assert squeezed(text).count(printed) >= 2


def test_the_same_hold_gives_the_same_bytes() -> None:
    held = sample_held("strapped faceplate")
    assert sheet_of(held) == sheet_of(held)


def test_a_hold_that_is_a_no_has_words_alone() -> None:
    held = sample_held("jaws on a hub")
    seat = replace(held.questions[0], verdict=Verdict.NO)
    held = replace(held, verdict=Verdict.NO, questions=(seat,), chosen=None, steps=(), cuts=())
    (text,) = pages(sheet_of(held))
    assert "Side view" not in text
    assert "What it needs" not in text


def test_a_plan_that_holds_the_work_on_nothing_is_not_drawn() -> None:
    nothing: Plan = replace(sample_plan(), layout=None)
    assert not is_drawn(nothing)
    assert is_drawn(sample_held("jaws on a hub"))
    assert drawing_text(sample_held("jaws on a hub")).startswith("<svg")
