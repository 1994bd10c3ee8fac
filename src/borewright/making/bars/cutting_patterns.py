"""The ways in which one bar can be cut: every filled one, or the best one at given prices.

Lengths here are those of a piece with its cut, rooms those of a bar with what its last cut saves.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, gcd
from typing import Final

import numpy as np

from borewright.quantities.si import Metre

EXACT: Final = 1e-9
"""Metres: inch and metric lengths that make one length differ by less."""

MILLIMETRE: Final = 1e3
"""The solver's feasibility tolerance is absolute: lengths are given to it in millimetres."""

TINY: Final = 1e-6
"""Metres of which lengths are taken as whole numbers, where they are."""

RUNGS: Final = 120_000
"""Steps into which a bar is divided at most to find the best way of cutting it; ours."""

Pattern = tuple[int, ...]
"""How many of each length, in the order of the lengths."""


@dataclass(frozen=True, slots=True)
class Bar:
    """One length of bar: `room` (m) takes pieces with their cuts; `count` None is any number."""

    length: Metre
    room: Metre
    count: int | None


@dataclass(frozen=True, slots=True)
class Wanted:
    """One length of piece: itself, with its cut, how many, and the names that share it.

    The longest comes first in any list of them.
    """

    length: Metre
    with_cut: Metre
    count: int
    names: tuple[tuple[str, int], ...] = ()


Way = tuple[int, Pattern]
"""A bar, by its place in the list, and how it is cut."""


def filled(lengths: Sequence[Metre], counts: Sequence[int], room: Metre) -> Iterator[Pattern]:
    """Every way to cut a room (m) that leaves space for no further piece that is still wanted.

    `lengths` (m) must fall. The longest first, so the order is always the same.

    >>> list(filled([0.5, 0.3], [2, 9], 1.0))
    [(2, 0), (1, 1), (0, 3)]
    """
    if not lengths:
        yield ()
        return
    first, rest = lengths[0], lengths[1:]
    most = min(counts[0], times(room, first))
    fill = sum(n * length for n, length in zip(counts[1:], rest, strict=True))
    for number in range(most, -1, -1):
        left = room - number * first
        if number < most and left - fill >= first - EXACT:
            break
        for others in filled(rest, counts[1:], left):
            over = left - sum(n * length for n, length in zip(others, rest, strict=True))
            if number == most or over < first - EXACT:
                yield (number, *others)


def times(room: Metre, length: Metre) -> int:
    """How often a length goes into a room; a hair's breadth of rounding does not cost a piece.

    >>> times(0.3, 0.1), times(0.29, 0.1)
    (3, 2)
    """
    return max(0, int((room + EXACT) / length))


def dearest(
    lengths: Sequence[Metre],
    counts: Sequence[int],
    room: Metre,
    prices: Sequence[float],
    over: bool = False,
) -> tuple[Pattern, float]:
    """The way to cut a room (m) that earns most at these prices, and what it earns.

    Worked on a ladder of steps. Where every length is a whole number of steps it is exact; else
    lengths are rounded up, so that the way fits and may miss the best by a step or two; with `over`
    they are rounded down, so that no way that fits earns more.

    >>> dearest([0.5, 0.3], [2, 9], 1.0, [2.0, 1.5])
    ((0, 3), 4.5)
    """
    if room <= EXACT:
        return (0,) * len(lengths), 0.0
    step = _step(lengths, room)
    slack = -EXACT if over else EXACT
    top = int((room + EXACT) / step) + (1 if over else 0)
    earned, trail = np.zeros(top + 1), []
    for i, (length, price) in enumerate(zip(lengths, prices, strict=True)):
        cells = int((length + EXACT) / step) if over else ceil((length - slack) / step)
        for number in _halves(min(counts[i], top // max(cells, 1)) if price > 0.0 else 0):
            wide = number * cells
            if wide > top:
                break
            with_it = earned[: top + 1 - wide] + number * price
            better = np.zeros(top + 1, dtype=bool)
            better[wide:] = with_it > earned[wide:]
            earned[wide:] = np.maximum(earned[wide:], with_it)
            trail.append((i, number, wide, better))
    pattern, place = [0] * len(lengths), top
    for i, number, wide, better in reversed(trail):
        if better[place]:
            pattern[i] += number
            place -= wide
    return tuple(pattern), float(earned[top])


def _step(lengths: Sequence[Metre], room: Metre) -> Metre:
    """The step (m) of the ladder: what divides all lengths, where that leaves few enough rungs."""
    whole = [round(length / TINY) for length in lengths]
    common = gcd(*whole) * TINY
    exact = all(abs(n * TINY - length) < EXACT for n, length in zip(whole, lengths, strict=True))
    return common if exact and common and room / common <= RUNGS else room / RUNGS


def _halves(count: int) -> Iterator[int]:
    """1, 2, 4, … and a rest, of which each number up to the count can be made."""
    number = 1
    while count > 0:
        yield min(number, count)
        count -= number
        number *= 2
