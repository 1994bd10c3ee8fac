"""Warm on, cold held, warm off: the fit against Lame by hand, and who cannot come off again."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from tests.held_ways import figures_of, grip_of, inputs_of
from tests.jobs_made import wheel_job

from borewright.answer.held import Held
from borewright.answer.records import Have
from borewright.holding.ways.warm_fit import WarmFit
from borewright.job import Job
from borewright.job.records import Finished
from borewright.job.tools import OwnHolding
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables

TABLES = Tables()
SAME = 1e-9
"""Sums written out again: rounding only."""

BORE, OUTSIDE, LENGTH = 0.016006, 0.063, 0.025


def held(job: Job) -> Held:
    (only,) = WarmFit().offer(job, TABLES)
    return only


def test_it_drops_on_and_comes_off_at_the_warmth_that_free_expansion_gives() -> None:
    found = figures_of(held(wheel_job()))
    on, off = found["warm_on"], found["warm_off"]
    work, steel = 23.1e-6, 11.5e-6  # wrought aluminium and mild steel, the table's likely rows
    given = inputs_of(on)
    bare = given["interference"] / (work * BORE)
    assert on.best == pytest.approx(bare + given["to spare"], rel=SAME)
    presses = inputs_of(off)["what presses"]
    assert off.best == pytest.approx(presses / ((work - steel) * BORE), rel=SAME)


def test_the_figures_shown_give_their_figure_by_the_rule_shown() -> None:
    found = figures_of(held(wheel_job()))
    on, off = inputs_of(found["warm_on"]), inputs_of(found["warm_off"])
    shown = on["interference"] / (on["expansion x bore (nm/K)"] * 1e-9) + on["to spare"]
    assert found["warm_on"].best == pytest.approx(shown, rel=SAME)
    shown = off["what presses"] / (off["expansion over the plug's x bore (nm/K)"] * 1e-9)
    assert found["warm_off"].best == pytest.approx(shown, rel=SAME)


def test_the_torque_is_that_of_a_shrink_fit_by_hand() -> None:
    """p = δ / (d C) with C of a thick ring on a solid shaft; T = mu p pi l d^2 / 2."""
    found = held(wheel_job())
    figures = figures_of(found)
    pressing = figures["pressing"].best
    of = TABLES.material_range
    work, v = of("al-6061-t6", "modulus").best, of("al-6061-t6", "poisson").best
    plug, w = of("steel-1018", "modulus").best, of("steel-1018", "poisson").best
    k2 = (BORE / OUTSIDE) ** 2
    per = ((1 + k2) / (1 - k2) + v) / work + (1 - w) / plug
    pressure = pressing / (BORE * per)
    friction = inputs_of(figures["fit_torque"])["slip friction"]
    torque = friction * pressure * math.pi * LENGTH * BORE**2 / 2
    assert likely(grip_of(found).torque) == pytest.approx(torque, rel=1e-6)


@pytest.mark.parametrize(
    "material", ["gray-iron-30", "steel-1018", "steel-4140-annealed", "stainless-416"]
)
def test_what_grows_no_more_than_steel_does_not_come_off_warm(material: str) -> None:
    found = held(wheel_job(material=material))
    assert found.grip is None
    assert "grow alike" in found.cannot


@pytest.mark.parametrize("material", ["al-6061-t6", "brass-c360", "bronze-sae-660"])
def test_aluminium_brass_and_bronze_go_on_and_off_below_the_limit(material: str) -> None:
    found = held(wheel_job(material=material))
    limit = TABLES.allowance("warm_limit").best - 293.15
    figures = figures_of(found)
    assert figures["warm_on"].best <= limit * (1 + SAME)
    assert figures["warm_off"].best <= limit
    assert found.effort is not None
    assert found.effort.margin >= 1


@pytest.mark.parametrize("material", ["ptfe", "hardwood-maple"])
def test_warmth_spoils_plastic_and_wood(material: str) -> None:
    assert "Warmth spoils" in held(wheel_job(material=material)).cannot


def test_a_thin_ring_is_given_no_more_interference_than_its_size_bears() -> None:
    def ring(tolerance: float) -> Job:
        job = wheel_job(bore=0.030, outside=0.036)
        return replace(job, work=replace(job.work, finished=Finished(tolerance=tolerance)))

    close, open_ = (figures_of(held(ring(t)))["warm_off"].best for t in (8e-6, 1.0))
    assert close < open_
    assert likely(grip_of(held(ring(8e-6))).springs) <= 4.1e-6


def test_a_bore_read_coarsely_is_a_doubt() -> None:
    fine, coarse = (held(wheel_job(uncertainty=u)).fit for u in (1e-6, 15e-6))
    assert fine is not None
    assert coarse is not None
    assert coarse.margin < 1 < fine.margin


def test_half_of_the_hold_is_gone_when_the_bore_has_grown_by_half_the_interference() -> None:
    found = held(wheel_job())
    pressing = figures_of(found)["pressing"].best
    by_hand = pressing / 2 / (23.1e-6 * BORE)
    assert likely(grip_of(found).half_warm) == pytest.approx(by_hand, rel=1e-6)


def test_an_oven_is_bought_unless_owned() -> None:
    assert [n.have for n in held(wheel_job()).to_buy] == [Have.BUY]
    job = wheel_job()
    owned = replace(job, shelf=replace(job.shelf, holding=(OwnHolding("toaster oven"),)))
    assert not held(owned).to_buy


def test_no_drawn_case_is_without_any_grip_at_all() -> None:
    """A bore read so coarsely that in some cases nothing presses still gives numbers."""
    grip = grip_of(held(wheel_job(uncertainty=20e-6)))
    assert np.all(grip.torque > 0)
    assert grip.torque.min() < 1e-3
