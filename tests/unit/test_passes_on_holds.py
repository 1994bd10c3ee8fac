"""The cuts of a plan as set: within every limit, none faster that is, and the metal adds up."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.jobs_made import wheel_job

from borewright.answer.plan import Plan
from borewright.answer.records import Cut, Verdict
from borewright.job.finished_form import FinishedForm, FinishedStep, Groove
from borewright.job.records import Job, Machine, Piece
from borewright.mechanics.spread import likely, low_end
from borewright.planning.choice.arrangement import arrange
from borewright.planning.choice.recommended import recommended
from borewright.planning.passes.bench import Bench
from borewright.planning.passes.holding import Holding, holding_of
from borewright.planning.passes.runs import runs
from borewright.planning.passes.setting import settings_of
from borewright.planning.questions.rock import rock_verdict
from borewright.planning.questions.slip import slip_verdict
from borewright.planning.shop.names import material_taken
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.power import power_share
from borewright.planning.weighing.warmed import work_body
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()
LATHE = Machine(
    "a lathe",
    speeds=tuple(r / 60 for r in (60, 110, 200, 350, 600, 1000)),
    feeds=(0.04e-3, 0.06e-3, 0.09e-3, 0.13e-3, 0.2e-3),
    swing_over_cross_slide=0.4,
    between_centers=0.8,
    power=750.0,
)


def with_stock(outside: float, finished: float, material: str, **form: object) -> Job:
    job = wheel_job(outside=outside, material=material)
    size = replace(job.work.finished, outside=finished, form=FinishedForm(**form))
    shelf = replace(job.shelf, machine=LATHE)
    return replace(job, work=replace(job.work, finished=size), shelf=shelf, use="plain-taper")


JOBS = {
    "a wheel": with_stock(0.063, 0.058, "al-6061-t6"),
    "a large disc": with_stock(0.16, 0.152, "al-6061-t6"),
    "an iron wheel": with_stock(0.1, 0.094, "gray-iron-30"),
    "a stepped wheel": with_stock(
        0.063,
        0.06,
        "steel-1018",
        length=0.024,
        steps=(FinishedStep(0.0, 0.01, 0.05),),
        grooves=(Groove(0.01, 0.014, 0.046),),
    ),
}


def planned(job: Job) -> Plan:
    return plan(job, source_tables=TABLES)


def held(job: Job) -> Holding:
    taken, _ = material_taken(job, TABLES)
    row = recommended(arrange(taken, TABLES))
    assert row is not None
    assert row.weighed.trial is not None
    return holding_of(row.weighed.trial)


def all_yes(holding: Holding, cut: Cut) -> bool:
    """Slip and rock as the questions answer them, and the power, of one cut by itself."""
    trial = holding.taken((cut,))
    assert isinstance(trial, Trial)
    (demand,) = trial.demands
    machine = holding.job.shelf.machine
    strong = power_share((cut,), (demand,), machine, TABLES) >= 1
    asked = (slip_verdict(trial, demand), rock_verdict(trial, demand))
    return strong and all(v is Verdict.YES for v in asked)


@pytest.mark.parametrize("name", ["a wheel", "a large disc", "an iron wheel"])
def test_no_faster_setting_of_a_roughing_cut_is_a_yes_to_slip_rock_and_power(name: str) -> None:
    """Every faster one is refused by the questions themselves, or by a limit that they do not ask."""
    holding = held(JOBS[name])
    bench = Bench(holding, work_body(holding.taken(holding.cuts)))
    (one,) = (s for s in runs(bench) if s.cuts[-1].id == "rough")
    assert one.found is not None
    assert not one.found.blocked
    first = one.cuts[0]
    assert all_yes(holding, first)
    stock = sum(c.depth * c.passes for c in one.cuts)
    model = next(c for c in holding.cuts if c.id == "rough")
    faster = [
        s
        for s in settings_of(bench.rough(model, stock, first.diameter), LATHE)
        if s.seconds < one.found.setting.seconds - 1e-9
    ]
    for setting in faster:
        cut = replace(
            first,
            depth=setting.deepest,
            feed=setting.feed,
            spindle_speed=setting.spindle,
            cutting_speed=first.cutting_speed * setting.spindle / first.spindle_speed,
        )
        bends = likely(holding.bends(holding.demand(cut))) / 2
        finish = next(c for c in one_plan(name).cuts if c.id == "finish").depth
        heavy = setting.deepest * setting.feed > bench.bears * (1 + 1e-9)
        refused = not all_yes(holding, cut) or bends > finish or heavy
        assert refused or warm(holding, cut, setting.seconds)


def one_plan(name: str) -> Plan:
    return planned(JOBS[name])


def warm(holding: Holding, cut: Cut, seconds: float) -> bool:
    """Whether the heat of all of it, none lost, leaves too little grip: more than any sum can say."""
    body = work_body(holding.taken((cut,)))
    share = TABLES.allowance("heat_share").best
    rise = share * likely(holding.demand(cut).power) * seconds / body.heat_capacity
    margin = holding.slip(holding.demand(cut), holding.left_at(rise))
    asked = TABLES.threshold("slip")
    return likely(margin) < asked.yes_likely or low_end(margin) < asked.yes_low


@pytest.mark.parametrize("name", JOBS)
def test_the_cuts_come_to_the_finished_size(name: str) -> None:
    answer, job = one_plan(name), JOBS[name]
    now = job.work.outside
    for cut in answer.cuts:
        if cut.kind == "turn" and not cut.id.startswith("step"):
            assert cut.diameter == pytest.approx(now, abs=1e-9)
            now -= 2 * cut.depth * cut.passes
            assert cut.leaves == pytest.approx(now, abs=1e-9)
    assert now == pytest.approx(job.work.finished.outside, abs=1e-9)


def test_faces_steps_and_grooves_are_cut_in_the_order_of_the_hand() -> None:
    answer = one_plan("a stepped wheel")
    ids = [cut.id for cut in answer.cuts]
    wanted = ["face-trailing", "rough", "step-1-rough", "face-leading", "finish", "step-1-finish"]
    assert ids == [*wanted, "groove-1"]
    by_id = {cut.id: cut for cut in answer.cuts}
    assert by_id["step-1-finish"].leaves == pytest.approx(0.05)
    groove = by_id["groove-1"]
    assert groove.leaves == 0.046
    assert groove.depth * groove.passes == pytest.approx(0.004)
    assert groove.length == pytest.approx((0.05 if groove.diameter == 0.05 else 0.06) / 2 - 0.023)
    for face in ("face-trailing", "face-leading"):
        assert by_id[face].depth * by_id[face].passes == pytest.approx(0.0005)


@pytest.mark.parametrize("name", JOBS)
def test_times_are_those_of_the_path_at_the_feed(name: str) -> None:
    """Length over feed times turns, a pass, and what winding back costs."""
    answer = one_plan(name)
    assert answer.schedule is not None
    between = TABLES.allowance("between_passes").best
    cuts = {cut.id: cut for cut in answer.cuts}
    assert [t.cut for t in answer.schedule.taken] == list(cuts)
    for taken in answer.schedule.taken:
        cut = cuts[taken.cut]
        path = cut.length / (cut.feed * cut.spindle_speed)
        assert taken.seconds == pytest.approx(cut.passes * (path + between), rel=1e-9)
    assert answer.schedule.seconds == pytest.approx(
        sum(t.seconds + t.wait for t in answer.schedule.taken)
    )


@pytest.mark.parametrize("name", JOBS)
def test_feeds_and_speeds_are_the_lathes_own(name: str) -> None:
    for cut in one_plan(name).cuts:
        assert cut.feed in LATHE.feeds or cut.kind == "groove", "a plunge is fed by hand"
        assert cut.spindle_speed in LATHE.speeds


def test_a_finish_finer_than_the_feeds_is_blocked_and_says_which_feed_or_nose_would_do() -> None:
    """0.04 mm a turn with a nose of 0.4 mm leaves twice 0.5 um: 0.2 um asks a feed of 0.0179 mm or less
    (f^2 = 0.2 um x 8 x 0.4 mm / 2), or a nose of 2 mm, above which 2.4 mm is the next there is."""
    job = with_stock(0.063, 0.058, "al-6061-t6", roughness=0.2e-6)
    (blocked,) = {b.limit: b for b in planned(job).schedule.blocked if b.cut == "finish"}.values()
    assert blocked.limit == "finish"
    assert "Cheapest: a feed of 0.017 mm/rev" in blocked.way_out
    assert "Or a tool with a nose of 2.4 mm" in blocked.way_out
    assert "Or accept Rz 1" in blocked.way_out


def test_a_spring_pass_is_planned_where_bending_alone_blocks_the_finish() -> None:
    """50 mm of steel to 3 um: once more untouched, twice the time, and the answer counts it."""
    job = with_stock(0.063, 0.058, "steel-1018")
    size = replace(job.work.finished, tolerance=3e-6)
    answer = planned(
        replace(job, work=replace(job.work, pieces=(Piece(0.0, 0.05, 0.063),), finished=size))
    )
    finish = next(c for c in answer.cuts if c.id == "finish")
    assert finish.spring_pass
    assert "spring pass" in finish.name
    taken = next(t for t in answer.schedule.taken if t.cut == "finish")
    between = TABLES.allowance("between_passes").best
    once = finish.length / (finish.feed * finish.spindle_speed) + between
    assert taken.seconds == pytest.approx(2 * once, rel=1e-9)
    bend = next(q for q in answer.questions if q.id == "bend")
    assert bend.verdict is Verdict.YES
    assert "spring pass is planned" in bend.reason


def test_a_casting_is_cut_under_its_skin_first() -> None:
    job = with_stock(0.1, 0.0985, "gray-iron-30")
    job = replace(job, work=replace(job.work, blank="casting", flaws="none"))
    first = next(c for c in planned(job).cuts if c.kind == "turn")
    assert first.depth >= TABLES.allowance("skin_depth").low - 1e-9


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.sampled_from(["a wheel", "an iron wheel"]),
    st.floats(0.05e-3, 1.5e-3),
    st.floats(0.04e-3, 0.3e-3),
    st.floats(1.0, 2.0),
    st.floats(1.0, 2.0),
)
def test_a_heavier_cut_never_raises_a_margin(
    name: str, depth: float, feed: float, deeper: float, coarser: float
) -> None:
    holding = HOLDINGS.setdefault(name, held(JOBS[name]))
    model = next(c for c in holding.cuts if c.id == "rough")
    light = holding.demand(replace(model, depth=depth, feed=feed))
    heavy = holding.demand(replace(model, depth=depth * deeper, feed=feed * coarser))
    slack = 1 + 1e-9
    for ask in (holding.slip, holding.rock):
        a, b = ask(light, 1.0), ask(heavy, 1.0)
        assert likely(b) <= likely(a) * slack
        assert low_end(b) <= low_end(a) * slack
    assert likely(heavy.power) >= likely(light.power) / slack


HOLDINGS: dict[str, Holding] = {}
