"""What shops do with stubs, sleeves, bonds and soft bars, held against what the plan says of it.

Common practice, no source, except where a row of the tables is named.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.jobs_made import wheel_job

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.job import Job
from borewright.job.records import Finished, Shelf
from borewright.job.tools import OwnHolding
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()


def forced(job: Job, way: str, *own: str) -> Plan:
    shelf = replace(job.shelf, holding=tuple(OwnHolding(name) for name in own))
    return plan(replace(job, use=way, shelf=shelf), source_tables=TABLES)


def wheel(**sizes: float) -> Job:
    return wheel_job(material="al-6061-t6", **sizes)  # type: ignore[arg-type]


def bush() -> Job:
    job = wheel_job(outside=0.030, length=0.040, bore=0.022004, material="bronze-sae-660")
    return replace(job, work=replace(job.work, finished=Finished(0.0286, 0.03e-3)))


def ring() -> Job:
    job = wheel_job(outside=0.113, length=0.008, bore=0.10001)
    return replace(job, work=replace(job.work, finished=Finished(0.112, 0.02e-3)))


@pytest.mark.parametrize("size", [0.012, 0.016, 0.025])
def test_a_wheel_in_a_shop_without_mandrels_goes_on_a_stub(size: float) -> None:
    job = wheel(bore=size, outside=4 * size, length=1.5 * size)
    job = replace(job, shelf=Shelf((), True, machine=job.shelf.machine))
    assert forced(job, "turned-stub").verdict is Verdict.YES


def test_a_bronze_bush_goes_on_a_stub_and_on_an_expander_with_care() -> None:
    assert forced(bush(), "turned-stub").verdict is Verdict.YES
    assert forced(bush(), "expanding", "expanding mandrel").verdict is Verdict.CARE


def test_a_thin_ring_is_glued_by_its_face_and_no_expander_is_put_in_it() -> None:
    assert forced(ring(), "bonded").verdict is Verdict.YES
    assert forced(ring(), "expanding", "expanding mandrel").verdict is Verdict.NO


def test_a_heavy_disc_is_not_glued_by_its_face() -> None:
    disc = wheel_job(outside=0.25, length=0.03, bore=0.07, material="steel-1018")
    assert forced(disc, "bonded").verdict is Verdict.NO


def test_an_expanding_mandrel_runs_out_more_than_a_stub_that_stays_where_it_was_turned() -> None:
    fact = TABLES.holding_fact
    assert fact("stub_runout").best < fact("soft_runout").best < fact("expanding_runout").best
    stub, sleeve = (
        forced(wheel(), way, "expanding mandrel") for way in ("turned-stub", "expanding")
    )
    runouts = [c.chosen.runout for c in (stub, sleeve) if c.chosen and c.chosen.runout]
    assert len(runouts) == 2
    assert runouts[0] < runouts[1]


def test_a_sleeve_opened_by_what_its_row_covers_stays_below_what_spring_steel_bears() -> None:
    """One sixteenth at the small sizes; half open it must be well within, or no one would sell it."""
    from borewright.holding.fits.sleeve import Sleeve
    from borewright.holding.part import Part

    for bore in (0.010, 0.016, 0.022, 0.035, 0.050, 0.090):
        sleeve = Sleeve(Part(wheel(bore=bore, outside=3 * bore), TABLES))
        assert 1.0 < likely(sleeve.stress_margin) < 6.0, bore


def test_an_ordinary_push_on_a_soft_bar_holds_a_small_wheel_for_a_light_cut() -> None:
    assert forced(wheel(), "soft-mandrel").verdict in (Verdict.YES, Verdict.CARE)
