"""A casting and its pattern: sizes by shrinkage, metal in its rings, what cools it.

    s = pattern / casting - 1                         shrinkage, per length
    V = π/3 (b - a) [R₁² + R₁R₂ + R₂² - r₁² - r₁r₂ - r₂²]   ring whose outside and inside are cones
    t = l tan θ                                       metal that draft adds on radius over a length
    M = cross-section / its edge that sand cools      modulus of a long ring
    M = F w / (π D (w - j) + 2 F),  F = π/4 (D² - d²)  hub: outside and end faces cool, its core not
    M = D h / (4 h + D)                               upright round riser, open at its foot

Source: geometry; the modulus is Chvorinov's volume over cooling surface, for a bar bent to a ring.
Weakness: metal does not shrink alike everywhere (a core or a rim held by spokes holds it back); a
ring of small radius cools better outside than inside, which the modulus does not see.
"""

from __future__ import annotations

import math

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.quantities.si import Metre, MetrePerMetre, Radian


def pattern_size(casting: Metre, shrinkage: MetrePerMetre) -> Metre:
    """Size (m) of the pattern for a size of the casting (m): casting x (1 + s).

    >>> round(pattern_size(0.127, 1 / 64), 6)
    0.128984
    """
    return casting * (1 + shrinkage)


def shrinkage_measured(pattern: Metre, casting: Metre) -> MetrePerMetre:
    """Shrinkage from one size measured on pattern and casting (m), both cold.

    OutsideModel unless both are above 0 and the pattern is no smaller.

    >>> round(shrinkage_measured(0.128524, 0.127), 6)
    0.012
    """
    above_zero("size of the casting", casting, "m")
    above_zero("size of the pattern", pattern, "m")
    refuse_unless(pattern >= casting, "size of the pattern", pattern, "m", "that of the casting up")
    return pattern / casting - 1


def draft_adds(length: Metre, angle: Radian) -> Metre:
    """Metal (m) that draft adds on radius at the end of a length (m) of drawn surface.

    >>> round(draft_adds(0.030, math.radians(2)) * 1e3, 4)
    1.0476
    """
    not_below_zero("length that is drawn", length, "m")
    return length * math.tan(angle)


def ring_volume(
    length: Metre,
    outside: tuple[Metre, Metre],
    inside: tuple[Metre, Metre] = (0.0, 0.0),
) -> float:
    """Volume (m³) of a ring: outside and inside diameter (m) at its two ends, straight between.

    OutsideModel for a length below 0 or an inside larger than the outside.

    >>> round(ring_volume(0.02, (0.1, 0.1), (0.06, 0.06)) * 1e6, 3)
    100.531
    """
    not_below_zero("length of the ring", length, "m")
    for out, within in zip(outside, inside, strict=True):
        not_below_zero("inside of the ring", within, "m")
        refuse_unless(within <= out, "inside of the ring", within, "m", "at most its outside")
    return math.pi * length / 12 * (_three(*outside) - _three(*inside))


def _three(one: Metre, other: Metre) -> float:
    return one**2 + one * other + other**2


def modulus(width: Metre, thickness: Metre, covered: Metre = 0.0) -> Metre:
    """Modulus (m) of a ring's section, width by thickness (m), `covered` (m) of its edge joined to
    other metal and not cooled.

    >>> round(modulus(0.05, 0.01, covered=0.01) * 1e3, 3)
    4.545
    """
    above_zero("width of the section", width, "m")
    above_zero("thickness of the section", thickness, "m")
    edge = 2 * (width + thickness) - covered
    above_zero("edge that cools", edge, "m")
    return width * thickness / edge


def hub_modulus(width: Metre, outside: Metre, hole: Metre = 0.0, joined: Metre = 0.0) -> Metre:
    """Modulus (m) of a hub or a plain body: so wide along its axis, with its outside, its hole as
    cast and the width of its outside that other metal joins (m).

    The core is taken as not cooling: it is soon as hot as the metal. OutsideModel for a hole that
    leaves no metal, or a joint wider than the hub.

    >>> round(hub_modulus(0.0796, 0.080, 0.032, 0.012) * 1e3, 2)
    13.21
    """
    above_zero("width of the hub", width, "m")
    not_below_zero("hole of the hub", hole, "m")
    refuse_unless(hole < outside, "hole of the hub", hole, "m", "below its outside")
    refuse_unless(0 <= joined <= width, "joint of the hub", joined, "m", "0 up to its width")
    face = math.pi / 4 * (outside**2 - hole**2)
    return face * width / (math.pi * outside * (width - joined) + 2 * face)


def riser_height(diameter: Metre, modulus_needed: Metre) -> Metre:
    """Height (m) of an upright round riser of this diameter (m) for a modulus (m): from
    M = D h / (4 h + D). OutsideModel where no height is enough: D must be above 4 M.

    >>> round(riser_height(0.050, 0.010) * 1e3, 6)
    50.0
    """
    above_zero("modulus needed", modulus_needed, "m")
    enough = "above four times the modulus"
    refuse_unless(diameter > 4 * modulus_needed, "diameter of the riser", diameter, "m", enough)
    return modulus_needed * diameter / (diameter - 4 * modulus_needed)
