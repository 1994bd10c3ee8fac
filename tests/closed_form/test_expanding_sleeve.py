"""A slit sleeve on a cone and its fingers, against equilibrium and integrals in high precision."""

from __future__ import annotations

import math

import mpmath as mp
import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.expanding_sleeve import (
    bearing_round,
    cone_torque,
    expansion,
    holds_itself,
    normal_on_bore,
    release_push,
    share_to_open,
    sleeve_push,
    sleeve_torque,
    travel_to_touch,
)
from borewright.mechanics.sleeve_fingers import (
    Fingers,
    edge_gap,
    finger_section,
    finger_stress,
    largest_opening,
    opening_force,
)

SAME = 1e-9
"""Both are formulas or integrals of the same thing: rounding only."""

TAPERS = [1 / 16, 0.02, 0.25]
SLIT = Fingers(0.025, 0.020, 4, 0.0015, 0.035)
STEEL = 207e9


def by_balance(radial: float, friction: float, taper: float, way: int) -> float:
    """Axial force on the cone from its normal force R and friction along the slope, way ±1 up/down.

    Radial: R (cos α - way μ sin α) = Q;  axial: R (sin α + way μ cos α).
    """
    lean = mp.atan(mp.mpf(taper) / 2)
    normal = radial / (mp.cos(lean) - way * friction * mp.sin(lean))
    return float(way * normal * (mp.sin(lean) + way * friction * mp.cos(lean)))


@pytest.mark.parametrize("taper", TAPERS)
@pytest.mark.parametrize("friction", [0.0, 0.08, 0.2])
def test_push_and_release_are_the_balance_of_forces_on_the_cone(
    friction: float, taper: float
) -> None:
    on = sleeve_push(9e3, 2e3, friction, taper)
    off = release_push(9e3, 2e3, friction, taper)
    assert on == pytest.approx(by_balance(11e3, friction, taper, 1), rel=SAME)
    assert off == pytest.approx(by_balance(11e3, friction, taper, -1), rel=SAME)


def test_work_against_a_stop_adds_its_own_friction_to_push_and_release() -> None:
    assert sleeve_push(9e3, 0.0, 0.1, 0.06, 0.15) - sleeve_push(
        9e3, 0.0, 0.1, 0.06
    ) == pytest.approx(0.15 * 9e3)
    assert release_push(9e3, 0.0, 0.1, 0.06, 0.15) - release_push(
        9e3, 0.0, 0.1, 0.06
    ) == pytest.approx(0.15 * 9e3)


def test_the_work_of_a_frictionless_push_is_the_work_done_outward() -> None:
    """F dx = Q d(radius), and the radius grows by T / 2 per travel: no friction loses nothing."""
    travel = 1e-3
    grown = expansion(travel, 1 / 16) / 2
    assert sleeve_push(9e3, 2e3, 0.0, 1 / 16) * travel == pytest.approx(11e3 * grown)


@pytest.mark.parametrize("bore_friction", [0.0, 0.12])
def test_the_push_gives_the_force_on_the_bore_back(bore_friction: float) -> None:
    push = sleeve_push(7e3, 2e3, 0.1, 1 / 16, bore_friction)
    assert float(normal_on_bore(push, 2e3, 0.1, 1 / 16, bore_friction)) == pytest.approx(7e3)


def test_a_push_that_does_not_open_the_sleeve_leaves_nothing_for_the_bore() -> None:
    weak = 0.5 * sleeve_push(0.0, 2e3, 0.1, 1 / 16)
    assert float(normal_on_bore(weak, 2e3, 0.1, 1 / 16)) == 0.0
    assert float(share_to_open(weak, 2e3, 0.1, 1 / 16)) == 1.0
    whole = sleeve_push(6e3, 2e3, 0.1, 1 / 16)
    assert float(share_to_open(whole, 2e3, 0.1, 1 / 16)) == pytest.approx(0.25)


@pytest.mark.parametrize(("friction", "taper"), [(0.1, 0.19), (0.1, 0.21), (0.03, 1 / 16)])
def test_a_sleeve_holds_itself_exactly_where_it_must_be_driven_off(
    friction: float, taper: float
) -> None:
    assert bool(holds_itself(friction, taper)) == (release_push(1e3, 0.0, friction, taper) > 0)


@pytest.mark.parametrize("taper", [1 / 16, 0.15])
def test_the_torque_of_a_cone_left_to_itself_is_what_friction_along_the_slope_leaves(
    taper: float,
) -> None:
    """No push: R sin α = f cos α and R cos α + f sin α = Q; around is sqrt((μ R)² - f²)."""
    mu, q, d = mp.mpf("0.1"), mp.mpf(8000), mp.mpf("0.015")
    lean = mp.atan(mp.mpf(taper) / 2)
    normal, along = mp.lu_solve(
        mp.matrix([[mp.sin(lean), -mp.cos(lean)], [mp.cos(lean), mp.sin(lean)]]), mp.matrix([0, q])
    )
    around = mp.sqrt((mu * normal) ** 2 - along**2) * d / 2
    assert float(cone_torque(8e3, 0.1, 0.015, taper)) == pytest.approx(float(around), rel=SAME)


def test_the_weaker_of_bore_and_cone_gives_the_torque() -> None:
    """The cone is smaller; but it also carries what opens the sleeve."""
    bore = 0.1 * 4e3 * 0.025 / 2
    assert float(
        sleeve_torque(4e3, 0.0, (0.1, 0.1), (0.025, 0.02), 0.04, push_stays=True)
    ) == pytest.approx(0.1 * 4e3 * 0.01)
    assert float(
        sleeve_torque(4e3, 2e3, (0.1, 0.1), (0.025, 0.02), 0.04, push_stays=True)
    ) == pytest.approx(bore)


def test_one_sixteenth_per_inch_opens_a_sixteenth_over_an_inch() -> None:
    assert expansion(0.0254, 1 / 16) == pytest.approx(0.0254 / 16)
    assert travel_to_touch(0.0254 + 0.0254 / 16, 0.0254, 1 / 16) == pytest.approx(0.0254)


def test_models_take_arrays_and_broadcast() -> None:
    push = np.array([[1e3], [2e3]])
    friction = np.array([0.08, 0.1, 0.12])
    got = normal_on_bore(push, 500.0, friction, 1 / 16)
    assert got.shape == (2, 3)  # type: ignore[union-attr]
    one = normal_on_bore(2e3, 500.0, 0.12, 1 / 16)
    assert float(got[1, 2]) == pytest.approx(float(one))  # type: ignore[index]


# Fingers


def integral_over_finger(fingers: Fingers, power: int) -> mp.mpf:
    """∫ (r cos φ)^power r dr dφ over the metal of one finger, by mpmath."""
    beta = fingers.half_angle
    return mp.quad(
        lambda r, a: (r * mp.cos(a)) ** power * r,
        [fingers.inside / 2, fingers.outside / 2],
        [-beta, beta],
    )


@pytest.mark.parametrize("number", [3, 4, 6, 12])
def test_the_section_of_a_finger_is_the_integral_over_its_metal(number: int) -> None:
    fingers = Fingers(0.025, 0.020, number, 0.0015, 0.035)
    area, first, second = (integral_over_finger(fingers, p) for p in (0, 1, 2))
    middle = first / area
    inertia, fiber = finger_section(fingers)
    assert inertia == pytest.approx(float(second - area * middle**2), rel=SAME)
    edge = float(middle) - 0.010 * math.cos(fingers.half_angle)
    assert fiber == pytest.approx(max(0.0125 - float(middle), edge), rel=SAME)


def test_many_fingers_bend_like_flat_strips() -> None:
    """w h³ / 12 each in the limit of many; wider outside, so the middle stands h² / 12 r farther out.

    A finger a twentieth of the radius wide still has an arch of about a thousandth.
    """
    fingers = Fingers(0.025, 0.020, 120, 0.0, 0.035)
    width = math.pi * 0.0225 / 120
    inertia, fiber = finger_section(fingers)
    assert inertia == pytest.approx(width * 0.0025**3 / 12, rel=2e-3)
    assert fiber == pytest.approx(0.0025 / 2 + 0.0025**2 / (12 * 0.01125), rel=3e-3)


def test_pressure_under_the_fingers_adds_up_to_more_than_what_bends_them() -> None:
    """Even pressure over a finger: its resultant is ∫ p cos φ, against p times its width."""
    inertia, _ = finger_section(SLIT)
    one = 3 * STEEL * inertia * 50e-6 / 0.035**3
    beta = SLIT.half_angle
    lost = mp.quad(mp.cos, [-beta, beta]) / (2 * beta)
    assert opening_force(SLIT, 1e-4, STEEL) == pytest.approx(float(4 * one / lost), rel=SAME)


def test_the_stress_of_a_finger_is_its_moment_over_its_section() -> None:
    inertia, fiber = finger_section(SLIT)
    tip = 3 * STEEL * inertia * 50e-6 / 0.035**3
    stress = finger_stress(SLIT, 1e-4, STEEL)
    assert stress == pytest.approx(tip * 0.035 * fiber / inertia, rel=SAME)
    assert largest_opening(SLIT, stress, STEEL) == pytest.approx(1e-4, rel=SAME)


def test_the_gap_at_a_fingers_edge_is_that_between_two_circles() -> None:
    """Finger of radius R touching a bore of radius R + e/2 at its middle: the exact chord distance.

    The formula is the first order in e / R, so an opening of a thousandth agrees to about that.
    """
    small, opening = SLIT.outside / 2, 2.5e-5
    at = np.array([small * math.cos(SLIT.half_angle), small * math.sin(SLIT.half_angle)])
    exact = small + opening / 2 - float(np.hypot(at[0] + opening / 2, at[1]))
    assert edge_gap(SLIT, opening) == pytest.approx(exact, rel=2e-3)


def test_what_the_slots_leave_of_the_round_is_what_is_not_slot() -> None:
    left = float(bearing_round(4, 0.0015, 0.0225))
    assert left == pytest.approx(4 * 2 * SLIT.half_angle / (2 * math.pi))


# Refusals


def test_what_has_no_answer_is_refused() -> None:
    with pytest.raises(OutsideModel, match="taper of the cone is 0; allowed is above 0"):
        sleeve_push(1e3, 0.0, 0.1, 0.0)
    with pytest.raises(OutsideModel, match="jams"):
        sleeve_push(1e3, 0.0, 1.0, 2.5)
    with pytest.raises(OutsideModel, match="above half its taper"):
        cone_torque(1e3, 0.03, 0.02, 1 / 16)
    with pytest.raises(OutsideModel, match="bore less the size of the sleeve"):
        travel_to_touch(0.019, 0.02, 1 / 16)
    with pytest.raises(OutsideModel, match=r"friction on the cone is -0\.1"):
        normal_on_bore(np.array([1e3, 2e3]), 0.0, np.array([0.1, -0.1]), 1 / 16)
    with pytest.raises(OutsideModel, match="round that bears"):
        bearing_round(40, 0.002, 0.02)
    with pytest.raises(OutsideModel, match="number of fingers is 2"):
        Fingers(0.02, 0.016, 2, 0.001, 0.03)
    with pytest.raises(OutsideModel, match="half angle"):
        Fingers(0.02, 0.016, 20, 0.004, 0.03)
    with pytest.raises(OutsideModel, match="opening on diameter is -1e-05"):
        opening_force(SLIT, -1e-5, STEEL)
    with pytest.raises(OutsideModel, match="push is nan"):
        share_to_open(math.nan, 0.0, 0.1, 1 / 16)
