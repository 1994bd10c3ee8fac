"""The size that drill, bar and reamer leave, against scipy's and mpmath's own spreads."""

from __future__ import annotations

import math

import mpmath
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from borewright.errors import OutsideModel
from borewright.mechanics.bore_sizes import (
    SizeBand,
    band_of_half,
    bored_half_band,
    grade_chance,
    landing_chance,
    next_hole_half_band,
    share_below,
    triangle_share_below,
    tried_first,
    widened,
)

EXACT = 1e-12
"""Both sides are closed forms in double precision."""
SUMMED = 2e-3
"""Of a sum over 400 equal shares, where the window cuts one of them."""
DRAWN = 4.0
"""Standard errors that a sampled share may lie off; 1 in 16 000 lies farther."""

UM = st.floats(0.5, 200.0)
BANDS = st.tuples(st.floats(-50.0, 50.0), UM, UM).map(lambda t: (t[0] - t[1], t[0], t[0] + t[2]))
REAMER: SizeBand = (0.0, 12.7, 30.48)
DRILL: SizeBand = (-500.0, -400.0, -250.0)
"""A drill that leaves 0.016 in: more than four of its standard deviations under the reamer."""


@pytest.mark.parametrize("size", [-60.0, -5.0, 0.0, 3.0, 12.7, 20.0, 30.48, 70.0])
def test_each_half_is_half_of_a_normal_curve_by_mpmath(size: float) -> None:
    low, likely, high = REAMER
    sigma = ((high if size > likely else likely) - (likely if size > likely else low)) / mpmath.mpf(
        mpmath.erfinv(0.9) * mpmath.sqrt(2)
    )
    assert share_below(size, REAMER) == pytest.approx(
        float(mpmath.ncdf((size - likely) / sigma)), abs=EXACT
    )


def test_even_halves_are_the_normal_spread_of_scipy() -> None:
    band = band_of_half(10.0, 3.0)
    for size in np.linspace(2.0, 18.0, 33):
        assert share_below(float(size), band) == pytest.approx(
            float(stats.norm(10.0, 1.5).cdf(size)), abs=EXACT
        )


def test_a_size_known_by_its_grade_is_the_triangle_of_scipy() -> None:
    triangle = stats.triang(0.5, loc=4.0, scale=12.0)
    for size in np.linspace(0.0, 20.0, 41):
        assert triangle_share_below(float(size), 10.0, 12.0) == pytest.approx(
            float(triangle.cdf(size)), abs=EXACT
        )
    assert grade_chance(7.0, 12.0, 10.0, 12.0) == pytest.approx(
        float(triangle.cdf(12.0) - triangle.cdf(7.0)), abs=EXACT
    )


def test_a_hole_that_was_larger_already_stays_as_it_was() -> None:
    """Drawn by another route: each tool's size drawn from its two halves, the largest counted."""
    draw, count = np.random.default_rng(3), 200_000

    def sizes(band: SizeBand) -> np.ndarray:
        low, likely, high = band
        z = draw.standard_normal(count) / stats.norm.ppf(0.95)
        return likely + np.where(z > 0, high - likely, likely - low) * z

    near: SizeBand = (-30.0, -5.0, 25.0)
    largest = np.maximum(sizes(near), sizes(REAMER))
    share = float(np.mean((largest > 0.0) & (largest < 18.0)))
    error = math.sqrt(share * (1 - share) / count)
    chance = landing_chance(0.0, 18.0, [near, REAMER])
    assert abs(chance - share) < DRAWN * error
    assert (
        abs(landing_chance(0.0, 18.0, [REAMER]) - share) > 20 * error
    )  # the drill does count here


def test_a_hole_well_below_the_reamer_takes_nothing_from_the_chance() -> None:
    alone, after = (landing_chance(0.0, 18.0, b) for b in ([REAMER], [DRILL, REAMER]))
    assert after == pytest.approx(alone, abs=1e-3)


def test_the_last_pass_by_hand() -> None:
    """A 0.0006 in gauge, 0.0004 in of dial and 0.0002 in of spring: 0.00075 in in all."""
    assert bored_half_band(6.0, 4.0, 2.0) == pytest.approx(math.sqrt(56.0), rel=EXACT)


def test_a_second_spread_adds_as_the_variances_do() -> None:
    low, likely, high = widened(band_of_half(0.0, 3.0), *(4.0 * stats.norm.ppf(0.95) / 2,) * 2)
    assert (low, likely, high) == pytest.approx(band_of_half(0.0, 5.0), rel=1e-9)


@given(st.lists(BANDS, min_size=1, max_size=3), st.floats(-80, 80), st.floats(0.1, 80), UM, UM)
def test_a_narrower_window_never_raises_the_chance(
    bands: list[SizeBand], middle: float, half: float, more: float, still: float
) -> None:
    inner = landing_chance(middle - half, middle + half, bands)
    outer = landing_chance(middle - half - more, middle + half + still, bands)
    assert inner <= outer + EXACT


@given(UM, UM, UM, st.floats(0.1, 1.0), st.floats(1.0, 100.0))
def test_a_better_gauge_never_lowers_the_chance_of_a_bored_hole(
    gauge: float, dial: float, spring: float, better: float, half: float
) -> None:
    good, poor = (
        landing_chance(-half, half, [band_of_half(0.0, bored_half_band(g, dial, spring))])
        for g in (better * gauge, gauge)
    )
    assert good >= poor - EXACT


def test_a_tool_tried_first_against_a_drawn_bench() -> None:
    """Drawn: scrap and next hole of 400 000 reamers; the rule is followed piece by piece."""
    draw, count, low, high, otherwise = np.random.default_rng(5), 400_000, 0.0, 18.0, 0.6
    z = draw.standard_normal(count) / stats.norm.ppf(0.95)
    scrap = REAMER[1] + np.where(z > 0, REAMER[2] - REAMER[1], REAMER[1] - REAMER[0]) * z
    sigma = 0.5 * next_hole_half_band(8.0, 5.0)
    hole = scrap + sigma * draw.standard_normal(count)
    foreseen = stats.norm.cdf(high, scrap, sigma) - stats.norm.cdf(low, scrap, sigma)
    taken = (scrap > low) & (scrap < high) & (foreseen >= otherwise)
    lands = np.where(taken, (hole > low) & (hole < high), draw.random(count) < otherwise)
    share, after = tried_first(low, high, REAMER, next_hole_half_band(8.0, 5.0), otherwise)
    found, chance = float(np.mean(lands)), share * after + (1 - share) * otherwise
    assert abs(found - chance) < DRAWN * math.sqrt(found * (1 - found) / count)


def test_a_sure_trial_is_worth_its_share_and_the_rest_of_the_other_way() -> None:
    share, after = tried_first(0.0, 18.0, REAMER, 0.0, 0.7)
    assert share == pytest.approx(landing_chance(0.0, 18.0, [REAMER]), abs=EXACT)
    assert after == pytest.approx(1.0, abs=EXACT)
    assert tried_first(0.0, 18.0, (40.0, 41.0, 42.0), 5.0, 0.7)[1] == pytest.approx(0.7, abs=EXACT)


@given(BANDS, st.floats(-40, 40), st.floats(1.0, 60.0), UM, UM, UM, st.floats(0.0, 0.99))
def test_a_trial_is_worth_no_more_in_a_narrower_window_nor_with_a_poorer_gauge(
    trial: SizeBand, middle: float, half: float, more: float, gauge: float, poorer: float, b: float
) -> None:
    def chance(reach: float, sure: float) -> float:
        share, after = tried_first(middle - reach, middle + reach, trial, sure, b)
        return share * after + (1 - share) * b

    assert chance(half, gauge) <= chance(half + more, gauge) + SUMMED
    assert chance(half, gauge + poorer) <= chance(half, gauge) + SUMMED


@given(BANDS, st.floats(0.01, 1000.0))
def test_the_chance_has_no_unit(band: SizeBand, scale: float) -> None:
    scaled = (band[0] * scale, band[1] * scale, band[2] * scale)
    assert landing_chance(-9.0 * scale, 14.0 * scale, [scaled]) == pytest.approx(
        landing_chance(-9.0, 14.0, [band]), abs=1e-9
    )


def test_the_ends_without_a_spread_and_without_a_window() -> None:
    sharp: SizeBand = (5.0, 5.0, 5.0)
    assert (landing_chance(4.0, 6.0, [sharp]), landing_chance(5.5, 6.0, [sharp])) == (1.0, 0.0)
    assert landing_chance(6.0, 6.0, [REAMER]) == 0.0
    assert landing_chance(-1e6, 1e6, [REAMER, DRILL]) == pytest.approx(1.0, abs=EXACT)
    with pytest.raises(OutsideModel, match="low <= likely <= high"):
        share_below(1.0, (2.0, 1.0, 3.0))
