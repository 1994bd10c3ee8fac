"""The scroll chuck: what three jaws hold by a hand sum, when they can, and how they spring a ring."""

from __future__ import annotations

import mpmath as mp
import numpy as np
import pytest
from tests.jobs_made import wheel_job
from tests.unit.chuck_jobs import bored, hubbed, spoked, thin_ring, with_bore, worn

from borewright.answer.held import HEAD_FACE, OUTSIDE, TAIL_FACE, Held
from borewright.answer.records import Verdict
from borewright.holding.ways.three_jaw import ThreeJaw
from borewright.job.records import CutWish, Job
from borewright.mechanics.spread import COUNT, likely
from borewright.reference.library import Tables
from borewright.service import planned

TABLES = Tables()
SAME = 1e-9
"""The same sum by another route; no rounding between."""

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


def test_a_hub_holds_what_the_hand_sum_says() -> None:
    """Three jaws of 5000 N, friction 0.18, on 40 mm: 3 x 5000 x 0.18 x 0.020 = 54 N·m."""
    assert grip_torque(hubbed()) == pytest.approx(54.0, rel=SAME)


def test_the_pull_out_of_the_jaws_is_their_friction_and_inwards_they_stand() -> None:
    grip = held(hubbed()).grip
    assert grip is not None
    assert likely(grip.thrust_out) == pytest.approx(3 * 5000 * 0.18, rel=SAME)
    assert np.isinf(grip.thrust_in).all()
    assert grip.torque.shape == (COUNT + 1,)


def test_a_tilt_lifts_it_where_the_force_of_a_jaw_leaves_its_middle_third() -> None:
    """1.5 x 5000 x (15 mm / 6 + 0.18 x 20 mm) = 45.75 N·m."""
    grip = held(hubbed(0.015)).grip
    assert grip is not None
    assert likely(grip.tilt) == pytest.approx(1.5 * 5000 * (0.015 / 6 + 0.18 * 0.020), rel=SAME)


def test_a_thin_ring_springs_as_the_handbook_says_at_the_lightest_pull() -> None:
    """By the thin ring of a handbook, 300 N a jaw: the thick-ring terms add a few in a hundred."""
    at_jaw, between = 0.0159, 0.0141
    inertia = 0.008 * 0.006**3 / 12
    by_hand = 300.0 * 0.053**3 / (69e9 * inertia) * (at_jaw + between)
    assert by_hand < springs(thin_ring()) < 1.12 * by_hand


def test_its_spring_is_that_of_a_thin_bar_bent() -> None:
    """A thin bar's bending integrated by mpmath; half a millimetre of wall in 100 mm."""
    job = thin_ring(wall=0.5e-3, length=0.02)
    radius, half = mp.mpf("0.05025"), mp.pi / 3
    stiffness = mp.mpf("69e9") * mp.mpf("0.02") * mp.mpf("0.5e-3") ** 3 / 12

    def since_the_jaw(angle: mp.mpf) -> mp.mpf:
        """Bending beyond that at the jaw, of hoop force and half the jaw's force (1 N), by statics."""
        return radius / 2 * ((1 - mp.cos(angle)) / mp.tan(half) - mp.sin(angle))

    at_jaw = -mp.quad(since_the_jaw, [0, half]) / half  # the slope at both ends is that of symmetry

    def curving(angle: mp.mpf) -> mp.mpf:
        return (at_jaw + since_the_jaw(angle)) * radius**2 / stiffness

    # w'' + w = curving, level at both ends: w = w0 cos + ∫ curving sin(angle - s) ds.
    first = mp.quad(lambda s: curving(s) * mp.cos(half - s), [0, half]) / mp.sin(half)
    last = first * mp.cos(half) + mp.quad(lambda s: curving(s) * mp.sin(half - s), [0, half])
    assert springs(job) == pytest.approx(300 * float(abs(last - first)), rel=THIN)


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
    assert set(found.reaches) == {TAIL_FACE, HEAD_FACE}
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
