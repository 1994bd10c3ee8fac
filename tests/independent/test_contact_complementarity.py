"""The contact solver against an independent one: non-negative least squares on the Cholesky factor.

`0 <= q, G q - g >= 0, q (G q - g) = 0` is the minimum of |L' q - L^-1 g| over q >= 0 where G = L L'
(Lawson and Hanson's NNLS, scipy).
"""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.linalg import solve_triangular
from scipy.optimize import nnls

from borewright.errors import OutsideModel
from borewright.mechanics.contact import pressed

CLOSE = 1e-6
"""Of the largest load: two methods on problems with condition numbers up to 1e8."""


def problem(seed: int, size: int, smallest: float) -> tuple[np.ndarray, np.ndarray]:
    """A positive definite matrix whose eigenvalues run from `smallest` to 1, and an overlap."""
    random = np.random.default_rng(seed)
    turned, _ = np.linalg.qr(random.normal(size=(size, size)))
    values = np.geomspace(smallest, 1.0, size)
    return (turned * values) @ turned.T, random.normal(size=size)


def by_least_squares(gives: np.ndarray, overlap: np.ndarray) -> np.ndarray:
    factor = np.linalg.cholesky(gives)
    found, _ = nnls(factor.T, solve_triangular(factor, overlap, lower=True), maxiter=10_000)
    return found


@settings(max_examples=150, deadline=None)
@given(
    st.integers(0, 2**32 - 1),
    st.integers(1, 60),
    st.sampled_from([0.5, 1e-2, 1e-5, 1e-8]),
    st.sampled_from([1e-12, 1.0, 1e12]),
)
def test_loads_are_those_of_another_method(
    seed: int, size: int, smallest: float, scale: float
) -> None:
    gives, overlap = problem(seed, size, smallest)
    loads = pressed(scale * gives, overlap) * scale
    gap = gives @ loads - overlap
    assert loads.min() >= 0
    assert gap.min() >= -CLOSE * max(1.0, np.abs(overlap).max())
    assert np.abs(gap * loads).max() <= CLOSE * max(1.0, np.abs(loads).max())
    if smallest >= 1e-5:
        other = by_least_squares(gives, overlap)
        assert loads == pytest.approx(other, abs=CLOSE * max(1.0, np.abs(other).max()))


@pytest.mark.parametrize("shift", [0.0, 0.3, 0.7])
def test_matrices_on_which_exchanging_whole_blocks_cycles_still_end(shift: float) -> None:
    """Circulant problems of Murty's kind, each strip strongly tied to the next but one."""
    for size in (3, 5, 9, 17):
        ring = np.eye(size) + 0.9 * np.roll(np.eye(size), 1, axis=1) * (1 - shift)
        gives = ring @ ring.T + 1e-9 * np.eye(size)
        overlap = np.cos(np.arange(size) * 2.3 + shift)
        assert pressed(gives, overlap) == pytest.approx(by_least_squares(gives, overlap), abs=1e-6)


def test_nothing_that_overlaps_presses_nothing() -> None:
    gives, _ = problem(1, 8, 0.1)
    assert pressed(gives, -np.ones(8)).tolist() == [0.0] * 8


@pytest.mark.parametrize("bad", [-1.0, 0.0, np.nan])
def test_a_matrix_that_no_body_has_is_refused(bad: float) -> None:
    gives = np.eye(3)
    gives[1, 1] = bad
    with pytest.raises(OutsideModel, match="compliance"):
        pressed(gives, np.ones(3))
