"""What of a plan the shop can make itself, and the command that draws it."""

from __future__ import annotations

from shlex import quote
from typing import Final

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.job.records import Job
from borewright.quantities.si import Metre

DRAWN: Final = {
    "turned-stub": ("stub", "the stub"),
    "collet-stub": ("stub", "the stub"),
    "expanding": ("stub --expanding", "an expanding stub"),
    "soft-mandrel": ("soft", "the soft mandrel"),
}
"""Ways that are made to the bore: the thing of `make`, and its name."""

TAPER: Final = "plain-taper"

THICKEST: Final[Metre] = 0.0508
"""The largest mandrel of the chart; a thicker bore is held otherwise."""


def making_hints(plan: Plan, job: Job, job_file: str) -> tuple[str, ...]:
    """Commands that draw what this plan lacks: the way it chose, and a mandrel where none serves.

    Empty where the plan holds the work on a mandrel of the shelf.
    """
    chosen = plan.chosen.way if plan.chosen else ""
    said = []
    if chosen in DRAWN:
        thing, name = DRAWN[chosen]
        said.append(f"`borewright make {thing} {quote(job_file)}` draws {name}, with its route.")
    tapers = [c for c in plan.candidates if c.way == TAPER]
    wanted = chosen in DRAWN or plan.verdict is Verdict.NO
    slim = job.work.bore.size <= THICKEST
    if wanted and slim and all(c.verdict is Verdict.NO for c in tapers):
        said.append(
            f"`borewright make mandrel {quote(job_file)}` draws a mandrel to this bore; its --try-shelf lets a "
            "plan try it first."
        )
    return tuple(said)
