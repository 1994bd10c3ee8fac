"""A mandrel that its nut bends, against the bent line summed step by step and hand sums."""

from __future__ import annotations

import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.tilted_nut import bow, gang_wedge, kink

SUMMED = 1e-5
"""Share by which the sum may miss: the work's ends fall between two of 200 000 steps."""


def bent_line(bent: float, span: float, start: float, end: float) -> float:
    """Curvature summed twice from center to center, the largest within the work."""
    x = np.linspace(0.0, span, 200_001)
    step = x[1] - x[0]
    middle = (x[1:] + x[:-1]) / 2
    curvature = np.where((middle > start) & (middle < end), bent / (end - start), 0.0)
    slope = np.concatenate([[0.0], np.cumsum(curvature) * step])
    raw = np.concatenate([[0.0], np.cumsum((slope[1:] + slope[:-1]) / 2) * step])
    line = raw[-1] * x / span - raw
    return float(np.max(line[(x >= start) & (x <= end)]))


@pytest.mark.parametrize(
    ("span", "start", "end"),
    [(0.2, 0.09, 0.11), (0.12, 0.03, 0.1), (0.3, 0.0, 0.3), (0.1, 0.0, 0.02)],
)
def test_the_bow_is_that_of_the_curvature_summed_twice(
    span: float, start: float, end: float
) -> None:
    assert bow(1e-3, span, start, end) == pytest.approx(
        bent_line(1e-3, span, start, end), rel=SUMMED
    )


def test_a_bar_bent_from_end_to_end_bows_by_an_eighth_of_span_times_angle() -> None:
    assert bow(8e-3, 0.1, 0.0, 0.1) == pytest.approx(1e-4)


def test_the_force_of_the_nut_bends_until_the_faces_are_closed_and_no_further() -> None:
    little = kink(1e-3, 1e3, 1e-3, 0.05, 500.0)
    assert little == pytest.approx(1e3 * 1e-3 * 0.05 / 500.0)
    assert kink(1e-3, 1e6, 1e-3, 0.05, 500.0) == 1e-3
    assert kink(0.0, 1e6, 1e-3, 0.05, 500.0) == 0.0


def test_nine_joints_are_three_times_as_far_out_as_one() -> None:
    assert gang_wedge(1e-4, 9) == pytest.approx(3e-4)


def test_work_beyond_the_span_is_refused() -> None:
    with pytest.raises(OutsideModel):
        bow(1e-3, 0.1, 0.05, 0.11)
