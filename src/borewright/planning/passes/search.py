"""The cheapest change with which a blocked cut is within all its limits: tried, not guessed.

Every mend is tried by itself; where none is enough, two at a time, those soonest set up first, until
so many settings are looked through. What counts is the time of the batch: setting up, once and for
each piece, and the cutting at the setting found. A mend whose setting up alone takes longer than the
two best found so far is not tried.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate, combinations

from borewright.planning.passes.least_time import Found, solved, unblocked
from borewright.planning.passes.mends import MENDS, Change, changes
from borewright.planning.passes.problem import Problem
from borewright.planning.passes.setting import easiest_of, size_of

WORK = 100_000
"""No more settings than this are looked through among pairs for one cut (ours): half a second."""

KEPT = 2
"""So many of the cheapest are named."""


@dataclass(frozen=True, slots=True, eq=False)
class Mended:
    """A change with the setting found. `cost`: minutes of the whole batch; `setting_up`: without the
    cutting."""

    change: Change
    found: Found
    setting_up: float
    cost: float


@dataclass(frozen=True, slots=True, eq=False)
class Searched:
    """`mended`: the cheapest that unblock, cheapest first. `nearest`: the single change that comes
    nearest where none does; None where there is nothing to change. `all_pairs`: none was left out."""

    mended: tuple[Mended, ...]
    nearest: Mended | None = None
    all_pairs: bool = True


def searched(problem: Problem) -> Searched:
    """What is cheapest of all that can be changed about a problem that nothing set meets."""
    singles = sorted(single_changes(problem), key=setting_up)
    best = _cheapest(singles)
    if best:
        return Searched(best)
    pairs = [c for c in sorted(_pairs(singles), key=setting_up) if _bears(c.problem)]
    some = _within_work(pairs)
    best = _cheapest(some)
    near = None if best else _nearest(singles)
    return Searched(best, near, len(some) == len(pairs))


def _within_work(pairs: list[Change]) -> list[Change]:
    """The first of them, as many as the bound lets through; one at least."""
    sizes = accumulate(size_of(c.problem.run, c.problem.machine) for c in pairs)
    return [
        c for n, (c, size) in enumerate(zip(pairs, sizes, strict=True)) if size <= WORK or n == 0
    ]


def single_changes(problem: Problem) -> Iterator[Change]:
    """Everything that one mend makes of a problem."""
    for mend in MENDS:
        yield from changes(mend, Change((), problem, ()))


def _pairs(singles: list[Change]) -> Iterator[Change]:
    for first, second in combinations(MENDS, 2):
        for change in singles:
            if change.mends == (first,):
                yield from changes(second, change)


def _cheapest(tried: list[Change]) -> tuple[Mended, ...]:
    """Those that are within all limits and cost least, each of another mend."""
    best: dict[tuple[str, ...], Mended] = {}
    for change in tried:
        least = sorted(m.cost for m in best.values())[:KEPT]
        if len(least) == KEPT and setting_up(change) >= least[-1]:
            break
        found = unblocked(change.problem)
        mended = None if found is None else _mended(change, found)
        if mended and (change.mends not in best or mended.cost < best[change.mends].cost):
            best[change.mends] = mended
    return tuple(sorted(best.values(), key=lambda m: m.cost)[:KEPT])


def _nearest(tried: list[Change]) -> Mended | None:
    """The one that comes nearest to all limits, the soonest set up of equals."""
    found = (_mended(change, solved(change.problem)) for change in tried)
    return max(found, key=lambda m: m.found.share, default=None)


def _mended(change: Change, found: Found) -> Mended:
    first, quantity = setting_up(change), change.problem.holding.job.work.quantity
    return Mended(change, found, first, first + quantity * found.setting.seconds / 60)


def setting_up(change: Change) -> float:
    """Minutes of the batch beside the cutting: once, for each piece, and making what is needed."""
    tables, quantity = change.problem.holding.tables, change.problem.holding.job.work.quantity
    rows = (tables.mend_minutes(mend).minutes for mend in change.mends)
    return change.making + sum(row.for_batch(quantity)[1] for row in rows)


def _bears(problem: Problem) -> bool:
    """Whether the lightest, finest and slowest that can be set is within every limit that falls with
    load, and within the lathe's power where that is one in all gears: where it is not, nothing is."""
    easiest = easiest_of(problem.run, problem.machine)
    alike = () if problem.machine.power_by_gear else ("power",)
    falls = (m for m in problem.limits if m.by_load or m.id in alike)
    return all(limit.share(easiest) >= 1 for limit in falls)
