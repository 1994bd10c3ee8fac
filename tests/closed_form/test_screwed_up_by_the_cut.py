"""Screws turned on and off, against a printed power screw, work done and the slope by hand."""

from __future__ import annotations

import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.screw_torque import Screw, force_from, torque_off, torque_on

PRINTED = 0.005
"""N·m: printed to two places."""

FLANK_TAKEN = 1e-3
"""Share: the flank is taken along the axis, not across the helix."""

POWER_SCREW = Screw(0.008, 0.015, 0.020, 0.0)


def test_a_square_thread_of_32_mm_by_two_starts_of_4_as_a_textbook_has_it() -> None:
    """6.4 kN, friction 0.08 on thread and on a collar of 40 mm: 26.18 to raise, 9.77 to lower."""
    assert torque_on(6400.0, 0.08, POWER_SCREW) == pytest.approx(26.18, abs=PRINTED)
    assert torque_off(6400.0, 0.08, POWER_SCREW) == pytest.approx(9.77, abs=PRINTED)


def test_without_friction_a_turn_does_the_work_of_a_pitch() -> None:
    screw = Screw(0.003, 0.012, 0.016)
    assert 2 * np.pi * torque_on(1000.0, 0.0, screw) == pytest.approx(1000.0 * 0.003)
    assert torque_off(1000.0, 0.0, screw) == pytest.approx(-torque_on(1000.0, 0.0, screw))


def test_equilibrium_on_the_slope_gives_the_torque() -> None:
    """A flank at slope l and angle b: N found from the axial force, friction along the helix."""
    force, friction, screw = 2000.0, 0.12, Screw(0.003, 0.012, 0.0)
    slope = np.arctan(screw.pitch / (2 * np.pi * screw.radius))
    flank = np.arctan(np.tan(screw.flank) * np.cos(slope))  # across the helix
    unit = np.array([np.cos(slope) * np.cos(flank), np.sin(slope) * np.cos(flank)])
    axial = unit[0] - friction * np.sin(slope)
    along = unit[1] + friction * np.cos(slope)
    assert torque_on(force, friction, screw) == pytest.approx(
        force * along / axial * screw.radius, rel=FLANK_TAKEN
    )


def test_what_a_cut_tightens_comes_off_with_less_than_it_went_on_with() -> None:
    screw = Screw(0.003, 0.012, 0.016)
    force = force_from(20.0, 0.12, screw)
    assert 0 < torque_off(force, 0.12, screw) < 20.0


def test_a_thread_that_jams_is_refused() -> None:
    with pytest.raises(OutsideModel):
        torque_on(1.0, 2.0, Screw(0.08, 0.01, 0.0))
