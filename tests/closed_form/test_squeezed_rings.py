"""Squeezed rings in their limits: thin ones by tabled figures, and what must hold for any."""

from __future__ import annotations

import math

import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.ring_ovality import (
    HeldRing,
    bending_between,
    bore_tension,
    force_for_out_of_round,
    jaw_bending,
    left_after_release,
    move_at_jaws,
    move_between,
    out_of_round,
)
from borewright.mechanics.rings import Elastic

IRON = Elastic(100e9, 0.26)
FOIL = HeldRing(1.9999, 2.0001, 0.5, IRON)
"""Mean radius 1 m, wall 0.1 mm: bending is all that counts."""

AS_REMEMBERED = 0.004
"""Three figures, the last rounded; the moves of three and four jaws are remembered to less."""


def bending_stiffness(ring: HeldRing) -> float:
    return float(ring.metal.modulus * ring.width * ring.wall**3 / 12)


@pytest.mark.parametrize(
    ("jaws", "moment", "inwards"), [(2, 0.318, 0.0744), (3, 0.189, 0.0159), (4, 0.137, 0.0061)]
)
def test_a_thin_ring_has_the_coefficients_of_the_handbooks(
    jaws: int, moment: float, inwards: float
) -> None:
    """M / (P R) and move E I / (P R³): two forces as in Timoshenko, Strength of Materials
    (1 / π and half of 0.149); three and four as in handbooks of rings. All from memory."""
    assert float(jaw_bending(1.0, jaws, FOIL)) == pytest.approx(moment, rel=AS_REMEMBERED)
    scaled = -float(move_at_jaws(1.0, jaws, FOIL)) * bending_stiffness(FOIL)
    assert scaled == pytest.approx(inwards, rel=2 * AS_REMEMBERED)


def test_a_thin_ring_pinched_by_two_is_flattened_by_timoshenko_s_coefficients() -> None:
    """π/4 - 2/π across and 2/π - 1/2 along, on diameter: exact for a ring without thickness."""
    per = 1 / bending_stiffness(FOIL)
    assert -2 * float(move_at_jaws(1.0, 2, FOIL)) == pytest.approx(
        (math.pi / 4 - 2 / math.pi) * per, rel=1e-6
    )
    assert 2 * float(move_between(1.0, 2, FOIL)) == pytest.approx(
        (2 / math.pi - 0.5) * per, rel=1e-6
    )


def test_the_moment_jumps_from_half_way_to_the_jaw_as_statics_alone_ask() -> None:
    """Hoop force at half-way P / (2 s), on the arm R (1 - c): no elasticity in it."""
    ring = HeldRing(0.085, 0.095, 0.02, IRON)
    for jaws in (2, 3, 4, 6):
        th = math.pi / jaws
        arm = 0.045 * (1 - math.cos(th))
        jump = float(jaw_bending(700.0, jaws, ring)) - float(bending_between(700.0, jaws, ring))
        assert jump == pytest.approx(700.0 / (2 * math.sin(th)) * arm, rel=1e-12)


def test_the_tension_of_a_thin_bore_is_the_moment_over_its_section() -> None:
    section = FOIL.width * FOIL.wall**2 / 6
    assert float(bore_tension(1.0, 3, FOIL)) == pytest.approx(
        float(jaw_bending(1.0, 3, FOIL)) / section, rel=5e-4
    )


def test_what_is_left_after_release_is_the_squeeze_upside_down() -> None:
    ring = HeldRing(0.09, 0.11, 0.02, IRON)
    at_jaws, between = left_after_release(900.0, 3, ring)
    assert at_jaws == -move_at_jaws(900.0, 3, ring)
    assert between == -move_between(900.0, 3, ring)
    assert float(at_jaws) - float(between) == pytest.approx(float(out_of_round(900.0, 3, ring)))


def test_the_same_force_in_all_on_more_jaws_leaves_the_ring_rounder() -> None:
    ring = HeldRing(0.095, 0.105, 0.02, IRON)
    left = [float(out_of_round(1200.0 / n, n, ring)) for n in (2, 3, 4, 6)]
    assert left == sorted(left, reverse=True)


def test_a_ring_of_twice_the_width_or_modulus_moves_half_and_all_grow_alike() -> None:
    ring = HeldRing(0.09, 0.11, 0.02, IRON)
    move = float(out_of_round(500.0, 3, ring))
    wide = HeldRing(0.09, 0.11, 0.04, IRON)
    stiff = HeldRing(0.09, 0.11, 0.02, Elastic(200e9, 0.26))
    large = HeldRing(0.18, 0.22, 0.04, IRON)
    for other in (wide, stiff, large):
        assert float(out_of_round(500.0, 3, other)) == pytest.approx(move / 2)


def test_a_thicker_wall_always_moves_less() -> None:
    wall = np.linspace(0.002, 0.018, 30)
    ring = HeldRing(0.1 - wall, 0.1 + wall, 0.02, IRON)
    assert np.all(np.diff(out_of_round(1000.0, 3, ring)) < 0)


def test_the_force_for_an_out_of_round_gives_it() -> None:
    ring = HeldRing(0.09, 0.11, 0.02, IRON)
    force = force_for_out_of_round(10e-6, 3, ring)
    assert float(out_of_round(force, 3, ring)) == pytest.approx(10e-6)


def test_a_wall_up_to_the_limit_is_taken_and_one_beyond_it_refused() -> None:
    arc = math.pi / 3 * 0.05
    for part, fits in ((0.39, True), (0.41, False)):
        ring = HeldRing(0.1 - part * arc, 0.1 + part * arc, 0.02, IRON)
        if fits:
            assert float(out_of_round(1.0, 3, ring)) > 0
        else:
            with pytest.raises(OutsideModel, match="wall of the ring"):
                out_of_round(1.0, 3, ring)


def test_what_is_no_ring_or_no_chuck_is_refused() -> None:
    ring = HeldRing(0.09, 0.11, 0.02, IRON)
    with pytest.raises(OutsideModel, match="jaws is 1"):
        out_of_round(1.0, 1, ring)
    with pytest.raises(OutsideModel, match="force of a jaw is -1 N"):
        out_of_round(-1.0, 3, ring)
    with pytest.raises(OutsideModel, match=r"outside of the ring is 0\.09 m"):
        HeldRing(0.09, 0.09, 0.02, IRON)
    with pytest.raises(OutsideModel, match="width of the ring"):
        HeldRing(0.09, 0.11, 0.0, IRON)
    with pytest.raises(OutsideModel, match="out-of-round is -1e-05 m"):
        force_for_out_of_round(-1e-5, 3, ring)
