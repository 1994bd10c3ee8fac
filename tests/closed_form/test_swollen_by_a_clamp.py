"""A ring swollen by a clamp on its faces: Hooke where it is even, Lamé and reciprocity where not."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import wheel_job

from borewright.errors import OutsideModel
from borewright.holding.faces.clamped import clamped
from borewright.holding.part import Part
from borewright.holding.ways.collet_stub import ColletStub
from borewright.holding.ways.nut_mandrel import NutMandrel
from borewright.holding.ways.turned_stub import TurnedStub
from borewright.job.records import Finished, Job
from borewright.mechanics.axial_swell import force_for_swell, swell
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables

TABLES = Tables()
SAME = 1e-12
BRASS, NU = 97e9, 0.33


def test_an_even_pressure_swells_it_by_hooke() -> None:
    """10 kN on 19.05 to 22.6 mm is 86.1 MPa; 0.33 of that over 97 GPa, of 22.6 mm: 6.62 µm."""
    area = np.pi * (22.6e-3**2 - 19.05e-3**2) / 4
    by_hand = NU * 10e3 / area / BRASS * 22.6e-3
    assert swell(10e3, 19.05e-3, 22.6e-3, BRASS, NU) == pytest.approx(by_hand, rel=SAME)
    assert by_hand == pytest.approx(6.62e-6, rel=0.001)


def test_wherever_the_force_presses_reciprocity_with_a_pulled_ring_gives_the_same() -> None:
    """Pull q at the outside: by Lamé it shortens along the axis alike at every radius, so any clamp F
    does F x that shortening of work, and that equals q x the outer surface x its radial growth."""
    inner, outer, length, pull, force = 0.010, 0.030, 0.012, 1e6, 8e3
    radius = np.linspace(inner, outer, 7)
    share = pull * outer**2 / (outer**2 - inner**2)
    radial, hoop = share * (1 - (inner / radius) ** 2), share * (1 + (inner / radius) ** 2)
    shortening = NU * (radial + hoop) / BRASS * length
    assert np.ptp(shortening) < 1e-12 * shortening[0]
    growth = force * shortening[0] / (pull * 2 * np.pi * outer * length)
    assert swell(8e3, 0.020, 0.060, BRASS, NU) == pytest.approx(2 * growth, rel=SAME)


def test_there_and_back() -> None:
    force = force_for_swell(1.2e-6, 0.02, 0.03, BRASS, NU)
    assert swell(force, 0.02, 0.03, BRASS, NU) == pytest.approx(1.2e-6, rel=SAME)


@pytest.mark.parametrize("bad", [(-1.0, 0.02, 0.03), (1.0, 0.03, 0.03), (1.0, -0.01, 0.03)])
def test_no_ring_and_no_clamp_are_refused(bad: tuple[float, float, float]) -> None:
    with pytest.raises(OutsideModel):
        swell(*bad, BRASS, NU)


def bush(tolerance: float | None = 25e-6, outside: float = 0.0226) -> Job:
    job = wheel_job(outside=outside, length=0.032, bore=0.01906, material="brass-c360")
    return replace(job, work=replace(job.work, finished=Finished(tolerance=tolerance)))


@pytest.mark.parametrize("way", [NutMandrel(), TurnedStub(), ColletStub()])
def test_a_thin_bush_is_snugged_by_its_tolerance_and_says_so(way: NutMandrel) -> None:
    held = way.offer(bush(), TABLES)[0]
    assert held.grip is not None
    assert held.effort is not None
    assert likely(held.grip.springs) == pytest.approx(0.05 * 25e-6, rel=1e-6)
    assert likely(held.grip.strength) >= 4 * (1 - 1e-9)
    assert held.effort.reason.startswith("Snug")
    assert "swell" in held.effort.reason


def test_a_stout_wheel_is_clamped_by_an_ordinary_wrench_as_ever() -> None:
    held = NutMandrel().offer(wheel_job(), TABLES)[0]
    assert held.effort is not None
    assert held.effort.reason.startswith("An ordinary wrench does it")


def test_an_open_tolerance_never_clamps_less_and_a_close_one_no_less_than_what_nobody_measures() -> (
    None
):
    forces = []
    for tolerance in (1e-6, 5e-6, 10e-6, 20e-6, 50e-6, 1e-3):
        part = Part(bush(tolerance), TABLES)
        forces.append(likely(clamped(part, 0.016, 0.01906, 0.0218).force))
    assert forces == sorted(forces)
    assert forces[0] == forces[1]
    assert forces[1] < forces[3] < forces[-1]


def test_a_narrow_face_is_not_bruised() -> None:
    """A tolerance that allows any swelling leaves the face: a quarter of what it stands."""
    held = NutMandrel().offer(bush(1e-3), TABLES)[0]
    assert held.grip is not None
    assert held.effort is not None
    assert likely(held.grip.strength) == pytest.approx(4.0)
    assert "bruise" in held.effort.reason
