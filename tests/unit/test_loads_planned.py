"""Grinding and gear cutting on a mandrel, planned: everyday ones are everyday, each twin turns its
question, and every question makes sense with them. Hollow Brook and its parts are invented."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from tests.jobs_made import wheel_job
from tests.load_jobs import BUSH, PINION, TABLES, gear, grinding, planned, question
from tests.on_a_mandrel import plan
from tests.unit.test_planning_choices import trial_of

from borewright.answer.records import Question, Verdict
from borewright.cutting.demand import demand_of
from borewright.cutting.schedule import planned_cuts
from borewright.job.records import CutWish, Finished, Machine
from borewright.mechanics.spread import likely
from borewright.planning.weighing.margins import demand_on_joint
from borewright.planning.weighing.wall_left import wall_left
from borewright.planning.words.push_advice import proof_load
from borewright.report.bench_sheet import bench_sheet
from borewright.report.explain import explain_text, plan_figures
from borewright.report.plan_json import plan_object
from borewright.report.schema import plan_schema
from borewright.report.terminal import plan_text

YES, CARE, NO = Verdict.YES, Verdict.CARE, Verdict.NO


def test_a_pinion_is_turned_first_and_then_cut_and_is_served() -> None:
    answer = planned(PINION)
    assert answer.verdict in (YES, CARE)
    kinds = [cut.kind for cut in answer.cuts]
    assert kinds == ["face", "turn", "face", "turn", "gear"]
    titles = [step.title for step in answer.steps]
    places = [titles.index(t) for t in ("Between centers", "Cut, in the order of the table")]
    places += [titles.index(t) for t in ("Between dividing head and tailstock", "Cut the teeth")]
    assert places == sorted(places)


def test_a_module_too_coarse_for_the_grip_turns_slip_and_rock() -> None:
    """Its twin: the same blank with six coarse teeth, which takes a cut nine times as large."""
    coarse = planned(PINION, ("teeth = 24", "teeth = 6"), ('"2mm"', '"6.5mm"'))
    fine = planned(PINION)
    assert coarse.verdict is NO
    for name in ("slip", "rock"):
        assert question(fine, name).verdict is not NO
        assert question(coarse, name).verdict is NO


def test_the_same_coarse_space_in_more_passes_asks_less() -> None:
    one, four = (
        planned(
            PINION,
            ("teeth = 24", "teeth = 11"),
            ('module = "2mm"', f'module = "4mm"\ndepth = "{depth}mm"'),
        )
        for depth in ("9", "2.25")
    )
    assert four.cuts[-1].passes == 4 * one.cuts[-1].passes == 44
    assert question(four, "rock").margin > 1.5 * question(one, "rock").margin


def test_a_light_grind_of_a_hardened_bush_is_everyday() -> None:
    answer = planned(BUSH)
    assert answer.verdict is YES
    assert [cut.kind for cut in answer.cuts] == ["grind"]
    assert question(answer, "slip").margin > 10


def test_the_same_bush_with_twenty_dry_passes_is_too_warm_and_coolant_mends_it() -> None:
    stock = ('"40.02mm"', '"40.2mm"')
    dry, wet = planned(BUSH, stock), planned(BUSH + "coolant = true\n", stock)
    assert question(dry, "heat").verdict is not YES
    assert "dry and without a pause" in question(dry, "heat").reason
    assert question(wet, "heat").verdict is YES
    assert dry.cuts[0].passes == wet.cuts[0].passes == 20


@pytest.mark.parametrize("text", [PINION, BUSH], ids=["gear", "grind"])
def test_every_way_of_saying_it_works(text: str) -> None:
    answer = planned(text)
    from jsonschema import Draft202012Validator

    Draft202012Validator(plan_schema()).validate(plan_object(answer))
    assert "None" not in plan_text(answer)
    assert explain_text(answer, TABLES)
    assert bench_sheet(answer, "").startswith(b"%PDF")


# More asks more


@pytest.mark.parametrize("kind", ["grind", "gear"])
def test_more_depth_and_more_feed_never_ask_less(kind: str) -> None:
    wish = grinding()[0] if kind == "grind" else gear(depth=1.5e-3, feed=4e-5)[0]
    base = wheel_job(0.052, material="steel-1018", cuts=(wish,))
    deeper = replace(base, cuts=(replace(wish, depth=1.5 * (wish.depth or 0.0)),))
    faster = replace(base, cuts=(replace(wish, feed=1.5 * (wish.feed or 0.0)),))
    asked = [
        demand_of(planned_cuts(j, TABLES)[0], "steel-1018", TABLES) for j in (base, deeper, faster)
    ]
    for name in ("torque", "radial", "tangential"):
        least, *more = (getattr(d, name) for d in asked)
        assert all(np.all(m > least) for m in more), name
    assert all(abs(likely(m.axial)) > abs(likely(asked[0].axial)) for m in asked[1:])


def test_margins_only_fall_with_a_coarser_module() -> None:
    margins = []
    for module, teeth in ((1e-3, 50), (2e-3, 24), (4e-3, 11)):
        answer = plan(
            wheel_job(0.052, material="steel-1018", cuts=gear(module, teeth)), source_tables=TABLES
        )
        margins.append([question(answer, n).margin for n in ("rock", "bend")])
    for finer, coarser in pairwise(margins):
        assert all(c < f for f, c in zip(finer, coarser, strict=True))


# Each question


def speed_of(*cuts: CutWish, outside: float = 0.052) -> Question:
    job = wheel_job(outside, material="steel-1018", cuts=cuts)
    return question(plan(job, source_tables=TABLES), "speed")


def test_each_speed_is_held_against_its_own_usual_and_not_against_the_turning_table() -> None:
    # 60 m/min turns steel too fast for high-speed steel; a carbide-like 30 m/s rim is a usual wheel.
    assert speed_of(CutWish("turn", 2e-4, 1e-4, 0.4)).verdict is YES
    assert speed_of(CutWish("grind", 5e-6, 3e-3, 0.4, wheel_speed=30.0)).verdict is YES
    assert speed_of(*gear(speed=0.3)).verdict is YES
    for cut in (CutWish("turn", 2e-4, 1e-4, 60.0), CutWish("grind", 5e-6, 3e-3, 60.0)):
        assert speed_of(cut).verdict is NO
    assert speed_of(*gear(speed=60.0)).verdict is NO


def test_a_wheel_too_fast_is_seen_beside_a_turning_cut() -> None:
    turn = CutWish("turn", 2e-4, 1e-4, 0.4)
    for rim, verdict in ((30.0, YES), (45.0, CARE), (79.0, NO)):
        found = speed_of(turn, CutWish("grind", 5e-6, wheel_speed=rim))
        assert found.verdict is verdict
    assert "bursts" in found.reason


def test_a_spindle_speed_that_the_lathe_has_not_got_is_said() -> None:
    job = wheel_job(material="steel-1018", cuts=(CutWish("turn", 2e-4, 1e-4, spindle_speed=12.0),))
    slow = replace(job, shelf=replace(job.shelf, machine=Machine(speeds=(0.5, 1.0))))
    found = question(plan(slow, source_tables=TABLES), "speed")
    assert found.verdict is NO
    assert "the lathe's fastest is 60 rpm" in found.reason


def test_a_wheel_asked_to_run_faster_than_usual_is_with_care() -> None:
    usual, fast = (
        plan(wheel_job(material="steel-1018", cuts=grinding(wheel_speed=v)), source_tables=TABLES)
        for v in (30.0, 45.0)
    )
    assert question(usual, "speed").verdict is YES
    assert question(fast, "speed").verdict is CARE
    assert "marked on the wheel" in question(fast, "speed").reason


def test_the_wall_counts_from_the_root_of_the_teeth() -> None:
    trial = trial_of(wheel_job(0.052, material="steel-1018", cuts=gear()))
    assert wall_left(trial) == pytest.approx((0.052 - 0.016006) / 2 - 2.25 * 2e-3)


def test_teeth_that_leave_no_wall_over_the_bore_are_a_no() -> None:
    thin, stout = (
        plan(wheel_job(0.026, material="steel-1018", cuts=gear(m, z)), source_tables=TABLES)
        for m, z in ((2e-3, 11), (1e-3, 24))
    )
    assert question(thin, "crack").verdict is NO
    assert "under the teeth" in question(thin, "crack").reason
    assert question(stout, "crack").verdict is not NO


def test_cutting_teeth_softens_the_ring_which_costs_grip_and_strains_the_bore() -> None:
    """A module that leaves little under the teeth, against one that leaves much, on one blank."""
    left = {}
    for module, teeth in ((1e-3, 30), (2e-3, 14)):
        trial = trial_of(wheel_job(0.032, material="steel-1018", cuts=gear(module, teeth)))
        left[module] = trial.demands[0].grip_left
    assert 0.5 < left[2e-3] < left[1e-3] < 1
    turned = trial_of(
        wheel_job(0.032, material="steel-1018", cuts=(CutWish("turn", 2e-4, 1e-4, 0.4),))
    )
    assert turned.demands[0].grip_left == 1


def test_the_proof_load_on_the_blank_counts_the_grip_that_the_teeth_will_cost() -> None:
    trial = trial_of(wheel_job(0.032, material="steel-1018", cuts=gear(2e-3, 14)))
    demand = trial.demands[0]
    asked = likely(demand_on_joint(trial.grip, demand))
    torque = proof_load(trial).torque
    factor = TABLES.allowance("proof_factor").best
    assert torque == pytest.approx(factor * asked / demand.grip_left * trial.grip.diameter / 2)
    assert demand.grip_left < 0.97


def test_grinding_sizes_the_work_so_bend_looks_at_it_and_not_at_the_turning_before() -> None:
    rough = CutWish("turn", 3e-4, 1e-4, 0.4)
    job = wheel_job(material="steel-1018", cuts=(rough, *grinding()))
    alone = wheel_job(material="steel-1018", cuts=(rough,))
    both, one = (question(plan(j, source_tables=TABLES), "bend") for j in (job, alone))
    assert both.margin > one.margin


def test_grinding_puts_a_larger_share_of_its_power_in_the_work_than_turning() -> None:
    trial = trial_of(wheel_job(material="steel-1018", cuts=grinding()))
    figures = {f.name: f for f in plan_figures(plan(trial.job, source_tables=TABLES))}
    share = {i.label: i.value for i in figures["heat_rise"].inputs}["share"]
    assert share == TABLES.grinding("heat_share").best > 3 * TABLES.allowance("heat_share").best


@pytest.mark.parametrize(("text", "tag"), [(PINION, "gear"), (BUSH, "grind")])
def test_cautions_of_the_machine_are_said_and_only_there(text: str, tag: str) -> None:
    rows = TABLES.table("cautions").rows
    own = {r.text("id") for r in rows if r.names("applies_to") == (tag,)}
    assert len(own) >= 3
    assert own <= {c.id for c in planned(text).cautions}
    turned = plan(wheel_job(), source_tables=TABLES)
    assert not own & {c.id for c in turned.cautions}


# Stock


def test_turning_leaves_the_usual_stock_for_the_wheel() -> None:
    job = wheel_job(
        0.0642, material="steel-1018", cuts=(CutWish("turn", 1e-4, 1e-4, 0.4), *grinding())
    )
    job = replace(job, work=replace(job.work, finished=Finished(0.063)))
    turned, ground = planned_cuts(job, TABLES)
    left = 0.6e-3 - turned.depth * turned.passes
    assert left >= TABLES.grinding("stock_to_leave").best
    assert ground.depth * ground.passes == pytest.approx(left, abs=5e-6)


def test_a_blank_already_at_the_size_of_its_gear_is_not_turned() -> None:
    job = wheel_job(0.052, material="steel-1018", cuts=gear())
    assert [c.kind for c in planned_cuts(job, TABLES)] == ["gear"]


def test_the_user_s_order_is_kept() -> None:
    cuts = (*gear(), CutWish("face", 1e-4, 1e-4, 0.4))
    job = wheel_job(0.052, material="steel-1018", cuts=cuts)
    assert [c.kind for c in planned_cuts(job, TABLES)] == ["gear", "face"]


# Worked again with a pencil
