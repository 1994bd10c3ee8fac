"""Metal of a casting with its draft, against slices added up and against closed forms by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from borewright.job.records import Piece
from borewright.making.blank.melt import volume_of
from borewright.making.blank.rings import Draft, drafted
from borewright.mechanics.cast_metal import draft_adds, modulus, ring_volume

HUB, WEB, RIM = (
    Piece(0.0, 0.055, 0.044),
    Piece(0.023, 0.033, 0.111, 0.044),
    Piece(0.0, 0.055, 0.132, 0.111),
)
OUT, IN, PARTING = math.radians(1.5), math.radians(3), 0.028
SIZES = st.floats(0.01, 0.2)


def test_a_cone_ring_is_the_sum_of_its_slices():
    def area(z: float) -> float:
        outside, inside = 0.10 + 0.02 * z / 0.03, 0.06 - 0.01 * z / 0.03
        return math.pi / 4 * (outside**2 - inside**2)

    slices, _ = quad(area, 0.0, 0.03)
    assert ring_volume(0.03, (0.10, 0.12), (0.06, 0.05)) == pytest.approx(slices, rel=1e-10)


def test_a_wheel_with_draft_is_the_sum_of_its_slices():
    """The wheel's section said again here, surface by surface: thickest at parting and web."""

    def area(z: float) -> float:
        end = z if z < PARTING else 0.055 - z
        rim_out = 0.132 + 2 * end * math.tan(OUT)
        hub_out, rim_in = 0.044, 0.111
        if not 0.023 < z < 0.033:
            hub_out += 2 * end * math.tan(OUT)
            rim_in -= 2 * end * math.tan(IN)
            return math.pi / 4 * (rim_out**2 - rim_in**2 + hub_out**2 - 0.020**2)
        return math.pi / 4 * (rim_out**2 - 0.020**2)

    slices, _ = quad(area, 0.0, 0.055, points=(0.023, PARTING, 0.033), limit=200)
    rings = drafted((HUB, WEB, RIM), 0.020, Draft(OUT, IN, PARTING))
    assert volume_of(rings) == pytest.approx(slices, rel=1e-9)


@given(SIZES, SIZES, st.floats(0.0, 0.07))
def test_draft_only_ever_adds_metal(long, outside, angle):
    plain = ring_volume(long, (outside, outside))
    rings = drafted((Piece(0.0, long, outside),), 0.0, Draft(angle, angle, long / 2))
    assert volume_of(rings) >= plain * (1 - 1e-9)
    assert all(s.outside >= outside - 1e-9 for s in rings)


@given(st.floats(0.5, 3.0))
def test_metal_grows_with_the_cube_of_the_size(k):
    def grown(p: Piece) -> Piece:
        return Piece(
            k * p.start, k * p.end, k * p.outside, None if p.inside is None else k * p.inside
        )

    small = volume_of(drafted((HUB, WEB, RIM), 0.02, Draft(OUT, IN, PARTING)))
    wheel = tuple(grown(p) for p in (HUB, WEB, RIM))
    large = volume_of(drafted(wheel, k * 0.02, Draft(OUT, IN, k * PARTING)))
    assert large == pytest.approx(k**3 * small, rel=1e-6)


def test_one_and_a_half_degrees_over_an_inch_add_27_thou():
    """By hand: tan 1.5 degrees is 0.02619."""
    assert draft_adds(0.0254, OUT) / 0.0254 == pytest.approx(0.02619, abs=1e-5)


def test_a_square_bar_cools_over_a_quarter_of_its_side():
    """By hand: a² / 4a."""
    assert modulus(0.04, 0.04) == pytest.approx(0.01)


def test_metal_that_joins_other_metal_does_not_cool_there() -> None:
    """By hand: 50 x 10 mm over 120 mm of edge, of which 10 are joined."""
    assert modulus(0.05, 0.01, covered=0.01) == pytest.approx(500e-6 / 110e-3)
