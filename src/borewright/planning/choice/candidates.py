"""Every plain taper mandrel of the shelf that the bore comes near, asked every question."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from borewright.answer.records import Candidate, Question, Verdict
from borewright.holding.bores.bore_reading import bore_half_band
from borewright.holding.drives.offered import drives_for
from borewright.holding.taper.plain_taper import TaperHold, holds
from borewright.job.records import Job, Mandrel
from borewright.planning.choice.deciding import deciding_of, worst_of
from borewright.planning.choice.load_passes import make_loaded_trial
from borewright.planning.questions import ask_all
from borewright.planning.shop.shop import Shop
from borewright.planning.taper.trial import Trial
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

BESIDE = 0.5e-3
"""A bore this far (m) off every mandrel is still tried on the nearest, to say by how much it misses (ours)."""


@dataclass(frozen=True, eq=False)
class Weighed:
    """A trial with its questions answered."""

    trial: Trial
    questions: tuple[Question, ...]

    @cached_property
    def verdict(self) -> Verdict:
        """The worst answer."""
        return worst_of(self.questions)

    def question(self, name: str) -> Question:
        return next(q for q in self.questions if q.id == name)

    @property
    def deciding(self) -> Question:
        """Of the questions with the worst answer, the one that matters most."""
        return deciding_of(self.questions)


@dataclass(frozen=True, slots=True, eq=False)
class Mandrels:
    """The mandrels tried, each way round, and those passed over because the bore is far from them."""

    tried: tuple[Weighed, ...]
    passed: tuple[Candidate, ...]
    nearest: Mandrel | None = None


def weigh_mandrels(job: Job, shop: Shop, tables: Tables, mandrels: tuple[Mandrel, ...]) -> Mandrels:
    """Every one of these mandrels that the bore comes near, asked every question."""
    band = bore_half_band(job, tables)
    distance = {m: _bore_off(m, job, band) for m in mandrels}
    near = [m for m in mandrels if distance[m] <= 0]
    beside = [m for m in mandrels if distance[m] <= BESIDE]
    chosen = near or sorted(beside, key=lambda m: distance[m])[:1]
    passed = tuple(_passed(m, job) for m in mandrels if m not in chosen)
    nearest = min(mandrels, key=lambda m: distance[m], default=None)
    tried = tuple(
        w for m in chosen for h in holds(job, m, tables) for w in _weighed(job, shop, h, tables)
    )
    return Mandrels(tried, passed, nearest)


def _bore_off(mandrel: Mandrel, job: Job, band: Metre) -> Metre:
    """How far (m) the whole band of the bore, so much either way, lies off the ground part; 0 or less
    where it meets it."""
    bore = job.work.bore
    sizes = [bore.size, *(r.size for r in bore.readings)]
    return max(min(sizes) - band - mandrel.large_end, mandrel.small_end - max(sizes) - band)


def _passed(mandrel: Mandrel, job: Job) -> Candidate:
    show = Show(job.units)
    ends = show.band(mandrel.small_end, mandrel.large_end, "bore")
    how = "falls through" if job.work.bore.size > mandrel.large_end else "does not go on"
    reason = f"It is ground {ends}: this bore {how}."
    return Candidate("plain-taper", mandrel.name, "", Verdict.NO, reason)


def _weighed(job: Job, shop: Shop, hold: TaperHold, tables: Tables) -> Iterator[Weighed]:
    """The hold by itself, and with each positive drive it can take where it slips by itself."""
    bare = _asked(make_loaded_trial(job, shop, hold, tables))
    yield bare
    if bare.question("slip").verdict is not Verdict.YES and _sits(bare):
        for drive in drives_for(hold.way, job, tables, hold.leading):
            yield _asked(make_loaded_trial(job, shop, hold, tables, drive))


def _sits(weighed: Weighed) -> bool:
    """False where the bore, or a flaw, forbids the mandrel whatever drives the work."""
    return Verdict.NO not in (weighed.question("bore").verdict, weighed.question("crack").verdict)


def _asked(trial: Trial) -> Weighed:
    return Weighed(trial, ask_all(trial))
