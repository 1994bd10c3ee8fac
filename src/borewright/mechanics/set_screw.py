"""A set screw against a shaft: the torque it holds, and how far it throws the work over.

Answers what a screw of a given holding force H (from a table: what it resists along the surface of
the shaft) holds at a shaft of diameter d, and what its push does to work that fits loosely:
    one screw          T = H d / 2
    two, φ apart       T = H d / 2 · (2 q + 2 (1 - q) cos(φ / 2))
    one on a flat      T = H (q h + (1 - q) d / 2) + N a / 2,  h = d / 2 - depth of the flat
    thrown over        c / 2 off the center, c on the indicator;  c = bore - shaft
H comes half from the point and half from the wall opposite when both have the same friction; q is
the share of the point. Two screws press the wall only with the resultant of their pushes: in line
along the shaft they hold twice as much, opposite each other they lift the shaft off the wall and
hold only by their points. On a flat the push N of the screw moves to the edge of its tip, of
diameter a, before the flat can turn under it.
Units: N, m, rad, N·m, as floats or arrays that broadcast. Range: forces 0 or more, sizes above 0,
0 <= q <= 1, 0 <= φ <= π, bore not under the shaft, a flat of less than half the shaft and not
narrower than the tip; OutsideModel otherwise. Weakness: H itself, two to one between charts; a cup
point bites, so its share is more than half and rises; the flat's figure is the start of turning,
with no bite.
Source: equilibrium, closed form; torque from holding force as in Shigley, Mechanical Engineering
Design, sect. 7-7 (from memory).
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num
from borewright.quantities.si import Ratio


def screw_torque(holding: Num, diameter: Num) -> Num:
    """Torque (N·m) that one screw's holding force (N) carries on a shaft (m): H d / 2.

    >>> screw_torque(4000.0, 0.016)
    32.0
    """
    not_below_zero("holding force", holding, "N")
    above_zero("diameter of the shaft", diameter, "m")
    return holding * diameter / 2


def two_screws(angle: Num, point_share: Ratio = 0.5) -> Num:
    """What two equal screws hold over what one holds, `angle` (rad) apart round the shaft.

    >>> round(float(two_screws(0.0)), 6), round(float(two_screws(np.pi)), 6)
    (2.0, 1.0)
    """
    within = np.less_equal(angle, np.pi)
    not_below_zero("angle between screws", angle, "rad")
    refuse_unless(within, "angle between screws", angle, "rad", "0 to π")
    _share(point_share)
    return 2 * point_share + 2 * (1 - point_share) * np.cos(angle / 2)


def flat_width(diameter: Num, depth: Num) -> Num:
    """Width (m) of a flat of this depth (m) on a round shaft (m): 2 sqrt(depth (d - depth)).

    >>> round(float(flat_width(0.010, 0.002)), 6)
    0.008
    """
    not_below_zero("depth of the flat", depth, "m")
    shallow = np.less(depth, diameter / 2)
    refuse_unless(shallow, "depth of the flat", depth, "m", "less than half the shaft")
    return 2 * np.sqrt(depth * (diameter - depth))


def torque_on_flat(
    holding: Num, push: Num, diameter: Num, depth: Num, tip: Num, point_share: Ratio = 0.5
) -> Num:
    """Torque (N·m) at which a shaft with a flat starts to turn under one screw.

    `holding` (N) as for a round shaft, `push` (N) of the screw, `tip` the diameter (m) of its end.

    >>> round(float(torque_on_flat(2000.0, 6000.0, 0.010, 0.002, 0.004)), 6)
    20.0
    """
    not_below_zero("push of the screw", push, "N")
    above_zero("tip of the screw", tip, "m")
    _share(point_share)
    seated = np.less_equal(tip, flat_width(diameter, depth))
    refuse_unless(seated, "tip of the screw", tip, "m", "no wider than the flat")
    lowered = screw_torque(holding, diameter) - point_share * holding * depth
    return lowered + push * tip / 2


def thrown_over(bore: Num, shaft: Num) -> Num:
    """How far (m) a screw moves the work off center: half of what the bore (m) is over the shaft.

    >>> round(thrown_over(0.01602, 0.01600) * 1e6, 3)
    10.0
    """
    above_zero("shaft", shaft, "m")
    loose = np.greater_equal(bore, shaft)
    refuse_unless(loose, "bore", bore, "m", "the shaft or more")
    return (bore - shaft) / 2


def thrown_runout(bore: Num, shaft: Num) -> Num:
    """What an indicator on the work shows (m), high to low: twice the throw, so all the clearance.

    >>> round(thrown_runout(0.01602, 0.01600) * 1e6, 3)
    20.0
    """
    return 2 * thrown_over(bore, shaft)


def _share(point_share: Ratio) -> None:
    good = np.logical_and(np.greater_equal(point_share, 0), np.less_equal(point_share, 1))
    refuse_unless(good, "share of the point", point_share, "", "0 to 1")
