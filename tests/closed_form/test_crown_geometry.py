"""A crown's form against geometry worked another way: the circle's own equation, straight lines."""

from __future__ import annotations

import math
from functools import partial

import mpmath
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.errors import OutsideModel
from borewright.mechanics.crown import (
    arc_fall,
    arc_radius,
    rise_on_slide,
    taper_angle,
    taper_fall,
)
from borewright.mechanics.crown_steps import stairs

FACES = st.floats(5e-3, 0.3)
SHARES = st.floats(1e-4, 0.2)
"""Height over face: from less than any rule to more."""
ROUNDING = 1e-10
"""Relative: floats against fifty digits."""
PLACES = 10_000


def radius_through(points: list[tuple[float, float]]) -> mpmath.mpf:
    """The circle through three points, as the solution of its three equations."""
    rows = mpmath.matrix([[2 * mpmath.mpf(x), 2 * mpmath.mpf(y), 1] for x, y in points])
    right = mpmath.matrix([mpmath.mpf(x) ** 2 + mpmath.mpf(y) ** 2 for x, y in points])
    a, b, c = mpmath.lu_solve(rows, right)
    return mpmath.sqrt(c + a**2 + b**2)


@given(face=FACES, share=SHARES)
def test_the_arc_goes_through_both_edges_and_the_middle(face: float, share: float) -> None:
    height = share * face
    with mpmath.workdps(50):
        truth = radius_through([(-face / 2, 0), (face / 2, 0), (0, height)])
    assert float(arc_radius(height, face)) == pytest.approx(float(truth), rel=ROUNDING)


@given(face=FACES, share=SHARES, place=st.floats(-0.5, 0.5))
def test_every_place_of_the_arc_lies_on_the_circle(face: float, share: float, place: float) -> None:
    """By the circle's equation: distance to the center, in fifty digits, is the radius."""
    height = share * face
    fall = float(arc_fall(place * face, height, face))
    with mpmath.workdps(50):
        h, w = mpmath.mpf(height), mpmath.mpf(face)
        radius = (w**2 / 4 + h**2) / (2 * h)
        z = mpmath.mpf(place * face)
        truth = radius - mpmath.sqrt(radius**2 - z**2)
    assert fall == pytest.approx(float(truth), rel=1e-9, abs=1e-15)


@given(face=FACES, share=SHARES, flat=st.floats(0.0, 0.9), place=st.floats(-0.5, 0.5))
def test_every_place_of_the_taper_lies_on_the_line(
    face: float, share: float, flat: float, place: float
) -> None:
    """numpy's own straight-line interpolation between edge, flat and edge."""
    height, f = share * face, flat * face
    corners = [-face / 2, -f / 2, f / 2, face / 2]
    truth = np.interp(place * face, corners, [height, 0.0, 0.0, height])
    found = float(taper_fall(place * face, height, face, f))
    assert found == pytest.approx(float(truth), rel=1e-9, abs=1e-12 * face)


def test_dooleys_taper_over_two_inches_is_set_at_the_angle_of_three_quarters_in_a_foot() -> None:
    """3/4 in per ft on diameter is 3/8 in on radius in 12 in: the angle of that triangle."""
    angle = taper_angle(0.03125 * 0.0254, 2 * 0.0254)
    assert float(angle) == pytest.approx(math.atan2(3 / 8, 12))
    assert math.degrees(float(angle)) == pytest.approx(1.78991, abs=5e-6)


def test_an_indicator_beside_a_slide_at_thirty_degrees_reads_half_its_travel() -> None:
    assert float(rise_on_slide(math.pi / 6, 0.05)) == pytest.approx(0.025)


@given(face=FACES, share=SHARES)
def test_a_slight_crown_is_a_parabola_and_a_half_circle_a_circle(face: float, share: float) -> None:
    """At a quarter of the face a slight arc has fallen a quarter; half a face high it is round."""
    height = 1e-6 * face
    assert float(arc_fall(face / 4, height, face)) == pytest.approx(height / 4, rel=1e-6)
    assert float(arc_radius(face / 2, face)) == pytest.approx(face / 2)


@given(face=FACES, share=SHARES, scale=st.floats(0.1, 10))
def test_a_crown_twice_as_large_is_the_same_crown(face: float, share: float, scale: float) -> None:
    height = share * face
    assert float(taper_angle(scale * height, scale * face)) == pytest.approx(
        float(taper_angle(height, face))
    )
    assert float(arc_radius(scale * height, scale * face)) == pytest.approx(
        scale * float(arc_radius(height, face))
    )


# Stairs


@given(
    face=FACES,
    share=st.floats(2e-3, 0.1),
    steps=st.integers(2, 40),
    division=st.sampled_from([25.4e-6, 20e-6, 50e-6, 10e-6]),
    per_radius=st.sampled_from([1, 2]),
)
def test_stairs_stay_within_half_a_division_of_the_crown_and_leave_what_they_say(
    face: float, share: float, steps: int, division: float, per_radius: int
) -> None:
    height = share * face
    fall = partial(arc_fall, height=height, face=face)
    try:
        made = stairs(fall, face, face / 2 / steps, division, per_radius)
    except OutsideModel:
        # Nothing to cut: at the outermost stop the circle is less than half a division down.
        radius = (face**2 / 4 + height**2) / (2 * height)
        outermost = radius - math.sqrt(radius**2 - (face / 2 * (1 - 1 / steps)) ** 2)
        assert per_radius * outermost < division / 2 * (1 + 1e-6)
        return
    assert made.rounding <= division / per_radius / 2 + 1e-12
    assert (np.diff(made.stops) < 0).all()
    assert (np.diff(made.divisions) > 0).all()
    stood = ridge_by_walking(made.stops, made.depths, height, face)
    one_place = 5 * share * face / 2 / PLACES  # an edge falls 4 h/w and a little more
    assert made.cusp == pytest.approx(stood, abs=one_place)


def ridge_by_walking(stops: np.ndarray, depths: np.ndarray, height: float, face: float) -> float:
    """The most metal left over the circle, found by walking half of a stepped face.

    A place is as deep as the deepest cut that reaches it.
    """
    x = np.linspace(0.0, face / 2, PLACES + 1)[:-1]
    reached = x[:, None] < stops[None, :] - 1e-12
    cut = np.max(np.where(reached, depths, 0.0), axis=1)
    radius = (face**2 / 4 + height**2) / (2 * height)
    crown = radius - np.sqrt(np.maximum(radius**2 - (face / 2 - x) ** 2, 0.0))
    return float(np.max(crown - cut))


def test_a_dial_that_counts_diameter_is_turned_twice_as_far() -> None:
    fall = partial(taper_fall, height=1e-3, face=0.04)
    on_radius = stairs(fall, 0.04, 0.005, 0.05e-3, 1)
    on_diameter = stairs(fall, 0.04, 0.005, 0.05e-3, 2)
    assert on_diameter.divisions.tolist() == [2 * n for n in on_radius.divisions.tolist()]
    assert on_diameter.depths == pytest.approx(on_radius.depths)


def test_a_cut_that_would_repeat_the_dial_is_left_out() -> None:
    """1 µm a step on a dial of 2 µm: every second one."""
    fall = partial(taper_fall, height=8e-6, face=0.016)
    made = stairs(fall, 0.016, 0.001, 2e-6)
    assert made.divisions.tolist() == [1, 2, 3, 4]
    assert [round(x * 1e3) for x in made.stops.tolist()] == [7, 5, 3, 1]


@pytest.mark.parametrize(
    "ask",
    [
        lambda: arc_radius(0.03, 0.05),
        lambda: arc_radius(0.0, 0.05),
        lambda: taper_angle(1e-3, 0.05, 0.05),
        lambda: taper_angle(1e-3, -0.05),
        lambda: taper_fall(0.03, 1e-3, 0.05),
        lambda: arc_fall(math.nan, 1e-3, 0.05),
        lambda: rise_on_slide(0.02, 0.0),
        lambda: rise_on_slide(math.pi / 2, 0.05),
        lambda: stairs(partial(taper_fall, height=1e-3, face=0.04), 0.04, 0.03, 20e-6),
        lambda: stairs(partial(taper_fall, height=1e-3, face=0.04), 0.04, 1e-5, 20e-6),
        lambda: stairs(partial(taper_fall, height=1e-6, face=0.04), 0.04, 0.005, 20e-6),
    ],
)
def test_what_is_no_crown_is_refused(ask) -> None:
    with pytest.raises(OutsideModel):
        ask()
