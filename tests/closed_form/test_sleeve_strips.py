"""A sleeve slit from either end in turn: both readings against the energy of their frames."""

from __future__ import annotations

import mpmath as mp
import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.sleeve_strips import (
    Strips,
    hoop_pull,
    largest_strip_opening,
    strip_opening_force,
    strip_stress,
)

SAME = 1e-10
"""Formulas against integrals of polynomials: rounding only."""

E, NU = 207e9, 0.29
SLEEVE = Strips(0.025, 0.0025, 12, 0.001, 0.035, 0.006)
WIDTH = np.pi * 0.025 / 12 - 0.001


def given_by(length: float, bridge: float | None) -> float:
    """Twice the energy of a unit pull in one strip and its two half bridges: how far they part.

    The strip bends by y along it from its middle and shears by 1; each half bridge bends evenly by
    half the strip's length. Depths: the strip's width, the bridge's height.
    """
    wall, shear = 0.0025, E / (2 * (1 + NU))
    bend = mp.quad(lambda y: y**2, [-length / 2, length / 2]) / (E * wall * WIDTH**3 / 12)
    slide = length / (mp.mpf(5) / 6 * shear * wall * WIDTH)
    if bridge is None:
        return float(bend + slide)
    half = (WIDTH + 0.001) / 2
    turned = 2 * mp.quad(lambda x: (length / 2) ** 2, [0, half]) / (E * wall * bridge**3 / 12)
    return float(bend + slide + turned)


def test_soft_and_stiff_are_the_frames_with_and_without_bridges_that_bend() -> None:
    """12 strips share the growth of the round, π e."""
    soft, stiff = hoop_pull(SLEEVE, 1e-4, E, NU)
    each = np.pi * 1e-4 / 12
    assert stiff == pytest.approx(each / given_by(0.035, None), rel=SAME)
    assert soft == pytest.approx(each / given_by(0.035 + 0.006, 0.006), rel=SAME)


def test_opening_does_the_same_work_by_pull_and_by_pressure() -> None:
    """Round the sleeve the pull moves π e, outward the radial force moves e / 2."""
    pulls, forces = (f(SLEEVE, 1e-4, E, NU) for f in (hoop_pull, strip_opening_force))
    for pull, force in zip(pulls, forces, strict=True):
        assert force * 1e-4 / 2 == pytest.approx(pull * np.pi * 1e-4, rel=SAME)


def test_the_stress_is_that_of_half_the_length_times_the_pull() -> None:
    """M (w / 2) / I; and the largest opening is where it reaches what is allowed."""
    _, pull = hoop_pull(SLEEVE, 1e-4, E, NU)
    stress = strip_stress(SLEEVE, 1e-4, E, NU)
    assert stress == pytest.approx(pull * 0.0175 * (WIDTH / 2) / (0.0025 * WIDTH**3 / 12), rel=SAME)
    assert largest_strip_opening(SLEEVE, 2 * stress, E, NU) == pytest.approx(2e-4)


def test_slots_that_make_no_zigzag_are_refused() -> None:
    with pytest.raises(OutsideModel, match="number of slots is 5; allowed is an even number"):
        Strips(0.025, 0.0025, 5, 0.001, 0.035, 0.006)
    with pytest.raises(OutsideModel, match="width of a strip"):
        Strips(0.025, 0.0025, 40, 0.002, 0.035, 0.006)
    with pytest.raises(OutsideModel, match="height of a bridge is 0"):
        Strips(0.025, 0.0025, 12, 0.001, 0.035, 0.0)
    with pytest.raises(OutsideModel, match="stress allowed"):
        largest_strip_opening(SLEEVE, 0.0, E, NU)
