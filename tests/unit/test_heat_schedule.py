"""Heat through all cuts: more heat loosens, waiting and coolant tighten, and waits are the shortest."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.heat_jobs import TRIALS, everyday, hotter, loose_after_heat, roughing, trial_named
from tests.on_a_mandrel import plan

from borewright.answer.records import Cut, Question
from borewright.job.records import CutWish, Finished, Job
from borewright.mechanics.spread import likely, low_end
from borewright.planning.heating.bursts import bursts_of, stretches
from borewright.planning.heating.heat_run import HeatRun, heat_run, heater_of
from borewright.planning.heating.heat_words import minutes, wait_sentences
from borewright.planning.heating.loosened import loosened
from borewright.planning.heating.waits import STEP, Mend, TakenHeat, taken_heat, waited
from borewright.planning.weighing.margins import slip_margins
from borewright.reference.library import Tables

TABLES = Tables()

ROUNDING = 1e-9
"""Shares of a grip: sums of a dozen terms in double figures."""


NAMED = st.sampled_from(sorted(TRIALS))


def shares(run: HeatRun) -> list[np.ndarray]:
    return [c.share for c in run.cuts]


# More heat, longer waits, more travel


@settings(max_examples=30, deadline=None)
@given(NAMED, st.floats(1.0, 6.0), st.floats(1.0, 3.0), st.integers(0, 3))
def test_more_power_never_leaves_more_grip_in_any_case(
    name: str, times: float, more: float, which: int
) -> None:
    trial = trial_named(name)
    bursts = bursts_of(trial)
    less = hotter(bursts, times)
    greater = hotter(tuple(less), more, which % len(less))
    for a, b in zip(shares(heat_run(trial, less)), shares(heat_run(trial, greater)), strict=True):
        assert np.all(b <= a + ROUNDING)


@settings(max_examples=30, deadline=None)
@given(NAMED, st.floats(1.0, 8.0), st.floats(0, 900), st.floats(0, 900), st.integers(1, 3))
def test_a_longer_wait_never_leaves_less_grip_at_the_end_of_the_next_cut(
    name: str, times: float, wait: float, longer: float, which: int
) -> None:
    trial = trial_named(name)
    bursts = hotter(bursts_of(trial), times)
    place = which % len(bursts)

    def after(seconds: float) -> np.ndarray:
        waits = [seconds if n == place else 0.0 for n in range(len(bursts))]
        return heat_run(trial, bursts, waits).cuts[place].share

    assert np.all(after(wait + longer) >= after(wait) - ROUNDING)


@settings(max_examples=20, deadline=None)
@given(NAMED, st.floats(0.0, 25.0), st.floats(0.01, 0.04), st.floats(0.0005, 0.012))
def test_more_travel_at_the_same_warmth_never_lowers_the_margin_against_slipping(
    name: str, warmth: float, travel: float, more: float
) -> None:
    trial = trial_named(name)

    def margins(at: float) -> np.ndarray:
        chosen = replace(trial.chosen, travel=at, grip=trial.hold.grip(at))
        hold = loosened(replace(trial, chosen=chosen))
        left = hold.share(np.full(257, warmth))
        return np.array([hold.slip(d, left) for d in trial.demands])

    assert np.all(margins(travel + more) >= margins(travel) * (1 - 1e-9))


@pytest.mark.parametrize("name", TRIALS)
def test_coolant_leaves_more_of_the_grip(name: str) -> None:
    trial = trial_named(name)
    wet = [replace(b, cut=replace(b.cut, coolant=True)) for b in bursts_of(trial)]
    for dry, flooded in zip(shares(heat_run(trial)), shares(heat_run(trial, wet)), strict=True):
        assert likely(flooded) >= likely(dry)
        assert low_end(flooded) >= low_end(dry)


@pytest.mark.parametrize("name", TRIALS)
def test_without_heat_nothing_is_lost_and_nothing_is_waited_for(name: str) -> None:
    trial = trial_named(name)
    cold = hotter(bursts_of(trial), 0.0)
    run = heat_run(trial, cold)
    assert all(np.allclose(c.share, 1.0) and not c.after.any() for c in run.cuts)
    assert all(t.wait == 0 and t.mend is Mend.NONE for t in taken_heat(trial, cold))


def test_cold_the_margin_is_that_of_the_push_on_grip() -> None:
    trial = trial_named("aluminium")
    hold = loosened(trial)
    pressed = replace(trial.grip, normal_force=trial.grip.pressed_force)
    for demand in trial.demands:
        assert hold.slip(demand, np.ones(257)) == pytest.approx(slip_margins(pressed, demand))


def test_the_worst_end_of_a_cut_is_what_counts() -> None:
    """After a hot cut the next, a cold one under coolant, is loosest at its beginning."""
    trial = trial_named("aluminium")
    first, second = bursts_of(trial)[:2]
    quiet = replace(
        second, watts=second.watts * 0.01, cut=replace(second.cut, coolant=True), seconds=400.0
    )
    heated = heat_run(trial, [replace(first, watts=first.watts * 5), quiet]).cuts[1]
    heater = heater_of(trial)
    assert heated.worst == pytest.approx(heater.counts(heated.before))
    assert likely(heated.worst) > likely(heater.counts(heated.after))


# Many passes


@pytest.mark.parametrize("name", TRIALS)
def test_many_passes_at_their_mean_power_end_as_warm_as_one_after_another(name: str) -> None:
    """Within a fiftieth of the likely warmth: only the pause before the last pass is smoothed."""
    trial = trial_named(name)
    burst = bursts_of(trial)[0]
    many = replace(burst, cut=replace(burst.cut, passes=9))
    heater = heater_of(trial)
    assert len(list(stretches(many))) < 9
    apart = heater.bodies.cold
    one = replace(burst, cut=replace(burst.cut, passes=1))
    for number in range(9):
        if number:
            apart = heater.stand(apart, burst.pause)
        apart = heater.cut(apart, one)
    together = heater.cut(heater.bodies.cold, many)
    assert likely(together[0]) == pytest.approx(likely(apart[0]), rel=0.02)
    assert sum(s.seconds for s in stretches(many)) == pytest.approx(many.whole)


# Waits


def test_the_wait_is_the_shortest_that_keeps_the_reserve() -> None:
    trial, bursts, taken = loose_after_heat()
    wait = taken[1].wait
    assert wait % STEP == 0

    def slip(seconds: float) -> tuple[float, float]:
        found = heat_run(trial, bursts[:2], (0.0, seconds)).cuts[1].slip
        return likely(found), low_end(found)

    assert kept(*slip(wait))
    assert not kept(*slip(wait - STEP))
    assert kept(*taken[1].margin)


def kept(best: float, low: float) -> bool:
    """Three quarters of what the slip question asks for a yes: 2 likely, 1 in the poor case."""
    return best >= 0.75 * 2 and low >= 0.75 * 1


def test_the_first_cut_is_never_waited_for() -> None:
    assert loose_after_heat()[2][0].wait == 0


def test_a_wait_is_said_in_a_sentence_of_its_own() -> None:
    trial, bursts, taken = loose_after_heat()
    (said,) = wait_sentences([b.cut for b in bursts], taken[1:2])
    assert said.startswith(f"Stand {minutes(taken[1].wait)} before you rough the outside")
    assert wait_sentences([b.cut for b in bursts], taken[:1]) == ()
    assert trial.show.units == "mm"


def test_a_cut_that_slips_cold_is_no_matter_of_heat() -> None:
    trial = trial_named("aluminium")
    burst = roughing(trial)
    d = burst.demand
    heavy = replace(d, torque=d.torque * 50, tangential=d.tangential * 50)
    (said,) = taken_heat(trial, [replace(burst, demand=heavy)])
    assert (said.wait, said.mend) == (0.0, Mend.NONE)
    assert said.margin[0] < 1


def mends(passes: int, times: float, coolant: bool = False) -> TakenHeat:
    trial = trial_named("aluminium")
    first = roughing(trial)
    cut = replace(first.cut, passes=passes, coolant=coolant)
    (said,) = taken_heat(trial, [replace(first, cut=cut, watts=first.watts * times)])
    return said


def test_several_passes_that_warm_it_loose_are_told_to_wait_between_them() -> None:
    said = mends(passes=4, times=1.5)
    assert (said.mend, said.wait) == (Mend.BETWEEN_PASSES, 0.0)
    (words,) = wait_sentences(bursts_cuts(), [said])
    assert words.startswith("To rough the outside: one pass after another warms it too loose")
    assert minutes(said.between) in words


def bursts_cuts() -> list[Cut]:
    return [b.cut for b in bursts_of(trial_named("aluminium"))]


def test_one_pass_that_warms_itself_loose_is_told_coolant_and_then_less_metal() -> None:
    assert mends(passes=1, times=9.0).mend is Mend.COOLANT
    assert mends(passes=1, times=9.0, coolant=True).mend is Mend.NONE
    assert mends(passes=1, times=4000.0).mend is Mend.LIGHTER
    for said in (mends(passes=1, times=9.0), mends(passes=1, times=4000.0)):
        (words,) = wait_sentences(bursts_cuts(), [said])
        assert "however long the wait" in words


def test_the_wait_between_passes_is_enough_for_the_last_and_a_minute_less_is_not() -> None:
    trial = trial_named("aluminium")
    first = roughing(trial)
    taken = mends(passes=4, times=1.5)
    one = replace(first, cut=replace(first.cut, passes=1), watts=first.watts * 1.5)
    pause = heater_of(trial).pause

    def last(between: float) -> bool:
        slip = heat_run(trial, [one] * 4, [0.0] + [between - pause] * 3).cuts[-1].slip
        return kept(likely(slip), low_end(slip))

    assert taken.between > 0
    assert last(taken.between)
    assert not last(taken.between - STEP)


def test_a_plan_with_waits_goes_through_them() -> None:
    trial, bursts, taken = loose_after_heat()
    run, _ = waited(trial, bursts)
    assert [c.wait for c in run.cuts] == [t.wait for t in taken]
    gaps = [b.begins - a.ends for a, b in zip(run.cuts, run.cuts[1:], strict=False)]
    pause = TABLES.allowance("cut_pause").best
    assert gaps == pytest.approx([t.wait + pause for t in taken[1:]])


# Everyday work


@pytest.mark.parametrize("name", ["aluminium", "iron"])
def test_everyday_cuts_need_no_wait(name: str) -> None:
    assert all(t.wait == 0 and not t.mend for t in taken_heat(trial_named(name)))


def heat(job: Job) -> Question:
    return next(q for q in plan(job, source_tables=TABLES).questions if q.id == "heat")


def test_a_hard_cut_after_others_is_weighed_in_its_place() -> None:
    """Twelve light passes warm the wheel, and then comes the hardest cut."""
    light, hard = CutWish("turn", 0.25e-3, 0.05e-3, 1.0), CutWish("turn", 0.5e-3, 0.1e-3, 1.0)
    job = everyday()
    one, all_ = (replace(job.work, finished=Finished(d)) for d in (0.062, 0.056))
    alone = heat(replace(job, work=one, cuts=(hard,)))
    after = heat(replace(job, work=all_, cuts=(light, hard)))
    assert after.reason.startswith("After the cuts before it, the hardest cut")
    assert after.margin < alone.margin
    assert alone.reason.startswith("The hardest cut leaves the work about")
