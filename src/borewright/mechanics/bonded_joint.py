"""Work stuck on: what a bonded face or a bonded gap carries in shear.

A face is a ring from `inner` to `outer` diameter, bonded on its flat; a gap is a bonded cylinder.
    face  torque, even shear     M = τ π (D³ - d³) / 12           (a bond that yields: the most)
    face  torque, growing        M = τ π (D⁴ - d⁴) / (16 D)       (stiff: gives first outside)
    gap   torque  τ π l D² / 2,  axial  τ π l D,  both  sqrt((2 M / D)² + F²) = τ π l D
The growing one is never more (3/4 for a full disc), and a brittle bond runs from where it starts:
it is the one to plan with. Source: closed form (any textbook on strength of materials). Weakness:
shear alone. Peel, pull straight off the face and tilting are NOT in it, and a bond is far weaker
against them; shear is taken as even along a gap, where stiff bonds give first at the ends.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num
from borewright.mechanics.slip import friction_demand, slip_torque
from borewright.quantities.si import Kelvin, Metre, PerKelvin, SquareMetre


def face_area(inner: Num, outer: Num) -> SquareMetre | Num:
    """Area (m²) of a bonded face. OutsideModel unless 0 <= inner < outer (m).

    >>> round(face_area(0.0, 0.02) * 1e6, 2)
    314.16
    """
    _ring(inner, outer)
    return np.pi * (outer**2 - inner**2) / 4


def face_torque_even(strength: Num, inner: Num, outer: Num) -> Num:
    """Most torque (N·m) of a face whose bond (Pa) yields all over; refusals as in `face_area`.

    >>> round(face_torque_even(10e6, 0.0, 0.04), 2)
    167.55
    """
    not_below_zero("shear strength of the bond", strength)
    _ring(inner, outer)
    return strength * np.pi * (outer**3 - inner**3) / 12


def face_torque(strength: Num, inner: Num, outer: Num) -> Num:
    """Torque (N·m) at which the outer edge of a stiff bond reaches its strength (Pa): the safe one.

    >>> round(face_torque(10e6, 0.0, 0.04) / face_torque_even(10e6, 0.0, 0.04), 6)
    0.75
    """
    not_below_zero("shear strength of the bond", strength)
    _ring(inner, outer)
    return strength * np.pi * (outer**4 - inner**4) / (16 * outer)


def face_shear(torque: Num, across: Num, inner: Num, outer: Num) -> Num:
    """Greatest shear (Pa) in a face from a torque (N·m) and a force along the face (N).

    At one place of the outer edge both point the same way, so they add: 16 M D / (π (D⁴ - d⁴))
    and F over the area. OutsideModel unless 0 <= inner < outer.

    >>> round(float(face_shear(face_torque(10e6, 0.0, 0.04), 0.0, 0.0, 0.04)) / 1e6, 6)
    10.0
    """
    _ring(inner, outer)
    turned = np.abs(torque) * 16 * outer / (np.pi * (outer**4 - inner**4))
    return np.asarray(turned + np.abs(across) / face_area(inner, outer), dtype=np.float64)


def gap_axial(strength: Num, diameter: Num, length: Num) -> Num:
    """Axial force (N) that a bonded gap carries with no torque: τ π l D.

    OutsideModel unless diameter and length (m) are above 0 and the strength (Pa) is not below.

    >>> round(gap_axial(10e6, 0.02, 0.03), 1)
    18849.6
    """
    not_below_zero("shear strength of the bond", strength)
    above_zero("diameter of the gap", diameter)
    above_zero("length of the gap", length)
    return strength * np.pi * diameter * length


def gap_torque(strength: Num, diameter: Num, length: Num) -> Num:
    """Torque (N·m) that a bonded gap carries with no axial force; refusals as in `gap_axial`.

    >>> round(gap_torque(10e6, 0.02, 0.03), 3)
    188.496
    """
    return slip_torque(gap_axial(strength, diameter, length), 1.0, diameter)


def gap_shear(torque: Num, axial: Num, diameter: Num, length: Num) -> Num:
    """Shear (Pa) in a gap from a torque (N·m) and an axial force (N) together; refusals as above.

    >>> round(float(gap_shear(0.03, 4.0, 0.02, 0.1 / np.pi)), 6)
    2500.0
    """
    return friction_demand(torque, diameter, axial) / gap_axial(1.0, diameter, length)


def mismatch_strain(
    expansions: tuple[PerKelvin, PerKelvin], change: Kelvin, reach: Metre, thickness: Num
) -> Num:
    """Shear strain in a bond (m) where two bodies warm alike: |α₁ - α₂| |ΔT| reach / thickness.

    A warning, not a strength: `reach` (m) is from what stays put to the edge, the radius of a face
    or half the length of a gap. The bond is taken as much softer than both bodies, so a thin stiff
    bond shows less. OutsideModel unless reach and thickness are above 0.

    >>> round(mismatch_strain((23e-6, 11.5e-6), 40.0, 0.025, 0.0001), 4)
    0.115
    """
    above_zero("reach of the bond", reach)
    above_zero("thickness of the bond", thickness)
    return abs(expansions[0] - expansions[1]) * abs(change) * reach / thickness


def _ring(inner: Num, outer: Num) -> None:
    not_below_zero("inner diameter of the bond", inner)
    wall = np.subtract(outer, inner)
    refuse_unless(wall > 0, "outer less inner diameter of the bond", wall, "", "above 0")
