"""What a bar gives at many places at once, and what centers carry, against closed forms."""

from __future__ import annotations

import mpmath as mp
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from borewright.errors import OutsideModel
from borewright.mechanics.beam import Bar, deflection
from borewright.mechanics.center_loads import loads_on_centers, push_per_kelvin
from borewright.mechanics.influence import (
    deflection_line,
    flexibility,
    full_flexibility,
    under_tool,
)

SAME = 1e-10
"""Simpson's rule is exact here: rounding only."""

LENGTH, EI = 0.2, 700.0
EVEN = Bar(np.array([0.0, LENGTH]), np.array([EI]), np.array([np.inf]))
STEPPED = Bar(
    np.array([0.0, 0.02, 0.07, 0.10, 0.16, 0.19]),
    np.array([250.0, 660.0, 1500.0, 660.0, 300.0]),
    np.array([6e6, 1.1e7, 2e7, 1.1e7, 7e6]),
    (1.2e7, 2.5e7),
)
PLACES = np.array([0.0, 0.013, 0.055, 0.10, 0.121, 0.19])


def test_the_line_of_an_even_bar_is_the_textbook_s() -> None:
    """y = F b x (L² - b² - x²) / 6 E I L for x up to the load at a, b = L - a."""
    at, force = 0.13, 400.0
    b, x = LENGTH - at, np.linspace(0.0, at, 9)
    wanted = force * b * x * (LENGTH**2 - b**2 - x**2) / (6 * EI * LENGTH)
    assert deflection_line(EVEN, at, force, x) == pytest.approx(wanted, rel=SAME, abs=1e-18)


def test_under_the_tool_an_even_bar_gives_as_the_textbook_says() -> None:
    """a² b² / 3 E I L under a force; under a couple there it moves a b (b - a) / 3 E I L."""
    a = np.linspace(0.01, 0.19, 7)
    b, give = LENGTH - a, under_tool(EVEN, a)
    assert give.per_force == pytest.approx(a**2 * b**2 / (3 * EI * LENGTH), rel=SAME)
    moved = a * b * (b - a) / (3 * EI * LENGTH)
    assert give.per_moment == pytest.approx(moved, rel=SAME, abs=1e-18)


def test_every_pair_of_places_is_the_single_sum_s() -> None:
    """The route by single places is held by mpmath and print; both must say the same."""
    wanted = [[deflection(STEPPED, a, 1.0, x) for a in PLACES] for x in PLACES]
    assert flexibility(STEPPED, PLACES) == pytest.approx(np.array(wanted), rel=SAME)
    assert under_tool(STEPPED, PLACES).per_force == pytest.approx(np.diag(wanted), rel=SAME)


def test_a_couple_turns_a_stepped_bar_as_mpmath_integrates_it() -> None:
    """Turn at x of a couple at a: ∫ m_x m_a / EI + ∫ v v / G A_s + both springs, each by quadrature."""
    a, x, span = 0.055, 0.121, STEPPED.span
    edges = [float(e) for e in STEPPED.edges]

    def moment(at: float, s: mp.mpf) -> mp.mpf:
        return -s / span if s < at else 1 - s / span

    total = mp.mpf(0)
    for low, high, ei, gas in zip(edges, edges[1:], STEPPED.bending, STEPPED.shear, strict=False):
        cuts = sorted({low, high, *(p for p in (a, x) if low < p < high)})
        total += mp.quad(lambda s, k=ei: moment(a, s) * moment(x, s) / float(k), cuts)
        total += mp.mpf(high - low) / span**2 / float(gas)
    total += sum(1 / (span**2 * k) for k in STEPPED.springs)
    both = full_flexibility(STEPPED, np.array([a, x]))
    assert both[2, 3] == pytest.approx(float(total), rel=SAME)


def test_a_bar_moves_at_b_for_a_couple_at_a_as_it_turns_at_a_for_a_force_at_b() -> None:
    both = full_flexibility(STEPPED, PLACES)
    assert both == pytest.approx(both.T, rel=SAME)
    n = len(PLACES)
    assert np.diag(both[:n, n:]) == pytest.approx(under_tool(STEPPED, PLACES).per_moment, rel=SAME)


def test_a_couple_on_a_stiff_bar_works_the_springs_alone() -> None:
    """Reactions are ∓ 1/L: the bar moves at x by (1 - x/L)(-1/L)/k_1 + (x/L)(1/L)/k_2."""
    stiff = Bar(np.array([0.0, 0.2]), np.array([np.inf]), np.array([np.inf]), (1e7, 4e7))
    x = np.array([0.0, 0.05, 0.2])
    share = x / 0.2
    wanted = (-(1 - share) / 1e7 + share / 4e7) / 0.2
    assert under_tool(stiff, x).per_moment == pytest.approx(wanted, rel=SAME)


@settings(deadline=None)
@given(st.integers(0, 4), st.floats(1.0, 50.0), st.booleans())
def test_a_stiffer_bar_never_gives_more(step: int, times: float, shear: bool) -> None:
    """Any one step stiffened, in bending or in shear, at every place under the tool."""
    kind = STEPPED.shear if shear else STEPPED.bending
    stiffened = kind * np.where(np.arange(5) == step, times, 1.0)
    parts = (STEPPED.bending, stiffened) if shear else (stiffened, STEPPED.shear)
    after = under_tool(Bar(STEPPED.edges, *parts, STEPPED.springs), PLACES).per_force
    before = under_tool(STEPPED, PLACES).per_force
    assert (after <= before * (1 + SAME)).all()


def test_a_place_off_the_bar_is_refused() -> None:
    with pytest.raises(OutsideModel, match="place is"):
        under_tool(EVEN, np.array([0.1, 0.21]))


@given(st.floats(0.05, 1.0), st.floats(0.0, 1.0), st.floats(1.0, 5000.0))
def test_the_centers_carry_the_force_and_its_moment(
    span: float, share: float, force: float
) -> None:
    first, second = loads_on_centers(span, share * span, force)
    assert first + second == pytest.approx(force)
    assert second * span == pytest.approx(force * share * span, abs=1e-9)


STEEL, ALPHA = 207e9, 11.5e-6


def test_a_bar_that_cannot_grow_is_pushed_by_e_a_alpha() -> None:
    """A bed that does not give: E A α for each kelvin, whatever the length."""
    area = np.pi * 0.016**2 / 4
    for length in (0.1, 0.3):
        push = push_per_kelvin(np.array([length]), np.array([STEEL * area]), ALPHA, np.inf)
        assert push == pytest.approx(STEEL * area * ALPHA)


def test_a_stepped_bar_and_a_bed_give_one_after_the_other() -> None:
    """Hand sum: 1/k = 0.03/2e7 + 0.12/4e7 + 0.03/2e7 + 1/5e7 = 2.6e-8 m/N; 0.18 m x 11.5e-6 over it."""
    lengths, stretch = np.array([0.03, 0.12, 0.03]), np.array([2e7, 4e7, 2e7])
    push = push_per_kelvin(lengths, stretch, ALPHA, 5e7)
    assert push == pytest.approx(0.18 * 11.5e-6 / 2.6e-8)


def test_a_softer_bed_takes_push_off() -> None:
    lengths, stretch = np.array([0.15]), np.array([4e7])
    beds = [5e6, 5e7, 5e8]
    pushes = [float(push_per_kelvin(lengths, stretch, ALPHA, k)) for k in beds]
    assert pushes == sorted(pushes)
    with pytest.raises(OutsideModel, match="stiffness along the axis"):
        push_per_kelvin(lengths, stretch, ALPHA, 0.0)
