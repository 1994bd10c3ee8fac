"""What the shelf says of lathes, power, presses, dogs, gauges and reamers is used by the plan."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Question, Verdict
from borewright.job.records import Job, Machine, MandrelNote
from borewright.job.tools import OwnDog, OwnGauge, OwnHammer, OwnPress, OwnReamer, OwnVice
from borewright.reference.library import Tables

TABLES = Tables()
SMALL = Machine("the small lathe", swing_over_cross_slide=0.05, between_centers=0.5)
LARGE = Machine("the large lathe", swing_over_cross_slide=0.3, between_centers=1.0)


def shelved(job: Job, **said: object) -> Job:
    return replace(job, shelf=replace(job.shelf, **said))


def planned(job: Job) -> Plan:
    return plan(job, source_tables=TABLES)


def asked(job: Job, name: str) -> Question:
    return next(q for q in planned(job).questions if q.id == name)


def on_lathes(*lathes: Machine, wished: bool = False) -> Job:
    return shelved(wheel_job(), machine=lathes[0], lathes=lathes, lathe_wished=wished)


def test_the_first_lathe_that_serves_is_used_and_the_reason_said() -> None:
    found = planned(on_lathes(SMALL, LARGE))
    assert found.verdict is Verdict.YES
    assert "the large lathe" in found.have_ready
    assert found.notes[0].startswith("Not on the small lathe: It does not fit")


def test_a_lathe_that_serves_is_kept_though_a_larger_one_stands_beside_it() -> None:
    found = planned(on_lathes(LARGE, replace(LARGE, name="the largest", between_centers=2.0)))
    assert "the large lathe" in found.have_ready
    assert not any("Not on" in note for note in found.notes)


def test_a_lathe_that_is_insisted_on_stays_and_its_no_with_it() -> None:
    assert planned(on_lathes(SMALL, LARGE, wished=True)).verdict is Verdict.NO


def test_a_lathe_that_goes_slow_enough_is_found() -> None:
    fast = replace(LARGE, name="the fast lathe", speeds=(20.0, 40.0))
    slow = replace(LARGE, name="the slow lathe", speeds=(0.5, 1.0, 2.0))
    iron = replace(wheel_job(0.2, material="gray-iron-30"))
    job = shelved(iron, machine=fast, lathes=(fast, slow))
    assert asked(job, "speed").verdict is Verdict.YES
    assert "the slow lathe" in planned(job).have_ready


def with_power(watts: float, **said: object) -> Job:
    machine = Machine(swing_over_cross_slide=0.4, between_centers=0.8, power=watts)
    return shelved(wheel_job(cuts=turning(), **said), machine=machine)


def test_power_at_the_tool_is_force_times_speed_and_the_motor_loses_a_share() -> None:
    question = asked(with_power(30.0), "speed")
    pull = next(f for f in question.figures if f.name == "cutting_power")
    margin = next(f for f in question.figures if f.name == "power_margin")
    k = TABLES.kienzle("al-6061-t6")
    angle, nose, depth, feed = (
        TABLES.cutting_correction("edge_angle").best,
        TABLES.cutting_correction("nose_radius").best,
        0.5e-3,
        0.1e-3,
    )
    # The edge as an arc of the nose and a straight part; the mean chip is the area over its length.
    arc = nose * (angle + math.asin(feed / (2 * nose)))
    straight = (depth - nose * (1 - math.cos(angle))) / math.sin(angle)
    width, area = (arc + straight) * 1e3, depth * feed * 1e6
    by_hand = k.kc11.best * width * (area / width) ** (1 - k.mc.best)
    by_hand *= TABLES.cutting_correction("tool_wear").best
    if TABLES.cut_defaults("al-6061-t6").tool == "hss":
        by_hand *= TABLES.cutting_correction("hss_tool").best
    speed = planned(with_power(30.0)).cuts[0].cutting_speed
    assert pull.best == pytest.approx(by_hand * speed, rel=0.01)
    assert margin.best == pytest.approx(0.75 * 30.0 / (by_hand * speed), rel=0.01)


def test_a_motor_too_weak_turns_speed_and_nothing_else() -> None:
    strong, weak = with_power(1000.0), with_power(10.0)
    assert planned(strong).verdict is Verdict.YES
    assert asked(weak, "speed").verdict is Verdict.NO
    assert "motor" in asked(weak, "speed").reason
    same = [q.verdict for q in planned(strong).questions if q.id != "speed"]
    assert [q.verdict for q in planned(weak).questions if q.id != "speed"] == same


def test_the_power_of_the_gear_in_use_rules_not_that_of_another() -> None:
    gears = Machine(speeds=(2.0, 4.0), power_by_gear=(500.0, 5.0))
    slow, fast = (
        shelved(wheel_job(cuts=(replace(turning()[0], speed=v),)), machine=gears)
        for v in (0.5, 0.9)
    )
    assert asked(slow, "speed").verdict is Verdict.YES
    assert asked(fast, "speed").verdict is not Verdict.YES


def test_a_small_motor_gets_a_shallower_cut_where_the_plan_may_choose() -> None:
    def depth(watts: float) -> float:
        machine = Machine(swing_over_cross_slide=0.4, between_centers=0.8, power=watts)
        return max(c.depth for c in planned(shelved(wheel_job(), machine=machine)).cuts)

    assert depth(120.0) < depth(1500.0)


def test_power_is_named_as_unjudged_only_where_it_is_not_stated() -> None:
    assert "power" in planned(wheel_job()).not_judged
    assert "power" not in planned(with_power(500.0)).not_judged


def test_another_press_is_taken_where_the_first_has_no_room() -> None:
    tight = OwnPress("the tight press", force=20e3, daylight=0.05)
    roomy = OwnPress("the roomy press", force=20e3, daylight=0.5)
    job = shelved(wheel_job(), presses=(tight, roomy), press="the tight press", press_force=20e3)
    found = planned(job)
    assert found.verdict is Verdict.YES
    assert any(ready.startswith("the roomy press") for ready in found.have_ready)
    assert found.notes[0].startswith("Not by the tight press")
    insisted = shelved(job, press_wished=True)
    assert planned(insisted).verdict is Verdict.NO


def test_the_vice_presses_where_no_press_is_stated() -> None:
    job = shelved(wheel_job(press=""), vice=OwnVice(opening=0.3, force=12e3))
    assert "bench vice gives" in asked(job, "push").reason


def test_a_heavier_hammer_needs_fewer_blows() -> None:
    def blows(mass: float) -> int:
        job = shelved(wheel_job(press="soft hammer"), hammer=OwnHammer(mass))
        words = asked(job, "push").reason
        return int(words.split("about ")[2].split(" blows")[0])

    # Work to the travel is fixed, so blows go as one over the mass, but for whole blows.
    assert blows(0.34) == pytest.approx(2 * blows(0.68), abs=1)
    assert blows(0.68) == pytest.approx(2 * blows(1.36), abs=1)


def test_the_dog_that_takes_the_end_is_named_and_one_that_does_not_is_not() -> None:
    end = planned(wheel_job()).layout.end_diameter  # type: ignore[union-attr]
    fits, small = (
        OwnDog("the fitting dog", end / 2, end * 1.1),
        OwnDog("the tiny dog", 0.001, end / 3),
    )
    ready = "; ".join(planned(shelved(wheel_job(), dogs=(small, fits))).have_ready)
    assert "the fitting dog for the large end" in ready
    none = "; ".join(planned(shelved(wheel_job(), dogs=(small,))).have_ready)
    assert "none on the shelf does" in none
    assert "tiny" not in none


def with_gauge(measured: str, *gauges: OwnGauge) -> Job:
    job = wheel_job()
    bore = replace(job.work.bore, measured_with=measured, uncertainty=None)
    return shelved(replace(job, work=replace(job.work, bore=bore)), gauges=gauges)


def band(job: Job) -> float:
    return next(f.best for f in asked(job, "bore").figures if f.name == "bore_half_band")


def test_the_shops_own_gauge_says_how_well_the_bore_is_known() -> None:
    own = OwnGauge("dial bore gauge", 2.2e-6, 0.01, 0.02)
    assert band(with_gauge("bore gauge", own)) == 2.2e-6
    usual = TABLES.gauge("bore gauge").half_band
    assert band(with_gauge("bore gauge")) == usual
    assert band(with_gauge("bore gauge", replace(own, smallest=0.018))) == usual
    assert band(with_gauge("plug gauge", own)) == TABLES.gauge("plug gauge").half_band


def test_a_better_gauge_on_the_shelf_is_pointed_at() -> None:
    own = OwnGauge("bore gauge", 4e-6, 0.01, 0.02)
    assert "bore gauge on the shelf" in asked(with_gauge("caliper", own), "bore").changes_it
    far = replace(own, smallest=0.018)
    assert "on the shelf" not in asked(with_gauge("caliper", far), "bore").changes_it


def test_a_reamer_that_cuts_inside_the_window_is_named_for_a_small_bore() -> None:
    job = wheel_job(bore=0.0159)
    inside = OwnReamer(0.016, "the over-cutting reamer", 8e-6)
    assert "over-cutting" in asked(shelved(job, reamers=(inside,)), "bore").changes_it
    outside = replace(inside, cuts=80e-6)
    assert "over-cutting" not in asked(shelved(job, reamers=(outside,)), "bore").changes_it


def test_marks_place_and_condition_of_the_mandrel_are_said() -> None:
    note = MandrelNote(0.016, "ours", marks="16 H", place="the long drawer", condition="scored")
    ready = planned(wheel_job(mandrels=(note,))).have_ready[0]
    assert "marked 16 H" in ready
    assert "in the long drawer" in ready
    assert "noted: scored" in ready


@pytest.mark.parametrize(("hardness", "says"), [("hard", "edge off the tool"), ("soft", "scores")])
def test_what_a_tool_that_touches_the_mandrel_does_is_said(hardness: str, says: str) -> None:
    plan_ = planned(wheel_job(mandrels=(MandrelNote(0.016, hardness=hardness),)))
    assert any(says in step.text for step in plan_.steps)


def test_a_batch_is_told_that_each_stops_at_its_own_place() -> None:
    job = wheel_job()
    many = planned(replace(job, work=replace(job.work, quantity=18)))
    assert any("Each of the 18" in s.text for s in many.steps)
    assert "18 alike" in many.echo[0]
    assert not any("Each of the" in s.text for s in planned(job).steps)
