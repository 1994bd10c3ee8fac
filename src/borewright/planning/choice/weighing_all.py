"""All ways of holding weighed for a job and put in one order."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from borewright.answer.records import Candidate, Verdict
from borewright.errors import RefusedInput
from borewright.holding.registry import PLAIN_TAPER, WAYS
from borewright.job.records import Job, Mandrel
from borewright.planning.choice.candidates import Weighed, weigh_mandrels
from borewright.planning.choice.held_rows import WeighedHeld, weigh_ways
from borewright.planning.choice.ranking import Row, held_row, taper_row
from borewright.planning.questions.true import ask_true
from borewright.planning.shop.shop import Shop
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True, eq=False)
class Weighing:
    """Every row, best first, and the mandrels passed over because the bore is far from them."""

    rows: tuple[Row, ...]
    passed: tuple[Candidate, ...]
    nearest: Mandrel | None = None

    @property
    def candidates(self) -> tuple[Candidate, ...]:
        return (*(row.candidate for row in self.rows), *self.passed)

    @property
    def best(self) -> Row | None:
        return self.rows[0] if self.rows else None

    @property
    def best_mandrel(self) -> Weighed | None:
        """The best of the plain taper mandrels tried."""
        found = (row.weighed for row in self.rows)
        return next((w for w in found if isinstance(w, Weighed)), None)


@dataclass(frozen=True, slots=True)
class Asked:
    """What `use` allows: these mandrels, these other ways."""

    mandrels: tuple[Mandrel, ...]
    ways: tuple[str, ...]


def weigh(
    job: Job, shop: Shop, tables: Tables, known: tuple[WeighedHeld, ...] | None = None
) -> Weighing:
    """Everything that `use` allows, best first. RefusedInput where it names nothing to try.

    `known`: the other ways as already weighed on this lathe, which no press changes.
    """
    asked = asked_of(job, shop, tables)
    found = weigh_mandrels(job, shop, tables, asked.mandrels)
    others = weigh_ways(job, tables, asked.ways) if known is None else known
    rows = [taper_row(w, tables) for w in found.tried]
    rows += _held_by_its_end(job, tables, rows)
    rows += [held_row(w, job.work.quantity, tables) for w in others]
    return Weighing(in_order(rows), found.passed, found.nearest)


OTHER_DRIVERS = ("collet", "three-jaw")
"""What else can turn a mandrel by its own end, with a tail center."""


def _held_by_its_end(job: Job, tables: Tables, rows: list[Row]) -> list[Row]:
    """The best mandrel with its own end in a collet, and in the three-jaw, where a dog is no wish."""
    best = next((row.weighed for row in in_order(rows)), None)
    if not isinstance(best, Weighed) or best.verdict is Verdict.NO or job.driven_by != "dog":
        return []
    held = (_turned_by(best, by) for by in OTHER_DRIVERS)
    return [taper_row(weighed, tables, by_its_end=True) for weighed in held]


def _turned_by(weighed: Weighed, by: str) -> Weighed:
    """The same with its own end held so: that moves its runout, and nothing else that is judged."""
    trial = replace(weighed.trial, job=replace(weighed.trial.job, driven_by=by))
    questions = (ask_true(trial) if q.id == "true" else q for q in weighed.questions)
    return Weighed(trial, tuple(questions))


def in_order(rows: Iterable[Row]) -> tuple[Row, ...]:
    """Best first, by the one key."""
    return tuple(sorted(rows, key=lambda row: row.key))


def asked_of(job: Job, shop: Shop, tables: Tables) -> Asked:
    """The mandrels and ways that `use` allows."""
    wanted = job.use.strip().lower()
    if wanted in ("any", ""):
        return Asked(shop.mandrels, tuple(WAYS))
    by_name = tuple(m for m in shop.mandrels if m.name.lower() == wanted)
    if by_name:
        return Asked(by_name, ())
    way = _way_id(wanted, tables)
    if way == PLAIN_TAPER:
        return Asked(shop.mandrels, ())
    if way in WAYS:
        return Asked((), (way,))
    names = ", ".join(["any", PLAIN_TAPER, *WAYS, *(m.name for m in shop.mandrels[:12])])
    raise RefusedInput("hold.use", repr(job.use), f"one of: {names}")


def _way_id(wanted: str, tables: Tables) -> str:
    try:
        return tables.way(wanted).id
    except RefusedInput:
        return ""
