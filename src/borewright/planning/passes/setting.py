"""What the lathe can be set to for one run of cuts, and how long that takes.

A run takes metal off in passes at one feed and one speed. A dial sets any depth, so the number of
passes is what is chosen; feeds and speeds come from the lathe's own lists. Where a list is not
stated, steps of a tenth of a decade stand in (R10 of ISO 3).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from borewright.cutting.base import NEAR_FEED, spindle_for
from borewright.job.records import Machine
from borewright.mechanics.turning import spindle_speed
from borewright.quantities.si import Metre, MetrePerSecond, RevPerSecond, Second

MORE_PASSES, TIMES = 8, 4
"""So many passes more than the fewest are tried one by one, then in steps of a tenth up to so many
times the fewest (ours)."""

TENTH_OF_A_DECADE = 10**0.1

SLOWER, FINER = 6, 9
"""Slower speeds, and finer feeds, that stand in for a list that is not stated (ours)."""


@dataclass(frozen=True, slots=True)
class Setting:
    """Depths of the passes in order (m), feed (m a turn), turns a second, and the time in all."""

    depths: tuple[Metre, ...]
    feed: Metre
    spindle: RevPerSecond
    seconds: Second

    @property
    def deepest(self) -> Metre:
        return max(self.depths)


@dataclass(frozen=True, slots=True)
class Run:
    """Metal to come off in one go: `stock` (m) across, over a `length` (m) of path, from `begins`.

    `deepest`: the deepest pass ever set.
    `usual_feed`: the coarsest feed ever set; `surface`: the speed wanted. `between`: seconds that a
    pass costs beside cutting. `least`: no pass is lighter, but where one is all there is. `once`: it
    is one pass whatever the depth. `bears`: depth times feed (m²) that a tool usually
    bears in this metal; `usually`: the deepest pass of habit, where `deepest` is bolder;
    `coarser`: the next feed above the coarsest may be set too, where the other limits bear it.
    """

    stock: Metre
    length: Metre
    begins: Metre
    deepest: Metre
    usual_feed: Metre
    surface: MetrePerSecond
    between: Second
    once: bool = False
    least: Metre = 0.0
    bears: float = math.inf
    usually: Metre = math.inf
    coarser: bool = False


def settings_of(run: Run, machine: Machine) -> list[Setting]:
    """Everything that can be set, fastest first; among equals the fewest passes, then lighter feed."""
    found = [
        Setting(depths, feed, spindle, _seconds(run, len(depths), feed, spindle))
        for depths in _depths(run)
        for feed in feeds_of(run.usual_feed, machine, coarser=run.coarser)
        for spindle in speeds_of(run.surface, run.begins, machine)
    ]
    return sorted(found, key=lambda s: (round(s.seconds, 9), len(s.depths), s.feed, s.spindle))


def size_of(run: Run, machine: Machine) -> int:
    """How many there are of them."""
    feeds = feeds_of(run.usual_feed, machine, coarser=run.coarser)
    speeds = speeds_of(run.surface, run.begins, machine)
    return sum(1 for _ in _depths(run)) * len(feeds) * len(speeds)


def most_passes(run: Run) -> int:
    """The most passes that are tried."""
    return max(len(depths) for depths in _depths(run))


def easiest_of(run: Run, machine: Machine) -> Setting:
    """The lightest, finest and slowest of them."""
    depths = min(_depths(run), key=max)
    feed = min(feeds_of(run.usual_feed, machine, coarser=run.coarser))
    spindle = min(speeds_of(run.surface, run.begins, machine))
    return Setting(depths, feed, spindle, _seconds(run, len(depths), feed, spindle))


def _seconds(run: Run, passes: int, feed: Metre, spindle: RevPerSecond) -> Second:
    return passes * (run.length / (feed * spindle) + run.between)


def _depths(run: Run) -> Iterator[tuple[Metre, ...]]:
    """Equal passes."""
    if run.once:
        yield (run.stock,)
        return
    fewest = max(1, math.ceil(round(run.stock / run.deepest, 6)))
    for number in pass_counts(
        fewest, math.ceil(round(run.stock / min(run.usually, run.deepest), 6))
    ):
        even = run.stock / number
        if even < run.least * (1 - 1e-6) and number > fewest:
            return
        yield (even,) * number


def pass_counts(fewest: int, usual: int) -> list[int]:
    """Numbers of passes that are tried: from the fewest to eight more than are usual, then in steps.

    A bolder cut only ever adds some.

    >>> pass_counts(1, 1)[-1], pass_counts(10, 10)[7:]
    (9, [17, 18, 20, 23, 26, 29, 32, 36, 40])
    >>> set(pass_counts(10, 10)) < set(pass_counts(5, 10))
    True
    """
    counts = list(range(fewest, usual + MORE_PASSES + 1))
    while counts[-1] < TIMES * usual:
        counts.append(counts[-1] + max(1, counts[-1] // 10) + 1)
    return [n for n in counts if n <= max(TIMES * usual, usual + MORE_PASSES)]


def feeds_of(usual: Metre, machine: Machine, *, coarser: bool = False) -> tuple[Metre, ...]:
    """The lathe's feeds up to the usual one, its finest where all are coarser; coarsest first.

    `coarser`: and the next above it, so that a finer feed more never takes one away.
    """
    if machine.feeds:
        known = sorted((f for f in machine.feeds if f <= usual * NEAR_FEED), reverse=True)
        above = min((f for f in machine.feeds if f > usual * NEAR_FEED), default=None)
        if above is not None and (coarser or not known):
            known = [above, *known]
        return tuple(known)
    return tuple(usual / TENTH_OF_A_DECADE**k for k in range(FINER))


def speeds_of(
    surface: MetrePerSecond, diameter: Metre, machine: Machine
) -> tuple[RevPerSecond, ...]:
    """The lathe's speeds up to the wanted one, its slowest where all are faster; fastest first."""
    if machine.speeds:
        most = spindle_speed(surface, diameter) * (1 + 1e-9)
        known = sorted((s for s in machine.speeds if s <= most), reverse=True)
        return tuple(known) or (min(machine.speeds),)
    steps = (surface / TENTH_OF_A_DECADE**k for k in range(SLOWER))
    return tuple(dict.fromkeys(spindle_for(s, diameter, machine) for s in steps))
