"""Cones in the mouths of a bore, against pressure summed over the cone and beams by hand."""

from __future__ import annotations

import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.cone_drive import cone_torque, hoop_pull, lifts, normal_force, stud_force

SUMMED = 1e-6
"""Share by which sums over 2000 strips may miss."""


@pytest.mark.parametrize("half", [15.0, 30.0, 45.0])
@pytest.mark.parametrize("ends", [(0.02, 0.024), (0.1, 0.101)])
def test_the_torque_is_the_friction_summed_over_the_cone(
    half: float, ends: tuple[float, float]
) -> None:
    """Pressure c / r on rings of slant width dr / sin a; c from the axial force."""
    a, force, friction = np.radians(half), 800.0, 0.13
    edges = np.linspace(ends[0] / 2, ends[1] / 2, 2001)
    r, dr = (edges[1:] + edges[:-1]) / 2, np.diff(edges)
    area = 2 * np.pi * r * dr / np.sin(a)
    pressure = 1 / r
    scale = force / np.sum(pressure * area * np.sin(a))
    torque = np.sum(friction * scale * pressure * area * r)
    assert cone_torque(force, friction, a, *ends) == pytest.approx(torque, rel=SUMMED)


@pytest.mark.parametrize("half", [15.0, 30.0, 45.0])
def test_the_far_side_lets_go_at_the_force_that_the_summed_pressure_balances(half: float) -> None:
    a, force = np.radians(half), 1000.0
    phi = (np.arange(3600) + 0.5) * 2 * np.pi / 3600
    n = 1 + np.cos(phi)
    n *= force / np.sum(n * np.sin(a))
    assert lifts(force, a) == pytest.approx(np.sum(n * np.cos(a) * np.cos(phi)), rel=SUMMED)


def test_the_hoop_pull_is_half_of_what_bursts_the_mouth_across_a_diameter() -> None:
    a, force = np.radians(30), 1000.0
    phi = (np.arange(3600) + 0.5) * np.pi / 3600
    spread = force / (2 * np.pi) / np.tan(a)
    across = np.sum(spread * np.sin(phi)) * np.pi / 3600
    assert 2 * hoop_pull(force, a) == pytest.approx(across, rel=SUMMED)


def test_a_disc_is_a_cone_of_ninety_degrees_and_a_wedge_drives_more() -> None:
    flat = cone_torque(1000.0, 0.1, np.radians(89.999), 0.03, 0.03)
    assert flat == pytest.approx(0.1 * 1000 * 0.015, rel=1e-6)
    assert normal_force(1000.0, np.radians(30)) == pytest.approx(2000.0)


def test_a_stud_bends_by_the_beam_formula() -> None:
    """12 mm, 40 mm out, 300 MPa: W = pi 12^3 / 32 = 169.646 mm3; 300 x 169.646 / 40 N."""
    assert stud_force(300e6, 0.012, 0.04) == pytest.approx(1272.35, rel=1e-5)


@pytest.mark.parametrize("half", [0.0, np.pi / 2])
def test_no_cone_is_refused(half: float) -> None:
    with pytest.raises(OutsideModel):
        normal_force(1.0, half)
