"""Bonded faces and gaps against integrals of the shear over them."""

from __future__ import annotations

import mpmath as mp
import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.bonded_joint import (
    face_area,
    face_shear,
    face_torque,
    face_torque_even,
    gap_axial,
    gap_shear,
    gap_torque,
    mismatch_strain,
)

SAME = 1e-10
"""Polynomials against their integrals: rounding only."""

TAU = 12e6
FACES = [(0.0, 0.04), (0.016, 0.04), (0.038, 0.04)]


@pytest.mark.parametrize(("inner", "outer"), FACES)
def test_the_torque_of_a_face_is_the_moment_of_its_shear(inner: float, outer: float) -> None:
    """∫ τ(r) r 2 π r dr: even, and growing from the middle to τ at the outer edge."""
    ends = [mp.mpf(inner) / 2, mp.mpf(outer) / 2]
    even = mp.quad(lambda r: TAU * 2 * mp.pi * r**2, ends)
    growing = mp.quad(lambda r: TAU * r / ends[1] * 2 * mp.pi * r**2, ends)
    assert face_torque_even(TAU, inner, outer) == pytest.approx(float(even), rel=SAME)
    assert face_torque(TAU, inner, outer) == pytest.approx(float(growing), rel=SAME)
    area = mp.quad(lambda r: 2 * mp.pi * r, ends)
    assert face_area(inner, outer) == pytest.approx(float(area), rel=SAME)


def test_the_safe_torque_is_the_lesser_and_meets_the_other_on_a_narrow_ring() -> None:
    inner = np.linspace(0.0, 0.0399, 50)
    share = face_torque(TAU, inner, 0.04) / face_torque_even(TAU, inner, 0.04)
    assert share[0] == pytest.approx(0.75)
    assert np.all(np.diff(share) > 0)
    assert 0.99 < share[-1] < 1


def test_torque_and_force_along_a_face_add_at_one_place_of_its_edge() -> None:
    """The vector sum of both shears, looked for all over the face on a grid."""
    torque, across, inner, outer = 30.0, 2e3, 0.016, 0.04
    r, a = np.meshgrid(np.linspace(inner / 2, outer / 2, 60), np.linspace(0, 2 * np.pi, 720))
    polar = np.pi * (outer**4 - inner**4) / 32
    turned, pushed = torque * r / polar, across / (np.pi * (outer**2 - inner**2) / 4)
    worst = np.hypot(-turned * np.sin(a) + pushed, turned * np.cos(a)).max()
    # A grid of half a degree misses the worst place by less than 1 - cos(0.5°) = 4e-5.
    assert float(face_shear(torque, across, inner, outer)) == pytest.approx(worst, rel=4e-5)


def test_a_gap_carries_its_area_times_its_strength() -> None:
    d, length = 0.02, 0.03
    assert gap_axial(TAU, d, length) == pytest.approx(TAU * np.pi * d * length)
    assert gap_torque(TAU, d, length) == pytest.approx(TAU * np.pi * d * length * d / 2)


def test_torque_and_axial_force_on_a_gap_together_make_the_resultant() -> None:
    d, length, torque, axial = 0.02, 0.03, 40.0, 3e3
    area = np.pi * d * length
    around, along = torque / (d / 2) / area, axial / area
    assert float(gap_shear(torque, axial, d, length)) == pytest.approx(
        float(np.sqrt(around**2 + along**2))
    )
    assert float(gap_shear(gap_torque(TAU, d, length), 0.0, d, length)) == pytest.approx(TAU)


def test_mismatch_is_how_far_the_edges_part_over_the_thickness() -> None:
    """Two free discs, each grown by itself; neither sign of the change matters."""
    work, plate, rise = 0.025 * (1 + 23e-6 * 40), 0.025 * (1 + 11.5e-6 * 40), 40.0
    strain = mismatch_strain((23e-6, 11.5e-6), rise, 0.025, 1e-4)
    assert strain == pytest.approx((work - plate) / 1e-4, rel=1e-9)
    assert mismatch_strain((11.5e-6, 23e-6), -rise, 0.025, 1e-4) == pytest.approx(strain)


def test_a_bond_without_metal_or_film_is_refused() -> None:
    with pytest.raises(OutsideModel, match="outer less inner diameter"):
        face_torque(TAU, 0.04, 0.04)
    with pytest.raises(OutsideModel, match="length of the gap"):
        gap_torque(TAU, 0.02, 0.0)
    with pytest.raises(OutsideModel, match="thickness of the bond"):
        mismatch_strain((23e-6, 11.5e-6), 40.0, 0.025, 0.0)
