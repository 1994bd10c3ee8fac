"""Work in jaws and on a plate by hand sums and by bars bent in mpmath: what holds, what springs."""

from __future__ import annotations

import math
from dataclasses import replace

import mpmath as mp
import numpy as np
import pytest
from tests.chuck_jobs import bored, hubbed, spoked, thin_ring, with_bore
from tests.jobs_made import wheel_job

from borewright.answer.held import Grip, Held
from borewright.holding.jaws.jawed import Jaws, bending_keeps, chuck_stiffness, spread_keeps
from borewright.holding.part import Part
from borewright.holding.registry import WAYS
from borewright.job.records import Job
from borewright.mechanics.spread import COUNT, likely
from borewright.reference.library import Tables

TABLES = Tables()

SAME = 1e-9
"""The same sum by another route; no rounding between."""

THICK = 0.12
"""The thick-ring terms of a wall of a fifth of the radius against the thin ring's."""

THIN = 1e-3
"""Shear and the shift of the neutral line, left out of a thin bar, go as (wall / radius)^2."""


def held(way: str, job: Job) -> Held:
    """The first arrangement of this way."""
    return WAYS[way].offer(job, TABLES)[0]


def grip(way: str, job: Job) -> Grip:
    found = held(way, job)
    assert found.grip is not None, found.cannot
    return found.grip


def test_a_hub_holds_what_the_hand_sum_says() -> None:
    """Three jaws of 5000 N, friction 0.18, on 40 mm: 3 x 5000 x 0.18 x 0.020 = 54 N·m."""
    assert likely(grip("three-jaw", hubbed()).torque) == pytest.approx(54.0, rel=SAME)


def test_the_pull_out_of_the_jaws_is_their_friction_and_inwards_they_stand() -> None:
    found = grip("three-jaw", hubbed())
    assert likely(found.thrust_out) == pytest.approx(3 * 5000 * 0.18, rel=SAME)
    assert np.isinf(found.thrust_in).all()
    assert found.torque.shape == (COUNT + 1,)


def test_a_tilt_lifts_it_where_the_force_of_a_jaw_leaves_its_middle_third() -> None:
    """1.5 x 5000 x (15 mm / 6 + 0.18 x 20 mm) = 45.75 N·m."""
    found = grip("three-jaw", hubbed(0.015))
    assert likely(found.tilt) == pytest.approx(1.5 * 5000 * (0.015 / 6 + 0.18 * 0.020), rel=SAME)


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
    assert likely(grip("three-jaw", job).springs) == pytest.approx(
        300 * float(abs(last - first)), rel=THIN
    )


def narrow_stress(force: float, inside: float, outside: float, width: float) -> float:
    """A free thin ring under three jaws by a handbook: 0.189 P R bends it, P / (2 sin 60°) hoops it."""
    wall, radius = (outside - inside) / 2, (outside + inside) / 4
    bending = 6 * 0.189 * force * radius / (width * wall**2)
    return bending + force / (2 * np.sin(np.pi / 3) * wall * width)


def test_a_thin_rim_is_strained_as_a_free_ring_and_the_hand_holds_back() -> None:
    """Iron rims, 100 mm inside: the margin is strength over the handbook's stress, whatever the hand holds back."""
    found = held("three-jaw", spoked())
    assert found.grip is not None
    force = next(f.best for f in found.figures if f.name == "jaw_force")
    assert force < 5000
    tensile = TABLES.material_range("gray-iron-30", "tensile").best
    by_hand = tensile / narrow_stress(force, 0.100, 0.120, 0.040)
    assert likely(found.grip.strength) == pytest.approx(by_hand, rel=THICK)


def test_jaws_that_bear_more_of_the_round_leave_less_of_the_spring() -> None:
    shares = [spread_keeps(Jaws(3, "", bears)) for bears in (0.0, 0.3, 0.6, 0.9, 1.0)]
    assert shares == sorted(shares, reverse=True)
    assert shares[0] == 1.0
    assert shares[-1] == pytest.approx(0.0, abs=1e-9)  # patches that meet leave no lobes


def test_the_share_is_that_of_the_harmonics_of_even_patches() -> None:
    """Odd harmonics of three patches on nine tenths of the round, summed by mpmath."""
    half = mp.mpf("0.9") * mp.pi / 3

    def lobes(spread: bool) -> mp.mpf:
        def term(k: mp.mpf) -> mp.mpf:
            order = 3 * (2 * k + 1)
            share = mp.sin(order * half) / (order * half) if spread else 1
            return share / (order**2 - 1) ** 2

        return mp.fsum(term(mp.mpf(k)) for k in range(4000))

    assert spread_keeps(Jaws(3, "", 0.9)) == pytest.approx(
        float(lobes(True) / lobes(False)), rel=1e-6
    )


def test_the_bending_left_is_that_of_the_same_harmonics() -> None:
    """Half-way between patches on nine tenths of the round, and under a narrow jaw, by mpmath."""
    half = mp.mpf("0.9") * mp.pi / 3

    def bending(at: float, spread: bool) -> mp.mpf:
        def term(k: int) -> mp.mpf:
            order = 3 * k
            share = mp.sin(order * half) / (order * half) if spread else 1
            return share / (order**2 - 1) * mp.cos(order * at)

        return mp.fsum(term(k) for k in range(1, 6000))

    gap = mp.pi / 3
    share = max(abs(bending(0, True)), abs(bending(gap, True))) / abs(bending(0, False))
    assert bending_keeps(Jaws(3, "", 0.9)) == pytest.approx(float(share), rel=1e-3)


def test_three_bolts_hold_what_the_hand_sum_says() -> None:
    """M8, 200 MPa on 0.74 of π/4 8² = 7440 N each; friction 0.12, ring 100 to 108 mm, uniform wear."""
    each = 200e6 * 0.74 * math.pi / 4 * 0.008**2
    ring = thin_ring()
    open_ = replace(ring.work.finished, tolerance=1e-3)
    stout = replace(ring, work=replace(ring.work, finished=open_))
    assert likely(grip("endwise", stout).torque) == pytest.approx(
        0.12 * 3 * each * (0.108 + 0.100) / 4, rel=1e-6
    )


def test_a_close_ring_is_bolted_only_as_hard_as_its_size_bears() -> None:
    """A twentieth of 20 µm is 1 µm: σ = 1 µm E / (ν 113 mm) on the whole face of 100 to 113 mm."""
    modulus, nu = (TABLES.material_range("al-6061-t6", q).best for q in ("modulus", "poisson"))
    force = 1e-6 * modulus / (nu * 0.113) * math.pi / 4 * (0.113**2 - 0.1**2)
    found = grip("endwise", thin_ring())
    assert likely(found.torque) == pytest.approx(0.12 * force * (0.108 + 0.100) / 4, rel=1e-6)
    assert likely(found.springs) == pytest.approx(1e-6)


def test_bar_is_held_by_friction_both_ways() -> None:
    """3 x 5000 x 0.18 on 63 mm: 85.05 N·m, and 2700 N along either way."""
    job = with_bore(wheel_job(), bored("drilled", 0.016))
    found = grip("one-chucking", job)
    assert likely(found.torque) == pytest.approx(85.05, rel=SAME)
    assert likely(found.thrust_in) == likely(found.thrust_out) == pytest.approx(2700.0)


def test_four_jaws_hold_what_the_hand_sum_says() -> None:
    """4 x 7000 x 0.18 x 0.020 = 100.8 N·m; independent screws pull harder than a scroll."""
    assert likely(grip("four-jaw", hubbed()).torque) == pytest.approx(100.8, rel=1e-9)


def test_a_chuck_gives_more_the_farther_out_the_tool_is() -> None:
    """1 / (1 / 30 MN/m + 0.05² / 60 kN·m) by hand: 13.33 MN/m."""
    part = Part(hubbed(), TABLES)
    assert chuck_stiffness(part, 0.05) == pytest.approx(1 / (1 / 30e6 + 0.0025 / 60e3), rel=1e-9)
