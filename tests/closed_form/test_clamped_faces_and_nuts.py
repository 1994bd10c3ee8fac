"""Clamped faces by integration and by their properties; the nut, there and back."""

from __future__ import annotations

from collections.abc import Callable

import mpmath as mp
import numpy as np
import pytest
from scipy.optimize import linprog

from borewright.errors import OutsideModel
from borewright.mechanics.face_friction import (
    floor_torque,
    gang_torque,
    in_parallel,
    in_series,
    pressure_torque,
    wear_torque,
)
from borewright.mechanics.nut_preload import (
    clamp_force,
    clamp_range,
    force_at_tension,
    thread_tension,
    tightening_torque,
    torque_that_clamps,
)

FORCE, FRICTION = 8e3, 0.12
SAME = 1e-12
RINGS = [(0.0, 0.030), (0.012, 0.018), (0.016, 0.040), (0.0399, 0.040)]


def by_integral(pressure: Callable[[mp.mpf], mp.mpf], inside: float, outside: float) -> float:
    """Torque of a pressure over a ring, scaled so that it adds up to the clamp force."""
    ends = [mp.mpf(inside) / 2, mp.mpf(outside) / 2]
    force = mp.quad(lambda r: pressure(r) * 2 * mp.pi * r, ends)
    turn = mp.quad(lambda r: FRICTION * pressure(r) * 2 * mp.pi * r**2, ends)
    return float(FORCE * turn / force)


@pytest.mark.parametrize(("inside", "outside"), RINGS)
def test_an_even_pressure_integrated_over_the_ring(inside: float, outside: float) -> None:
    exact = by_integral(lambda r: mp.mpf(1), inside, outside)
    assert pressure_torque(FORCE, FRICTION, inside, outside) == pytest.approx(exact, rel=SAME)


@pytest.mark.parametrize(("inside", "outside"), RINGS)
def test_a_pressure_as_one_over_the_radius_integrated_over_the_ring(
    inside: float, outside: float
) -> None:
    exact = by_integral(lambda r: 1 / r, inside, outside)
    assert wear_torque(FORCE, FRICTION, inside, outside) == pytest.approx(exact, rel=SAME)


@pytest.mark.parametrize("power", [-8, -3, -2, -1, 0])
def test_the_more_the_pressure_sits_inside_the_less_it_holds_but_never_under_the_floor(
    power: int,
) -> None:
    """Why wear is safe beside even pressure, and where even it is not: steeper than 1/r."""
    torque = by_integral(lambda r: r**power, 0.016, 0.040)
    wear = wear_torque(FORCE, FRICTION, 0.016, 0.040)
    assert floor_torque(FORCE, FRICTION, 0.016, 0.040) < torque
    assert torque <= pressure_torque(FORCE, FRICTION, 0.016, 0.040) * (1 + SAME)
    assert (torque < wear * (1 - SAME)) == (power < -1)


def test_wear_is_never_above_pressure_and_a_quarter_below_at_most() -> None:
    inside = np.linspace(0.0, 0.0399, 400)
    ratio = wear_torque(FORCE, FRICTION, inside, 0.040) / pressure_torque(
        FORCE, FRICTION, inside, 0.040
    )
    assert np.all(ratio <= 1)
    assert np.all(np.diff(ratio) > 0)
    assert ratio[0] == pytest.approx(0.75)


@pytest.mark.parametrize("torque", [pressure_torque, wear_torque, floor_torque])
def test_a_narrow_ring_holds_as_a_line_does(torque: Callable[..., float]) -> None:
    held = torque(FORCE, FRICTION, 0.040 * (1 - 1e-12), 0.040)
    assert held == pytest.approx(FRICTION * FORCE * 0.020, rel=1e-11)


@pytest.mark.parametrize("torque", [pressure_torque, wear_torque])
def test_a_face_holds_more_with_force_friction_and_either_diameter(
    torque: Callable[..., float],
) -> None:
    base = np.array([FORCE, FRICTION, 0.016, 0.040])
    for k in range(4):
        more = base.copy()
        more[k] *= 1.1
        assert torque(*more) > torque(*base)


def test_faces_side_by_side_add_and_faces_in_a_row_hold_as_the_weakest() -> None:
    torques = np.array([[9.0, 5.0], [12.0, 20.0], [10.0, 6.0]])
    assert np.array_equal(in_parallel(torques), [31.0, 31.0])
    assert np.array_equal(in_series(torques), [9.0, 5.0])


def test_a_work_in_a_gang_slips_only_when_both_ways_to_an_end_have_slipped() -> None:
    """The most torque that can be shared out so that no face carries more than it holds."""
    one_way, other_way = np.array([9.0, 12.0]), np.array([10.0, 7.0, 11.0])
    carries = np.array([[1, 0], [1, 0], [0, 1], [0, 1], [0, 1]])
    most = linprog([-1, -1], A_ub=carries, b_ub=np.concatenate([one_way, other_way]))
    assert float(gang_torque(one_way, other_way)) == pytest.approx(-most.fun)
    assert float(gang_torque(one_way)) == 9.0


def test_the_nut_gives_its_torque_back() -> None:
    k = np.array([0.12, 0.2, 0.3])
    torque = np.array([5.0, 20.0, 60.0])
    assert tightening_torque(clamp_force(torque, k, 0.010), k, 0.010) == pytest.approx(torque)
    assert force_at_tension(thread_tension(7e3, 58e-6), 58e-6) == pytest.approx(7e3)


def test_a_range_of_nut_factors_gives_a_range_of_force_as_wide() -> None:
    least, most = clamp_range(20.0, (0.12, 0.30), 0.010)
    assert most / least == pytest.approx(0.30 / 0.12)
    assert least == pytest.approx(20.0 / (0.30 * 0.010))


def test_the_torque_that_surely_clamps_reaches_its_force_at_the_poorest_factor() -> None:
    torque = torque_that_clamps(6e3, (0.12, 0.30), 0.010)
    assert clamp_range(torque, (0.12, 0.30), 0.010)[0] == pytest.approx(6e3)


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        (lambda: wear_torque(-1.0, 0.1, 0.01, 0.02), "clamp force is -1 N"),
        (lambda: wear_torque(1.0, -0.1, 0.01, 0.02), "friction is -0.1"),
        (lambda: wear_torque(1.0, 0.1, -0.01, 0.02), "inside of the face is -0.01 m"),
        (lambda: pressure_torque(1.0, 0.1, 0.02, 0.02), "outside of the face is 0.02 m"),
        (lambda: pressure_torque(np.nan, 0.1, 0.01, 0.02), "clamp force is nan N"),
        (lambda: pressure_torque(np.array([1.0, -2.0]), 0.1, 0.01, 0.02), "clamp force is -2 N"),
        (lambda: in_series(np.array([1.0, -2.0])), "torque of a face is -2 N·m"),
        (lambda: clamp_force(-1.0, 0.2, 0.01), "torque on the nut is -1 N·m"),
        (lambda: clamp_force(1.0, 0.0, 0.01), "nut factor is 0"),
        (lambda: clamp_force(1.0, 0.2, 0.0), "diameter of the thread is 0 m"),
        (lambda: clamp_range(1.0, (0.3, 0.2), 0.01), "low nut factor is 0.3"),
        (lambda: thread_tension(1.0, 0.0), "stress area is 0 m²"),
    ],
)
def test_what_is_outside_the_model_is_refused(asked: Callable[[], object], said: str) -> None:
    with pytest.raises(OutsideModel) as refusal:
        asked()
    assert str(refusal.value).startswith(said)
