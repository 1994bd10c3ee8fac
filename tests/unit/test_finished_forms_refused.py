"""Finished forms that no metal allows are refused in one line; thin walls and far finishes are told."""

from __future__ import annotations

import re

import pytest

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.answer.schedule import Blocked
from borewright.errors import RefusedInput
from borewright.job import parse_job
from borewright.job.records import Machine
from borewright.planning.passes.setting import Run, settings_of
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()

JOB = """
title = "Hollow Brook blank"
units = "mm"
[work]
material = "gray iron"
blank = "bar"
outside = "60mm"
length = "40mm"
bore = {{ size = "20.005mm", made_by = "reamed", measured_with = "bore gauge" }}
finished = {{ {finished} }}
[hold]
use = "{use}"
mandrels = ["20mm"]
press = "arbor press 1 ton"
[machine]
speeds = ["60rpm", "110rpm", "200rpm", "350rpm"]
feeds = ["0.05mm", "0.1mm", "0.2mm"]
power = "0.5kW"
"""


def planned(finished: str, use: str = "plain-taper") -> Plan:
    return plan(parse_job(JOB.format(finished=finished, use=use), "job.toml"), source_tables=TABLES)


REFUSED = {
    "an outside inside its bore": ('outside = "20.0mm"', "work.finished.outside"),
    "steps that overlap": (
        'steps = [{ from = "0mm", to = "20mm", outside = "50mm" }, { from = "10mm", to = "30mm", outside = "40mm" }]',
        "work.finished.steps[2].from",
    ),
    "grooves that overlap": (
        'grooves = [{ from = "5mm", to = "9mm", bottom = "50mm" }, { from = "8mm", to = "12mm", bottom = "50mm" }]',
        "work.finished.grooves[2].from",
    ),
    "a groove across the edge of a step": (
        'steps = [{ from = "0mm", to = "10mm", outside = "50mm" }], grooves = [{ from = "8mm", to = "12mm", bottom = "40mm" }]',
        "work.finished.grooves[1].from",
    ),
    "a groove shallower than its step": (
        'steps = [{ from = "0mm", to = "20mm", outside = "40mm" }], grooves = [{ from = "5mm", to = "8mm", bottom = "50mm" }]',
        "work.finished.grooves[1].bottom",
    ),
    "edges broken off the part": ('outside = "58mm", edges = "20mm"', "work.finished.edges"),
    "less than half of its length": ('outside = "58mm", length = "1mm"', "work.finished.length"),
    "a step without the outside beside it": (
        'steps = [{ from = "0mm", to = "10mm", outside = "50mm" }]',
        "work.finished.outside",
    ),
    "nothing to turn": ('outside = "60mm", length = "40mm"', "work.finished"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_a_form_that_cannot_be_is_refused_where_it_stands(name: str) -> None:
    finished, where = REFUSED[name]
    with pytest.raises(RefusedInput) as refusal:
        planned(finished)
    assert where in str(refusal.value)
    assert str(refusal.value).count("\n") == 0


def test_steps_beside_each_other_do_not_add_up() -> None:
    """42 mm over a bore of 20 leaves 11 mm, however many steps there are beside it."""
    steps = 'outside = "58mm", steps = [{ from = "0mm", to = "8mm", outside = "50mm" }, '
    steps += '{ from = "10mm", to = "18mm", outside = "46mm" }, { from = "20mm", to = "28mm", outside = "42mm" }]'
    crack = next(q for q in planned(steps).questions if q.id == "crack")
    assert crack.verdict is Verdict.YES


@pytest.mark.parametrize("use", ["plain-taper", "turned-stub", "nut-mandrel"])
@pytest.mark.parametrize(
    "finished",
    [
        'outside = "58mm", grooves = [{ from = "10mm", to = "13mm", bottom = "20.4mm" }]',
        'outside = "58mm", steps = [{ from = "0mm", to = "10mm", outside = "20.3mm" }]',
        'outside = "20.5mm"',
    ],
    ids=["groove", "step", "outside"],
)
def test_a_wall_of_a_few_tenths_is_a_no_in_every_hold(use: str, finished: str) -> None:
    answer = planned(finished, use)
    assert answer.verdict is Verdict.NO


def test_a_finish_out_of_reach_is_with_care_and_says_so() -> None:
    """0.05 mm a turn with a 0.4 mm nose leaves 0.8 um at best, twice that in practice."""
    answer = planned('outside = "58mm", roughness = "0.5um"')
    assert answer.schedule is not None
    assert any(b.limit == "finish" for b in answer.schedule.blocked)
    assert answer.verdict is Verdict.CARE
    assert answer.headline.startswith("With care")
    assert "finish" in answer.headline


def test_the_chamfer_allows_for_what_facing_takes() -> None:
    """3 mm off the length is 1.5 mm a face: the chamfer is cut that much deeper before mounting."""
    answer = planned('outside = "58mm", length = "37mm"')
    bore = next(s.text for s in answer.steps if s.title == "Check the bore")
    assert "by about 2 mm" in bore
    assert answer.schedule is not None
    stop = next(t.stops for t in answer.schedule.taken if t.cut == "face-trailing")
    assert "0.5 mm" in stop


def test_the_finish_begins_where_the_roughing_ends() -> None:
    answer = planned('edges = "0.5mm"')
    cuts = {c.id: c for c in answer.cuts}
    assert cuts["finish"].diameter == pytest.approx(cuts["rough"].leaves, abs=1e-9)
    assert cuts["finish"].leaves == pytest.approx(
        cuts["finish"].diameter - 2 * cuts["finish"].depth, abs=1e-9
    )


def test_no_groove_is_plunged_by_a_tool_thinner_than_any() -> None:
    answer = planned(
        'outside = "58mm", grooves = [{ from = "10mm", to = "13mm", bottom = "50mm" }]'
    )
    (groove,) = (c for c in answer.cuts if c.kind == "groove")
    assert groove.depth >= 1.5e-3 - 1e-9


def test_a_groove_of_twice_the_narrowest_tool_may_be_cut_by_it() -> None:
    """23 - 20 mm is a hair under 3 mm in binary: still two plunges of 1.5."""
    text = 'outside = "58mm", grooves = [{ from = "20mm", to = "23mm", bottom = "30mm" }]'
    answer = planned(text)
    (groove,) = (c for c in answer.cuts if c.kind == "groove")
    assert groove.depth == pytest.approx(3e-3 / groove.passes, rel=1e-9)
    assert "by a tool" in groove.name
    run = Run(0.023 - 0.020, 0.01, 0.05, 3e-3, 0.1e-3, 1.0, 10.0, least=1.5e-3)
    depths = {s.depths for s in settings_of(run, Machine(speeds=(1.0,), feeds=(0.1e-3,)))}
    assert {len(d) for d in depths} == {1, 2}


def test_steps_that_a_hold_does_not_reach_are_told() -> None:
    text = 'outside = "60mm", length = "39mm", steps = [{ from = "0mm", to = "10mm", outside = "50mm" }]'
    answer = planned(text, "four-jaw")
    assert answer.schedule is not None
    cut = [c.id for c in answer.cuts if c.id.startswith("step")]
    said = any("Not cut in this hold: step 1" in note for note in answer.schedule.notes)
    assert bool(cut) != said
    assert not any(c.id == "face-leading" for c in answer.cuts)
    assert any(step.title == "The other face" for step in answer.steps)


def test_the_cheapest_way_out_of_slip_is_a_feed_that_does() -> None:
    """The feed that is named, given to the lathe: nothing slips any more."""
    job = JOB.replace('"0.05mm", "0.1mm", "0.2mm"', '"0.6mm"').replace('"60mm"', '"160mm"')
    text = job.format(finished='outside = "156mm"', use="plain-taper")
    named = [
        float(found[1])
        for b in blocked_in(text)
        if (found := re.search(r"Cheapest: a feed of ([0-9.]+) mm/rev", b.way_out))
    ]
    assert len(named) >= 2
    finer = text.replace('"0.6mm"', f'"{min(named)}mm"')
    assert "slip" not in {b.limit for b in blocked_in(finer)}


def blocked_in(text: str) -> tuple[Blocked, ...]:
    schedule = plan(parse_job(text, "job"), source_tables=TABLES).schedule
    assert schedule is not None
    return schedule.blocked
