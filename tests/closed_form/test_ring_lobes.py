"""A ring sprung by a few places that press: harmonics against energy, and their limits."""

from __future__ import annotations

import mpmath as mp
import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.ring_lobes import ThinRing, lobe_bending, lobe_height, moved_out

RING = ThinRing(0.050, 0.053, 0.020, 100e9)
INERTIA, AREA, R = 0.020 * 0.0015**3 / 12, 0.020 * 0.0015, 0.02575

HEIGHT = 1e-5
"""Share of the lobes: harmonics fall as the fourth power, so only rounding and a breath are left."""

BENDING = 1e-3
"""Share of the bending under a point: its harmonics fall as the square, 0.03 % is cut off."""


def arch(places: int) -> tuple[float, mp.mpf]:
    """Half the angle between two loads, and the bending between them for a unit load at each.

    Half way between, the cut carries pull 1 / (2 sin θ) and no shear. At φ from there the bending
    is m0 + R (1 - cos φ) / (2 sin θ); no turning at either end makes its integral vanish.
    """
    theta = mp.pi / places
    pull = 1 / (2 * mp.sin(theta))
    return theta, -pull * R * (1 - mp.sin(theta) / theta)


def bending(places: int, at: mp.mpf) -> mp.mpf:
    """Bending (N·m) at an angle `at` from the middle between two unit loads."""
    theta, middle = arch(places)
    return middle + R * (1 - mp.cos(at)) / (2 * mp.sin(theta))


@pytest.mark.parametrize("places", [2, 3, 4, 6])
def test_the_bending_is_that_of_an_arch_between_two_points(places: int) -> None:
    each = 300.0
    theta, _ = arch(places)
    got = lobe_bending(RING, each * places, places, np.array([0.0, float(theta)]))
    under, between = each * bending(places, theta), each * bending(places, mp.mpf(0))
    assert got[0] == pytest.approx(float(under), rel=BENDING)
    assert got[1] == pytest.approx(float(between), rel=BENDING)


@pytest.mark.parametrize("places", [2, 3, 4, 6])
def test_the_lobes_are_those_of_energy(places: int) -> None:
    """How far a load moves, by Castigliano: ∫ M² ds / (P E I) over its arch, without stretch.

    And the middle between two: the same with a second set of unit loads there (the same arch turned
    half a pitch), so ∫ M M' ds / E I.
    """
    each, theta = 300.0, arch(places)[0]
    stiff = RING.modulus * INERTIA
    own = 2 * mp.quad(lambda a: bending(places, a) ** 2, [0, theta]) * R / stiff
    other = (
        2
        * mp.quad(lambda a: bending(places, a) * bending(places, theta - a), [0, theta])
        * R
        / stiff
    )
    assert lobe_height(RING, each * places, places) == pytest.approx(
        float(each * (own - other)), rel=HEIGHT
    )


def test_two_opposite_points_stretch_a_ring_as_textbooks_have_it() -> None:
    """Roark, from memory: W pulls the diameter by W R³ / E I × (π/4 - 2/π), narrows by 2/π - 1/2."""
    w, unit = 100.0, R**3 / (RING.modulus * INERTIA)
    got = moved_out(RING, 2 * w, 2, np.array([0.0, np.pi / 2]))
    even = 2 * w / (2 * np.pi * R) * R**2 / (RING.modulus * AREA)
    longer, narrower = 2 * (got - even)
    assert longer == pytest.approx(w * unit * (np.pi / 4 - 2 / np.pi), rel=HEIGHT)
    assert narrower == pytest.approx(-w * unit * (2 / np.pi - 0.5), rel=HEIGHT)


def test_patches_that_meet_leave_a_round_ring_that_has_grown_by_its_pull() -> None:
    """N / (2 π l R) of pressure on a thin tube: ε = p R / (E t)."""
    got = moved_out(RING, 5e3, 4, np.linspace(0, 1, 7), np.pi / 4)
    pressure = 5e3 / (2 * np.pi * R * 0.020)
    assert got == pytest.approx(R * pressure * R / (100e9 * 0.0015))


def test_lobes_fall_with_broader_patches_more_places_and_a_thicker_ring() -> None:
    points, broad = (lobe_height(RING, 1e3, 4, g) for g in (0.0, 0.4))
    assert 0 < broad < points
    assert lobe_height(RING, 1e3, 8) < points / 10
    thicker = ThinRing(0.0485, 0.0545, 0.020, 100e9)
    assert lobe_height(thicker, 1e3, 4) == pytest.approx(points / 8)


def test_the_ring_as_a_whole_moves_out_evenly() -> None:
    """Lobes add nothing to the mean round the ring."""
    round_ = moved_out(RING, 1e3, 3, np.linspace(0, 2 * np.pi, 3000, endpoint=False))
    assert round_.mean() == pytest.approx(1e3 / (2 * np.pi * R) * R**2 / (100e9 * AREA), rel=1e-6)


def test_what_is_not_a_thin_ring_in_balance_is_refused() -> None:
    with pytest.raises(OutsideModel, match="wall over mean radius"):
        ThinRing(0.02, 0.03, 0.02, 100e9)
    with pytest.raises(OutsideModel, match="wall of the ring"):
        ThinRing(0.03, 0.02, 0.02, 100e9)
    with pytest.raises(OutsideModel, match="places that press is 1"):
        lobe_height(RING, 1e3, 1)
    with pytest.raises(OutsideModel, match="half a pitch"):
        lobe_height(RING, 1e3, 4, 0.8)
