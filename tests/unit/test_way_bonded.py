"""Bonding: shear on faces and in gaps against sums by hand, weight, warmth, what nothing sticks to."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import quad
from tests.held_ways import figures_of, grip_of, inputs_of
from tests.jobs_made import wheel_job

from borewright.answer.held import Held
from borewright.answer.records import Have
from borewright.holding.ways.bonded import Bonded
from borewright.job import Job
from borewright.job.interrupted import Chamfers, Spokes
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables

TABLES = Tables()
SAME = 1e-9
"""Sums written out again: rounding only."""


def offered(job: Job) -> dict[str, Held]:
    """By what sticks it."""
    return {h.tool.partition(" on a ")[0]: h for h in Bonded().offer(job, TABLES)}


def thin_ring() -> Job:
    return wheel_job(bore=0.100, outside=0.112, length=0.008)


def test_a_thin_ring_is_stuck_and_nothing_springs_it() -> None:
    glued = offered(thin_ring())["super glue"]
    grip = grip_of(glued)
    assert likely(grip.springs) == 0.0
    assert np.all(np.isinf(grip.strength))
    assert glued.fit is not None
    assert glued.fit.margin > 1
    assert not glued.to_buy


def test_the_face_gives_first_at_its_edge_as_an_integral_says() -> None:
    """Shear grows with the radius to the strength at the edge: M is the integral of r tau dA."""
    figure = figures_of(offered(thin_ring())["super glue"])["bond_torque"]
    given = inputs_of(figure)
    edge = given["ring, outside"] / 2
    moment, _ = quad(
        lambda r: given["shear"] * r / edge * r * 2 * math.pi * r,
        given["ring, inside"] / 2,
        edge,
    )
    assert figure.best == pytest.approx(moment, rel=1e-7)


def test_a_gap_carries_its_area_at_its_radius() -> None:
    stuck = offered(wheel_job())["retaining compound"]
    figure = figures_of(stuck)["bond_torque"]
    given = inputs_of(figure)
    area = math.pi * given["bore"] * given["length"]
    assert figure.best == pytest.approx(given["shear"] * area * given["bore"] / 2, rel=SAME)
    assert likely(grip_of(stuck).thrust_out) == pytest.approx(given["shear"] * area, rel=SAME)


def test_a_gap_stands_a_tilt_as_an_integral_says() -> None:
    """Shear along the bore that goes as the cosine round it, at most the strength."""
    stuck = offered(wheel_job())["retaining compound"]
    shear = inputs_of(figures_of(stuck)["bond_torque"])["shear"]
    radius, length = 0.016006 / 2, 0.025
    moment, _ = quad(
        lambda a: shear * math.cos(a) * radius * math.cos(a) * radius * length, 0, 2 * math.pi
    )
    assert likely(grip_of(stuck).tilt) == pytest.approx(moment, rel=1e-9)


def test_a_bond_is_far_weaker_against_peel_than_against_turning() -> None:
    grip = grip_of(offered(thin_ring())["super glue"])
    assert np.all(grip.tilt < 0.5 * grip.torque)
    assert np.all(np.isfinite(grip.thrust_out))


def test_wax_holds_less_and_softens_sooner_than_glue() -> None:
    found = offered(thin_ring())
    wax, glue = (grip_of(found[k]) for k in ("shellac or sealing wax", "super glue"))
    assert likely(wax.torque) < likely(glue.torque) / 3
    assert likely(wax.half_warm) < likely(glue.half_warm)


def test_a_chamfer_takes_its_share_of_the_face() -> None:
    plain = thin_ring()
    bevelled = replace(plain, work=replace(plain.work, chamfers=Chamfers(0.002, 0.002)))
    a, b = (grip_of(offered(job)["super glue"]) for job in (plain, bevelled))
    assert np.all(b.torque < a.torque)


def fit_margin(job: Job) -> float:
    fit = offered(job)["super glue"].fit
    assert fit is not None
    return fit.margin


def test_light_work_is_trusted_to_a_face_heavy_work_with_care_and_a_heavy_disc_not() -> None:
    care, yes = TABLES.threshold("fits").care_likely, TABLES.threshold("fits").yes_likely
    heavy = wheel_job(outside=0.08, length=0.03, material="steel-1018")
    disc = wheel_job(outside=0.25, length=0.02, material="steel-1018")
    assert fit_margin(thin_ring()) >= yes
    assert care <= fit_margin(heavy) < yes
    assert fit_margin(disc) < care


def test_spokes_and_castings_knock_a_bond_so_it_is_never_more_than_with_care() -> None:
    light = wheel_job(outside=0.03, length=0.01)
    cast = replace(light, work=replace(light.work, blank="casting"))
    spoked = replace(light, work=replace(light.work, spokes=Spokes(5, 0.003, 0.003)))
    assert fit_margin(light) >= 1
    assert fit_margin(cast) < 1
    assert fit_margin(spoked) < 1


def test_the_heat_that_frees_retaining_compound_spoils_aged_aluminium_and_not_iron() -> None:
    """Some 250 C against 180 C, both over a room of 20."""
    alu = offered(wheel_job())["retaining compound"].effort
    iron = offered(wheel_job(material="gray-iron-30"))["retaining compound"].effort
    assert alu is not None
    assert iron is not None
    assert alu.margin == pytest.approx((180 - 20) / (250 - 20), rel=1e-6)
    assert iron.margin > 1


def test_super_glue_is_at_hand_wax_and_compound_are_bought() -> None:
    found = offered(wheel_job())
    assert not found["super glue"].to_buy
    for word in ("shellac or sealing wax", "retaining compound"):
        assert [n.have for n in found[word].to_buy] == [Have.BUY]


@pytest.mark.parametrize("material", ["ptfe", "nylon-6", "hardwood-maple"])
def test_nothing_sticks_to_plastics_that_lets_go_again(material: str) -> None:
    (only,) = Bonded().offer(wheel_job(material=material), TABLES)
    assert only.grip is None
    assert "sticks" in only.cannot


def test_a_bore_too_large_for_a_stub_is_stuck_by_its_face_only() -> None:
    assert set(offered(thin_ring())) == {"super glue", "shellac or sealing wax"}


def test_unlike_metals_that_warm_together_tear_a_wide_film_and_like_ones_do_not() -> None:
    """Aluminium on steel, 50 K, 55 mm out over a film of 0.05 mm: (23.1 - 11.5) e-6 x 50 x 1.1e3."""
    alu, iron = thin_ring(), wheel_job(bore=0.1, outside=0.112, length=0.008, material="steel-1018")
    said = [n for n in offered(alu)["super glue"].notes if "film" in n]
    assert len(said) == 1
    assert "64%" in said[0]
    assert not [n for n in offered(iron)["super glue"].notes if "film" in n]
