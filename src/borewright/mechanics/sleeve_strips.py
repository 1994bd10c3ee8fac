"""A sleeve slit from either end in turn: it opens alike at both ends, as a zigzag that stretches.

n slots, every other one from the other end, leave n strips of length L (where two slots lie side by
side), width w = π d / n - slot round the sleeve, wall h, and bridges of height b where a slot ends.
A hoop pull P bends every strip into an S. Two readings, for an opening e on diameter:
    stiff   π e E h / (n P) = L³ / w³ + 2 (1 + ν) L / (k w)       bridges that do not give
    soft    the same with l = L + b for L, and + 3 l² (w + slot) / b³ from bridges that bend
    Q_s = 2 π P round,     σ = (P L / 2) (w / 2) / I at the ends of a strip,  I = h w³ / 12
The soft one is the frame of the center lines. Source: beam theory with shear, k = 5/6 (from memory,
any textbook), closed form. Weakness: strips as flat. The truth lies between the two: by finite
elements, for bridges of half to twice a strip's width, it is 1.1 to 1.7 times as stiff as the soft
one and 1.4 to 5.3 times softer than the stiff one. The corner at the end of a slot raises the
stress there by a factor that is left out.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from borewright.errors import OutsideModel
from borewright.mechanics.allowed import above_zero, not_below_zero
from borewright.mechanics.num import Num
from borewright.quantities.si import Metre

SHEAR_SHAPE = 5 / 6
"""Share of a rectangle that carries shear (from memory)."""


@dataclass(frozen=True, slots=True)
class Strips:
    """Mean diameter and wall (m), slots from both ends together, their width, strip, bridge (m).

    OutsideModel unless the slots are an even number from 4 up, leave a strip, and end in metal.
    """

    diameter: Metre
    wall: Metre
    slots: int
    slot: Metre
    length: Metre
    bridge: Metre

    def __post_init__(self) -> None:
        above_zero("mean diameter of the sleeve", self.diameter)
        above_zero("wall of the sleeve", self.wall)
        above_zero("length of a strip", self.length)
        above_zero("height of a bridge", self.bridge)
        not_below_zero("width of a slot", self.slot)
        if self.slots < 4 or self.slots % 2:
            raise OutsideModel("number of slots", self.slots, "an even number from 4 up")
        above_zero("width of a strip", self.width)

    @property
    def width(self) -> Metre:
        """Width (m) of a strip round the sleeve."""
        return math.pi * self.diameter / self.slots - self.slot


def hoop_pull(strips: Strips, opening: Num, modulus: Num, poisson: float) -> tuple[Num, Num]:
    """Pull P (N) round the sleeve that opens it by `opening` (m) on diameter: soft and stiff.

    OutsideModel for an opening below 0 or a modulus not above 0.

    >>> s = Strips(0.02, 0.002, 8, 0.001, 0.03, 0.008)
    >>> [round(p, 1) for p in hoop_pull(s, 1e-4, 207e9, 0.29)]
    [64.0, 166.9]
    """
    not_below_zero("opening on diameter", opening)
    above_zero("modulus of the sleeve", modulus)
    each = math.pi * opening * modulus * strips.wall / strips.slots
    return each / _soft(strips, poisson), each / _strip(strips, strips.length, poisson)


def strip_opening_force(
    strips: Strips, opening: Num, modulus: Num, poisson: float
) -> tuple[Num, Num]:
    """Radial force (N), summed round, that opens the sleeve: soft and stiff; inputs as above.

    >>> s = Strips(0.02, 0.002, 8, 0.001, 0.03, 0.008)
    >>> [round(q, 1) for q in strip_opening_force(s, 1e-4, 207e9, 0.29)]
    [402.1, 1048.7]
    """
    soft, stiff = hoop_pull(strips, opening, modulus, poisson)
    return 2 * math.pi * soft, 2 * math.pi * stiff


def strip_stress(strips: Strips, opening: Num, modulus: Num, poisson: float) -> Num:
    """Bending stress (Pa) at the ends of the strips, with bridges that do not give: the most.

    >>> s = Strips(0.02, 0.002, 8, 0.001, 0.03, 0.008)
    >>> round(strip_stress(s, 1e-4, 207e9, 0.29) / 1e6, 1)
    159.9
    """
    _, pull = hoop_pull(strips, opening, modulus, poisson)
    return 6 * (pull * strips.length / 2) / (strips.wall * strips.width**2)


def largest_strip_opening(strips: Strips, stress: Num, modulus: Num, poisson: float) -> Num:
    """Opening on diameter (m) at which the strips reach this stress (Pa), which must be above 0.

    >>> s = Strips(0.02, 0.002, 8, 0.001, 0.03, 0.008)
    >>> at = strip_stress(s, 1e-4, 207e9, 0.29)
    >>> round(largest_strip_opening(s, at, 207e9, 0.29) * 1e6, 6)
    100.0
    """
    above_zero("stress allowed", stress)
    return stress / strip_stress(strips, 1.0, modulus, poisson)


def _strip(strips: Strips, length: Metre, poisson: float) -> float:
    """E h times what one strip of this length gives across its ends, per pull on it."""
    slide = 2 * (1 + poisson) * length / (SHEAR_SHAPE * strips.width)
    return (length / strips.width) ** 3 + slide


def _soft(strips: Strips, poisson: float) -> float:
    """The same from bridge middle to bridge middle, with bridges that bend.

    A bridge, (w + slot) / 2 from strip to the middle of its slot, turns under P l / 2 by
    (P l / 2) ((w + slot) / 2) 12 / (E h b³); both ends turn, which moves them l × that apart.
    """
    length = strips.length + strips.bridge
    turned = length / 2 * (strips.width + strips.slot) / 2 * 12 / strips.bridge**3
    return _strip(strips, length, poisson) + turned * length
