"""Turning rims and measured lengths against printed figures."""

from __future__ import annotations

import pytest

from borewright.mechanics.measurement import (
    REFERENCE_TEMPERATURE,
    combined_uncertainty,
    length_at_reference,
    length_read_at,
)
from borewright.mechanics.rim import rim_speed_for, rim_tension
from borewright.mechanics.rings import Elastic, lame_pressure, ring_compliance
from borewright.mechanics.slip import slip_torque

PSI, FOOT, POUND, INCH, LBF = 6894.757293168, 0.3048, 0.45359237, 0.0254, 4.4482216152605
TEXTBOOK_GRAVITY = 32.2 * FOOT  # the book's g, ft/s²


def test_singer_problem_139_rotating_ring() -> None:
    """Singer, Strength of Materials, Prob. 139: 20 ksi, 490 lb/ft³, 435.04 ft/s (g = 32.2 ft/s²)."""
    pound_force = POUND * TEXTBOOK_GRAVITY
    ksi = 1000 * pound_force / INCH**2
    speed = rim_speed_for(20 * ksi, 490 * POUND / FOOT**3)
    assert speed / FOOT == pytest.approx(435.04, abs=0.05)
    assert rim_tension(490 * POUND / FOOT**3, speed) == pytest.approx(20 * ksi)


def test_gum_h_1_end_gauge() -> None:
    """JCGM 100:2008, H.1 (from memory): contributions 25, 9.7, 2.9 and 16.6 nm give 32 nm."""
    assert combined_uncertainty([25.0, 9.7, 2.9, 16.6]) == pytest.approx(32, abs=0.5)


def test_a_length_at_twenty_degrees_is_itself_and_warm_aluminium_is_shorter_cold() -> None:
    assert length_at_reference(0.05, 23e-6, REFERENCE_TEMPERATURE) == 0.05
    assert length_at_reference(0.05, 23.1e-6, REFERENCE_TEMPERATURE + 10) == pytest.approx(
        0.05 - 11.55e-6, abs=1e-8
    )


def test_sixty_millimetres_of_aluminium_ten_kelvin_warm_read_fourteen_micrometres_over() -> None:
    """α 23.1 ppm/K: Swyt, J. Res. NIST 99 (1994) 31; sizes are meant at 20 °C (ISO 1)."""
    warm = REFERENCE_TEMPERATURE + 10
    reading = length_read_at(0.060, 23.1e-6, warm)
    assert reading - 0.060 == pytest.approx(13.86e-6, abs=1e-9)
    assert length_at_reference(reading, 23.1e-6, warm) == pytest.approx(0.060, rel=1e-15)


def test_a_permanent_fit_of_a_thou_per_inch_grips_far_harder_than_a_mandrel() -> None:
    """Jones, Turning and Boring (1914): 0.001-0.0025 in per in for forced fits (order of magnitude).

    Half a thou per inch of length leaves a 5/8 in mandrel with about 0.0005 in; a forced fit of
    that size has 0.0006 to 0.0016 in, and the torque goes with it.
    """
    iron, steel = Elastic(100e9, 0.26), Elastic(207e9, 0.29)
    compliance = ring_compliance(0.625 * INCH, 2.5 * INCH, iron, steel)
    area = 3.141592653589793 * 0.625 * INCH * INCH

    def torque(interference: float) -> float:
        pressure = lame_pressure(interference, 0.625 * INCH, compliance)
        return float(slip_torque(pressure * area, 0.1, 0.625 * INCH))

    mandrel, least, most = (torque(i * INCH) for i in (0.0005, 0.000625, 0.0015625))
    assert mandrel < least < most
    assert most / mandrel == pytest.approx(3.1, abs=0.1)
