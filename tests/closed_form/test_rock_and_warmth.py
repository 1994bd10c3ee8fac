"""Tilting grips and warm parts against integrals done another way, and their limits."""

import math

import mpmath
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.mechanics.rock import lift_moment, rocking_moment
from borewright.mechanics.warmth import (
    cooling_time,
    cutting_time,
    squeeze_lost,
    temperature_rise,
)


def test_the_lift_moment_is_the_integral_of_the_spring_forces_at_lift() -> None:
    """Pressure p (1 + 2 z cos φ / L) over the bore: its moment about the middle, in mpmath."""
    p, d, length = 8e6, 0.016, 0.025
    half = mpmath.mpf(length) / 2

    def moment(z: mpmath.mpf, phi: mpmath.mpf) -> mpmath.mpf:
        return p * (z / half) * mpmath.cos(phi) * z * mpmath.cos(phi) * d / 2

    exact = mpmath.quad(moment, [-half, half], [0, 2 * mpmath.pi])
    normal = p * math.pi * d * length
    assert lift_moment(normal, length) == pytest.approx(float(exact), rel=1e-10)


def test_a_disc_is_tilted_by_the_thrust_at_its_rim() -> None:
    """The order given for a 280 mm disc: 12.5 N·m from the thrust, 0.75 from the radial force."""
    thrust = float(rocking_moment(0.0, 12.5 / 0.14, 0.0, 0.003, 0.14))
    radial = float(rocking_moment(250.0, 0.0, 0.0, 0.003, 0.14))
    assert (thrust, radial) == pytest.approx((12.5, 0.75))


@given(st.floats(0, 500), st.floats(-500, 500), st.floats(0, 500))
def test_either_sense_of_thrust_tilts_alike_and_more_force_never_tilts_less(
    passive: float, axial: float, cutting: float
) -> None:
    moment = float(rocking_moment(passive, axial, cutting, 0.01, 0.05))
    assert moment == float(rocking_moment(passive, -axial, cutting, 0.01, 0.05))
    assert float(rocking_moment(passive + 1, axial, cutting, 0.01, 0.05)) >= moment


def test_a_lump_warms_as_its_differential_equation_says() -> None:
    """m c T' = q - h A T, integrated by mpmath's own solver."""
    q, mc, h, area, seconds = 6.0, 180.0, 35.0, 0.012, 240.0
    solve = mpmath.odefun(lambda _, y: [(q - h * area * y[0]) / mc], 0, [0])
    assert float(temperature_rise(q, seconds, mc, h, area)) == pytest.approx(
        float(solve(seconds)[0]), rel=1e-8
    )


def test_no_heat_is_no_warmth_and_for_ever_is_what_the_air_carries_off() -> None:
    assert float(temperature_rise(0.0, 100.0, 100.0, 20.0, 0.01)) == 0.0
    assert float(temperature_rise(5.0, 1e9, 100.0, 20.0, 0.01)) == pytest.approx(5.0 / 0.2)


def test_cooling_undoes_itself() -> None:
    seconds = float(cooling_time(0.1, 180.0, 35.0, 0.012))
    assert math.exp(-35.0 * 0.012 * seconds / 180.0) == pytest.approx(0.1)


def test_time_of_a_pass() -> None:
    """P. C. Sharma, Production Engineering, Ex. 4.12 (companion): 0.170 min."""
    seconds = cutting_time(0.032, 0.375e-3, 60 / 60, 0.038)
    assert seconds / 60 == pytest.approx(0.170, abs=0.0005)


def test_thirty_kelvin_on_an_aluminium_wheel_takes_eleven_micrometres() -> None:
    """α 23.1 ppm/K: Swyt, J. Res. NIST 99 (1994) 31; 16 mm bore, mandrel still cool."""
    assert squeeze_lost(0.016, 23.1e-6, 30.0) == pytest.approx(11e-6, rel=0.01)
    both_warm = squeeze_lost(0.016, 23.1e-6 - 11.5e-6, 30.0)
    assert both_warm == pytest.approx(5.6e-6, rel=0.01)
