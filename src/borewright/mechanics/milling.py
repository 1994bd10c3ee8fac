"""Form milling of one tooth space with a disc cutter, work held on a dividing head.

The arc of cut is counted from where a tooth path leaves the root of the space (chip nothing) to
where it leaves the outside (chip thickest):
    φ_s = acos(1 - 2 a / D)              a depth of the pass, D cutter diameter
    h(φ) = f_z sin φ                     f_z feed a tooth
    F(φ) = k_c11 L (h b / L)^(1 - m) K   Kienzle; L edge laid flat, b mean width of the space (mm)
A chip b wide and h thick comes off an edge L long, so the chip on that edge is h b / L thick.
Teeth in cut z φ_s / 2π; the peak is the sum over the teeth in cut when the first of them leaves;
the mean is z / 2π times the integral of F over the arc; mean power is the mean force × v.
Source: geometry of the arc of cut and Kienzle's law, as in textbooks on milling (from memory).
Weakness: the path of a tooth is taken as a circle (feed small beside the cutter), every part of
the edge as engaged over the whole arc; chips this thin stretch Kienzle's law.
"""

from __future__ import annotations

import math

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.kienzle import Chip, kienzle_force
from borewright.mechanics.num import Num
from borewright.quantities.si import Metre, MetrePerSecond, Radian, RevPerSecond

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(24)
_STRETCH = 4
"""φ = φ_s t^4 takes the root at φ = 0 out of the integrand: the quadrature then gets it right."""


def engagement_angle(depth: Metre, cutter_diameter: Metre) -> Radian:
    """Arc of cut (rad): acos(1 - 2 a / D). OutsideModel unless 0 < a <= D / 2.

    >>> round(math.degrees(engagement_angle(0.0315, 0.063)), 6)
    90.0
    """
    if not 0 < depth <= cutter_diameter / 2:
        raise OutsideModel("depth of cut", f"{depth:.4g} m", "above 0, to half the cutter")
    return math.acos(1 - 2 * depth / cutter_diameter)


def chip_thickness(feed: Metre, angle: Radian) -> Metre:
    """Thickness (m) of the chip at an angle of the arc: f_z sin φ.

    >>> chip_thickness(0.05e-3, 0.0)
    0.0
    """
    return feed * math.sin(angle)


def teeth_in_cut(teeth: int, arc: Radian) -> float:
    """How many teeth are in the arc on the average: z φ_s / 2π.

    >>> round(teeth_in_cut(12, math.pi / 6), 9)
    1.0
    """
    return teeth * arc / (2 * math.pi)


def tooth_force(
    feed: Metre, angle: Radian, width: Metre, edge: Metre, kc11: Num, exponent: float
) -> Num:
    """Tangential force (N) of one tooth at an angle of the arc; `kc11` in Pa, corrections in it.

    >>> round(float(tooth_force(1e-3, math.pi / 2, 1e-3, 1e-3, 1500e6, 0.25)), 6)
    1500.0
    """
    thickness = chip_thickness(feed, angle) * width / edge
    return kienzle_force(Chip(edge, thickness, math.pi / 2), kc11, exponent)


def peak_force(
    feed: Metre, arc: Radian, teeth: int, width: Metre, edge: Metre, kc11: Num, exponent: float
) -> Num:
    """Largest tangential force (N): the teeth in cut, the first of them about to leave.

    Right while the arc is at most a quarter turn, because each tooth's force then only grows.

    >>> one = float(peak_force(1e-4, 0.5, 6, 1e-3, 1e-3, 1500e6, 0.25))
    >>> one == float(tooth_force(1e-4, 0.5, 1e-3, 1e-3, 1500e6, 0.25))
    True
    """
    step = 2 * math.pi / teeth
    places = [arc - k * step for k in range(teeth) if arc - k * step > 0]
    forces = [tooth_force(feed, p, width, edge, kc11, exponent) for p in places]
    return np.asarray(sum(forces), dtype=np.float64)


def mean_force(
    feed: Metre, arc: Radian, teeth: int, width: Metre, edge: Metre, kc11: Num, exponent: float
) -> Num:
    """Tangential force (N) averaged over a turn of the cutter.

    With exponent 0 it is kc11 × metal removed / cutter speed.

    >>> round(float(mean_force(1e-4, math.pi / 2, 12, 1e-3, 1e-3, 1000e6, 0.0)), 6)
    190.985932
    """
    t = 0.5 * (_NODES + 1)
    power = 1 - exponent
    spread = np.sin(arc * t**_STRETCH) ** power * arc * _STRETCH * t ** (_STRETCH - 1)
    whole = float(np.dot(_WEIGHTS, spread)) / 2
    steepest = tooth_force(feed, math.pi / 2, width, edge, kc11, exponent)
    return np.asarray(teeth / (2 * math.pi) * steepest * whole, dtype=np.float64)


def along_and_across(
    tangential: Num, radial_share: Num, angle: Radian, *, climb: bool = False
) -> tuple[Num, Num]:
    """Force (N) of a tooth on the work: along its axis, and across it, + away from its axis.

    `radial_share`: the tooth's force along its own radius over its tangential force. Along the
    axis + is against the travel of the work when milling up (the cutter pushes the work ahead of
    itself) and with the travel of the work when climbing (the cutter pulls it).

    >>> along_and_across(100.0, 0.0, 0.0)
    (100.0, 0.0)
    """
    c, s = math.cos(angle), math.sin(angle)
    if climb:
        return tangential * (c - radial_share * s), -tangential * (s + radial_share * c)
    return tangential * (c + radial_share * s), tangential * (s - radial_share * c)


def table_feed(feed: Metre, teeth: int, spindle: RevPerSecond) -> MetrePerSecond:
    """Speed (m/s) of the table: f_z z n.

    >>> round(table_feed(0.05e-3, 12, 2.0) * 60e3, 6)  # mm/min
    72.0
    """
    return feed * teeth * spindle


def space_removal_rate(width: Metre, depth: Metre, table: MetrePerSecond) -> float:
    """Metal removed (m³/s): b a v_f.

    >>> round(space_removal_rate(3e-3, 4e-3, 1e-3) * 1e9, 9)
    12.0
    """
    return width * depth * table
