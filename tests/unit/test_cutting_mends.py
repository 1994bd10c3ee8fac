"""What trials of the cutting found: tools that ran into bolts, cuts left undone, odd passes, odd speeds."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest
from tests.jobs_made import wheel_job

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.job import parse_job
from borewright.planning.choice.arrangement import arrange
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.timed import timed
from borewright.planning.passes.setting import pass_counts
from borewright.planning.questions import ask_all
from borewright.planning.shop.names import material_taken
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()

STEPPED = """
title = "Hollow Brook stepped pulley"
units = "mm"
[work]
material = "gray iron"
blank = "bar"
outside = "106mm"
length = "54mm"
bore = { size = "19.01mm", made_by = "reamed", measured_with = "plug gauge" }
[work.finished]
outside = "100mm"
length = "50mm"
steps = [{ from = "0mm", to = "16mm", outside = "60mm" }, { from = "16mm", to = "32mm", outside = "80mm" }]
[machine]
speeds = ["45rpm", "75rpm", "125rpm", "266rpm"]
[hold]
mandrels = ["19mm"]
"""


def planned(text: str, use: str = "") -> Plan:
    return plan(parse_job(text, "job"), source_tables=TABLES, **({"use": use} if use else {}))


def test_a_tool_does_not_run_into_bolts_in_the_work() -> None:
    answer = planned(STEPPED, "faceplate")
    holes = [c for c in answer.candidates if "holes in it" in c.tool or "run into" in c.reason]
    assert holes
    assert all(c.verdict is Verdict.NO for c in holes)
    assert any("run into" in c.reason for c in answer.candidates)


def test_steps_are_turned_at_the_tailstock_and_say_where_they_stand() -> None:
    answer = planned(STEPPED)
    assert answer.chosen is not None
    assert (answer.chosen.way, answer.chosen.leading_face) == ("plain-taper", "B")
    names = [cut.name for cut in answer.cuts]
    assert any("16 to 32 mm" in name and "from face A" in name for name in names)
    mirrored = STEPPED.replace('from = "0mm", to = "16mm"', 'from = "34mm", to = "50mm"').replace(
        'from = "16mm", to = "32mm"', 'from = "18mm", to = "34mm"'
    )
    other = planned(mirrored).chosen
    assert other is not None
    assert other.leading_face == "A"


def test_a_deep_step_is_not_given_up_for_want_of_passes() -> None:
    """40 mm off a diameter is not done in eight passes more than the fewest."""
    answer = planned(STEPPED)
    assert answer.schedule is not None
    assert not answer.schedule.blocked
    assert {t.limit for t in answer.schedule.taken} <= {"slip", "lathe", "finish", "heat"}


@pytest.mark.parametrize("fewest", [1, 3, 10, 40])
def test_passes_are_tried_up_to_four_times_the_fewest_in_rising_order(fewest: int) -> None:
    counts = pass_counts(fewest, fewest)
    assert counts[0] == fewest
    assert counts == sorted(set(counts))
    assert set(range(fewest, fewest + 9)) <= set(counts)
    assert all(b - a <= 2 + a // 10 for a, b in itertools.pairwise(counts))
    assert counts[-1] <= max(4 * fewest, fewest + 8)


WISHED = """
title = "Hollow Brook wish"
units = "mm"
[work]
material = "6061"
blank = "bar"
outside = "63mm"
length = "27mm"
bore = { size = "16.006mm", made_by = "reamed", measured_with = "plug gauge" }
[work.finished]
outside = "60mm"
length = "25mm"
[machine]
speeds = ["125rpm", "266rpm"]
[hold]
mandrels = ["16mm"]
[[cut]]
kind = "turn"
depth = "0.4mm"
feed = "0.1mm"
speed = "266rpm"
"""


def test_what_asked_for_cuts_leave_undone_is_said() -> None:
    """1.5 mm of stock in passes of 0.4: three, and 0.3 mm is left; no face is cut, 2 mm are left."""
    answer = planned(WISHED)
    assert answer.schedule is not None
    said = " ".join(answer.schedule.notes)
    assert "leave 0.3 mm" in said
    assert "2 mm" in said
    assert "length is left" in said


def test_the_turns_that_were_asked_for_stand_as_asked() -> None:
    (cut,) = planned(WISHED).cuts
    assert cut.spindle_speed * 60 == pytest.approx(266, abs=1e-9)


def test_asking_of_the_cuts_again_is_asking_all_again() -> None:
    """The answers that other cuts cannot move are taken over: asked anew they are the same."""
    taken, _ = material_taken(replace(wheel_job(), use="plain-taper"), TABLES)
    found, _ = timed(arrange(taken, TABLES), TABLES)
    weighed = next(r.weighed for r in found.weighing.rows if isinstance(r.weighed, Weighed))
    assert weighed.questions == ask_all(weighed.trial)


def test_a_groove_is_plunged_by_hand_feeds_and_says_the_width_of_its_tool() -> None:
    text = STEPPED.replace(
        "steps = [{", 'grooves = [{ from = "40mm", to = "46mm", bottom = "88mm" }]\nsteps = [{'
    )
    answer = planned(text)
    (groove,) = (c for c in answer.cuts if c.kind == "groove")
    assert groove.feed <= 0.1e-3
    assert groove.seat_effect == "neither"
    assert groove.depth * groove.passes == pytest.approx(6e-3)


def test_a_stated_finish_counts_what_a_real_edge_leaves() -> None:
    """2 f² / (8 r) with r 0.4 mm: 0.09 mm leaves 5.06 um and is refused, 0.06 mm leaves 2.3 um."""
    text = WISHED.partition("[[cut]]")[0].replace(
        'length = "25mm"', 'length = "25mm"\nroughness = "5um"'
    )
    text = text.replace('"266rpm"]', '"266rpm"]\nfeeds = ["0.06mm", "0.09mm", "0.13mm"]')
    finish = next(c for c in planned(text).cuts if c.id == "finish")
    assert finish.feed == pytest.approx(0.06e-3)
