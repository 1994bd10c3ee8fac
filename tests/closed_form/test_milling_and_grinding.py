"""Form milling and traverse grinding against closed forms, limits and balances of energy."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.errors import OutsideModel
from borewright.mechanics.gear_teeth import (
    blank_outside,
    developed_edge,
    module_of_pitch,
    pass_width,
    root_width,
)
from borewright.mechanics.grinding import (
    grinding_power,
    grinding_removal_rate,
    heat_in_work,
    normal_force,
    tangential_force,
)
from borewright.mechanics.milling import (
    along_and_across,
    chip_thickness,
    engagement_angle,
    mean_force,
    peak_force,
    space_removal_rate,
    table_feed,
    teeth_in_cut,
    tooth_force,
)
from borewright.mechanics.turned_down import turned_down

MM = 1e-3
EXACT = 1e-9
"""Both sides are closed forms, or a quadrature of a smooth function."""


def test_a_cut_to_the_middle_of_the_cutter_is_a_quarter_turn() -> None:
    assert engagement_angle(30 * MM, 60 * MM) == pytest.approx(math.pi / 2)


def test_a_vanishing_cut_has_a_vanishing_arc() -> None:
    """acos(1 - e) goes as the square root of 2 e."""
    assert engagement_angle(1e-9, 0.06) == pytest.approx(2 * math.sqrt(1e-9 / 0.06), rel=1e-6)


@pytest.mark.parametrize("depth", [0.0, -1 * MM, 31 * MM])
def test_a_depth_outside_the_model_is_refused(depth: float) -> None:
    with pytest.raises(OutsideModel, match="half the cutter"):
        engagement_angle(depth, 60 * MM)


def test_a_sixth_of_a_turn_is_a_quarter_of_the_cutter_deep() -> None:
    """cos 60° = 1/2."""
    assert engagement_angle(15 * MM, 60 * MM) == pytest.approx(math.pi / 3)


def test_the_chip_is_nothing_at_the_root_and_the_feed_at_a_quarter_turn() -> None:
    assert chip_thickness(0.1 * MM, 0.0) == 0.0
    assert chip_thickness(0.1 * MM, math.pi / 2) == pytest.approx(0.1 * MM)


def test_twelve_teeth_over_a_twelfth_of_a_turn_are_one_at_a_time() -> None:
    assert teeth_in_cut(12, math.pi / 6) == pytest.approx(1.0)


@given(
    st.floats(0.5, 12.0),
    st.floats(40.0, 120.0),
    st.integers(6, 20),
    st.floats(0.01, 0.2),
    st.floats(1.0, 12.0),
    st.floats(0.5, 3.0),
)
def test_mean_power_is_specific_energy_times_the_metal_removed(
    depth: float, cutter: float, teeth: int, feed: float, width: float, turns: float
) -> None:
    """With a specific energy that does not depend on the chip (exponent 0) the two must agree."""
    arc = engagement_angle(depth * MM, cutter * MM)
    mean = mean_force(feed * MM, arc, teeth, width * MM, 2 * width * MM, 2e9, 0.0)
    power = float(mean) * math.pi * cutter * MM * turns
    removed = space_removal_rate(width * MM, depth * MM, table_feed(feed * MM, teeth, turns))
    assert power == pytest.approx(2e9 * removed, rel=EXACT)


def test_the_mean_over_a_half_arc_of_a_square_root_law_is_a_beta_function() -> None:
    """Integral of sin^p from 0 to π/2 is √π Γ((p+1)/2) / (2 Γ(p/2+1))."""
    p = 0.75
    whole = math.sqrt(math.pi) * math.gamma((p + 1) / 2) / (2 * math.gamma(p / 2 + 1))
    mean = float(mean_force(MM, math.pi / 2, 8, MM, MM, 1000e6, 1 - p))
    assert mean == pytest.approx(8 / (2 * math.pi) * 1000 * whole, rel=EXACT)


def test_one_tooth_at_a_time_peaks_at_its_own_force_and_never_below_the_mean() -> None:
    arc = engagement_angle(4.5 * MM, 63 * MM)
    how = (0.05 * MM, arc, 10, 3 * MM, 10 * MM, 1600e6, 0.2)
    one = float(tooth_force(0.05 * MM, arc, 3 * MM, 10 * MM, 1600e6, 0.2))
    assert float(peak_force(*how)) == pytest.approx(one)
    assert float(mean_force(*how)) < one


def test_many_teeth_make_the_peak_the_mean() -> None:
    """The sum over the teeth is a step sum of the integral: its error halves when they double."""
    ends = []
    for teeth in (1000, 2000):
        how = (0.05 * MM, 1.2, teeth, 3 * MM, 10 * MM, 1600e6, 0.2)
        ends.append(float(peak_force(*how)) / float(mean_force(*how)) - 1)
    assert 0 < ends[1] < 3e-3
    assert ends[0] / ends[1] == pytest.approx(2, rel=0.02)


def test_an_edge_twice_as_long_asks_more_by_two_to_the_exponent() -> None:
    short, long = (
        float(tooth_force(0.05 * MM, 0.5, 3 * MM, edge * MM, 1600e6, 0.25)) for edge in (6, 12)
    )
    assert long / short == pytest.approx(2**0.25)


@given(st.floats(0.05, 1.5), st.floats(0.0, 0.9))
def test_the_two_ways_of_feeding_share_one_resultant(angle: float, share: float) -> None:
    """Turning a vector does not change its length: F √(1 + r²) either way."""
    for climb in (False, True):
        along, across = along_and_across(100.0, share, angle, climb=climb)
        assert math.hypot(along, across) == pytest.approx(100 * math.hypot(1, share))


def test_milling_up_pushes_the_work_ahead_and_climbing_presses_it_down() -> None:
    along, _ = along_and_across(100.0, 0.3, 0.5)
    _, across = along_and_across(100.0, 0.3, 0.5, climb=True)
    assert along > 0 > across


def test_ten_pitch_is_two_point_five_four_module_and_a_36_tooth_blank_is_3_8_in() -> None:
    """(N + 2) / P, the shop's rule for the outside of a blank."""
    assert module_of_pitch(10) == pytest.approx(2.54 * MM)
    assert blank_outside(module_of_pitch(10), 36) == pytest.approx(3.8 * 0.0254)


def test_the_space_of_a_rack_by_its_corners() -> None:
    """Module 1, 45°, whole depth 2.25, addendum 1: π/2 wide on the pitch line, 2.5 less at the root.

    With so blunt an angle the flanks cross above the root, and that is refused; at 20° they do not.
    """
    with pytest.raises(OutsideModel, match="wide"):
        root_width(MM, 2.25 * MM, MM, math.radians(45))
    root = root_width(MM, 2.25 * MM, MM, math.radians(20))
    assert root == pytest.approx((math.pi / 2 - 2.5 * math.tan(math.radians(20))) * MM)


@given(st.integers(1, 6))
def test_passes_take_out_the_whole_space_between_them(passes: int) -> None:
    """Area of the last pass at each depth, added up, is the area of the space."""
    root, angle, whole = 1.3 * MM, math.radians(20), 4.5 * MM
    step = whole / passes
    areas = [step * pass_width(root, angle, k * step, step) for k in range(1, passes + 1)]
    mouth = root + 2 * whole * math.tan(angle)
    assert sum(areas) == pytest.approx(whole * (root + mouth) / 2)


def test_an_edge_laid_flat_with_upright_flanks_is_root_and_twice_the_depth() -> None:
    assert developed_edge(2 * MM, 0.0, 5 * MM) == pytest.approx(12 * MM)


@given(st.floats(5.0, 80.0), st.floats(10.0, 45.0), st.floats(0.2, 0.6), st.floats(0.4, 0.9))
def test_the_wheel_s_energy_is_all_accounted_for(
    energy: float, wheel: float, ratio: float, share: float
) -> None:
    """Force × wheel speed is specific energy × volume of the sleeve that one minute grinds away."""
    removal = grinding_removal_rate(40 * MM, 5e-6, 3 * MM, 2.0)
    sleeve = math.pi * 40 * MM * 5e-6 * (3 * MM * 2.0 * 60) / 60
    power = grinding_power(energy * 1e9, removal)
    force = tangential_force(power, wheel)
    assert force * wheel == pytest.approx(energy * 1e9 * sleeve)
    assert normal_force(force, ratio) * ratio == pytest.approx(force)
    assert heat_in_work(power, share) + heat_in_work(power, 1 - share) == pytest.approx(power)


def test_draws_go_through_as_arrays() -> None:
    kc = np.array([1600e6, 2000e6])
    peak = peak_force(0.05 * MM, 0.5, 12, 3 * MM, 10 * MM, kc, 0.2)
    assert np.shape(peak) == (2,)
    assert peak[1] / peak[0] == pytest.approx(1.25)


ALIKE = (207e9, 0.29)


def lame_pressure(bore: float, outside: float) -> float:
    """Pressure for an interference of 1 with ring and solid shaft of one metal: E (1 - k²) / (2 d)."""
    return 207e9 * (1 - (bore / outside) ** 2) / (2 * bore)


def test_a_ring_turned_down_keeps_the_grip_of_the_ring_it_becomes() -> None:
    """Against Lamé for like metals, where the compliance is 2 / (E (1 - k²))."""
    after = turned_down(16 * MM, 52 * MM, 24 * MM, ALIKE, ALIKE)
    before, left = (lame_pressure(16 * MM, d * MM) for d in (52, 24))
    assert after.grip == pytest.approx(left / before)
    hoop = {d: (1 + (16 / d) ** 2) / (1 - (16 / d) ** 2) for d in (52, 24)}
    assert after.tension == pytest.approx(left * hoop[24] / (before * hoop[52]))


def test_a_ring_that_becomes_a_skin_grips_nothing_and_carries_the_whole_stretch() -> None:
    """A thin ring's hoop tension is E × interference / bore, whatever its wall: before, it was
    E (1 + k²) / 2 of that."""
    after = turned_down(16 * MM, 32 * MM, 16.0001 * MM, ALIKE, ALIKE)
    assert after.grip < 1e-4
    assert after.tension == pytest.approx(2 / (1 + 0.5**2), rel=1e-4)


@given(st.floats(17.0, 59.0), st.floats(1.0, 40.0))
def test_less_ring_never_grips_more_nor_stretches_less(after: float, more: float) -> None:
    softer = turned_down(16 * MM, (after + more) * MM, after * MM, (100e9, 0.26), ALIKE)
    assert softer.grip <= 1 <= softer.tension


def test_a_ring_cut_down_to_the_bore_is_outside_the_model() -> None:
    with pytest.raises(OutsideModel, match="more than the bore"):
        turned_down(16 * MM, 52 * MM, 16 * MM, ALIKE, ALIKE)
