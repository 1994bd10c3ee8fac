"""The first hold of a casting as sentences: what to set true, where the jaws go, the steps."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from borewright.answer.plan import Plan
from borewright.answer.records import Step
from borewright.quantities.show import Show
from borewright.report.words import citation, step_figures

if TYPE_CHECKING:
    from borewright.answer.first_hold import FirstHold

_BLANK = "____________"


def first_hold_words(plan: Plan, show: Show) -> Iterator[str]:
    """One paragraph a sentence or step; none where the plan has no first hold."""
    hold = plan.first_hold
    if hold is None:
        return
    yield f"{hold.when} Set true by {hold.set_true_to}: {hold.why}." if hold.steps else hold.when
    yield hold.clean_up
    yield from (_step(step, hold, show) for step in hold.steps)
    said = {caution.text for caution in plan.cautions}
    yield from (f"{c.text} ({citation(c.source)})" for c in hold.cautions if c.text not in said)


def _step(step: Step, hold: FirstHold, show: Show) -> str:
    """A step with its blanks; a figure is said once, here or in the words before the steps."""
    figures = "".join(f" {words}" for words in step_figures(step, show, hold.clean_up))
    blanks = "".join(f" {name}: {_BLANK}" for name in step.blanks)
    return f"{step.number}. {step.title}. {step.text}{figures}{blanks}"
