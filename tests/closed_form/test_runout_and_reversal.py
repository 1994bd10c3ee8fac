"""Shares of a runout and their reversal: readings made from points on turned circles, and sums."""

from __future__ import annotations

import cmath
import math
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.errors import OutsideModel
from borewright.mechanics.reversal import Share, bounds, share_error, split
from borewright.mechanics.runout import (
    as_arrows,
    clearance_reading,
    face_reading_of_lean,
    lean_in_clearance,
    lean_of_free_end,
    rim_reading_of_lean,
    root_sum_square,
    worst_case,
)

EXACT = 1e-12
"""Relative: sums of a few doubles."""
GRID = 2e-6
"""Relative: a turn of 2000 steps misses the top of a cosine by (π/2000)²/2."""


def indicated(off_center: complex, radius: float, turn: int = 2000) -> float:
    """What an indicator sees of a circle that turns about a point off its own center: highest less
    lowest distance along the fixed line of the plunger, step by step round one turn."""
    angles = 2 * np.pi * np.arange(turn) / turn
    middle = off_center * np.exp(1j * angles)
    highest = middle.real + np.sqrt(radius**2 - middle.imag**2)
    return float(highest.max() - highest.min())


def test_a_reading_is_twice_how_far_the_circle_is_off_center() -> None:
    assert indicated(1e-5 + 0j, 0.04) == pytest.approx(2e-5, rel=GRID)


def test_work_pushed_to_one_side_of_its_clearance_reads_all_of_it() -> None:
    bore, bar = 0.020040, 0.020000
    assert clearance_reading(bore - bar) == pytest.approx(
        indicated((bore - bar) / 2 + 0j, 0.05), rel=GRID
    )


def test_a_lean_in_a_clearance_goes_corner_to_corner() -> None:
    """Turn a line of the fit's length by the lean: its ends part by the clearance."""
    clearance, length = 30e-6, 0.025
    turned = length * cmath.exp(1j * lean_in_clearance(clearance, length))
    assert turned.imag == pytest.approx(clearance, rel=1e-5)


def test_the_free_end_of_a_bore_on_a_taper_leans_by_half_the_taper() -> None:
    taper = 0.0005
    for free in (0.002, 0.02, 0.1):
        assert lean_of_free_end(taper * free, free) == pytest.approx(taper / 2, rel=EXACT)


def test_a_leaning_disc_wobbles_by_its_lean_times_its_diameter() -> None:
    """Points of the face's edge turned about the axis, read along it."""
    lean, diameter = 0.0004, 0.2
    edge = diameter / 2 * np.cos(2 * np.pi * np.arange(720) / 720)
    heights = edge * math.tan(lean)
    assert face_reading_of_lean(lean, diameter) == pytest.approx(np.ptp(heights), rel=1e-6)
    assert rim_reading_of_lean(lean, 0.03) == pytest.approx(2 * 0.03 * math.tan(lean), rel=1e-6)


def test_arrows_add_as_the_circle_that_carries_both_shows() -> None:
    shares, angles = [12e-6, 30e-6, 7e-6], [0.4, 2.9, 5.0]
    carried = sum(cmath.rect(t / 2, a) for t, a in zip(shares, angles, strict=True))
    assert as_arrows(shares, angles) == pytest.approx(indicated(carried, 0.06), rel=GRID)


def test_worst_case_and_root_sum_square_by_hand() -> None:
    shares = [2e-6, 3e-6, 6e-6]
    assert worst_case(shares) == pytest.approx(11e-6, rel=EXACT)
    assert root_sum_square(shares) == pytest.approx(7e-6, rel=EXACT)


@given(st.lists(st.floats(0, 1e-3), min_size=1, max_size=6), st.integers(0, 10**6))
def test_arrows_never_pass_the_worst_case_and_never_fall_under_the_longest_less_the_rest(
    shares: list[float], seed: int
) -> None:
    angles = list(np.random.default_rng(seed).uniform(0, 2 * np.pi, len(shares)))
    total = as_arrows(shares, angles)
    assert total <= worst_case(shares) + 1e-15
    assert total >= 2 * max(shares) - worst_case(shares) - 1e-15


def test_the_mean_square_over_all_angles_is_the_root_sum_square() -> None:
    """Two shares, every angle between them in even steps: the cosine term sums to nothing."""
    between = 2 * np.pi * np.arange(360) / 360
    found = as_arrows([np.full(360, 4e-6), np.full(360, 9e-6)], [np.zeros(360), between])
    squares = float(np.mean(np.square(found)))
    assert math.sqrt(squares) == pytest.approx(root_sum_square([4e-6, 9e-6]), rel=1e-9)


def test_shares_of_draws_add_case_by_case() -> None:
    draws = np.array([1e-6, 2e-6]), np.array([3e-6, 4e-6])
    assert worst_case(draws) == pytest.approx([4e-6, 6e-6])
    assert root_sum_square(draws) == pytest.approx([math.sqrt(10) * 1e-6, math.sqrt(20) * 1e-6])


@pytest.mark.parametrize(
    "asked",
    [
        lambda: worst_case([-1e-6]),
        lambda: root_sum_square([float("nan")]),
        lambda: lean_in_clearance(1e-6, 0.0),
        lambda: lean_of_free_end(1e-6, 0.0),
        lambda: clearance_reading(-1e-6),
        lambda: face_reading_of_lean(1e-3, -0.1),
        lambda: bounds(-1e-6, 1e-6),
        lambda: split(Share(-1e-6, 0.0), Share(1e-6, 0.0)),
        lambda: share_error(1e-6, 1e-6, -1e-6),
        lambda: share_error(1e-6, 1e-6, 1e-6, 4.0),
    ],
)
def test_what_is_no_reading_is_refused(asked: object) -> None:
    with pytest.raises(OutsideModel):
        asked()  # type: ignore[operator]


# Reversal: readings made from shares that are known, then split again


def readings(mandrel: complex, work: complex) -> tuple[Share, Share]:
    """Both readings as an indicator at a fixed place would give them: the work turned half round
    takes its own throw to the other side of the mandrel."""
    first, second = mandrel + work, mandrel + work * cmath.exp(1j * math.pi)
    return (
        Share(abs(first), cmath.phase(first) % math.tau),
        Share(abs(second), cmath.phase(second) % math.tau),
    )


sizes, places = st.floats(1e-7, 1e-3), st.floats(0, 6.28)


@given(sizes, places, sizes, places)
def test_known_shares_come_back_from_their_readings(m: float, a: float, w: float, b: float) -> None:
    mandrel, work = split(*readings(cmath.rect(m, a), cmath.rect(w, b)))
    assert cmath.rect(mandrel.reading, mandrel.at) == pytest.approx(cmath.rect(m, a), abs=1e-15)
    assert cmath.rect(work.reading, work.at) == pytest.approx(cmath.rect(w, b), abs=1e-15)
    assert 0 <= mandrel.at < math.tau
    assert 0 <= work.at < math.tau


@given(sizes, places, sizes, places)
def test_amounts_alone_bound_both_shares_and_give_their_square_sum(
    m: float, a: float, w: float, b: float
) -> None:
    first, second = readings(cmath.rect(m, a), cmath.rect(w, b))
    found = bounds(first.reading, second.reading)
    for share in (m, w):
        assert found.least - 1e-15 <= share <= found.most + 1e-15
    assert found.together == pytest.approx(math.hypot(m, w), rel=1e-9)


@pytest.mark.parametrize("against", [0.0, math.pi])
def test_in_one_line_the_bounds_are_the_two_shares(against: float) -> None:
    first, second = readings(30e-6 + 0j, cmath.rect(20e-6, against))
    found = bounds(first.reading, second.reading)
    assert (found.least, found.most) == pytest.approx((20e-6, 30e-6), rel=1e-9)


def test_a_true_work_on_a_bent_mandrel_reads_the_same_twice() -> None:
    mandrel, work = split(Share(25e-6, 1.0), Share(25e-6, 1.0))
    assert work.reading == pytest.approx(0.0, abs=1e-18)
    assert mandrel.reading == pytest.approx(25e-6)


def test_the_error_bounds_every_corner_of_what_the_readings_may_have_been() -> None:
    first, second, u, slip = Share(40e-6, 0.5), Share(25e-6, 2.0), 1e-6, 0.05
    mandrel, work = split(first, second)
    most = share_error(first.reading, second.reading, u, slip)
    for da in (-u, u):
        for db in (-u, u):
            for pa in (-slip, slip):
                for pb in (-slip, slip):
                    m, w = split(
                        Share(first.reading + da, first.at + pa),
                        Share(second.reading + db, second.at + pb),
                    )
                    assert abs(m.reading - mandrel.reading) <= most
                    assert abs(w.reading - work.reading) <= most


def test_three_even_shares_of_a_thou_are_three_thou_at_worst() -> None:
    thou = Fraction(254, 10_000_000)
    assert worst_case([float(thou)] * 3) == pytest.approx(float(3 * thou), rel=EXACT)
