"""How far two cones reach into the mouths of one bore: their points must not meet inside.

A 60 degree cone that fills a bore d reaches d / (2 tan 30 deg) in, 0.87 of the bore. Cones made for
a bore have their points faced off; in short work they are cut off further.
"""

from __future__ import annotations

import numpy as np

from borewright.holding.part import Part
from borewright.quantities.si import Metre

HALF_ANGLE = np.pi / 6
"""Of a 60 degree center."""

CUT_OFF = 0.3
"""Depth in a bore of a cone that is made for it, in bores: its point is faced off (ours)."""

ORDINARY = {"inch": 0.5 * 0.0254, "mm": 12e-3}
"""Bores up to this (m) are reached by the point of an ordinary center (ours)."""


def room_inside(part: Part) -> Metre:
    """How far each of two cones may reach into the bore (m)."""
    return (part.length - part.tables.holding_fact("cone_gap").best) / 2


def to_the_point(part: Part) -> Metre:
    """How far a cone with its point on reaches in (m)."""
    return float(part.bore / 2 / np.tan(HALF_ANGLE))


def ordinary(part: Part) -> bool:
    """Whether ordinary centers serve, points and all."""
    return part.bore <= ORDINARY[part.job.units] and to_the_point(part) <= room_inside(part)


def reach_in(part: Part) -> Metre:
    """How far a cone reaches into its mouth (m)."""
    if ordinary(part):
        return to_the_point(part)
    return min(CUT_OFF * part.bore, room_inside(part))


def small_end(part: Part) -> Metre:
    """Diameter (m) at the small end of a cone; 0 where its point is on."""
    return max(0.0, float(part.bore - 2 * reach_in(part) * np.tan(HALF_ANGLE)))


def too_thin(part: Part) -> bool:
    """Whether two cones meet inside even with their points cut off."""
    least = min(part.work.chamfers.legs) + part.tables.holding_fact("cone_least").best
    return room_inside(part) < least
