"""The scroll chuck: what three jaws hold by a hand sum, when they can, and how they spring a ring."""

from __future__ import annotations

import pytest
from tests.chuck_jobs import bored, hubbed, spoked, thin_ring, with_bore, worn
from tests.jobs_made import wheel_job

from borewright.answer.held import OUTSIDE, TAIL_FACE, Held
from borewright.answer.records import Verdict
from borewright.holding.ways.three_jaw import ThreeJaw
from borewright.job.records import CutWish, Job
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables
from borewright.service import planned

TABLES = Tables()
SAME = 1e-9
"""The same sum by another route; no rounding between."""

THICK = 0.12
"""The thick-ring terms of a wall of a fifth of the radius against the thin ring's."""

THIN = 1e-3
"""Shear and the shift of the neutral line, left out of a thin bar, go as (wall / radius)^2."""


def offered(job: Job) -> tuple[Held, ...]:
    return ThreeJaw().offer(job, TABLES)


def held(job: Job) -> Held:
    found = offered(job)[0]
    assert found.grip is not None, found.cannot
    return found


def grip_torque(job: Job) -> float:
    found = held(job)
    assert found.grip is not None
    return likely(found.grip.torque)


def springs(job: Job) -> float:
    found = held(job)
    assert found.grip is not None
    return likely(found.grip.springs)


def test_a_thin_ring_springs_as_the_handbook_says_at_the_lightest_pull() -> None:
    """By the thin ring of a handbook, 300 N a jaw: the thick-ring terms add a few in a hundred."""
    at_jaw, between = 0.0159, 0.0141
    inertia = 0.008 * 0.006**3 / 12
    by_hand = 300.0 * 0.053**3 / (69e9 * inertia) * (at_jaw + between)
    assert by_hand < springs(thin_ring()) < 1.12 * by_hand


def test_a_thinner_ring_never_springs_less() -> None:
    walls = [0.004, 0.005, 0.006, 0.008, 0.012]
    found = [springs(thin_ring(w)) for w in walls]
    assert found == sorted(found, reverse=True)


def test_a_thin_ring_to_be_round_is_a_no_in_three_jaws() -> None:
    answer = planned.plan(thin_ring(), use="three-jaw")
    assert answer.verdict is Verdict.NO
    assert [c.decided_by for c in answer.candidates if c.way == "three-jaw"] == ["bend"]


def test_a_plain_wheel_of_small_bore_has_nothing_to_grip() -> None:
    job = with_bore(thin_ring(), bored("reamed", 0.016))
    assert "Nothing to grip but the outside" in offered(job)[0].cannot


def test_a_hub_that_hardly_stands_out_is_not_gripped() -> None:
    assert offered(hubbed(0.004))[0].tool.endswith("inside of the rim")
    assert offered(hubbed(0.006))[0].tool.endswith("hub")


def test_jaws_open_inside_a_rim_that_leaves_room() -> None:
    (found,) = offered(spoked())
    assert found.tool == "three-jaw chuck, inside of the rim"
    assert found.grip is not None
    assert likely(found.grip.springs) > 0


def test_only_facing_is_done_by_the_outside() -> None:
    job = wheel_job(cuts=(CutWish("face", 1e-4),))
    found = held(job)
    assert set(found.reaches) == {TAIL_FACE}  # the other stands against the jaws
    assert OUTSIDE not in found.reaches
    assert planned.plan(job, use="three-jaw").chosen is not None


def test_an_oval_or_an_unfinished_bore_is_not_for_a_scroll() -> None:
    assert "worn oval" in offered(worn(hubbed()))[0].cannot
    assert "one chucking" in offered(with_bore(hubbed(), bored("drilled")))[0].cannot


def test_the_rough_hub_of_a_casting_makes_it_run_out_more() -> None:
    turned, rough = held(hubbed()).grip, held(hubbed(blank="casting")).grip
    assert turned is not None
    assert rough is not None
    assert likely(rough.runout) > 5 * likely(turned.runout)


def test_a_hub_like_a_tube_is_gripped_lightly_and_a_stout_one_firmly() -> None:
    def force(bore: float) -> float:
        found = held(with_bore(hubbed(), bored("bored", bore)))
        return next(f.best for f in found.figures if f.name == "jaw_force")

    forces = [force(b) for b in (0.010, 0.030, 0.034, 0.036, 0.038)]
    assert forces[0] == pytest.approx(5000)
    assert forces == sorted(forces, reverse=True)
    assert forces[-1] < 0.5 * forces[0]
