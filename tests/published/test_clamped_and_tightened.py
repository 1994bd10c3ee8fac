"""Clamped faces and tightened threads against worked examples in textbooks."""

import math

import pytest

from borewright.mechanics.face_friction import pressure_torque, wear_torque
from borewright.mechanics.nut_preload import (
    clamp_force,
    force_at_tension,
    thread_tension,
    tightening_torque,
)

INCH, LBF, PSI = 0.0254, 4.4482216152605, 6894.757293168
AS_PRINTED = 2e-5
"""3619.7 is given to five figures."""

TYPED_COPY = 1e-9
"""The typed copy prints every digit of its own arithmetic on the book's inputs."""


def test_wentzell_example_6_1_torque_for_a_preload() -> None:
    """Wentzell, Machine Design, Ex. 6.1: 3/4 in, 0.334 in², 0.85 of 85 ksi, K 0.2: 3619.7 lbf·in.

    Seen in a typed copy, recomputed.
    """
    area, diameter = 0.334 * INCH**2, 0.75 * INCH
    force = force_at_tension(0.85 * 85e3 * PSI, area)
    torque = tightening_torque(force, 0.2, diameter)
    assert torque / (LBF * INCH) == pytest.approx(3619.7, rel=AS_PRINTED)
    back = clamp_force(3619.7 * LBF * INCH, 0.2, diameter)
    assert thread_tension(back, area) / PSI == pytest.approx(0.85 * 85e3, rel=AS_PRINTED)


def test_bhandari_example_11_1_a_disc_under_uniform_wear() -> None:
    """Bhandari, Design of Machine Elements, Ex. 11.1: 100/200 mm, μ 0.2, 1 MPa at the inside edge.

    235 619.449 N·mm. Seen in a typed copy, recomputed; under uniform wear p r is constant.
    """
    force = math.pi * 1e6 * 0.100 * (0.200 - 0.100) / 2
    torque = wear_torque(force, 0.2, 0.100, 0.200)
    assert torque == pytest.approx(235.619449019, rel=TYPED_COPY)


def test_bhandari_example_11_2_the_same_disc_under_uniform_pressure() -> None:
    """Bhandari, Ex. 11.2: 1 MPa all over, 366 519.143 N·mm. Seen in a typed copy, recomputed."""
    force = math.pi / 4 * 1e6 * (0.200**2 - 0.100**2)
    torque = pressure_torque(force, 0.2, 0.100, 0.200)
    assert torque == pytest.approx(366.519142919, rel=TYPED_COPY)
