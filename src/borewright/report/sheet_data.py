"""A plan as the words of the bench sheet, section by section.

Everything is text by now: the template sets it and computes nothing. `sheet_before` has the
words of a second page; `sheet_trim` leaves parts out when either would run over.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from math import isfinite
from typing import Any

from borewright.answer.cut_words import feed_words, left_words, passes_words, speed_words
from borewright.answer.plan import Plan
from borewright.answer.records import Cut, Question, Step, Verdict
from borewright.answer.schedule import Taken
from borewright.quantities.show import Show
from borewright.report.sheet_ways import needs_lines, other_way_lines, ready_words
from borewright.report.taken_words import in_order, limit_words, schedule_of, time_words
from borewright.report.words import (
    cut_lines,
    figure_words,
    named_sources,
    show_for,
    step_figures,
    unjudged_words,
    unnamed_sources,
)

SheetData = dict[str, Any]
TITLE_ROOM, _HEADLINE_ROOM = 110, 700
"""Letters of a title and headline that the sheet prints."""
CUT_COLUMNS = ("cut", "speed", "feed", "passes × depth", "which way")
TAKEN_COLUMNS = ("cut", "speed,\nfeed", "passes ×\ndepth", "time,\nlimit", "which way")
"""The same where it is known how the cuts are taken."""


def sheet_data(plan: Plan) -> SheetData:
    """All sections of the first page as text, before any trimming."""
    show = show_for(plan)
    return {
        "title": shortened(plan.title, TITLE_ROOM),
        "verdict": verdict_words(plan),
        "headline": shortened(headline_words(plan), _HEADLINE_ROOM),
        "echo": list(echo_words(plan)),
        "echo_short": list(short_echo_words(plan)),
        "needs": list(needs_lines(plan)),
        "have_ready": "; ".join(ready_words(plan)),
        "bore_window": bore_words(plan, show),
        "first": "",
        "steps": _steps(plan, show),
        "steps_whole": True,
        "other_ways": list(other_way_lines(plan, show)),
        "push": list(push_lines(plan, show)),
        "cut_columns": list(TAKEN_COLUMNS if schedule_of(plan) else CUT_COLUMNS),
        "cuts": _cuts(plan, show),
        "cutting": "",
        "cautions": [caution.text for caution in plan.cautions],
        "questions": [_question(question, show) for question in plan.questions],
        "assumed": [f"{a.what}: {a.taken}" for a in plan.assumed],
        "not_judged": unjudged_words(plan),
        "sources": source_words(plan.sources),
        "picture_share": 1.0,
        "left_out": "",
    }


def shortened(text: str, most: int) -> str:
    """Text of at most so many letters, with … where it was cut.

    >>> shortened("a long title", 7)
    'a long…'
    """
    folded = " ".join(text.split())
    return folded if len(folded) <= most else folded[: most - 1].rstrip() + "…"


def bore_words(plan: Plan, show: Show) -> str:
    """The go and not-go sizes as a sentence, empty without a window and where the answer is no."""
    if plan.bore_window is None or plan.verdict is Verdict.NO:
        return ""
    go, not_go = (show.bore(size) for size in plan.bore_window)
    return f"Go {go}: smaller does not go far enough on. Not-go {not_go}: larger goes too far."


def push_lines(plan: Plan, show: Show) -> tuple[str, ...]:
    """What push to expect, to look for, to stop at, and what it proves; blows prove nothing."""
    push = plan.push
    if push is None or plan.verdict is Verdict.NO:
        return ()
    if push.by_blows:
        return (
            f"Blows take the place of a push of about {figure_words(push.expected, show)}. Nobody "
            "feels a push under a hammer, and blows prove no grip: only the proof load proves it.",
        )
    look = show.force(push.look_for.best)
    stop = figure_words(push.stop_at, show)
    proof = plan.proof
    asked = f" The hardest cut asks {show.torque(proof.torque / proof.factor)}." if proof else ""
    proves = figure_words(push.proves_torque, show)
    ratio = f"{push.ratio_low:g} to {push.ratio_high:g}"
    return (
        f"The push tells the grip: expect {figure_words(push.expected, show)}. Look for at least "
        f"{look}; stop at {stop}.",
        f"A push of {show.force(push.expected.best)} proves {proves} of grip, by push x half the "
        f"bore x {ratio}.{asked}",
    )


def proof_words(plan: Plan, show: Show) -> str:
    """The weight that proves the grip before cutting, empty when there is none."""
    proof = plan.proof
    if proof is None or plan.verdict is Verdict.NO:
        return ""
    if proof.by_hand:
        return (
            "Proof load before cutting: the cut asks so little that a hard twist of the rim by "
            f"hand proves it, {proof.factor:g} times and more ({show.torque(proof.torque)}). The "
            "pencil line must stay whole."
        )
    hung = f"{show.force(proof.force)} at {show.length(proof.arm)} or "
    return (
        f"Proof load before cutting: {show.torque(proof.torque)}, {proof.factor:g} times the "
        f"cut, is {'' if proof.by_cord else hung}{show.force(proof.rim_force)} at the rim"
        f"{', by a cord' if proof.by_cord else ''}. The pencil line must stay whole."
    )


def source_words(sources: Sequence[str]) -> str:
    """The works that figures come from, and one sentence for all that no work stands behind."""
    named = "; ".join(named_sources(sources)).rstrip(".")
    if not unnamed_sources(sources):
        return f"Sources: {named}." if named else ""
    rest = "common practice or our own judgment; --explain marks each."
    return f"Sources: {named}. The rest is {rest}" if named else f"Sources: {rest}"


def echo_words(plan: Plan) -> tuple[str, ...]:
    """What the user typed, as one sentence, or nothing."""
    said = "; ".join(words.rstrip(".") for words in plan.echo)
    return (f"You said: {said}.",) if said else ()


def short_echo_words(plan: Plan) -> tuple[str, ...]:
    """What the user typed without the bore, which the drawing and the step that checks it say."""
    kept = tuple(words for words in plan.echo if not words.startswith("bore "))
    return echo_words(replace(plan, echo=kept))


def verdict_words(plan: Plan) -> str:
    """The verdict as the first words of the answer."""
    return plan.verdict.value.capitalize()


def headline_words(plan: Plan) -> str:
    """The headline with punctuation to follow the verdict, which is not said twice."""
    rest = plan.headline.strip()
    if rest.lower().startswith(plan.verdict.value):
        return rest[len(plan.verdict.value) :]
    return f". {rest}"


def margin_words(question: Question) -> str:
    """Verdict and margin of a question, the margin left out where there is none."""
    if not isfinite(question.margin):
        return question.verdict.value
    likely, low = rounded(question.margin), rounded(question.margin_low)
    return f"{question.verdict.value}, margin {likely}, low {low}"


def rounded(margin: float) -> str:
    """A margin with no more digits than it deserves.

    >>> rounded(37.3), rounded(4.41), rounded(-0.4)
    ('37', '4.4', '-0.4')
    """
    return f"{margin:.0f}" if abs(margin) >= 10 else f"{margin:.1f}"


def _steps(plan: Plan, show: Show) -> list[dict[str, Any]]:
    # The table of cuts stands on the same page, so a step need not repeat its numbers.
    cuts = "\n".join(cut_lines(plan, show))
    tabled = next((step.number for step in plan.steps if _takes(step, plan.cuts)), None)
    return [
        {**step_data(step, show, cuts), "then_cuts": step.number == tabled} for step in plan.steps
    ]


def _takes(step: Step, cuts: tuple[Cut, ...]) -> bool:
    """Whether the step is the first to ask for the table of cuts."""
    wanted = {f"{cut.id}_spindle" for cut in cuts}
    return any(figure.name in wanted for figure in step.figures)


def step_data(step: Step, show: Show, elsewhere: str) -> dict[str, Any]:
    """A step with its blanks, less the figures that words elsewhere on the page say."""
    return {
        "head": f"{step.number}. {step.title}.",
        "text": step.text,
        "figures": list(step_figures(step, show, elsewhere)),
        "blanks": list(step.blanks),
    }


def _question(question: Question, show: Show) -> dict[str, str]:
    words = f"{margin_words(question)}: {question.reason.rstrip('.')}."
    remedy = question.verdict is not Verdict.YES and question.changes_it
    return {
        "id": question.id.capitalize(),
        "verdict": question.verdict.value,
        "margin": margin_words(question),
        "words": words,
        "remedy": question.changes_it.rstrip(".") + "." if remedy else "",
    }


def _cuts(plan: Plan, show: Show) -> list[list[str]]:
    """The rows of the table: none where nothing may be cut on this hold."""
    if plan.verdict is Verdict.NO:
        return []
    left = left_words(plan.cuts, plan.finished_outside, show)
    known = schedule_of(plan) is not None
    row = _taken if known else _cut
    return [row(cut, taken, show, left.get(cut.id, "")) for cut, taken in in_order(plan)]


def _taken(cut: Cut, taken: Taken | None, show: Show, left: str) -> list[str]:
    """In the first unit only, with time and limit: both units stand on the page of the cutting."""
    cells = (speed_words(cut, show), feed_words(cut, show), passes_words(cut, show))
    speed, feed, passes = (_first_unit(words) for words in cells)
    said = (time_words(taken), limit_words(taken)) if taken else ()
    return [
        _cut(cut, taken, show, left)[0],
        f"{speed},\n{feed}",
        passes,
        ",\n".join(words for words in said if words),
        f"{nearer(cut.direction)},\n{cut.seat_effect}",
    ]


def _first_unit(words: str) -> str:
    """Without what stands in brackets: the other unit.

    >>> _first_unit("2 of 1.5 mm (0.059 in) wide")
    '2 of 1.5 mm wide'
    """
    return re.sub(r" \([^)]*\)", "", words)


def nearer(way: str) -> str:
    """Which way a cut goes, shortly.

    >>> nearer("towards the headstock")
    'to the headstock'
    """
    return way.replace("towards the", "to the")


def _cut(cut: Cut, _: Taken | None, show: Show, left: str) -> list[str]:
    to = f", to\N{NO-BREAK SPACE}{unbroken(left.partition(' (')[0])}" if left else ""
    return [
        f"{cut.name}{to}",
        speed_words(cut, show).replace(", ", ",\n").replace(" (", "\n("),
        feed_words(cut, show).replace(" (", "\n("),
        passes_words(cut, show).replace(" (", "\n("),
        f"{cut.direction},\n{cut.seat_effect}",
    ]


def unbroken(words: str) -> str:
    """A size at whose spaces no line breaks, but between its two units.

    >>> unbroken("2.5 in (63.5 mm)").split(" ")
    ['2.5\\xa0in', '(63.5\\xa0mm)']
    """
    return words.replace(" ", "\N{NO-BREAK SPACE}").replace("\N{NO-BREAK SPACE}(", " (")
