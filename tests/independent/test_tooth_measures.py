"""What a finished tooth measures, against a gear drawn point by point in mpmath.

The chord is the distance of two points on the pitch circle; the span is found by pushing a flat jaw
against the involute flank, point by point, where it stands farthest out. Nothing here knows the
rules of the package, nor of what they are made.
"""

from __future__ import annotations

import math

import pytest
from mpmath import atan, cos, findroot, mp, mpf, pi, sin, sqrt, tan

from borewright.mechanics.tooth_measures import (
    chordal_height,
    chordal_thickness,
    span_over,
    teeth_to_span,
    thinned_by,
)

mp.dps = 30
SAME = 1e-9
"""Both routes are exact but for rounding; a root is found to more digits than these."""

ANGLES = (14.5, 20.0)
TEETH = (8, 12, 17, 24, 40, 96)


@pytest.mark.parametrize("teeth", TEETH)
@pytest.mark.parametrize("module", [1.0, 25.4 / 16])
def test_the_chord_joins_two_points_of_the_pitch_circle(module: float, teeth: int) -> None:
    """Half a circular pitch of arc apart, drawn either side of straight up."""
    radius, m = mpf(module) * teeth / 2, mpf(module)
    half = (pi * m / 2) / radius / 2
    left, right = (
        (radius * sin(-half), radius * cos(half)),
        (radius * sin(half), radius * cos(half)),
    )
    assert chordal_thickness(module, teeth) == pytest.approx(float(right[0] - left[0]), rel=SAME)
    top = radius + m
    assert chordal_height(module, teeth) == pytest.approx(float(top - left[1]), rel=SAME)


def jaw(module: float, teeth: int, k: int, degrees: float) -> tuple[float, float]:
    """Span over k teeth that stand evenly about straight up, and the radius at which a jaw touches.

    The outer flank of the outermost tooth is unrolled from its base circle, with the roll angle that
    puts it a quarter of a pitch from the tooth's middle on the pitch circle.
    """
    alpha, pitch = mpf(degrees) * pi / 180, mpf(module) * teeth / 2
    base, roll = pitch * cos(alpha), tan(alpha)
    assert abs(base * sqrt(1 + roll**2) - pitch) < mpf(10) ** -20
    at_pitch = (k - 1) * pi / teeth + pi / (2 * teeth)
    start = at_pitch + (roll - atan(roll))

    def across(t: mpf) -> mpf:
        return base * sqrt(1 + t**2) * sin(start - (t - atan(t)))

    near = max((mpf(n) / 50 for n in range(1, 100)), key=across)
    top = findroot(lambda t: mp.diff(across, t), near)
    return float(2 * across(top)), float(base * sqrt(1 + top**2))


@pytest.mark.parametrize("degrees", ANGLES)
@pytest.mark.parametrize("teeth", TEETH)
def test_flat_jaws_over_k_involutes_stand_as_far_apart_as_the_rule_says(
    teeth: int, degrees: float
) -> None:
    angle = math.radians(degrees)
    k = teeth_to_span(teeth, angle)
    for spanned in (k, k + 1):
        by_hand, _ = jaw(2.0, teeth, spanned, degrees)
        assert span_over(2.0, teeth, spanned, angle) == pytest.approx(by_hand, rel=SAME)


@pytest.mark.parametrize("degrees", ANGLES)
@pytest.mark.parametrize("teeth", TEETH)
def test_the_jaws_touch_the_flanks_and_no_other_count_touches_nearer_the_pitch_circle(
    teeth: int, degrees: float
) -> None:
    k = teeth_to_span(teeth, math.radians(degrees))
    pitch, base = teeth / 2, teeth / 2 * math.cos(math.radians(degrees))
    here = jaw(1.0, teeth, k, degrees)
    assert base < here[1] < pitch + 1
    off = [abs(jaw(1.0, teeth, n, degrees)[0] - 2 * _at_pitch(teeth, degrees)) for n in (k, k + 1)]
    assert off[0] <= off[1] + 1e-12
    if k > 2:
        less = abs(jaw(1.0, teeth, k - 1, degrees)[0] - 2 * _at_pitch(teeth, degrees))
        assert off[0] <= less + 1e-12


def _at_pitch(teeth: int, degrees: float) -> float:
    """Half a span that touches right on the pitch circle: there its normal leans by the angle."""
    return teeth / 2 * math.sin(math.radians(degrees))


def test_twenty_degrees_is_a_ninth_of_the_teeth_and_a_half() -> None:
    """The shop's rule z/9 + 1/2, to the nearest whole number, never fewer than two."""
    for teeth in range(10, 121):
        if (2 * teeth) % 18 == 0:
            continue  # z/9 whole: the rule lies on a half and either count will do
        assert teeth_to_span(teeth, math.radians(20)) == max(2, round(teeth / 9 + 0.5)), teeth


@pytest.mark.parametrize(
    ("teeth", "chord", "height"),
    [(24, 1.5697, 1.0257), (135, 1.5708, 1.0046)],
)
def test_figures_for_one_pitch_as_tables_of_gear_tooth_calipers_print_them(
    teeth: int, chord: float, height: float
) -> None:
    """Four decimals, as printed (from memory)."""
    assert round(chordal_thickness(1.0, teeth), 4) == chord
    assert round(chordal_height(1.0, teeth), 4) == height


@pytest.mark.parametrize("degrees", ANGLES)
def test_a_rack_cutter_sunk_deeper_takes_its_slope_off_both_flanks(degrees: float) -> None:
    """Its flank lies x = y tan α off the middle: at a fixed height it stands d tan α further out."""
    alpha = math.radians(degrees)
    width = [2 * (0.7 + y * math.tan(alpha)) for y in (1.0, 1.1)]
    assert thinned_by(0.1, alpha) == pytest.approx(width[1] - width[0], rel=1e-9)
