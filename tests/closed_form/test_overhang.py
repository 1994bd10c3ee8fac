"""A stub held at one end, against closed forms and integrals in high precision."""

from __future__ import annotations

import math

import mpmath as mp
import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.beam import Bar, deflection, round_step
from borewright.mechanics.overhang import (
    Root,
    propped_stiffness,
    stub_deflection,
    stub_slope,
    stub_stiffness,
)

SAME = 1e-10
"""Simpson's rule is exact here: rounding only."""

E_STEEL, NU = 207e9, 0.29
THICK, THIN = round_step(0.020, E_STEEL, NU), round_step(0.012, E_STEEL, NU)
STEPPED = Bar(
    np.array([0.0, 0.025, 0.060]), np.array([THICK[0], THIN[0]]), np.array([THICK[1], THIN[1]])
)


def uniform(length: float) -> Bar:
    return Bar(np.array([0.0, length]), np.array([THICK[0]]), np.array([THICK[1]]))


def test_a_plain_stub_gives_as_a_timoshenko_cantilever() -> None:
    """F L³ / 3 E I + F L / (κ G A), with Cowper's κ = 6 (1 + ν) / (7 + 6 ν) of a solid round."""
    length, inertia, area = 0.05, math.pi * 0.02**4 / 64, math.pi * 0.02**2 / 4
    kappa, shear = 6 * (1 + NU) / (7 + 6 * NU), E_STEEL / (2 * (1 + NU))
    tip = 250 * length**3 / (3 * E_STEEL * inertia) + 250 * length / (kappa * shear * area)
    assert stub_deflection(uniform(length), length, 250.0) == pytest.approx(tip, rel=SAME)
    assert stub_stiffness(uniform(length), length) == pytest.approx(250 / tip, rel=SAME)


@pytest.mark.parametrize(("load", "at"), [(0.06, 0.06), (0.05, 0.06), (0.06, 0.04), (0.02, 0.05)])
def test_a_stepped_stub_is_its_integral(load: float, at: float) -> None:
    """∫ (a - s)(x - s) / EI + 1 / G A_s over the part that both bend, with a root that gives."""
    root, near = Root(3e4, 5e7), min(load, at)
    cuts = [0, min(0.025, near), near]

    def piece(k: int) -> mp.mpf:
        ei, gas = (THICK, THIN)[k]
        return mp.quad(lambda s: (load - s) * (at - s) / ei + 1 / gas, [cuts[k], cuts[k + 1]])

    exact = 180 * (piece(0) + piece(1) + load * at / mp.mpf(3e4) + 1 / mp.mpf(5e7))
    got = stub_deflection(STEPPED, load, 180.0, root, at)
    assert got == pytest.approx(float(exact), rel=SAME)


def test_past_the_load_a_stub_stays_straight() -> None:
    """It goes on with its slope; shear gives a step of place, not of slope."""
    load, past = 0.030, 0.055
    root = Root(3e4, 5e7)
    there = stub_deflection(STEPPED, load, 100.0, root, past)
    here = stub_deflection(STEPPED, load, 100.0, root)
    assert there - here == pytest.approx(
        stub_slope(STEPPED, load, 100.0, root) * (past - load), rel=SAME
    )


def test_a_stub_bends_as_much_at_b_for_a_load_at_a_as_the_other_way_round() -> None:
    """Maxwell's reciprocity."""
    root = Root(2e4, 4e7)
    one = stub_deflection(STEPPED, 0.02, 1.0, root, 0.05)
    assert one == pytest.approx(stub_deflection(STEPPED, 0.05, 1.0, root, 0.02), rel=SAME)


def test_a_bar_between_supports_is_two_stubs_held_where_its_middle_is_loaded() -> None:
    """By symmetry: the middle does not turn, and each half carries half of the load."""
    between = deflection(uniform(0.1), 0.05, 500.0)
    assert stub_deflection(uniform(0.05), 0.05, 250.0) == pytest.approx(between, rel=SAME)


def test_a_stiff_stub_in_a_root_that_turns_swings_about_it() -> None:
    stiff = Bar(np.array([0.0, 0.08]), np.array([np.inf]), np.array([np.inf]))
    assert stub_deflection(stiff, 0.08, 10.0, Root(turn=100.0)) == pytest.approx(0.08**2 * 10 / 100)
    assert stub_deflection(stiff, 0.08, 10.0, Root(give=1e4)) == pytest.approx(1e-3)


def test_a_place_off_the_stub_or_a_root_that_holds_nothing_is_refused() -> None:
    with pytest.raises(OutsideModel, match="place along the bar"):
        stub_deflection(STEPPED, 0.07, 1.0)
    with pytest.raises(OutsideModel, match="against turning is 0"):
        Root(turn=0.0)
    with pytest.raises(OutsideModel, match="place of the load is 0"):
        stub_stiffness(STEPPED, 0.0)


@pytest.mark.parametrize("share", [0.2, 0.5, 0.9])
def test_a_stub_with_a_stiff_center_is_the_propped_beam_of_the_textbooks(share: float) -> None:
    """y = F a³ b² (3 a + 4 b) / (12 E I L³), no shear (any textbook on strength of materials)."""
    span, bending = 0.08, 500.0
    bar = Bar(np.array([0.0, span]), np.array([bending]), np.array([np.inf]))
    a, b = share * span, (1 - share) * span
    gives = a**3 * b**2 * (3 * a + 4 * b) / (12 * bending * span**3)
    assert propped_stiffness(bar, a) == pytest.approx(1 / gives, rel=SAME)


def test_at_the_center_its_spring_stands_beside_the_stub() -> None:
    alone = stub_stiffness(STEPPED, STEPPED.span)
    assert propped_stiffness(STEPPED, STEPPED.span, center=2e6) == pytest.approx(alone + 2e6)


def test_a_softer_center_never_makes_it_stiffer_and_none_at_all_leaves_it_alone() -> None:
    root = Root(6e4, 3e7)
    found = [propped_stiffness(STEPPED, 0.04, root, k) for k in (1e-3, 1e6, 1e7, np.inf)]
    assert found == sorted(found)
    assert found[0] == pytest.approx(stub_stiffness(STEPPED, 0.04, root), rel=1e-6)
