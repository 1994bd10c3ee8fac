"""Work tilting on its grip: how stiffly, and the moment at which lift-off begins to matter.

A moment M about the middle of the grip changes the pressure by `c(z) cos φ` round the bore. With
G (n, n) what both bodies give on the strips (loads q = p h, all over d), a, t the shift and turn:
    G c h = a + t z  on what touches;   Σ c h = 0,  π/2 Σ c h z = M;   stiffness = M / t.
The load turns with the work, so that every meridian has its turn at `p - |c|`. Where that would
pull, the strip lifts and the rest takes its load: q ≥ 0, G q ≥ G (p - c) h, one of them an equality
(the pressure nearest to the pulling one, in elastic energy). Strip after strip lifts as M grows.

Criterion, ours: the moment at which strips that carry `LIFTED` of the normal force lift once a
turn. First lift means nothing: where contact ends short of the bore's end the pressure is nothing
already. For springs that do not help each other under even pressure all lifts from the ends inward,
and the criterion is N L / 12 / (1 - LIFTED), a ninth above the moment of `rock.lift_moment`.

G: what a pressure `cos φ` moves. The even one (axisymmetric) is near it for short waves, but knows
of no bending: add `bar_bending` for the mandrel, and take `tilt_body.work_tilt` for the work.
Weakness: friction along the bore left out (it holds too: low); contact that the tilt closes beyond
the present one left out (low, often by half and more, on a straight bore gripped in part); moment
and force balanced as before lift. Measured errors stand at `lift_moment_of` and `tilt_stiffness`.
Source: our own derivation; bending of a bar is any textbook's.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.mechanics.contact import pressed
from borewright.mechanics.num import Floats
from borewright.mechanics.rock import lift_moment
from borewright.quantities.si import Pascal, Ratio

LIFTED: Final[Ratio] = 0.1
"""Share of the normal force whose strips may lift once a turn. Ours."""

PASSED: Final[Ratio] = 0.75
"""How far across a strip lift has come when its load is nothing: the value, of 1/2, 3/4 and 1, with
which 25, 50, 100 and 200 strips agree best on the bodies of `tests/independent`."""

FEWEST: Final = 3
"""Fewer touching strips than this are taken as one even ring of springs."""


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
    moment: float = 1.0,
    sideways: float = 0.0,
) -> Tilted:
    """What a moment (d³ Pa) and a sideways force (d² Pa) through the middle of the contact do.

    With a sideways force G must be that of work which moves as a whole: `tilt_body` has no place
    where it would be held against one.

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
    bent = np.zeros(count) if warp is None else warp[touching] * moment
    full = np.zeros((count + 2, count + 2))
    full[:count, :count] = gives[np.ix_(touching, touching)]
    full[count, :count], full[count + 1, :count] = 1.0, z
    full[:count, count:] = -full[count:, :count].T
    wanted = np.concatenate([-bent, [2 / np.pi * sideways, 2 / np.pi * moment]])
    found = np.linalg.solve(full, wanted)
    change[touching] = found[:count] / (strips[touching, 1] - strips[touching, 0])
    added = 0.0 if warp is None else np.pi / 2 * float(warp[touching] @ found[:count])
    return Tilted(change, float(found[count + 1]) + added + own * moment)


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
    beside: Floats | None = None,
    share: Ratio = LIFTED,
) -> float:
    """Moment (d³ Pa) at which strips with `share` of the normal force lift once a turn; 0 for none.

    `gives` (n, n) in 1/Pa answers an even pressure and says what takes over from a lifted strip,
    `sways` the same for a pressure cos φ (`gives` where it is not stated); the rest as `tilted`.
    `beside` (n,): a change of pressure cos φ (Pa) that is there besides, as a sideways force makes;
    taken at its worst side. One or two strips: N L / 12.

    Error, with `work_tilt` and `bar_bending`, on rings, webbed and flanged wheels and bushes: with
    every meridian solved at once a tenth lifts at 0.9 to 1.05 of this moment at full length (1.35
    for a flange at the far face), at 0.9 to 2 and more gripped in part; CalculiX has lifted 8 to
    13 % at five sixths of it. Strips 0.04 d long tell it to 5 %, to 15 % where under ten touch.
    With `bar_bending` alone up to a fifth off that on rings, webs and bushes, and 30 to 80 % high
    on a disc flanged at one face.

    >>> strips = np.column_stack([np.arange(400), np.arange(1, 401)]) / 200
    >>> even = lift_moment_of(strips, np.eye(400), np.full(400, 8e6))
    >>> round(even / (8e6 * np.pi * 2 * 2 / 12), 2)  # over N L / 12
    1.11
    """
    touching = np.flatnonzero(pressure > 0)
    h = strips[touching, 1] - strips[touching, 0]
    loads = pressure[touching] * h
    if len(touching) < FEWEST:
        return float(lift_moment(np.pi * loads.sum(), h.sum()))
    within = gives[np.ix_(touching, touching)]
    sways = gives if sways is None else sways
    by_moment = tilted(strips, sways, pressure, warp).change[touching] * h
    starts = [loads]
    if beside is not None:
        starts = [loads + side * beside[touching] * h for side in (1, -1)]
    lifts = [
        lifting(within, start, turn * by_moment, loads, share)
        for start in starts
        for turn in (1, -1)
    ]
    return _at_share(np.min(lifts, axis=0), loads, share)


def lifting(
    gives: Floats, loads: Floats, change: Floats, weights: Floats, share: Ratio = 1.0
) -> Floats:
    """The m at which each strip first lifts under `loads - m change`, m growing from 0.

    Unilateral: the strips left take over from the lifted. Followed until lifted strips have `share`
    of the `weights`, and one strip on; infinite for the rest. Between two lifts all is linear in m.

    >>> lifting(np.array([[2.0, 1.0], [1.0, 2.0]]), np.ones(2), np.array([2.0, 1.0]), np.ones(2))
    array([0.5 , 0.75])
    """
    first = np.full(len(loads), np.inf)
    active = loads > 0 if (loads > 0).all() else pressed(gives, gives @ loads) > 0
    first[~active] = 0.0
    left = np.flatnonzero(active)
    stiff = np.linalg.inv(gives[np.ix_(left, left)])
    start, slope = (gives @ loads)[left], (gives @ change)[left]
    lifted, wanted, last = float(weights[~active].sum()), share * float(weights.sum()), 0.0
    while len(left):
        at, falls = stiff @ start, stiff @ slope
        at_rest = np.full(len(left), np.inf)
        np.divide(at, falls, out=at_rest, where=falls > 0)
        worst = int(np.argmin(at_rest))
        if not np.isfinite(at_rest[worst]):
            break
        last = max(last, float(at_rest[worst]))
        first[left[worst]] = last
        if lifted >= wanted:
            break
        lifted += float(weights[left[worst]])
        # The inverse without this strip: one step of elimination.
        row = stiff[worst]
        kept = np.arange(len(left)) != worst
        stiff = (stiff - np.outer(row, row) / row[worst])[np.ix_(kept, kept)]
        left, start, slope = left[kept], start[kept], slope[kept]
    return first


def bar_bending(strips: Floats, modulus: Pascal, stands_out: tuple[Ratio, Ratio]) -> Floats:
    """What a solid mandrel's bending adds to `gives` (n, n), 1/Pa: held at both ends, free to turn.

    `stands_out`: from either face to the centre that holds it, over d. A thin beam (no shear):
    x (l - y) (l² - x² - (l - y)²) / (6 l E I) for x ≤ y from one end, I = π / 64, load π/2 q.

    >>> middle = np.array([[1.9, 2.1]])  # 4 d long, pushed in the middle: F l³ / (48 E I)
    >>> float(bar_bending(middle, 1.0, (1.9, 1.9))[0, 0] / (np.pi / 2 * 4**3 / (48 * np.pi / 64)))
    1.0
    """
    length = float(strips[-1, 1] - strips[0, 0]) + sum(stands_out)
    at = strips.mean(axis=1) - strips[0, 0] + stands_out[0]
    near = np.minimum.outer(at, at)
    far = length - np.maximum.outer(at, at)
    per_force = near * far * (length**2 - near**2 - far**2) / (6 * length * modulus * np.pi / 64)
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
