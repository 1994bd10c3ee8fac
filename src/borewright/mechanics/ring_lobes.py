"""A thin ring pressed outward in n places: it grows, and springs in between them.

n equal patches of half width γ press with a radial force N in all. Round the ring the load is
    (N / 2 π R) (1 + 2 Σ_k s_k cos k n φ),    s_k = sin(k n γ) / (k n γ),
and harmonic m = k n of a line load q moves the middle line by q R⁴ / (E I (m² - 1)²), the even part
by q R² / (E A). Patches that meet (γ = π / n) leave no lobes; γ = 0 is n points, the worst.
Source: thin rings, closed form by harmonics (Timoshenko, Strength of Materials; Roark: from
memory). Weakness: a free thin ring (wall to a fifth of the radius); shear and the stretch of lobes
are left out, and fingers that give press less where the ring gives.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.mechanics.allowed import above_zero, not_below_zero, refuse_unless
from borewright.mechanics.num import Floats, Num
from borewright.quantities.si import Metre, Pascal, Radian

TERMS = 2000
"""Harmonics summed; for points the bending falls as 1 / m², so 0.03 % of it is left."""

THICKEST = 0.2
"""Wall over mean radius to which a ring is taken as thin (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class ThinRing:
    """Bore, outside and length (m) and modulus (Pa) of a plain ring.

    OutsideModel where there is no wall, or it is more than a fifth of the mean radius.
    """

    bore: Metre
    outside: Metre
    length: Metre
    modulus: Pascal

    def __post_init__(self) -> None:
        above_zero("bore", self.bore)
        above_zero("wall of the ring", self.wall)
        above_zero("length of the ring", self.length)
        above_zero("modulus of the ring", self.modulus)
        thick = self.wall / self.radius
        refuse_unless(thick <= THICKEST, "wall over mean radius", thick, "", f"to {THICKEST:g}")

    @property
    def wall(self) -> Metre:
        return (self.outside - self.bore) / 2

    @property
    def radius(self) -> Metre:
        """Mean radius (m)."""
        return (self.outside + self.bore) / 4


def moved_out(
    ring: ThinRing, normal: float, places: int, around: Num, half_width: Radian = 0.0
) -> Floats:
    """How far out (m) the ring stands at `around` (rad, from the middle of a patch), like it.

    `normal` (N) summed over all places; `half_width` (rad) of a patch.
    OutsideModel for fewer than 2 places, a force below 0, or patches that overlap.

    >>> thin = ThinRing(0.05, 0.054, 0.02, 100e9)
    >>> bool(moved_out(thin, 1e3, 3, 0.0) > 0 > moved_out(thin, 1e3, 3, np.pi / 3))
    True
    """
    order, share = _harmonics(normal, places, half_width)
    line = normal / (2 * np.pi * ring.radius)
    inertia, area = ring.length * ring.wall**3 / 12, ring.length * ring.wall
    even = line * ring.radius**2 / (ring.modulus * area)
    lobe = 2 * line * share * ring.radius**4 / (ring.modulus * inertia * (order**2 - 1) ** 2)
    return np.asarray(even + _round(lobe, order, around), dtype=np.float64)


def lobe_height(ring: ThinRing, normal: float, places: int, half_width: Radian = 0.0) -> float:
    """How much farther out (m, on radius) the ring stands at a patch than between two.

    Turned round while it is held so, it springs back to lobes of this height. Inputs as above.

    >>> thin = ThinRing(0.05, 0.054, 0.02, 100e9)
    >>> round(lobe_height(thin, 1e3, 6) / lobe_height(thin, 1e3, 3), 3)
    0.052
    """
    high, low = moved_out(ring, normal, places, np.array([0.0, np.pi / places]), half_width)
    return float(high - low)


def lobe_bending(
    ring: ThinRing, normal: float, places: int, around: Num, half_width: Radian = 0.0
) -> Floats:
    """Bending moment (N·m) of the ring at `around`; above 0 where it sharpens its curve.

    Inputs as above. 6 M / (length × wall²) adds to the hoop tension: outside at a patch, and in the
    bore between two patches, where M is below 0.

    >>> thin = ThinRing(0.05, 0.054, 0.02, 100e9)
    >>> bool(lobe_bending(thin, 1e3, 3, 0.0) > 0 > lobe_bending(thin, 1e3, 3, np.pi / 3))
    True
    """
    order, share = _harmonics(normal, places, half_width)
    line = normal / (2 * np.pi * ring.radius)
    return _round(2 * line * share * ring.radius**2 / (order**2 - 1), order, around)


def _harmonics(normal: float, places: int, half_width: Radian) -> tuple[Floats, Floats]:
    """Orders m = k n and the share s_k of each, both shape (TERMS,)."""
    not_below_zero("force on the ring", normal)
    refuse_unless(np.greater(places, 1), "places that press", places, "", "above 1")
    not_below_zero("half width of a patch", half_width)
    refuse_unless(
        half_width <= np.pi / places, "half width of a patch", half_width, "", "to half a pitch"
    )
    order = places * np.arange(1.0, TERMS + 1)
    # numpy's sinc is sin(π x) / (π x).
    return order, np.asarray(np.sinc(order * half_width / np.pi), dtype=np.float64)


def _round(size: Floats, order: Floats, around: Num) -> Floats:
    """Σ size cos(order φ) for every φ."""
    angle = np.asarray(around, dtype=np.float64)
    return np.asarray(np.cos(angle[..., None] * order) @ size, dtype=np.float64)
