"""Between cones: what the headstock's cone drives by hand, the stud, the mouths, what it needs."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import turning, wheel_job

from borewright.answer.held import Held
from borewright.answer.held_picture import HeldRing, Role
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


def cones_of(job: Job) -> list[HeldRing]:
    picture = held(job).picture
    assert picture is not None
    return [r for r in picture.rings if r.role is Role.CENTER]


@pytest.mark.parametrize("length", [0.0065, 0.01905, 0.05, 0.2])
@pytest.mark.parametrize("bore", [0.008, 0.011, 0.02, 0.0445])
def test_cones_never_pass_through_each_other(length: float, bore: float) -> None:
    """Slope of 30 degrees on each side, so that what is cut off is seen in the sizes."""
    head, tail = cones_of(wheel_job(outside=0.08, length=length, bore=bore))
    assert head.end < tail.start
    assert tail.start - head.end >= 0.002 - 1e-12
    assert head.outer_end == pytest.approx(tail.outer)
    assert bore / 2 - head.outer_end == pytest.approx(head.end / 3**0.5, abs=1e-9)


def test_the_points_are_cut_off_in_words_where_the_two_would_meet() -> None:
    """Mouths of 44.5 mm want 38.5 mm each to a point; 19 mm of work leaves 8.5 mm each."""
    found = held(wheel_job(outside=0.08, length=0.019, bore=0.0445))
    said = " ".join(s.text for s in found.mount)
    assert "Cut the points off" in said
    assert "8.5 mm" in said
    assert "would meet" in said
    assert "would meet" not in " ".join(s.text for s in held(pipe()).mount)


def test_a_small_but_short_bore_wants_its_points_off_too() -> None:
    """11 mm to a point is 9.5 mm at each end: 25 mm of work has room for it, 15 mm has not."""
    assert held(wheel_job(bore=0.011, length=0.025)).making == 0
    assert held(wheel_job(bore=0.011, length=0.015)).making > 0


def test_work_too_thin_for_two_cones_is_refused() -> None:
    """2 mm in each mouth and 2 mm between them: 6 mm is just enough."""
    assert not held(wheel_job(outside=0.08, length=0.00601, bore=0.03)).cannot
    assert "meet inside" in held(wheel_job(outside=0.08, length=0.00599, bore=0.03)).cannot


@pytest.mark.parametrize("lacks", ["bar", "top slide", "indicator", "three-jaw chuck"])
def test_a_shop_that_lacks_what_cones_are_made_with_must_buy_it(lacks: str) -> None:
    job = pipe()
    bare = replace(job, shelf=replace(job.shelf, have_not=(lacks,)))
    assert len(held(bare).to_buy) == 1
    assert not held(job).to_buy
