"""A changed job with what was changed: what every variant is, and what it is made from."""

from __future__ import annotations

from dataclasses import dataclass, replace

from borewright.answer.records import Verdict
from borewright.job.records import Job, Piece, Work
from borewright.planning.choice.candidates import Weighed
from borewright.planning.shop.shop import Shop
from borewright.quantities.show import Show
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class Variant:
    """`id` is a row of the table `part_changes`; `what` one sentence with its sizes.

    `rough_in_chuck`: the roughing is no longer done on the mandrel.
    """

    id: str
    what: str
    job: Job
    rough_in_chuck: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class Situation:
    """The job as it stands: its best hold, or None where no mandrel can be tried, and its troubles.

    `troubles`: ids of the questions that are not a yes, and slip where the grip keeps the cuts light.
    `share`: the deepest cut that holds over the one that is wanted; 0 where it does not go on.
    """

    job: Job
    shop: Shop
    tables: Tables
    best: Weighed | None
    troubles: frozenset[str]
    share: float

    @property
    def show(self) -> Show:
        return Show(self.job.units)

    def troubled(self, *questions: str) -> bool:
        """Whether one of these questions is among the troubles."""
        return not self.troubles.isdisjoint(questions)

    def answers(self, question: str, verdict: Verdict) -> bool:
        return self.best is not None and self.best.question(question).verdict is verdict


def with_work(job: Job, work: Work) -> Job:
    """The job with another part."""
    return replace(job, work=work)


def with_pieces(job: Job, pieces: tuple[Piece, ...]) -> Job:
    """The job with another outline."""
    return with_work(job, replace(job.work, pieces=pieces))
