"""What a person sees of the heat: the size to read warm, waits in words, temperature against time."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.heat_jobs import everyday, hotter, loose_after_heat, trial_named
from tests.jobs_made import wheel_job
from tests.on_a_mandrel import plan
from tests.unit.test_planning_choices import trial_of

from borewright.answer.schedule import Schedule, Taken
from borewright.mechanics.spread import likely
from borewright.planning.heating.bursts import bursts_of
from borewright.planning.heating.heat_chart import heat_chart
from borewright.planning.heating.heat_run import heat_run
from borewright.planning.heating.heat_words import minutes
from borewright.planning.heating.in_schedule import with_heat
from borewright.planning.heating.waits import taken_heat, waited
from borewright.planning.heating.warm_size import warm_size
from borewright.reference.library import Tables

TABLES = Tables()


@pytest.mark.parametrize(
    ("seconds", "said"),
    [(30, "half a minute"), (60, "a minute"), (90, "a minute and a half"), (120, "2 minutes"),
     (150, "3 minutes"), (3600, "60 minutes")],
)  # fmt: skip
def test_waits_are_said_as_a_person_says_them_and_never_shorter(seconds: int, said: str) -> None:
    assert minutes(seconds) == said


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
    rounding = 1e-12  # one sum by many cases, the other by one
    at = np.interp(low.x, grip.x, grip.y)
    assert all(p <= g + rounding for p, g in zip(low.y, at, strict=True))


def test_the_grip_on_the_chart_is_the_joint_s_own_between_its_few_places() -> None:
    """Thirteen places are joined by straight lines: within a thousandth of the joint's own curve."""
    trial = trial_named("aluminium")
    bursts = hotter(bursts_of(trial), 6.0, 0)
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


# The schedule


def schedule_of(name: str) -> Schedule:
    cuts = trial_named(name).cuts
    return Schedule(tuple(Taken(c.id, 60.0, "slip", "said") for c in cuts), 60.0 * len(cuts))


@pytest.mark.parametrize("name", ["aluminium", "iron", "small"])
def test_a_schedule_is_filled_cut_by_cut(name: str) -> None:
    trial, bare = trial_named(name), schedule_of(name)
    filled = with_heat(trial, bare)
    for taken, heat in zip(filled.taken, taken_heat(trial), strict=True):
        assert (taken.cut, taken.limit, taken.seconds) == (heat.cut, "slip", 60.0)
        assert (taken.warm_before, taken.warm_after) == (heat.warm_before, heat.warm_after)
        assert (taken.grip_left, taken.wait) == (heat.grip_left, heat.wait)
    assert filled.seconds == bare.seconds + sum(t.wait for t in filled.taken)
    assert [c.id for c in filled.charts] == ["heat"]
    warm = warm_size(trial, waited(trial)[0])
    assert warm is not None
    if warm.reads - warm.cold < 5e-6:  # not told apart at the lathe
        assert filled.target is None
    else:
        assert filled.target == (warm.reads, warm.warmth)


def test_a_schedule_of_other_cuts_is_refused() -> None:
    other = schedule_of("aluminium")
    with pytest.raises(ValueError, match="stands where"):
        with_heat(trial_named("aluminium"), replace(other, taken=other.taken[::-1]))
    with pytest.raises(ValueError, match="longer"):
        with_heat(trial_named("aluminium"), replace(other, taken=other.taken[:-1]))
