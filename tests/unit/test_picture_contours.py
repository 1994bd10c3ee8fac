"""Outlines and bounds of the picture's bands, on fields whose outlines are known."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from borewright.mechanics.bands import round_bounds, round_step
from borewright.mechanics.contours import Region, region


def area(found: Region) -> float:
    """Signed area of all outlines: holes run the other way round."""
    return sum(
        0.5 * (a[0] * b[1] - b[0] * a[1])
        for ring in found.outlines
        for a, b in zip(ring, [*ring[1:], ring[0]], strict=True)
    )


def dome(lines: int) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """1 - distance from the middle of a square of side 3, on so many lines."""
    z = np.linspace(-1.5, 1.5, lines)
    values = 1.0 - np.hypot(z[None, :], z[:, None])
    return z, z, values, np.ones((lines - 1, lines - 1), dtype=bool)


def test_a_circle_s_area_comes_nearer_as_the_square_of_the_spacing() -> None:
    errors = [abs(area(region(*dome(n), 0.0)) - math.pi) for n in (17, 33, 65)]
    orders = [math.log2(a / b) for a, b in itertools.pairwise(errors)]
    assert min(orders) > 1.7


def test_a_hole_is_an_outline_of_its_own_that_runs_the_other_way() -> None:
    z, r, values, metal = dome(65)
    found = region(z, r, -values, metal, 0.0)
    assert len(found.outlines) == 2
    assert area(found) == pytest.approx(9.0 - math.pi, abs=0.01)
    assert len(found.lines) == 1
    assert found.lines[0][0] == found.lines[0][-1]


def test_outlines_follow_the_metal_and_lines_do_not() -> None:
    """An L of metal, all of it above the level: six corners, and no line of the level."""
    lines = np.linspace(0.0, 2.0, 9)
    metal = np.ones((8, 8), dtype=bool)
    metal[4:, 4:] = False
    found = region(lines, lines, np.ones((9, 9)), metal, 0.5)
    assert len(found.outlines) == 1
    assert sorted(found.outlines[0]) == sorted(
        [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (1.0, 1.0), (1.0, 2.0), (0.0, 2.0)]
    )
    assert found.lines == ()
    assert area(found) == pytest.approx(3.0)


def test_a_level_that_nothing_reaches_has_no_region() -> None:
    assert region(*dome(17), 2.0) == Region((), ())


def test_a_straight_slope_is_cut_straight() -> None:
    z = np.linspace(0.0, 1.0, 5)
    found = region(z, z, np.tile(z[:, None], (1, 5)), np.ones((4, 4), dtype=bool), 0.3)
    (line,) = found.lines
    assert {b for _, b in line} == {0.3}
    assert sorted(a for a, _ in line) == [0.0, 0.25, 0.5, 0.75, 1.0]


@given(seed=st.integers(0, 10_000), level=st.floats(-1.0, 1.0))
def test_above_and_below_make_up_the_metal(seed: int, level: float) -> None:
    """Whatever the field and the metal, also where cells meet at a corner only."""
    random = np.random.default_rng(seed)
    z, r = np.cumsum(random.uniform(0.5, 1.5, 7)), np.cumsum(random.uniform(0.5, 1.5, 6))
    values = random.normal(size=(6, 7))
    metal = random.uniform(size=(5, 6)) < 0.8
    cells = (np.outer(np.diff(r), np.diff(z)) * metal).sum()
    above, below = region(z, r, values, metal, level), region(z, r, -values, metal, -level)
    saddles = _saddles(values >= level, metal, z, r)
    assert area(above) + area(below) == pytest.approx(cells, abs=1e-9 + saddles)


def _saddles(high: np.ndarray, metal: np.ndarray, z: np.ndarray, r: np.ndarray) -> float:
    """Area of the cells whose corners are high and low by turns: both sides claim the middle."""
    a, b, c, d = high[:-1, :-1], high[:-1, 1:], high[1:, 1:], high[1:, :-1]
    return float(
        (np.outer(np.diff(r), np.diff(z)) * (metal & (a == c) & (b == d) & (a != b))).sum()
    )


@example(size=5.0, share=0.97)
@given(size=st.floats(1e-3, 1e6), share=st.floats(0.0, 0.99))
def test_bounds_are_few_round_rising_and_within(size: float, share: float) -> None:
    bounds = round_bounds(share * size, size)
    assert list(bounds) == sorted(set(bounds))
    assert all(share * size < bound < size for bound in bounds)
    assert 1 <= len(bounds) <= 8
    step = round_step(size, 5)
    digits = {f"{bound / 10 ** math.floor(math.log10(bound) + 1e-9):.6g}" for bound in bounds}
    assert share * size > step or digits <= {str(k) for k in (1, 2, 3, 4, 5, 6, 8)} | {"1.5", "2.5"}


@pytest.mark.parametrize(
    ("size", "most", "step"),
    [(3400.0, 5, 1000.0), (5000.0, 5, 1000.0), (61.1, 5, 20.0), (0.9, 4, 0.5)],
)
def test_steps_are_one_two_or_five(size: float, most: int, step: float) -> None:
    assert round_step(size, most) == pytest.approx(step)


def test_a_band_too_narrow_to_see_is_left_to_the_one_below() -> None:
    assert round_bounds(0.0, 64.0)[-1] == 40.0
    assert round_bounds(0.0, 66.0)[-1] == 60.0
