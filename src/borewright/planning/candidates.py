"""Every hold weighed and ranked, with the one reason that decides its row."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Candidate, Question, Verdict
from borewright.errors import RefusedInput
from borewright.holding.plain_taper import TaperHold, holds
from borewright.holding.registry import WAYS
from borewright.job.records import Job, Mandrel
from borewright.planning.questions import ask_all
from borewright.planning.shop import Shop
from borewright.planning.trial import Trial, make_trial
from borewright.reference.library import Tables

RANKED_BY = (
    "verdict; then fewest answers of no; then fewest of with care; then bore nearest inside its window "
    "(counted up to 1); then share of bore that bears; then poor-case slip margin; then name and face"
)
"""The order of the candidates, in words; printed with them."""


@dataclass(frozen=True, slots=True, eq=False)
class Weighed:
    """A trial with its questions answered."""

    trial: Trial
    questions: tuple[Question, ...]

    @property
    def verdict(self) -> Verdict:
        """The worst answer."""
        return max((q.verdict for q in self.questions), key=lambda v: v.rank)

    def question(self, name: str) -> Question:
        return next(q for q in self.questions if q.id == name)

    @property
    def deciding(self) -> Question:
        """The first question with the worst answer."""
        return next(q for q in self.questions if q.verdict is self.verdict)


def weigh(job: Job, shop: Shop, tables: Tables) -> tuple[Weighed, ...]:
    """Every hold of the shelf, best first. RefusedInput where `use` names nothing that can be tried."""
    tried = [
        _weighed(job, shop, h, tables)
        for m in _to_try(job, shop, tables)
        for h in holds(job, m, tables)
    ]
    return tuple(sorted(tried, key=_order))


def as_candidate(weighed: Weighed) -> Candidate:
    """The row of one hold."""
    hold = weighed.trial.hold
    reason = (
        weighed.deciding.reason
        if weighed.verdict is not Verdict.YES
        else "Every question is answered yes."
    )
    return Candidate(hold.way, hold.mandrel.name, hold.leading, weighed.verdict, reason)


def _weighed(job: Job, shop: Shop, hold: TaperHold, tables: Tables) -> Weighed:
    trial = make_trial(job, shop, hold, tables)
    return Weighed(trial, ask_all(trial))


def _to_try(job: Job, shop: Shop, tables: Tables) -> tuple[Mandrel, ...]:
    """The mandrels that `use` allows."""
    wanted = job.use.strip().lower()
    if wanted in ("any", ""):
        return shop.mandrels
    by_name = tuple(m for m in shop.mandrels if m.name.lower() == wanted)
    if by_name:
        return by_name
    if _way_id(wanted, tables) in WAYS:
        return shop.mandrels
    names = ", ".join(["any", *WAYS, *(m.name for m in shop.mandrels[:12])])
    raise RefusedInput("hold.use", repr(job.use), f"one of: {names}")


def _way_id(wanted: str, tables: Tables) -> str:
    try:
        return tables.way(wanted).id
    except RefusedInput:
        return ""


def _order(w: Weighed) -> tuple[int | float | str, ...]:
    verdicts = [q.verdict for q in w.questions]
    return (
        w.verdict.rank,
        verdicts.count(Verdict.NO),
        verdicts.count(Verdict.CARE),
        -round(min(w.question("bore").margin, 1.0), 3),
        -round(w.question("seat").margin, 3),
        -round(w.question("slip").margin_low, 3),
        w.trial.mandrel.name,
        w.trial.hold.leading,
    )
