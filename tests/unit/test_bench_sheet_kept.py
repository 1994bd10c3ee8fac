"""What a bench sheet never drops, where its table stands, and what it keeps silent on a no."""

from __future__ import annotations

import io
from dataclasses import replace

import pytest
from pypdf import PdfReader
from tests.sample_plan import sample_plan, wordiest_plan
from tests.unit.test_bench_sheet import POINT, pages, sheet_of, squeezed

from borewright.answer.plan import Plan
from borewright.answer.records import Figure, Verdict
from borewright.drawing import draw_plan, svg
from borewright.report import plan_text
from borewright.report.sheet_data import sheet_data


def test_the_work_and_its_finished_size_are_never_dropped() -> None:
    plan = replace(wordiest_plan(), echo=(*wordiest_plan().echo, "to finish at 2.500 in"))
    (text,) = pages(sheet_of(plan))
    assert "Left out for room" in text
    assert squeezed("You said: aluminium wheel 2.480 in outside") in squeezed(text)
    assert squeezed("to finish at 2.500 in") in squeezed(text)


def test_what_is_not_yes_keeps_its_reason_and_its_remedy_however_short_the_room() -> None:
    plan = wordiest_plan()
    doubtful = replace(
        plan.questions[0], reason="it may slip in the poor case", changes_it="A lighter cut helps."
    )
    refused = replace(plan.questions[1], verdict=Verdict.NO, reason="the lathe is too short")
    plan = replace(plan, questions=(doubtful, refused, *plan.questions[2:]))
    found = squeezed(pages(sheet_of(plan))[0])
    for words in ("it may slip in the poor case. A lighter cut helps.", "the lathe is too short."):
        assert squeezed(words) in found


def places_of(plan: Plan) -> list[tuple[str, float, float]]:
    """Every piece of text of the sheet with its x and y on the page, points."""
    found: list[tuple[str, float, float]] = []

    def note(text: str, page: list[float], at: list[float], *_: object) -> None:
        if text.strip():
            x, y = page[4] + page[0] * at[4], page[5] + page[3] * at[5]
            found.append((squeezed(text), x, y))

    PdfReader(io.BytesIO(sheet_of(plan))).pages[0].extract_text(visitor_text=note)
    return found


@pytest.mark.parametrize("count", range(8, 15))
def test_a_step_is_never_cut_by_the_end_of_a_column(count: int) -> None:
    plan = sample_plan(big=True)
    long = [replace(s, text=f"begins{s.number}x {s.text * 2} ends{s.number}x") for s in plan.steps]
    plan = replace(plan, steps=tuple(long[:count]))
    middle = 215.9 / 2 / POINT
    for step in plan.steps:
        sides = {
            x > middle
            for text, x, _ in places_of(plan)
            for mark in (f"begins{step.number}x", f"ends{step.number}x")
            if mark in text
        }
        assert len(sides) == 1, step.number


def cutting(plan: Plan) -> Plan:
    """Its sixth step takes the cuts of the table."""
    spindle = Figure(f"{plan.cuts[0].id}_spindle", 350 / 60, "rev/s", kind="spindle")
    steps = [replace(s, figures=(spindle,)) if s.number == 6 else s for s in plan.steps]
    return replace(plan, steps=tuple(steps))


def test_the_table_of_cuts_follows_the_step_that_takes_them() -> None:
    found = squeezed(pages(sheet_of(cutting(sample_plan())))[0])
    places = [found.index(squeezed(w)) for w in ("6. Step title 6", "passes × depth", "7. Step")]
    assert places == sorted(places)


def test_the_cuts_say_the_diameter_each_leaves_where_the_last_is_known() -> None:
    """From 63 mm: two passes of 0.762 mm leave 59.952; two of 0.5 after it 57.952: 57.95 is asked."""
    plan = sample_plan("mm", big=True)
    rough, face, *_ = plan.cuts
    finish = replace(rough, id="finish", name="rim finish", depth=0.5e-3)
    size = Figure("finished_outside", 57.95e-3, "m", kind="turned")
    steps = (replace(plan.steps[0], figures=(size,)), *plan.steps[1:])
    plan = replace(plan, cuts=(rough, face, finish), steps=steps)
    said = [row[0].replace("\N{NO-BREAK SPACE}", " ") for row in sheet_data(plan)["cuts"]]
    assert said == ["rim cut 1, to 59.95 mm", "face cut 2", "rim finish, to 57.95 mm"]
    assert "rim cut 1, to 59.95 mm (2.3602 in): 350 rpm" in " ".join(plan_text(plan).split())
    unknown = replace(plan, steps=())
    assert [row[0] for row in sheet_data(unknown)["cuts"]] == [c.name for c in plan.cuts]


def saying_no(*ids: str) -> Plan:
    plan = sample_plan()
    asked = tuple(
        replace(q, verdict=Verdict.NO if q.id in ids else Verdict.YES) for q in plan.questions
    )
    return replace(plan, verdict=Verdict.NO, questions=asked, chosen=None, steps=())


PRESSED = (
    "Go 0.6241",
    "Not-go",
    "The push tells",
    "Look for at least",
    "passes × depth",
    "350 rpm",
)


@pytest.mark.parametrize("asked", ["slip", "rock", "bend", "heat", "true", "reach", "speed"])
def test_a_no_that_the_picture_explains_keeps_it_and_drops_what_would_be_done(asked: str) -> None:
    (text,) = pages(sheet_of(saying_no(asked)))
    assert "Side view" in text
    assert "Squeeze in the bore" not in text
    assert [w for w in PRESSED if squeezed(w) in squeezed(text)] == []


@pytest.mark.parametrize("asked", ["seat", "bore", "push", "crack"])
def test_what_may_not_be_pressed_on_is_not_drawn_pressed_on(asked: str) -> None:
    plan = saying_no(asked, "slip")
    (text,) = pages(sheet_of(plan))
    assert "Side view" not in text
    assert "Not drawn pressed on" in svg(draw_plan(plan))
    assert [w for w in PRESSED if squeezed(w) in squeezed(text)] == []


def test_the_terminal_says_no_sizes_and_no_push_on_a_no() -> None:
    text = plan_text(saying_no("crack"))
    assert [w for w in ("Go 0.6241", "expect 430 lbf", "Proof load", "350 rpm") if w in text] == []
    assert plan_text(sample_plan()).count("Go 0.6241") == 1


def test_under_a_hammer_no_push_is_looked_for() -> None:
    plan = sample_plan()
    assert plan.push is not None
    driven = replace(plan, push=replace(plan.push, by_blows=True))
    (felt,), (struck,) = pages(sheet_of(plan)), pages(sheet_of(driven))
    assert "stop at" in felt
    assert [w for w in ("Look for", "stop at", "proves 93") if w in struck] == []
    assert squeezed("only the proof load proves it") in squeezed(struck)
