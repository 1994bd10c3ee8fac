"""Webs and spokes under a push on the hub, the rim held: plates and beams with known answers.

Solid plate with a load in the middle: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells
(from memory): F a² / (16 π D) clamped, (3 + ν)/(1 + ν) times that on a free edge.
"""

from __future__ import annotations

import math

import pytest

from borewright.mechanics.notch import bearing_share, wall_over_keyway
from borewright.mechanics.plate import dish, dish_stress, plate_stiffness
from borewright.mechanics.spokes import spokes_give, spokes_stress

FORCE, RADIUS, THICK, MODULUS, POISSON = 8e3, 0.09, 0.007, 105e9, 0.26
SOLID = FORCE * RADIUS**2 / (16 * math.pi * MODULUS * THICK**3 / (12 * (1 - POISSON**2)))
TINY = 1e-5 * RADIUS
"""A hub so small that only q² ln q, 1 part in 10⁹, is left of it."""


def test_a_tiny_hub_is_the_solid_plate_clamped() -> None:
    found = dish(FORCE, TINY, RADIUS, THICK, MODULUS, POISSON, clamped=True)
    assert found == pytest.approx(SOLID, rel=1e-7)


def test_a_tiny_hub_is_the_solid_plate_on_a_free_edge() -> None:
    found = dish(FORCE, TINY, RADIUS, THICK, MODULUS, POISSON)
    assert found == pytest.approx((3 + POISSON) / (1 + POISSON) * SOLID, rel=1e-7)


@pytest.mark.parametrize("clamped", [True, False])
def test_a_narrow_web_is_a_ring_of_beams(clamped: bool) -> None:
    """As the hub nears the rim the plate is a strip: 12 or 3 D' / L³ a metre, D' = E t³/(12(1-ν²))."""
    gap, hub = 1e-4, 1.0
    each = (12 if clamped else 3) * plate_stiffness(MODULUS, POISSON, THICK) / gap**3
    strip = FORCE / (2 * math.pi * hub) / each
    found = dish(FORCE, hub, hub + gap, THICK, MODULUS, POISSON, clamped=clamped)
    assert found == pytest.approx(strip, rel=1e-3)
    moment = FORCE / (2 * math.pi * hub) * gap / (2 if clamped else 1)
    stress = dish_stress(FORCE, hub, hub + gap, THICK, POISSON, clamped=clamped)
    assert stress == pytest.approx(6 * moment / THICK**2, rel=1e-3)


@pytest.mark.parametrize("hub", [0.02, 0.05, 0.08])
def test_a_rim_that_tilts_dishes_more_and_strains_more(hub: float) -> None:
    held, free = (
        dish(FORCE, hub, RADIUS, THICK, MODULUS, POISSON, clamped=c) for c in (True, False)
    )
    assert free > held
    strained, worse = (
        dish_stress(FORCE, hub, RADIUS, THICK, POISSON, clamped=c) for c in (True, False)
    )
    assert worse > strained


def test_twice_as_thick_dishes_an_eighth_and_strains_a_quarter() -> None:
    thin, thick = (dish(FORCE, 0.02, RADIUS, t, MODULUS, POISSON) for t in (THICK, 2 * THICK))
    assert thick == pytest.approx(thin / 8)
    low, high = (dish_stress(FORCE, 0.02, RADIUS, t, POISSON) for t in (2 * THICK, THICK))
    assert low == pytest.approx(high / 4)


def test_a_spoke_is_a_beam_that_keeps_its_slope_at_both_ends() -> None:
    """w t = 20 by 10 mm, 50 mm long, E 100 GPa, 1 kN each: 12 E I / L³ = 16 kN/mm, M = 25 N·m."""
    give = spokes_give(6e3, 6, 0.05, 0.02, 0.01, 100e9, clamped=True)
    assert give == pytest.approx(1e3 / 16e6)
    stress = spokes_stress(6e3, 6, 0.05, 0.02, 0.01, clamped=True)
    assert stress == pytest.approx(25.0 / (0.02 * 0.01**2 / 6))


def test_a_spoke_whose_rim_tilts_is_a_cantilever() -> None:
    """F L³ / (3 E I): the same spoke gives four times and strains twice."""
    inertia = 0.02 * 0.01**3 / 12
    give = spokes_give(6e3, 6, 0.05, 0.02, 0.01, 100e9)
    assert give == pytest.approx(1e3 * 0.05**3 / (3 * 100e9 * inertia))
    assert spokes_stress(6e3, 6, 0.05, 0.02, 0.01) == pytest.approx(1e3 * 0.05 * 0.005 / inertia)


def test_a_keyway_takes_its_width_off_the_round_and_its_depth_off_the_wall() -> None:
    assert bearing_share(0.0, 0.02) == 1.0
    # 10 mm on a round of 62.83 mm
    assert bearing_share(0.010, 0.020) == pytest.approx(1 - 10 / 62.8318530718)
    assert wall_over_keyway(0.050, 0.020, 0.005) == pytest.approx(0.010)
