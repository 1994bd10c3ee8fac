"""The first frequency of bars with and without work, against closed forms and between its bounds."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from borewright.errors import OutsideModel
from borewright.mechanics.beam import Bar, round_step
from borewright.mechanics.influence import flexibility, full_flexibility
from borewright.mechanics.vibration import (
    CELLS,
    Masses,
    dunkerley,
    first_frequency,
    rayleigh,
    single_mode_frequency,
    spread_mass,
)

CLOSED = 1e-3
"""What the frequency of an even bar is held to: 0.1 %."""
SERIES = 1e-4
"""A hundred Gauss points leave so much of the closed form of a bar that shears and turns."""

E_STEEL, NU, RHO = 207e9, 0.29, 7850.0
SPAN, D = 0.2, 0.016
BEND, SHEAR = round_step(D, E_STEEL, NU)
AREA = math.pi * D**2 / 4
PER_METRE, TURNING = RHO * AREA, RHO * math.pi * D**4 / 64
EVEN = Bar(np.array([0.0, SPAN]), np.array([BEND]), np.array([np.inf]))


def masses(bar: Bar, per_metre: float, turning: float = 0.0, cells: int = CELLS) -> Masses:
    steps = np.ones(len(bar.bending))
    return spread_mass(bar.edges, per_metre * steps, turning * steps, bar.span / cells)


def frequency(bar: Bar, on: Masses) -> float:
    return first_frequency(full_flexibility(bar, on.places), on.all)


def test_an_even_bar_hums_at_its_closed_form() -> None:
    """(π/L)² sqrt(EI/m) / 2π."""
    wanted = (math.pi / SPAN) ** 2 * math.sqrt(BEND / PER_METRE) / (2 * math.pi)
    on = masses(EVEN, PER_METRE)
    assert frequency(EVEN, on) == pytest.approx(wanted, rel=CLOSED)
    coarse = frequency(EVEN, masses(EVEN, PER_METRE, cells=2))
    assert abs(frequency(EVEN, on) - wanted) < abs(coarse - wanted)


@pytest.mark.parametrize("slender", [4.0, 8.0, 15.0])
def test_a_stout_bar_hums_as_timoshenko_says(slender: float) -> None:
    """B q⁴ - m ω² - (j + B m / S) q² ω² + (j m / S) ω⁴ = 0, q = π/L: both ends are free to turn."""
    span = slender * D
    q = math.pi / span
    a, b = TURNING * PER_METRE / SHEAR, PER_METRE + (TURNING + BEND * PER_METRE / SHEAR) * q**2
    square = (b - math.sqrt(b**2 - 4 * a * BEND * q**4)) / (2 * a)
    bar = Bar(np.array([0.0, span]), np.array([BEND]), np.array([SHEAR]))
    got = frequency(bar, masses(bar, PER_METRE, TURNING, cells=50))
    assert 2 * math.pi * got == pytest.approx(math.sqrt(square), rel=SERIES)
    thin = (math.pi / span) ** 2 * math.sqrt(BEND / PER_METRE)
    assert 2 * math.pi * got < thin


def test_an_even_bar_with_a_mass_in_its_middle() -> None:
    """Half a bar, free to turn at its end, level in the middle where half the mass M hangs:
    tan z - tanh z = 2 m L / (M z), z = β L / 2, ω² = EI β⁴ / m.
    """
    mass = 3 * PER_METRE * SPAN

    def left(z: float) -> float:
        return math.tan(z) - math.tanh(z) - 2 * PER_METRE * SPAN / (mass * z)

    z = brentq(left, 0.05, math.pi / 2 - 1e-9, xtol=1e-14)
    wanted = (2 * z / SPAN) ** 2 * math.sqrt(BEND / PER_METRE) / (2 * math.pi)
    lump = Masses(np.array([SPAN / 2]), np.array([mass]), np.zeros(1))
    assert frequency(EVEN, masses(EVEN, PER_METRE).with_more(lump)) == pytest.approx(
        wanted, rel=1e-5
    )


def test_two_springs_under_a_stiff_bar_hold_a_mass_as_springs_do() -> None:
    """Mass in the middle: k = k_1 + k_2 where they are alike; its spin counts for nothing there."""
    stiff = Bar(np.array([0.0, 0.2]), np.array([np.inf]), np.array([np.inf]), (1e7, 1e7))
    lump = Masses(np.array([0.1]), np.array([2.0]), np.array([1e-3]))
    assert frequency(stiff, lump) == pytest.approx(math.sqrt(2e7 / 2.0) / (2 * math.pi))
    assert frequency(stiff, lump) == pytest.approx(float(single_mode_frequency(2e7, 2.0)))


def test_a_disc_off_the_middle_hums_lower_for_turning() -> None:
    """A wide disc turns as it swings where the bar slopes: its inertia against that counts."""
    flat = Masses(np.array([0.05]), np.array([4.0]), np.zeros(1))
    wide = Masses(flat.places, flat.mass, np.array([4.0 * 0.15**2 / 4]))
    assert frequency(EVEN, wide) < 0.9 * frequency(EVEN, flat)


bars = st.lists(st.floats(50.0, 5e4), min_size=3, max_size=3)
loads = st.lists(st.floats(1e-3, 40.0), min_size=3, max_size=3)


def made(bending: list[float], spring: float) -> Bar:
    edges, shear = np.array([0.0, 0.05, 0.12, 0.2]), np.array([9e6, 2e7, 8e6])
    return Bar(edges, np.array(bending), shear, (spring, spring))


PLACES = np.array([0.04, 0.09, 0.15])


@settings(deadline=None)
@given(bars, loads, st.floats(1e6, 1e9))
def test_dunkerley_lies_below_and_rayleigh_above(
    bending: list[float], mass: list[float], spring: float
) -> None:
    g, m = flexibility(made(bending, spring), PLACES), np.array(mass)
    exact = first_frequency(g, m)
    assert dunkerley(g, m) <= exact * (1 + 1e-12)
    assert exact <= rayleigh(g, m) * (1 + 1e-12)


def test_the_bounds_are_tight_where_theory_says_so() -> None:
    """One mass: all three are the same. An even bar: Dunkerley 0.9612, Rayleigh 1.0007 of the truth.

    1/ω² by Dunkerley is ∫ m x²(L-x)² / 3EIL dx = m L⁴ / 90 EI, so ω = sqrt(90)/π² of the true one.
    """
    one = flexibility(EVEN, np.array([0.07]))
    m = np.array([2.0])
    assert dunkerley(one, m) == pytest.approx(first_frequency(one, m), rel=1e-12)
    assert rayleigh(one, m) == pytest.approx(first_frequency(one, m), rel=1e-12)
    on = masses(EVEN, PER_METRE)
    g = flexibility(EVEN, on.places)
    ratio = dunkerley(g, on.mass) / first_frequency(g, on.mass)
    assert ratio == pytest.approx(math.sqrt(90) / math.pi**2, rel=1e-4)


@settings(deadline=None)
@given(bars, loads, st.integers(0, 2), st.floats(0.0, 30.0))
def test_heavier_work_never_hums_higher(
    bending: list[float], mass: list[float], which: int, more: float
) -> None:
    g = flexibility(made(bending, 2e7), PLACES)
    heavier = np.array(mass) + more * (np.arange(3) == which)
    assert first_frequency(g, heavier) <= first_frequency(g, np.array(mass)) * (1 + 1e-12)


@settings(deadline=None)
@given(bars, loads, st.integers(0, 2), st.floats(1.0, 30.0))
def test_a_stiffer_bar_never_hums_lower(
    bending: list[float], mass: list[float], which: int, times: float
) -> None:
    stiffer = [b * (times if k == which else 1.0) for k, b in enumerate(bending)]
    soft, hard = (flexibility(made(b, 2e7), PLACES) for b in (bending, stiffer))
    m = np.array(mass)
    assert first_frequency(hard, m) >= first_frequency(soft, m) * (1 - 1e-12)


def test_spread_masses_weigh_what_they_are_spread_from() -> None:
    edges, per_metre = np.array([0.0, 0.03, 0.1]), np.array([2.0, 5.0])
    on = spread_mass(edges, per_metre, per_metre * 1e-5, 0.009)
    assert on.mass.sum() == pytest.approx(0.03 * 2 + 0.07 * 5)
    assert on.turning.sum() == pytest.approx((0.03 * 2 + 0.07 * 5) * 1e-5)
    middle = (0.06 * 0.015 + 0.35 * 0.065) / 0.41
    assert (on.mass @ on.places) / on.mass.sum() == pytest.approx(middle)


def test_no_mass_and_less_than_none_are_refused() -> None:
    g = flexibility(EVEN, PLACES)
    with pytest.raises(OutsideModel, match="mass"):
        first_frequency(g, np.zeros(3))
    with pytest.raises(OutsideModel, match="mass"):
        dunkerley(g, np.array([1.0, -1.0, 1.0]))
