"""Two bodies that pass heat to each other, against matrix exponentials, integration and limits.

None of the expected values comes from our own steps: mpmath raises the matrix of the equations to
its exponential, scipy integrates them, and the limits are sums of one line.
"""

from __future__ import annotations

import math

import mpmath
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from borewright.errors import OutsideModel
from borewright.mechanics.two_bodies import Pair, Segment, by_integration, pace_of, warmths
from borewright.mechanics.warmth import squeeze_lost_by_both, temperature_rise

SAME = 1e-12
"""Both are closed forms: rounding only."""

ROUTES_AGREE = 1e-9
"""The integrator keeps to 1e-11 a step; some hundred steps stand behind a number."""

WHEEL, BAR = 176.0, 115.0
"""J/K: an aluminium wheel 63 × 25 mm, a steel mandrel 16 × 150 mm."""

SCHEDULE = (
    Segment(31.0, 38.0, 0.38, 0.9),
    Segment(15.0, 0.0, 0.38, 0.9),
    Segment(31.0, 38.0, 0.38, 0.9),
    Segment(240.0, 0.0, 0.38, 0.9),
    Segment(90.0, 12.0, 32.0, 19.0),
)
"""Two passes with a pause, a wait, a pass under coolant."""


def exact(pair: Pair, segments: tuple[Segment, ...]) -> list[tuple[float, float]]:
    """Warmth at every end, by the exponential of the equations with the heat as a third unknown."""
    state, found = mpmath.matrix([0, 0, 1]), []
    for s in segments:
        g, cw, cm = (mpmath.mpf(float(v)) for v in (pair.across, pair.work, pair.mandrel))
        rates = mpmath.matrix(
            [
                [-(g + s.work_loss) / cw, g / cw, s.watts / cw],
                [g / cm, -(g + s.mandrel_loss) / cm, 0],
                [0, 0, 0],
            ]
        )
        state = mpmath.expm(rates * s.seconds, method="taylor") * state
        found.append((float(state[0]), float(state[1])))
    return found


@pytest.mark.parametrize("across", [1e-3, 0.85, 40.0, 5000.0])
def test_every_end_of_a_schedule_is_the_exponential_of_its_matrix(across: float) -> None:
    pair = Pair(WHEEL, BAR, across)
    with mpmath.workdps(60):
        truth = exact(pair, SCHEDULE)
    assert warmths(pair, SCHEDULE)[1:, :, 0] == pytest.approx(np.array(truth), rel=1e-10)


@pytest.mark.parametrize("across", [0.05, 0.85, 40.0])
def test_the_step_and_the_integration_agree(across: float) -> None:
    pair = Pair(WHEEL, BAR, across)
    ends = np.cumsum([s.seconds for s in SCHEDULE])
    by_steps = warmths(pair, SCHEDULE)[1:, :, 0].T
    assert by_integration(pair, SCHEDULE, ends) == pytest.approx(by_steps, rel=ROUTES_AGREE)


def test_between_ends_the_integration_reads_the_same_curve() -> None:
    pair, times = Pair(WHEEL, BAR, 0.85), np.linspace(0.5, 30.5, 25)
    pace = pace_of(pair, 0.38, 0.9)
    closed = np.array([pace.after(np.zeros((2, 1)), 38.0, t)[:, 0] for t in times]).T
    assert by_integration(pair, SCHEDULE, times) == pytest.approx(closed, rel=ROUTES_AGREE)


def test_a_joint_that_lets_nothing_through_leaves_a_single_lump() -> None:
    """The lump's own closed form, T = q / h (1 - e^(-h t / C))."""
    pair = Pair(WHEEL, BAR, 1e-9)
    work = warmths(pair, [Segment(240.0, 38.0, 0.38, 0.9)])[-1, 0, 0]
    lump = 38.0 / 0.38 * (1 - math.exp(-0.38 * 240.0 / WHEEL))
    assert work == pytest.approx(lump, rel=1e-8)
    assert work == pytest.approx(float(temperature_rise(38.0, 240.0, WHEEL, 38.0, 0.01)), rel=1e-8)


def test_a_joint_that_lets_all_through_makes_one_body_of_both() -> None:
    pair = Pair(WHEEL, BAR, 1e8)
    work, mandrel = warmths(pair, [Segment(240.0, 38.0, 0.38, 0.9)])[-1, :, 0]
    one = 38.0 / 1.28 * (1 - math.exp(-1.28 * 240.0 / (WHEEL + BAR)))
    assert work == pytest.approx(one, rel=1e-6)
    assert mandrel == pytest.approx(one, rel=1e-6)


def test_nothing_lost_leaves_all_the_heat_in_the_two() -> None:
    segments = [Segment(s.seconds, s.watts, 0.0, 0.0) for s in SCHEDULE]
    work, mandrel = warmths(Pair(WHEEL, BAR, 0.85), segments)[-1, :, 0]
    put_in = sum(s.seconds * s.watts for s in segments)
    assert WHEEL * work + BAR * mandrel == pytest.approx(put_in, rel=SAME)


def test_heat_put_in_is_heat_kept_and_heat_lost() -> None:
    """The losses summed along the closed curve by Gauss points, thirty to a segment."""
    pair, begin = Pair(WHEEL, BAR, 0.85), np.zeros((2, 1))
    places, weights = np.polynomial.legendre.leggauss(30)
    lost = 0.0
    for s in SCHEDULE:
        pace = pace_of(pair, s.work_loss, s.mandrel_loss)
        for place, weight in zip(
            (places + 1) / 2 * s.seconds, weights / 2 * s.seconds, strict=True
        ):
            work, mandrel = pace.after(begin, s.watts, place)[:, 0]
            lost += weight * (s.work_loss * work + s.mandrel_loss * mandrel)
        begin = pace.after(begin, s.watts, s.seconds)
    kept = WHEEL * begin[0, 0] + BAR * begin[1, 0]
    assert kept + lost == pytest.approx(sum(s.seconds * s.watts for s in SCHEDULE), rel=1e-9)


def test_for_ever_is_what_both_carry_off() -> None:
    """At rest the heat goes out through both: two equations, solved by hand for q = 38 W."""
    g, hw, hm = 0.85, 0.38, 0.9
    work = 38.0 / (hw + g * hm / (g + hm))
    rest = warmths(Pair(WHEEL, BAR, g), [Segment(1e7, 38.0, hw, hm)])[-1, :, 0]
    assert rest == pytest.approx([work, work * g / (g + hm)], rel=1e-10)


def test_losses_that_grow_with_warmth_leave_less_of_it() -> None:
    """One body in effect: C T' = q - h T (1 + a T) ends at the root of h a T² + h T = q."""
    pair, q, h, a = Pair(WHEEL, BAR, 1e4), 38.0, 0.38, 0.01
    rest = by_integration(pair, [Segment(4e3, q, h, 0.0)], np.array([4e3]), growth=a)[0, 0]
    root = (-h + math.sqrt(h * h + 4 * h * a * q)) / (2 * h * a)
    assert rest == pytest.approx(root, rel=1e-3)  # the joint still drops q / G across it
    assert rest < 38.0 / 0.38


def test_many_cases_at_once_are_each_their_own() -> None:
    across, watts = np.array([0.2, 0.85, 6.0]), np.array([10.0, 38.0, 90.0])
    together = warmths(Pair(WHEEL, BAR, across), [Segment(60.0, watts, 0.38, 0.9)])[-1]
    for case in range(3):
        alone = Pair(WHEEL, BAR, float(across[case]))
        one = warmths(alone, [Segment(60.0, float(watts[case]), 0.38, 0.9)])[-1, :, 0]
        assert together[:, case] == pytest.approx(one, rel=SAME)


@pytest.mark.parametrize("wrong", [(0.0, 1.0, 1.0), (1.0, -1.0, 1.0), (1.0, 1.0, 0.0)])
def test_a_body_without_heat_in_it_is_refused(wrong: tuple[float, float, float]) -> None:
    with pytest.raises(OutsideModel):
        Pair(*wrong)


def test_air_that_warms_the_work_is_refused() -> None:
    with pytest.raises(OutsideModel):
        pace_of(Pair(WHEEL, BAR, 1.0), -0.1, 0.0)


# What more heat and more waiting do

SIZES = st.floats(10.0, 2000.0)
RATES = st.floats(1e-4, 0.02)
R = st.floats(0.3, 1.0)
"""Expansion of the mandrel over that of the work, at most 1."""

ROUNDING = 1e-9
"""K; warmth of some tens of kelvin in double figures."""


@settings(max_examples=60, deadline=None)
@given(SIZES, SIZES, st.floats(0.05, 50.0), RATES, st.floats(1.0, 5.0), R, st.floats(0, 100.0))
def test_more_power_in_an_early_cut_never_eases_a_later_one(
    work: float, bar: float, across: float, rate: float, faster: float, r: float, more: float
) -> None:
    """Where the mandrel alone would cool no slower than the work alone."""
    pair, losses = Pair(work, bar, across), (rate * work, rate * faster * bar)

    def lost(first: float) -> list[float]:
        watts = ((40.0, first), (20.0, 0.0), (60.0, 15.0), (200.0, 0.0))
        run = warmths(pair, [Segment(s, w, *losses) for s, w in watts])[:, :, 0]
        return [w - r * m for w, m in run]

    for less, greater in zip(lost(20.0), lost(20.0 + more), strict=True):
        assert greater >= less - ROUNDING


@settings(max_examples=60, deadline=None)
@given(SIZES, SIZES, st.floats(0.05, 50.0), RATES, st.floats(1.0, 5.0), R, st.floats(0, 900.0))
def test_a_longer_wait_never_leaves_a_looser_joint_after_the_next_cut(
    work: float, bar: float, across: float, rate: float, faster: float, r: float, longer: float
) -> None:
    pair, losses = Pair(work, bar, across), (rate * work, rate * faster * bar)

    def lost(wait: float) -> float:
        watts = ((60.0, 30.0), (wait, 0.0), (45.0, 25.0))
        work_, mandrel = warmths(pair, [Segment(s, w, *losses) for s, w in watts])[-1, :, 0]
        return float(work_ - r * mandrel)

    assert lost(30.0 + longer) <= lost(30.0) + ROUNDING


@given(st.lists(st.floats(1.0, 300.0), min_size=2, max_size=6), st.floats(0.0, 200.0))
def test_waiting_in_parts_is_waiting_at_one_go(parts: list[float], watts: float) -> None:
    pace = pace_of(Pair(WHEEL, BAR, 0.85), 0.38, 0.9)
    start = np.array([[20.0], [4.0]])
    steps = start
    for seconds in parts:
        steps = pace.after(steps, watts, seconds)
    assert steps == pytest.approx(pace.after(start, watts, sum(parts)), rel=1e-9, abs=1e-9)


@given(st.floats(0.1, 400.0), st.floats(0.01, 100.0))
def test_a_mandrel_heated_through_its_work_is_never_warmer_than_it(
    seconds: float, across: float
) -> None:
    run = warmths(Pair(WHEEL, BAR, across), [Segment(seconds, 38.0, 0.38, 0.9)] * 2)[:, :, 0]
    for work, mandrel in run[1:]:
        assert 0 <= mandrel <= work * (1 + SAME)


# What it takes from a fit


def test_both_warm_lose_half_of_what_warm_work_on_a_cool_mandrel_loses() -> None:
    """α 23.1 and 11.5 ppm/K: Swyt, J. Res. NIST 99 (1994) 31. 16 mm, 30 K: 5.6 and 11 µm."""
    aluminium, steel = 23.1e-6, 11.5e-6
    cool = float(squeeze_lost_by_both(0.016, (aluminium, 30.0), (steel, 0.0)))
    both = float(squeeze_lost_by_both(0.016, (aluminium, 30.0), (steel, 30.0)))
    assert cool == pytest.approx(11e-6, rel=0.01)
    assert both == pytest.approx(5.6e-6, rel=0.01)


def test_a_warm_mandrel_in_cool_work_tightens_it() -> None:
    assert float(squeeze_lost_by_both(0.016, (23e-6, 0.0), (11.5e-6, 20.0))) < 0
