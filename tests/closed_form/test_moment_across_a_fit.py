"""A moment across a close fit, against the integral of its pressure; what a part makes of it."""

from __future__ import annotations

from dataclasses import replace

import mpmath as mp
import numpy as np
import pytest
from tests.jobs_made import wheel_job

from borewright.errors import OutsideModel
from borewright.holding.close_fit import fit_tilt, fitted_length
from borewright.holding.part import Part
from borewright.holding.ways.gang import Gang
from borewright.holding.ways.nut_mandrel import NutMandrel
from borewright.holding.ways.soft_mandrel import SoftMandrel
from borewright.holding.ways.turned_stub import TurnedStub
from borewright.job.records import Job
from borewright.mechanics.fitted_moment import lean, moment_of_fit
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables

TABLES = Tables()
SAME = 1e-12


@pytest.mark.parametrize(("p", "d", "length"), [(6e6, 0.02, 0.03), (90e6, 0.025, 0.16)])
def test_the_moment_is_the_integral_of_a_pressure_that_grows_to_both_ends(
    p: float, d: float, length: float
) -> None:
    """Projected pressure p (2 z / L) on a width d, z from the middle, times its arm z."""
    half = mp.mpf(length) / 2
    by_integral = mp.quad(lambda z: p * (z / half) * d * z, [-half, half])
    assert moment_of_fit(p, d, length) == pytest.approx(float(by_integral), rel=SAME)


def test_twice_the_length_takes_four_times_the_moment_and_leans_half_as_far() -> None:
    assert moment_of_fit(1e6, 0.02, 0.06) == pytest.approx(4 * moment_of_fit(1e6, 0.02, 0.03))
    assert lean(5e-6, 0.06) == pytest.approx(lean(5e-6, 0.03) / 2)


@pytest.mark.parametrize("bad", [(0.0, 0.02, 0.03), (1e6, -1.0, 0.03), (1e6, 0.02, 0.0)])
def test_nothing_that_is_not_a_fit_is_answered(bad: tuple[float, float, float]) -> None:
    with pytest.raises(OutsideModel):
        moment_of_fit(*bad)


def sleeve(length: float = 0.16) -> Job:
    return wheel_job(outside=0.042, length=length, bore=0.02502, material="steel-1018")


def test_a_part_takes_a_quarter_of_its_yield_over_four_fifths_of_its_length_by_hand() -> None:
    part = Part(sleeve(), TABLES)
    strength = TABLES.material_range("steel-1018", "yield").best
    assert fitted_length(part) == pytest.approx(0.128)
    by_hand = strength / 4 * 0.02502 * 0.128**2 / 6
    assert likely(fit_tilt(part)) == pytest.approx(by_hand, rel=1e-9)


def test_a_thin_disc_relies_on_its_clamp() -> None:
    """Four fifths of 15.6 mm are just less than half of a bore of 25.02 mm; of 15.7 mm, more."""
    thin, thick = (Part(sleeve(length), TABLES) for length in (0.0156, 0.0157))
    assert not fit_tilt(thin).any()
    assert fit_tilt(thick).all()


@pytest.mark.parametrize("way", [NutMandrel(), TurnedStub(), SoftMandrel()])
def test_a_long_sleeve_does_not_rock_where_it_fits(way: NutMandrel) -> None:
    """A cut of 500 N across at the end of 160 mm is 80 N·m: no way lets that tilt it."""
    grip = way.offer(sleeve(), TABLES)[0].grip
    assert grip is not None
    assert np.quantile(grip.tilt, 0.05) > 5 * 80
    short = way.offer(sleeve(0.02), TABLES)[0].grip
    assert short is not None
    assert likely(short.tilt) < likely(grip.tilt)


def test_every_blank_of_a_gang_stands_by_clamp_or_fit_whichever_is_more() -> None:
    job = wheel_job(length=0.004)
    many = replace(job, work=replace(job.work, quantity=6))
    for held in Gang().offer(many, TABLES):
        assert held.grip is not None
        assert not fit_tilt(Part(many, TABLES)).any()
        assert likely(held.grip.tilt) > 0
