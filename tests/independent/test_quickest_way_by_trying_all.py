"""Of ways that are alike but for time, the one done first: against every way planned by itself."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.jobs_made import wheel_job

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.job.records import Job
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()


def disc(outside: float, finished: float, quantity: int = 1) -> Job:
    """A steel disc that is left alone but for its outside."""
    job = wheel_job(outside, 0.03, 0.020006, "steel-1018", mandrels=None)
    work = replace(job.work, quantity=quantity)
    return replace(
        job, work=replace(work, finished=replace(work.finished, outside=finished)), use="any"
    )


def seconds(answer: Plan) -> dict[str, float]:
    """Cutting and waiting; what is done to the whole outside together."""
    assert answer.schedule is not None
    found: dict[str, float] = {}
    for t in answer.schedule.taken:
        name = "outside" if t.cut in ("skin", "rough", "finish") else t.cut
        found[name] = found.get(name, 0.0) + t.seconds + t.wait
    return found


def brass(quantity: int) -> Job:
    """Many of brass on a strong lathe: quick to cut, slow to cool."""
    job = disc(0.05, 0.044, quantity)
    machine = replace(job.shelf.machine, power=2200.0)
    shelf = replace(job.shelf, machine=machine)
    return replace(job, work=replace(job.work, material="brass-c360"), shelf=shelf)


def rivals(job: Job, answer: Plan) -> dict[str, Plan]:
    """Every other way that was weighed with no answer worse, planned as if it were asked for."""
    ways = {
        c.way
        for c in answer.candidates
        if c.verdict is Verdict.YES and not c.reason.startswith("Not on the shelf")
    }
    return {way: plan(job, use=way, source_tables=TABLES) for way in sorted(ways)}


@pytest.mark.parametrize(
    "job",
    [
        disc(0.063, 0.061),
        disc(0.12, 0.09),
        disc(0.12, 0.1, quantity=6),
        disc(0.15, 0.13),
        brass(25),
    ],
    ids=["little", "much", "six of them", "a large one", "brass"],
)
def test_no_other_way_is_set_up_and_cut_in_less(job: Job) -> None:
    """Cuts that a way does not reach are taken in another hold, as fast as any way takes them."""
    answer = plan(job, source_tables=TABLES)
    assert answer.verdict is Verdict.YES
    found = rivals(job, answer)
    assert len(found) > 2
    quickest: dict[str, float] = {}
    for other in found.values():
        for cut, one in seconds(other).items():
            quickest[cut] = min(one, quickest.get(cut, one))
    whole = {
        way: other.chosen.minutes
        + job.work.quantity * sum((quickest | seconds(other)).values()) / 60
        for way, other in found.items()
    }
    assert answer.chosen is not None
    assert whole[answer.chosen.way] == pytest.approx(min(whole.values()), rel=1e-6), whole


def test_much_cutting_is_worth_a_hold_that_takes_longer_to_set_up() -> None:
    little, much = (plan(disc(0.12, size), source_tables=TABLES) for size in (0.119, 0.09))
    assert little.chosen is not None
    assert much.chosen is not None
    assert much.chosen.minutes > little.chosen.minutes
