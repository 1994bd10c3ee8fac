"""The lathe set parallel and wax turned into holes: by lines, by solids of revolution, by Jones."""

from __future__ import annotations

import math

import mpmath
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.errors import OutsideModel
from borewright.mechanics.drilled_balance import (
    POINT,
    hole_depth,
    hole_volume,
    least_shown,
    metal_for,
    point_height,
)
from borewright.mechanics.parallel import (
    bands_apart,
    error_over,
    set_over,
    set_over_error,
    taper_found,
    taper_of_set_over,
)

INCH = 0.0254
CLOSE = 1e-9
"""Relative: doubles through a few operations."""


@pytest.mark.parametrize(("in_per_foot", "long", "over"), [(1.0, 9.0, 3 / 8), (1.5, 8.0, 1 / 2)])
def test_the_set_over_of_jones(in_per_foot: float, long: float, over: float) -> None:
    """Jones, Turning and Boring: 1 in/ft over 9 in is 3/8 in; 1 1/2 in/ft over 8 in is 1/2 in."""
    assert set_over(in_per_foot / 12, long * INCH) == pytest.approx(over * INCH, rel=CLOSE)


def cut(tail_off: float, between: float, at: float, radius: float) -> float:
    """Diameter turned at a place, the tool running parallel to the bed at a radius from the line of
    the headstock, the tailstock center off it (+ towards the tool): the axis is a slanting line."""
    axis = tail_off * at / between
    return 2 * (radius - axis)


@given(st.floats(-2e-4, 2e-4), st.floats(0.1, 0.6), st.floats(0.01, 0.04))
def test_the_set_over_found_puts_the_center_back_on_the_line(
    off: float, between: float, radius: float
) -> None:
    head_at, tail_at = 0.1 * between, 0.8 * between
    head, tail = (cut(off, between, at, radius) for at in (head_at, tail_at))
    moved = set_over(taper_found(head, tail, tail_at - head_at), between)
    assert off + moved == pytest.approx(0.0, abs=1e-12)
    assert taper_found(head, tail, tail_at - head_at) == pytest.approx(
        -taper_of_set_over(off, between), abs=1e-12
    )


def test_larger_at_the_tailstock_goes_towards_the_tool_and_smaller_away() -> None:
    assert set_over(taper_found(0.025, 0.02501, 0.1), 0.2) > 0
    assert set_over(taper_found(0.02501, 0.025, 0.1), 0.2) < 0
    assert set_over(taper_found(0.025, 0.025, 0.1), 0.2) == 0


def test_two_thou_on_six_inches_by_hand() -> None:
    """0.002 in over bands 6 in apart, 12 in between centers: half of 0.002 times two."""
    taper = taper_found(INCH, 1.002 * INCH, 6 * INCH)
    assert set_over(taper, 12 * INCH) == pytest.approx(0.002 * INCH, rel=1e-9)
    assert error_over(taper, 1.5 * INCH) == pytest.approx(0.0005 * INCH, rel=1e-9)


def test_both_readings_wrong_the_worst_way_move_the_set_over_by_its_error() -> None:
    head, tail, apart, between, u = 0.02502, 0.025005, 0.15, 0.3, 2e-6
    asked = set_over(taper_found(head, tail, apart), between)
    wrong = set_over(taper_found(head + u, tail - u, apart), between)
    assert abs(wrong - asked) == pytest.approx(set_over_error(u, apart, between), rel=1e-6)


def test_bands_so_far_apart_just_show_the_error_allowed() -> None:
    u, length, allowed = 2e-6, 0.05, 1.25e-6
    apart = bands_apart(u, length, allowed)
    assert error_over(taper_found(0.025 + u, 0.025 - u, apart), length) == pytest.approx(
        allowed, rel=1e-6
    )


@pytest.mark.parametrize(
    "asked",
    [
        lambda: taper_found(0.0, 0.02, 0.1),
        lambda: taper_found(0.02, -0.02, 0.1),
        lambda: taper_found(0.02, 0.02, 0.0),
        lambda: set_over(1e-4, 0.0),
        lambda: set_over_error(1e-6, 0.3, 0.2),
        lambda: set_over_error(-1e-6, 0.1, 0.2),
        lambda: error_over(1e-4, -0.1),
        lambda: bands_apart(1e-6, 0.05, 0.0),
        lambda: hole_depth(-1e-9, 0.008),
        lambda: hole_depth(1e-9, 0.0),
        lambda: point_height(0.008, 0.0),
        lambda: point_height(0.008, 4.0),
        lambda: hole_volume(-0.001, 0.008),
        lambda: metal_for(1e-3, 0.0, 7200.0),
        lambda: metal_for(1e-3, 0.07, 0.0),
        lambda: least_shown(-1.0, 1e-4),
    ],
)
def test_what_no_shop_has_is_refused(asked: object) -> None:
    with pytest.raises(OutsideModel):
        asked()  # type: ignore[operator]


# Drilled holes


def revolved(depth: float, diameter: float, point: float) -> float:
    """The hole as a solid of revolution, from its tip up: π r(x)² summed along it."""
    slope = math.tan(point / 2) if point < math.pi else math.inf

    def slice_at(x: float) -> float:
        return math.pi * min(diameter / 2, x * slope) ** 2

    tip = diameter / 2 / slope
    return float(mpmath.quad(slice_at, [0, min(tip, depth), depth]))


@pytest.mark.parametrize("point", [math.radians(90), POINT, math.radians(135)])
@pytest.mark.parametrize("depth", [0.0005, 0.002, 0.004, 0.015, 0.04])
def test_a_hole_holds_what_its_revolved_outline_does(depth: float, point: float) -> None:
    assert float(hole_volume(depth, 0.008, point)) == pytest.approx(
        revolved(depth, 0.008, point), rel=1e-9
    )


def test_a_flat_hole_is_a_cylinder() -> None:
    assert float(hole_volume(0.01, 0.008, math.pi)) == pytest.approx(
        math.pi * 0.008**2 / 4 * 0.01, rel=CLOSE
    )
    assert float(hole_depth(math.pi * 0.008**2 / 4 * 0.01, 0.008, math.pi)) == pytest.approx(0.01)


@given(st.floats(1e-10, 1e-4), st.floats(0.002, 0.03), st.floats(1.0, 3.0))
def test_depth_and_volume_undo_each_other(volume: float, drill: float, point: float) -> None:
    deep = hole_depth(volume, drill, point)
    assert float(hole_volume(deep, drill, point)) == pytest.approx(volume, rel=1e-8)


def test_the_hole_takes_out_as_much_turning_as_the_wax_had() -> None:
    """12 g of wax at 80 mm against a hole at 70 mm in iron of 7200 kg/m³: 960 g·mm both ways."""
    volume = metal_for(0.012 * 0.080, 0.070, 7200.0)
    assert volume * 7200.0 * 0.070 == pytest.approx(0.012 * 0.080, rel=CLOSE)
    deep = float(hole_depth(volume, 0.008))
    assert revolved(deep, 0.008, POINT) * 7200.0 * 0.070 == pytest.approx(960e-6, rel=1e-8)
    # A plain cylinder of that weight is 37.9 mm deep; the point adds two thirds of its own height.
    cylinder = 960e-6 / 0.070 / 7200.0 / (math.pi * 0.004**2)
    assert cylinder == pytest.approx(0.0379, abs=5e-5)
    assert deep - cylinder == pytest.approx(2 / 3 * 0.004 / math.tan(math.radians(59)), rel=1e-6)


def test_more_wax_is_never_a_shallower_hole() -> None:
    deep = hole_depth(np.linspace(0.0, 4e-6, 400), 0.008)
    assert np.all(np.diff(deep) > 0)
    assert deep[0] == 0
