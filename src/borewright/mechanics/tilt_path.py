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


@dataclass(frozen=True, slots=True, eq=False)
class Round:
    """The problem over N = K n strips: gap = H q - B x - g + v m, B' q = (0, m / π)."""

    gives: Floats
    ways: Floats
    wanted: Floats
    warp: Floats

    def stretch(self, active: np.ndarray) -> Floats:
        """While these strips touch: loads where they do, gaps where not; (N, 2) as base, slope."""
        on, off = np.flatnonzero(active), np.flatnonzero(~active)
        many = len(on)
        full = np.zeros((many + 2, many + 2))
        full[:many, :many] = self.gives[np.ix_(on, on)]
        full[:many, many:] = -self.ways[on]
        full[many:, :many] = self.ways[on].T
        asked = np.zeros((many + 2, 2))
        asked[:many, 0], asked[:many, 1] = self.wanted[on], -self.warp[on]
        asked[many + 1, 1] = 1 / np.pi
        found = np.linalg.solve(full, asked)
        values = np.empty((len(active), 2))
        values[on] = found[:many]
        values[off] = self.gives[np.ix_(off, on)] @ found[:many] - self.ways[off] @ found[many:]
        values[off, 0] -= self.wanted[off]
        values[off, 1] += self.warp[off]
        return values


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
    problem, active = _round(z, gives, sways, warp, loads, gap, meridians)
    first, moment = np.full(count, np.inf), 0.0
    first[loads <= 0] = np.nan
    wanted, lifted = share * float(loads.sum()), 0.0
    for _ in range(40 * len(active)):
        at = _changes(problem.stretch(active), moment)
        change = int(np.argmin(at))
        if not np.isfinite(at[change]):
            return first
        moment, strip = float(at[change]), change % count
        active[change] = not active[change]
        if not active[change] and np.isinf(first[strip]):
            first[strip] = moment
            if lifted >= wanted:
                return first
            lifted += float(loads[strip])
    raise OutsideModel("contact", len(active), "strips that come to rest under a tilt")


def _round(
    z: Floats,
    gives: Floats,
    sways: Floats,
    warp: Floats,
    loads: Floats,
    gap: Floats,
    meridians: int,
) -> tuple[Round, np.ndarray]:
    """The problem, and what touches without a moment. Root weights keep it symmetric."""
    phi = np.linspace(0.0, np.pi, meridians)
    weight = np.full(meridians, 1.0 / (meridians - 1))
    weight[[0, -1]] /= 2
    root = np.asarray(np.sqrt(weight))
    cos = np.cos(phi)
    around = np.asarray(root * cos)
    first = 2 * np.kron(np.outer(around, around), sways - gives)
    whole = np.asarray(np.kron(np.eye(meridians), gives) + first)
    ways = np.column_stack([np.kron(around, np.ones_like(z)), np.kron(around, z)])
    wanted = np.kron(root, gives @ loads - gap)
    problem = Round(whole, ways, wanted, np.kron(around, warp))
    return problem, np.tile(loads > 0, meridians)


def _changes(values: Floats, moment: float) -> Floats:
    """Moments (N,) from this one on at which each strip lifts or touches."""
    base, slope = values.T
    at = np.full(len(base), np.inf)
    np.divide(-base, slope, out=at, where=slope < 0)
    return np.where(slope < 0, np.maximum(at, moment), at)
