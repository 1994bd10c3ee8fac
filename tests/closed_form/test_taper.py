"""The taper seat against its own geometry worked the other way."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.errors import OutsideModel
from borewright.mechanics.taper import (
    bore_from_touch,
    bore_window,
    diameter_at,
    touch_position,
)

BORES = st.floats(0.005, 0.05)
UNDER = st.floats(1e-6, 60e-6)


@given(bore=BORES, under=UNDER)
def test_the_mandrel_is_as_large_as_the_bore_where_it_touches(bore: float, under: float) -> None:
    touch = float(touch_position(bore, bore - under, 0.0005))
    assert diameter_at(touch, bore - under, 0.0005) == pytest.approx(bore, rel=1e-9)


@given(bore=BORES, under=UNDER)
def test_the_mandrel_reads_the_bore_back(bore: float, under: float) -> None:
    touch = float(touch_position(bore, bore - under, 0.0005))
    assert bore_from_touch(touch, bore - under, 0.0005) == pytest.approx(bore, rel=1e-12)


def test_a_bore_that_opens_towards_the_large_end_like_the_mandrel_touches_all_along() -> None:
    depth = np.array([0.0, 0.01, 0.03])
    matched = 0.018 - 0.0005 * depth
    stops = [
        float(touch_position(matched[i : i + 1], 0.0179, 0.0005, depth[i : i + 1]))
        for i in range(3)
    ]
    assert stops == pytest.approx([stops[0]] * 3)


def test_a_bell_mouth_at_the_leading_face_lets_it_slide_further() -> None:
    depth = np.array([0.0, 0.004, 0.03])
    straight = float(touch_position(np.full(3, 0.018), 0.0179, 0.0005, depth))
    belled = float(touch_position(np.array([0.01803, 0.018, 0.018]), 0.0179, 0.0005, depth))
    assert belled == pytest.approx(straight + 0.004)


def test_bores_at_the_window_ends_seat_at_the_ground_ends() -> None:
    low, high = bore_window(0.01799, 0.0005, 0.03, 0.11, 0.025)
    assert float(touch_position(low, 0.01799, 0.0005)) + 0.025 == pytest.approx(0.03)
    assert float(touch_position(high, 0.01799, 0.0005)) + 0.025 == pytest.approx(0.11)


def test_a_long_travel_leaves_the_small_end_as_the_lower_limit() -> None:
    low, _ = bore_window(0.01799, 0.0005, 0.03, 0.11, 0.04)
    assert low == pytest.approx(0.01799)


def test_a_parallel_mandrel_is_refused() -> None:
    with pytest.raises(OutsideModel, match="parallel"):
        touch_position(0.018, 0.0179, 0.0)
