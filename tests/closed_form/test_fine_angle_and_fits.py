"""Slight angles of the top slide, warm work, and the grip of an even fit."""

from __future__ import annotations

import math

import mpmath as mp
import numpy as np
import pytest

from borewright.errors import OutsideModel
from borewright.mechanics.fine_angle import (
    along_per_slide,
    angle_for_feed,
    angle_of_taper,
    diameter_per_slide,
    indicator_over,
    step_table,
    taper_of_angle,
)
from borewright.mechanics.grip_of_fit import fit_axial, fit_torque, least_interference
from borewright.mechanics.rings import Elastic, lame_pressure, ring_compliance
from borewright.mechanics.warm_fit import change_to_come_off, change_to_slide_on

SAME = 1e-12

# The top slide


def test_half_a_degree_turns_a_tenth_of_slide_into_less_than_two_micrometres_of_diameter() -> None:
    """Geometry: 2 × 0.1 mm × sin 0.5° = 0.00174531 mm, the sine in 50 digits."""
    exact = 2 * mp.mpf("0.1") * mp.sin(mp.pi / 360)
    assert float(diameter_per_slide(math.radians(0.5))) * 0.1 == pytest.approx(float(exact))
    assert float(exact) == pytest.approx(0.00174531, abs=5e-9)


def test_for_small_angles_the_sine_is_the_angle_less_a_sixth_of_its_cube() -> None:
    angle = np.array([1e-4, 1e-3, 1e-2])
    series = 2 * (angle - angle**3 / 6)
    assert np.asarray(diameter_per_slide(angle)) == pytest.approx(series, rel=1e-9)


def test_the_tool_goes_as_far_as_the_slide() -> None:
    angle = np.linspace(0, math.pi / 2, 11)
    across, along = np.asarray(diameter_per_slide(angle)) / 2, np.asarray(along_per_slide(angle))
    assert np.hypot(across, along) == pytest.approx(np.ones(11))


def test_feed_and_taper_give_their_angle_back() -> None:
    angle = math.radians(2.5)
    assert float(angle_for_feed(0.1 * diameter_per_slide(angle), 0.1)) == pytest.approx(angle)
    assert float(angle_of_taper(taper_of_angle(angle))) == pytest.approx(angle)


def test_the_taper_is_the_change_of_diameter_over_the_movement_along() -> None:
    angle = math.radians(3.0)
    per_length = diameter_per_slide(angle) / along_per_slide(angle)
    assert float(taper_of_angle(angle)) == pytest.approx(float(per_length), rel=SAME)


def test_an_indicator_reads_half_the_change_of_diameter() -> None:
    read = float(indicator_over(0.05, 0.04))
    assert read == pytest.approx(0.04 * float(diameter_per_slide(angle_of_taper(0.05))) / 2)


@pytest.mark.parametrize("step", [0.01e-3, 0.003e-3, 0.0049e-3])
@pytest.mark.parametrize("taper", [0.0005, 0.001])
def test_a_staircase_stands_on_the_taper_and_no_ridge_is_over_one_step(
    taper: float, step: float
) -> None:
    """What is left after all cuts, looked at all along: 0 to one step above the cone."""
    length = 0.05
    stops, depths = step_table(length, taper, step)
    x = np.linspace(0, length, 2001)[:-1]
    cut = np.where(x[:, None] >= stops, depths, 0.0).max(axis=1)
    above = taper * x - cut
    hair = 1e-12  # m; rounding where a stop falls on a place looked at
    assert above.min() > -hair
    assert above.max() < step + hair
    assert np.diff(depths) == pytest.approx(step)
    assert stops[-1] < length


def test_a_step_that_falls_on_the_free_end_is_not_a_cut() -> None:
    """0.05 × 0.0005 is five steps of 5 µm: four cuts, for the fifth would cut no length."""
    assert len(step_table(0.05, 0.0005, 0.005e-3)[0]) == 4
    assert len(step_table(0.0501, 0.0005, 0.005e-3)[0]) == 5


def test_slides_that_cannot_be_set_so_are_refused() -> None:
    with pytest.raises(OutsideModel, match="change of radius per travel is 2"):
        angle_for_feed(0.4, 0.1)
    with pytest.raises(OutsideModel, match="below a right angle"):
        taper_of_angle(math.pi / 2)
    with pytest.raises(OutsideModel, match="angle of the slide"):
        diameter_per_slide(np.array([0.1, -0.1]))
    with pytest.raises(OutsideModel, match=r"step of the dial is 0\.001 m"):
        step_table(0.05, 0.0005, 1e-3)
    with pytest.raises(OutsideModel, match="number of steps"):
        step_table(0.5, 0.5, 1e-5)


# Warm work


def test_warm_work_has_the_clearance_that_was_asked_for() -> None:
    """Sizes as they are then: the bore grown, the mandrel as it was; and the mandrel shrunk."""
    bore, over, room = 0.016, 12e-6, 8e-6
    rise = change_to_slide_on(over, room, bore, 23e-6)
    assert bore * (1 + 23e-6 * rise) - (bore + over) == pytest.approx(room, rel=1e-9)
    fall = change_to_slide_on(over, room, bore, 11.5e-6)
    assert bore - (bore + over - bore * 11.5e-6 * fall) == pytest.approx(room, rel=1e-9)


def test_at_the_temperature_of_coming_off_both_are_one_size() -> None:
    bore, over = 0.016, 12e-6
    rise = change_to_come_off(over, bore, 23e-6, 11.5e-6)
    work, mandrel = bore * (1 + 23e-6 * rise), bore + over + bore * 11.5e-6 * rise
    assert work == pytest.approx(mandrel, rel=1e-12)


def test_iron_that_grows_less_than_its_mandrel_never_comes_off_by_heat() -> None:
    with pytest.raises(OutsideModel, match="expansion of the work less the mandrel's"):
        change_to_come_off(12e-6, 0.016, 10.5e-6, 11.5e-6)
    with pytest.raises(OutsideModel, match="interference and clearance"):
        change_to_slide_on(1e-6, -2e-6, 0.016, 23e-6)


# An even fit


def test_the_least_interference_just_carries_its_load() -> None:
    """There and back through the rings: pressure of that interference, grip of that pressure."""
    iron, steel = Elastic(100e9, 0.26), Elastic(207e9, 0.29)
    d, length, f, torque, axial = 0.02, 0.03, 0.12, 25.0, 1500.0
    c = ring_compliance(d, 0.05, iron, steel)
    pressure = lame_pressure(least_interference(torque, axial, f, length, d, c), d, c)
    around = torque / (d / 2)
    assert float(fit_axial(f, pressure, length, d)) == pytest.approx(math.hypot(around, axial))


def test_torque_alone_needs_what_the_torque_formula_turned_round_says() -> None:
    d, length, f, c = 0.02, 0.03, 0.12, 2e-11
    torque = float(fit_torque(f, lame_pressure(15e-6, d, c), length, d))
    assert float(least_interference(torque, 0.0, f, length, d, c)) == pytest.approx(15e-6)


def test_a_fit_without_friction_or_length_is_refused() -> None:
    with pytest.raises(OutsideModel, match="friction is 0"):
        least_interference(1.0, 0.0, 0.0, 0.03, 0.02, 2e-11)
    with pytest.raises(OutsideModel, match="length of the fit"):
        fit_torque(0.1, 1e6, 0.0, 0.02)
