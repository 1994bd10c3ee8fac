"""A mandrel with shoulder and nut: what it holds by hand sums, what it refuses, what it needs."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.jobs_made import wheel_job

from borewright.answer.held import HEAD_FACE, Held
from borewright.answer.held_picture import Role
from borewright.answer.records import Have
from borewright.holding.ways.nut_mandrel import NutMandrel
from borewright.job.records import BoreReading, Job, Piece
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables

TABLES = Tables()


def held(job: Job) -> Held:
    (only,) = NutMandrel().offer(job, TABLES)
    return only


def test_its_torque_is_that_of_the_shoulder_alone_by_hand() -> None:
    """12 mm nut at 10 kN (2000 N x 12 mm on the wrench, K 0.2); friction 0.12 on a ring 16.006 to
    25.6096 mm, uniform wear: 0.12 x 10 kN x (16.006 + 25.6096) / 4 mm = 12.485 N·m."""
    grip = held(wheel_job()).grip
    assert grip is not None
    assert likely(grip.torque) == pytest.approx(12.4847, rel=1e-4)


def test_what_a_thrust_away_from_the_shoulder_takes_is_the_clamp() -> None:
    grip = held(wheel_job()).grip
    assert grip is not None
    assert likely(grip.thrust_out) == pytest.approx(10e3)
    assert likely(grip.thrust_in) == float("inf")


def test_all_of_the_clearance_counts_in_the_whole_reading() -> None:
    grip = held(wheel_job()).grip
    assert grip is not None
    assert likely(grip.runout) >= TABLES.holding_fact("nut_clearance").best


def test_a_batch_is_fitted_to_its_smallest_bore() -> None:
    job = wheel_job(uncertainty=8e-6)
    many = replace(job, work=replace(job.work, quantity=12))
    one, batch = held(job).grip, held(many).grip
    assert one is not None
    assert batch is not None
    assert likely(batch.runout) > likely(one.runout) + 5e-6


def test_it_is_stiffer_on_a_larger_bore() -> None:
    thin, stout = (held(wheel_job(bore=b)).grip for b in (0.012, 0.024))
    assert thin is not None
    assert stout is not None
    assert stout.stiffness > thin.stiffness


def test_a_worn_bore_a_bore_as_cast_and_a_thin_wall_are_refused_each_for_its_own_reason() -> None:
    worn = wheel_job(
        readings=(BoreReading(0.01, 0.016, "up"), BoreReading(0.01, 0.01615, "across"))
    )
    assert "oval" in held(worn).cannot
    job = wheel_job()
    rough = replace(
        job, work=replace(job.work, bore=replace(job.work.bore, made_by="sand-casting"))
    )
    assert "as cast" in held(rough).cannot
    assert "no face" in held(wheel_job(outside=0.0165)).cannot
    assert "too large" in held(wheel_job(outside=0.2, bore=0.08)).cannot
    assert "too small" in held(wheel_job(bore=0.002)).cannot


def test_the_shoulder_stands_on_the_hub_and_the_rims_faces_are_reached_where_the_hub_stands_proud() -> (
    None
):
    job = wheel_job(bore=0.015)
    hub = Piece(0.0, 0.03, 0.022)
    rim = Piece(0.008, 0.022, 0.08, 0.022)
    proud = held(replace(job, work=replace(job.work, pieces=(hub, rim))))
    assert HEAD_FACE in proud.reaches
    assert not proud.faces_done
    assert "22 mm" in (proud.seat.reason if proud.seat else "")
    plain = held(job)
    assert plain.faces_done
    assert HEAD_FACE not in plain.reaches


def test_it_is_made_and_the_rest_is_what_a_shop_has() -> None:
    needs = held(wheel_job()).needs
    assert [n.have for n in needs].count(Have.MAKE) == 1
    assert held(wheel_job()).making == TABLES.holding_fact("nut_mandrel_making").best
    job = wheel_job()
    without = replace(job, shelf=replace(job.shelf, have_not=("change wheels",)))
    assert [n.have for n in held(without).needs if "thread" in n.what] == [Have.BUY]


def test_a_web_is_warned_of_a_washer_that_reaches_its_rim() -> None:
    job = wheel_job()
    pieces = (
        Piece(0.0, 0.03, 0.03),
        Piece(0.012, 0.018, 0.07, 0.03),
        Piece(0.0, 0.03, 0.08, 0.07),
    )
    notes = held(replace(job, work=replace(job.work, pieces=pieces))).notes
    assert any("dish the web" in n for n in notes)


def test_where_the_hub_lies_back_the_shoulder_reaches_in_to_it() -> None:
    job = wheel_job()
    pieces = (
        Piece(0.004, 0.026, 0.022),
        Piece(0.012, 0.018, 0.07, 0.022),
        Piece(0.0, 0.03, 0.08, 0.07),
    )
    back = held(replace(job, work=replace(job.work, pieces=pieces)))
    assert any("reach in" in n for n in back.notes)
    assert back.picture is not None
    hub = next(r for r in back.picture.rings if r.role is Role.WORK)
    shoulder = max((r for r in back.picture.rings if r.role is Role.MANDREL), key=lambda r: r.outer)
    washer = next(r for r in back.picture.rings if r.role is Role.WASHER)
    assert shoulder.end == pytest.approx(hub.start)
    assert washer.start == pytest.approx(hub.end)
