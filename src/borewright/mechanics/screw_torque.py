"""What a screw's thread and face ask to be turned, on and off, under an axial force.

With pitch p, mean thread radius r, flank angle b (half of the thread's), face radius c, friction μ,
tan l = p / (2 π r) and m = μ / cos b:
    on     T = F (r (m + tan l) / (1 - m tan l) + μ c)
    off    T = F (r (m - tan l) / (1 + m tan l) + μ c)      below 0: it turns off by itself
Work that a cut screws up to its shoulder presses it with F = T / (…) of the first line, and wants
the second to come off: the tighter the cut, the harder the release.
Units: N, m, rad, N·m, as floats or arrays that broadcast. Range: sizes above 0, flank angle below
π/2, friction 0 or more and m tan l < 1; OutsideModel otherwise.
Source: inclined plane wrapped round a cylinder, as in any chapter on power screws (Shigley,
Mechanical Engineering Design, sect. 8-2, from memory). Weakness: knocks tighten further than an
even torque; a dry thread galls.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Num
from borewright.quantities.si import Metre, Radian

FLANK: Radian = float(np.pi / 6)
"""Of a 60 degree thread."""


@dataclass(frozen=True, slots=True)
class Screw:
    """Pitch, mean radius of the thread and of the face that it is tightened against (m)."""

    pitch: Metre
    radius: Metre
    face: Metre
    flank: Radian = FLANK


def torque_on(force: Num, friction: Num, screw: Screw) -> Num:
    """Torque (N·m) that turns the screw on against an axial force (N).

    >>> power_screw = Screw(0.008, 0.015, 0.020, 0.0)  # a square thread of two starts
    >>> round(float(torque_on(6400.0, 0.08, power_screw)), 2)
    26.18
    """
    m, rise = _checked(force, friction, screw)
    return force * (screw.radius * (m + rise) / (1 - m * rise) + friction * screw.face)


def torque_off(force: Num, friction: Num, screw: Screw) -> Num:
    """Torque (N·m) that turns it off from under an axial force (N).

    >>> round(float(torque_off(6400.0, 0.08, Screw(0.008, 0.015, 0.020, 0.0))), 2)
    9.77
    """
    m, rise = _checked(force, friction, screw)
    return force * (screw.radius * (m - rise) / (1 + m * rise) + friction * screw.face)


def force_from(torque: Num, friction: Num, screw: Screw) -> Num:
    """Axial force (N) that a torque (N·m) screws it up with: the other way of `torque_on`.

    >>> screw = Screw(0.003, 0.012, 0.016)
    >>> round(float(torque_on(force_from(20.0, 0.12, screw), 0.12, screw)), 9)
    20.0
    """
    not_below_zero("torque", torque, "N·m")
    return torque / torque_on(1.0, friction, screw)


def _checked(force: Num, friction: Num, screw: Screw) -> tuple[Num, float]:
    not_below_zero("axial force", force, "N")
    not_below_zero("friction", friction)
    for name, value in (("pitch", screw.pitch), ("radius of the thread", screw.radius)):
        above_zero(name, value, "m")
    not_below_zero("radius of the face", screw.face, "m")
    refuse_unless(0 <= screw.flank < np.pi / 2, "flank", screw.flank, "rad", "0 to π/2")
    m = friction / float(np.cos(screw.flank))
    rise = screw.pitch / (2 * float(np.pi) * screw.radius)
    refuse_unless(np.less(m * rise, 1.0), "friction", friction, "", "less than jams the thread")
    return m, rise
