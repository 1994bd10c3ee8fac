"""Rings against worked examples in print (inputs and results as the textbooks give them)."""

import pytest

from borewright.mechanics.rings import (
    Elastic,
    hoop_at_bore,
    hoop_at_outside,
    hoop_at_shaft_bore,
    hoop_at_shaft_surface,
    lame_pressure,
    ring_compliance,
)
from borewright.mechanics.slip import slip_torque

PSI = 6894.757293168
INCH = 0.0254
TYPED_COPY = 0.005  # companion answers were recomputed from a typed copy of the book
TO_THE_PRINTED_DIGIT = 0.0005


def test_norton_example_10_5_steel_shaft_in_iron_hub() -> None:
    """Norton, Machine Design, 4th ed., Ex. 10-5: p = 15 265 psi."""
    iron, steel = Elastic(14e6 * PSI, 0.28), Elastic(30e6 * PSI, 0.28)
    compliance = ring_compliance(0.781 * INCH, 3.0 * INCH, iron, steel)
    pressure = lame_pressure(0.0015 * INCH, 0.781 * INCH, compliance)
    assert pressure / PSI == pytest.approx(15265, rel=TO_THE_PRINTED_DIGIT)


def compound_cylinder(
    inner: float, joint: float, outer: float, radial_interference: float
) -> float:
    """Pressure (Pa) where two steel cylinders meet; E 200 GPa cancels ν."""
    steel = Elastic(200e9, 0.3)
    compliance = ring_compliance(2 * joint, 2 * outer, steel, steel, 2 * inner)
    return float(lame_pressure(2 * radial_interference, 2 * joint, compliance))


def test_ugural_fenster_example_8_3_compound_cylinder() -> None:
    """Ugural & Fenster, Advanced Strength and Applied Elasticity, Ex. 8.3 (companion)."""
    p = compound_cylinder(0.150, 0.200, 0.250, 0.10e-3)
    assert p / 1e6 == pytest.approx(12.3, rel=TYPED_COPY)
    assert hoop_at_bore(p, 0.2 / 0.25) / 1e6 == pytest.approx(56.0, rel=TYPED_COPY)
    assert hoop_at_outside(p, 0.2 / 0.25) / 1e6 == pytest.approx(43.7, rel=TYPED_COPY)
    assert hoop_at_shaft_bore(p, 0.15 / 0.2) / 1e6 == pytest.approx(-56.2, rel=TYPED_COPY)
    assert hoop_at_shaft_surface(p, 0.15 / 0.2) / 1e6 == pytest.approx(-43.9, rel=TYPED_COPY)


def test_bhavikatti_example_8_16_shrinkage_for_a_pressure() -> None:
    """Bhavikatti, Strength of Materials, Ex. 8.16 (companion): 0.189 mm radial for 30 MPa."""
    per_metre = compound_cylinder(0.100, 0.125, 0.150, 1.0)
    assert 30e6 / per_metre * 1e3 == pytest.approx(0.189, rel=TYPED_COPY)


def test_junnarkar_example_11_hoop_stresses() -> None:
    """Junnarkar, Mechanics of Structures, Ex. 11 (companion): radii 3/5/6 in, 1500 psi."""
    assert hoop_at_shaft_bore(1500, 3 / 5) == pytest.approx(-4687.5, rel=1e-9)
    assert hoop_at_shaft_surface(1500, 3 / 5) == pytest.approx(-3187.5, rel=1e-9)
    assert hoop_at_bore(1500, 5 / 6) == pytest.approx(8318.2, rel=1e-5)
    assert hoop_at_outside(1500, 5 / 6) == pytest.approx(6818.2, rel=1e-5)


def test_singer_problem_267_tyre_on_a_rigid_wheel() -> None:
    """Singer, Strength of Materials, Prob. 267: 12 mm tyre, 2 m wheel, 80 to 25 °C.

    Singer's tyre is a thin ring (hoop = E α ΔT, p = hoop t / r); ours is thick, so it may differ by
    about the ratio t / r = 1.2 %.
    """
    tyre, rigid = Elastic(200e9, 0.0), Elastic(1e20, 0.0)
    interference = 2.0 * 11.7e-6 * 55
    p = lame_pressure(interference, 2.0, ring_compliance(2.0, 2.024, tyre, rigid))
    assert p / 1e6 == pytest.approx(1.5444, rel=0.012)


def test_shigley_7_48_and_7_49_force_and_torque_of_a_fit() -> None:
    """Shigley, 9th ed.: F = π f p l d and T = π f p l d² / 2, so T = F d / 2."""
    f, p, length, d = 0.15, 80e6, 0.03, 0.02
    normal = p * 3.141592653589793 * d * length
    assert slip_torque(normal, f, d) == pytest.approx(3.141592653589793 * f * p * length * d**2 / 2)
