"""The first page of the bench sheet is one page of its paper, says everything in text, and is the same twice."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from itertools import pairwise

import pytest
from pypdf import PdfReader
from tests.sample_plan import SHAPES, sample_plan, wordiest_plan

from borewright.answer.plan import Plan
from borewright.answer.records import Assumption, Step, Verdict
from borewright.drawing import draw_plan, svg
from borewright.errors import RefusedInput
from borewright.report import bench_sheet
from borewright.report.sheet_data import margin_words, sheet_data, source_words
from borewright.report.sheet_picture import at_share
from borewright.report.sheet_trim import MOST_TRIM, trim
from borewright.report.words import figure_words, show_for

POINT = 25.4 / 72
"""Millimetres in a point of PDF."""
SIZES_MM = {"letter": (215.9, 279.4), "a4": (210.0, 297.0)}
HOSTILE = (
    '#panic("x") $1+1$ [a](b) \\ *b* _i_ `r` <l> @cite',
    "a title that never ends " * 13,
    "🛞 wheel for the 磨 mill",
    "tab\tand\nnew line",
    "",
)


def sheet_of(plan: Plan, **asked: str) -> bytes:
    return bench_sheet(plan, svg(draw_plan(plan)), **asked)


def pages(pdf: bytes) -> list[str]:
    return [page.extract_text() for page in PdfReader(io.BytesIO(pdf)).pages]


def squeezed(text: str) -> str:
    """Text without spaces: where a line is broken does not matter."""
    return "".join(text.split())


cases = pytest.mark.parametrize(
    ("units", "big", "paper"),
    [(u, b, p) for u in ("inch", "mm") for b in (False, True) for p in ("letter", "a4")],
)


@cases
def test_it_is_one_page_of_the_paper_asked_for(units: str, big: bool, paper: str) -> None:
    pdf = sheet_of(sample_plan(units, big=big), paper=paper)
    (page,) = PdfReader(io.BytesIO(pdf)).pages
    size = (float(page.mediabox.width) * POINT, float(page.mediabox.height) * POINT)
    assert size == pytest.approx(SIZES_MM[paper], abs=0.2)


@cases
def test_every_figure_of_every_step_is_found_as_text(units: str, big: bool, paper: str) -> None:
    plan = sample_plan(units, big=big)
    found = squeezed(pages(sheet_of(plan, paper=paper))[0])
    shown = [figure_words(f, show_for(plan)) for step in plan.steps for f in step.figures]
    assert shown
    assert [words for words in shown if squeezed(words) not in found] == []


@pytest.mark.parametrize("shape", SHAPES)
def test_every_shape_of_work_leaves_room_for_the_words(shape: str) -> None:
    plan = sample_plan("mm", big=True, shape=shape)
    (text,) = pages(sheet_of(plan))
    missing = [
        s.title for s in plan.steps if squeezed(f"{s.number}. {s.title}") not in squeezed(text)
    ]
    assert missing == []


def test_it_says_verdict_cuts_cautions_margins_and_sources() -> None:
    plan = sample_plan()
    found = squeezed(pages(sheet_of(plan))[0])
    said = (
        "With care",
        "5/8 in mandrel and its dog",
        "0.6241 in",
        "0.6264 in",
        "rim cut 1",
        "350 rpm",
        plan.cautions[0].text,
        "margin 1.7, low 0.8",
        "0.12, oiled steel on aluminium",
        "TM 1-420",
        "You said: aluminium wheel",
    )
    assert [words for words in said if squeezed(words) not in found] == []


def test_the_verdict_is_not_said_twice() -> None:
    (text,) = pages(sheet_of(sample_plan()))
    assert "With care: hold it" in text
    assert "With care. With care" not in text


def test_the_words_of_the_drawing_stay_words() -> None:
    (text,) = pages(sheet_of(sample_plan()))
    assert squeezed("may sit between these two lines,") in squeezed(text)


def test_only_the_one_font_is_in_it() -> None:
    reader = PdfReader(io.BytesIO(sheet_of(sample_plan())))
    fonts = reader.pages[0]["/Resources"]["/Font"].values()  # type: ignore[index]
    names = {str(font.get_object()["/BaseFont"]) for font in fonts}
    assert names
    assert all("SourceSansPro" in name for name in names)


def test_the_same_plan_gives_the_same_bytes() -> None:
    assert sheet_of(sample_plan()) == sheet_of(sample_plan())


def test_no_date_is_in_it_unless_asked_for() -> None:
    plain = PdfReader(io.BytesIO(sheet_of(sample_plan())))
    assert plain.metadata is not None
    assert "/CreationDate" not in plain.metadata
    assert "/ModDate" not in plain.metadata
    assert "Printed 4 May" in pages(sheet_of(sample_plan(), date="4 May"))[0]


@pytest.mark.parametrize("title", HOSTILE)
def test_no_title_breaks_it(title: str) -> None:
    (text,) = pages(sheet_of(replace(sample_plan(), title=title)))
    printed = squeezed("".join(c if c.isascii() else "?" for c in title))[:60]
    assert printed in squeezed(text)


def test_markup_in_any_text_is_printed_as_typed() -> None:
    nasty = "#let x = 1; $y$ *z* \\"
    step = Step(1, nasty, nasty, (), (nasty,))
    plan = replace(sample_plan(), steps=(step,), headline=nasty, have_ready=(nasty,), echo=(nasty,))
    assert squeezed(pages(sheet_of(plan))[0]).count(squeezed(nasty)) >= 6


def pieces_of(plan: Plan) -> list[str]:
    """All that a sheet may never shorten."""
    steps = [f"{s.number}. {s.title}. {s.text}" for s in plan.steps]
    return [*steps, *(c.text for c in plan.cautions), *(c.name for c in plan.cuts)]


@pytest.mark.parametrize(("units", "paper"), [("inch", "letter"), ("mm", "a4")])
def test_the_wordiest_plan_is_one_page_with_steps_cautions_and_cuts_whole(
    units: str, paper: str
) -> None:
    plan = wordiest_plan(units)
    (text,) = pages(sheet_of(plan, paper=paper))
    assert [p for p in pieces_of(plan) if squeezed(p) not in squeezed(text)] == []


def test_a_narrower_picture_is_headed_by_the_scale_it_is_printed_at() -> None:
    """The sample wheel is drawn at 1:1.5 to 1:5; printed at 78 % a written 1:n becomes 1:n/0.78."""
    whole = svg(draw_plan(wordiest_plan()))
    drawn = re.search(r"Side view, scale 1:([\d.]+),", whole)
    assert drawn is not None
    (text,) = pages(sheet_of(wordiest_plan()))
    printed = re.search(r"Side view, about 1:([\d.]+),", text)
    assert printed is not None
    assert float(printed[1]) == pytest.approx(float(drawn[1]) / 0.78, rel=0.05)
    assert "Side view, scale" not in text
    assert "Side view, scale" in pages(sheet_of(sample_plan()))[0]


def test_a_title_that_speaks_of_a_scale_is_left_alone() -> None:
    assert "scale 1:8 engine" in at_share(
        "<title>scale 1:8 engine</title>Side view, scale 2:1", 0.78
    )
    assert at_share("Side view, scale 2:1", 1.0) == "Side view, scale 2:1"


@pytest.mark.parametrize("steps", range(5, 15))
def test_the_table_of_cuts_stays_in_one_column(steps: int) -> None:
    plan = sample_plan(big=True)
    plan = replace(plan, steps=plan.steps[:steps])
    left: dict[str, float] = {}

    def note(text: str, page: list[float], at: list[float], *_: object) -> None:
        if text.strip().startswith(("rim cut", "face cut")):
            left[text.strip()] = page[4] + page[0] * at[4]

    PdfReader(io.BytesIO(sheet_of(plan))).pages[0].extract_text(visitor_text=note)
    assert len(left) == len(plan.cuts)
    assert max(left.values()) - min(left.values()) < 1.0


def test_a_plan_with_nothing_to_draw_comes_out_as_words_alone() -> None:
    nothing = replace(sample_plan(), layout=None, steps=(), cuts=(), chosen=None)
    (text,) = pages(bench_sheet(nothing, ""))
    assert squeezed(nothing.headline) in squeezed(text)
    assert squeezed(nothing.cautions[0].text) in squeezed(text)


def test_sources_are_the_works_and_one_sentence_for_the_rest() -> None:
    named = "tm-1-420: US War Department, TM 1-420 C1 (1942)"
    plan = replace(sample_plan(), sources=("ours: our own judgment", named, "practice", "iso-1"))
    assert source_words(plan.sources) == (
        "Sources: US War Department, TM 1-420 C1 (1942); ISO 1. "
        "The rest is common practice or our own judgment; --explain marks each."
    )


def test_without_works_or_without_a_rest_the_sources_say_just_that() -> None:
    only_ours = replace(sample_plan(), sources=("practice", "ours"))
    assert source_words(only_ours.sources).startswith(
        "Sources: common practice or our own judgment;"
    )
    assert source_words(("iso-1",)) == "Sources: ISO 1."
    assert source_words(()) == ""


def test_a_source_no_table_knows_is_still_named() -> None:
    assert "a-book" in source_words(("a-book",))


LEAVING = (
    "the reasons of questions answered yes",
    "other ways after the first two",
    "the bore as typed",
    "sources",
    "what was assumed",
)


def test_parts_leave_in_one_order_and_what_was_assumed_last() -> None:
    data = sheet_data(wordiest_plan())
    said = [trim(data, level)["left_out"] for level in range(MOST_TRIM + 1)]
    assert said[-1] == ", ".join(LEAVING)
    assert all(later.startswith(earlier) for earlier, later in pairwise(said))
    assert trim(data, MOST_TRIM - 2)["assumed"] == data["assumed"]


def test_trimming_never_touches_what_a_hand_must_do_and_beware_of() -> None:
    data = sheet_data(wordiest_plan())
    kept = ("title", "headline", "steps", "cuts", "cautions", "bore_window", "push", "have_ready")
    for level in range(MOST_TRIM + 1):
        assert {k: trim(data, level)[k] for k in kept} == {k: data[k] for k in kept}


def test_the_picture_narrows_only_after_the_bore_as_typed_has_gone() -> None:
    data = sheet_data(wordiest_plan())
    levels = [trim(data, level) for level in range(MOST_TRIM + 1)]
    assert ["bore 0.6252" in t["echo"][0] for t in levels] == [True] * 3 + [False] * 5
    assert [t["picture_share"] for t in levels] == [1.0] * 4 + [0.78] * 4


def test_questions_answered_yes_go_into_one_line_and_keep_their_margins() -> None:
    plan = wordiest_plan()
    lines = trim(sheet_data(plan), MOST_TRIM)["questions"]
    (line,) = [x for x in lines if x["verdict"] == Verdict.YES]
    for question in (q for q in plan.questions if q.verdict is Verdict.YES):
        margin = margin_words(question).removeprefix(f"{question.verdict}, ")
        assert f"{question.id} {margin}" in line["words"]


def test_a_plan_too_long_for_a_page_is_trimmed_and_says_so() -> None:
    many = tuple(Assumption(f"thing {k}", "a long guess " * 6, "practice") for k in range(90))
    (text,) = pages(sheet_of(replace(sample_plan(big=True), assumed=many)))
    assert "Left out for room" in text
    assert squeezed("14. Step title 14.") in squeezed(text), "steps go last"


def test_a_plan_that_fits_leaves_nothing_out() -> None:
    assert "Left out for room" not in pages(sheet_of(sample_plan()))[0]


def test_a_plan_without_layout_push_or_cuts_still_prints() -> None:
    bare = replace(
        sample_plan(), layout=None, push=None, proof=None, cuts=(), bore_window=None, chosen=None
    )
    (text,) = pages(sheet_of(bare))
    assert "No mandrel to draw" in text


def test_another_paper_is_refused_with_the_two_on_offer() -> None:
    with pytest.raises(RefusedInput, match="letter or a4"):
        sheet_of(sample_plan(), paper="a3")
