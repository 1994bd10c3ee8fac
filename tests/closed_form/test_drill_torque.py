"""The torque of a drill: two lips, each half of the feed, its force a quarter of the diameter out."""

from __future__ import annotations

import math

import pytest

from borewright.mechanics.drilling import drill_chip, drill_torque, specific_force


def lips(force: float, feed: float, diameter: float) -> float:
    """Force times arm summed over slices of both lips."""
    slices = 2000
    step = diameter / 2 / slices
    arms = ((k + 0.5) * step for k in range(slices))
    return 2 * sum(force * feed / 2 * step * arm for arm in arms)


@pytest.mark.parametrize("diameter", [0.003, 0.011, 0.025])
def test_it_is_the_sum_over_both_lips(diameter: float) -> None:
    expected = lips(2.1e9, 0.15e-3, diameter)
    assert drill_torque(2.1e9, 0.15e-3, diameter) == pytest.approx(expected, rel=1e-9)


def test_the_chip_is_half_the_feed_seen_across_a_lip_of_118_degrees() -> None:
    assert drill_chip(0.2e-3) == pytest.approx(0.1e-3 * math.sin(math.radians(118 / 2)), rel=1e-12)


def test_thinner_chips_cost_more_for_each_square_of_them() -> None:
    """An exponent of 1/4: a chip of a sixteenth of a millimetre costs twice that of one."""
    assert specific_force(1e-3 / 16, 1e9, 0.25) == pytest.approx(2e9, rel=1e-12)
