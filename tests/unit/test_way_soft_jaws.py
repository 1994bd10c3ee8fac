"""Soft jaws cut in place: they bear all round, repeat, and are made where there are none."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.chuck_jobs import bored, hubbed, thin_ring, with_bore, worn

from borewright.answer.records import Have, Verdict
from borewright.holding.ways.soft_jaws import SoftJaws
from borewright.holding.ways.three_jaw import ThreeJaw
from borewright.job.records import Finished, Job
from borewright.job.tools import OwnHolding
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables
from borewright.service import planned

TABLES = Tables()


def first(job: Job):  # type: ignore[no-untyped-def]
    return SoftJaws().offer(job, TABLES)[0]


def test_a_thin_ring_springs_far_less_than_in_narrow_jaws_and_is_a_yes() -> None:
    three, soft = ThreeJaw().offer(thin_ring(), TABLES)[0].grip, first(thin_ring()).grip
    assert three is not None
    assert likely(soft.springs) < 0.2 * likely(three.springs)
    assert planned.plan(thin_ring(), use="soft-jaws").verdict is Verdict.YES


def test_a_hand_pulls_lighter_on_a_ring_and_firmly_on_a_hub() -> None:
    assert "Lightly" in first(thin_ring()).mount[1].text
    assert "Lightly" not in first(hubbed()).mount[1].text


def test_a_wider_tolerance_lets_the_hand_pull_harder_up_to_firm() -> None:
    def torque(tolerance: float) -> float:
        job = thin_ring(0.012)
        finished = Finished(0.124, tolerance)
        return likely(first(replace(job, work=replace(job.work, finished=finished))).grip.torque)

    found = [torque(t) for t in (0.005e-3, 0.02e-3, 0.05e-3, 5e-3, 10e-3)]
    assert found == sorted(found)
    assert found[1] > found[0]
    assert found[-1] == pytest.approx(3 * 5000 * 0.18 * 0.050, rel=1e-9)  # firm, and no firmer


def test_they_are_made_where_there_are_none_and_used_where_there_are() -> None:
    job = thin_ring()
    assert [n.have for n in first(job).needs if "soft" in n.what] == [Have.MAKE]
    own = replace(job, shelf=replace(job.shelf, holding=(OwnHolding("soft jaws"),)))
    assert first(own).making == 0


def test_what_they_cannot_hold() -> None:
    assert "worn oval" in first(worn(hubbed())).cannot
    assert "Nothing to grip" in first(with_bore(thin_ring(), bored("reamed", 0.016))).cannot


def test_they_repeat_truer_than_a_scroll() -> None:
    scroll = ThreeJaw().offer(thin_ring(), TABLES)[0].grip
    assert scroll is not None
    assert likely(first(thin_ring()).grip.runout) < 0.5 * likely(scroll.runout)
