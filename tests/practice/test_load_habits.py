"""Which way a wheel and a form cutter push work on its mandrel, as the trade has it (no source).

A traverse goes both ways, so one of its strokes pushes off the taper. A form cutter that works
towards the dividing head against its turn pushes the work ahead of it, up the taper, and hardly
turns it: its force lies in the plane of the mandrel.
"""

from __future__ import annotations

from tests.jobs_made import wheel_job

from borewright.answer.records import Cut, Demand
from borewright.cutting.demand import demand_of
from borewright.cutting.schedule import planned_cuts
from borewright.job.records import CutWish
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables

TABLES = Tables()


def asked(wish: CutWish, outside: float) -> tuple[Cut, Demand]:
    job = wheel_job(outside, material="steel-1018", cuts=(wish,))
    (cut,) = planned_cuts(job, TABLES)
    return cut, demand_of(cut, job.work.material, TABLES)


def test_the_grinding_traverse_is_judged_by_the_stroke_that_loosens() -> None:
    cut, demand = asked(CutWish("grind", 5e-6, 3e-3, 0.25), 0.063)
    assert cut.seat_effect == "loosens"
    assert cut.direction == "both ways along the work"
    assert likely(demand.axial) < 0


def test_a_wheel_pushes_the_work_away_harder_than_it_drags_it_round() -> None:
    _, demand = asked(CutWish("grind", 5e-6, 3e-3, 0.25), 0.063)
    assert likely(demand.radial) > 1.5 * likely(demand.tangential)


def test_a_light_grind_pushes_far_less_than_a_turning_cut() -> None:
    _, ground = asked(CutWish("grind", 5e-6, 3e-3, 0.25), 0.063)
    _, turned = asked(CutWish("turn", 3e-4, 1e-4, 0.4), 0.063)
    assert likely(ground.tangential) < 0.3 * likely(turned.tangential)


def test_the_form_cutter_fed_towards_the_head_tightens_and_hardly_turns_the_work() -> None:
    cut, demand = asked(CutWish("gear", teeth=24, module=2e-3), 0.052)
    assert cut.seat_effect == "tightens"
    assert likely(demand.axial) > 0
    assert likely(demand.tangential) < 0.15 * likely(demand.axial)


def test_a_gear_of_24_teeth_has_24_spaces_and_a_blank_of_26_modules() -> None:
    cut, _ = asked(CutWish("gear", teeth=24, module=2e-3), 0.052)
    assert (cut.passes, round(cut.diameter * 1e3, 6)) == (24, 52.0)
