"""Work tilting on its grip: how stiffly, and the moment at which lift-off begins to matter.

A moment M about the middle of the grip changes the pressure by `c(z) cos φ` round the bore. With
G (n, n) what both bodies give on the strips (loads q = p h, all over d), a, t the shift and turn:
    G c h = a + t z  on what touches;   Σ c h = 0,  π/2 Σ c h z = M;   stiffness = M / t.
The load turns with the work, so that every meridian has its turn at `p - |c|`. Where that would
pull, the strip lifts and the rest takes its load; where the tilt closes what was open, a strip more
bears: `tilt_path` follows both.

Criterion, ours: the moment at which strips that carry `LIFTED` of the normal force lift once a
turn. First lift means nothing: where contact ends short of the bore's end the pressure is nothing
already.

G: what a pressure `cos φ` moves. The even one (axisymmetric) is near it for short waves, but knows
of no bending: add `bar_bending` for the mandrel, and take `tilt_body.work_tilt` for the work.
Weakness: friction along the bore left out (it holds too: low; most of a small tilt on a hub shorter
than its bore is wide), and the sideways force of the cut. Measured errors stand at
`lift_moment_of` and `tilt_stiffness`.
Source: our own derivation; bending of a bar is any textbook's.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.mechanics.num import Floats
from borewright.mechanics.rock import lift_moment
from borewright.mechanics.tilt_path import lifts
from borewright.quantities.si import Pascal, Ratio

LIFTED: Final[Ratio] = 0.2
"""Share of the normal force whose strips may lift once a turn. Ours: where part of a bore bears, a
tenth lifts where contact fades out, before the tilt has closed the free part on the mandrel."""

PASSED: Final[Ratio] = 0.75
"""How far across a strip lift has come when its load is nothing: the value, of 1/2, 3/4 and 1, with
which 25, 50, 100 and 200 strips agree best on the bodies of `tests/independent`."""

FEWEST: Final = 3
"""Fewer touching strips than this are taken as one even ring of springs, for stiffness."""

FEWEST_TO_LIFT: Final = 6
"""And for lift, where one strip could carry all of that share: safe side, they stand more."""


@dataclass(frozen=True, slots=True, eq=False)
class Tilted:
    """For a unit moment (d³ Pa): `change` (n,) of pressure at φ = 0, and `turn`, radians."""

    change: Floats
    turn: float


def tilted(
    strips: Floats,
    gives: Floats,
    pressure: Floats,
    warp: Floats | None = None,
    own: float = 0.0,
) -> Tilted:
    """What a unit moment (d³ Pa) about the middle of the contact does.

    `strips` (n, 2) over d; `gives` (n, n) in 1/Pa for loads p h cos φ; `pressure` (n,) in Pa says
    what touches. `warp` (n,), `own`: see `tilt_body`; without them the work is turned as a whole.
    No change and no turn where fewer than two strips touch.
    """
    touching = np.flatnonzero(pressure > 0)
    change = np.zeros(len(pressure))
    count = len(touching)
    if count < 2:
        return Tilted(change, 0.0)
    z = strips[touching].mean(axis=1) - _middle(strips, touching)
    bent = np.zeros(count) if warp is None else warp[touching]
    full = np.zeros((count + 2, count + 2))
    full[:count, :count] = gives[np.ix_(touching, touching)]
    full[count, :count], full[count + 1, :count] = 1.0, z
    full[:count, count:] = -full[count:, :count].T
    wanted = np.concatenate([-bent, [0.0, 2 / np.pi]])
    found = np.linalg.solve(full, wanted)
    change[touching] = found[:count] / (strips[touching, 1] - strips[touching, 0])
    added = 0.0 if warp is None else np.pi / 2 * float(warp[touching] @ found[:count])
    return Tilted(change, float(found[count + 1]) + added + own)


def tilt_stiffness(
    strips: Floats,
    gives: Floats,
    pressure: Floats,
    warp: Floats | None = None,
    own: float = 0.0,
) -> float:
    """Moment per radian (d³ Pa) within the present contact, sideways movement free; 0 for none.

    Even springs k (Pa per d of movement) over a length L: π k L³ / 24. With both first harmonics of
    `tilt_body` 5 % above CalculiX (plain ring, lifting already) and within 1 % (flanged disc); with
    `bar_bending` for the mandrel 5 to 13 % above them; without any bending up to four times too
    stiff. `own` holds the give of web and flange out to the tool; leave it out for the hub alone.

    >>> strips = np.column_stack([np.arange(100), np.arange(1, 101)]) / 50
    >>> springs = np.eye(100) / 1e9 * 50  # k = 1e9 Pa per d on strips of 1/50
    >>> round(tilt_stiffness(strips, springs, np.ones(100)) / (np.pi * 1e9 * 2**3 / 24), 3)
    1.0
    """
    touching = np.flatnonzero(pressure > 0)
    if not len(touching):
        return 0.0
    if len(touching) < FEWEST:
        h = strips[touching, 1] - strips[touching, 0]
        length = float(h.sum())
        give = float(h @ gives[np.ix_(touching, touching)] @ h) / length
        return float(np.pi * length**3 / 24 / give)
    return 1 / tilted(strips, gives, pressure, warp, own).turn


def lift_moment_of(
    strips: Floats,
    gives: Floats,
    pressure: Floats,
    sways: Floats | None = None,
    warp: Floats | None = None,
    gap: Floats | None = None,
    share: Ratio = LIFTED,
) -> float:
    """Moment (d³ Pa) at which strips with `share` of the normal force lift once a turn; 0 for none.

    `gives` (n, n) in 1/Pa answers an even pressure, `sways` the same for a pressure cos φ (`gives`
    where it is not stated); `warp` as `tilted`. `gap` (n,): what is open on radius (over d) where
    nothing presses, and may close; nothing closes where it is not stated. Under six strips:
    N L / 12. Infinite where it never lifts.

    Error, with `work_tilt` and `bar_bending`, on rings, webbed and flanged wheels and bushes: with
    nine meridians solved at once 17 to 23 % has lifted then, from 0.7 of full engagement on; at
    half a fifth lifts within a quarter of it. CalculiX in three dimensions has lifted a fifth at
    0.9 to 1.1 of it. Strips 0.04 d long tell it to 5 %.

    >>> strips = np.column_stack([np.arange(400), np.arange(1, 401)]) / 200
    >>> even = lift_moment_of(strips, np.eye(400), np.full(400, 8e6), share=0.0)
    >>> round(even / (8e6 * np.pi * 2 * 2 / 12), 2)  # over N L / 12
    1.0
    """
    touching = np.flatnonzero(pressure > 0)
    h = strips[:, 1] - strips[:, 0]
    if len(touching) < FEWEST_TO_LIFT:
        force = np.pi * float(pressure[touching] @ h[touching])
        return float(lift_moment(force, float(h[touching].sum())))
    kept = touching if gap is None else np.arange(len(h))
    open_ = np.zeros(len(h)) if gap is None else np.where(pressure > 0, 0.0, gap)
    first = lifts(
        strips[kept].mean(axis=1) - _middle(strips, touching),
        gives[np.ix_(kept, kept)],
        (gives if sways is None else sways)[np.ix_(kept, kept)],
        np.zeros(len(kept)) if warp is None else warp[kept],
        pressure[kept] * h[kept],
        open_[kept],
        share,
    )
    presses = pressure[kept] > 0
    return _at_share(first[presses], (pressure * h)[kept][presses], share)


def bar_bending(
    strips: Floats, modulus: Pascal, stands_out: tuple[Ratio, Ratio], hole: Ratio = 0.0
) -> Floats:
    """What a mandrel's bending adds to `gives` (n, n), 1/Pa: held at both ends, free to turn.

    `stands_out`: from either face to the centre that holds it, `hole` through it, over d. A thin
    beam (no shear): x (l - y) (l² - x² - (l - y)²) / (6 l E I) for x ≤ y from one end, load π/2 q,
    I = π / 64 (1 - hole⁴).

    >>> middle = np.array([[1.9, 2.1]])  # 4 d long, pushed in the middle: F l³ / (48 E I)
    >>> float(bar_bending(middle, 1.0, (1.9, 1.9))[0, 0] / (np.pi / 2 * 4**3 / (48 * np.pi / 64)))
    1.0
    """
    length = float(strips[-1, 1] - strips[0, 0]) + sum(stands_out)
    at = strips.mean(axis=1) - strips[0, 0] + stands_out[0]
    near = np.minimum.outer(at, at)
    far = length - np.maximum.outer(at, at)
    stiff = modulus * np.pi / 64 * (1 - hole**4)
    per_force = near * far * (length**2 - near**2 - far**2) / (6 * length * stiff)
    return np.asarray(np.pi / 2 * per_force)


def _middle(strips: Floats, touching: np.ndarray) -> float:
    return float(strips[touching[0], 0] + strips[touching[-1], 1]) / 2


def _at_share(lifts: Floats, weights: Floats, share: Ratio) -> float:
    """Where the lifted weight passes a share."""
    order = np.argsort(lifts, kind="stable")
    weight = weights[order]
    passed = np.cumsum(weight) - (1 - PASSED) * weight
    known = np.isfinite(lifts[order])
    if not known.any():
        return float("inf")
    return float(np.interp(share * weights.sum(), passed[known], lifts[order][known]))
