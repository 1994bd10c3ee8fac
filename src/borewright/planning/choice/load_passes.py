"""Passes through each space of a gear where the job leaves them open: the fewest with which the
teeth are no trouble to the grip."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from borewright.answer.held import Drive
from borewright.answer.records import Verdict
from borewright.cutting.loads import cuts_gear, space_of
from borewright.holding.taper.plain_taper import TaperHold
from borewright.job.records import Job
from borewright.planning.questions.rock import rock_verdict
from borewright.planning.questions.slip import slip_verdict
from borewright.planning.shop.shop import Shop
from borewright.planning.taper.trial import Trial, make_trial
from borewright.reference.library import Tables

MOST_PASSES = 3
"""More passes than this through every space are left to the user to ask for (ours)."""


def make_loaded_trial(
    job: Job, shop: Shop, hold: TaperHold, tables: Tables, drive: Drive | None = None
) -> Trial:
    """The trial with the fewest equal passes for which slip and rock of the teeth both come out yes.

    One pass where none of them does, or where the job says how deep each goes.
    """
    tried = _tried(job, shop, hold, tables, drive)
    one = next(tried)
    return one if _served(one) else next(filter(_served, tried), one)


def _tried(
    job: Job, shop: Shop, hold: TaperHold, tables: Tables, drive: Drive | None
) -> Iterator[Trial]:
    yield make_trial(job, shop, hold, tables, drive)
    if any(cuts_gear(w) and w.depth is None for w in job.cuts):
        for passes in range(2, MOST_PASSES + 1):
            yield make_trial(_in_passes(job, passes, tables), shop, hold, tables, drive)


def _in_passes(job: Job, passes: int, tables: Tables) -> Job:
    """The job with every space that is left open cut in so many equal passes."""
    cuts = (
        replace(w, depth=space_of(w, tables).whole_depth / passes)
        if cuts_gear(w) and w.depth is None
        else w
        for w in job.cuts
    )
    return replace(job, cuts=tuple(cuts))


def _served(trial: Trial) -> bool:
    """True where no gear cut slips or rocks; other cuts do not ask for passes of the cutter."""
    teeth = [d for c, d in zip(trial.cuts, trial.demands, strict=True) if c.kind == "gear"]
    return all(v(trial, d) is Verdict.YES for d in teeth for v in (slip_verdict, rock_verdict))
