"""A mandrel with a bore of its own: Lame's hollow shaft, by rings and by contact, and its bending."""

from __future__ import annotations

import math

import numpy as np
import pytest

from borewright.holding.taper.elastic_joint import joint
from borewright.mechanics.beam import Bar, deflection, round_step
from borewright.mechanics.measured import Profile
from borewright.mechanics.measured_rings import ring_contact_on
from borewright.mechanics.outline import BoreLine
from borewright.mechanics.rings import Elastic, ring_contact

IRON, STEEL = Elastic(100e9, 0.26), Elastic(207e9, 0.29)
D, OUT, LENGTH = 0.01801, 0.04, 0.03
SMALL, TAPER = 0.01799, 0.0005
LINE = BoreLine(np.array([0.0, LENGTH]), np.array([OUT]))
HOLES = (0.0, 0.3, 0.6, 0.75)
"""Of the bore."""

MIDDLE = 2e-4
"""What the ends of a hub eight bores long still do at its middle, and the mesh: found below 4e-5."""


def compliance(hole: float, d: float = D, out: float = OUT) -> float:
    """C (1/Pa) of ring and hollow shaft, written out here; `hole` over d."""
    k2 = (d / out) ** 2
    ring = ((1 + k2) / (1 - k2) + IRON.poisson) / IRON.modulus
    return ring + ((1 + hole**2) / (1 - hole**2) - STEEL.poisson) / STEEL.modulus


@pytest.mark.parametrize("hole", HOLES)
@pytest.mark.parametrize("travel", [0.02, 0.045])
def test_rings_on_a_hollow_shaft_are_the_integral_done_by_hand(hole: float, travel: float) -> None:
    """N = (pi / C) int max(0, T (s - z)) dz, straight or measured straight."""
    seat, bore = np.array([(D - SMALL) / TAPER + travel]), np.full(2, D)
    reach = min(travel, LENGTH)
    by_hand = math.pi / compliance(hole) * TAPER * (travel * reach - reach**2 / 2)
    one = ring_contact(LINE, bore, seat, SMALL, TAPER, np.inf, 0.0, IRON, STEEL, hole * D)
    straight = Profile(np.array([0.0, 0.1]), SMALL + TAPER * np.array([0.0, 0.1]), TAPER)
    other = ring_contact_on(straight, LINE, bore, seat, 0.0, IRON, STEEL, hole=hole * D)
    for state in (one, other):
        assert float(state.normal_force[0]) == pytest.approx(by_hand, rel=1e-9)


@pytest.mark.parametrize("hole", HOLES)
def test_a_uniform_fit_on_a_long_hub_has_lame_s_pressure_at_its_middle(hole: float) -> None:
    d, squeeze = 0.02, 10e-6
    made = joint([(0.0, 8 * d, 2 * d, None)], d, IRON, STEEL, (2 * d, 2 * d), hole * d)
    pressure = made.pressure(np.full(len(made.places), squeeze))
    middle = np.abs(made.places - 4 * d) < 0.3 * d
    lame = squeeze / d / compliance(hole, d, 2 * d)
    print(f"{hole}: {pressure[middle] / lame - 1}")
    assert pressure[middle] == pytest.approx(lame, rel=MIDDLE)


def test_the_larger_the_hole_the_less_it_grips_and_strains() -> None:
    pieces = [(0.0, LENGTH, OUT, None)]
    found = []
    for hole in HOLES:
        made = joint(pieces, D, IRON, STEEL, (2 * D, 2 * D), hole * D)
        pressure = made.pressure(TAPER * (0.035 - made.places))
        found.append((made.normal_force(pressure), made.largest_tension(pressure)))
    assert found == sorted(found, reverse=True)
    assert [tension for _, tension in found] == sorted((t for _, t in found), reverse=True)


@pytest.mark.parametrize("hole", HOLES)
def test_a_long_bored_bar_bends_by_its_second_moment_of_area(hole: float) -> None:
    """F l^3 / (48 E I) with I = pi (d^4 - hole^4) / 64, so long that shear does not count."""
    d, span, force = 0.018, 2.0, 30.0
    step = round_step(d, STEEL.modulus, STEEL.poisson, hole * d)
    bar = Bar(np.array([0.0, span]), np.array([step[0]]), np.array([step[1]]))
    inertia = math.pi * d**4 * (1 - hole**4) / 64
    bent = force * span**3 / (48 * STEEL.modulus * inertia)
    assert deflection(bar, span / 2, force) == pytest.approx(bent, rel=1e-3)


def test_shear_of_a_thin_tube_is_half_of_its_area() -> None:
    """Cowper's factor for a thin tube, 2 (1 + v) / (4 + 3 v): the limit of the hollow circle."""
    d, hole, v = 0.02, 0.02 * (1 - 1e-6), 0.29
    area = math.pi * (d**2 - hole**2) / 4
    shear = round_step(d, 207e9, v, hole)[1] / (207e9 / (2 * (1 + v)) * area)
    assert shear == pytest.approx(2 * (1 + v) / (4 + 3 * v), rel=1e-4)
    assert shear == pytest.approx(0.5, abs=0.05)
