"""The top slide set over by a small angle: for a fine feed, or for a slight taper.

θ is from the lathe's axis, 0 where the top slide runs along it. A slide travel s moves the tool
    across  s sin θ  (twice that on diameter),     along  s cos θ,
so work turned with it tapers on diameter by T = 2 tan θ per length. Source: geometry. Weakness: the
scale of a top slide is read to half a degree or so at best; set fine angles by an indicator over a
travel. Backlash and a tool off center height are left out.
"""

from __future__ import annotations

import math

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Floats, Num
from borewright.quantities.si import Metre, MetrePerMetre

MOST_ROWS = 1000
"""More steps than anyone turns by hand."""


def diameter_per_slide(angle: Num) -> Num:
    """Change of diameter per slide travel: 2 sin θ. OutsideModel unless 0 <= θ <= 90°.

    >>> round(float(diameter_per_slide(math.radians(0.5))) * 0.1, 5)
    0.00175
    """
    _set_over(angle)
    return np.asarray(2 * np.sin(angle), dtype=np.float64)


def along_per_slide(angle: Num) -> Num:
    """Movement along the lathe per slide travel: cos θ; refusals as above.

    >>> round(float(along_per_slide(math.radians(60.0))), 6)
    0.5
    """
    _set_over(angle)
    return np.asarray(np.cos(angle), dtype=np.float64)


def angle_for_feed(diameter_change: Num, slide: Num) -> Num:
    """Angle (rad) at which a slide travel (m) changes the diameter by this much (m).

    OutsideModel where the slide does not move, or the change is below 0 or over twice the travel.

    >>> round(math.degrees(float(angle_for_feed(0.02e-3, 0.1e-3))), 3)  # a tenth on radius
    5.739
    """
    above_zero("travel of the slide", slide)
    sine = np.divide(diameter_change, 2 * np.asarray(slide))
    refuse_unless((sine >= 0) & (sine <= 1), "change of radius per travel", sine, "", "0 to 1")
    return np.asarray(np.arcsin(sine), dtype=np.float64)


def taper_of_angle(angle: Num) -> Num:
    """Taper on diameter per length, of work turned with the slide at θ (rad): 2 tan θ.

    OutsideModel unless 0 <= θ < 90°.

    >>> round(float(taper_of_angle(math.radians(0.5))), 5)
    0.01745
    """
    _set_over(angle)
    refuse_unless(
        np.less(angle, math.pi / 2), "angle of the slide", angle, "", "below a right angle"
    )
    return np.asarray(2 * np.tan(angle), dtype=np.float64)


def angle_of_taper(taper: Num) -> Num:
    """Angle (rad) of the slide for a taper on diameter per length: atan(T / 2).

    OutsideModel for a taper below 0.

    >>> round(math.degrees(float(angle_of_taper(0.0005))), 4)
    0.0143
    """
    not_below_zero("taper", taper)
    return np.asarray(np.arctan(np.divide(taper, 2)), dtype=np.float64)


def indicator_over(taper: Num, travel: Num) -> Num:
    """What an indicator square to the axis reads (m) over a slide travel (m): travel sin θ.

    OutsideModel for a taper below 0 or no travel.

    >>> round(float(indicator_over(0.0005, 0.05)) * 1e6, 2)
    12.5
    """
    above_zero("travel of the slide", travel)
    return np.asarray(travel * np.sin(angle_of_taper(taper)), dtype=np.float64)


def step_table(length: Metre, taper: MetrePerMetre, dial_step: Metre) -> tuple[Floats, Floats]:
    """A slight taper as a staircase: where each cut stops, and its depth on diameter, both (k,) m.

    The cuts start at the free end, the small one, each deeper by `dial_step` (m on diameter), and
    stop at a distance from the large end: depth / T. No cut goes under the taper; ridges up to one
    dial step on diameter are left to blend. `length` (m) is the stub's. OutsideModel unless all are
    above 0 and the taper over the length is at least one step and at most 1000.

    >>> stops, depths = step_table(0.04, 0.0005, 0.005e-3)
    >>> [round(float(x) * 1e3, 1) for x in stops]
    [10.0, 20.0, 30.0]
    >>> [round(float(d) * 1e6, 1) for d in depths]
    [5.0, 10.0, 15.0]
    """
    above_zero("length of the stub", length)
    above_zero("taper", taper)
    above_zero("step of the dial", dial_step)
    if not dial_step < taper * length:
        allowed = f"below the whole taper, {taper * length:.4g} m on diameter"
        raise OutsideModel("step of the dial", f"{dial_step:.4g} m", allowed)
    # A cut that would stop at the free end itself cuts nothing; rounding must not add it.
    rows = math.ceil(taper * length / dial_step * (1 - 1e-9)) - 1
    if rows > MOST_ROWS:
        raise OutsideModel("number of steps", rows, f"at most {MOST_ROWS}")
    depths = dial_step * np.arange(1.0, rows + 1)
    return depths / taper, depths


def _set_over(angle: Num) -> None:
    turned = np.asarray(angle, dtype=np.float64)
    refuse_unless(
        (turned >= 0) & (turned <= math.pi / 2), "angle of the slide (rad)", turned, "", "0 to pi/2"
    )
