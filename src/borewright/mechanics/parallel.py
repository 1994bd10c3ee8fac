"""Turning parallel: two bands cut at one setting of the tool tell how far the tailstock is out.

The work turns between centers; the bands stand a known distance a apart. From their diameters
    taper found           t = (tail − head) / a             on diameter, + if the tail end is larger
    set-over wanted       s = (tail − head)/2 × L / a       L the whole length between centers
    left over the work    e = t × length of the work        on diameter
The larger end is the one the tool stood farther from: where the tail end is larger, the tailstock
center goes towards the tool, + here. An indicator on the tailstock barrel, level with the centers
and square to the bed, reads s itself. An error u of each diameter leaves the set-over unsure by
u L / a at worst; the farther apart the bands, the less.
Units: m, as floats or arrays that broadcast. Range: diameters above 0, 0 < a ≤ L; OutsideModel
otherwise. Weakness: the same tool, depth and feed for both bands, no wear between them, the bar so
stiff that it bends alike at both: a thin bar is pushed away most in its middle. A bed twisted or
worn gives a curve, which no set-over takes out.
Source: similar triangles; the same geometry as Jones, Turning and Boring (set-over T L / 2).
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num
from borewright.quantities.si import Metre


def taper_found(head: Num, tail: Num, apart: Num) -> Num:
    """Taper on diameter (m/m) from a band near the headstock and one near the tailstock (m).

    >>> round(taper_found(0.02502, 0.025005, 0.15) * 1e6, 6)
    -100.0
    """
    above_zero("band at the headstock", head, "m")
    above_zero("band at the tailstock", tail, "m")
    above_zero("distance between the bands", apart, "m")
    return (tail - head) / apart


def set_over(taper: Num, between_centers: Num) -> Num:
    """How far (m) to move the tailstock center, + towards the tool, against a taper on diameter.

    >>> round(set_over(-1e-4, 0.3) * 1e6, 6)
    -15.0
    """
    above_zero("length between centers", between_centers, "m")
    return taper * between_centers / 2


def set_over_error(reading_error: Num, apart: Num, between_centers: Num) -> Num:
    """How far (m) the set-over may be out, at worst, for an error (m) of each diameter.

    >>> round(set_over_error(2e-6, 0.15, 0.3) * 1e6, 6)
    4.0
    """
    not_below_zero("error of a reading", reading_error, "m")
    above_zero("distance between the bands", apart, "m")
    refuse_unless(
        np.greater_equal(between_centers, apart),
        "length between centers",
        between_centers,
        "m",
        "the distance between the bands or more",
    )
    return reading_error * between_centers / apart


def error_over(taper: Num, length: Num) -> Num:
    """How much (m, on diameter) a taper makes over work of this length (m), without its sign.

    >>> round(float(error_over(-1e-4, 0.05)) * 1e6, 6)
    5.0
    """
    not_below_zero("length of the work", length, "m")
    return np.asarray(np.abs(taper) * length)[()]


def taper_of_set_over(out: Num, between_centers: Num) -> Num:
    """Taper on diameter (m/m) that a tailstock center out by this much (m) turns.

    >>> round(taper_of_set_over(2.5e-5, 0.1) * 1e6, 6)
    500.0
    """
    above_zero("length between centers", between_centers, "m")
    return 2 * out / between_centers


def bands_apart(reading_error: Metre, length: Metre, allowed: Metre) -> Metre:
    """How far (m) apart bands must stand for two readings to show an error (m) over the work (m).

    Two diameters, each out by the error of a reading, are 2 u out against each other.

    >>> round(bands_apart(2e-6, 0.05, 1e-6), 6)
    0.2
    """
    not_below_zero("error of a reading", reading_error, "m")
    above_zero("length of the work", length, "m")
    above_zero("error allowed", allowed, "m")
    return 2 * reading_error * length / allowed
