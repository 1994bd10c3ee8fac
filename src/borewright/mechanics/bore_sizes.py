"""The size that a chain of drills, reamers and a boring bar leaves, and its chance in a window.

A size is a band (low, likely, high): 5 in 100 lie below its low end, 5 in 100 above its high end,
and the likely size is the middle one, so that a tool that cuts far over and seldom under has a
short and a long half. Each half is one half of a normal spread. A size of which only the tolerance
grade is known is a triangle over that grade. Each tool opens the hole to its own size or, where
the hole is larger already, leaves it: the size at the end is the largest of them.
Source: areas under the normal curve and the triangle; the largest of independent sizes lies below
x where each of them does. Weakness: the tools are taken as independent, and the hole as round.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from statistics import NormalDist
from typing import TypeAlias

from borewright.errors import OutsideModel
from borewright.mechanics.measurement import combined_uncertainty
from borewright.quantities.si import Metre

SizeBand: TypeAlias = tuple[Metre, Metre, Metre]
"""Low (5 %), likely (50 %) and high (95 %) end of a size (m)."""

_NORMAL = NormalDist()
_Z95 = _NORMAL.inv_cdf(0.95)


def share_below(size: Metre, band: SizeBand) -> float:
    """The share of a band's sizes that lie below `size` (m), 0 to 1; OutsideModel for no band.

    >>> [round(share_below(size, (9.0, 10.0, 12.0)), 3) for size in (9.0, 10.0, 12.0)]
    [0.05, 0.5, 0.95]
    """
    low, likely, high = band
    if not low <= likely <= high:
        raise OutsideModel("band", f"{low}, {likely}, {high}", "low <= likely <= high")
    half = high - likely if size > likely else likely - low
    if half <= 0.0:
        return 1.0 if size >= likely else 0.0
    return _NORMAL.cdf((size - likely) * _Z95 / half)


def landing_chance(low: Metre, high: Metre, bands: Sequence[SizeBand]) -> float:
    """The chance that the largest of these sizes lies between low and high (m), 0 to 1.

    `bands` are those of the tools in their order: the last one's, and those of holes before it
    that might already be larger. 0 where low is not below high. Closed form: no sampling.

    >>> round(landing_chance(9.0, 12.0, [(9.0, 10.0, 12.0)]), 3)
    0.9
    >>> landing_chance(9.0, 12.0, [(9.0, 10.0, 12.0), (12.5, 12.6, 12.7)])
    0.0
    """
    if not low < high:
        return 0.0
    below_high, below_low = (
        math.prod(share_below(end, band) for band in bands) for end in (high, low)
    )
    return max(0.0, below_high - below_low)


NODES = 400
"""Equal shares of the trial's band that are summed; 1600 change the chance by less than 1e-4."""


def tried_first(
    low: Metre, high: Metre, trial: SizeBand, next_half_band: Metre, otherwise: float
) -> tuple[float, float]:
    """The share of trials that land in the window, and the chance after one that does.

    A tool whose cut is not known is tried in a scrap. Where the scrap does not land, another way
    is taken, and so it is where that one lands surer than the next hole would: after a trial that
    lands, the chance is the better of `otherwise` and that of a hole within `next_half_band` (m,
    two standard deviations) of the scrap. So no better gauge and no wider window ever makes it
    less. The whole chance is share x after + (1 - share) x otherwise.

    >>> share, after = tried_first(9.0, 12.0, (9.0, 10.0, 12.0), 0.0, 0.5)
    >>> round(share, 3), round(after, 3)
    (0.9, 1.0)
    """
    share = landing_chance(low, high, [trial])
    if share <= 0.0:
        return 0.0, otherwise
    first = share_below(low, trial)
    reads = (_size_at(first + share * (k + 0.5) / NODES, trial) for k in range(NODES))
    after = (landing_chance(low, high, [band_of_half(r, next_half_band)]) for r in reads)
    return share, math.fsum(max(a, otherwise) for a in after) / NODES


def _size_at(share: float, band: SizeBand) -> Metre:
    """The size (m) that this share of a band lies below."""
    low, likely, high = band
    z = _NORMAL.inv_cdf(min(max(share, 1e-12), 1 - 1e-12)) / _Z95
    return likely + z * (high - likely if z > 0.0 else likely - low)


def triangle_share_below(size: Metre, middle: Metre, width: Metre) -> float:
    """The share below `size` of an even triangle of this whole width about its middle (m).

    >>> triangle_share_below(10.0, 10.0, 2.0), triangle_share_below(9.5, 10.0, 2.0)
    (0.5, 0.125)
    """
    if width <= 0.0:
        return 1.0 if size >= middle else 0.0
    at = min(max(2.0 * (size - middle) / width, -1.0), 1.0)
    return (1.0 + at) ** 2 / 2.0 if at < 0.0 else 1.0 - (1.0 - at) ** 2 / 2.0


def grade_chance(low: Metre, high: Metre, middle: Metre, width: Metre) -> float:
    """The chance that a size known by its grade alone lies between low and high (m).

    >>> grade_chance(9.0, 11.0, 10.0, 2.0), grade_chance(9.5, 10.5, 10.0, 2.0)
    (1.0, 0.75)
    """
    if not low < high:
        return 0.0
    return triangle_share_below(high, middle, width) - triangle_share_below(low, middle, width)


def band_of_half(likely: Metre, half_band: Metre) -> SizeBand:
    """The band (m) of a size whose half band is two standard deviations, as gauges state theirs.

    >>> low, likely, high = band_of_half(10.0, 2.0)
    >>> round(likely - low, 3), round(high - likely, 3)
    (1.645, 1.645)
    """
    reach = half_band * _Z95 / 2.0
    return likely - reach, likely, likely + reach


def bored_half_band(gauge: Metre, dial: Metre, spring: Metre) -> Metre:
    """Half the band (m) of a bore whose last pass was set by a measurement of the hole before it.

    The gauge misreads, the dial is missed, and the bar springs a little otherwise than in the
    equal pass before: the root of the sum of squares, each a half band of the size.

    >>> bored_half_band(3e-6, 4e-6, 0.0)
    5e-06
    """
    return combined_uncertainty([gauge, dial, spring])


def next_hole_half_band(gauge: Metre, repeats: Metre) -> Metre:
    """Half the band (m) of the next hole about what the scrap read: gauge, scrap and hole.

    >>> next_hole_half_band(1.0, 2.0)
    3.0
    """
    return combined_uncertainty([gauge, repeats, repeats])


def widened(band: SizeBand, below: Metre, above: Metre) -> SizeBand:
    """A band with a second, independent spread of these two halves (m) added, root-sum-square.

    >>> widened((7.0, 10.0, 13.0), 4.0, 4.0)
    (5.0, 10.0, 15.0)
    """
    low, likely, high = band
    return (
        likely - math.hypot(likely - low, below),
        likely,
        likely + math.hypot(high - likely, above),
    )
