"""Kienzle's law, the chip of a round nose, and how the force splits."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.errors import OutsideModel
from borewright.mechanics.kienzle import chip_of, feed_and_passive, kienzle_force
from borewright.mechanics.roughness import ridge_height

MM = 1e-3


@pytest.mark.parametrize("degrees", [30, 45, 75, 90])
def test_a_sharp_corner_gives_the_textbook_chip(degrees: float) -> None:
    """b = a_p / sin κ, h = f sin κ, effective angle κ."""
    k = math.radians(degrees)
    chip = chip_of(2 * MM, 0.3 * MM, k)
    assert chip.width == pytest.approx(2 * MM / math.sin(k))
    assert chip.thickness == pytest.approx(0.3 * MM * math.sin(k))
    assert chip.effective_angle == pytest.approx(k)


def test_force_grows_with_feed_by_the_power_one_less_m() -> None:
    one, two = (kienzle_force(chip_of(MM, f * MM, math.pi / 2), 1500e6, 0.25) for f in (0.1, 0.2))
    assert two / one == pytest.approx(2**0.75)


def test_twice_the_depth_is_twice_the_force_with_a_sharp_corner() -> None:
    one, two = (kienzle_force(chip_of(a * MM, 0.1 * MM, math.pi / 3), 1500e6, 0.25) for a in (1, 2))
    assert two / one == pytest.approx(2.0)


def test_one_square_millimetre_of_chip_costs_kc11() -> None:
    assert kienzle_force(chip_of(MM, MM, math.pi / 2), 1500e6, 0.25) == pytest.approx(1500)


@given(st.floats(0.02, 0.19))
def test_below_the_nose_radius_the_radial_force_exceeds_the_feed_force(depth: float) -> None:
    chip = chip_of(depth * MM * 0.8, 0.05 * MM, math.pi / 2, 0.8 * MM)
    feed, passive = feed_and_passive(100.0, chip, 0.5)
    assert passive > feed


def test_the_split_keeps_the_resultant() -> None:
    chip = chip_of(MM, 0.1 * MM, math.radians(60))
    feed, passive = feed_and_passive(100.0, chip, 0.5)
    assert math.hypot(float(feed), float(passive)) == pytest.approx(50)


@given(st.floats(0.05, 3.0), st.floats(0.01, 0.5), st.floats(20, 90), st.floats(0, 1.6))
def test_chip_area_is_always_depth_times_feed(a: float, f: float, k: float, r: float) -> None:
    chip = chip_of(a * MM, f * MM, math.radians(k), r * MM)
    assert chip.width * chip.thickness == pytest.approx(a * f * MM * MM)
    assert 0 < chip.effective_angle <= math.radians(k) * (1 + 1e-9)


def test_a_vanishing_nose_is_a_sharp_corner() -> None:
    sharp = chip_of(MM, 0.1 * MM, math.radians(70))
    nearly = chip_of(MM, 0.1 * MM, math.radians(70), 1e-9)
    assert nearly.width == pytest.approx(sharp.width, rel=1e-5)
    assert nearly.effective_angle == pytest.approx(sharp.effective_angle, rel=1e-5)


@pytest.mark.parametrize("degrees", [0.0, -5.0, 90.1, 120.0])
def test_an_edge_angle_outside_0_to_90_is_refused(degrees: float) -> None:
    with pytest.raises(OutsideModel, match="square shoulder"):
        chip_of(MM, 0.1 * MM, math.radians(degrees))


def test_ridge_of_a_round_nose() -> None:
    """Ghosh & Mallik, Manufacturing Science, prob. 24 (companion)."""
    assert ridge_height(0.125 * MM, 0.7 * MM) * 1e6 == pytest.approx(2.79, abs=0.005)
    with pytest.raises(OutsideModel):
        ridge_height(0.1 * MM, 0.0)
    assert np.isfinite(ridge_height(0.0, 0.1 * MM))
