"""A mandrel as measured: diameters at stations, straight between them, and the taper they show.

`x` (m) runs along the mandrel from either end; `d` (m) is the diameter there. A `Profile` runs from
the small end. Between stations the diameter is taken as straight; beyond the outermost ones it runs
on with the fitted taper.

Source: ordinary least squares and straight lines, closed form. Weakness: what lies between two
stations is not seen; a ridge or a scored band narrower than their spacing is missed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.num import Floats, Num
from borewright.quantities.si import Metre, MetrePerMetre


@dataclass(frozen=True, slots=True, eq=False)
class TaperFit:
    """The straight taper nearest to the stations, and what is left over at each (m, signed)."""

    small_end: Metre
    taper: MetrePerMetre
    residuals: Floats


@dataclass(frozen=True, slots=True, eq=False)
class Profile:
    """A measured mandrel from its small end: `x` rising (k,), `d` (k,), `taper` beyond them > 0."""

    x: Floats
    d: Floats
    taper: MetrePerMetre


def fit_taper(x: Sequence[float], d: Sequence[float]) -> TaperFit:
    """Least squares line d = small_end + taper x through the stations; residuals as given.

    x, d: metres, shape (k,), k >= 2, in any order; at least two different x. A negative taper
    means that the end x runs from is the large one. Raises OutsideModel for fewer stations.

    >>> fit = fit_taper([0.01, 0.07], [0.015868, 0.015898])
    >>> round(fit.taper, 9), round(fit.small_end, 9)
    (0.0005, 0.015863)
    """
    xs, ds = _stations(x, d)
    middle, level = float(xs.mean()), float(ds.mean())
    taper = float(((xs - middle) * (ds - level)).sum() / ((xs - middle) ** 2).sum())
    residuals = (ds - level) - taper * (xs - middle)
    return TaperFit(level - taper * middle, taper, residuals)


def largest_end(x: Sequence[float], d: Sequence[float]) -> Literal["near", "far", "neither"]:
    """Which end is large: `near` the one x runs from, `far` the other, `neither` if parallel.

    >>> largest_end([0.01, 0.07], [0.015898, 0.015868])
    'near'
    """
    taper = fit_taper(x, d).taper
    if taper == 0:
        return "neither"
    return "far" if taper > 0 else "near"


def profile(x: Sequence[float], d: Sequence[float], length: Metre) -> Profile:
    """The stations in order from the small end of a ground length (m), turned round if need be.

    Raises OutsideModel where they show no taper at all.

    >>> turned = profile([0.01, 0.07], [0.015898, 0.015868], 0.1)
    >>> turned.x.round(6).tolist(), turned.d.tolist()
    ([0.03, 0.09], [0.015868, 0.015898])
    """
    xs, ds = _stations(x, d)
    end = largest_end(x, d)
    if end == "neither":
        raise OutsideModel("taper", 0.0, "above 0; a parallel mandrel has no seat")
    along = xs if end == "far" else length - xs
    order = np.argsort(along)
    return Profile(along[order], ds[order], abs(fit_taper(x, d).taper))


def diameter_on(x: Num, mandrel: Profile) -> Floats:
    """Diameter (m) at x (m) from the small end, any shape.

    >>> worn = Profile(np.array([0.0, 0.05, 0.1]), np.array([0.018, 0.01802, 0.01805]), 0.0005)
    >>> diameter_on(np.array([0.025, 0.12]), worn).round(6).tolist()
    [0.01801, 0.01806]
    """
    at = np.asarray(x, dtype=np.float64)
    inside = np.clip(at, mandrel.x[0], mandrel.x[-1])
    found = np.interp(inside, mandrel.x, mandrel.d) + mandrel.taper * (at - inside)
    return np.asarray(found, dtype=np.float64)


def largest_so_far(x: Num, mandrel: Profile) -> Floats:
    """Largest diameter (m) from the small end up to x (m): the straight bore stopped there at last.

    >>> waisted = Profile(np.array([0.0, 0.05, 0.1]), np.array([0.018, 0.01799, 0.01805]), 0.0005)
    >>> round(float(largest_so_far(0.05, waisted)), 6)
    0.018
    """
    at = np.asarray(x, dtype=np.float64)
    before = np.where(mandrel.x <= at[..., None], mandrel.d, -np.inf).max(axis=-1)
    return np.asarray(np.maximum(diameter_on(at, mandrel), before), dtype=np.float64)


def growing_share(mandrel: Profile) -> float:
    """Share of the length between the outermost stations on which a larger bore stops further on.

    1 for a straight taper; what lies behind a larger place, or is flat, stops no bore.

    >>> dented = Profile(np.array([0.0, 0.04, 0.1]), np.array([0.018, 0.01799, 0.01801]), 0.0005)
    >>> growing_share(dented)
    0.3
    """
    before = np.maximum.accumulate(mandrel.d)[:-1]
    gained = np.maximum(mandrel.d[1:] - before, 0.0)
    rise = np.where(gained > 0, mandrel.d[1:] - mandrel.d[:-1], 1.0)
    growing = (gained / rise * np.diff(mandrel.x)).sum()
    return round(float(growing / (mandrel.x[-1] - mandrel.x[0])), 12)


def flat_stretches(
    x: Sequence[float],
    d: Sequence[float],
    least_taper: MetrePerMetre,
    uncertainty: Metre = 0.0,
) -> tuple[tuple[Metre, Metre], ...]:
    """Stretches (m, m), rising x, that grow by less than `least_taper` towards the large end.

    Neighbouring ones are joined. A stretch counts only where it lacks more than `uncertainty` (m)
    of the growth of the fitted taper, so that a reading's last digit is not taken for wear. On a
    flat stretch the work never tightens: its travel has no stop.

    >>> flat_stretches([0.0, 0.03, 0.06, 0.09], [0.018, 0.018015, 0.018015, 0.018045], 0.0001)
    ((0.03, 0.06),)
    """
    xs, ds = _stations(x, d)
    fitted, order = fit_taper(x, d).taper, np.argsort(xs)
    xs, ds = xs[order], ds[order] * (1.0 if fitted >= 0 else -1.0)
    long, rise = np.diff(xs), np.diff(ds)
    found: list[tuple[float, float, float]] = []
    for k in np.flatnonzero(rise < least_taper * long).tolist():
        start, end = float(xs[k]), float(xs[k + 1])
        lack = float(abs(fitted) * long[k] - rise[k])
        before = found.pop() if found and found[-1][1] == start else (start, start, 0.0)
        found.append((before[0], end, before[2] + lack))
    return tuple((start, end) for start, end, lack in found if lack > uncertainty)


def _stations(x: Sequence[float], d: Sequence[float]) -> tuple[Floats, Floats]:
    xs, ds = np.asarray(x, dtype=np.float64), np.asarray(d, dtype=np.float64)
    different = len({float(v) for v in xs})
    if len(xs) != len(ds) or different < 2:
        raise OutsideModel("stations", different, "two or more, at different places")
    return xs, ds
