"""`make` and `plan` say the same of the same work: stub, soft mandrel, plug."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tests.bore_jobs import by_class, route_of
from tests.jobs_made import wheel_job

from borewright.answer.records import Figure
from borewright.holding.bars.between_centers import span_of
from borewright.holding.bars.flatted_bar import flatted_bar
from borewright.holding.bars.stub import Stub
from borewright.holding.part import Part
from borewright.job.records import Job, Piece
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables
from borewright.service.making.bored_work import BoredWork
from borewright.service.making.gauge import make_gauge
from borewright.service.making.soft import make_soft
from borewright.service.making.stub import make_stub

TABLES = Tables()
SAME = 1e-9
JOBS = {
    "16 mm": wheel_job(),
    "inch": replace(wheel_job(bore=0.015878), units="inch"),
    "a bush": wheel_job(outside=0.0286, bore=0.022, length=0.040),
    "25 mm": wheel_job(outside=0.12, bore=0.025, length=0.030),
}
EVERY = pytest.mark.parametrize("job", JOBS.values(), ids=list(JOBS))


def hubbed() -> Job:
    """A wheel with a hub that takes a set screw."""
    job = wheel_job(bore=0.0161)
    pieces = Piece(0.0, 0.012, 0.080), Piece(0.012, 0.026, 0.032)
    return replace(job, work=replace(job.work, pieces=pieces))


def turned_down(size: float, job: Job) -> float:
    """The plan's size at the next 32nd of an inch or half millimetre below, as a shop turns it."""
    step = 0.0254 / 32 if job.units == "inch" else 0.0005
    return step * math.floor(round(size / step, 6))


@EVERY
def test_the_stub_is_the_plans_stub(job: Job) -> None:
    made = make_stub(BoredWork(job), TABLES).numbers
    part = Part(job, TABLES)
    planned = Stub(part, max("BA", key=lambda face: part.ring_at(face).outside))
    assert made["screw_diameter_m"] == planned.thread
    assert made["shoulder_diameter_m"] == pytest.approx(
        turned_down(planned.shoulder, job), rel=SAME
    )
    assert made["washer_outside_m"] == pytest.approx(turned_down(planned.washer, job), rel=SAME)
    assert made["shoulder_thickness_m"] == planned.before_work
    assert made["spigot_length_m"] == pytest.approx(planned.length, rel=SAME)
    assert made["overhang_m"] == pytest.approx(planned.overhang, rel=SAME)
    assert made["stiffness_N_per_m"] == pytest.approx(planned.stiffness(), rel=SAME)
    assert part.bore - made["spigot_diameter_m"] == pytest.approx(
        likely(planned.clearance), abs=1e-12
    )
    assert made["feed_1_in_10_angle_rad"] == pytest.approx(planned.angle, rel=1e-6)


@EVERY
def test_the_soft_bar_is_as_long_as_the_plans(job: Job) -> None:
    made = make_soft(BoredWork(job), TABLES).numbers
    part = Part(job, TABLES)
    past = (span_of(part, part.length) - part.length) / 2
    step = 0.0254 / 32 if job.units == "inch" else 0.0005
    cut = step * math.ceil(round(past / step, 6))  # as a shop cuts it
    assert made["whole_length_m"] == pytest.approx(part.length + 2 * cut, rel=SAME)


def test_the_bar_as_drawn_is_the_plans_bar_with_its_screw_and_flat() -> None:
    job = hubbed()
    made = make_soft(BoredWork(job), TABLES, as_drawn=True).numbers
    planned = flatted_bar(Part(job, TABLES))
    assert planned is not None
    assert made["bar_diameter_m"] == planned.nominal
    assert made["set_screw_diameter_m"] == planned.screw.diameter
    assert made["flat_depth_m"] == pytest.approx(planned.flat, rel=SAME)
    assert made["runout_m"] == pytest.approx(likely(planned.clearance), rel=1e-6)


@pytest.mark.parametrize("text", ["28 H8", "25 H9", "40 H9"])
def test_the_stepped_plug_has_the_plans_steps_where_the_shop_can_make_them_apart(text: str) -> None:
    asked = by_class(text)
    route = route_of(asked)
    assert route is not None
    planned: list[Figure] = list(route.plug_steps)
    made = make_gauge(BoredWork(asked[0]), TABLES, stepped=True).numbers
    steps = [made[f"step_{k}_m"] for k in range(1, int(made["steps"]) + 1)]
    assert steps == pytest.approx([f.best for f in planned], abs=1e-9)
    assert made["smallest_bore_m"] == pytest.approx(planned[0].best, abs=1e-12)
    assert made["largest_bore_m"] == pytest.approx(planned[-1].best, abs=1e-12)
