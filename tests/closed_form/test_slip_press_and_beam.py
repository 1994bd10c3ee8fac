"""Friction shared between torque and thrust, the wedge, the stepped bar, and draws."""

import math

import mpmath
import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.beam import Bar, deflection, round_step
from borewright.mechanics.inverse import where_it_reaches
from borewright.mechanics.press import (
    blow_travel,
    normal_from_push,
    pressing_work,
    push_off_force,
    push_on_force,
    torque_from_push,
)
from borewright.mechanics.slip import (
    axial_on_friction,
    friction_demand,
    proof_torque,
    slip_radius,
    slip_torque,
)
from borewright.mechanics.spread import (
    high_end,
    likely,
    lognormal_draws,
    low_end,
    normal_draws,
    standard_normals,
)
from borewright.mechanics.strength import crack_margin, von_mises_plane, yield_margin

LBF, INCH = 4.4482216152605, 0.0254


def test_a_wedge_in_exact_arithmetic() -> None:
    """Half angle with tan = T/2: forces from tan(φ ± α), worked in mpmath."""
    n, mu, t = 20e3, 0.13, 0.0005
    phi, alpha = mpmath.atan(mu), mpmath.atan(mpmath.mpf(t) / 2)
    assert push_on_force(n, mu, t) == pytest.approx(float(n * mpmath.tan(phi + alpha)), rel=1e-12)
    assert push_off_force(n, mu, t) == pytest.approx(float(n * mpmath.tan(phi - alpha)), rel=1e-12)


def test_push_on_exceeds_push_off_and_both_vanish_without_grip() -> None:
    assert push_on_force(1e4, 0.1, 0.0005) > push_off_force(1e4, 0.1, 0.0005)
    assert push_on_force(0.0, 0.1, 0.0005) == 0.0


def test_the_push_gives_the_normal_force_back() -> None:
    assert normal_from_push(push_on_force(9e3, 0.2, 0.0006), 0.2, 0.0006) == pytest.approx(9e3)


def test_four_hundred_pounds_on_a_five_eighths_bore_proves_about_125_pound_inches() -> None:
    """Pencil and paper: 400 × 0.3125."""
    torque = torque_from_push(400 * LBF, 0.625 * INCH, 1.0)
    assert torque / (LBF * INCH) == pytest.approx(125)


def test_without_torque_the_axial_force_alone_must_be_carried() -> None:
    assert friction_demand(0.0, 0.02, 50.0) == pytest.approx(50)
    assert friction_demand(5.0, 0.02, 0.0) == pytest.approx(500)


def test_cutting_towards_the_large_end_asks_less_than_cutting_away_from_it() -> None:
    towards, away = (axial_on_friction(f, 20e3, 0.0005) for f in (40.0, -40.0))
    assert float(away) - float(towards) == pytest.approx(2 * 20e3 * 0.00025)


def test_at_the_slip_radius_the_joint_just_slips() -> None:
    mu_n, d, cut, axial = 4e3, 0.016, 150.0, 80.0
    r = float(slip_radius(mu_n, d, cut, axial))
    assert float(friction_demand(cut * r, d, axial)) == pytest.approx(mu_n)


def test_a_big_thrust_leaves_no_radius() -> None:
    assert float(slip_radius(100.0, 0.016, 50.0, 101.0)) == 0.0


def test_the_depth_a_grip_can_drive_falls_as_one_over_the_radius() -> None:
    """Torque M = F r, so at equal grip F halves when r doubles."""
    d, limit = 0.016, slip_torque(2e4, 0.1, 0.016)
    assert float(friction_demand(limit, d, 0.0)) == pytest.approx(0.1 * 2e4)


def test_proof_torque_loads_the_joint_by_its_factor() -> None:
    assert proof_torque(400.0, 0.02, 1.5) == pytest.approx(6.0)


def test_brittle_and_ductile_margins() -> None:
    assert float(crack_margin(200e6, 50e6, 2.0)) == pytest.approx(2.0)
    assert float(yield_margin(200e6, 50e6)) == pytest.approx(4.0)
    assert math.isinf(float(crack_margin(200e6, 0.0)))
    assert float(von_mises_plane(1.0, -1.0)) == pytest.approx(math.sqrt(3))


def test_a_stepped_bar_against_integration_in_mpmath() -> None:
    """Two diameters, load off centre: y = ∫ M m / EI dx, shear left out."""
    span, cut, at, e = 0.2, 0.08, 0.13, 207e9
    ei = [e * math.pi * d**4 / 64 for d in (0.012, 0.016)]
    bar = Bar(np.array([0.0, cut, span]), np.array(ei), np.array([np.inf, np.inf]))

    def unit(x: mpmath.mpf) -> mpmath.mpf:
        return (span - at) / span * x if x <= at else at / span * (span - x)

    exact = mpmath.quad(lambda x: unit(x) ** 2 / ei[0], [0, cut]) + mpmath.quad(
        lambda x: unit(x) ** 2 / ei[1], [cut, at, span]
    )
    assert deflection(bar, at, 100.0) == pytest.approx(float(100 * exact), rel=1e-10)


def test_a_bar_bends_as_much_at_b_for_a_load_at_a_as_the_other_way_round() -> None:
    """Maxwell's reciprocity."""
    step = round_step(0.016, 207e9, 0.29)
    bar = Bar(np.array([0.0, 0.15]), np.array([step[0]]), np.array([step[1]]), (2e7, 1e7))
    assert deflection(bar, 0.04, 1.0, at=0.11) == pytest.approx(deflection(bar, 0.11, 1.0, at=0.04))


def test_soft_centres_alone_let_a_rigid_bar_down_by_half_the_load_each() -> None:
    bar = Bar(np.array([0.0, 1.0]), np.array([np.inf]), np.array([np.inf]), (100.0, 100.0))
    assert deflection(bar, 0.5, 10.0) == pytest.approx(10.0 / 200.0)


def test_a_place_off_the_bar_is_refused() -> None:
    bar = Bar(np.array([0.0, 1.0]), np.array([1.0]), np.array([np.inf]))
    with pytest.raises(OutsideModel, match="place along the bar"):
        deflection(bar, 1.2, 1.0)


def test_bisection_says_none_when_the_curve_never_gets_there() -> None:
    assert where_it_reaches(lambda s: s, 5.0, 0.0, 4.0) is None
    assert where_it_reaches(lambda s: s, -1.0, 0.0, 4.0) == 0.0


@pytest.mark.parametrize("stream", range(11))
def test_draws_have_the_ends_they_were_asked_for(stream: int) -> None:
    z = standard_normals(stream)
    drawn = lognormal_draws(0.06, 0.12, 0.2, z)
    assert likely(drawn) == pytest.approx(0.12)
    assert low_end(drawn) == pytest.approx(0.06, rel=0.02)
    assert high_end(drawn) == pytest.approx(0.2, rel=0.02)


@pytest.mark.parametrize(("a", "b"), [(a, b) for a in range(11) for b in range(a)])
def test_streams_are_nearly_uncorrelated(a: int, b: int) -> None:
    r = np.corrcoef(standard_normals(a)[1:], standard_normals(b)[1:])[0, 1]
    assert abs(float(r)) < 0.05


def test_a_range_out_of_order_is_refused() -> None:
    with pytest.raises(OutsideModel):
        lognormal_draws(0.2, 0.1, 0.3, standard_normals(0))
    with pytest.raises(OutsideModel):
        normal_draws(0.2, 0.1, 0.3, standard_normals(0))


@pytest.mark.parametrize("power", [1, 2])
def test_the_work_of_pressing_is_the_area_under_the_push(power: int) -> None:
    """F = F_end (s / S)^power: work F_end S / (power + 1), and blows share it out."""
    travel, end = 0.03, 4e3
    work = pressing_work(end * 0.5**power, end, travel)
    assert work == pytest.approx(end * travel / (power + 1))
    assert blow_travel(5.0, end) * end == pytest.approx(5.0)
