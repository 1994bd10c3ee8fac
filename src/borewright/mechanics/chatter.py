"""How deep a cut may be before the work itself chatters in one mode, at whatever speed.

The waves that one turn left are cut again by the next. A chip of width b (the engaged edge) whose
thickness changes by dh changes the cutting force by K_s b dh. With G the flexibility of the work in
the direction in which the chip's thickness is measured, for a force in the direction of the cut,
    b_lim = -1 / (2 K_s min Re G),
which for one mode of stiffness k and damping ratio ζ, min Re G = -1 / (4 k ζ (1 + ζ)), is
    b_lim = 2 k ζ (1 + ζ) / K_s.
A round bar bends alike in all directions across its axis and not along it. Of the force only the
radial share F_r / F_c pushes across the bar in the direction that changes the chip, and of that
motion only the part square to the edge changes its thickness: cos κ in turning, sin κ in facing,
κ the effective edge angle. So K_s counts with u = (F_r / F_c) cos κ, or (F_r / F_c) sin κ.
The cutting force proper bends the bar too, but along the cut, where it changes no chip.
K_s is the slope of Kienzle's law, (1 - m) F_c / (b h).
At a slow speed the flank rubs on the waves. It pushes back by C for each metre of width and each
unit of their slope, so that the damping ratio grows by A b, A = C ω cos²κ / (2 k v), with ω the
first frequency and v the cutting speed (sin²κ in facing). Then b_lim is the smaller root of
    2 k (ζ + A b) (1 + ζ + A b) = K_s b,
and where there is none, waves are rubbed out at any width.
Units: N/m, Pa (N/m for each metre of width), m. OutsideModel for what is not above 0.
Source: J. Tlusty and M. Poláček, 1963; S. A. Tobias, Machine Tool Vibration: both from memory.
Weakness: one mode, all of what gives put into it; C is known to a factor of three at best. Of the
work only: the top slide, the saddle and the spindle chatter too.
"""

from __future__ import annotations

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Floats, Num

ROUNDING = 1e-9
"""Share by which a square edge may come out past π/2."""


def chatter_depth(stiffness: Num, damping: Num, cutting_stiffness: Num) -> Num:
    """Widest chip (m) in which one mode stays quiet at any speed: 2 k ζ (1 + ζ) / K_s.

    `stiffness` N/m, `damping` the damping ratio, `cutting_stiffness` Pa with its direction in it.

    >>> round(float(chatter_depth(1e7, 0.03, 2e9 * 0.1)) * 1e3, 4)
    3.09
    """
    above_zero("stiffness at the tool", stiffness, "N/m")
    above_zero("damping ratio", damping)
    above_zero("cutting stiffness", cutting_stiffness, "Pa")
    return 2 * stiffness * damping * (1 + damping) / cutting_stiffness


def rubbed_depth(stiffness: Num, damping: Num, cutting_stiffness: Num, rubbing: Num) -> Floats:
    """The same (m) with a flank that rubs; infinite where it rubs every wave out.

    `rubbing`: A (1/m), how much the damping ratio grows for each metre of width.

    >>> [round(1e3 * float(rubbed_depth(1e7, 0.03, 2e8, a)), 4) for a in (0.0, 5.0, 50.0)]
    [3.09, 6.822, inf]
    """
    open_edge = np.asarray(chatter_depth(stiffness, damping, cutting_stiffness), dtype=np.float64)
    not_below_zero("growth of the damping", rubbing, "1/m")
    k = np.asarray(stiffness, dtype=np.float64)
    # square b² - slope b + constant = 0; its smaller root as constant over the larger half.
    square, constant = 2 * k * np.square(rubbing), open_edge * cutting_stiffness
    slope = cutting_stiffness - 2 * k * rubbing * (1 + 2 * np.asarray(damping))
    under = slope**2 - 4 * square * constant
    there = (slope > 0) & (under >= 0)
    half = slope + np.sqrt(np.where(there, under, 0.0))
    return np.asarray(np.where(there, 2 * constant / np.where(there, half, 1.0), np.inf))


def rubbing_growth(rubbing: Num, frequency: Num, speed: Num, stiffness: Num, across: Num) -> Num:
    """A (1/m): C (N/m) of the flank, first frequency (Hz), cutting speed (m/s), stiffness (N/m).

    `across`: cosine of the effective edge angle in turning, its sine in facing.

    >>> round(float(rubbing_growth(2e5, 1000.0, 0.5, 1e7, 0.5)), 3)
    31.416
    """
    above_zero("cutting speed", speed, "m/s")
    above_zero("stiffness at the tool", stiffness, "N/m")
    return rubbing * np.pi * frequency * across**2 / (stiffness * speed)


def cutting_stiffness(force: Num, section: Num, exponent: Num) -> Num:
    """K_s (Pa): slope of Kienzle's force (N) by the thickness of its chip, for each metre of width.

    `section` (m²) is the chip's, depth times feed; `exponent` is m of Kienzle's law.

    >>> round(cutting_stiffness(200.0, 1e-3 * 0.1e-3, 0.25) / 1e9, 6)
    1.5
    """
    above_zero("section of the chip", section, "m²")
    return (1 - exponent) * force / section


def turning_direction(radial: Num, cutting: Num, effective_angle: Num) -> Num:
    """Share of K_s that acts on the bending of the bar when turning: (F_r / F_c) cos κ.

    >>> round(float(turning_direction(30.0, 100.0, np.radians(60))), 6)
    0.15
    """
    return _share(radial, cutting) * np.cos(_edge(effective_angle))


def facing_direction(radial: Num, cutting: Num, effective_angle: Num) -> Num:
    """The same when facing, where the feed is across the bar: (F_r / F_c) sin κ."""
    return _share(radial, cutting) * np.sin(_edge(effective_angle))


def _share(radial: Num, cutting: Num) -> Num:
    above_zero("cutting force", cutting, "N")
    return radial / cutting


def _edge(angle: Num) -> Floats:
    good = np.greater(angle, 0) & np.less_equal(angle, np.pi / 2 * (1 + ROUNDING))
    refuse_unless(good, "effective edge angle", angle, "rad", "above 0 to π/2")
    return np.asarray(np.minimum(angle, np.pi / 2), dtype=np.float64)
