"""How far rim and faces run out to the bore: each share's reading, and three ways to add them.

A share is a whole indicator reading t (m): the high spot stands t/2 off center. Answers
    clearance c on diameter, all to one side       t = c
    work that leans by an angle a (rad)            rim: t = 2 a x, x from where it leans;
                                                   face: t = a D over a diameter D
    lean in a clearance c over a fit of length l   a = c / l, corner to corner
    lean where part of the bore stands free        a = g / (2 l): g the gap on diameter at the end
                                                   of the free part, l its length
    worst case       all high spots in line        t = Σ t_i
    root-sum-square  high spots anywhere           t = sqrt(Σ t_i²)
    arrows           high spots at known angles    t = |Σ t_i exp(i a_i)|
Spots anywhere round have root-sum-square as their mean square, exactly; a single piece may show
anything up to the worst case. Turned in place, a share of the spindle or of the mandrel stays out
of the sum for what is turned in that hold, because the tool cuts true to the axis it turns about.
Units: m and rad, as floats or arrays that broadcast; shares along the first axis. Range: 0 or more,
lengths above 0; OutsideModel otherwise. Weakness: small angles; one high spot a turn in each share,
so an oval or three-cornered rim (its form) is added as if it were a throw.
Source: plane geometry, closed form.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Floats, Num


def clearance_reading(clearance: Num) -> Num:
    """Whole reading (m) of work pushed to one side of a clearance on diameter (m).

    It sits half the clearance off center, and the reading is twice that.

    >>> clearance_reading(0.00002)
    2e-05
    """
    not_below_zero("clearance", clearance, "m")
    return clearance


def lean_in_clearance(clearance: Num, length: Num) -> Num:
    """Angle (rad) that work may lean in a clearance on diameter (m) over a fit of this length (m).

    >>> lean_in_clearance(0.00002, 0.02)
    0.001
    """
    not_below_zero("clearance", clearance, "m")
    above_zero("length of the fit", length, "m")
    return clearance / length


def lean_of_free_end(gap: Num, length: Num) -> Num:
    """Angle (rad) by which the free part of a bore may lean until it touches on one side.

    `gap` (m): on diameter at the free end; `length` (m): from where it grips to that end. On a
    plain taper the gap is taper × length, so the lean is half the taper.

    >>> round(lean_of_free_end(0.0005 * 0.02, 0.02), 9)
    0.00025
    """
    not_below_zero("gap", gap, "m")
    above_zero("length that stands free", length, "m")
    return gap / (2 * length)


def rim_reading_of_lean(lean: Num, distance: Num) -> Num:
    """Whole reading (m) at the rim of a lean (rad), so far (m) from the point it leans about.

    >>> round(rim_reading_of_lean(0.001, 0.02) * 1e6, 6)
    40.0
    """
    not_below_zero("lean", lean, "rad")
    not_below_zero("distance", distance, "m")
    return 2 * lean * distance


def face_reading_of_lean(lean: Num, diameter: Num) -> Num:
    """Whole reading (m) on a face near its rim, of this diameter (m), for a lean (rad).

    >>> round(face_reading_of_lean(0.001, 0.1) * 1e6, 6)
    100.0
    """
    not_below_zero("lean", lean, "rad")
    not_below_zero("diameter", diameter, "m")
    return lean * diameter


def worst_case(shares: Sequence[Num]) -> Num:
    """Whole reading (m) with every high spot in line.

    >>> worst_case([3.0, 4.0])
    7.0
    """
    return _summed(_checked(shares))


def root_sum_square(shares: Sequence[Num]) -> Num:
    """Whole reading (m) in the root mean square over high spots anywhere round.

    >>> root_sum_square([3.0, 4.0])
    5.0
    """
    return _plain(np.sqrt(_summed([np.square(share) for share in _checked(shares)])))


def as_arrows(shares: Sequence[Num], angles: Sequence[Num]) -> Num:
    """Whole reading (m) of shares whose high spots stand at these angles (rad).

    >>> as_arrows([3.0, 4.0], [0.0, np.pi])
    1.0
    """
    pairs = list(zip(_checked(shares), angles, strict=True))
    along = _summed([share * np.cos(angle) for share, angle in pairs])
    across = _summed([share * np.sin(angle) for share, angle in pairs])
    return _plain(np.hypot(along, across))


def spots_anywhere(which: int, count: int) -> Floats:
    """Angles (rad), shape (count,), evenly round a turn; another set for each `which`, 0 to 7.

    An additive recurrence with irrational steps, as the draws of `spread`, with other primes: sets
    do not keep step with each other nor with the draws.

    >>> [round(abs(float(np.cos(spots_anywhere(k, 4096)).mean())), 2) for k in (0, 1, 2)]
    [0.0, 0.0, 0.0]
    """
    refuse_unless(0 <= which < len(_PRIMES), "set of angles", float(which), "", "0 to 7")
    return np.asarray(2 * np.pi * ((math.sqrt(_PRIMES[which]) * np.arange(count)) % 1.0))


_PRIMES = (7, 11, 17, 19, 23, 29, 37, 41)


def _checked(shares: Sequence[Num]) -> list[Floats]:
    for share in shares:
        not_below_zero("share of the runout", share, "m")
    return [np.asarray(share, dtype=np.float64) for share in shares]


def _summed(shares: Sequence[Num]) -> Num:
    total = np.zeros(())
    for share in shares:
        total = total + share
    return _plain(total)


def _plain(value: Num) -> Num:
    """A float where no array went in."""
    return float(value) if np.ndim(value) == 0 else value
