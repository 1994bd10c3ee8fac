"""The crown of a flat-belt pulley as a form: double taper or arc, and how to set it.

With w the width of the face, h how far its middle stands above its edges on radius and z the
distance from the middle, the face lies below its middle by

    double taper    h (|z| - f/2) / (w/2 - f/2)  outside a flat of width f,  0 on it
    arc             R - √(R² - z²),   R = (w²/4 + h²) / (2 h)

Source: geometry. Weakness: a hand-turned taper has a rounded apex, an arc stepped off by hand is a
row of stairs (see `crown_steps`). How high a crown should be is no matter of geometry: the rules
are rows of a table.
"""

from __future__ import annotations

import math

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num


def taper_angle(height: Num, face: Num, flat: Num = 0.0) -> Num:
    """Angle (rad) of either half to the axis, atan(h / ((w - f) / 2)), all lengths in m.

    OutsideModel unless height and face are above 0 and 0 <= flat < face.

    >>> round(math.degrees(float(taper_angle(0.4e-3, 50.8e-3))), 4)
    0.9022
    """
    return np.asarray(np.arctan2(height, _sloped(height, face, flat)), dtype=np.float64)


def arc_radius(height: Num, face: Num) -> Num:
    """Radius (m) of the arc through both edges and the middle: (w²/4 + h²) / (2 h).

    OutsideModel unless 0 < height <= face / 2: beyond that it is more than half a circle.

    >>> round(float(arc_radius(0.4e-3, 50.8e-3)), 4)
    0.8066
    """
    above_zero("width of the face", face, "m")
    above_zero("height of the crown", height, "m")
    half = np.divide(face, 2)
    refuse_unless(np.less_equal(height, half), "height of the crown", height, "m", "half the face")
    return np.asarray((half**2 + np.square(height)) / (2 * np.asarray(height)), dtype=np.float64)


def taper_fall(from_middle: Num, height: Num, face: Num, flat: Num = 0.0) -> Num:
    """How far (m) a double taper lies below its middle there; refusals as in `taper_angle`.

    >>> places = np.array([0.0, 5e-3, 15e-3, 25e-3])
    >>> [round(float(d) * 1e3, 3) for d in taper_fall(places, 1e-3, 50e-3, 10e-3)]
    [0.0, 0.0, 0.5, 1.0]
    """
    slope = np.divide(height, _sloped(height, face, flat))
    past_flat = np.abs(_on_face(from_middle, face)) - np.divide(flat, 2)
    return np.asarray(slope * np.maximum(past_flat, 0.0), dtype=np.float64)


def arc_fall(from_middle: Num, height: Num, face: Num) -> Num:
    """How far (m) an arc lies below its middle there; refusals as in `arc_radius`.

    >>> [round(float(d) * 1e3, 4) for d in arc_fall(np.array([0.0, 12.5e-3, 25e-3]), 1e-3, 50e-3)]
    [0.0, 0.2497, 1.0]
    """
    radius, z = arc_radius(height, face), _on_face(from_middle, face)
    # R - sqrt(R² - z²) as it stands loses the digits of a slight crown.
    rest = np.sqrt(np.maximum(np.square(radius) - np.square(z), 0.0))
    return np.asarray(np.square(z) / (radius + rest), dtype=np.float64)


def rise_on_slide(angle: Num, travel: Num) -> Num:
    """What an indicator square to the axis reads (m) while the top slide moves this far: s sin θ.

    It stands against a bar that is known to be parallel with the lathe. OutsideModel for an angle
    outside 0 to 90 degrees or no travel.

    >>> round(float(rise_on_slide(math.radians(0.9022), 50e-3)) * 1e3, 3)
    0.787
    """
    above_zero("travel of the slide", travel, "m")
    not_below_zero("angle of the slide", angle, "rad")
    refuse_unless(np.less(angle, math.pi / 2), "angle of the slide", angle, "rad", "a right angle")
    return np.asarray(np.multiply(travel, np.sin(angle)), dtype=np.float64)


def _sloped(height: Num, face: Num, flat: Num) -> Num:
    """Length (m) along the axis of either sloped half, checked."""
    above_zero("width of the face", face, "m")
    above_zero("height of the crown", height, "m")
    not_below_zero("flat in the middle", flat, "m")
    refuse_unless(np.less(flat, face), "flat in the middle", flat, "m", "narrower than the face")
    return np.asarray((np.asarray(face) - flat) / 2, dtype=np.float64)


def _on_face(from_middle: Num, face: Num) -> Num:
    z = np.asarray(from_middle, dtype=np.float64)
    on = np.abs(z) <= np.divide(face, 2) * (1 + 1e-9)
    refuse_unless(on, "place on the face, from its middle", z, "m", "within half the face")
    return z
