"""Every way of holding but the taper, weighed for a job: tried where it can be done, else said why not."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from borewright.answer.held import Held
from borewright.answer.records import Question, Verdict
from borewright.holding.drives.offered import driven, drives_for
from borewright.holding.registry import WAYS
from borewright.job.records import Job
from borewright.planning.choice.deciding import deciding_of, worst_of
from borewright.planning.held.at_face import short_of_rings
from borewright.planning.held.clash import clash, out_of_the_way
from borewright.planning.held.held_questions import ask_held
from borewright.planning.held.held_trial import HeldTrial, make_held_trial
from borewright.planning.weighing.served import CutsByShare
from borewright.reference.library import Tables

OFF_THE_LATHE = "Grinding and gear cutting are weighed on plain mandrels only."
OUT_OF_REACH = "Nothing that is to be cut can be reached while it is held so."


@dataclass(frozen=True, eq=False)
class WeighedHeld:
    """A hold with its questions answered; without a trial where it cannot be done at all."""

    held: Held
    trial: HeldTrial | None
    questions: tuple[Question, ...]

    @cached_property
    def verdict(self) -> Verdict:
        """The worst answer; no where it cannot be done."""
        return worst_of(self.questions) if self.trial else Verdict.NO

    def falls_short(self, name: str) -> bool:
        """Whether this question is answered, and not by yes."""
        return any(q.id == name and q.verdict is not Verdict.YES for q in self.questions)

    @property
    def deciding(self) -> Question | None:
        """Of the questions with the worst answer, the one that matters most."""
        return deciding_of(self.questions) if self.trial else None


def weigh_ways(job: Job, tables: Tables, only: Iterable[str] = WAYS) -> tuple[WeighedHeld, ...]:
    """Every arrangement of these ways, in the order of the registry."""
    planned = CutsByShare(job, tables)
    return tuple(row for way in only for row in _weighed(way, job, tables, planned))


def _weighed(way: str, job: Job, tables: Tables, planned: CutsByShare) -> Iterator[WeighedHeld]:
    for held in WAYS[way].offer(job, tables):
        bare = _asked(held, job, tables, planned)
        yield bare
        if bare.falls_short("slip"):
            drives = drives_for(way, job, tables, held.leading)
            yield from (_asked(driven(held, drive), job, tables, planned) for drive in drives)


def _asked(held: Held, job: Job, tables: Tables, planned: CutsByShare) -> WeighedHeld:
    if not held.cannot and any(
        not cut.on_lathe for cut in planned.at(planned.shares[0], held.leading)[0]
    ):
        held = replace(held, cannot=OFF_THE_LATHE, grip=None)
    trial = make_held_trial(job, held, tables, planned)
    if trial is None and not held.cannot:
        held = replace(held, cannot=OUT_OF_REACH, grip=None)
    trial = None if trial is None else short_of_rings(out_of_the_way(trial))
    if trial is not None and (why := clash(trial)):
        held, trial = replace(held, cannot=why, grip=None), None
    return WeighedHeld(held, trial, ask_held(trial) if trial else ())
