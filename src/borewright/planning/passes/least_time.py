"""The fastest setting within all limits, and what keeps it from being faster.

Settings are tried from the fastest on: the first within all limits takes the least time of all there
are. A limit that only falls with depth and feed is asked by halving: at each depth there is one
coarsest feed within it.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from borewright.planning.passes.limit import Limit
from borewright.planning.passes.problem import Problem
from borewright.planning.passes.setting import Setting
from borewright.quantities.si import Metre, Ratio, Second


@dataclass(frozen=True, slots=True)
class Found:
    """The setting taken. `limit`: what stops the next faster one, "" where it is the fastest there is.

    `refused`: that faster one, with its share. `blocked`: the limit that nothing meets; the setting
    is then the one that comes nearest to all of them, with its `share` of the worst. `problem`: what
    it was found for, where that is known. `floor`: seconds that no hold goes under: of the fastest
    setting within the limits that no hold has a say in; 0 where that was not asked.
    """

    setting: Setting
    limit: str = ""
    refused: Setting | None = None
    refused_share: Ratio = 1.0
    blocked: str = ""
    share: Ratio = 1.0
    problem: Problem | None = field(default=None, compare=False, repr=False)
    floor: Second = 0.0


def solved(problem: Problem) -> Found:
    """The fastest setting of a problem within all of its limits, or the nearest."""
    return replace(least_time(problem.settings, problem.limits), problem=problem)


def unblocked(problem: Problem) -> Found | None:
    """The same; None, sooner known than which is nearest, where none is within."""
    found = _first(problem.settings, problem.limits)
    return None if found is None else replace(found, problem=problem)


def least_time(settings: Sequence[Setting], limits: Sequence[Limit]) -> Found:
    """The first of `settings`, fastest first, within all `limits`; the nearest where none is."""
    return _first(settings, limits) or _nearest(settings, limits)


def _first(settings: Sequence[Setting], limits: Sequence[Limit]) -> Found | None:
    load = _Load([m for m in limits if m.by_load], sorted({s.feed for s in settings}))
    first = next((k for k, m in enumerate(limits) if m.by_load), len(limits))
    before, after = limits[:first], [m for m in limits[first:] if not m.by_load]
    refused: list[Setting] = []
    floor: Second | None = None
    for setting in settings:
        if _within(setting, before):
            floor = setting.seconds if floor is None else floor
            if load.within(setting) and _within(setting, after):
                return replace(_found(setting, refused, limits), floor=floor)
        refused.append(setting)
    return None


def _within(setting: Setting, limits: Sequence[Limit]) -> bool:
    return all(limit.share(setting) >= 1 for limit in limits)


class _Load:
    """Limits that fall with depth and feed, together: at each depth the coarsest feed within them."""

    def __init__(self, limits: Sequence[Limit], feeds: Sequence[Metre]) -> None:
        self._limits, self._feeds = limits, feeds
        self._within: dict[Metre, int] = {}

    def within(self, setting: Setting) -> bool:
        if not self._limits:
            return True
        return bisect_left(self._feeds, setting.feed) < self._known(setting)

    def _known(self, setting: Setting) -> int:
        """How many of the feeds, finest first, are within at this depth."""
        depth = setting.deepest
        if depth not in self._within:
            most = min((n for d, n in self._within.items() if d <= depth), default=len(self._feeds))
            least = max((n for d, n in self._within.items() if d >= depth), default=0)
            self._within[depth] = bisect_left(
                range(most), True, least, most, key=lambda k: not self._holds(setting, k)
            )
        return self._within[depth]

    def _holds(self, setting: Setting, feed: int) -> bool:
        return _within(replace(setting, feed=self._feeds[feed]), self._limits)


def _found(setting: Setting, refused: list[Setting], limits: Sequence[Limit]) -> Found:
    """With what stops the next one that is truly faster."""
    faster = (s for s in reversed(refused) if s.seconds < setting.seconds * (1 - ALIKE))
    other = next(faster, None)
    if other is None:
        return Found(setting)
    share, name = next((x, m.id) for m in limits if (x := m.share(other)) < 1)
    return Found(setting, name, other, share)


ALIKE = 1e-6
"""Times this near each other, as a share, are one."""


FEW = 6
"""So many feeds, spread over all, are looked at where nothing is within limits."""


def _nearest(settings: Sequence[Setting], limits: Sequence[Limit]) -> Found:
    """Of the slowest settings the one whose worst share is the largest; the fastest of equals."""
    feeds = sorted({s.feed for s in settings})
    some = set(feeds[:: max(1, len(feeds) // FEW)]) | {feeds[-1]}
    slowest = min(s.spindle for s in settings)
    looked = [s for s in settings if s.spindle == slowest and s.feed in some]
    worst = [min((limit.share(s), limit.id) for limit in limits) for s in looked]
    k = max(range(len(looked)), key=lambda i: (round(worst[i][0], 9), -i))
    share, name = worst[k]
    alike = [s for s in settings if (s.depths, s.feed) == (looked[k].depths, looked[k].feed)]
    quick = (s for s in alike if min(m.share(s) for m in limits) >= share * (1 - 1e-9))
    return Found(next(quick, looked[k]), blocked=name, share=share)
