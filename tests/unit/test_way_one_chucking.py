"""One chucking: while the bore is still to be finished and something past the work can be gripped."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.chuck_jobs import bored, hubbed, thin_ring, with_bore, worn
from tests.jobs_made import wheel_job

from borewright.answer.held import HEAD_FACE
from borewright.answer.records import Verdict
from borewright.holding.ways.one_chucking import OneChucking
from borewright.job.records import Bore, Job
from borewright.reference.library import Tables
from borewright.service import planned

TABLES = Tables()


def first(job: Job):  # type: ignore[no-untyped-def]
    return OneChucking().offer(job, TABLES)[0]


def drilled() -> Job:
    """A wheel of 63 mm from bar, drilled only."""
    return with_bore(wheel_job(), bored("drilled", 0.016))


def test_a_drilled_blank_from_bar_is_done_in_one_chucking_before_all_else() -> None:
    answer = planned.plan(drilled())
    assert answer.verdict is Verdict.YES
    assert answer.chosen is not None
    assert answer.chosen.way == "one-chucking"


def test_a_blank_of_which_nobody_said_anything_more_is_too() -> None:
    answer = planned.plan(with_bore(wheel_job(), bored("unknown", 0.016)))
    assert answer.chosen is not None
    assert answer.chosen.way == "one-chucking"


def test_it_says_what_it_costs_in_bar() -> None:
    """Half of 63 mm to grip and 6 mm to part: 37.5 mm."""
    cost = next(f for f in first(drilled()).figures if f.name == "stock_to_grip")
    assert cost.best == pytest.approx(0.5 * 0.063 + 0.006, rel=1e-9)
    assert [round(i.value, 4) for i in cost.inputs] == [0.0315, 1, 0.006]


def test_a_small_bar_is_gripped_by_no_less_than_the_least() -> None:
    job = with_bore(wheel_job(outside=0.020), bored("drilled", 0.010))
    cost = next(f for f in first(job).figures if f.name == "stock_to_grip")
    assert cost.best == pytest.approx(0.015 + 0.006, rel=1e-9)


def test_nothing_runs_truer() -> None:
    answer = planned.plan(drilled())
    runouts = [c.runout for c in answer.candidates if c.runout is not None]
    assert answer.chosen is not None
    assert answer.chosen.runout == min(runouts)


@pytest.mark.parametrize("how", ["reamed", "bored", "honed"])
def test_a_finished_bore_is_past_it(how: str) -> None:
    assert "finished already" in first(with_bore(hubbed(), bored(how))).cannot


def test_a_bore_that_was_read_makes_it_doubtful_and_so_does_the_bar() -> None:
    job = with_bore(wheel_job(), Bore(0.016, 5e-6, "bore gauge", "unknown"))
    found = first(job)
    assert found.seat.margin < 1
    assert "if the bar was left long enough" in found.seat.reason
    assert planned.plan(job, use="one-chucking").verdict is Verdict.CARE


def test_bar_that_is_not_said_to_be_bar_is_doubtful() -> None:
    job = with_bore(wheel_job(), bored("drilled", 0.016), "unknown")
    assert planned.plan(job, use="one-chucking").verdict is Verdict.CARE


def test_a_casting_is_gripped_by_its_hub_and_one_without_is_not() -> None:
    cast = with_bore(hubbed(), bored("as-cast"), "casting")
    assert "hub" in first(cast).tool
    assert planned.plan(cast).verdict is not Verdict.NO
    plain = with_bore(thin_ring(), bored("as-cast", 0.100), "casting")
    assert "Nothing past the work to grip" in first(plain).cannot


def test_a_longer_bar_seats_worse() -> None:
    def margin(length: float) -> float:
        return first(with_bore(wheel_job(length=length), bored("drilled", 0.016))).seat.margin

    found = [margin(length) for length in (0.02, 0.05, 0.1, 0.2)]
    assert found == sorted(found, reverse=True)
    assert found[-1] < 1


def test_the_second_face_is_left_for_later_and_a_worn_bore_is_no_blank() -> None:
    assert HEAD_FACE not in first(drilled()).reaches
    job = worn(drilled())
    bore = replace(job.work.bore, made_by="unknown")
    assert "worn oval" in first(with_bore(job, bore)).cannot
