"""The low and high ends of draws against numpy's own percentile, a second route."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.mechanics.spread import high_end, low_end

CASES = st.lists(st.floats(-1e9, 1e9), min_size=3, max_size=300)


@given(CASES, st.floats(0.0, 100.0))
def test_any_percentile_is_numpy_s(drawn: list[float], percent: float) -> None:
    draws = np.array([0.0, *drawn])
    wanted = float(np.percentile(np.array(drawn), percent))
    assert low_end(draws, percent) == pytest.approx(wanted, rel=1e-12, abs=1e-9)


def test_infinite_margins_stay_infinite_and_make_no_gap() -> None:
    draws = np.array([1.0, *([np.inf] * 20)])
    assert low_end(draws) == high_end(draws) == np.inf
    assert low_end(np.array([0.0, -np.inf, -np.inf, 1.0])) == -np.inf
