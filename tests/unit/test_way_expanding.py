"""The expanding mandrel: what a push becomes in the bore, what springs, what it covers."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from tests.held_ways import figures_of, grip_of, inputs_of
from tests.jobs_made import wheel_job

from borewright.answer.held import HEAD_FACE, Held
from borewright.answer.records import Have
from borewright.holding.ways.expanding import Expanding
from borewright.job import Job
from borewright.job.records import BoreReading, Finished
from borewright.job.tools import OwnHolding
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables

TABLES = Tables()
SAME = 1e-9
"""Sums written out again: rounding only."""


def held(job: Job) -> Held:
    (only,) = Expanding().offer(job, TABLES)
    return only


def owning(job: Job, smallest: float, largest: float) -> Job:
    own = OwnHolding("expansion mandrel", "the expander", smallest, largest)
    return replace(job, shelf=replace(job.shelf, holding=(own,)))


def ring(wall: float, tolerance: float | None = None) -> Job:
    job = wheel_job(bore=0.040, outside=0.040 + 2 * wall, length=0.03)
    return replace(job, work=replace(job.work, finished=Finished(tolerance=tolerance)))


def test_the_radial_force_is_the_wedge_by_hand_less_what_opens_the_sleeve() -> None:
    """R sin a + mu R cos a is the push, R cos a - mu R sin a presses outward."""
    figure = figures_of(held(wheel_job()))["sleeve_normal"]
    given = inputs_of(figure)
    lean, mu = math.atan(given["cone"] / 2), given["friction on the cone"]
    on_slope = given["push"] / (math.sin(lean) + mu * math.cos(lean))
    outward = on_slope * (math.cos(lean) - mu * math.sin(lean))
    assert figure.best == pytest.approx(outward - given["opens the sleeve"], rel=SAME)
    assert given["cone"] == 0.0625  # one sixteenth in an inch, as the trade makes them


def test_the_pressure_is_the_force_over_the_bore_that_the_sleeve_fills() -> None:
    figure = figures_of(held(wheel_job()))["bore_pressure"]
    given = inputs_of(figure)
    area = math.pi * given["bore"] * given["length pressed"]
    assert figure.best == pytest.approx(given["normal force"] / area, rel=SAME)


def test_in_long_work_only_what_the_sleeve_fills_is_pressed() -> None:
    """Twice the bore, but 35 mm at least: the shop's small sleeves are long for their bore."""
    found = figures_of(held(wheel_job(length=0.090)))["bore_pressure"]
    given = inputs_of(found)
    assert given["length pressed"] == pytest.approx(0.035)
    by_hand = given["normal force"] / (math.pi * given["bore"] * 0.035)
    assert found.best == pytest.approx(by_hand, rel=SAME)


def test_the_growth_is_that_of_a_thick_ring_by_hand() -> None:
    """Lame: 2 p d^2 D / (E (D^2 - d^2)) on the outside."""
    job = ring(0.010)
    found = figures_of(held(job))
    p, d, outside = found["bore_pressure"].best, 0.040, 0.060
    modulus = TABLES.material_range("al-6061-t6", "modulus").best
    growth = 2 * p * d**2 * outside / (modulus * (outside**2 - d**2))
    assert found["work_growth"].best == pytest.approx(growth, rel=SAME)


def test_thinner_work_never_springs_less_at_the_same_push() -> None:
    loose = [ring(wall, tolerance=1.0) for wall in (0.020, 0.010, 0.006, 0.0025, 0.0015)]
    found = [grip_of(held(job)) for job in loose]
    pushed = [figures_of(held(job))["sleeve_normal"].best for job in loose]
    per_force = [likely(g.springs) / n for g, n in zip(found, pushed, strict=True)]
    assert per_force == sorted(per_force)


def test_thin_work_is_pushed_no_harder_than_its_size_bears() -> None:
    close, open_ = held(ring(0.002, tolerance=10e-6)), held(ring(0.002, tolerance=1.0))
    assert likely(grip_of(close).springs) == pytest.approx(5e-6, rel=0.02)
    assert likely(grip_of(close).torque) < likely(grip_of(open_).torque)
    assert close.effort is not None
    assert "spring" in close.effort.reason


def test_the_torque_is_never_more_than_friction_on_the_bore_gives() -> None:
    grip = grip_of(held(wheel_job()))
    assert np.all(grip.torque <= grip.thrust_in * 0.016006 / 2 * (1 + 1e-12))


def test_a_sleeve_opened_less_stands_more() -> None:
    near, far = owning(wheel_job(), 0.0158, 0.0175), owning(wheel_job(), 0.0145, 0.0161)
    tight, wide = held(near).fit, held(far).fit
    assert tight is not None
    assert wide is not None
    assert tight.margin > 2 * wide.margin


def test_it_is_bought_unless_one_that_takes_the_bore_is_owned() -> None:
    assert [n.have for n in held(wheel_job()).to_buy] == [Have.BUY]
    assert not held(owning(wheel_job(), 0.0155, 0.0175)).to_buy
    assert held(owning(wheel_job(), 0.0205, 0.0225)).to_buy


def test_the_strength_of_brittle_work_counts_its_tension() -> None:
    job = wheel_job(material="gray-iron-30")
    found = held(job)
    p = figures_of(found)["bore_pressure"].best
    d, outside = 0.016006, 0.063
    tension = p * (outside**2 + d**2) / (outside**2 - d**2)
    strength = TABLES.material_range("gray-iron-30", "tensile").best
    assert likely(grip_of(found).strength) == pytest.approx(strength / tension, rel=SAME)
    assert found.presses_bore


def test_long_work_is_not_filled_and_short_work_rocks() -> None:
    plain, long, short = (held(wheel_job(length=x)).seat for x in (0.025, 0.090, 0.003))
    assert plain is not None
    assert long is not None
    assert short is not None
    assert plain.margin >= 1
    assert long.margin < 1
    assert short.margin < 1


def test_both_faces_are_reached_between_centers() -> None:
    assert HEAD_FACE in held(wheel_job()).reaches


@pytest.mark.parametrize(
    ("job", "said"),
    [
        (wheel_job(bore=0.15, outside=0.3), "No usual expanding mandrel"),
        (wheel_job(bore=0.005, outside=0.02), "No usual expanding mandrel"),
        (
            wheel_job(readings=(BoreReading(0.01, 0.016, "x"), BoreReading(0.01, 0.0162, "y"))),
            "oval",
        ),
    ],
)
def test_what_it_cannot_hold_is_told(job: Job, said: str) -> None:
    found = held(job)
    assert found.grip is None
    assert said in found.cannot


def test_a_bore_as_cast_is_bored_first() -> None:
    job = wheel_job(material="gray-iron-30")
    rough = replace(job.work, bore=replace(job.work.bore, made_by="as-cast"))
    assert "as cast" in held(replace(job, work=rough)).cannot


def test_an_owner_who_has_a_larger_one_than_is_usual_is_not_told_that_there_is_none() -> None:
    large = wheel_job(bore=0.12, outside=0.25, length=0.1)
    assert "No usual" in held(large).cannot
    found = held(owning(large, 0.115, 0.125))
    assert found.grip is not None
    assert not found.to_buy
