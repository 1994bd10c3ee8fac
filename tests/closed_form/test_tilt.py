"""Work tilting on its grip: springs integrated by hand, a bent bar, and lift by another route."""

import math

import mpmath
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import nnls

from borewright.mechanics.rock import lift_moment
from borewright.mechanics.tilt import (
    LIFTED,
    bar_bending,
    lift_moment_of,
    lifting,
    tilt_stiffness,
    tilted,
)

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


def test_even_pressure_on_even_springs_lifts_a_ninth_above_the_closed_form() -> None:
    """Ends lift at N L / 12; a tenth has lifted where the change at 9/10 of the way is p."""
    first = lift_moment(PRESSURE * math.pi * LENGTH, LENGTH)
    found = lift_moment_of(STRIPS, SPRINGS, np.full(MANY, PRESSURE))
    assert found == pytest.approx(first / (1 - LIFTED), rel=SAME)
    change = PRESSURE / (1 - LIFTED)
    exact = integral(lambda x, phi: change * (2 * x / LENGTH - 1) * mpmath.cos(phi))
    assert found == pytest.approx(exact, rel=SAME)
    nothing = lift_moment_of(STRIPS, SPRINGS, np.full(MANY, PRESSURE), share=0.0)
    assert nothing == pytest.approx(first, rel=2 / MANY)


@pytest.mark.parametrize("share", [0.04, 0.07, 0.1])
def test_a_pressure_that_falls_to_nothing_lifts_from_there(share: float) -> None:
    """p = 2 m (1 - u): a share s lies beyond u = 1 - √s, lifted where c (2u - 1) = 2 m (1 - u).

    The heavy end lifts from c = 2 m on, past all these.
    """
    u = 1 - math.sqrt(share)
    change = 2 * PRESSURE * (1 - u) / (2 * u - 1)
    exact = integral(lambda x, phi: change * (2 * x / LENGTH - 1) * mpmath.cos(phi))
    found = lift_moment_of(STRIPS, SPRINGS, 2 * PRESSURE * (1 - ALONG), share=share)
    assert found == pytest.approx(exact, rel=1e-2)


def test_a_sideways_force_takes_its_own_pressure_first() -> None:
    """F on even springs is F / (π/2 L) everywhere: that much less is left to lift."""
    share = 0.25
    force = share * PRESSURE * math.pi / 2 * LENGTH
    alone = lift_moment_of(STRIPS, SPRINGS, np.full(MANY, PRESSURE))
    pushed = tilted(STRIPS, SPRINGS, np.ones(MANY), moment=0.0, sideways=force).change
    assert pushed == pytest.approx(share * PRESSURE)
    with_it = lift_moment_of(STRIPS, SPRINGS, np.full(MANY, PRESSURE), beside=pushed)
    assert with_it == pytest.approx((1 - share) * alone, rel=SAME)


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
@given(st.integers(0, 10_000), st.integers(3, 14), st.floats(0.1, 1.5))
def test_lift_is_the_nearest_pressure_without_pull(seed: int, count: int, far: float) -> None:
    """The same problem as least squares without negatives (Lawson and Hanson, by scipy)."""
    rng = np.random.default_rng(seed)
    z = np.sort(rng.uniform(0, 2, count))
    gives = np.exp(-np.abs(np.subtract.outer(z, z)) / 0.3) + 0.2 * np.eye(count)
    loads, change = rng.uniform(0.2, 1, count), z - z.mean()
    first = lifting(gives, loads, change, loads)
    reach = float(far * (loads / np.abs(change)).min())
    upper = np.linalg.cholesky(gives).T
    held, _ = nnls(upper, upper @ (loads - reach * change))
    near = np.isfinite(first) & (np.abs(first - reach) < 1e-6)
    gone = first <= reach
    assert (held[gone & ~near] < 1e-9).all()
    assert (held[~gone & ~near] > 0).all()


def test_little_contact_falls_back_on_even_springs_and_none_holds_nothing() -> None:
    pressure = np.zeros(MANY)
    assert lift_moment_of(STRIPS, SPRINGS, pressure) == 0.0
    assert tilt_stiffness(STRIPS, SPRINGS, pressure) == 0.0
    pressure[:2] = PRESSURE
    two = 2 * LENGTH / MANY
    assert lift_moment_of(STRIPS, SPRINGS, pressure) == pytest.approx(
        lift_moment(PRESSURE * math.pi * two, two)
    )
    assert tilt_stiffness(STRIPS, SPRINGS, pressure) == pytest.approx(
        math.pi * SPRING * two**3 / 24
    )


def test_lift_goes_with_the_pressure_and_not_with_the_stiffness_nor_the_end() -> None:
    pressure = PRESSURE * (1.2 - ALONG)
    plain = lift_moment_of(STRIPS, SPRINGS, pressure)
    assert lift_moment_of(STRIPS, 7 * SPRINGS, 3 * pressure) == pytest.approx(3 * plain)
    assert lift_moment_of(STRIPS, SPRINGS, pressure[::-1]) == pytest.approx(plain)
