"""Warmth on holds of other ways: the grip goes in step with it, and what cannot loosen does not."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.heat_jobs import everyday
from tests.jobs_made import wheel_job

from borewright.answer.held import Held
from borewright.holding.registry import WAYS
from borewright.job.records import Job
from borewright.mechanics.spread import likely
from borewright.planning.heating.heat_run import heat_run
from borewright.planning.heating.loosened import COOL_BARS, loosened
from borewright.planning.heating.waits import taken_heat
from borewright.planning.held.held_heat import ask_held_heat
from borewright.planning.held.held_trial import HeldTrial, make_held_trial
from borewright.planning.weighing.served import CutsByShare
from borewright.reference.library import Tables

TABLES = Tables()
SAME = 1e-12


def offered(way: str, job: Job) -> Held:
    return next(h for h in WAYS[way].offer(job, TABLES) if h.grip is not None)


def held(way: str, job: Job | None = None) -> HeldTrial:
    job = job or everyday()
    trial = make_held_trial(job, offered(way, job), TABLES, CutsByShare(job, TABLES))
    assert trial is not None
    return trial


def test_half_of_the_grip_is_gone_at_its_half_warm_and_all_of_it_at_twice_that() -> None:
    trial = held("bonded")
    hold = loosened(trial)
    for times, left in ((0.0, 1.0), (1.0, 0.5), (2.0, 0.0), (3.0, 0.0)):
        assert hold.share(times * trial.grip.half_warm) == pytest.approx(left, abs=SAME)
    half = likely(trial.grip.half_warm)
    assert hold.likely_shares(np.array([0.0, half / 2, half])) == pytest.approx([1, 0.75, 0.5])


def test_half_of_the_grip_carries_half_of_the_margin() -> None:
    trial = held("bonded")
    hold, demand = loosened(trial), trial.demands[0]
    whole = hold.slip(demand, np.ones(257))
    assert whole == pytest.approx(trial.grip.slip_margin(demand))
    assert hold.slip(demand, np.full(257, 0.5)) == pytest.approx(whole / 2)


def test_a_nut_s_grip_outlasts_any_warmth_and_its_thrust_stays_endless() -> None:
    trial = held("nut-mandrel")
    run = heat_run(trial)
    assert all(np.all(c.share == 1.0) for c in run.cuts)
    for said, demand in zip(taken_heat(trial), trial.demands, strict=True):
        assert said.grip_left == (1.0, 1.0)
        assert said.wait == 0
        assert said.margin[0] == pytest.approx(likely(trial.grip.slip_margin(demand)))
        assert said.warm_after > 0
    assert "takes nothing from this hold" in ask_held_heat(trial).reason


def test_a_grip_that_is_all_gone_still_stands_against_a_shoulder() -> None:
    trial = held("bonded")
    endless = np.full(257, np.inf)
    stopped = replace(trial, grip=replace(trial.grip, thrust_in=endless))
    margins = loosened(stopped).slip(trial.demands[0], np.zeros(257))
    assert not np.isnan(margins).any()
    assert likely(margins) < 1e-6


def test_a_cool_bar_gives_back_what_it_grows_and_a_bond_gets_nothing_back() -> None:
    """Aluminium 23.1, steel 11.5 ppm/K: Swyt, J. Res. NIST 99 (1994) 31."""
    assert loosened(held("expanding")).follows == pytest.approx(11.5 / 23.1)
    assert loosened(held("bonded")).follows == 0.0


def test_every_way_that_takes_its_bar_as_cool_is_a_way() -> None:
    assert set(WAYS) >= COOL_BARS


def test_a_heavier_cut_leaves_less_of_a_bond() -> None:
    trial = held("bonded")
    heavier = tuple(replace(d, power=d.power * 1.5) for d in trial.demands)
    before, after = taken_heat(trial), taken_heat(replace(trial, demands=heavier))
    for light, heavy in zip(before, after, strict=True):
        assert heavy.grip_left[0] <= light.grip_left[0]
        assert heavy.work_warm > light.work_warm or heavy.wait > light.wait


def test_a_hold_s_margin_is_never_better_than_that_of_its_hardest_cut_alone() -> None:
    from borewright.planning.held.held_trial import hardest
    from borewright.planning.weighing.warmed import warmth_after, work_body

    trial = held("expanding", wheel_job())
    cut, demand, _ = hardest(trial)
    alone = warmth_after(trial, cut, demand, work_body(trial))
    assert ask_held_heat(trial).margin <= likely(trial.grip.half_warm / alone) * (1 + SAME)
