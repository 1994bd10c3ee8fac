"""The same stub in a collet: it goes back true, is small, and slips where the collet does."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import wheel_job

from borewright.answer.held import Held
from borewright.answer.records import Have
from borewright.holding.ways.collet_stub import ColletStub
from borewright.holding.ways.turned_stub import TurnedStub
from borewright.job import Job
from borewright.job.tools import OwnHolding
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables

TABLES = Tables()
SAME = 1e-9
"""Sums written out again: rounding only."""


def held(job: Job) -> Held:
    (only,) = ColletStub().offer(job, TABLES)
    return only


def owning(job: Job, largest: float | None = 0.026, kind: str = "collets") -> Job:
    return replace(job, shelf=replace(job.shelf, holding=(OwnHolding(kind, largest=largest),)))


def test_collets_are_bought_unless_owned() -> None:
    assert [n.have for n in held(wheel_job()).to_buy] == [Have.BUY]
    assert not held(owning(wheel_job())).to_buy
    assert held(owning(wheel_job(), largest=None)).to_buy == ()


def test_the_collet_slips_at_friction_on_its_wedge_by_hand() -> None:
    """Balance on the slope: R (sin a + mu cos a) is the pull, R (cos a - mu sin a) presses in."""
    found = held(wheel_job())
    figure = next(f for f in found.figures if f.name == "collet_torque")
    given = {i.label: i.value for i in figure.inputs}
    lean, mu = math.atan(given["cone"] / 2), given["friction"]
    on_slope = given["pull on the collet"] / (math.sin(lean) + mu * math.cos(lean))
    inward = on_slope * (math.cos(lean) - mu * math.sin(lean))
    assert figure.best == pytest.approx(mu * inward * given["shank"] / 2, rel=SAME)


def test_the_hold_is_the_weaker_of_clamp_and_collet() -> None:
    (in_chuck,) = TurnedStub().offer(wheel_job(), TABLES)
    in_collet = held(wheel_job())
    assert in_chuck.grip is not None
    assert in_collet.grip is not None
    collet = next(f for f in in_collet.figures if f.name == "collet_torque")
    assert np.all(in_collet.grip.torque <= in_chuck.grip.torque)
    assert likely(in_collet.grip.torque) == pytest.approx(
        min(likely(in_chuck.grip.torque), collet.best)
    )


def test_where_the_screw_bites_and_the_collet_is_pulled_weakly_the_collet_counts() -> None:
    large = wheel_job(bore=0.024, outside=0.09)
    (in_chuck,) = TurnedStub().offer(large, TABLES)
    in_collet = held(large)
    assert in_chuck.grip is not None
    assert in_collet.grip is not None
    weaker = in_collet.grip.torque < in_chuck.grip.torque
    assert 0.05 < weaker.mean() < 0.95


def test_it_goes_back_less_true_than_a_stub_that_never_moved() -> None:
    (in_chuck,) = TurnedStub().offer(wheel_job(), TABLES)
    back = held(wheel_job())
    assert in_chuck.grip is not None
    assert back.grip is not None
    assert likely(in_chuck.grip.runout) < likely(back.grip.runout) < 15e-6


def test_the_owners_collets_say_how_large_a_stub_may_be() -> None:
    large = wheel_job(bore=0.030, outside=0.09)
    assert "larger than a collet takes" in held(large).cannot
    assert not held(owning(large, 0.040)).cannot
    assert "larger than a collet takes" in held(owning(wheel_job(), 0.012)).cannot


def test_a_shank_as_large_as_the_collets_allow_carries_a_wider_shoulder() -> None:
    found = held(owning(wheel_job(bore=0.020, outside=0.06), 0.022))
    shank = next(f for f in found.figures if f.name == "collet_torque").inputs[-1]
    assert (shank.label, shank.value) == ("shank", 0.022)


def test_collets_are_known_by_any_name_the_table_has_for_them() -> None:
    assert "larger than a collet takes" in held(owning(wheel_job(), 0.012, "Collet Set")).cannot
    assert not held(owning(wheel_job(), 0.012, "soft jaws")).cannot
