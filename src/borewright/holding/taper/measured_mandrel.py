"""A mandrel measured at stations: its profile, where the work stops on it, the bores it takes.

Two stations are a straight taper. Three or more are used as measured.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from borewright.errors import RefusedInput
from borewright.job.records import Mandrel
from borewright.job.stations import Stations
from borewright.mechanics.measured import (
    Profile,
    diameter_on,
    fit_taper,
    flat_stretches,
    largest_so_far,
    profile,
)
from borewright.mechanics.num import Num
from borewright.mechanics.taper import bore_window, diameter_at
from borewright.quantities.si import Metre, MetrePerMetre

USUAL_UNCERTAINTY: Final[Metre] = 2.54e-6
"""Ours: half the band of a diameter read with a tenth-reading micrometer, 0.0001 in."""

FLAT_SHARE: Final = 0.25
"""Ours: a stretch that grows by less than this share of the taper gives travel no stop."""


@dataclass(frozen=True, slots=True)
class Straight:
    """The straight taper nearest to the stations, and the stations from the small end."""

    small_end: Metre
    taper: MetrePerMetre
    stations: Stations


@dataclass(frozen=True, slots=True)
class Straightness:
    """The station farthest from the straight taper: its x (m from the small end) and by how much.

    `off` (m, signed) is what its diameter lacks or has too much; `known` half the band of one.
    """

    at: Metre
    off: Metre
    known: Metre

    @property
    def bent(self) -> bool:
        """Whether that is more than a reading's uncertainty."""
        return abs(self.off) > self.known


def straightness_of(
    stations: Stations, residuals: Sequence[Metre], known: Metre
) -> Straightness | None:
    """How straight the stations are; None for two, which are always on a line.

    >>> straightness_of(((0.0, 0.018), (0.05, 0.01802), (0.1, 0.01805)), (1e-6, -3e-6, 2e-6), 2e-6)
    Straightness(at=0.05, off=-3e-06, known=2e-06)
    """
    if len(stations) < 3:
        return None
    worst = max(range(len(residuals)), key=lambda k: abs(residuals[k]))
    return Straightness(stations[worst][0], residuals[worst], known)


def straightness(mandrel: Mandrel) -> Straightness | None:
    """How straight a mandrel is; None where it is not measured at three places or more."""
    if len(mandrel.stations) < 3:
        return None
    xs, ds = zip(*mandrel.stations, strict=True)
    known = mandrel.station_uncertainty
    return straightness_of(mandrel.stations, fit_taper(xs, ds).residuals.tolist(), known)


def is_parallel(stations: Stations, known: Metre) -> bool:
    """Whether the taper over the stations is no more than the two readings it comes from.

    >>> is_parallel(((0.0, 0.018), (0.05, 0.018005)), 2.54e-6)
    True
    """
    if not stations:
        return False
    xs, ds = zip(*stations, strict=True)
    return bool(abs(fit_taper(xs, ds).taper) * (max(xs) - min(xs)) <= 2 * known)


def straight_through(stations: Stations, ground: Metre, where: str) -> Straight:
    """The nearest straight taper; RefusedInput where the stations show none.

    >>> found = straight_through(((0.09, 0.01599), (0.01, 0.01603)), 0.1, "mandrel 'm'")
    >>> round(found.small_end, 9), round(found.taper, 9), found.stations[0][1]
    (0.015985, 0.0005, 0.01599)
    """
    xs, ds = zip(*stations, strict=True)
    if fit_taper(xs, ds).taper == 0:
        found = f"{len(stations)} diameters that show no taper"
        raise RefusedInput(where, found, "diameters that grow towards one end")
    along = profile(xs, ds, ground)
    fit = fit_taper(along.x.tolist(), along.d.tolist())
    ordered = tuple(zip(along.x.tolist(), along.d.tolist(), strict=True))
    return Straight(fit.small_end, fit.taper, ordered)


def profile_of(mandrel: Mandrel) -> Profile | None:
    """The mandrel as measured; None where it is taken as a straight taper."""
    if len(mandrel.stations) < 3:
        return None
    xs, ds = zip(*mandrel.stations, strict=True)
    return profile(xs, ds, mandrel.ground_length)


def diameter_of(mandrel: Mandrel, x: Num) -> Num:
    """Diameter (m) at x (m) from the small end of the ground length, any shape."""
    measured = profile_of(mandrel)
    if measured is None:
        return diameter_at(x, mandrel.small_end, mandrel.taper)
    return diameter_on(x, measured)


def window_of(
    mandrel: Mandrel,
    bore_length: Metre,
    travel: Metre,
    reserve_small: Metre = 0.0,
    reserve_large: Metre = 0.0,
) -> tuple[Metre, Metre]:
    """Smallest and largest straight bore (m) with this travel; see `mechanics.taper.bore_window`.

    On a measured mandrel from its real diameters: the largest before each of the two lines, because
    the work stops at the first place that is as large as its bore.
    """
    m, measured = mandrel, profile_of(mandrel)
    if measured is None:
        ends = bore_window(
            m.small_end, m.taper, bore_length, m.ground_length, travel, reserve_small, reserve_large
        )
        return float(ends[0]), float(ends[1])
    first = max(0.0, bore_length + reserve_small - travel)
    last = m.ground_length - reserve_large - travel
    return float(largest_so_far(first, measured)), float(largest_so_far(last, measured))


def flats_of(mandrel: Mandrel) -> Stations:
    """Stretches (from, to; m from the small end) on which the work does not tighten."""
    if profile_of(mandrel) is None:
        return ()
    xs, ds = zip(*mandrel.stations, strict=True)
    return flat_stretches(xs, ds, FLAT_SHARE * mandrel.taper, mandrel.station_uncertainty)


def half_band_on(mandrel: Mandrel, bore_half_band: Metre) -> Metre:
    """Half the band (m) of bore against mandrel: two independent readings, root sum of squares."""
    return math.hypot(bore_half_band, mandrel.station_uncertainty)
