"""The tilt that a hold stands: each drawn case against a solve of its own, and how it goes."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import wheel_job

from borewright.holding.taper.elastic_joint import joint
from borewright.holding.taper.lift_arm import joint_stiffness, lift_arm, tilt_gives
from borewright.holding.taper.plain_taper import TaperHold, holds
from borewright.holding.taper.taper_contact import beyond_faces
from borewright.job.records import Mandrel, Piece
from borewright.mechanics.rings import Elastic
from borewright.reference.library import Tables

TABLES = Tables()
MANDREL = Mandrel("16 mm", 0.016, 0.01599, 0.0005, 0.1, 0.14, 0.012, 0.02)
HUB, WEB, RIM = (
    Piece(0.0, 0.025, 0.036),
    Piece(0.009, 0.017, 0.078, 0.036),
    Piece(0.0, 0.025, 0.09, 0.078),
)
READ = 0.1
"""Read between the stations, and moduli of other cases: a tenth of the arm, as the docstring says."""


def hold_of(*pieces: Piece, mandrel: Mandrel = MANDREL, leading: int = 0) -> TaperHold:
    job = wheel_job(material="gray-iron-30")
    work = replace(job.work, pieces=pieces) if pieces else job.work
    return holds(replace(job, work=work), mandrel, TABLES)[leading]


@pytest.mark.parametrize("pieces", [(), (HUB, WEB, RIM)], ids=["a plain wheel", "a webbed one"])
@pytest.mark.parametrize("travel", [0.03, 0.045])
def test_every_drawn_case_is_near_a_solve_of_its_own(
    pieces: tuple[Piece, ...], travel: float
) -> None:
    hold = hold_of(*pieces)
    found = hold.lift_moment(travel)
    facts, joint = hold.facts, hold.joint
    lost = facts.lost_rough + facts.lost_warm_per_metre * joint.bore
    centers = beyond_faces(hold.work, hold.mandrel, hold.likely_touch + travel)
    modulus = np.atleast_1d(facts.work.modulus)
    for case in (0, 17, 101, 256):
        own = replace(joint, modulus=float(modulus[case]), ratio=modulus[case] / 2.07e11)
        assert own.ratio == pytest.approx(modulus[case] / float(facts.mandrel.modulus), rel=0.02)
        overlap = hold.mandrel.taper * (travel - joint.places) - lost[case]
        arm = lift_arm(own, tilt_gives(own, centers), overlap / (2 * joint.bore)) * joint.bore
        alone = arm * own.normal_force(own.pressure(overlap))
        assert found[case] == pytest.approx(alone, rel=READ)


def test_more_travel_stands_more_and_none_nothing() -> None:
    hold = hold_of()
    held = np.array([hold.lift_moment(t)[0] for t in np.linspace(0.0, 0.06, 13)])
    assert held[0] == 0.0
    assert (np.diff(held) >= 0).all()
    assert held[-1] > 10.0


def test_a_mandrel_measured_straight_stands_what_a_straight_one_does() -> None:
    at = np.linspace(0.0, 0.1, 5)
    stations = tuple((float(x), 0.01599 + 0.0005 * float(x)) for x in at)
    measured = hold_of(mandrel=replace(MANDREL, stations=stations))
    plain, found = hold_of().lift_moment(0.04), measured.lift_moment(0.04)
    assert found[0] == pytest.approx(plain[0], rel=0.02)
    assert np.median(np.abs(found / plain - 1)) < READ


def test_either_face_leading_is_the_same_part_turned_round() -> None:
    """A flange at face A with A leading is a flange at face B with B leading."""
    hub, flange = Piece(0.0, 0.025, 0.03), Piece(0.0, 0.006, 0.09, 0.03)
    at_far = replace(flange, start=0.019, end=0.025)
    ahead = hold_of(hub, flange, leading=0).lift_moment(0.04)
    behind = hold_of(hub, at_far, leading=1).lift_moment(0.04)
    other = hold_of(hub, flange, leading=1).lift_moment(0.04)
    assert behind == pytest.approx(ahead, rel=1e-6)
    assert other[0] != pytest.approx(ahead[0], rel=0.05)


def test_stiffness_goes_with_the_cube_of_the_size_and_with_the_moduli() -> None:
    """Dimensions: N·m per radian is Pa m³; overlap over d, outline and overhang in proportion."""

    def stiff(size: float, modulus: float) -> float:
        ring = [(0.0, 0.025 * size, 0.060 * size, None)]
        work, bar = Elastic(100e9 * modulus, 0.26), Elastic(207e9 * modulus, 0.29)
        made = joint(ring, 0.016 * size, work, bar, (0.03 * size, 0.05 * size))
        overlap = 2e-4 * (1.5 - made.places / (0.025 * size))
        return joint_stiffness(made, overlap, (0.03 * size, 0.05 * size))

    one = stiff(1.0, 1.0)
    assert stiff(2.0, 1.0) == pytest.approx(8 * one, rel=1e-6)
    assert stiff(1.0, 3.0) == pytest.approx(3 * one, rel=1e-6)
