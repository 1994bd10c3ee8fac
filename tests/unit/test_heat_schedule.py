"""Heat through all cuts: more heat loosens, waiting and coolant tighten, and waits are the shortest."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan
from tests.unit.test_planning_choices import trial_of

from borewright.answer.records import Cut, Question, Verdict
from borewright.holding.registry import WAYS
from borewright.job.records import CutWish, Finished, Job
from borewright.mechanics.spread import likely, low_end
from borewright.planning.heating.bursts import Burst, bursts_of, stretches
from borewright.planning.heating.heat_chart import heat_chart
from borewright.planning.heating.heat_run import HeatRun, heat_run, heater_of
from borewright.planning.heating.heat_words import minutes, wait_sentences
from borewright.planning.heating.loosened import COOL_BARS, loosened
from borewright.planning.heating.waits import STEP, Mend, TakenHeat, taken_heat, waited
from borewright.planning.heating.warm_size import warm_size
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.margins import slip_margins
from borewright.reference.library import Tables

TABLES = Tables()

ROUNDING = 1e-9
"""Shares of a grip: sums of a dozen terms in double figures."""


def everyday() -> Job:
    """The wheel with its outside to size: rough, both faces, finish."""
    job = wheel_job()
    return replace(job, work=replace(job.work, finished=Finished(0.060)))


def iron() -> Job:
    job = everyday()
    return replace(job, work=replace(job.work, material="gray-iron-30"))


def small() -> Job:
    """Little metal to take the heat: a bush roughed hard."""
    job = wheel_job(outside=0.026, cuts=turning(0.6e-3, 0.15e-3))
    return replace(job, work=replace(job.work, finished=Finished(0.0224)))


TRIALS: dict[str, Callable[[], Job]] = {"aluminium": everyday, "iron": iron, "small": small}


@cache
def trial_named(name: str) -> Trial:
    return trial_of(TRIALS[name]())


NAMED = st.sampled_from(sorted(TRIALS))


def hotter(bursts: tuple[Burst, ...], times: float, only: int | None = None) -> list[Burst]:
    """The same cuts with so many times the heat, all of them or one; what they ask as it was."""
    return [
        replace(b, watts=b.watts * times) if only in (None, n) else b for n, b in enumerate(bursts)
    ]


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


def hot(times: float = 6.0) -> tuple[Trial, list[Burst]]:
    """A first cut that warms the wheel far more than the others."""
    trial = trial_named("aluminium")
    return trial, hotter(bursts_of(trial), times, 0)


def loose_after_heat() -> tuple[Trial, list[Burst], tuple[TakenHeat, ...]]:
    """Cuts as hard as the first, each of which holds from cold and not right after another."""
    trial = trial_named("aluminium")
    first = bursts_of(trial)[0]
    one = replace(first, cut=replace(first.cut, passes=1))
    for times in np.linspace(1.0, 12.0, 60):
        bursts = [replace(one, watts=one.watts * float(times))] * 3
        taken = taken_heat(trial, bursts)
        if taken[1].wait and not taken[1].mend:
            return trial, bursts, taken
    raise AssertionError("no such heat")


def test_the_wait_is_the_shortest_that_keeps_the_reserve() -> None:
    trial, bursts, taken = loose_after_heat()
    wait = taken[1].wait
    assert wait % STEP == 0

    def verdict(seconds: float) -> Verdict:
        run = heat_run(trial, bursts[:2], (0.0, seconds))
        slip = run.cuts[1].slip
        return judge("slip", likely(slip), low_end(slip), TABLES)

    assert verdict(wait) is Verdict.YES
    assert verdict(wait - STEP) is not Verdict.YES
    assert judge("slip", *taken[1].margin, TABLES) is Verdict.YES


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
    burst = bursts_of(trial)[0]
    d = burst.demand
    heavy = replace(d, torque=d.torque * 50, tangential=d.tangential * 50)
    (said,) = taken_heat(trial, [replace(burst, demand=heavy)])
    assert (said.wait, said.mend) == (0.0, Mend.NONE)
    assert said.margin[0] < 1


def mends(passes: int, times: float, coolant: bool = False) -> TakenHeat:
    trial = trial_named("aluminium")
    first = bursts_of(trial)[0]
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


def test_the_wait_between_passes_is_enough_for_the_last_and_half_a_minute_less_is_not() -> None:
    trial = trial_named("aluminium")
    first = bursts_of(trial)[0]
    taken = mends(passes=4, times=1.5)
    one = replace(first, cut=replace(first.cut, passes=1), watts=first.watts * 1.5)
    pause = heater_of(trial).pause

    def last(between: float) -> Verdict:
        slip = heat_run(trial, [one] * 4, [0.0] + [between - pause] * 3).cuts[-1].slip
        return judge("slip", likely(slip), low_end(slip), TABLES)

    assert taken.between > pause
    assert last(taken.between) is Verdict.YES
    assert last(taken.between - STEP) is not Verdict.YES


@pytest.mark.parametrize(
    ("seconds", "said"),
    [(30, "half a minute"), (60, "a minute"), (90, "a minute and a half"), (120, "2 minutes"),
     (150, "3 minutes"), (3600, "60 minutes")],
)  # fmt: skip
def test_waits_are_said_as_a_person_says_them_and_never_shorter(seconds: int, said: str) -> None:
    assert minutes(seconds) == said


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


# Read warm


def test_the_size_to_read_warm_is_cold_again_at_twenty_degrees() -> None:
    trial = trial_named("aluminium")
    run = heat_run(trial)
    target = warm_size(trial, run)
    assert target is not None
    assert target.warmth == pytest.approx(likely(run.cuts[-1].after[0]))
    assert target.cold == 0.060
    assert target.reads / (1 + 23.1e-6 * target.warmth) == pytest.approx(0.060, rel=1e-12)
    assert target.cold < target.reads < target.high


def test_without_a_finished_size_there_is_nothing_to_read() -> None:
    trial = trial_of(wheel_job())
    assert warm_size(trial, heat_run(trial)) is None


def test_every_hold_says_what_to_read_warm() -> None:
    job = everyday()
    for use in ("plain-taper", "nut-mandrel"):
        figures = plan(job, use=use, source_tables=TABLES).figures
        (reading,) = [f for f in figures if f.name == "warm_reading"]
        assert reading.high is not None
        assert 0.060 < reading.best <= reading.high


# The chart


def test_the_chart_begins_cold_and_ends_as_the_run_does() -> None:
    trial = trial_named("aluminium")
    run = heat_run(trial)
    chart = heat_chart(run)
    work, mandrel, poor = chart.lines
    grip, low = chart.second
    assert (work.y[0], mandrel.y[0], grip.y[0], low.y[0]) == pytest.approx((0, 0, 1, 1))
    last = run.cuts[-1]
    assert work.x[-1] == pytest.approx(run.seconds)
    assert (work.y[-1], mandrel.y[-1]) == pytest.approx(tuple(last.after[:, 0]))
    assert list(work.x) == sorted(work.x)
    assert poor.dashed
    assert all(p >= w for p, w in zip(poor.y, np.interp(poor.x, work.x, work.y), strict=True))
    assert all(p <= g for p, g in zip(low.y, np.interp(low.x, grip.x, grip.y), strict=True))


def test_the_grip_on_the_chart_is_the_joint_s_own_between_its_few_places() -> None:
    """Thirteen places are joined by straight lines: within a thousandth of the joint's own curve."""
    trial, bursts = hot()
    run = heat_run(trial, bursts)
    hold = run.heater.hold
    counts = np.linspace(0.0, float(likely(run.cuts[0].worst)), 29)
    direct = [likely(hold.share(np.full(257, c))) for c in counts]
    assert hold.likely_shares(counts) == pytest.approx(np.array(direct), abs=1e-3)


def test_cuts_and_waits_are_marked_where_they_begin() -> None:
    trial, bursts, taken = loose_after_heat()
    run, _ = waited(trial, bursts)
    chart = heat_chart(run, lambda cut: cut.id)
    waits = [m for m in chart.marks if m.band is not None]
    begins = [m.x for m in chart.marks if m.band is None]
    assert begins == pytest.approx([c.begins for c in run.cuts])
    assert len(waits) == sum(1 for t in taken if t.wait)
    for mark, cut in zip(waits, [c for c in run.cuts if c.wait], strict=True):
        assert mark.band == pytest.approx(cut.begins)
        assert mark.band - mark.x == pytest.approx(cut.wait)


# Other holds


def test_every_way_knows_whether_its_bar_is_taken_as_cool() -> None:
    assert set(WAYS) >= COOL_BARS
