"""A taper hold as elastic bodies: against Lame by hand, a direct solve, and itself measured."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import wheel_job

from borewright.holding.taper.elastic_joint import Joint
from borewright.holding.taper.plain_taper import TaperHold, holds
from borewright.job.records import Mandrel
from borewright.mechanics.num import Floats
from borewright.reference.library import Tables

TABLES = Tables()
WHEEL = wheel_job(material="gray-iron-30")
MANDREL = Mandrel("16 mm", 0.016, 0.01599, 0.0005, 0.1, 0.14, 0.012, 0.02)


def hold_on(mandrel: Mandrel) -> TaperHold:
    return holds(WHEEL, mandrel, TABLES)[0]


def test_the_likely_force_is_lame_s_on_a_plain_hub_pressed_well_past_its_length() -> None:
    """N = (pi / C) int T (travel - z) dz; the ends of the hub add a few parts in a hundred."""
    hold = hold_on(MANDREL)
    facts, d, outside = hold.facts, WHEEL.work.bore.size, WHEEL.work.outside
    length, taper = WHEEL.work.length, hold.mandrel.taper
    k2 = (d / outside) ** 2
    work = ((1 + k2) / (1 - k2) + facts.work.poisson) / float(np.atleast_1d(facts.work.modulus)[0])
    c = work + (1 - facts.mandrel.poisson) / facts.mandrel.modulus
    travel = 1.6 * length
    lame = math.pi / c * taper * (travel * length - length**2 / 2)
    found = float(hold.state(travel, np.zeros(1)).normal_force[0])
    assert found == pytest.approx(lame, rel=3e-2)
    # What the peaks take is overlap that is not there: half of it, half of the force.
    mean = taper * (travel - length / 2)
    half = float(hold.state(travel, np.full(1, mean / 2), likely_only=True).normal_force[0])
    assert half == pytest.approx(lame / 2, rel=5e-2)


@pytest.mark.parametrize("travel", [0.008, 0.02, 0.045])
def test_every_drawn_case_is_a_direct_solve_of_its_own(travel: float) -> None:
    hold = hold_on(MANDREL)
    lost = hold.facts.lost_rough
    state = hold.state(travel, lost)
    modulus = np.atleast_1d(hold.facts.work.modulus)
    for case in (0, 17, 101, 256):
        overlap = hold.mandrel.taper * (travel - hold.joint.places) - lost[case]
        ratio = float(modulus[case]) / float(hold.facts.mandrel.modulus)
        own = replace(hold.joint, modulus=float(modulus[case]), ratio=ratio)
        pressure = own.pressure(overlap)
        assert state.normal_force[case] == pytest.approx(own.normal_force(pressure), rel=1e-3)
        assert state.tension[case] >= own.largest_tension(pressure) * (1 - 2e-3)
        # Never under what was solved; the curve stands on the peaks, a grid only comes near them.
        assert state.tension[case] <= greatest_on_the_way(own, overlap) * (1 + NEAR_PEAK)
        assert state.contact_length[case] == pytest.approx(own.contact_length(overlap), rel=3e-3)


NEAR_PEAK = 0.02


def greatest_on_the_way(own: Joint, overlap: Floats) -> float:
    """Solved afresh at many lesser travels: what the bore has seen is not taken back."""
    less = np.linspace(0.0, float(overlap.max()), 400)[:-1]
    return max(own.largest_tension(own.pressure(overlap - x)) for x in less)


def test_a_mandrel_measured_straight_holds_as_a_straight_one() -> None:
    plain = MANDREL
    places = (0.0, 0.4, 1.0)
    stations = tuple(
        (s * plain.ground_length, plain.small_end + plain.taper * s * plain.ground_length)
        for s in places
    )
    straight, measured = hold_on(plain), hold_on(replace(plain, stations=stations))
    for travel in (0.01, 0.03):
        one, other = (h.grip(travel) for h in (straight, measured))
        assert other.normal_force == pytest.approx(one.normal_force, rel=2e-3, abs=1.0)
        assert other.tension == pytest.approx(one.tension, rel=5e-3, abs=1e3)


def test_either_face_leading_is_the_work_turned_round() -> None:
    flanged = replace(WHEEL.work.pieces[0], end=0.4 * WHEEL.work.length, outside=0.09)
    hub = replace(WHEEL.work.pieces[0], start=0.4 * WHEEL.work.length, outside=0.03)
    job = replace(WHEEL, work=replace(WHEEL.work, pieces=(flanged, hub)))
    ahead, behind = holds(job, MANDREL, TABLES)
    gives = ahead.joint.work.gives
    assert behind.joint.work.gives == pytest.approx(gives[::-1, ::-1], rel=1e-9)
    lead, trail = (h.state(0.012, np.zeros(1), likely_only=True) for h in (ahead, behind))
    # Part engaged, the flange holds more where it is the end that grips.
    assert lead.normal_force[0] > 1.1 * trail.normal_force[0]
