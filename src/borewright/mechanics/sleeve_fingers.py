"""The fingers of a sleeve slit from one end: cantilevers that stand in a round and bend outward.

A finger is a piece of tube of half angle β = π / n - w / (2 r_mean), free over a length L from the
end of its slot to where the cone bears. With the exact section of that piece about its own middle,
    I = β' (R⁴ - r⁴) / 4 - A x²,  β' = β + sin β cos β,  A = β (R² - r²),
    x = (2/3) (sin β / β) (R³ - r³) / (R² - r²),
    opening on diameter e:  q = 3 E I (e/2) / L³ a finger,   Q_s = n q β / sin β round,
    bending at its root:    σ = 3 E c (e/2) / L²,            c = max(R - x, x - r cos β).
β / sin β: pressure round a finger adds up to less than its sum, as its parts point apart.
Source: beam theory, closed form. Measured against finite elements with a stiff root, for three to
eight fingers from 0.8 to 3 outsides long: force from 2 % low to 4 % high.
Weakness: the tube behind is taken as stiff; it gives, so push and stress are read high (how much is
not measured). The opening is that under the cone: at the root there is none. The corner at the end
of a slot raises the stress there by a factor that is left out.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from borewright.errors import OutsideModel
from borewright.mechanics.allowed import above_zero, not_below_zero
from borewright.mechanics.num import Num
from borewright.quantities.si import Metre, Radian

FEWEST = 3
"""Two halves of a tube would not bend as beams that stand in a round."""


@dataclass(frozen=True, slots=True)
class Fingers:
    """Outside and mean inside diameter (m), slots, their width (m) and free length (m).

    OutsideModel for fewer than three fingers, no wall, no length, or slots that leave no finger.
    """

    outside: Metre
    inside: Metre
    number: int
    slot: Metre
    length: Metre

    def __post_init__(self) -> None:
        above_zero("inside of the sleeve", self.inside)
        above_zero("wall of the sleeve", self.outside - self.inside)
        above_zero("free length of a finger", self.length)
        not_below_zero("width of a slot", self.slot)
        if self.number < FEWEST:
            raise OutsideModel("number of fingers", self.number, f"{FEWEST} or more")
        above_zero("half angle of a finger", self.half_angle)

    @property
    def half_angle(self) -> Radian:
        """β (rad) of the metal of one finger."""
        return math.pi / self.number - self.slot / ((self.outside + self.inside) / 2)


def finger_section(fingers: Fingers) -> tuple[float, Metre]:
    """I (m⁴) of one finger bending outward, and the distance c (m) to its farthest fiber.

    >>> round(finger_section(Fingers(0.020, 0.016, 4, 0.0, 0.03))[0] * 1e12, 2)
    25.55
    """
    far, near, beta = fingers.outside / 2, fingers.inside / 2, fingers.half_angle
    area = beta * (far**2 - near**2)
    middle = 2 / 3 * math.sin(beta) / beta * (far**3 - near**3) / (far**2 - near**2)
    about_center = (far**4 - near**4) / 4 * (beta + math.sin(beta) * math.cos(beta))
    fiber = max(far - middle, middle - near * math.cos(beta))
    return about_center - area * middle**2, fiber


def opening_force(fingers: Fingers, opening: Num, modulus: Num) -> Num:
    """Radial force (N), summed round, that opens all fingers by `opening` (m) on diameter.

    OutsideModel for an opening below 0 or a modulus not above 0.

    >>> f = Fingers(0.020, 0.016, 4, 0.001, 0.03)
    >>> round(opening_force(f, 2e-4, 207e9) / opening_force(f, 1e-4, 207e9), 6)
    2.0
    """
    _pulled(opening, modulus)
    inertia, _ = finger_section(fingers)
    beta = fingers.half_angle
    one = 3 * modulus * inertia * (opening / 2) / fingers.length**3
    return fingers.number * one * beta / math.sin(beta)


def finger_stress(fingers: Fingers, opening: Num, modulus: Num) -> Num:
    """Bending stress (Pa) at a finger's root for an opening (m) on diameter; refusals as above.

    >>> round(finger_stress(Fingers(0.020, 0.016, 4, 0.001, 0.03), 1e-4, 207e9) / 1e6, 1)
    79.1
    """
    _pulled(opening, modulus)
    _, fiber = finger_section(fingers)
    return 3 * modulus * fiber * (opening / 2) / fingers.length**2


def largest_opening(fingers: Fingers, stress: Num, modulus: Num) -> Num:
    """Opening on diameter (m) at which a finger's root reaches this stress (Pa).

    OutsideModel unless stress and modulus are above 0.

    >>> f = Fingers(0.020, 0.016, 4, 0.001, 0.03)
    >>> round(largest_opening(f, finger_stress(f, 1e-4, 207e9), 207e9) * 1e6, 6)
    100.0
    """
    above_zero("stress allowed", stress)
    above_zero("modulus of the sleeve", modulus)
    _, fiber = finger_section(fingers)
    return 2 * stress * fingers.length**2 / (3 * modulus * fiber)


def edge_gap(fingers: Fingers, opening: Num) -> Num:
    """Gap (m) at the edges of a finger whose middle touches a bore larger by `opening` (m).

    The finger keeps the curve it was ground to: (e/2) (1 - cos β). While the pressure does not
    close it a finger bears along its middle only. OutsideModel for an opening below 0.

    >>> round(edge_gap(Fingers(0.020, 0.016, 3, 0.0, 0.03), 1e-4) * 1e6, 3)
    25.0
    """
    not_below_zero("opening on diameter", opening)
    return opening / 2 * (1 - math.cos(fingers.half_angle))


def _pulled(opening: Num, modulus: Num) -> None:
    not_below_zero("opening on diameter", opening)
    above_zero("modulus of the sleeve", modulus)
