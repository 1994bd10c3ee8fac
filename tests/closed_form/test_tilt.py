"""Work tilting on its grip: springs integrated by hand, a bent bar, and lift by another route."""

import math

import mpmath
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import nnls

from borewright.mechanics.rock import lift_moment
from borewright.mechanics.tilt import bar_bending, lift_moment_of, tilt_stiffness, tilted
from borewright.mechanics.tilt_path import lifts

MANY, LENGTH, SPRING, PRESSURE = 400, 1.6, 3e9, 8e6
EDGES = np.linspace(0.3, 0.3 + LENGTH, MANY + 1)
STRIPS = np.column_stack([EDGES[:-1], EDGES[1:]])
SPRINGS = np.eye(MANY) * MANY / LENGTH / SPRING
"""A pressure p moves its own strip by p / SPRING, whatever the others do."""

ALONG = (STRIPS.mean(axis=1) - EDGES[0]) / LENGTH
SAME = 1 / MANY
"""The share that lifts is known to one strip."""


def integral(pressure: object) -> float:
    """Moment about the middle of pressures p(x, φ), all over d, by mpmath."""

    def one(x: mpmath.mpf, phi: mpmath.mpf) -> mpmath.mpf:
        return pressure(x, phi) * (x - LENGTH / 2) * mpmath.cos(phi) / 2  # type: ignore[operator]

    return float(mpmath.quad(one, [0, LENGTH], [0, 2 * mpmath.pi]))


def test_even_springs_are_as_stiff_as_their_integral() -> None:
    """A turn of 1 moves the place x by (x - L/2) cos φ, so that the pressure is k times that."""
    exact = integral(lambda x, phi: SPRING * (x - LENGTH / 2) * mpmath.cos(phi))
    assert tilt_stiffness(STRIPS, SPRINGS, np.ones(MANY)) == pytest.approx(exact, rel=1e-4)
    assert exact == pytest.approx(math.pi * SPRING * LENGTH**3 / 24)


def test_the_change_carries_the_moment_and_no_force() -> None:
    found = tilted(STRIPS, SPRINGS, np.ones(MANY))
    across = mpmath.quad(lambda phi: mpmath.cos(phi) ** 2 / 2, [0, 2 * mpmath.pi])
    h = LENGTH / MANY
    assert abs(found.change.sum()) < 1e-9 * np.abs(found.change).sum()
    moment = float(across) * (found.change * h) @ (STRIPS.mean(axis=1) - 7.0)
    assert moment == pytest.approx(1.0)


def test_the_ends_of_even_springs_under_even_pressure_lift_first_at_the_closed_form() -> None:
    first = lift_moment(PRESSURE * math.pi * LENGTH, LENGTH)
    nothing = lift_moment_of(STRIPS, SPRINGS, np.full(MANY, PRESSURE), share=0.0)
    assert nothing == pytest.approx(first, rel=2 / MANY)
    exact = integral(lambda x, phi: PRESSURE * (2 * x / LENGTH - 1) * mpmath.cos(phi))
    assert first == pytest.approx(exact)


@pytest.mark.parametrize("share", [0.04, 0.1])
def test_even_springs_lift_further_as_three_meridians_by_hand(share: float) -> None:
    """Symmetric: x lifts beyond x1 = p / (k t) on one side, -x1 on the other; L - 2 x1 = share L.

    The first harmonic of (q, p, q') is (q - q') / 2: k t x up to x1, then (p + k t x) / 2.
    """
    end = LENGTH / 2
    x1 = end * (1 - share)
    once = [lambda x: PRESSURE * x / x1 * x, lambda x: PRESSURE * (1 + x / x1) / 2 * x]
    by_hand = mpmath.pi * (mpmath.quad(once[0], [0, x1]) + mpmath.quad(once[1], [x1, end]))
    found = lift_moment_of(STRIPS, SPRINGS, np.full(MANY, PRESSURE), share=share)
    assert found == pytest.approx(float(by_hand), rel=SAME)


def test_what_was_open_closes_and_holds_where_a_tilt_brings_it_down() -> None:
    """Contact on the first half only: more moment where the rest may close, as much where not."""
    half = np.where(ALONG < 0.5, PRESSURE, 0.0)
    far = np.where(ALONG < 0.5, 0.0, 1.0)
    near = np.where(ALONG < 0.5, 0.0, 0.1 * PRESSURE / SPRING)
    never = lift_moment_of(STRIPS, SPRINGS, half)
    assert lift_moment_of(STRIPS, SPRINGS, half, gap=far) == pytest.approx(never)
    assert lift_moment_of(STRIPS, SPRINGS, half, gap=near) > 1.5 * never


def test_a_bore_line_warped_by_the_moment_is_straightened_by_its_springs() -> None:
    """Warp w = b x² for a unit moment.

    By hand, x from the middle: springs take c = k (a + t x - b x²); no force gives a = b L²/12, and
    t is as without. The work done by the change on the warp, π/2 ∫ w c = -π/2 k b² (L⁵/80 - L⁵/144),
    comes off the turn of the outside; what its own metal gives comes on.
    """
    bend = 1e-9
    x = STRIPS.mean(axis=1) - EDGES[0] - LENGTH / 2
    plain = 1 / tilt_stiffness(STRIPS, SPRINGS, np.ones(MANY))
    warped = 1 / tilt_stiffness(STRIPS, SPRINGS, np.ones(MANY), bend * x**2)
    added = -math.pi / 2 * SPRING * bend**2 * LENGTH**5 * (1 / 80 - 1 / 144)
    assert warped - plain == pytest.approx(added, rel=1e-3)
    own = 1 / tilt_stiffness(STRIPS, SPRINGS, np.ones(MANY), own=2e-9)
    assert own - plain == pytest.approx(2e-9)


def test_a_bar_bends_as_the_integral_of_its_curvature() -> None:
    """Unit-load integral of M m / (E I) over the bar, by mpmath; held at both ends."""
    strips, out, modulus = np.array([[0.0, 0.4], [0.4, 1.0], [1.0, 1.6]]), (0.7, 1.9), 2.07e11
    length = 1.6 + sum(out)
    at = [0.7 + 0.2, 0.7 + 0.7, 0.7 + 1.3]

    def bending(x: mpmath.mpf, load: float) -> mpmath.mpf:
        return min(x, load) * (length - max(x, load)) / length

    found = bar_bending(strips, modulus, out)
    for i, one in enumerate(at):
        for j, other in enumerate(at):
            cuts = sorted({0.0, one, other, length})
            work = mpmath.quad(lambda x: bending(x, one) * bending(x, other), cuts)  # noqa: B023
            exact = float(mpmath.pi / 2 * work) / (modulus * math.pi / 64)
            assert found[i, j] == pytest.approx(exact)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000), st.integers(4, 9), st.floats(0.2, 2.0))
def test_what_lifts_under_a_moment_is_what_least_squares_without_negatives_says(
    seed: int, count: int, far: float
) -> None:
    """The same problem at one moment by Lawson and Hanson (scipy), the balance as a heavy weight.

    Energy: half y' H y - y' (g - v m), so that H = U' U turns it into |U y - U'^-1 (g - v m)|.
    """
    rng = np.random.default_rng(seed)
    z = np.sort(rng.uniform(-1, 1, count))
    apart = np.abs(np.subtract.outer(z, z))
    gives, sways = (np.exp(-apart / a) + 0.2 * np.eye(count) for a in (0.3, 0.5))
    touches = np.arange(count) < max(2, count - int(rng.integers(0, 3)))
    loads = np.where(touches, rng.uniform(0.2, 1, count), 0.0)
    gap = np.where(touches, 0.0, rng.uniform(0.05, 1, count))
    warp = rng.uniform(-0.1, 0.1, count)
    first = lifts(z, gives, sways, warp, loads, gap, share=1.0)
    known = first[np.isfinite(first)]
    moment = far * float(known.min()) if len(known) else far
    held = around(z, gives, sways, warp, gives @ loads - gap, moment)
    gone = (held <= 1e-7).any(axis=0) & touches
    clear = np.isnan(first) | (np.abs(first - moment) > 1e-5)
    assert (first[gone & clear] < moment).all()
    if far < 1:
        assert not gone[clear].any()
    elif far > 1.0001 and (np.sort(known)[1:2] > moment).all():
        assert gone[np.argmin(np.where(np.isnan(first), np.inf, first))]


def around(z, gives, sways, warp, wanted, moment):  # type: ignore[no-untyped-def]
    """Loads (3, n) at 0, 1/4 and 1/2 of a turn, weights 1/4, 1/2, 1/4."""
    weights, cos = (0.25, 0.5, 0.25), (1.0, 0.0, -1.0)
    count = len(z)
    whole, asked = np.zeros((3 * count, 3 * count)), np.zeros(3 * count)
    balance = np.zeros((2, 3 * count))
    for i, (wi, ci) in enumerate(zip(weights, cos, strict=True)):
        rows = slice(i * count, (i + 1) * count)
        asked[rows] = math.sqrt(wi) * (wanted - ci * warp * moment)
        balance[:, rows] = 2 * math.sqrt(wi) * ci * np.vstack([np.ones(count), z])
        for k, (wk, ck) in enumerate(zip(weights, cos, strict=True)):
            cols = slice(k * count, (k + 1) * count)
            whole[rows, cols] = 2 * math.sqrt(wi * wk) * ci * ck * (sways - gives)
            if i == k:
                whole[rows, cols] += gives
    upper = np.linalg.cholesky(whole).T
    heavy = 1e4
    system = np.vstack([upper, heavy * balance])
    right = np.concatenate(
        [np.linalg.solve(upper.T, asked), heavy * np.array([0.0, 2 / np.pi * moment])]
    )
    found, _ = nnls(system, right, maxiter=2000)
    return found.reshape(3, count)


def test_little_contact_falls_back_on_even_springs_and_none_holds_nothing() -> None:
    pressure = np.zeros(MANY)
    assert lift_moment_of(STRIPS, SPRINGS, pressure) == 0.0
    assert tilt_stiffness(STRIPS, SPRINGS, pressure) == 0.0
    pressure[:2] = PRESSURE
    two = 2 * LENGTH / MANY
    assert tilt_stiffness(STRIPS, SPRINGS, pressure) == pytest.approx(
        math.pi * SPRING * two**3 / 24
    )
    pressure[:5] = PRESSURE
    five = 5 * LENGTH / MANY
    assert lift_moment_of(STRIPS, SPRINGS, pressure) == pytest.approx(
        lift_moment(PRESSURE * math.pi * five, five)
    )


def test_lift_goes_with_the_pressure_and_not_with_the_stiffness_nor_the_end() -> None:
    pressure = PRESSURE * (1.2 - ALONG)
    plain = lift_moment_of(STRIPS, SPRINGS, pressure)
    assert lift_moment_of(STRIPS, 7 * SPRINGS, 3 * pressure) == pytest.approx(3 * plain)
    assert lift_moment_of(STRIPS, SPRINGS, pressure[::-1]) == pytest.approx(plain)
