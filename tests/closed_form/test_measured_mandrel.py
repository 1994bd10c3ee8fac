"""A measured mandrel against its own geometry, worked the other way."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from borewright.errors import OutsideModel
from borewright.holding.taper.measured_mandrel import window_of
from borewright.job.records import Mandrel
from borewright.mechanics.measured import (
    Profile,
    diameter_on,
    fit_taper,
    flat_stretches,
    largest_end,
    profile,
)
from borewright.mechanics.measured_rings import ring_contact_on
from borewright.mechanics.measured_touch import touch_on
from borewright.mechanics.outline import BoreLine
from borewright.mechanics.rings import Elastic, ring_contact
from borewright.mechanics.taper import touch_position

GROUND = 0.1
TAPER = 0.0005
SMALL = 0.01799
ROUNDING = 1e-9
"""Metres along the mandrel: what the sums may round away, a thousandth of what a bore's µm moves."""

PLACES = st.lists(st.integers(0, 100), min_size=2, max_size=6, unique=True)
ERRORS = st.floats(-10e-6, 10e-6)


@st.composite
def mandrels(draw: st.DrawFn) -> Profile:
    """Worn mandrels: a taper with up to 10 µm of error at every station."""
    x = np.array(sorted(draw(PLACES))) / 1000
    errors = np.array([draw(ERRORS) for _ in x])
    return Profile(x, SMALL + TAPER * x + errors, TAPER)


@st.composite
def bores(draw: st.DrawFn) -> tuple[np.ndarray, np.ndarray]:
    depth = np.array(sorted({0, *draw(PLACES)})) * 4e-4
    return depth, np.array([0.01801 + draw(ERRORS) for _ in depth])


def interference(u: float, mandrel: Profile, depth: np.ndarray, bore: np.ndarray) -> float:
    """Largest D(u - z) - b(z): both are straight between these places, so it stands at one."""
    under = np.clip(u - mandrel.x, depth[0], depth[-1])
    z = np.array(sorted({*depth.tolist(), *under.tolist()}))
    return float((diameter_on(u - z, mandrel) - np.interp(z, depth, bore)).max())


@given(mandrel=mandrels(), bore=bores())
def test_work_stops_at_the_first_place_where_metal_meets_metal(
    mandrel: Profile, bore: tuple[np.ndarray, np.ndarray]
) -> None:
    depth, sizes = bore
    touch = float(touch_on(mandrel, sizes, depth)[0])
    assert interference(touch, mandrel, depth, sizes) == pytest.approx(0.0, abs=1e-12)
    for back in (1e-5, 1e-4, 1e-3, 0.01, 0.05):
        assert interference(touch - back, mandrel, depth, sizes) < 0.0


def test_a_closing_bore_may_stop_on_a_corner_of_the_mandrel() -> None:
    """Steeper than the bore before 50 mm, slighter after: 18.040 meets 18.040, 20 mm down the bore.

    The bore's mouth would reach 100 mm, its far end 37.5 + 40 mm.
    """
    worn = Profile(np.array([0.0, 0.05, 0.1]), np.array([0.018, 0.01804, 0.01805]), TAPER)
    touch = touch_on(worn, np.array([0.01805, 0.01803]), np.array([0.0, 0.04]))
    assert float(touch[0]) == pytest.approx(0.07, abs=ROUNDING)


def test_a_bore_as_large_as_a_flat_stops_where_the_flat_begins() -> None:
    flat = Profile(np.array([0.0, 0.04, 0.06]), np.array([0.018, 0.01802, 0.01802]), TAPER)
    touch = touch_on(flat, np.array([0.01802, 0.01802]), np.array([0.0, 0.01]))
    assert float(touch[0]) == pytest.approx(0.04, abs=ROUNDING)


@pytest.mark.parametrize("seed", range(20))
def test_random_worn_mandrels_and_bores_of_like_slope_meet_and_do_not_overlap(seed: int) -> None:
    """Errors over a tenth of the length, so that corners of either body are often what meets."""
    rng = np.random.default_rng(seed)
    for _ in range(20):
        x, depth = np.linspace(0.0, GROUND, 6), np.linspace(0.0, 0.04, 4)
        mandrel = Profile(x, SMALL + TAPER * x + rng.uniform(-6e-6, 6e-6, 6), TAPER)
        sizes = 0.01801 - 0.4e-3 * depth + rng.uniform(-4e-6, 4e-6, 4)
        touch = float(touch_on(mandrel, sizes, depth)[0])
        assert interference(touch, mandrel, depth, sizes) == pytest.approx(0.0, abs=1e-12)
        for back in (1e-5, 1e-3, 0.01):
            assert interference(touch - back, mandrel, depth, sizes) < 0.0


@given(bore=bores(), places=PLACES)
def test_stations_on_a_straight_taper_give_the_straight_taper_s_answer(
    bore: tuple[np.ndarray, np.ndarray], places: list[int]
) -> None:
    depth, sizes = bore
    x = np.array(sorted(places)) / 1000
    straight = Profile(x, SMALL + TAPER * x, TAPER)
    expected = float(touch_position(sizes, SMALL, TAPER, depth))
    assert float(touch_on(straight, sizes, depth)[0]) == pytest.approx(expected, abs=ROUNDING)


@given(mandrel=mandrels(), bore=bores(), scale=st.floats(0.1, 10))
def test_everything_scales(
    mandrel: Profile, bore: tuple[np.ndarray, np.ndarray], scale: float
) -> None:
    depth, sizes = bore
    larger = Profile(scale * mandrel.x, scale * mandrel.d, mandrel.taper)
    touch = float(touch_on(mandrel, sizes, depth)[0])
    assert float(touch_on(larger, scale * sizes, scale * depth)[0]) == pytest.approx(
        scale * touch, abs=scale * ROUNDING
    )


@pytest.mark.parametrize(("error", "moves"), [(-5e-6, 0.01), (5e-6, -0.01)], ids=["worn", "proud"])
def test_a_worn_middle_lets_work_further_on_and_a_proud_one_stops_it_sooner(
    error: float, moves: float
) -> None:
    """The bore meets the mandrel at the middle station, where 5 µm are 10 mm of a 1:2000 taper.

    Worn, it lacks 5 µm there and gains 17.5 µm over the next 25 mm; proud, it gains 25 µm over the
    40 mm before, and the bore is met at 20 of them.
    """
    x = np.array([0.0, 0.04, 0.065, 0.1])
    d = SMALL + TAPER * x
    bent = Profile(x, d + np.array([0.0, error, 0.0, 0.0]), TAPER)
    size = np.array([d[1], d[1]])
    touch = float(touch_on(bent, size, np.array([0.0, 0.02]))[0])
    by_hand = 0.04 + 0.025 * 5 / 17.5 if error < 0 else 0.04 * 20 / 25
    assert touch == pytest.approx(by_hand, abs=ROUNDING)
    assert math.copysign(1, touch - 0.04) == math.copysign(1, moves)


def test_a_bore_with_no_metal_where_it_is_small_slides_past() -> None:
    depth, sizes = np.array([0.0, 0.01, 0.02, 0.03]), np.array([0.01802, 0.01802, 0.018, 0.018])
    straight = Profile(np.array([0.0, 0.1]), SMALL + TAPER * np.array([0.0, 0.1]), TAPER)
    whole = float(touch_on(straight, sizes, depth)[0])
    ends_only = float(touch_on(straight, sizes, depth, np.array([True, False, False]))[0])
    assert (whole, ends_only) == (pytest.approx(0.04), pytest.approx(0.06))


# The nearest straight taper


@given(mandrel=mandrels())
def test_the_fit_is_the_least_squares_line(mandrel: Profile) -> None:
    fit = fit_taper(mandrel.x.tolist(), mandrel.d.tolist())
    design = np.column_stack([np.ones_like(mandrel.x), mandrel.x])
    (small, taper), *_ = np.linalg.lstsq(design, mandrel.d, rcond=None)
    assert fit.small_end == pytest.approx(small, abs=1e-12)
    assert fit.taper == pytest.approx(taper, abs=1e-10)
    assert fit.residuals == pytest.approx(mandrel.d - small - taper * mandrel.x, abs=1e-12)


@given(mandrel=mandrels(), order=st.randoms(use_true_random=False))
def test_the_order_of_the_stations_does_not_matter(mandrel: Profile, order: object) -> None:
    pairs = list(zip(mandrel.x.tolist(), mandrel.d.tolist(), strict=True))
    assume(fit_taper(*zip(*pairs, strict=True)).taper != 0)
    before = profile(*zip(*pairs, strict=True), GROUND)
    order.shuffle(pairs)  # type: ignore[attr-defined]
    after = profile(*zip(*pairs, strict=True), GROUND)
    assert (after.x.tolist(), after.d.tolist()) == (before.x.tolist(), before.d.tolist())
    assert after.taper == pytest.approx(before.taper, rel=1e-9, abs=1e-15)


@given(mandrel=mandrels())
def test_measured_from_the_other_end_it_is_the_same_mandrel(mandrel: Profile) -> None:
    x, d = mandrel.x, mandrel.d
    assume(abs(fit_taper(x.tolist(), d.tolist()).taper) > 1e-6)
    one, other = (profile(v.tolist(), d.tolist(), GROUND) for v in (x, GROUND - x))
    assert other.x == pytest.approx(one.x, abs=1e-15)
    assert other.d.tolist() == one.d.tolist()
    assert other.taper == pytest.approx(one.taper, abs=1e-15)


def test_it_says_which_end_is_large() -> None:
    assert largest_end([0.01, 0.09], [0.018, 0.01804]) == "far"
    assert largest_end([0.09, 0.01], [0.018, 0.01804]) == "near"
    assert largest_end([0.01, 0.09], [0.018, 0.018]) == "neither"


def test_a_parallel_mandrel_and_a_single_place_are_refused() -> None:
    with pytest.raises(OutsideModel, match="parallel"):
        profile([0.0, 0.1], [0.018, 0.018], GROUND)
    with pytest.raises(OutsideModel, match="stations"):
        fit_taper([0.1, 0.1], [0.018, 0.01801])


@pytest.mark.parametrize("turned", [False, True], ids=["from the small end", "from the large end"])
def test_flat_stretches_are_found_joined_and_the_reading_s_last_digit_is_not(turned: bool) -> None:
    x = np.array([0.0, 0.02, 0.04, 0.06, 0.07, 0.1])
    d = 0.018 + np.array([0.0, 10, 10.5, 10, 15.5, 31]) * 1e-6
    x = GROUND - x if turned else x
    flats = flat_stretches(x.tolist(), d.tolist(), 1e-4, 2e-6)
    ends = [tuple(sorted(GROUND - v if turned else v for v in flat)) for flat in flats]
    assert ends == [(pytest.approx(0.02), pytest.approx(0.06))]
    assert flat_stretches(x.tolist(), d.tolist(), 1e-4, 20e-6) == ()


# Window and rings


def measured(profiled: Profile) -> Mandrel:
    stations = tuple(zip(profiled.x.tolist(), profiled.d.tolist(), strict=True))
    return Mandrel("m", 0.018, SMALL, TAPER, GROUND, 0.14, 0.015, 0.02, stations=stations)


@given(errors=st.lists(ERRORS, min_size=5, max_size=5))
def test_bores_inside_the_window_seat_between_the_lines_and_larger_ones_past_them(
    errors: list[float],
) -> None:
    x = np.linspace(0.0, GROUND, 5)
    bent = Profile(x, SMALL + TAPER * x + np.array(errors), TAPER)
    low, high = window_of(measured(bent), 0.03, 0.025, 0.002, 0.01)
    bent = profile(x.tolist(), bent.d.tolist(), GROUND)
    depth = np.array([0.0, 0.03])

    def seat(bore: float) -> float:
        return float(touch_on(bent, np.array([bore, bore]), depth)[0]) + 0.025

    assert low <= high
    assert seat(high - 1e-9) <= GROUND - 0.01 + ROUNDING
    assert seat(high + 1e-9) > GROUND - 0.01 - ROUNDING
    assert seat(low + 1e-9) >= 0.032 - ROUNDING


WORK, STEEL = Elastic(100e9, 0.26), Elastic(207e9, 0.29)
LINE = BoreLine(np.array([0.0, 0.01, 0.03]), np.array([0.04, 0.06]))


@given(seat=st.floats(0.03, 0.09), lost=st.floats(0, 6e-6), places=PLACES)
def test_rings_on_straight_stations_are_rings_on_the_straight_taper(
    seat: float, lost: float, places: list[int]
) -> None:
    x = np.array(sorted(places)) / 1000
    straight = Profile(x, SMALL + TAPER * x, TAPER)
    bore, seats = np.full(3, 0.01801), np.array([seat, seat + 0.01])
    one = ring_contact_on(straight, LINE, bore, seats, lost, WORK, STEEL)
    other = ring_contact(LINE, bore, seats, SMALL, TAPER, np.inf, lost, WORK, STEEL)
    assert one.normal_force == pytest.approx(other.normal_force, rel=1e-6, abs=1e-3)
    assert one.contact_length == pytest.approx(other.contact_length, abs=1e-8)
    for name in ("largest_hoop", "largest_pressure", "largest_equivalent"):
        ends = (getattr(state, name)(0.0003, 0.0297) for state in (one, other))
        assert next(ends) == pytest.approx(next(ends), rel=1e-6, abs=1.0)
    assert one.largest_growth() == pytest.approx(other.largest_growth(), rel=1e-6, abs=1e-13)


def test_on_a_flat_stretch_the_squeeze_is_the_same_all_along() -> None:
    """p = δ / (d C) over the whole bore, so N = π δ L / C, and more travel adds nothing."""
    flat = Profile(np.array([0.0, 0.03, 0.09]), np.array([0.018, 0.01802, 0.01802]), TAPER)
    plain = BoreLine(np.array([0.0, 0.03]), np.array([0.04]))
    bore, delta, k2 = 0.01801, 10e-6, (0.01801 / 0.04) ** 2
    compliance = ((1 + k2) / (1 - k2) + 0.26) / 100e9 + (1 - 0.29) / 207e9
    state = ring_contact_on(
        flat, plain, np.full(2, bore), np.array([0.065, 0.085]), 0.0, WORK, STEEL
    )
    expected = math.pi * delta * 0.03 / compliance
    assert state.normal_force == pytest.approx([expected, expected], rel=1e-9)
    assert state.contact_length == pytest.approx([0.03, 0.03])
