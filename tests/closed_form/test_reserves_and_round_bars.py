"""Reserves at both ends of a mandrel, and the stiffness of a round bar, each worked another way.

Written when tests/mutants.py showed that nothing else held these two numbers in place.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.mechanics.beam import Bar, deflection, round_step
from borewright.mechanics.taper import bore_window, touch_position

ROUNDING = 1e-7
"""m: a place along the mandrel is a difference of diameters over a small taper, so it rounds at
about 1e-18 / 0.0005; three orders are left for the inputs' own rounding at larger sizes."""

LENGTHS = st.floats(0.005, 0.04)
RESERVES = st.floats(0.0, 0.02)


@given(length=LENGTHS, travel=st.floats(0.0, 0.04), large=RESERVES)
def test_the_largest_bore_sits_its_reserve_short_of_the_large_end(
    length: float, travel: float, large: float
) -> None:
    small_end, taper, ground = 0.01799, 0.0005, 0.11
    _, high = bore_window(small_end, taper, length, ground, travel, reserve_large=large)
    pressed = float(touch_position(high, small_end, taper)) + travel
    assert ground - pressed == pytest.approx(large, abs=ROUNDING)


@given(length=LENGTHS, travel=st.floats(0.0, 0.004), small=RESERVES)
def test_the_smallest_bore_sits_its_reserve_past_the_small_end(
    length: float, travel: float, small: float
) -> None:
    small_end, taper, ground = 0.01799, 0.0005, 0.11
    low, _ = bore_window(small_end, taper, length, ground, travel, reserve_small=small)
    far_end = float(touch_position(low, small_end, taper)) + travel - length
    assert far_end == pytest.approx(small, abs=ROUNDING)


@given(diameter=st.floats(0.003, 0.05), modulus=st.floats(50e9, 220e9))
def test_a_round_bar_bends_by_the_second_moment_of_its_section(
    diameter: float, modulus: float
) -> None:
    """The integral of y² over the disc, in strips; the midpoint rule in the angle is exact here."""
    radius, strips = diameter / 2, 64
    angles = (np.arange(strips) + 0.5) * math.pi / strips
    second_moment = (
        (2 * radius**4 * np.cos(angles) ** 2 * np.sin(angles) ** 2).sum() * math.pi / strips
    )
    bending, _ = round_step(diameter, modulus, 0.29)
    assert bending == pytest.approx(modulus * second_moment, rel=1e-12)


def test_twice_the_diameter_bends_a_sixteenth() -> None:
    def sag(diameter: float) -> float:
        bending, _ = round_step(diameter, 207e9, 0.29)
        bar = Bar(np.array([0.0, 0.15]), np.array([bending]), np.array([np.inf]))
        return deflection(bar, 0.06, 100.0)

    assert sag(0.016) / sag(0.032) == pytest.approx(16, rel=1e-12)
