"""Ways of cutting found one by one where there are too many to lay out, and what no way can beat.

The linear program of Gilmore and Gomory: each round prices the pieces and asks every bar for the
way that earns most at those prices; when none earns more than its bar costs, the program's value
is a lower bound on what whole numbers can do.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, gcd
from typing import Any, Final

import numpy as np
from scipy.optimize import linprog

from borewright.making.blank.cutting_patterns import (
    MILLIMETRE,
    TINY,
    Bar,
    Wanted,
    Way,
    dearest,
    times,
)
from borewright.quantities.si import Metre

WORTH: Final = 1e-7
"""Of the price of a bar: a way that earns no more than this beyond it is no gain."""


@dataclass(frozen=True, slots=True)
class Priced:
    """Ways worth using, and the least (m) that any ways could do."""

    ways: tuple[Way, ...]
    least: Metre


def first_ways(wanted: Sequence[Wanted], bars: Sequence[Bar]) -> tuple[Way, ...]:
    """Each bar cut into one length only, as often as it goes."""
    ways = []
    for t, bar in enumerate(bars):
        for i, piece in enumerate(wanted):
            number = min(piece.count, times(bar.room, piece.with_cut))
            if number:
                ways.append((t, tuple(number * (i == k) for k in range(len(wanted)))))
    return tuple(ways)


def least_short(wanted: Sequence[Wanted], bars: Sequence[Bar], ways: Sequence[Way]) -> Priced:
    """Ways that leave the least length (m) of pieces short."""
    return _grown(wanted, bars, ways, np.zeros(len(bars)), 1.0, np.inf)


def least_taken(
    wanted: Sequence[Wanted], bars: Sequence[Bar], ways: Sequence[Way], short: Metre
) -> Priced:
    """Ways that take the least length of bar, `short` (m) of pieces being left out at most."""
    cost = np.array([b.length for b in bars]) * MILLIMETRE
    priced = _grown(wanted, bars, ways, cost, 0.0, short * MILLIMETRE)
    return Priced(priced.ways, next_sum(priced.least, [b.length for b in bars]))


def next_sum(least: Metre, lengths: Sequence[Metre]) -> Metre:
    """The next length (m), at or above this, that whole bars can add up to by their divisor.

    >>> round(next_sum(6.1, [3.0]), 9), round(next_sum(6.1, [3.0, 0.6]), 9)
    (9.0, 6.6)
    """
    whole = [round(length / TINY) for length in lengths]
    step = gcd(*whole)
    exact = all(abs(n * TINY - length) < 1e-10 for n, length in zip(whole, lengths, strict=True))
    return ceil(least / TINY / step - 1e-6) * step * TINY if exact and step else least


def _grown(
    wanted: Sequence[Wanted],
    bars: Sequence[Bar],
    ways: Sequence[Way],
    cost: Any,
    short_cost: float,
    short_most: float,
) -> Priced:
    known = list(ways)
    lengths, counts = [w.with_cut for w in wanted], [w.count for w in wanted]
    while True:
        value, price, rent = _priced(wanted, bars, known, cost, short_cost, short_most)
        new = []
        for t, bar in enumerate(bars):
            pattern, earned = dearest(lengths, counts, bar.room, list(price))
            worth = WORTH * max(1.0, bar.length * MILLIMETRE)
            if earned > cost[t] + rent[t] + worth and (t, pattern) not in known:
                new.append((t, pattern))
        if not new:
            most = [dearest(lengths, counts, b.room, list(price), over=True)[1] for b in bars]
            return Priced(tuple(known), _bound(value, most, cost, rent, bars) / MILLIMETRE)
        known += new


def _bound(value: float, most: Sequence[float], cost: Any, rent: Any, bars: Sequence[Bar]) -> float:
    """What no whole numbers can go below: the program's value, its prices lowered until no way of
    any bar earns more than it costs (`most`: what a bar can earn at most)."""
    pairs = [(cost[t], most[t]) for t, bar in enumerate(bars) if bar.count is None and most[t] > 0]
    share = min([1.0, *(c / m for c, m in pairs)])
    extra = sum(
        (bar.count or 0) * max(0.0, share * (most[t] - rent[t]) - cost[t])
        for t, bar in enumerate(bars)
        if bar.count is not None
    )
    return max(0.0, share * value - extra)


def _priced(
    wanted: Sequence[Wanted],
    bars: Sequence[Bar],
    ways: Sequence[Way],
    cost: Any,
    short_cost: float,
    short_most: float,
) -> tuple[float, Any, Any]:
    """Value of the linear program, price of a piece by length, rent of a bar by length."""
    n, pieces = len(wanted), np.array([w.length for w in wanted]) * MILLIMETRE
    goal = np.concatenate([[cost[t] for t, _ in ways], short_cost * pieces])
    gives = np.array([p for _, p in ways], dtype=float).reshape(-1, n).T
    rows = [np.hstack([-gives, -np.eye(n)])]
    limits = [-np.array([w.count for w in wanted], dtype=float)]
    limited = [t for t, bar in enumerate(bars) if bar.count is not None]
    for t in limited:
        rows.append(np.concatenate([[float(w == t) for w, _ in ways], np.zeros(n)])[None, :])
        limits.append(np.array([float(bars[t].count or 0)]))
    if np.isfinite(short_most):
        rows.append(np.concatenate([np.zeros(len(ways)), pieces])[None, :])
        limits.append(np.array([short_most]))
    found = linprog(goal, A_ub=np.vstack(rows), b_ub=np.concatenate(limits), method="highs")
    rent = np.zeros(len(bars))
    for k, t in enumerate(limited):
        rent[t] = -found.ineqlin.marginals[n + k]
    return float(found.fun), -found.ineqlin.marginals[:n], rent
