"""Which way a wheel and a form cutter push work on its mandrel, as the trade has it (no source).

A traverse goes both ways, so one of its strokes pushes off the taper. A form cutter that works
towards the dividing head against its turn pushes the work ahead of it, up the taper, and hardly
turns it: its force lies in the plane of the mandrel.
"""

from __future__ import annotations

import pytest
from tests.jobs_made import wheel_job
from tests.load_jobs import PINION, planned

from borewright.answer.records import Cut, Demand, Verdict
from borewright.cutting.demand import demand_of
from borewright.cutting.schedule import planned_cuts
from borewright.job.records import CutWish
from borewright.mechanics.spread import likely
from borewright.planning.words.load_words import cutter_words
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


@pytest.mark.parametrize(
    ("inch", "module", "fewest", "most"),
    [
        (1, 8, 135, 400),
        (2, 7, 55, 134),
        (3, 6, 35, 54),
        (4, 5, 26, 34),
        (5, 4, 21, 25),
        (6, 3, 17, 20),
        (7, 2, 14, 16),
        (8, 1, 12, 13),
    ],
)
def test_the_set_of_eight_is_numbered_one_way_by_pitch_and_the_other_by_module(
    inch: int, module: int, fewest: int, most: int
) -> None:
    """As the cutters are stamped (from memory)."""
    for teeth in (fewest, most):
        by_pitch = cutter_words(CutWish("gear", teeth=teeth, diametral_pitch=16), TABLES)
        by_module = cutter_words(CutWish("gear", teeth=teeth, module=2e-3), TABLES)
        assert f"form cutter No. {inch} ({fewest} " in by_pitch
        assert f"numbered the other way: No. {module})" in by_pitch
        assert f"form cutter No. {module} ({fewest} " in by_module
        assert f"numbered the other way: No. {inch})" in by_module


def test_fewer_teeth_than_the_set_serves_want_a_cutter_of_their_own() -> None:
    said = cutter_words(CutWish("gear", teeth=11, module=2e-3), TABLES)
    assert "made for 11 teeth" in said
    assert "No." not in said


def test_a_gear_blank_three_quarters_as_long_as_its_bore_is_cut_in_one_pass() -> None:
    """Mild steel of module 2 on its own-size mandrel, 12 mm on a bore of 16: done every day."""
    short = planned(PINION, ('length = "25mm"', 'length = "12mm"'))
    rock = next(q for q in short.questions if q.id == "rock")
    assert rock.verdict is Verdict.YES
    assert short.cuts[-1].passes == 24
