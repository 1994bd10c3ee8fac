"""Stubs, slight tapers and the grip of an even fit, each against its printed figure."""

from __future__ import annotations

import math

import numpy as np
import pytest

from borewright.mechanics.beam import Bar
from borewright.mechanics.fine_angle import angle_of_taper, diameter_per_slide, taper_of_angle
from borewright.mechanics.grip_of_fit import fit_axial, fit_torque, least_interference
from borewright.mechanics.overhang import stub_deflection
from borewright.mechanics.rings import Elastic, lame_pressure, ring_compliance
from borewright.reference import Tables

PSI, LBF, INCH = 6894.757293168, 4.4482216152605, 0.0254
LAST_DIGIT = 1e-5
"""Inches per inch: the last digit printed, which the old table sometimes cuts off or rounds up."""


def test_wentzell_example_3_2_is_two_stubs_of_half_its_span() -> None:
    """Wentzell, Machine Design, Ex. 3.2 (companion): 2 × 2 in bar, 36 in, 3000 lbf, 0.0729 in.

    Its middle does not turn, so each half is a stub of 18 in with 1500 lbf at its end. The book
    leaves shear out.
    """
    bending = 30e6 * PSI * (2 * INCH) ** 4 / 12
    half = Bar(np.array([0.0, 18 * INCH]), np.array([bending]), np.array([np.inf]))
    got = stub_deflection(half, 18 * INCH, 1500 * LBF)
    assert got / INCH == pytest.approx(0.0729, rel=1e-6)


@pytest.mark.parametrize(
    ("included", "per_inch"), [(1, 0.01746), (10, 0.17498), (30, 0.53590), (45, 0.82842)]
)
def test_taper_per_inch_of_an_included_angle(included: float, per_inch: float) -> None:
    """Turning and Boring Tapers (1902): the slide stands at half of the included angle."""
    half = math.radians(included / 2)
    assert float(taper_of_angle(half)) == pytest.approx(per_inch, abs=LAST_DIGIT)
    back = math.degrees(2 * float(angle_of_taper(per_inch)))
    assert back == pytest.approx(included, abs=math.degrees(LAST_DIGIT))


def test_three_degrees_stand_in_the_same_table_as_their_arc() -> None:
    """Turning and Boring Tapers (1902) prints .05236 at 3°, which is the arc of 3°, not its taper.

    Twice the tangent of half an angle is more than the angle by a twelfth of its cube: 1.2 digits.
    """
    more = math.radians(3) ** 3 / 12
    taper = float(taper_of_angle(math.radians(1.5)))
    assert taper - more == pytest.approx(0.05236, abs=LAST_DIGIT / 2)


@pytest.mark.parametrize(("degrees", "inches"), [(18, 1.5451), (27, 2.2700)])
def test_a_five_inch_slide_goes_across_as_far_as_a_sine_bar_stands_high(
    degrees: float, inches: float
) -> None:
    """Sine bar of 5 in: geometry, as tables of its heights have it."""
    assert 5 * float(diameter_per_slide(math.radians(degrees))) / 2 == pytest.approx(
        inches, abs=5e-5
    )


def test_a_50_h7_s6_fit_at_its_loosest_still_grips_as_shigley_has_it() -> None:
    """Least interference 0.018 mm: Bhandari, Design of Machine Elements, Ex. 3.3 (companion).

    Steel ring 100 mm outside on a solid steel shaft, both E: p = E δ (1 - k²) / (2 d), and Shigley,
    9th ed., eqs 7-48, 7-49: F = π f p l d, T = π f p l d² / 2, written out here by hand. The limits
    come from the package's tables.
    """
    tables = Tables()
    hole, shaft = tables.limits("H7", 0.050), tables.limits("s6", 0.050)
    loosest = shaft.lower - hole.upper
    f, length, d, modulus = 0.12, 0.040, 0.050, 207e9
    by_hand = modulus * 18e-6 * (1 - 0.25) / (2 * d)
    compliance = ring_compliance(d, 0.100, Elastic(modulus, 0.29), Elastic(modulus, 0.29))
    pressure = lame_pressure(loosest, d, compliance)
    assert float(fit_axial(f, pressure, length, d)) == pytest.approx(
        math.pi * f * by_hand * length * d
    )
    torque = math.pi * f * by_hand * length * d**2 / 2
    assert float(fit_torque(f, pressure, length, d)) == pytest.approx(torque)
    assert float(least_interference(torque, 0.0, f, length, d, compliance)) == pytest.approx(18e-6)
