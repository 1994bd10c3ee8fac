"""Cutting forces and powers printed in textbooks."""

from __future__ import annotations

import json
import math

import pytest
from tests.cli_run import ran

from borewright.mechanics.shear_plane import shear_angle, shear_force
from borewright.mechanics.turning import cutting_power, removal_rate, surface_speed

ROUNDED = 0.025
"""The book rounds the angle before it goes on."""


def test_an_orthogonal_cut() -> None:
    """Ghosh & Mallik, Manufacturing Science, Ex. 4.3: rake 10°, t 0.2, w 2 mm, friction 0.5, 400 MPa:
    36.7°, 420 N as printed."""
    rake = math.radians(10)
    assert math.degrees(shear_angle(rake, 0.5)) == pytest.approx(36.7, abs=0.05)
    force = shear_force(400e6, 2e-3, 0.2e-3, rake, 0.5)
    assert force == pytest.approx(420, rel=ROUNDED)
    assert force == pytest.approx(429, abs=0.5)  # the same sum without rounding


def test_the_command_says_the_same() -> None:
    done = ran(
        *("cut", "--material", "steel-1018", "--diameter", "60mm", "--depth", "2mm"),
        *("--feed", "0.2mm", "--speed", "20m/min", "--rake", "10deg"),
        *("--shear-strength", "400MPa", "--chip-friction", "0.5", "--json"),
    )
    found = json.loads(done.out)
    assert found["shear_plane_force_N"] == pytest.approx(429, abs=0.5)


def test_power_and_specific_energy_of_a_turning_cut() -> None:
    """P. C. Sharma, Production Engineering, Ex. 14.17 (companion): D 300 mm, 45 rpm, d 2, f 0.3 mm,
    1850 N: 1.31 kW, 3.08 W·s/mm³; metal taken at the outside there."""
    speed = surface_speed(45 / 60, 0.3)
    power = cutting_power(1850.0, speed)
    assert power / 1e3 == pytest.approx(1.31, abs=0.005)
    # at the mean diameter, as here, less metal comes off by d over D
    removed = removal_rate(0.3, 2e-3, 0.3e-3, 45 / 60) / (1 - 2 / 300)
    assert power / removed / 1e9 == pytest.approx(3.08, abs=0.005)
