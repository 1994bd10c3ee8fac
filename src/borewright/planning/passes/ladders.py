"""Feeds finer, and speeds slower, than a lathe's own lists have: figures that can be said and set."""

from __future__ import annotations

from math import floor

from borewright.mechanics.turning import spindle_speed
from borewright.planning.passes.problem import Problem
from borewright.planning.passes.setting import feeds_of, speeds_of
from borewright.quantities.si import Metre, RevPerSecond

TWENTIETH = 10**0.05
"""Steps of R20 (ISO 3)."""

FINER, SLOWER = 18, 16
"""So many steps down are tried: to an eighth of the feed, a sixth of the speed (ours)."""

SAID: dict[str, Metre] = {"inch": 0.0254e-4, "mm": 1e-6}
"""Feeds are said to this (m a turn): a tenth of a thou, or a thousandth of a millimetre."""

A_TURN: RevPerSecond = 1 / 60
"""Speeds are said in whole turns a minute."""


def finer_feeds(problem: Problem) -> tuple[Metre, ...]:
    """Feeds below the finest that was tried, coarsest first, each as it is said."""
    finest = min(feeds_of(problem.run.usual_feed, problem.machine))
    step = SAID[problem.holding.job.units]
    return _down(finest, step, FINER)


def slower_speeds(problem: Problem) -> tuple[tuple[RevPerSecond, ...], RevPerSecond]:
    """Speeds below the slowest that was tried and no faster than wanted, and that slowest."""
    run = problem.run
    slowest = min(speeds_of(run.surface, run.begins, problem.machine))
    wanted = spindle_speed(run.surface, run.begins) * (1 + 1e-9)
    slower = _down(slowest, A_TURN, SLOWER)
    return tuple(s for s in slower if s <= wanted) or slower, slowest


def _down(most: float, step: float, count: int) -> tuple[float, ...]:
    """Whole numbers of steps below a value, about a twentieth of a decade apart."""
    wholes = (floor(most / TWENTIETH**k / step + 1e-6) for k in range(1, count + 1))
    return tuple(n * step for n in dict.fromkeys(wholes) if 0 < n * step < most * (1 - 1e-6))
