"""Every way of holding but the taper, weighed for a job: tried where it can be done, else said why not."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from borewright.answer.held import Held
from borewright.answer.records import Question, Verdict
from borewright.holding.registry import WAYS
from borewright.job.records import Job
from borewright.planning.choice.deciding import deciding_of, worst_of
from borewright.planning.held.held_questions import ask_held
from borewright.planning.held.held_trial import HeldTrial, make_held_trial
from borewright.reference.library import Tables

OUT_OF_REACH = "Nothing that is to be cut can be reached while it is held so."


@dataclass(frozen=True, slots=True, eq=False)
class WeighedHeld:
    """A hold with its questions answered; without a trial where it cannot be done at all."""

    held: Held
    trial: HeldTrial | None
    questions: tuple[Question, ...]

    @property
    def verdict(self) -> Verdict:
        """The worst answer; no where it cannot be done."""
        return worst_of(self.questions) if self.trial else Verdict.NO

    @property
    def deciding(self) -> Question | None:
        """Of the questions with the worst answer, the one that matters most."""
        return deciding_of(self.questions) if self.trial else None


def weigh_ways(job: Job, tables: Tables, only: Iterable[str] = WAYS) -> tuple[WeighedHeld, ...]:
    """Every arrangement of these ways, in the order of the registry."""
    return tuple(row for way in only for row in _weighed(way, job, tables))


def _weighed(way: str, job: Job, tables: Tables) -> Iterator[WeighedHeld]:
    for held in WAYS[way].offer(job, tables):
        trial = make_held_trial(job, held, tables)
        if trial is None and not held.cannot:
            held = replace(held, cannot=OUT_OF_REACH, grip=None)
        yield WeighedHeld(held, trial, ask_held(trial) if trial else ())
