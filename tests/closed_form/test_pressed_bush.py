"""A pressed bush: its sizes by ISO 286, its stresses by Lamé's constants solved by hand here."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.jobs_made import wheel_job

from borewright.job import Keyway
from borewright.job.records import BoreLimits, Job
from borewright.planning.rescue.bush_sums import (
    BushSizes,
    PressedBush,
    bored_out,
    bush_sizes,
    demands_of,
    pressed_bush,
)
from borewright.planning.rescue.case import Case
from borewright.planning.rescue.rescue_job import Reported, case_of
from borewright.reference.library import Tables

TABLES = Tables()
MICROMETRE = 1e-6
TYPED = 1e-9
SOLVED = 1e-9  # two routes in double precision through one linear system


def case(job: Job, bore: float, low: float, high: float) -> Case:
    reported = Reported(size=bore, wanted=BoreLimits(low, high))
    return case_of(job, reported, TABLES)


def wheel(outside: float = 0.063, bore: float = 0.0162, material: str = "al-6061-t6") -> Case:
    return case(wheel_job(outside, material=material), bore, 0.016, 0.016018)


def fitted(found: Case) -> PressedBush:
    return pressed_bush(found, bush_sizes(found), demands_of(found))


def joined_by_lame(fit: PressedBush, interference: float) -> tuple[float, float]:
    """Contact pressure and hoop stress at the hub's bore, from u = A r + B / r in both rings.

    Four unknowns: no stress on the hub's outside and in the bush's bore, equal stress where they
    meet, radial gap closed. Nothing of the package's formulas is used.
    """
    s, hub, bush = fit.sizes, fit.facts.work, fit.facts.mandrel
    c, b, a = s.hub_outside / 2, s.hub_bore / 2, s.as_pressed / 2
    eh, vh = float(np.atleast_1d(hub.modulus)[0]), float(hub.poisson)
    eb, vb = float(np.atleast_1d(bush.modulus)[0]), float(bush.poisson)

    def radial(e: float, v: float, r: float) -> tuple[float, float]:
        return e / (1 - v), -e / (1 + v) / r**2

    rows = [
        [*radial(eh, vh, c), 0, 0],
        [0, 0, *radial(eb, vb, a)],
        [*radial(eh, vh, b), *(-x for x in radial(eb, vb, b))],
        [b, 1 / b, -b, -1 / b],
    ]
    scale = np.array([1e-9, 1e-9, 1e-9, 1.0])
    matrix = np.array(rows, dtype=float) * scale[:, None]
    ah, bh, _, _ = np.linalg.solve(matrix, [0, 0, 0, interference / 2])
    pressure = -(eh / (1 - vh) * ah - eh / (1 + vh) * bh / b**2)
    hoop = eh / (1 - vh) * ah + eh / (1 + vh) * bh / b**2
    return float(pressure), float(hoop)


@pytest.mark.parametrize("material", ["al-6061-t6", "gray-iron-30", "steel-1018"])
def test_pressure_and_tension_are_those_of_two_rings_solved_by_hand(material: str) -> None:
    fit = fitted(wheel(material=material))
    interference = (fit.limits[0] + fit.limits[1]) / 2
    pressure, hoop = joined_by_lame(fit, interference)
    assert fit.interference[0] == pytest.approx(interference, rel=SOLVED)
    assert fit.pressure[0] == pytest.approx(pressure, rel=SOLVED)
    raised = float(fit.facts.edge_factor[0] * fit.facts.notch_factor[0])
    assert fit.tension[0] == pytest.approx(hoop * raised, rel=SOLVED)


def test_the_bore_of_the_bush_closes_as_the_thick_ring_says() -> None:
    """Radial displacement at the bore of a ring pressed from outside: 2 p a b² / (E (b² - a²))."""
    fit = fitted(wheel())
    a, b = fit.sizes.as_pressed / 2, fit.sizes.hub_bore / 2
    e = float(np.atleast_1d(fit.facts.mandrel.modulus)[0])
    inwards = 2 * fit.pressure[0] * a * b**2 / (e * (b**2 - a**2))
    assert fit.closes == pytest.approx(2 * inwards, rel=SOLVED)


def test_a_hub_bored_50_mm_takes_s6_with_18_to_59_micrometres() -> None:
    """Bhandari, Design of Machine Elements, Ex. 3.3, for 50 H7/s6."""
    found = case(wheel_job(0.2, 0.04, bore=0.04), 0.0401, 0.0399, 0.0400)
    sizes = bush_sizes(found)
    assert sizes.hub_bore == pytest.approx(0.050, abs=TYPED)
    heavy = tuple(replace(d, torque=d.torque * 1e4) for d in demands_of(found))
    fit = pressed_bush(found, sizes, heavy)
    assert fit.code == "H7/s6"
    assert fit.limits == pytest.approx((18 * MICROMETRE, 59 * MICROMETRE), abs=TYPED)


def test_a_hub_bored_21_mm_that_nothing_turns_takes_p6_of_22_to_35_in_h7_of_0_to_21() -> None:
    """ISO 286-1 for 18 to 30 mm: IT6 13, IT7 21; p +22 (Machine Drawing, table 15.2)."""
    found = wheel()
    fit = pressed_bush(found, replace(bush_sizes(found), hub_bore=0.021), ())
    assert fit.code == "H7/p6"
    assert (fit.hole.upper, fit.shaft.lower, fit.shaft.upper) == pytest.approx(
        (21e-6, 22e-6, 35e-6), abs=TYPED
    )
    assert fit.limits == pytest.approx((1e-6, 35e-6), abs=TYPED)


def test_a_harder_cut_wants_a_tighter_fit() -> None:
    found = wheel()
    sizes, demands = bush_sizes(found), demands_of(found)
    codes = [
        pressed_bush(found, sizes, tuple(replace(d, torque=d.torque * k) for d in demands)).code
        for k in (1e-3, 1.0, 1e3)
    ]
    order = ["H7/p6", "H7/r6", "H7/s6"]
    assert [order.index(c) for c in codes] == sorted(order.index(c) for c in codes)
    assert codes[-1] == "H7/s6"


def test_the_hub_is_bored_no_further_than_cleans_it_and_leaves_the_bush_its_wall() -> None:
    """Wall: an eighth of 16 mm is 2 mm, so 16.018 + 4 mm and a little, to the next half millimetre."""
    sizes = bush_sizes(wheel())
    assert sizes.hub_bore == pytest.approx(0.0205, abs=TYPED)
    assert sizes.wall > 0.002
    worn = bush_sizes(wheel(bore=0.0199))
    assert worn.hub_bore == pytest.approx(0.0205, abs=TYPED)
    assert bush_sizes(wheel(bore=0.01999)).hub_bore == sizes.hub_bore
    assert bush_sizes(replace(wheel(), found=replace(wheel().found, largest=0.0208))).hub_bore == (
        pytest.approx(0.021, abs=TYPED)
    )


@given(
    st.sampled_from(["al-6061-t6", "gray-iron-30", "steel-1018", "al-scrap-cast", "brass-c360"]),
    st.floats(0.026, 0.2),
    st.floats(1.01, 3.0),
)
@settings(max_examples=30, deadline=None)
def test_a_larger_hub_never_lowers_the_margin(material: str, outside: float, times: float) -> None:
    """On one part: only the hub differs, so that the cuts ask the same of both."""
    found = wheel(0.25, material=material)
    demands = demands_of(found)
    small, large = (
        pressed_bush(found, replace(bush_sizes(found), hub_outside=d), demands)
        for d in (outside, outside * times)
    )
    assert (large.strength >= small.strength * (1 - 1e-9)).all()


def test_a_keyway_that_is_bored_away_no_longer_notches_the_hub() -> None:
    job = wheel_job(material="gray-iron-30")
    shallow, deep = (
        replace(job, work=replace(job.work, keyway=Keyway(0.005, depth)))
        for depth in (0.0015, 0.004)
    )
    gone, left = (fitted(case(j, 0.0162, 0.016, 0.016018)) for j in (shallow, deep))
    assert gone.facts.notch_factor[0] == 1.0
    assert left.facts.notch_factor[0] > 1.0
    assert left.strength[0] < gone.strength[0]
    way = bush_sizes(case(deep, 0.0162, 0.016, 0.016018)).hub_bore
    kept = bored_out(case(deep, 0.0162, 0.016, 0.016018).job, way).work.keyway
    assert kept is not None
    assert kept.depth == pytest.approx(0.004 - (way - 0.0162) / 2, abs=TYPED)
    assert gone.material == "steel-1018"  # a key is cut in it


def test_a_bush_never_grips_harder_than_makes_it_yield() -> None:
    fit = fitted(wheel())
    thin = replace(fit, sizes=replace(fit.sizes, as_pressed=fit.sizes.hub_bore * 0.98))
    assert isinstance(thin.sizes, BushSizes)
    assert (thin.grip_pressure <= thin.yields_at).all()
    assert thin.yields_at == pytest.approx(thin.bush_yield * (1 - 0.98**2) / 2, rel=SOLVED)
