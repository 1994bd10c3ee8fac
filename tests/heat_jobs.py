"""Jobs that warm up, in SI; invented: a wheel of aluminium and of iron, and a small one roughed hard."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import numpy as np
from tests.jobs_made import turning, wheel_job
from tests.unit.test_planning_choices import trial_of

from borewright.job.records import Finished, Job
from borewright.planning.heating.bursts import Burst, bursts_of
from borewright.planning.heating.waits import TakenHeat, taken_heat
from borewright.planning.taper.trial import Trial


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


def hotter(bursts: tuple[Burst, ...], times: float, only: int | None = None) -> list[Burst]:
    """The same cuts with so many times the heat, all of them or one; what they ask as it was."""
    return [
        replace(b, watts=b.watts * times) if only in (None, n) else b for n, b in enumerate(bursts)
    ]


def roughing(trial: Trial) -> Burst:
    """The cut that asks most of the grip and warms it most."""
    return next(b for b in bursts_of(trial) if b.cut.id == "rough")


def loose_after_heat() -> tuple[Trial, list[Burst], tuple[TakenHeat, ...]]:
    """Cuts as hard as the roughing, each of which holds from cold and not right after another."""
    trial = trial_named("aluminium")
    first = roughing(trial)
    one = replace(first, cut=replace(first.cut, passes=1))
    for times in np.linspace(1.0, 12.0, 60):
        bursts = [replace(one, watts=one.watts * float(times))] * 3
        taken = taken_heat(trial, bursts)
        if taken[1].wait and not taken[1].mend:
            return trial, bursts, taken
    raise AssertionError("no such heat")
