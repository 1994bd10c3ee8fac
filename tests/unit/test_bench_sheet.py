"""The bench sheet is one page, says everything in text, and is the same twice."""

from __future__ import annotations

import io
from dataclasses import replace

import pytest
from pypdf import PdfReader
from tests.sample_plan import SHAPES, sample_plan

from borewright.answer.records import Assumption, Plan, Step
from borewright.drawing import draw_plan, svg
from borewright.errors import RefusedInput
from borewright.report import bench_sheet
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
