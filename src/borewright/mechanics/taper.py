"""Where bored work sits on a straight taper mandrel.

`x` runs along the mandrel from the small end of its ground length; `z` along the work from its
leading face, which looks to the large end. The seat `u` is the x of the leading face, so the
mandrel diameter at depth z is d_small + T (u - z).

Source of the geometry: closed form; the usual taper of 0.006 in per ft is in US War Department
TM 1-420 C1 (1942). Weakness: a worn or scored mandrel is not a straight taper.
"""

from __future__ import annotations

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.num import Floats, Num
from borewright.quantities.si import Metre, MetrePerMetre


def diameter_at(x: Num, small_end: Num, taper: MetrePerMetre) -> Num:
    """Mandrel diameter (m) at x (m): d_small + T x."""
    return small_end + taper * x


def position_of(diameter: Num, small_end: Num, taper: MetrePerMetre) -> Num:
    """The x (m) at which the mandrel has this diameter (m). Raises OutsideModel unless T > 0."""
    if not taper > 0:
        raise OutsideModel("taper", taper, "above 0; a parallel mandrel has no seat")
    return (diameter - small_end) / taper


def touch_position(bore: Num, small_end: Num, taper: MetrePerMetre, depth: Num = 0.0) -> Floats:
    """Seat u0 (m) at which the work first touches, with no push at all.

    `bore` and `depth` share their last axis: the bore diameter (m) at each depth (m) from the
    leading face; the smallest u over them is where sliding stops. A straight bore needs one number.

    >>> round(float(touch_position(0.01801, 0.01799, 0.0005)), 6)
    0.04
    """
    stops = np.atleast_1d(np.asarray(position_of(bore, small_end, taper) + depth, dtype=np.float64))
    return np.asarray(stops.min(axis=-1), dtype=np.float64)


def bore_from_touch(
    touch: Num, small_end: Num, taper: MetrePerMetre, push_travel: Num = 0.0
) -> Num:
    """The mandrel read backwards: straight bore (m) from where the work stops.

    `push_travel` (m) is how far the hand's push itself moved it past first touch.

    >>> round(bore_from_touch(0.04, 0.01799, 0.0005), 8)
    0.01801
    """
    return small_end + taper * (touch - push_travel)


def bore_window(
    small_end: Num,
    taper: MetrePerMetre,
    bore_length: Metre,
    ground_length: Metre,
    travel: Num,
    reserve_small: Metre = 0.0,
    reserve_large: Metre = 0.0,
) -> tuple[Num, Num]:
    """Smallest and largest straight bore (m) that this mandrel takes with this travel (m).

    Low: the bore's far end just clears the small end once pressed. High: the leading face just
    reaches the large end of the ground length. Reserves (m) are kept free at either end.

    >>> low, high = bore_window(0.01799, 0.0005, 0.03, 0.11, 0.025)
    >>> round(float(low) * 1e3, 5), round(float(high) * 1e3, 5)
    (17.9925, 18.0325)
    """
    low = small_end + taper * np.maximum(0.0, bore_length + reserve_small - travel)
    high = small_end + taper * (ground_length - reserve_large - travel)
    return low, high


def seat_shift(bore_change: Num, taper: MetrePerMetre) -> Num:
    """How far (m) the seat moves for a change of bore (m).

    >>> round(seat_shift(0.0005 * 0.0254, 0.006 / 12) / 0.0254, 9)
    1.0
    """
    return bore_change / taper
