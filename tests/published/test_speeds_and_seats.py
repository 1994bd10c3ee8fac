"""Spindle speeds, seats and beams against printed figures."""

import numpy as np
import pytest

from borewright.mechanics.beam import Bar, deflection, largest_moment
from borewright.mechanics.parallel import set_over
from borewright.mechanics.taper import seat_shift
from borewright.mechanics.turning import spindle_speed

INCH, LBF, PSI = 0.0254, 4.4482216152605, 6894.757293168


@pytest.mark.parametrize(("fpm", "inches"), [(100, 1.0), (60, 4.5), (300, 0.625)])
def test_rpm_is_fpm_over_0_2618_d(fpm: float, inches: float) -> None:
    """US War Department TM 1-420 C1 (1942), para 8; 0.2618 is π/12 to four figures."""
    rpm = 60 * spindle_speed(fpm * 0.3048 / 60, inches * INCH)
    assert rpm == pytest.approx(fpm / (0.2618 * inches), rel=2e-5)


def test_half_a_thou_of_bore_moves_the_seat_an_inch() -> None:
    """Geometry from the taper of TM 1-420 C1: 0.006 in per ft."""
    assert seat_shift(0.0005 * INCH, 0.006 / 12) / INCH == pytest.approx(1.000)


def test_wentzell_example_3_2_bar_across_a_span() -> None:
    """Wentzell, Machine Design, Ex. 3.2 (companion): 2 × 2 in bar, 36 in, 3000 lbf."""
    side, span, force = 2 * INCH, 36 * INCH, 3000 * LBF
    bar = Bar(np.array([0.0, span]), np.array([30e6 * PSI * side**4 / 12]), np.array([np.inf]))
    assert deflection(bar, span / 2, force) / INCH == pytest.approx(0.0729, rel=5e-4)
    stress = largest_moment(span, span / 2, force) * (side / 2) / (side**4 / 12)
    assert stress / PSI == pytest.approx(20250, rel=1e-9)


# Set-over of the tailstock


@pytest.mark.parametrize(
    ("per_foot", "total_inches", "set_over_inches"), [(1.0, 9.0, 3 / 8), (1.5, 8.0, 1 / 2)]
)
def test_jones_sets_the_tailstock_over_by_the_whole_length(
    per_foot: float, total_inches: float, set_over_inches: float
) -> None:
    """Jones, Turning and Boring: 1 in/ft over a total of 9 in, 3/8 in; 1 1/2 in/ft, 8 in, 1/2 in."""
    got = set_over(per_foot / 12, total_inches * 0.0254)
    assert got / 0.0254 == pytest.approx(set_over_inches, rel=1e-12)
