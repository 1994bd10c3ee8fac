"""The page of the cutting: every cut whole on one page, with its time, limit, wait and stop."""

from __future__ import annotations

import shutil
import subprocess
from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader
from tests.charts_made import three
from tests.sample_plan import sample_plan, wordiest_plan
from tests.schedule_made import blocked, scheduled_plan, with_schedule
from tests.unit.test_bench_sheet import HOSTILE, pages, squeezed

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.answer.schedule import Schedule, Taken
from borewright.job import parse_job
from borewright.report.sheet_cutting import sheet_cutting
from borewright.report.sheet_data import CUT_COLUMNS, sheet_data
from borewright.report.sheet_trim import MOST_TRIM, MOST_TRIM_CUTTING, most_trim, trim, trim_cutting
from borewright.report.taken_words import in_order, lasting, schedule_of
from borewright.service.files import sheet_bytes
from borewright.service.planned import plan

SMALLEST = 6.5
"""No letter of the sheet has ever been smaller, points; sources are set at 0.88 of the rest."""
POINT = 25.4 / 72
TWELVE = Path(__file__).parents[2] / "examples" / "twelve"
cases = pytest.mark.parametrize(
    ("units", "paper", "count"),
    [(u, p, n) for u in ("inch", "mm") for p in ("letter", "a4") for n in (2, 4, 12)],
)


@cache
def sheet(units: str, paper: str, count: int) -> bytes:
    return sheet_bytes(scheduled_plan(units, count), paper=paper)


def by_pdftotext(pdf: bytes, page: int) -> str:
    """The words of a page in reading order, by another program than the one that set them."""
    if shutil.which("pdftotext") is None:
        return pages(pdf)[page - 1]
    asked = ["pdftotext", "-f", str(page), "-l", str(page), "-raw", "-", "-"]
    done = subprocess.run(asked, input=pdf, capture_output=True, check=True)
    return done.stdout.decode()


def wanted(made: Plan) -> list[str]:
    """What of its schedule no page may lack."""
    assert made.schedule is not None
    said = [cut.name for cut in made.cuts]
    said += [t.said for t in made.schedule.taken] + [t.stops for t in made.schedule.taken]
    said += [f"Wait {lasting(t.wait)} first." for t in made.schedule.taken if t.wait]
    said += [lasting(t.seconds) for t in made.schedule.taken]
    said += [chart.title for chart in made.schedule.charts]
    return [*said, *made.schedule.notes, "2.5008 in" if made.units == "inch" else "63.520 mm"]


@cases
def test_a_schedule_has_one_page_of_its_own_and_nothing_of_it_is_missing(
    units: str, paper: str, count: int
) -> None:
    pdf = sheet(units, paper, count)
    assert len(PdfReader(BytesIO(pdf)).pages) == 2
    found = squeezed(by_pdftotext(pdf, 2))
    assert "page2:thecutting" in found
    assert [w for w in wanted(scheduled_plan(units, count)) if squeezed(w) not in found] == []
    assert "Leftoutforroom" not in found


@cases
def test_every_word_and_every_number_of_a_chart_stands_inside_the_margins(
    units: str, paper: str, count: int
) -> None:
    page = PdfReader(BytesIO(sheet(units, paper, count))).pages[1]
    width, height = float(page.mediabox.width), float(page.mediabox.height)
    places: list[tuple[str, float, float]] = []

    def note(text: str, outer: list[float], at: list[float], *_: object) -> None:
        if text.strip():
            x = outer[0] * at[4] + outer[2] * at[5] + outer[4]
            y = outer[1] * at[4] + outer[3] * at[5] + outer[5]
            places.append((text, x, y))

    page.extract_text(visitor_text=note)
    assert len(places) > 40
    margin = 11.0 / POINT
    out = [
        t for t, x, y in places if not (margin <= x <= width - margin and 15 <= y <= height - 15)
    ]
    assert out == []


@cases
def test_the_rows_stand_in_the_order_of_the_hand(units: str, paper: str, count: int) -> None:
    text = squeezed(by_pdftotext(sheet(units, paper, count), 2))
    names = [squeezed(cut.name) for cut in scheduled_plan(units, count).cuts]
    table = text[: text.index(squeezed("in all"))]
    places = [table.index(f"{k}{name}"[:12]) for k, name in enumerate(names, 1)]
    assert places == sorted(places)


def test_the_first_page_says_time_and_limit_and_sends_the_reader_on() -> None:
    made = scheduled_plan("inch", 4)
    front = squeezed(pages(sheet("inch", "letter", 4))[0])
    for words in ("35 s, grip", "1.5 min, rocking", "2.5 min, bending", "3.5 min, chatter"):
        assert squeezed(words) in front
    assert squeezed("Every cut with its wait and its stop, and the charts: page 2") in front
    assert len(sheet_data(made)["cut_columns"]) == len(CUT_COLUMNS), "as narrow as before"
    table = sheet_data(made)["cuts"]
    assert "mm" not in "".join(cell for row in table for cell in row), "one unit, no second"


def test_without_a_schedule_the_sheet_is_what_it_was() -> None:
    plain = sample_plan()
    assert sheet_data(plain)["cut_columns"] == list(CUT_COLUMNS)
    assert len(pages(sheet_bytes(plain))) == 1
    for nothing in (Schedule((), 0.0), Schedule((), 0.0, charts=three())):
        assert sheet_bytes(replace(plain, schedule=nothing)) == sheet_bytes(plain)


def test_where_the_answer_is_no_nothing_is_cut_and_there_is_no_such_page() -> None:
    refused = replace(scheduled_plan("inch", 4), verdict=Verdict.NO)
    assert schedule_of(refused) is None
    assert len(pages(sheet_bytes(refused))) == 1


def test_a_casting_to_be_bored_has_three_pages_and_the_first_names_both() -> None:
    text = (TWELVE / "04-flywheel.toml").read_text().replace('"reamed"', '"as-cast"')
    made = with_schedule(plan(parse_job(text, "job.toml"), None), 12)
    front, before, cutting = pages(sheet_bytes(made))
    assert squeezed("First: page 2") in squeezed(front)
    assert squeezed("page 3, the cutting") in squeezed(front)
    assert squeezed("page 2: before it is held") in squeezed(before)
    assert squeezed("page 3: the cutting") in squeezed(cutting)
    assert [w for w in wanted(made)[:12] if squeezed(w) not in squeezed(cutting)] == []


def test_a_long_table_leaves_a_crowded_first_page_only_for_the_page_where_it_is_whole() -> None:
    made = with_schedule(sample_plan("inch", big=True), 12)
    front, back = (squeezed(page) for page in pages(sheet_bytes(made)))
    steps = [f"{s.number}. {s.title}" for s in made.steps]
    assert [s for s in steps if squeezed(s) not in front] == []
    assert [c.name for c in made.cuts if squeezed(c.name) not in back] == []
    assert squeezed("page 2, the cutting") in front


@pytest.mark.parametrize(("units", "paper"), [("inch", "letter"), ("mm", "a4")])
def test_the_wordiest_plan_with_a_schedule_is_two_pages(units: str, paper: str) -> None:
    made = with_schedule(wordiest_plan(units), 12, blocked=blocked())
    front, back = (squeezed(page) for page in pages(sheet_bytes(made, paper=paper)))
    assert [c.text for c in made.cautions if squeezed(c.text) not in front] == []
    assert [b.way_out for b in blocked() if squeezed(b.way_out) not in back] == []


def test_a_blocked_cut_is_named_with_its_limit_and_its_way_out() -> None:
    made = with_schedule(sample_plan("mm"), 12, blocked=blocked())
    back = squeezed(pages(sheet_bytes(made))[1])
    assert (
        squeezed("Groove, plunged: no setting of this lathe takes it, because of chatter.") in back
    )
    assert squeezed("Knurl the rim: no setting of this lathe takes it, because of grip.") in back


def test_cuts_follow_the_schedule_and_one_it_does_not_know_comes_last() -> None:
    made = scheduled_plan("inch", 4)
    assert made.schedule is not None
    turned = replace(made, schedule=replace(made.schedule, taken=made.schedule.taken[:0:-1]))
    assert [cut.id for cut, _ in in_order(turned)] == ["cut-3", "cut-2", "cut-1", "cut-0"]
    assert in_order(turned)[-1][1] is None
    assert squeezed("first face, light") in squeezed(pages(sheet_bytes(turned))[1])


def test_a_wordy_one_is_still_a_page_and_says_what_went() -> None:
    made = scheduled_plan("inch", 12)
    assert made.schedule is not None
    wordy = tuple(
        replace(t, said="It would not do to go any faster here. " * 4) for t in made.schedule.taken
    )
    notes = tuple(f"Mind this {k}: " + "all the time " * 12 for k in range(9))
    pdf = sheet_bytes(replace(made, schedule=replace(made.schedule, taken=wordy, notes=notes)))
    found = squeezed(pages(pdf)[1])
    assert squeezed("Left out for room: why each cut goes no faster") in found
    assert [n for n in notes if squeezed(n) not in found] == []
    assert [c.name for c in made.cuts if squeezed(c.name) not in found] == []


def test_reasons_go_first_then_charts_and_never_a_row() -> None:
    made = scheduled_plan("inch", 12)
    data = sheet_cutting(made, 2, [[], []])
    assert data is not None
    levels = [trim_cutting(data, level) for level in range(MOST_TRIM_CUTTING + 1)]
    assert [len(level["rows"]) for level in levels] == [12] * len(levels)
    assert [bool(level["charts"]) for level in levels] == [True, True, False]
    assert levels[1]["rows"][0][6] == "grip"
    kept = [k for k in data if k not in ("rows", "charts", "left_out")]
    assert all({k: level[k] for k in kept} == {k: data[k] for k in kept} for level in levels)


def test_the_table_of_cuts_goes_from_the_first_page_only_where_it_stands_elsewhere() -> None:
    data = sheet_data(scheduled_plan("inch", 4))
    assert most_trim(data) == MOST_TRIM
    assert trim(data, MOST_TRIM)["cuts"]
    sent = {**data, "cutting": "page 2"}
    assert most_trim(sent) == MOST_TRIM + 1
    assert [bool(trim(sent, k)["cuts"]) for k in range(most_trim(sent) + 1)] == [True] * 5 + [
        False
    ] * 4


def test_the_same_plan_gives_the_same_pages() -> None:
    assert sheet_bytes(scheduled_plan("mm", 12)) == sheet_bytes(scheduled_plan("mm", 12))


@pytest.mark.parametrize("nasty", HOSTILE)
def test_whatever_is_written_on_it_is_printed_as_written(nasty: str) -> None:
    made = scheduled_plan("inch", 2)
    assert made.schedule is not None
    taken = (Taken("cut-0", 60.0, "slip", f"[{nasty}]", stops=f"[{nasty}]"), made.schedule.taken[1])
    changed = replace(made, schedule=replace(made.schedule, taken=taken, notes=(f"[{nasty}]",)))
    shown = "".join("?" if c in "🛞磨" else c for c in nasty)
    assert squeezed(pages(sheet_bytes(changed))[1]).count(squeezed(f"[{shown}]")) == 3
