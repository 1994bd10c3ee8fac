"""The charts of a hold say what its plan says: where it slips, what push to expect, where it sits."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

from borewright.answer.plan import Plan
from borewright.answer.schedule import Curve, LineChart
from borewright.job import parse_job, read_job, read_shelf
from borewright.planning.assemble import plan_job
from borewright.planning.choice.arrangement import arrange
from borewright.planning.choice.recommended import recommended
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.picture.charts import charts_of
from borewright.planning.picture.push_chart import push_chart
from borewright.planning.shop.names import material_taken
from borewright.planning.taper.travel import crack_share
from borewright.planning.taper.trial import Trial
from borewright.reference import tables

EXAMPLES = Path(__file__).parents[2] / "examples"
JOBS = {
    path.stem: path
    for path in sorted((EXAMPLES / "twelve").glob("*.toml"))
    if "shelf" not in path.stem
}
TAPER = (
    "01-beginner-pulley",
    "02-class-blanks",
    "03-locomotive-wheels",
    "04-flywheel",
    "05-drive-wheel",
)
JOB = """
title = "pulley"
units = "inch"
[work]
material = "gray-iron-30"
blank = "bar"
outside = "1 1/2in"
length = "1 1/8in"
bore = { size = "0.6251in", measured_with = "bore gauge", made_by = "reamed" }
finished = { outside = "1.4in" }
[hold]
use = "plain-taper"
mandrels = ["5/8in"]
press = "three-ton arbor press"
"""


@cache
def trial_of(name: str) -> Trial | HeldTrial:
    job = material_taken(read_job(JOBS[name]), tables())[0]
    row = recommended(arrange(job, tables()))
    assert row is not None
    assert row.weighed.trial is not None
    return row.weighed.trial


@cache
def plan_of(name: str) -> Plan:
    return plan_job(read_job(JOBS[name]), tables())


def parsed(text: str) -> Trial:
    job = parse_job(text, "job.toml")
    best = arrange(material_taken(job, tables())[0], tables()).best
    assert best is not None
    return best.trial


@cache
def charts(name: str) -> dict[str, LineChart]:
    """Those of the plan: its cuts are set after the hold is chosen."""
    schedule = plan_of(name).schedule
    assert schedule is not None
    return {chart.id: chart for chart in schedule.charts}


def line(chart: LineChart, label: str) -> Curve:
    return next(c for c in chart.lines if c.label == label)


def at(curve: Curve, x: float) -> float:
    """Its value at a place, by a straight line between the two beside it."""
    pairs = sorted(zip(curve.x, curve.y, strict=True))
    beside = (pair for pair in pairwise(pairs) if pair[0][0] <= x <= pair[1][0])
    (x1, y1), (x2, y2) = next(beside)
    return y1 + (y2 - y1) * (x - x1) / (x2 - x1)


def mark(chart: LineChart, label: str) -> float:
    return next(m.x for m in chart.marks if m.label == label)


@pytest.mark.parametrize("name", JOBS)
def test_the_torque_is_one_along_the_line_and_the_hardest_cut_meets_it_at_the_slip_radius(
    name: str,
) -> None:
    """The figures are the plan's own slip question, the line is force over radius."""
    chart = charts(name)["grip-against-radius"]
    given = line(chart, "the hold gives, likely")
    torques = [x * y for x, y in zip(given.x, given.y, strict=True)]
    assert torques == pytest.approx([torques[0]] * len(torques), rel=1e-9)
    hardest = next(c for c in chart.lines if c.thin)
    slips = next(q for q in plan_of(name).questions if q.id == "slip")
    (radius,) = [f for f in slips.figures if f.name == "slip_radius"] or [None]
    if radius is not None:
        assert torques[0] / hardest.y[0] == pytest.approx(radius.best, rel=1e-6)
        assert radius.low is not None
        poor = line(chart, "in the poor case")
        assert poor.x[0] * poor.y[0] / hardest.y[0] == pytest.approx(radius.low, rel=1e-6)
    assert mark(chart, "rim") == pytest.approx(trial_of(name).job.work.outside / 2)


@pytest.mark.parametrize("name", TAPER)
def test_the_push_at_the_seat_is_the_one_to_expect_and_the_level_line_the_one_to_stop_at(
    name: str,
) -> None:
    chart, plan = charts(name)["push-against-position"], plan_of(name)
    assert plan.push is not None
    seat = mark(chart, "seat")
    assert at(line(chart, "likely"), seat) == pytest.approx(plan.push.expected.best, rel=1e-6)
    assert at(line(chart, "1 case in 20 is below"), seat) == pytest.approx(
        plan.push.expected.low, rel=1e-6
    )
    assert at(line(chart, "1 case in 20 is above"), seat) == pytest.approx(
        plan.push.stop_at.best, rel=1e-6
    )
    assert set(line(chart, "stop at this push").y) == {plan.push.stop_at.best}


@pytest.mark.parametrize("name", TAPER)
def test_the_push_only_grows_and_its_places_are_those_a_rule_reads(name: str) -> None:
    chart, trial = charts(name)["push-against-position"], trial_of(name)
    assert isinstance(trial, Trial)
    likely = line(chart, "likely")
    assert list(likely.y) == sorted(likely.y)
    assert 12 <= len(likely.x) <= 16
    way = abs(mark(chart, "seat") - mark(chart, "first touch"))
    assert way == pytest.approx(trial.chosen.press)
    if trial.touch_is_known:
        whole = trial.mandrel.ground_length + trial.mandrel.end_length
        assert mark(chart, "seat") == pytest.approx(whole - trial.seat[0])
        assert likely.x[0] > likely.x[-1]
    else:
        assert "past first touch" in chart.x_name
        assert likely.x[0] == 0


def test_a_bore_that_a_little_more_would_strain_is_marked_from_there_on() -> None:
    """A rim that runs true wants more travel than one that knocks: deeper cuts, and the bore near its end."""
    job = material_taken(read_job(JOBS["04-flywheel"]), tables())[0]
    row = recommended(arrange(replace(job, work=replace(job.work, casting_runout=None)), tables()))
    assert row is not None
    trial = row.weighed.trial
    assert isinstance(trial, Trial)
    chart = push_chart(trial)
    assert chart is not None
    (band,) = [m for m in chart.marks if m.band is not None]
    touch = trial.from_large_end(trial.hold.likely_touch)
    at_mark = touch - band.x if trial.touch_is_known else band.x + trial.hand
    shares = [
        crack_share(trial.hold.grip(at_mark + d), trial.hold, trial.tables) for d in (-1e-3, 1e-3)
    ]
    assert shares[0] > 1 > shares[1]
    assert not [
        m for m in charts("02-class-blanks")["push-against-position"].marks if m.band is not None
    ]


def test_only_a_taper_that_is_pushed_has_a_push_to_chart() -> None:
    held = [name for name in JOBS if isinstance(trial_of(name), HeldTrial)]
    assert len(held) >= 4
    assert all("push-against-position" not in charts(name) for name in held)
    pressed = parsed(JOB)
    assert push_chart(pressed) is not None
    assert push_chart(parsed(JOB.replace("three-ton arbor press", "soft hammer"))) is None


def test_a_gear_and_a_hold_that_cannot_slip_have_no_force_to_chart() -> None:
    trial = parsed(JOB)
    gear = tuple(replace(cut, kind="gear") for cut in trial.cuts)
    milled = replace(trial, chosen=replace(trial.chosen, cuts=gear))
    assert [c.id for c in charts_of(milled)] == ["push-against-position"]
    held = next(t for t in map(trial_of, JOBS) if isinstance(t, HeldTrial))
    keyed = replace(held, grip=replace(held.grip, torque=held.grip.torque + float("inf")))
    assert charts_of(keyed) == ()


def test_the_example_shop_has_both() -> None:
    job = replace(
        read_job(EXAMPLES / "hollow-brook-drive-wheel.toml"),
        shelf=read_shelf(EXAMPLES / "hollow-brook-shelf.toml"),
    )
    row = recommended(arrange(material_taken(job, tables())[0], tables()))
    assert row is not None
    assert [c.id for c in charts_of(row.weighed.trial)] == [
        "grip-against-radius",
        "push-against-position",
    ]  # type: ignore[arg-type]
