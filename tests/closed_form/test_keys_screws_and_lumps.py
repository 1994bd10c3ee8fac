"""Keys and pins, set screws, and heavy sides: statics and geometry worked another way."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.key_shear import (
    key_bearing_force,
    key_shear_force,
    key_torque,
    pin_bearing_force,
    pin_shear_force,
    torque_on_circle,
)
from borewright.mechanics.set_screw import (
    flat_width,
    screw_torque,
    thrown_over,
    thrown_runout,
    torque_on_flat,
    two_screws,
)
from borewright.mechanics.unbalance import (
    counterweight,
    out_of_balance,
    speed_for_share,
    sum_of_lumps,
    turning_force,
)

INCH, LBF, PSI = 0.0254, 4.4482216152605, 6894.757293168

# Keys and pins


def test_a_square_key_as_shigley_sizes_it() -> None:
    """Shigley, Mechanical Engineering Design, Ex. 7-6, from memory, so no published check:
    3/8 in key on 1 7/16 in, 5850 lbf, 37.5 / 65 ksi, factor 2.80: 1.16 in by shear, 1.34 by bearing.
    """
    asked, side = 2.80 * 5850 * LBF, 0.375 * INCH
    shear = asked / key_shear_force(side, 1.0, 37.5e3 * PSI) / INCH
    bearing = asked / key_bearing_force(side / 2, 1.0, 65e3 * PSI) / INCH
    assert shear == pytest.approx(1.16, abs=0.005)
    assert bearing == pytest.approx(1.34, abs=0.005)
    torque = torque_on_circle(5850 * LBF, 1.4375 * INCH) / (LBF * INCH)
    assert torque == pytest.approx(4200, rel=2e-3)


def test_the_weaker_of_shear_and_bearing_sets_the_torque_of_a_key() -> None:
    """At depth h = w τ / σ both give way together; deeper the shear decides, shallower the side."""
    even = 0.005 * 120e6 / 200e6
    sheared = torque_on_circle(key_shear_force(0.005, 0.025, 120e6), 0.018)
    for part in (0.5, 1.0, 2.0):
        torque = float(key_torque(0.005, even * part, 0.025, 120e6, 200e6, 0.018))
        assert torque == pytest.approx(sheared * min(1.0, part))


def test_a_pin_across_holds_on_two_planes_as_counting_its_area_says() -> None:
    """Points of a fine grid inside the round, each plane the same; 1 part in 1000."""
    y = (np.arange(2000) + 0.5) / 2000 - 0.5
    area = 0.006**2 * np.mean(y[:, None] ** 2 + y**2 <= 0.25)
    assert pin_shear_force(0.006, 90e6) == pytest.approx(90e6 * area, rel=1e-3)
    assert pin_shear_force(0.006, 90e6, planes=2) == pytest.approx(2 * 90e6 * area, rel=1e-3)


def test_a_pin_bears_on_what_it_throws_as_a_shadow() -> None:
    """Pressure p all over half of the round pushes with p times the width: ∫ p cos φ r dφ."""
    angle = np.linspace(-math.pi / 2, math.pi / 2, 20001)
    push = np.trapezoid(150e6 * np.cos(angle) * 0.003, angle) * 0.010
    assert pin_bearing_force(0.006, 0.010, 150e6) == pytest.approx(push, rel=1e-8)


# Set screws


def test_one_screw_holds_its_force_on_the_radius_of_the_shaft() -> None:
    """Pencil: 1000 lbf on 5/8 in is 312.5 lbf·in."""
    assert screw_torque(1000 * LBF, 0.625 * INCH) / (LBF * INCH) == pytest.approx(312.5)


@pytest.mark.parametrize("degrees", [0, 60, 90, 120, 180])
@pytest.mark.parametrize("point_share", [0.5, 0.7, 1.0])
def test_two_screws_by_adding_their_pushes_as_arrows(degrees: int, point_share: float) -> None:
    """Friction of each point, and of the wall under the resultant, over those of one screw."""
    first = np.array([1.0, 0.0])
    second = np.array([math.cos(math.radians(degrees)), math.sin(math.radians(degrees))])
    on_wall = np.linalg.norm(first + second)
    truth = point_share * 2 + (1 - point_share) * on_wall
    assert float(two_screws(math.radians(degrees), point_share)) == pytest.approx(truth)


def test_a_flat_holds_as_its_forces_in_balance_say() -> None:
    """Point friction along the flat, the push at the edge of the tip, and the wall: about the axis.

    Moments of forces as arrows at their places; friction μ at both, so H = 2 μ N.
    """
    d, depth, tip, push, mu = 0.016, 0.0015, 0.005, 5e3, 0.15
    forces = [
        ((tip / 2, d / 2 - depth), (-mu * push, 0.0)),
        ((tip / 2, d / 2 - depth), (0.0, -push)),
        ((0.0, -d / 2), (mu * push, 0.0)),
        ((0.0, -d / 2), (0.0, push)),
    ]
    assert np.allclose(np.sum([f for _, f in forces], axis=0), 0)
    turn = [x * fy - y * fx for (x, y), (fx, fy) in forces]
    truth = abs(turn[0] + turn[2]) + abs(turn[1] + turn[3])
    assert float(torque_on_flat(2 * mu * push, push, d, depth, tip)) == pytest.approx(truth)


def test_a_flat_is_as_wide_as_the_chord_is() -> None:
    d, depth = 0.016, 0.0015
    half = float(flat_width(d, depth)) / 2
    assert math.hypot(half, d / 2 - depth) == pytest.approx(d / 2)


def test_a_flat_holds_more_than_a_round_unless_it_is_deep_and_the_screw_thin() -> None:
    flat = float(torque_on_flat(1500.0, 5e3, 0.016, 0.001, 0.005))
    assert flat > float(screw_torque(1500.0, 0.016))


def test_the_throw_is_what_an_indicator_reads_round_a_bore_pushed_over() -> None:
    """Work true to its bore, pushed until bore and shaft touch; the shaft turns, the needle reads."""
    bore, shaft, rim = 0.0161, 0.0160, 0.040
    off = bore / 2 - shaft / 2
    phi = np.linspace(0, 2 * math.pi, 3601)
    reach = off * np.cos(phi) + np.sqrt(rim**2 - (off * np.sin(phi)) ** 2)
    assert thrown_runout(bore, shaft) == pytest.approx(np.ptp(reach), rel=1e-9)
    assert thrown_over(bore, shaft) == pytest.approx(np.ptp(reach) / 2, rel=1e-9)


def test_work_without_clearance_is_not_thrown() -> None:
    assert thrown_runout(0.016, 0.016) == 0.0


# Heavy sides


def test_a_counterweight_brings_the_middle_of_all_metal_to_the_axis() -> None:
    lump, r, r2 = 0.35, 0.07, 0.11
    weight = counterweight(out_of_balance(lump, r), r2)
    assert lump * r - weight * r2 == pytest.approx(0, abs=1e-15)
    assert (
        sum_of_lumps(np.array([lump * r, weight * r2]), np.array([0.4, 0.4 + math.pi]))[0] < 1e-15
    )


def test_three_equal_lumps_evenly_round_are_in_balance() -> None:
    size, _ = sum_of_lumps(np.full(3, 0.02), np.array([0.0, 2.0, 4.0]) * math.pi / 3)
    assert size < 1e-15


def test_the_turning_force_is_the_mass_times_the_acceleration_of_its_path() -> None:
    """Second difference of a point going round; 300 rpm."""
    mass, r, n, dt = 0.4, 0.09, 5.0, 1e-4
    x = [r * math.cos(2 * math.pi * n * t) for t in (-dt, 0.0, dt)]
    pull = -mass * (x[0] - 2 * x[1] + x[2]) / dt**2
    assert turning_force(out_of_balance(mass, r), n) == pytest.approx(pull, rel=1e-5)


def test_one_kilogram_at_the_radius_of_a_seconds_turn_pulls_its_own_weight_at_a_known_speed() -> (
    None
):
    """Pencil: m r ω² = m g where ω = sqrt(g / r); r 0.1 m: 1.576 rev/s, 94.6 rpm."""
    n = speed_for_share(out_of_balance(1.0, 0.1), 9.80665, 1.0)
    assert n * 60 == pytest.approx(94.57, abs=0.01)


def test_twice_the_speed_is_four_times_the_force_and_a_quarter_share_is_half_the_speed() -> None:
    assert turning_force(0.03, 8.0) == pytest.approx(4 * turning_force(0.03, 4.0))
    assert speed_for_share(0.03, 500.0, 0.05) == pytest.approx(
        speed_for_share(0.03, 500.0, 0.2) / 2
    )


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        (lambda: key_shear_force(0.0, 0.02, 1e6), "width, depth or diameter is 0 m"),
        (lambda: key_bearing_force(0.002, 0.0, 1e6), "length is 0 m"),
        (lambda: pin_shear_force(0.004, -1.0), "strength is -1 Pa"),
        (lambda: pin_shear_force(0.004, 1e6, planes=3), "planes cut is 3"),
        (lambda: torque_on_circle(1.0, 0.0), "diameter is 0 m"),
        (lambda: screw_torque(-5.0, 0.01), "holding force is -5 N"),
        (lambda: two_screws(4.0), "angle between screws is 4 rad"),
        (lambda: two_screws(1.0, 1.5), "share of the point is 1.5"),
        (lambda: flat_width(0.01, 0.006), "depth of the flat is 0.006 m"),
        (lambda: torque_on_flat(1.0, 1.0, 0.01, 0.0001, 0.005), "tip of the screw is 0.005 m"),
        (lambda: thrown_over(0.0159, 0.016), "bore is 0.0159 m"),
        (lambda: out_of_balance(-1.0, 0.1), "mass is -1 kg"),
        (lambda: counterweight(0.1, 0.0), "radius of the counterweight is 0 m"),
        (lambda: turning_force(0.1, -1.0), "spindle speed is -1 rev/s"),
        (lambda: speed_for_share(0.0, 1.0, 0.1), "out of balance is 0 kg·m"),
        (lambda: speed_for_share(0.1, 1.0, 0.0), "share of the weight is 0"),
    ],
)
def test_what_is_outside_the_model_is_refused(asked: Callable[[], object], said: str) -> None:
    with pytest.raises(OutsideModel) as refusal:
        asked()
    assert str(refusal.value).startswith(said)
