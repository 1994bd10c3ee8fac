"""Lift-off round the bore as a tilting moment grows: every strip on a few meridians, followed.

Loads q on n strips of K meridians of half a turn, spaced evenly, each of weight w (half at the
ends): with e their mean and o = 2 Σ w cos φ q their first harmonic, a meridian gives way by
G e + (S - G) o cos φ, the second and higher harmonics answering as the even one does. It lifts or
touches by itself:
    gap = G e + ... - overlap - (a + t z - warp m) cos φ >= 0,  q >= 0,  gap q = 0,
    Σ o = 0,  π/2 Σ o z = m.
Between two changes all is linear in m: one linear solve for each strip that lifts or touches.
Source: parametric complementarity, as `travel_path`; the meridians are our own.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.errors.tree import OutsideModel
from borewright.mechanics.num import Floats

MERIDIANS: Final = 3
"""0, 1/4 and 1/2 of a turn: within 5 % of nine of them where over ten strips touch, 13 % else."""


@dataclass(slots=True, eq=False)
class Exchange:
    """Which of load and gap is nothing, N = K n strips in all; exchanged one at a time, in place.

    `table` (N, N) and `line` (N, 2): the values that are not nothing, as base and slope in m, are
    `line`, plus `table` times those that are (principal pivots, as in the simplex method).
    """

    active: np.ndarray
    table: Floats
    line: Floats

    def change(self, strip: int) -> None:
        """Let this strip lift, or touch: one step of elimination on its row and column."""
        pivot = self.table[strip, strip]
        row, column = self.table[strip] / pivot, self.table[:, strip].copy()
        ends = self.line[strip] / pivot
        self.table -= np.outer(column, row)
        self.line -= np.outer(column, ends)
        self.table[strip], self.table[:, strip] = -row, column / pivot
        self.table[strip, strip] = 1 / pivot
        self.line[strip] = -ends
        self.active[strip] = not self.active[strip]


def lifts(
    z: Floats,
    gives: Floats,
    sways: Floats,
    warp: Floats,
    loads: Floats,
    gap: Floats,
    share: float,
    meridians: int = MERIDIANS,
) -> Floats:
    """The moment at which each strip first lifts on some meridian; (n,), infinite where not yet.

    `z` (n,) from where the moment is counted; `loads` (n,) and what is open `gap` (n,) without a
    moment. Followed until strips with a `share` of the loads have lifted, and one strip on.
    OutsideModel where it does not come to an end.
    """
    count = len(z)
    round_ = _round(z, gives, sways, warp, loads, gap, meridians)
    first, moment = np.full(count, np.inf), 0.0
    first[loads <= 0] = np.nan
    wanted, lifted = share * float(loads.sum()), 0.0
    for _ in range(40 * len(round_.active)):
        at = _changes(round_.line, moment)
        change = int(np.argmin(at))
        if not np.isfinite(at[change]):
            return first
        moment, strip = float(at[change]), change % count
        round_.change(change)
        if not round_.active[change] and np.isinf(first[strip]):
            first[strip] = moment
            if lifted >= wanted:
                return first
            lifted += float(loads[strip])
    raise OutsideModel("contact", len(round_.active), "strips that come to rest under a tilt")


def _round(
    z: Floats,
    gives: Floats,
    sways: Floats,
    warp: Floats,
    loads: Floats,
    gap: Floats,
    meridians: int,
) -> Exchange:
    """The problem where all touches as it does without a moment. Root weights keep it symmetric."""
    phi = np.linspace(0.0, np.pi, meridians)
    weight = np.full(meridians, 1.0 / (meridians - 1))
    weight[[0, -1]] /= 2
    root = np.asarray(np.sqrt(weight))
    around = np.asarray(root * np.cos(phi))
    first = 2 * np.kron(np.outer(around, around), sways - gives)
    whole = np.asarray(np.kron(np.eye(meridians), gives) + first)
    ways = np.column_stack([np.kron(around, np.ones_like(z)), np.kron(around, z)])
    line = np.column_stack([-np.kron(root, gives @ loads - gap), np.kron(around, warp)])
    return _touching(whole, ways, line, np.tile(loads > 0, meridians))


def _touching(whole: Floats, ways: Floats, line: Floats, active: np.ndarray) -> Exchange:
    """All of `active` exchanged at once, and the balance of force and moment with it."""
    on, off = np.flatnonzero(active), np.flatnonzero(~active)
    many, size = len(on), len(active)
    block = np.zeros((many + 2, many + 2))
    block[:many, :many] = whole[np.ix_(on, on)]
    block[:many, many:], block[many:, :many] = -ways[on], ways[on].T
    beside = np.vstack([whole[np.ix_(on, off)], ways[off].T])
    balance = np.array([[0.0, 0.0], [0.0, -1 / np.pi]])
    known = np.column_stack([np.eye(many + 2)[:, :many], beside, np.vstack([line[on], balance])])
    found = np.linalg.solve(block, known)
    table, ends = np.empty((size, size)), np.empty((size, 2))
    table[np.ix_(on, on)] = found[:many, :many]
    table[np.ix_(on, off)] = -found[:many, many:-2]
    across = np.hstack([whole[np.ix_(off, on)], -ways[off]])
    table[np.ix_(off, on)] = across @ found[:, :many]
    table[np.ix_(off, off)] = whole[np.ix_(off, off)] - across @ found[:, many:-2]
    ends[on], ends[off] = -found[:many, -2:], line[off] - across @ found[:, -2:]
    return Exchange(active, table, ends)


def _changes(line: Floats, moment: float) -> Floats:
    """Moments (N,) from this one on at which each strip lifts or touches."""
    base, slope = line.T
    at = np.full(len(base), np.inf)
    np.divide(-base, slope, out=at, where=slope < 0)
    return np.where(slope < 0, np.maximum(at, moment), at)
