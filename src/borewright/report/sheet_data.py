"""A plan as the words of the bench sheet, section by section.

Everything is text by now: the template sets it and computes nothing. `trim` shortens the data in
a stated way when the sheet would run over one page; what is left out is said on the sheet.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from math import isfinite
from typing import Any

from borewright.answer.records import Cut, Plan, Question, Step, Verdict
from borewright.quantities.show import Show
from borewright.report.words import (
    citations,
    cut_words,
    figure_words,
    show_for,
    step_figures,
    way_words,
)

SheetData = dict[str, Any]
TITLE_ROOM, _HEADLINE_ROOM, _STEP_ROOM = 110, 700, 90
"""Letters of a title and headline that the sheet prints, and of a step when room is short."""
CUT_COLUMNS = ("cut", "speed", "feed", "passes × depth", "which way")


def sheet_data(plan: Plan) -> SheetData:
    """All sections of the sheet as text, before any trimming."""
    show = show_for(plan)
    return {
        "document_title": plan.title,
        "title": shortened(plan.title, TITLE_ROOM),
        "verdict": verdict_words(plan),
        "headline": shortened(headline_words(plan), _HEADLINE_ROOM),
        "echo": list(echo_words(plan)),
        "have_ready": "; ".join(plan.have_ready),
        "bore_window": bore_words(plan, show),
        "steps": _steps(plan, show),
        "other_ways": [way_words(candidate) for candidate in plan.better_ways],
        "push": list(push_lines(plan, show)),
        "cut_columns": list(CUT_COLUMNS),
        "cuts": [_cut(cut, show) for cut in plan.cuts],
        "cautions": [caution.text for caution in plan.cautions],
        "questions": [_question(question, show) for question in plan.questions],
        "assumed": [f"{a.what}: {a.taken}" for a in plan.assumed],
        "not_judged": "; ".join(plan.not_judged),
        "sources": "; ".join(citations(plan)),
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
    """The go and not-go sizes as a sentence, empty when the hold has no window."""
    if plan.bore_window is None:
        return ""
    go, not_go = (show.bore(size) for size in plan.bore_window)
    return f"Go {go}: smaller does not go far enough on. Not-go {not_go}: larger goes too far."


def push_lines(plan: Plan, show: Show) -> tuple[str, ...]:
    """What push to expect, to look for, to stop at, and what it proves."""
    push = plan.push
    if push is None:
        return ()
    look, stop = (figure_words(f, show) for f in (push.look_for, push.stop_at))
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
    if proof is None:
        return ""
    return (
        f"Proof load before cutting: {show.torque(proof.torque)}, {proof.factor:g} times the "
        f"cut, is {show.force(proof.force)} at {show.length(proof.arm)} or "
        f"{show.force(proof.rim_force)} at the rim. The pencil line must stay whole."
    )


def echo_words(plan: Plan) -> tuple[str, ...]:
    """What the user typed, as one sentence, or nothing."""
    said = "; ".join(words.rstrip(".") for words in plan.echo)
    return (f"You said: {said}.",) if said else ()


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


def trim(data: SheetData, level: int) -> SheetData:
    """The data with more left out at each level, and said so. Steps and cuts go last."""
    kept, said = dict(data), []
    for cut, (words, shorten) in enumerate(_TRIMS, start=1):
        if cut <= level and shorten(kept):
            said.append(words)
    kept["left_out"] = ", ".join(said)
    return kept


def _steps(plan: Plan, show: Show) -> list[dict[str, Any]]:
    # The table of cuts stands on the same page, so a step need not repeat its numbers.
    cuts = "\n".join(cut_words(cut, show) for cut in plan.cuts)
    return [_step(step, show, cuts) for step in plan.steps]


def _step(step: Step, show: Show, cuts: str) -> dict[str, Any]:
    return {
        "head": f"{step.number}. {step.title}.",
        "text": step.text,
        "figures": list(step_figures(step, show, cuts)),
        "blanks": list(step.blanks),
    }


def _question(question: Question, show: Show) -> dict[str, str]:
    words = f"{margin_words(question)}: {question.reason}"
    return {
        "id": question.id.capitalize(),
        "verdict": question.verdict.value,
        "margin": margin_words(question),
        "words": words,
    }


def _cut(cut: Cut, show: Show) -> list[str]:
    return [
        cut.name,
        show.spindle(cut.spindle_speed),
        show.feed(cut.feed).replace(" (", "\n("),
        f"{cut.passes} × {show.length(cut.depth)}".replace(" (", "\n("),
        f"{cut.direction},\n{cut.seat_effect}",
    ]


def _drop_sources(data: SheetData) -> bool:
    before: str = data["sources"]
    data["sources"] = ""
    return before != ""


def _fewer(key: str, most: int, data: SheetData) -> bool:
    before: list[Any] = data[key]
    data[key] = before[:most]
    return len(before) > most


def _no_reasons_of_yes(data: SheetData) -> bool:
    """Questions answered yes go into one line, with their margins and without their reasons."""
    before: list[dict[str, str]] = data["questions"]
    easy = [q for q in before if q["verdict"] == Verdict.YES]
    if not easy:
        return False
    words = "; ".join(f"{q['id'].lower()} {q['margin'].removeprefix('yes, ')}" for q in easy)
    line = {"id": "Yes:", "verdict": "yes", "words": f"{words}."}
    data["questions"] = [*(q for q in before if q["verdict"] != Verdict.YES), line]
    return True


def _only_doubtful(data: SheetData) -> bool:
    before: list[dict[str, str]] = data["questions"]
    data["questions"] = [q for q in before if q["verdict"] != Verdict.YES]
    return any(q["verdict"] == Verdict.YES for q in before)


def _short_steps(data: SheetData) -> bool:
    before: list[dict[str, Any]] = data["steps"]
    data["steps"] = [{**step, "text": shortened(step["text"], _STEP_ROOM)} for step in before]
    return any(len(step["text"]) > _STEP_ROOM for step in before)


_TRIMS: tuple[tuple[str, Callable[[SheetData], bool]], ...] = (
    ("the reasons of questions answered yes", _no_reasons_of_yes),
    ("other ways after the first two", partial(_fewer, "other_ways", 2)),
    ("what was assumed after the sixth", partial(_fewer, "assumed", 6)),
    ("what was typed", partial(_fewer, "echo", 0)),
    ("all other ways", partial(_fewer, "other_ways", 0)),
    ("all that was assumed", partial(_fewer, "assumed", 0)),
    ("sources", _drop_sources),
    ("questions answered yes", _only_doubtful),
    ("the ends of long steps", _short_steps),
    ("all questions", partial(_fewer, "questions", 0)),
    ("cuts after the fourth", partial(_fewer, "cuts", 4)),
    ("steps after the fourteenth", partial(_fewer, "steps", 14)),
    ("steps after the eighth", partial(_fewer, "steps", 8)),
    ("cautions after the sixth", partial(_fewer, "cautions", 6)),
)
"""What goes when room is short, in this order, cautions last; each says whether it left out."""
MOST_TRIM = len(_TRIMS)
