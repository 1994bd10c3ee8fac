"""The independent chuck: set true by indicator, and where a worn bore is bored round again."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.chuck_jobs import bored, hubbed, thin_ring, with_bore, worn

from borewright.answer.held import OUTSIDE, TAIL_FACE
from borewright.answer.records import Have, Verdict
from borewright.holding.ways.four_jaw import FourJaw
from borewright.holding.ways.three_jaw import ThreeJaw
from borewright.job.records import Finished, Job
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables
from borewright.service import planned

TABLES = Tables()


def first(job: Job):  # type: ignore[no-untyped-def]
    return FourJaw().offer(job, TABLES)[0]


def test_it_runs_as_true_as_a_hand_sets_it_whatever_the_hub_does() -> None:
    care = TABLES.holding_fact("indicator_care").best
    for blank in ("bar", "casting"):
        assert likely(first(hubbed(blank=blank)).grip.runout) == pytest.approx(care)


def test_four_jaws_spring_a_ring_less_than_three_of_the_same_force() -> None:
    three = ThreeJaw().offer(thin_ring(), TABLES)[0].grip
    assert three is not None
    assert likely(first(thin_ring()).grip.springs) < 0.5 * likely(three.springs)


def test_a_worn_bore_is_bored_round_by_the_outside() -> None:
    found = first(worn(hubbed()))
    assert found.reaches == (TAIL_FACE,)
    assert "bore the hole round" in found.do_it
    assert any("boring" in n.what for n in found.needs)
    assert any(s.title == "Bore it round" for s in found.mount)
    assert planned.plan(worn(hubbed())).chosen.way == "four-jaw"  # type: ignore[union-attr]


def test_a_worn_wheel_whose_rim_is_turned_too_is_gripped_where_the_rim_is_free() -> None:
    job = worn(hubbed())
    job = replace(job, work=replace(job.work, finished=Finished(0.118)))
    assert OUTSIDE in first(job).reaches


def test_nothing_but_the_outside_is_a_no() -> None:
    assert "Nothing to grip" in first(with_bore(thin_ring(), bored("reamed", 0.016))).cannot


def test_a_chuck_that_is_not_there_is_bought() -> None:
    job = hubbed()
    job = replace(job, shelf=replace(job.shelf, have_not=("four-jaw chuck",)))
    assert next(n.have for n in first(job).needs) is Have.BUY


def test_a_hubbed_wheel_is_a_yes() -> None:
    assert planned.plan(hubbed(), use="four-jaw").verdict is Verdict.YES
