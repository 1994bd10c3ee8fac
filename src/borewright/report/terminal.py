"""A plan as plain text: the answer in sentences first, then questions, then steps."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import TextWrapper

from borewright.answer.cut_words import left_words
from borewright.answer.plan import Plan
from borewright.answer.records import Question, Step, Verdict
from borewright.quantities.show import Show
from borewright.report.bore_route_words import route_lines
from borewright.report.change_words import change_words
from borewright.report.first_hold_words import first_hold_words
from borewright.report.sheet_data import (
    bore_words,
    echo_words,
    headline_words,
    margin_words,
    proof_words,
    push_lines,
    verdict_words,
)
from borewright.report.taken_words import (
    blocked_lines,
    in_order,
    schedule_of,
    takes_words,
    target_words,
    whole_words,
)
from borewright.report.words import (
    citation,
    citations,
    cut_lines,
    cut_words,
    gives_words,
    row_words,
    show_for,
    step_figures,
    unjudged_words,
    way_words,
)

WIDTH = 90
_BLANK = "____________"


def plan_text(plan: Plan) -> str:
    """The whole plan for a terminal, no line wider than 90 columns, ending in a newline."""
    show = show_for(plan)
    parts = (
        ("", (plan.title, f"{verdict_words(plan)}{headline_words(plan)}")),
        ("", _answer(plan, show)),
        ("Other ways", _best_others(plan, show)),
        ("Change the part", (change_words(change, show) for change in plan.changes)),
        ("Questions", (_question(question, show) for question in plan.questions)),
        ("Have ready", ("; ".join(plan.have_ready),) if plan.have_ready else ()),
        ("First hold", first_hold_words(plan, show)),
        ("Bore route", route_lines(plan.bore_route, show)),
        ("Steps", _steps(plan, show)),
        ("Cuts", _cuts(plan, show)),
        ("Cuts that nothing here takes", _blocked(plan)),
        ("Cautions, worst first", (f"{c.text} ({citation(c.source)})" for c in plan.cautions)),
        ("Weighed", (row_words(candidate, show) for candidate in plan.candidates)),
        ("Assumed", (f"{a.what}: {a.taken} ({citation(a.source)})" for a in plan.assumed)),
        ("Not judged", (unjudged_words(plan),)),
        ("Notes", plan.notes),
        ("Sources", dict.fromkeys((*citations(plan), *_of_route(plan)))),
    )
    return "\n".join(line for heading, words in parts for line in section(heading, words))


MOST_OTHERS = 3
"""Other ways named near the top; all of them stand in the ranking below (ours)."""


def _best_others(plan: Plan, show: Show) -> Iterator[str]:
    return (row_words(candidate, show) for candidate in plan.better_ways[:MOST_OTHERS])


def _of_route(plan: Plan) -> Iterator[str]:
    """The sources of the bore route, as a reader can find them."""
    named = plan.bore_route.sources if plan.bore_route else ()
    return (citation(source.partition(": ")[0]) for source in named)


def section(heading: str, paragraphs: Iterable[str]) -> Iterator[str]:
    """A heading and its paragraphs folded below it; nothing where there are none."""
    folded = [_folded(words, "  " if heading else "") for words in paragraphs if words]
    if folded:
        yield from ([heading] if heading else [])
        yield from folded
        yield ""


def _folded(words: str, indent: str) -> str:
    fold = TextWrapper(
        width=WIDTH,
        initial_indent=indent,
        subsequent_indent=indent + "  " if indent else "",
        break_on_hyphens=False,
    )
    return fold.fill(words)


def _answer(plan: Plan, show: Show) -> Iterator[str]:
    yield from echo_words(plan)
    if plan.chosen:
        yield f"Chosen: {way_words(plan.chosen)}"
        yield gives_words(plan.chosen, show)
    yield from push_lines(plan, show)
    yield proof_words(plan, show)
    window = bore_words(plan, show)
    yield f"Bore. {window}" if window else ""


def _question(question: Question, show: Show) -> str:
    changes = f" What changes it: {question.changes_it}." if question.changes_it else ""
    return f"{question.id}: {margin_words(question)}. {question.reason}.{changes}".replace(
        "..", "."
    )


def _cuts(plan: Plan, show: Show) -> Iterator[str]:
    """Each cut as a sentence, in order, and how it is taken where that is known."""
    if plan.verdict is Verdict.NO:
        return
    schedule = schedule_of(plan)
    if schedule is None:
        yield from cut_lines(plan, show)
        return
    left = left_words(plan.cuts, plan.finished_outside, show)
    for number, (cut, taken) in enumerate(in_order(plan), 1):
        said = f"{number}. {cut_words(cut, show, left.get(cut.id, ''))}."
        yield f"{said} {takes_words(taken)}" if taken else said
    yield whole_words(schedule)
    yield target_words(plan, schedule, show)
    yield from schedule.notes


def _blocked(plan: Plan) -> tuple[str, ...]:
    schedule = schedule_of(plan)
    return blocked_lines(plan, schedule) if schedule else ()


def _steps(plan: Plan, show: Show) -> Iterator[str]:
    cuts = "\n".join(cut_lines(plan, show))
    return (_step(step, show, cuts) for step in plan.steps)


def _step(step: Step, show: Show, cuts: str) -> str:
    figures = "".join(f" {words}" for words in step_figures(step, show, cuts))
    blanks = "".join(f" {name}: {_BLANK}" for name in step.blanks)
    return f"{step.number}. {step.title}. {step.text}{figures}{blanks}"
