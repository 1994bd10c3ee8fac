"""The stub turned in the chuck: sizes, angle, stops, the tailstock, and who is sent elsewhere."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import wheel_job

from borewright.answer.held import Held
from borewright.answer.records import Figure, Have
from borewright.holding.ways.turned_stub import TurnedStub
from borewright.job import Job
from borewright.job.interrupted import Chamfers
from borewright.job.records import BoreReading, Finished
from borewright.mechanics.beam import Bar, round_step
from borewright.mechanics.overhang import Root, propped_stiffness
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.reference.library import Tables

TABLES = Tables()
SAME = 1e-9
"""Sums written out again: rounding only."""


def offered(job: Job) -> tuple[Held, ...]:
    return TurnedStub().offer(job, TABLES)


def figures(held: Held) -> dict[str, Figure]:
    stepped = (f for s in held.mount for f in s.figures)
    return {f.name: f for f in (*held.figures, *stepped)}


def inputs(figure: Figure) -> dict[str, float]:
    return {i.label: i.value for i in figure.inputs}


def test_the_size_to_turn_is_the_bore_less_a_sliding_fit_as_wide_as_the_bore_is_known() -> None:
    size = figures(offered(wheel_job(uncertainty=10e-6))[0])["stub_size"]
    given = inputs(size)
    assert size.best == pytest.approx(given["bore"] - given["clearance"], rel=SAME)
    assert size.low is not None
    assert size.high is not None
    assert size.high - size.low > 1.9 * 10e-6
    close = figures(offered(wheel_job(uncertainty=2e-6))[0])["stub_size"]
    assert close.low is not None
    assert close.low > size.low


@pytest.mark.parametrize("units", ["mm", "inch"])
def test_one_division_of_the_slide_at_the_angle_told_takes_off_the_step_told(units: str) -> None:
    angle = figures(offered(replace(wheel_job(), units=units))[0])["top_slide_angle"]
    given = inputs(angle)
    taken = 2 * given["division of the slide"] * math.sin(angle.best)
    assert taken == pytest.approx(given["step on diameter"], rel=SAME)
    assert 2 < math.degrees(angle.best) < 10  # what a top slide's scale can be set to


def test_the_stops_part_the_length_of_the_work_evenly() -> None:
    """Three steps of taper over 24 mm: one division deeper stops 8 mm from the shoulder, two 16."""
    (held, *_) = offered(wheel_job(length=0.024))
    words = next(s.text for s in held.mount if s.title.startswith("A slight taper"))
    assert "8 mm" in words
    assert "16 mm" in words
    assert "24 mm" not in words


def test_a_short_stub_stands_alone_and_a_long_one_is_offered_with_the_tailstock_too() -> None:
    assert len(offered(wheel_job(length=0.025))) == 1
    alone, helped = offered(wheel_job(length=0.070))
    assert alone.seat is not None
    assert helped.seat is not None
    assert alone.seat.margin < 1 < helped.seat.margin
    assert alone.grip is not None
    assert helped.grip is not None
    assert helped.grip.stiffness > 3 * alone.grip.stiffness
    assert any("tailstock" in n.what for n in helped.needs)


def test_with_the_tailstock_the_weakest_place_along_the_work_counts() -> None:
    """The center holds the far end; midway a thin long stub gives most."""
    _, helped = offered(wheel_job(length=0.150, bore=0.010))
    of = TABLES.material_range
    bend, slide = round_step(0.010, of("steel-1018", "modulus").best, 0.29)
    bar = Bar(np.array([0.0, 0.156]), np.array([bend]), np.array([slide]))
    root, center = Root(6e4, 3e7), TABLES.allowance("center_stiffness").best
    along = [propped_stiffness(bar, x, root, center) for x in np.linspace(0.03, 0.156, 30)]
    assert helped.grip is not None
    assert helped.grip.stiffness == pytest.approx(min(along), rel=0.05)
    assert helped.grip.stiffness < 0.5 * along[-1]


def test_a_longer_stub_is_never_stiffer() -> None:
    found = [offered(wheel_job(length=x))[0].grip for x in (0.01, 0.02, 0.03, 0.05)]
    stiff = [g.stiffness for g in found if g]
    assert stiff == sorted(stiff, reverse=True)


def test_chamfers_take_their_share_of_the_clamped_ring() -> None:
    plain = wheel_job()
    chamfered = replace(plain, work=replace(plain.work, chamfers=Chamfers(0.001, 0.001)))
    (a,), (b,) = offered(plain), offered(chamfered)
    assert a.grip is not None
    assert b.grip is not None
    assert np.all(b.grip.strength < a.grip.strength)


def test_the_torque_is_that_of_a_clamped_ring_by_hand() -> None:
    """Uniform wear on the narrower ring: friction F (D + d) / 4 with F = T / (K thread)."""
    (held,) = offered(wheel_job())
    assert held.grip is not None
    clamp, turn = figures(held)["clamp_force"], figures(held)["face_torque"]
    screw, face = inputs(clamp), inputs(turn)
    force = screw["torque on the wrench"] / (screw["K"] * screw["thread"])
    torque = face["friction"] * force * (face["ring, outside"] + face["ring, inside"]) / 4
    assert likely(held.grip.torque) == pytest.approx(torque, rel=SAME)
    assert face["ring, outside"] == pytest.approx(1.4 * 0.016006)


def test_runout_is_small_and_never_less_than_what_a_stub_turned_in_place_shows() -> None:
    (held,) = offered(wheel_job())
    assert held.grip is not None
    assert 3e-6 < likely(held.grip.runout) < 8e-6
    assert low_end(held.grip.runout) > 0.9e-6
    assert high_end(held.grip.runout) < 16e-6


def oval() -> Job:
    read = BoreReading(0.01, 0.0160, "across"), BoreReading(0.01, 0.0162, "along")
    return wheel_job(readings=read)


def wide_chamfer() -> Job:
    job = wheel_job(outside=0.0176)
    return replace(job, work=replace(job.work, chamfers=Chamfers(0.0009, 0.0)))


@pytest.mark.parametrize(
    ("job", "said"),
    [
        (oval(), "oval"),
        (wheel_job(bore=0.080, outside=0.16), "plate with a spigot"),
        (wheel_job(bore=0.005, outside=0.02), "too small"),
        (wheel_job(length=0.0012), "too thin"),
        (wide_chamfer(), "chamfer"),
    ],
)
def test_what_a_stub_cannot_hold_is_told_in_one_sentence(job: Job, said: str) -> None:
    (held,) = offered(job)
    assert held.grip is None
    assert said in held.cannot


def test_everything_is_on_an_ordinary_shelf_or_made_here() -> None:
    (held,) = offered(wheel_job())
    assert not held.to_buy
    assert held.making > 0
    bare = wheel_job()
    bare = replace(bare, shelf=replace(bare.shelf, have_not=("three-jaw-chuck",)))
    (held,) = offered(bare)
    assert [n.have for n in held.needs if "three-jaw" in n.what] == [Have.BUY]


def test_shoulder_and_washer_stay_inside_of_the_finished_outside() -> None:
    job = wheel_job(bore=0.022, outside=0.030)
    bush = replace(job, work=replace(job.work, finished=Finished(outside=0.0286)))
    (held,) = offered(bush)
    ring = inputs(figures(held)["face_torque"])
    assert ring["ring, outside"] == pytest.approx(0.98 * 0.0286)
