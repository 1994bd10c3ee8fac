"""What the limits of a mandrel's drawing let through, and the bores that every one of them takes.

A plain taper mandrel is held by two diameters at gauge planes: `near_small` at x_s, `near_large` at
x_l from the small end of its ground length. Any straight taper within both bands passes, so its
diameter at x,
    d(x) = (1 − w) d_s + w d_l,    w = (x − x_s) / (x_l − x_s),
is least and greatest at the ends of the bands. A bore b of length L, pressed by the travel s, with
r_s and r_l kept free, bears on the ground length of each of them if
    greatest d(max(0, L + r_s − s)) ≤ b ≤ least d(G − r_l − s),    G the ground length.
Units: m. Range: 0 <= x_s < x_l <= G. Source: closed form; the window of one mandrel as in
`mechanics.taper.bore_window`. Weakness: between the planes the mandrel is taken as straight; the
stations of an acceptance sheet see whether it is.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from borewright.errors import OutsideModel
from borewright.mechanics.allowed import above_zero, not_below_zero
from borewright.mechanics.num import Num
from borewright.quantities.si import Metre, MetrePerMetre

LONGEST: Final[Metre] = 3.0
"""Ground lengths are looked for up to this; no shop grinds more."""
CLOSE: Final[Metre] = 1e-7

Band = tuple[Metre, Metre]


@dataclass(frozen=True, slots=True)
class Held:
    """What is held on it: bore length L, travel s, what is kept free at small and large end, m."""

    length: Metre
    travel: Metre
    free_small: Metre = 0.0
    free_large: Metre = 0.0

    @property
    def low_at(self) -> Metre:
        """Where the smallest bore's far end comes to stand."""
        return max(0.0, self.length + self.free_small - self.travel)

    def high_at(self, ground: Metre) -> Metre:
        """Where the largest bore touches first."""
        return ground - self.free_large - self.travel


@dataclass(frozen=True, slots=True)
class Zone:
    """The drawing's limits: both gauge planes and the band of the diameter at each, m."""

    at_small: Metre
    at_large: Metre
    near_small: Band
    near_large: Band

    def __post_init__(self) -> None:
        if not 0.0 <= self.at_small < self.at_large:
            found = f"{self.at_small:.6g} and {self.at_large:.6g} m"
            raise OutsideModel("gauge planes", found, "the one near the small end first, apart")
        for name, (low, high) in (("small", self.near_small), ("large", self.near_large)):
            above_zero(f"diameter near the {name} end", low, "m")
            if high < low:
                raise OutsideModel("limits", f"{low:.8g} to {high:.8g} m", "the smaller one first")

    def ends(self, x: Metre) -> Band:
        """Least and greatest diameter (m) that the limits let through at x (m).

        >>> zone = Zone(0.0, 0.1, (0.01799, 0.017995), (0.01804, 0.018045))
        >>> low, high = zone.ends(0.05)
        >>> round(low * 1e3, 4), round(high * 1e3, 4)
        (18.015, 18.02)
        """
        w = (x - self.at_small) / (self.at_large - self.at_small)
        parts = [
            tuple(share * d for d in band)
            for share, band in ((1 - w, self.near_small), (w, self.near_large))
        ]
        return sum(min(p) for p in parts), sum(max(p) for p in parts)

    def takes(self, held: Held, ground: Metre) -> Band | None:
        """Smallest and largest bore (m) that every mandrel within the limits takes; None for none.

        >>> zone = Zone(0.0, 0.1, (0.01799, 0.01799), (0.01804, 0.01804))
        >>> low, high = zone.takes(Held(0.03, 0.025), 0.11)
        >>> round(low * 1e3, 4), round(high * 1e3, 4)
        (17.9925, 18.0325)
        """
        if held.high_at(ground) <= held.low_at:
            return None
        low, high = self.ends(held.low_at)[1], self.ends(held.high_at(ground))[0]
        return (low, high) if low <= high else None


def taper_between(
    near_small: Num, near_large: Num, at_small: Metre, at_large: Metre
) -> tuple[Num, Num]:
    """Small end (m) and taper (m/m) of the straight taper through two diameters (m).

    >>> small, taper = taper_between(0.018, 0.01804, 0.01, 0.09)
    >>> round(small * 1e3, 4), round(taper, 9)
    (17.995, 0.0005)
    """
    taper = (near_large - near_small) / (at_large - at_small)
    return near_small - taper * at_small, taper


def ground_for(
    band: Metre, taper: MetrePerMetre, tolerance: Metre, plane: Metre, held: Held
) -> Metre:
    """Shortest ground length (m) on which a whole band of bores (m) is taken at any limit.

    `tolerance`: width of the limits at each plane (m); `plane`: how far the planes stand from the
    ends of the ground length (m). OutsideModel where no length up to 3 m does.

    >>> length = ground_for(18e-6, 0.0005, 0.0, 0.006, Held(0.03, 0.038, 0.005, 0.010))
    >>> round(length * 1e3, 2)
    84.0
    """
    not_below_zero("band of bores", band, "m")
    above_zero("taper", taper, "m/m")
    low, high = held.free_large + held.travel + held.low_at + 2 * plane, LONGEST
    if _width(high, taper, tolerance, plane, held) < band:
        raise OutsideModel("band of bores", f"{band:.4g} m", "one that 3 m of taper take")
    while high - low > CLOSE:
        middle = (low + high) / 2
        wide = _width(middle, taper, tolerance, plane, held) >= band
        low, high = (low, middle) if wide else (middle, high)
    return high


def _width(
    ground: Metre, taper: MetrePerMetre, tolerance: Metre, plane: Metre, held: Held
) -> Metre:
    """Width (m) of the band of bores that a ground length takes at any limit; below 0 for none."""
    size = 1.0
    large = size + taper * (ground - 2 * plane)
    zone = Zone(plane, ground - plane, (size, size + tolerance), (large, large + tolerance))
    return zone.ends(held.high_at(ground))[0] - zone.ends(held.low_at)[1]
