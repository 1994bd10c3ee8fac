"""The fastest setting within all limits: against trying everything, and what tightening does to it."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from borewright.job.records import Machine
from borewright.planning.passes.least_time import least_time
from borewright.planning.passes.limit import Limit
from borewright.planning.passes.setting import Run, Setting, settings_of

SPEEDS = st.lists(st.floats(0.5, 30.0), min_size=1, max_size=5, unique=True)
FEEDS = st.lists(st.floats(0.02e-3, 0.6e-3), min_size=1, max_size=5, unique=True)
RUNS = st.builds(
    Run,
    stock=st.floats(0.1e-3, 4e-3),
    length=st.floats(5e-3, 0.1),
    begins=st.floats(0.02, 0.3),
    deepest=st.floats(0.2e-3, 1.5e-3),
    usual_feed=st.floats(0.05e-3, 0.4e-3),
    surface=st.floats(0.2, 3.0),
    between=st.floats(0.0, 30.0),
    once=st.booleans(),
)
LOADS = st.lists(
    st.tuples(st.floats(0.1, 3.0), st.floats(0.3, 1.5), st.floats(0.3, 1.5)), max_size=3
)
FINE = st.floats(0.3, 3.0)


def limits(loads: list[tuple[float, float, float]], fine: float, tight: float = 1.0) -> list[Limit]:
    """Some that fall with load, as slip does, and one that falls with a finer feed, as rubbing does."""

    def by_load(strength: float, deep: float, coarse: float) -> Limit:
        def share(s: Setting) -> float:
            return strength / tight / ((s.deepest / 0.5e-3) ** deep * (s.feed / 0.1e-3) ** coarse)

        return Limit(f"load-{strength}-{deep}-{coarse}", share, by_load=True)

    rub = Limit("rub", lambda s: fine / tight * s.feed / 0.1e-3)
    pull = Limit("pull", lambda s: 20.0 / tight / s.spindle / (s.deepest / 0.5e-3))
    return [rub, *(by_load(*one) for one in loads), pull]


def tried_all(run: Run, machine: Machine, asked: list[Limit]) -> float:
    """Least time (s) of every depth, feed and speed there is; infinite where none is within limits."""
    times = []
    passes = [1] if run.once else range(1, 120)
    most = run.surface / (math.pi * run.begins)
    speeds = [s for s in machine.speeds if s <= most * (1 + 1e-9)] or [min(machine.speeds)]
    feeds = [f for f in machine.feeds if f <= 1.06 * run.usual_feed] or [min(machine.feeds)]
    fewest = max(1, math.ceil(round(run.stock / run.deepest, 6)))
    counts = set(range(fewest, fewest + 9))
    n = fewest + 8
    while n < 4 * fewest:  # then a tenth more each time
        n += 1 + max(1, n // 10)
        counts |= {n} if n <= 4 * fewest else set()
    for n in passes:
        if not run.once and n not in counts:
            continue
        ways = [(run.stock / n,) * n]
        for depths in ways:
            for feed in feeds:
                for speed in speeds:
                    time = n * (run.length / feed / speed + run.between)
                    one = Setting(depths, feed, speed, time)
                    if all(limit.share(one) >= 1 for limit in asked):
                        times.append(time)
    return min(times, default=math.inf)


@settings(max_examples=300, deadline=None)
@given(RUNS, SPEEDS, FEEDS, LOADS, FINE)
def test_it_is_what_trying_everything_finds(
    run: Run, speeds: list[float], feeds: list[float], loads: list, fine: float
) -> None:
    machine = Machine(speeds=tuple(speeds), feeds=tuple(feeds))
    asked = limits(loads, fine)
    found = least_time(settings_of(run, machine), asked)
    best = tried_all(run, machine, asked)
    if math.isinf(best):
        assert found.blocked
        assert found.share < 1
    else:
        assert not found.blocked
        assert found.setting.seconds == pytest.approx(best, rel=1e-9)
        assert sum(found.setting.depths) == pytest.approx(run.stock, rel=1e-9)


@settings(max_examples=200, deadline=None)
@given(RUNS, SPEEDS, FEEDS, LOADS, FINE, st.floats(1.0, 2.0))
def test_the_time_never_falls_when_a_limit_is_tightened(
    run: Run, speeds: list[float], feeds: list[float], loads: list, fine: float, tight: float
) -> None:
    machine = Machine(speeds=tuple(speeds), feeds=tuple(feeds))
    known = settings_of(run, machine)
    loose, narrow = (least_time(known, limits(loads, fine, t)) for t in (1.0, tight))
    if not narrow.blocked:
        assert not loose.blocked
        assert narrow.setting.seconds >= loose.setting.seconds - 1e-9


def test_what_stops_the_next_faster_one_is_named() -> None:
    run = Run(1e-3, 0.05, 0.05, 1e-3, 0.2e-3, 1.0, 0.0)
    machine = Machine(speeds=(2.0, 4.0), feeds=(0.1e-3, 0.2e-3))
    known = settings_of(run, machine)
    free = least_time(known, [])
    assert (free.limit, free.refused) == ("", None)
    assert (len(free.setting.depths), free.setting.feed, free.setting.spindle) == (1, 0.2e-3, 4.0)
    slip = Limit("slip", lambda s: 0.15e-3 / s.feed, by_load=True)
    held = least_time(known, [slip])
    assert held.limit == "slip"
    assert held.setting.feed == 0.1e-3
    assert held.refused is not None
    assert held.refused.feed == 0.2e-3


def test_where_nothing_is_within_limits_the_nearest_is_taken_and_the_worst_named() -> None:
    run = Run(1e-3, 0.05, 0.05, 1e-3, 0.2e-3, 1.0, 0.0, once=True)
    machine = Machine(speeds=(2.0,), feeds=(0.1e-3, 0.2e-3))
    slip = Limit("slip", lambda s: 0.08e-3 / s.feed)
    found = least_time(settings_of(run, machine), [slip])
    assert found.blocked == "slip"
    assert found.share == pytest.approx(0.8)
    assert found.setting.feed == 0.1e-3
