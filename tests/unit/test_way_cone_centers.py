"""Between cones: what the headstock's cone drives by hand, the stud, the mouths, what it needs."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import turning, wheel_job

from borewright.answer.held import Held
from borewright.answer.records import Have, Verdict
from borewright.holding.ways.cone_centers import ConeCenters
from borewright.job.interrupted import Chamfers, Spokes
from borewright.job.records import BoreReading, Job, OwnHolding, Piece
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()


def pipe(chamfer: float = 0.002, length: float = 0.2) -> Job:
    job = wheel_job(outside=0.09, length=length, bore=0.06, material="steel-1018")
    return replace(job, work=replace(job.work, chamfers=Chamfers(chamfer, chamfer)))


def held(job: Job) -> Held:
    return ConeCenters().offer(job, TABLES)[-1]


def test_the_headstocks_cone_drives_by_hand() -> None:
    """1 kN on a 60 degree cone is 2 kN across it; mouth 60 to 64 mm: 0.12 x 2 kN x 31 mm."""
    grip = held(pipe()).grip
    assert grip is not None
    assert likely(grip.torque) == pytest.approx(0.12 * 2000 * 0.031)


def test_either_thrust_unloads_one_cone() -> None:
    grip = held(pipe()).grip
    assert grip is not None
    assert likely(grip.thrust_in) == likely(grip.thrust_out) == pytest.approx(1000.0)


def test_longer_work_is_harder_to_lift_off_and_gives_more() -> None:
    short, long = held(pipe(length=0.4)).grip, held(pipe(length=1.6)).grip
    assert short is not None
    assert long is not None
    assert likely(long.tilt) == pytest.approx(4 * likely(short.tilt))
    assert long.stiffness < short.stiffness


def test_chamfers_cut_with_the_bore_run_truer_than_plain_mouths_and_those_than_rough_ones() -> None:
    plain = pipe(chamfer=0.0)
    rough = replace(
        plain, work=replace(plain.work, bore=replace(plain.work.bore, made_by="drilling"))
    )
    grips = [held(j).grip for j in (pipe(), plain, rough)]
    assert np.all(np.diff([likely(g.runout) for g in grips if g]) > 0)


def test_spokes_are_driven_by_a_stud_and_the_cones_only_carry() -> None:
    """12 mm stud, 12 + 15 mm out, at (50 + 160) / 4 mm: pi 12^3 / 32 = 169.646 mm3 of steel."""
    job = wheel_job(outside=0.19, length=0.03, material="gray-iron-30")
    pieces = (
        Piece(0.0, 0.03, 0.05),
        Piece(0.009, 0.021, 0.16, 0.05),
        Piece(0.0, 0.03, 0.19, 0.16),
    )
    job = replace(job, work=replace(job.work, pieces=pieces, spokes=Spokes(5, 0.022, 0.012)))
    driven, plain = ConeCenters().offer(job, TABLES)
    assert driven.grip is not None
    assert plain.grip is not None
    steel = TABLES.material_range("steel-1018", "yield").best
    stud = steel * 169.646e-9 / 0.027 * 0.0525
    assert likely(driven.grip.torque - plain.grip.torque) == pytest.approx(stud, rel=1e-4)


def test_worn_mouths_are_refused() -> None:
    job = pipe()
    readings = (BoreReading(0.01, 0.06, "up"), BoreReading(0.01, 0.0603, "across"))
    worn = replace(job, work=replace(job.work, bore=replace(job.work.bore, readings=readings)))
    assert "worn" in held(worn).cannot


def test_small_bores_go_on_ordinary_centers_and_large_ones_on_cones_made_or_owned() -> None:
    small = held(wheel_job(bore=0.01))
    assert small.making == 0
    assert held(pipe()).making > 45
    job = pipe()
    owned = replace(job.shelf, holding=(OwnHolding("pipe-center", "bull nose", 0.02, 0.1),))
    needs = held(replace(job, shelf=owned)).needs
    assert next(n for n in needs if n.what == "bull nose").have is Have.OWN


def test_a_pipe_takes_a_light_cut_and_a_heavy_one_slips() -> None:
    def forced(depth: float) -> Verdict:
        job = replace(pipe(), cuts=turning(depth, 0.1e-3), use="cone-centers")
        answer = plan(job, source_tables=TABLES)
        return next(q.verdict for q in answer.questions if q.id == "slip")

    assert forced(0.1e-3) is Verdict.YES
    assert forced(2e-3) is Verdict.NO
