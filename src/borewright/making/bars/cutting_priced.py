"""Ways of cutting found one by one where there are too many to lay out, and what no way can beat.

The linear program of Gilmore and Gomory: each round prices the pieces and asks every bar for the
way that earns most at those prices; when none earns more than its bar costs, the program's value
is a lower bound on what whole numbers can do.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil, gcd
from typing import Any, Final

import numpy as np
from scipy.optimize import linprog

from borewright.making.bars.cutting_patterns import (
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

SHORT: Final = 1e3
"""Price of a metre of piece left out, in metres of bar, where no piece should be."""


@dataclass(frozen=True, slots=True)
class Priced:
    """Ways worth using, how often (in fractions), and the least (m) that any ways could do.

    `whole`: a use of them in whole bars that gives every piece, where one was come by.
    """

    ways: tuple[Way, ...]
    least: Metre
    often: tuple[float, ...] = ()
    whole: tuple[tuple[Way, int], ...] = ()


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
    more, whole = _for_what_is_left(wanted, bars, priced, cost) if short < TINY else ((), ())
    pool = tuple(dict.fromkeys((*priced.ways, *more)))
    return Priced(pool, next_sum(priced.least, [b.length for b in bars]), (), whole)


def _for_what_is_left(
    wanted: Sequence[Wanted], bars: Sequence[Bar], priced: Priced, cost: Any
) -> tuple[tuple[Way, ...], tuple[tuple[Way, int], ...]]:
    """Further ways, and a use of them in whole bars: whole bars of the fractions are cut, the rest
    is priced again, and so on. The fractions alone leave few good ways to cut the last bars."""
    counts, stock, ways = [w.count for w in wanted], [b.count for b in bars], list[Way]()
    cut = list[tuple[Way, int]]()
    while any(counts) and priced.often:
        whole = [int(n + WORTH) for n in priced.often]
        if not any(whole):
            whole[int(np.argmax(priced.often))] = 1
        cut += [(way, n) for way, n in zip(priced.ways, whole, strict=True) if n]
        for (t, pattern), n in zip(priced.ways, whole, strict=True):
            own = stock[t]
            stock[t] = None if own is None else max(0, own - n)
            counts = [max(0, c - n * p) for c, p in zip(counts, pattern, strict=True)]
        left = [replace(w, count=c) for w, c in zip(wanted, counts, strict=True)]
        there = [replace(b, count=c) for b, c in zip(bars, stock, strict=True)]
        first = [way for way in first_ways(left, there) if there[way[0]].count != 0]
        if any(c and not any(way[1][i] for way in first) for i, c in enumerate(counts)):
            return tuple(ways), ()
        priced = _grown(left, there, first, cost, SHORT, np.inf) if first else Priced((), 0.0)
        ways += priced.ways
    return tuple(ways), tuple(cut) if not any(counts) else ()


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
        value, price, rent, often = _priced(wanted, bars, known, cost, short_cost, short_most)
        new = []
        for t, bar in enumerate(bars):
            pattern, earned = dearest(lengths, counts, bar.room, list(price))
            worth = WORTH * max(1.0, bar.length * MILLIMETRE)
            if earned > cost[t] + rent[t] + worth and (t, pattern) not in known:
                new.append((t, pattern))
        if not new:
            most = [dearest(lengths, counts, b.room, list(price), over=True)[1] for b in bars]
            least = _bound(value, most, cost, rent, bars) / MILLIMETRE
            return Priced(tuple(known), least, tuple(often))
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
    return float(max(0.0, share * value - extra))


def _priced(
    wanted: Sequence[Wanted],
    bars: Sequence[Bar],
    ways: Sequence[Way],
    cost: Any,
    short_cost: float,
    short_most: float,
) -> tuple[float, Any, Any, Any]:
    """Value of the linear program, price of a piece, rent of a bar, and how often each way."""
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
    return float(found.fun), -found.ineqlin.marginals[:n], rent, found.x[: len(ways)]
