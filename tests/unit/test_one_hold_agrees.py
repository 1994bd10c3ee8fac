"""One chucking on paper: first hold and steps are one hold, in the order a hand works, with the chuck
that sets a casting true; bar for a batch; jaws inside a rim.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tests.chuck_jobs import bored, spoked, thin_ring, with_bore
from tests.jobs_made import wheel_job

from borewright.answer.held_picture import Role
from borewright.answer.plan import Plan
from borewright.answer.records import Have, Verdict
from borewright.holding.jaws.as_cast import set_true
from borewright.holding.jaws.chucked import squeezed_lightly
from borewright.holding.jaws.grasp import grasps
from borewright.holding.jaws.jawed import SCROLL, jawed
from borewright.holding.part import Part
from borewright.holding.registry import WAYS
from borewright.job import Job, parse_job
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()

HANDWHEEL = """
title = "Four cast handwheels"
units = "mm"
[work]
material = "gray iron"
blank = "casting"
outside = "166mm"
length = "40mm"
hub = { outside = "40mm" }
web = { thickness = "10mm" }
rim = { inside = "130mm" }
finished = { outside = "160mm", tolerance = "0.2mm", runout = "0.1mm" }
casting_runout = "2mm"
flaws = "none"
quantity = 4
[work.bore]
size = "20mm"
made_by = "solid"
"""

HUB = """
title = "Wheel with a long hub"
units = "mm"
[work]
material = "gray iron"
blank = "casting"
flaws = "none"
outline = [
  { from = "0mm", to = "20mm", outside = "40mm" },
  { from = "20mm", to = "45mm", outside = "123mm" },
]
finished = { outside = "120mm", tolerance = "0.1mm", runout = "0.05mm" }
quantity = 1
[work.bore]
size = "20 H7"
"""

PULLEY = """
title = "Aluminium pulley from bar"
units = "mm"
[work]
material = "aluminium"
blank = "bar"
outside = "62mm"
length = "22mm"
finished = { outside = "60mm", tolerance = "0.1mm", runout = "0.05mm" }
quantity = 1
[work.bore]
size = "12mm"
made_by = "solid"
"""


def read(text: str, *changes: tuple[str, str]) -> Job:
    for change in changes:
        assert text.count(change[0]) == 1
        text = text.replace(*change)
    return parse_job(text, "a trial")


def in_one(text: str, *changes: tuple[str, str]) -> Plan:
    return plan(replace(read(text, *changes), use="one-chucking"), source_tables=TABLES)


def titles(answer: Plan) -> list[str]:
    return [step.title for step in answer.steps]


def said(answer: Plan) -> str:
    return " ".join(step.text for step in answer.steps)


def without_four(text: str, throw: str) -> Job:
    job = read(text, ('casting_runout = "2mm"', f'casting_runout = "{throw}"'))
    return replace(job, shelf=replace(job.shelf, have_not=("four-jaw chuck",)))


# First hold and steps are one hold


@pytest.mark.parametrize("text", [HANDWHEEL, HUB])
def test_a_casting_in_one_chucking_is_held_in_one_chuck_on_the_whole_page(text: str) -> None:
    answer = in_one(text)
    assert answer.first_hold is not None
    assert answer.chosen is not None
    assert answer.first_hold.held_by.startswith("Four-jaw independent chuck")
    assert "four-jaw" in answer.chosen.tool
    assert any("four-jaw" in ready for ready in answer.have_ready)
    assert "three-jaw" not in " ".join((*answer.have_ready, answer.headline, said(answer)))
    assert answer.held is not None
    assert {m.number for m in answer.held.marks if m.role is Role.JAW} == {4}


@pytest.mark.parametrize(
    ("text", "on", "diameter"), [(HANDWHEEL, "inside of the rim", 0.130), (HUB, "boss", 0.040)]
)
def test_the_first_hold_is_that_hold_same_grip_same_face_out(
    text: str, on: str, diameter: float
) -> None:
    answer = in_one(text)
    assert answer.first_hold is not None
    assert answer.first_hold.jaws is not None
    assert answer.chosen is not None
    jaws = answer.first_hold.jaws
    assert (jaws.on, round(jaws.diameter, 6)) == (on, diameter)
    assert jaws.face_out != answer.chosen.leading_face
    last = answer.first_hold.steps[-1]
    assert last.title == "Bore to size, then the rim"
    assert "another hold" not in last.text
    assert by_the_steps(answer) in said(answer)


def by_the_steps(answer: Plan) -> str:
    assert answer.first_hold is not None
    assert answer.first_hold.jaws is not None
    return "by the hub" if answer.first_hold.jaws.on == "boss" else "by the inside of the rim"


def test_where_another_way_is_chosen_the_first_hold_bores_for_it_and_names_it() -> None:
    answer = plan(replace(read(HUB), use="turned-stub"), source_tables=TABLES)
    assert answer.chosen is not None
    assert answer.first_hold is not None
    assert answer.chosen.tool in answer.first_hold.steps[-1].text
    assert "in this one chucking" not in answer.first_hold.held_by


def test_without_a_four_jaw_only_a_casting_that_is_stated_round_goes_into_the_three_jaw() -> None:
    round_one = WAYS["one-chucking"].offer(without_four(HANDWHEEL, "0.3mm"), TABLES)[0]
    assert "three-jaw" in round_one.tool
    assert round_one.seat is not None
    assert round_one.seat.margin < 1
    out = WAYS["one-chucking"].offer(without_four(HANDWHEEL, "2mm"), TABLES)[0]
    assert "four-jaw" in out.tool
    assert [n.have for n in out.needs if "four-jaw" in n.what] == [Have.BUY]


# What is set true, and when


def test_a_hub_and_disc_goes_by_the_hub_that_stays_as_cast_and_has_no_rim() -> None:
    assert set_true(read(HUB).work).round_by == "the outside of the hub"
    answer = in_one(HUB)
    assert "outside of the hub" in said(answer)
    assert "inside of the rim" not in said(answer)
    assert " web " not in said(answer)


@pytest.mark.parametrize("text", [HANDWHEEL, HUB])
def test_a_casting_is_gripped_lightly_then_set_true_then_pulled_up(text: str) -> None:
    assert titles(in_one(text))[:4] == [
        "Grip it lightly",
        "Set it true",
        "Pull it up",
        "Pencil line and proof load",
    ]


# The order of the cuts


@pytest.mark.parametrize("text", [HANDWHEEL, HUB, PULLEY])
def test_the_proof_load_comes_before_any_cut_and_the_bore_is_finished_before_the_rim(
    text: str,
) -> None:
    wanted = [
        "Pencil line and proof load",
        "Face, and rough the bore",
        "Cut, in the order of the table",
        "Cool, then finish the bore",
        "The last size",
    ]
    assert [t for t in titles(in_one(text)) if t in wanted] == wanted


def test_other_ways_keep_their_steps() -> None:
    answer = plan(wheel_job(), use="turned-stub", source_tables=TABLES)
    assert "Cool, then the last size" in titles(answer)
    assert "Face, and rough the bore" not in titles(answer)


# The torque of the drill


def drilled_by(job: Job):  # type: ignore[no-untyped-def]
    drilling = WAYS["one-chucking"].offer(job, TABLES)[0].drilling
    assert drilling is not None
    return drilling


def test_the_largest_drill_is_a_millimetre_under_and_its_torque_is_the_hand_sum() -> None:
    """k_c f d^2 / 8 with 11 mm and 0.1 mm a turn; k_c of aluminium thin chips, worn drill."""
    drilling = drilled_by(read(PULLEY))
    inputs = {i.label: i.value for i in drilling.figure.inputs}
    assert inputs["drill"] == pytest.approx(0.011)
    assert inputs["feed each turn"] == pytest.approx(0.1e-3)
    kienzle = TABLES.kienzle("al-6061-t6")
    thin = 0.1 / 2 * math.sin(math.radians(59))
    correction = TABLES.cutting_correction
    force = kienzle.kc11.best * thin**-kienzle.mc.best
    force *= correction("tool_wear").best * correction("hss_tool").best
    assert inputs["specific force"] == pytest.approx(force * 1e6, rel=1e-9)
    assert drilling.figure.best == pytest.approx(force * 1e6 * 0.1e-3 * 0.011**2 / 8, rel=1e-9)


def test_a_hole_that_is_there_is_bored_not_drilled() -> None:
    found = WAYS["one-chucking"].offer(with_bore(wheel_job(), bored("drilled", 0.016)), TABLES)[0]
    assert found.drilling is None


def test_a_large_drill_in_a_small_bar_decides_the_grip_and_the_proof_load() -> None:
    answer = in_one(
        PULLEY,
        ('"aluminium"', '"mild steel"'),
        ('"62mm"', '"36mm"'),
        ('"60mm"', '"35.5mm"'),
        ('"12mm"', '"24mm"'),
    )
    slip = next(q for q in answer.questions if q.id == "slip")
    assert "a drill of 23 mm" in slip.reason
    assert answer.proof is not None
    torque = next(f.best for f in slip.figures if f.name == "drill_torque")
    assert answer.proof.torque == pytest.approx(answer.proof.factor * torque, rel=1e-9)


# Bar


def test_bar_goes_into_the_chuck_that_is_there() -> None:
    job = read(PULLEY)
    bare = replace(job, shelf=replace(job.shelf, have_not=("three-jaw chuck",)))
    held = WAYS["one-chucking"].offer(bare, TABLES)[0]
    assert "four-jaw" in held.tool
    assert not held.to_buy
    assert {m.number for m in held.picture.marks} == {4}  # type: ignore[union-attr]
    answer = plan(bare, source_tables=TABLES)
    assert answer.chosen is not None
    assert answer.chosen.way == "one-chucking"


def test_the_grip_is_lost_once_and_each_piece_costs_its_parting() -> None:
    """31 mm to grip once and 6 mm for each of four: 55 mm, not four times 37."""
    held = WAYS["one-chucking"].offer(read(PULLEY, ("quantity = 1", "quantity = 4")), TABLES)[0]
    cost = next(f for f in held.figures if f.name == "stock_to_grip")
    assert cost.best == pytest.approx(0.031 + 4 * 0.006, rel=1e-9)
    assert "31 mm (1.22 in) of bar for the grip, once, and 6 mm (0.24 in) for each piece" in (
        held.do_it
    )


def test_the_parting_tool_is_fetched() -> None:
    assert any("parting tool" in ready for ready in in_one(PULLEY).have_ready)


# Inside a rim


@pytest.mark.parametrize(
    ("pull", "words"), [(1.0, ""), (0.98, "Firmly"), (0.51, "Firmly"), (0.49, "Lightly")]
)
def test_a_pull_is_light_only_below_half_of_a_firm_one(pull: float, words: str) -> None:
    part = Part(thin_ring(), TABLES)
    held = replace(jawed(part, grasps(part)[0], SCROLL), pull=pull)
    assert squeezed_lightly(part, held).strip().startswith(words)
    assert bool(squeezed_lightly(part, held)) is bool(words)


def rim_held(job: Job, way: str):  # type: ignore[no-untyped-def]
    found = WAYS[way].offer(job, TABLES)
    return next(h for h in found if "inside of the rim" in h.tool)


def test_jaws_inside_a_rim_as_cast_are_with_care_and_the_draft_is_named() -> None:
    answer = in_one(HANDWHEEL)
    assert answer.verdict is Verdict.CARE
    assert "draft" in said(answer)
    assert "Strips of soft sheet" in next(q for q in answer.questions if q.id == "seat").changes_it
    turned = replace(spoked(), work=replace(spoked().work, blank="bar"))
    assert "draft" not in " ".join(s.text for s in rim_held(turned, "four-jaw").mount)


@pytest.mark.parametrize("way", ["three-jaw", "four-jaw", "soft-jaws"])
def test_the_tool_runs_out_between_the_rim_and_the_chuck(way: str) -> None:
    held = rim_held(spoked(), way)
    rings = held.picture.rings
    body = max(r.end for r in rings if r.role is Role.SPINDLE)
    rim = max((r for r in rings if r.role is Role.WORK), key=lambda r: r.outer)
    clear = TABLES.holding_fact("rim_clear").best
    assert rim.start - body == pytest.approx(clear, abs=1e-9)
    assert "clear of the chuck" in " ".join(s.text for s in held.mount)
