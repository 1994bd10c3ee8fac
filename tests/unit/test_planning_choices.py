"""What the plan chooses and why: travel, way round, push, proof load, lines."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.records import Verdict
from borewright.errors import RefusedInput, UnknownName
from borewright.holding.taper.mandrels import resolve
from borewright.holding.taper.plain_taper import TaperHold, holds
from borewright.job.records import BoreReading, Finished, Job, MandrelNote
from borewright.mechanics.spread import likely
from borewright.planning.questions.slip import hardest_cut
from borewright.planning.shop.shop import shop_of
from borewright.planning.taper.travel import RULE_STEP
from borewright.planning.taper.trial import Trial, make_trial
from borewright.reference.library import Tables
from borewright.service import planned

TABLES = Tables()


def hold_of(job: Job, leading: str = "A") -> TaperHold:
    mandrel = resolve(MandrelNote(0.016), TABLES, "16 mm mandrel").mandrel
    return next(h for h in holds(job, mandrel, TABLES) if h.leading == leading)


def trial_of(job: Job) -> Trial:
    return make_trial(job, shop_of(job, TABLES), hold_of(job), TABLES)


def question(job: Job, name: str):  # type: ignore[no-untyped-def]
    return next(q for q in plan(job, source_tables=TABLES).questions if q.id == name)


@settings(max_examples=25, deadline=None)
@example(0.0027639604009853367, 0.0005)
@given(st.floats(0.002, 0.05), st.floats(0.0005, 0.01))
def test_more_travel_never_grips_less_pushes_easier_or_spares_the_bore(
    a: float, more: float
) -> None:
    hold = hold_of(wheel_job())
    short, long = hold.grip(a), hold.grip(a + more)
    assert np.all(long.friction_force >= short.friction_force)
    assert np.all(long.push_on >= short.push_on)
    assert np.all(long.tension >= short.tension * (1 - 1e-9))


def test_the_grip_at_a_travel_does_not_depend_on_the_size_of_the_bore() -> None:
    grips = [hold_of(wheel_job(bore=b)).grip(0.04).normal_force for b in (0.0160, 0.016012)]
    assert np.allclose(grips[0], grips[1], rtol=5e-3)  # the diameter itself moves by 0.1 %


def test_plain_work_is_the_same_led_by_either_face() -> None:
    mandrel = resolve(MandrelNote(0.016), TABLES, "16").mandrel
    assert [h.leading for h in holds(wheel_job(), mandrel, TABLES)] == ["A"]


@pytest.mark.parametrize(("large_at", "best"), [(0.0, "A"), (0.025, "B")])
def test_a_tapered_bore_leads_with_its_larger_end(large_at: float, best: str) -> None:
    """The mandrel is larger at the leading face; so is the bore that matches it."""
    readings = (BoreReading(large_at, 0.016012), BoreReading(0.025 - large_at, 0.016))
    answer = plan(wheel_job(readings=readings, bore=0.016), source_tables=TABLES)
    assert answer.chosen is not None
    assert answer.chosen.leading_face == best
    assert {c.leading_face for c in answer.candidates} == {"A", "B"}


def test_travel_comes_in_steps_that_a_rule_reads() -> None:
    for units in ("inch", "mm"):
        job = replace(wheel_job(), units=units)
        steps = trial_of(job).chosen.press / RULE_STEP[units]
        assert steps == pytest.approx(round(steps), abs=1e-6)


def test_a_heavier_cut_asks_for_no_less_travel() -> None:
    light, heavy = (trial_of(wheel_job(cuts=turning(d))).chosen.press for d in (0.2e-3, 0.7e-3))
    assert heavy >= light


def test_the_push_proves_push_times_half_the_bore_times_the_ratio() -> None:
    push = plan(wheel_job(), source_tables=TABLES).push
    assert push is not None
    ratio = TABLES.friction("al-6061-t6").slip_ratio
    assert push.proves_torque.best == pytest.approx(
        push.expected.best * 0.008 * ratio.best, rel=1e-3
    )
    assert push.proves_torque.low == pytest.approx(push.expected.best * 0.008 * ratio.low, rel=1e-3)


def test_the_push_to_look_for_carries_the_hardest_cut_at_the_poor_ratio() -> None:
    job = wheel_job(cuts=turning())
    trial = trial_of(job)
    push = plan(job, source_tables=TABLES).push
    assert push is not None
    demand = hardest_cut(trial).demand
    least = 2 * likely(demand.torque) / 0.016 / TABLES.friction("al-6061-t6").slip_ratio.low
    assert push.look_for.best > least


def test_the_proof_load_is_its_factor_times_the_hardest_cut_and_the_same_at_the_rim() -> None:
    job = wheel_job(cuts=turning())
    proof = plan(job, source_tables=TABLES).proof
    torque = likely(hardest_cut(trial_of(job)).demand.torque)
    assert proof is not None
    assert proof.torque >= 1.5 * torque
    assert proof.torque == pytest.approx(1.5 * torque, rel=0.02)  # the feed force adds a little
    assert proof.force * proof.arm == pytest.approx(proof.rim_force * proof.rim_radius)


def test_the_window_keeps_room_for_dog_and_tool() -> None:
    trial = trial_of(wheel_job())
    m, s = trial.mandrel, trial.chosen.travel
    low, high = trial.window
    dog, tool = (TABLES.allowance(i).best for i in ("dog_clearance", "tool_clearance"))
    assert high == pytest.approx(m.small_end + m.taper * (m.ground_length - s - dog))
    assert low == pytest.approx(m.small_end + m.taper * max(0.0, 0.025 + tool - s))


def test_a_loose_reading_widens_the_seat_and_leaves_the_grip() -> None:
    sure, loose = (trial_of(wheel_job(uncertainty=u)) for u in (3e-6, 20e-6))
    assert np.ptp(loose.seat_band) > 5 * np.ptp(sure.seat_band)
    assert likely(loose.grip.normal_force) == pytest.approx(likely(sure.grip.normal_force), rel=0.3)


def test_oval_readings_let_the_smallest_rule() -> None:
    oval = (BoreReading(0.01, 0.016010, "across"), BoreReading(0.01, 0.016002, "along"))
    touch = hold_of(wheel_job(readings=oval)).likely_touch
    assert touch == pytest.approx(hold_of(wheel_job(bore=0.016002)).likely_touch, abs=1e-9)
    assert "the smallest rules" in question(wheel_job(readings=oval, bore=0.016002), "bore").reason


def test_an_unstated_lathe_is_never_a_no_and_a_stated_small_one_is() -> None:
    big = wheel_job(0.25)
    unstated = replace(
        big,
        shelf=replace(big.shelf, machine=replace(big.shelf.machine, swing_over_cross_slide=None)),
    )
    small = replace(
        big,
        shelf=replace(big.shelf, machine=replace(big.shelf.machine, swing_over_cross_slide=0.2)),
    )
    assert question(unstated, "reach").verdict is Verdict.CARE
    assert question(small, "reach").verdict is Verdict.NO


def test_a_tight_tolerance_turns_bending() -> None:
    job = wheel_job(outside=0.06, length=0.02)
    tight = replace(job, work=replace(job.work, finished=Finished(0.0598, 0.5e-6)))
    assert question(job, "bend").verdict is Verdict.YES
    assert question(tight, "bend").verdict is not Verdict.YES


def test_bar_with_an_unfinished_bore_is_first_told_of_one_chucking() -> None:
    job = wheel_job()
    raw = replace(job, work=replace(job.work, bore=replace(job.work.bore, made_by="drilled")))
    first = planned.plan(raw, source_tables=TABLES).chosen
    assert first is not None
    assert first.way == "one-chucking"
    reamed = planned.plan(job, source_tables=TABLES).chosen
    assert reamed is not None
    assert reamed.way == "plain-taper"


def test_use_picks_a_mandrel_by_name_and_refuses_what_cannot_be_tried() -> None:
    job = wheel_job(mandrels=(MandrelNote(0.016, "old one"), MandrelNote(0.016, "new one")))
    assert plan(job, use="old one", source_tables=TABLES).candidates[0].tool == "old one"
    with pytest.raises(RefusedInput, match=r"hold\.use"):
        plan(job, use="magnetic chuck", source_tables=TABLES)


@pytest.mark.parametrize(
    ("field", "value"),
    [("material", "unobtainium"), ("measured_with", "eyeball"), ("made_by", "magic")],
)
def test_a_name_that_no_table_knows_is_refused(field: str, value: str) -> None:
    job = wheel_job(uncertainty=0)
    if field == "material":
        job = replace(job, work=replace(job.work, material=value))
    else:
        job = replace(job, work=replace(job.work, bore=replace(job.work.bore, **{field: value})))
    with pytest.raises(UnknownName):
        plan(job, source_tables=TABLES)


def test_every_figure_s_formula_and_source_is_in_the_tables() -> None:
    for figure in plan(wheel_job(), source_tables=TABLES).figures:
        assert not figure.formula or TABLES.formula(figure.formula).rule
        assert figure.formula or figure.sources
        assert all(TABLES.source(s).citation for s in figure.sources if s != "stated")


def test_shop_words_pick_the_hammer_s_caution() -> None:
    ids = {c.id for c in plan(wheel_job(press="soft hammer"), source_tables=TABLES).cautions}
    assert {"hammer-mandrel", "press-stand-clear"} <= ids
    pressed = {c.id for c in plan(wheel_job(press="arbor press"), source_tables=TABLES).cautions}
    assert "hammer-mandrel" not in pressed


def test_work_longer_than_the_ground_length_is_told_so() -> None:
    answer = plan(wheel_job(outside=0.03, length=0.13), source_tables=TABLES)
    assert answer.verdict is Verdict.NO
    assert (
        "too short for this work" in question(wheel_job(outside=0.03, length=0.13), "bore").reason
    )
    assert answer.bore_window is None


def test_a_bore_pressed_before_loses_less_to_its_peaks_and_grips_more() -> None:
    first, again = (replace(wheel_job(), pressed_before=b) for b in (False, True))
    share = TABLES.allowance("roughness_again").best
    losses = [float(hold_of(j).facts.lost_rough[0]) for j in (first, again)]
    assert losses[1] == pytest.approx(share * losses[0])
    assert hold_of(again).grip(0.03).normal_force[0] > hold_of(first).grip(0.03).normal_force[0]
    assert np.array_equal(hold_of(again).grip(0.03).tension, hold_of(first).grip(0.03).tension)
