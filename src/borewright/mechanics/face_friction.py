"""Torque that two faces hold by friction when a nut or a draw bar clamps them together.

Answers what a shoulder, a collar or the face of the next work holds. F is the clamp force, μ the
friction, r_i and r_o the inside and outside radius of the metal that truly touches:
    uniform pressure   T = μ F (2/3) (r_o³ - r_i³) / (r_o² - r_i²)
    uniform wear       T = μ F (r_o + r_i) / 2
    at the inside edge T = μ F r_i
Uniform wear is the safe one of the first two. Its pressure grows inwards as 1/r, so the same force
stands on a shorter arm: below uniform pressure by a quarter at most (r_i = 0), by nothing on a
narrow ring, and never above it. A nut, too, presses hardest near its thread.
Nothing that touches inside r_i..r_o can hold less than the inside edge: that is the floor, and the
figure for a face that is dished.
Units: N, m (diameters), N·m, as floats or arrays that broadcast. Range: 0 <= inside < outside;
OutsideModel otherwise. Weakness: Coulomb friction, the least known number; a face with chips, burrs
or a bore chamfer touches on another ring than drawn.
Source: integrals of μ p r dA, as in any chapter on disc clutches (Shigley, Mechanical Engineering
Design, ch. 16, from memory); checked against Bhandari, Design of Machine Elements, Ex. 11.1, 11.2.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num


def pressure_torque(force: Num, friction: Num, inside: Num, outside: Num) -> Num:
    """Torque (N·m) under uniform pressure; force in N, diameters (m) of the ring that touches.

    Written without the difference of cubes, so that a narrow ring keeps all its digits.

    >>> round(pressure_torque(9000.0, 0.1, 0.0, 0.040), 6)
    12.0
    """
    _check(force, friction, inside, outside)
    arm = (outside**2 + outside * inside + inside**2) / (3 * (outside + inside))
    return friction * force * arm


def wear_torque(force: Num, friction: Num, inside: Num, outside: Num) -> Num:
    """Torque (N·m) under uniform wear: the safe one; inputs as for `pressure_torque`.

    >>> round(wear_torque(9000.0, 0.1, 0.0, 0.040), 6)
    9.0
    """
    _check(force, friction, inside, outside)
    return friction * force * (outside + inside) / 4


def floor_torque(force: Num, friction: Num, inside: Num, outside: Num) -> Num:
    """Torque (N·m) if only the inside edge touches: no face holds less; inputs as above.

    >>> round(floor_torque(9000.0, 0.1, 0.020, 0.040), 6)
    9.0
    """
    _check(force, friction, inside, outside)
    return friction * force * inside / 2


def in_parallel(torques: Num) -> Num:
    """Torque (N·m) of faces that all share the load, faces along the first axis: their sum.

    Faces share it only where both of their partners are held against the same turn.

    >>> float(in_parallel(np.array([9.0, 12.0])))
    21.0
    """
    not_below_zero("torque of a face", torques, "N·m")
    return np.asarray(np.sum(np.atleast_1d(torques), axis=0), dtype=np.float64)


def in_series(torques: Num) -> Num:
    """Torque (N·m) of faces that hand it on one to the next, first axis: that of the weakest.

    >>> float(in_series(np.array([9.0, 12.0])))
    9.0
    """
    not_below_zero("torque of a face", torques, "N·m")
    return np.asarray(np.min(np.atleast_1d(torques), axis=0), dtype=np.float64)


def gang_torque(one_way: Num, other_way: Num = 0.0) -> Num:
    """Torque (N·m) of a cut on one work of a gang, when its faces slip.

    `one_way` and `other_way` are the torques of the faces (first axis) from that work to either
    end of the gang. Each way is a series, the two ways are parallel. An end that is free to turn
    with the nut holds nothing: leave it 0. Cuts on several works at once are not in it: together
    they have only the end faces.

    >>> gang = np.full(5, 9.0)  # five equal faces between four works and their two collars
    >>> float(gang_torque(gang[:2], gang[2:])), float(gang_torque(gang[:2]))
    (18.0, 9.0)
    """
    return in_series(one_way) + in_series(other_way)


def _check(force: Num, friction: Num, inside: Num, outside: Num) -> None:
    not_below_zero("clamp force", force, "N")
    not_below_zero("friction", friction)
    not_below_zero("inside of the face", inside, "m")
    above_zero("outside of the face", outside, "m")
    wider = np.greater(outside, inside)
    refuse_unless(wider, "outside of the face", outside, "m", "more than its inside")
