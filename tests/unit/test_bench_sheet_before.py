"""The second page of the bench sheet: there where a casting or a bore asks for it, and only there."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pytest
from pypdf import PdfReader
from tests.sample_plan import sample_plan
from tests.unit.test_bench_sheet import HOSTILE, pages, sheet_of, squeezed

from borewright.answer.figure import Caution
from borewright.answer.plan import Plan
from borewright.answer.records import Figure, Verdict
from borewright.errors import RefusedInput
from borewright.job import parse_job
from borewright.report.sheet_before import sheet_before
from borewright.report.sheet_trim import MOST_TRIM_BEFORE, trim_before
from borewright.report.taken_words import schedule_of
from borewright.service.files import sheet_bytes
from borewright.service.planned import plan

TWELVE = Path(__file__).parents[2] / "examples" / "twelve"
SMALLEST = 6.5
"""No letter of the sheet has ever been smaller, points; sources are set at 0.88 of the rest."""
CHANGED = {
    "flywheel": ("04-flywheel", (('"reamed"', '"as-cast"'),)),
    "blanks": ("02-class-blanks", (('"0.6251in"', '"39/64in"'), ('"reamed"', '"drilled"'))),
    "gears": ("10-gear-blanks", (('"15.008mm"', '"15 H7"'),)),
    "bored casting": ("04-flywheel", ()),
    "reamed blanks": ("02-class-blanks", ()),
    "reamed gears": ("10-gear-blanks", ()),
}
ASKED = ("flywheel", "blanks", "gears")
BORED = ("Bore", "Bore to size")


@cache
def of(name: str) -> Plan:
    stem, changes = CHANGED[name]
    text = (TWELVE / f"{stem}.toml").read_text()
    for old, new in changes:
        assert text.count(old) == 1
        text = text.replace(old, new)
    return plan(parse_job(text, "job.toml"), None)


@cache
def second(name: str, paper: str | None = None) -> str:
    return squeezed(pages(sheet_bytes(of(name), paper=paper))[1])


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("name", CHANGED)
def test_one_page_more_where_a_casting_or_a_bore_asks(name: str, paper: str) -> None:
    """Beside the first, and the one for the cutting where that is planned."""
    found = PdfReader(BytesIO(sheet_bytes(of(name), paper=paper))).pages
    assert len(found) == 1 + (name in ASKED) + (schedule_of(of(name)) is not None)
    assert len({tuple(page.mediabox) for page in found}) == 1


@pytest.mark.parametrize("name", ASKED)
def test_the_same_plan_gives_the_same_two_pages(name: str) -> None:
    assert sheet_bytes(of(name)) == sheet_bytes(of(name))


def test_the_first_page_sends_the_reader_to_the_second_before_the_steps() -> None:
    front = squeezed(pages(sheet_bytes(of("flywheel")))[0])
    sent = squeezed("First: page 2, the first hold of the casting and the bore.")
    assert front.index(sent) < front.index(squeezed(f"1. {of('flywheel').steps[0].title}."))
    assert squeezed("First: page 2, the bore.") in squeezed(pages(sheet_bytes(of("gears")))[0])
    assert squeezed("First: page 2") not in squeezed(pages(sheet_bytes(of("reamed gears")))[0])


def test_the_first_hold_is_on_it_with_every_step_blank_and_caution() -> None:
    hold = of("flywheel").first_hold
    assert hold is not None
    said = [hold.set_true_to, hold.why, hold.clean_up, *(c.text for c in hold.cautions)]
    said += [words for step in hold.steps for words in (step.title, step.text)]
    said += [f"{blank}:" for step in hold.steps for blank in step.blanks]
    text = second("flywheel")
    assert [words for words in said if squeezed(words) not in text] == []
    assert squeezed("Spoked flywheel, page 2: before it is held") in text
    at = [n for n, step in enumerate(hold.steps, 1) if step.title.split(",")[0] in BORED]
    assert len(at) == 2
    assert squeezed(f"Bore route, at steps {at[0]} and {at[1]} of the first hold") in text


@pytest.mark.parametrize("name", ASKED)
def test_the_bore_route_is_on_it_with_steps_measuring_and_cautions(name: str) -> None:
    route = of(name).bore_route
    assert route is not None
    said = [route.starts_from, route.ream_or_bore, route.measure, route.before_mounting]
    said += [step.text for step in route.steps] + [c.text for c in route.cautions]
    said += [step.tool.removeprefix("a ").removeprefix("the ") for step in route.steps]
    text = second(name)
    assert [words for words in said if squeezed(words) not in text] == []
    assert text.count("measured:") == sum(step.size is not None for step in route.steps)


def test_sizes_chance_stock_and_speed_are_on_it_in_figures() -> None:
    """From 39/64 in to 5/8 in is 1/64 in and what the reamer cuts over, less than a thou; each tool's
    share stands beside it; the gauge sizes are those that the mandrel takes."""
    text = second("blanks")
    route = of("blanks").bore_route
    assert route is not None
    sizes = [39 / 64, *(step.size.best / 0.0254 for step in route.steps if step.size)]
    stocks = [after - before for before, after in pairwise(sizes)]
    assert sum(stocks) == pytest.approx(1 / 64, abs=0.001)
    assert [s for s in stocks if squeezed(f"{s:.3f} in") not in text] == []
    for words in (
        "150 rpm",
        "Go 0.6246 in",
        "not-go 0.6258 in",
        "99 in 100",
    ):
        assert squeezed(words) in text
    for words in ("Go 15.000 mm", "not-go 15.018 mm", "14.550 to 14.804 mm", "4.3 mm drill"):
        assert squeezed(words) in second("gears")
    assert squeezed("Go, not-go") not in second("flywheel"), "any size serves: nothing to gauge"


def test_a_no_is_said_above_the_route() -> None:
    assert "Page1answersno" not in second("gears")
    refused = replace(of("gears"), verdict=Verdict.NO)
    front, back = pages(sheet_bytes(refused))
    assert "Page1answersno" in squeezed(back)
    assert squeezed("See page 2, the bore.") in squeezed(front)
    assert "First:" not in front


def test_a_wordy_one_is_still_a_page_and_says_what_went() -> None:
    wheel = of("flywheel")
    route = wheel.bore_route
    assert route is not None
    more = tuple(
        Caution(f"c{k}", "mind this all the time " * 6 + str(k), "ours") for k in range(14)
    )
    (other, *_) = of("gears").bore_route.alternatives  # type: ignore[union-attr]
    many = tuple(replace(other, reason="it takes too long " * 9 + str(k)) for k in range(20))
    wordy = replace(wheel, bore_route=replace(route, cautions=more, alternatives=many))
    back = pages(sheet_bytes(wordy, paper="letter"))[1]
    found = squeezed(back)
    assert squeezed("Left out for room: other ways to this bore") in found
    assert [c.text for c in more if squeezed(c.text) not in found] == []
    assert smallest_letter(sheet_bytes(wordy, paper="letter")) >= 0.88 * SMALLEST


def smallest_letter(pdf: bytes) -> float:
    """The smallest size of the second page's letters, points."""
    found: list[float] = []

    def note(text: str, page: list[float], at: list[float], _: object, size: float) -> None:
        if text.strip():
            found.append(size * abs(at[3] * page[3]))

    PdfReader(BytesIO(pdf)).pages[1].extract_text(visitor_text=note)
    return min(found)


def test_one_that_nothing_brings_onto_a_page_is_refused() -> None:
    wheel = of("flywheel")
    assert wheel.first_hold is not None
    more = tuple(Caution(f"c{k}", "mind this " * 40 + str(k), "ours") for k in range(60))
    endless = replace(wheel, first_hold=replace(wheel.first_hold, cautions=more))
    with pytest.raises(RefusedInput, match="more than its pages hold"):
        sheet_bytes(endless)


def test_other_ways_go_first_then_changes() -> None:
    data = {"alternatives": ["a"], "changes": ["b"], "taken": ["c"], "left_out": ""}
    kept = [trim_before(data, level) for level in range(MOST_TRIM_BEFORE + 1)]
    left = [[k for k in ("alternatives", "changes", "taken") if d[k]] for d in kept]
    assert left == [["alternatives", "changes", "taken"], ["changes", "taken"], ["taken"], []]


def test_a_first_hold_without_steps_asks_for_no_page() -> None:
    hold = of("flywheel").first_hold
    assert hold is not None
    assert sheet_before(replace(sample_plan(), first_hold=replace(hold, steps=()))) is None
    assert sheet_before(replace(sample_plan(), first_hold=hold)) is not None


@pytest.mark.parametrize("nasty", HOSTILE)
def test_whatever_is_written_on_it_is_printed_as_written(nasty: str) -> None:
    wheel = of("flywheel")
    route, hold = wheel.bore_route, wheel.first_hold
    assert route is not None
    assert hold is not None
    steps = tuple(replace(s, text=f"[{nasty}]", tool=f"a {nasty}") for s in route.steps)
    held = tuple(replace(s, text=f"[{nasty}]", blanks=(nasty,)) for s in hold.steps)
    changed = replace(
        sample_plan(),
        title="page",
        bore_route=replace(route, steps=steps, measure=nasty),
        first_hold=replace(hold, steps=held, why=nasty),
    )
    _, back = pages(sheet_of(changed))
    shown = "".join("?" if c in "🛞磨" else c for c in nasty)
    assert squeezed(back).count(squeezed(f"[{shown}]")) == len(steps) + len(held)


def test_a_change_to_the_part_is_a_line_of_it() -> None:
    from borewright.answer.change import Change

    took, now, then = Figure("time", 900.0, "s"), Figure("now", 0.0, "m"), Figure("then", 3e-4, "m")
    told = ("boss", "Leave a boss.", "nothing", took, Verdict.NO, Verdict.YES, (), now, then, 3e-4)
    back = pages(sheet_bytes(replace(of("gears"), changes=(Change(*told),))))[1]
    assert squeezed("Leave a boss. From no to yes; about 15 min.") in squeezed(back)
