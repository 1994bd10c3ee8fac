"""Every hold weighed and ranked, with the one reason that decides its row."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from borewright.answer.records import Candidate, Question, Verdict
from borewright.errors import RefusedInput
from borewright.holding.bore_reading import bore_half_band
from borewright.holding.plain_taper import TaperHold, holds
from borewright.holding.registry import WAYS
from borewright.job.records import Job, Mandrel
from borewright.planning.choice.load_passes import make_loaded_trial
from borewright.planning.questions import ask_all
from borewright.planning.shop.shop import Shop
from borewright.planning.taper.trial import Trial
from borewright.quantities.show import Show
from borewright.reference.library import Tables

RANKED_BY = (
    "verdict; then fewest answers of no; then fewest of with care; then bore nearest inside its window "
    "(counted up to 1); then share of bore that bears; then slip margin, poor case and likely; then name and face"
)
"""The order of the candidates, in words; printed with them."""


MATTERS = (
    "crack",
    "bore",
    "slip",
    "rock",
    "heat",
    "push",
    "seat",
    "reach",
    "speed",
    "bend",
    "true",
)
"""Which of several equal answers is said first."""


BESIDE = 0.5e-3
"""A bore this far (m) off every mandrel is still tried on the nearest, to say by how much it misses (ours)."""


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
        """Of the questions with the worst answer, the one that matters most."""
        worst = [q for q in self.questions if q.verdict is self.verdict]
        return min(worst, key=lambda q: MATTERS.index(q.id))


@dataclass(frozen=True, slots=True, eq=False)
class Weighing:
    """The holds tried, best first, and the mandrels passed over because the bore is far from them."""

    tried: tuple[Weighed, ...]
    passed: tuple[Candidate, ...]
    nearest: Mandrel | None = None

    @property
    def candidates(self) -> tuple[Candidate, ...]:
        return (*(as_candidate(w) for w in self.tried), *self.passed)


def weigh(job: Job, shop: Shop, tables: Tables) -> Weighing:
    """Every mandrel of the shelf, best first. RefusedInput where `use` names nothing to try."""
    mandrels = _to_try(job, shop, tables)
    distance = {m: _bore_off(m, job, tables) for m in mandrels}
    near = [m for m in mandrels if distance[m] <= 0]
    beside = [m for m in mandrels if distance[m] <= BESIDE]
    chosen = near or sorted(beside, key=lambda m: distance[m])[:1]
    passed = tuple(_passed(m, job) for m in mandrels if m not in chosen)
    nearest = min(mandrels, key=lambda m: distance[m], default=None)
    return Weighing(_tried(chosen, job, shop, tables), passed, nearest)


def _bore_off(mandrel: Mandrel, job: Job, tables: Tables) -> float:
    """How far (m) the whole band of the bore lies off the ground part; 0 or less where it meets it."""
    band, bore = bore_half_band(job, tables), job.work.bore
    sizes = [bore.size, *(r.size for r in bore.readings)]
    return max(min(sizes) - band - mandrel.large_end, mandrel.small_end - max(sizes) - band)


def _passed(mandrel: Mandrel, job: Job) -> Candidate:
    show = Show(job.units)
    ends = show.band(mandrel.small_end, mandrel.large_end, "bore")
    how = "falls through" if job.work.bore.size > mandrel.large_end else "does not go on"
    reason = f"It is ground {ends}: this bore {how}."
    return Candidate("plain-taper", mandrel.name, "", Verdict.NO, reason)


def _tried(
    mandrels: Sequence[Mandrel], job: Job, shop: Shop, tables: Tables
) -> tuple[Weighed, ...]:
    tried = [_weighed(job, shop, h, tables) for m in mandrels for h in holds(job, m, tables)]
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
    trial = make_loaded_trial(job, shop, hold, tables)
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
    if _way_id(wanted, tables):
        names = f"{names} ({_way_id(wanted, tables)} is known, but not computed yet)"
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
        -round(w.question("slip").margin, 3),
        w.trial.mandrel.name,
        w.trial.hold.leading,
    )
