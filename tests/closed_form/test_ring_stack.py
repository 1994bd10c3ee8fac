"""The stack of rings against integrals done by hand and properties that must hold."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from borewright.mechanics.outline import BoreLine, bore_line
from borewright.mechanics.rings import Elastic, RingContact, ring_compliance, ring_contact

IRON, STEEL = Elastic(100e9, 0.26), Elastic(207e9, 0.29)
D, SMALL, T, G, L, OUT = 0.01801, 0.01799, 0.0005, 0.11, 0.03, 0.04
PLAIN = BoreLine(np.array([0.0, L]), np.array([OUT]))


def state(travel: float, line: BoreLine = PLAIN, bore: float = D, lost: float = 0.0) -> RingContact:
    seat = np.array([(bore - SMALL) / T + travel])
    return ring_contact(line, np.full(len(line.edges), bore), seat, SMALL, T, G, lost, IRON, STEEL)


def by_hand(travel: float, lost: float = 0.0) -> float:
    """N = (π / C) ∫ max(0, T (s - z) - lost) dz."""
    c = ring_compliance(D, OUT, IRON, STEEL)
    s = travel - lost / T
    area = T * s * s / 2 if s <= L else T * (s * L - L * L / 2)
    return math.pi / c * max(area, 0.0)


@pytest.mark.parametrize("travel", [0.005, 0.02, 0.03, 0.05])
def test_normal_force_is_the_integral_done_by_hand(travel: float) -> None:
    assert float(state(travel).normal_force[0]) == pytest.approx(by_hand(travel), rel=1e-9)


def test_roughness_takes_its_share_of_travel() -> None:
    rough = float(state(0.025, lost=4e-6).normal_force[0])
    assert rough == pytest.approx(by_hand(0.025, 4e-6), rel=1e-9)


@pytest.mark.parametrize(("travel", "length"), [(0.0, 0.0), (0.01, 0.01), (0.03, L), (0.05, L)])
def test_contact_is_as_long_as_the_travel_until_the_bore_is_full(
    travel: float, length: float
) -> None:
    assert float(state(travel).contact_length[0]) == pytest.approx(length, abs=1e-12)


def test_a_loose_work_grips_nothing() -> None:
    loose = state(-0.01)
    assert float(loose.normal_force[0]) == 0.0
    assert float(loose.largest_hoop(0, L)[0]) == 0.0


@given(st.floats(0.001, 0.05), st.floats(0.0001, 0.01))
def test_more_travel_never_grips_less_nor_eases_the_bore(travel: float, more: float) -> None:
    a, b = state(travel), state(travel + more)
    assert float(b.normal_force[0]) > float(a.normal_force[0])
    assert float(b.largest_hoop(0, L)[0]) > float(a.largest_hoop(0, L)[0])


@given(st.floats(0.2, 5.0))
def test_scaling_every_length_scales_force_by_its_square_and_leaves_stress(scale: float) -> None:
    line = BoreLine(PLAIN.edges * scale, PLAIN.outside * scale)
    seat = np.array([scale * ((D - SMALL) / T + 0.02)])
    big = ring_contact(
        line, np.full(2, D * scale), seat, SMALL * scale, T, G * scale, 0.0, IRON, STEEL
    )
    small = state(0.02)
    assert float(big.normal_force[0]) == pytest.approx(
        scale**2 * float(small.normal_force[0]), rel=1e-6
    )
    assert float(big.largest_hoop(0, L * scale)[0]) == pytest.approx(
        float(small.largest_hoop(0, L)[0]), rel=1e-6
    )


def test_a_bore_that_matches_the_taper_grips_the_same_from_either_mirror_image() -> None:
    edges = np.array([0.0, 0.01, 0.02, 0.03])
    line = BoreLine(edges, np.array([0.04, 0.08, 0.04]))
    assert np.allclose(line.mirrored().edges, edges)
    ahead = state(0.05, line)
    behind = state(0.05, line.mirrored())
    assert float(ahead.normal_force[0]) == pytest.approx(float(behind.normal_force[0]), rel=1e-12)


def test_work_hanging_off_the_large_end_grips_only_on_ground_length() -> None:
    seat = np.array([G + 0.01])
    off = ring_contact(PLAIN, np.full(2, D), seat, SMALL, T, G, 0.0, IRON, STEEL)
    assert float(off.near[0, 0]) == pytest.approx(0.01)


def test_splitting_a_ring_changes_nothing() -> None:
    cut = PLAIN.cut_at([0.004, 0.017])
    whole, split = state(0.012), state(0.012, cut)
    assert float(split.normal_force[0]) == pytest.approx(float(whole.normal_force[0]), rel=1e-12)
    assert float(split.contact_length[0]) == pytest.approx(
        float(whole.contact_length[0]), rel=1e-12
    )


def test_a_rim_counts_only_where_metal_reaches_it_from_the_bore() -> None:
    pulley = [(0.0, 0.03, 0.04, None), (0.012, 0.018, 0.1, 0.04), (0.0, 0.03, 0.12, 0.1)]
    line = bore_line(pulley, D)
    assert line.outside.tolist() == [0.04, 0.12, 0.04]


def test_a_counterbore_carries_no_pressure() -> None:
    line = bore_line([(0.0, 0.01, 0.04, 0.03), (0.01, 0.03, 0.04, None)], D)
    s = state(0.05, line)
    assert line.outside.tolist() == [0.0, 0.04]
    assert float(s.contact_length[0]) == pytest.approx(0.02)
