"""What odd parts and odd shelves broke, each held by the answer it should have had."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from tests.jobs_made import wheel_job

from borewright.answer.records import Verdict
from borewright.errors import RefusedInput, UnknownName
from borewright.holding.taper.plain_taper import holds
from borewright.job import parse_job, parse_shelf
from borewright.job.records import Job
from borewright.planning.shop.names import material_taken
from borewright.planning.shop.shop import shop_of
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service.planned import plan
from borewright.service.shelf_doubts import shelf_doubts

TABLES = Tables()


def job(text: str) -> Job:
    return parse_job(text, "job.toml")


def test_a_disc_as_thin_as_two_chamfers_is_answered() -> None:
    tiny = 'work = { material = "mild steel", outside = "6mm", length = "1mm", bore = "2mm" }'
    assert plan(job(f'units = "mm"\n{tiny}\n[hold]\nmandrels = ["2mm"]'), source_tables=TABLES)


def test_a_cored_bore_that_no_mandrel_can_be_opened_to_is_answered() -> None:
    cored = 'bore = { size = "0.79in", made_by = "cored" }'
    text = f'[work]\nmaterial = "gray iron"\nblank = "casting"\noutside = "0.85in"\nlength = "1in"\n{cored}'
    assert plan(job(text), source_tables=TABLES).headline


def grip_of_disc(length: float) -> float:
    text = f'units = "mm"\n[work]\nmaterial = "bronze"\noutside = "50mm"\nlength = "{length}mm"\nbore = "10mm"\n[hold]\nmandrels = ["10mm"]'
    made, _ = material_taken(job(text), TABLES)
    hold = holds(made, shop_of(made, TABLES).mandrels[0], TABLES)[0]
    force = hold.grip(0.03).normal_force
    assert np.isfinite(force).all()
    return float(force[0])


def test_a_thin_disc_has_a_grip_that_is_a_number_and_grows_evenly() -> None:
    thin, middle, thick = (grip_of_disc(mm) for mm in (1.9, 2.0, 2.1))
    assert middle == pytest.approx((thin + thick) / 2, rel=0.01)
    assert thin < middle < thick


SHORT_HUB = """
units = "mm"
[work]
material = "mild steel"
outside = "100mm"
length = "50mm"
hub = { outside = "40mm", from = "0mm", to = "20mm" }
web = { from = "2mm", to = "8mm" }
rim = { inside = "80mm" }
bore = { size = "19.99mm", measured_with = "plug gauge", made_by = "reamed" }
[hold]
mandrels = ["20mm"]
use = "20 mm mandrel"
"""


def test_the_window_is_that_of_the_bore_where_it_begins_and_not_of_the_face() -> None:
    """The hub begins 30 mm behind face B: at 1:2000 the mandrel is 15 µm smaller there."""
    answer = plan(job(SHORT_HUB), source_tables=TABLES)
    assert answer.chosen is not None
    assert answer.chosen.leading_face == "B"
    assert answer.bore_window is not None
    low, high = answer.bore_window
    assert low < 0.01999 < high
    flush = SHORT_HUB.replace('to = "20mm" }\nweb', 'to = "50mm" }\nweb')
    other = plan(job(flush), source_tables=TABLES)
    assert other.bore_window is not None
    # The same travel on the same mandrel: high end lower by 30 mm of taper, but for a step of travel.
    assert other.bore_window[1] - high == pytest.approx(15e-6, abs=4e-6)


def test_a_mandrel_shorter_than_the_work_is_a_no_and_never_first() -> None:
    text = """
units = "mm"
[work]
material = "mild steel"
outside = "30mm"
length = "160mm"
bore = "16mm"
[hold]
mandrels = [{ size = "16mm", small_end = "15.99mm", ground_length = "100mm", overall_length = "140mm" }]
"""
    answer = plan(job(text), source_tables=TABLES)
    short = [c for c in answer.candidates if c.way == "plain-taper"]
    assert {c.verdict for c in short} == {Verdict.NO}
    assert "too short" in short[0].reason


def test_a_bore_known_by_a_rule_does_not_put_the_mandrel_first() -> None:
    """Half a millimetre either way over a window of some 30 µm: one chance in thirty."""
    guessed = wheel_job(bore=0.016, uncertainty=0.5e-3)
    answer = plan(guessed, source_tables=TABLES)
    assert answer.chosen is not None
    assert answer.chosen.way != "plain-taper"
    close = plan(wheel_job(bore=0.016, uncertainty=20e-6), source_tables=TABLES)
    assert close.chosen is not None
    assert close.chosen.way == "plain-taper"


def test_a_plain_mandrel_is_not_pressed_on_a_thread() -> None:
    text = """
units = "mm"
[work]
material = "mild steel"
outside = "40mm"
length = "20mm"
bore = { size = "18.5mm", thread = "M20 x 1.5", measured_with = "plug gauge" }
[hold]
mandrels = ["18mm", "19mm", "18.5mm"]
"""
    answer = plan(job(text), use="plain-taper", source_tables=TABLES)
    assert answer.verdict is Verdict.NO
    bore = next(q for q in answer.questions if q.id == "bore")
    assert "threaded" in bore.reason


def test_a_bare_class_below_six_takes_the_units_of_its_file() -> None:
    text = 'units = "mm"\nwork = { material = "brass", outside = "30mm", length = "10mm", bore = "2 H7" }'
    assert job(text).work.bore.limits is not None
    assert job(text).work.bore.size == pytest.approx(2.005e-3, abs=1e-9)


@pytest.mark.parametrize("name", TABLES.table("holding_tools").column("name"))
def test_a_tool_is_known_by_the_name_that_a_plan_prints(name: str) -> None:
    assert TABLES.holding_tool(name).name == name


@pytest.mark.parametrize("name", TABLES.table("ways").column("name"))
def test_a_way_is_known_by_the_name_that_a_plan_prints(name: str) -> None:
    assert TABLES.way(name).name == name


@pytest.mark.parametrize("line", ['have = ["unicorn"]', 'have_not = ["unicorn"]'])
def test_a_word_that_means_no_tool_is_refused(line: str) -> None:
    text = f'units = "mm"\nwork = {{ material = "brass", outside = "30mm", length = "10mm", bore = "16mm" }}\n[hold]\n{line}'
    with pytest.raises(UnknownName, match="unicorn"):
        plan(job(text), source_tables=TABLES)


def test_what_is_there_is_not_also_missing() -> None:
    lines = 'have = ["collets"]\nhave_not = ["collet set"]'
    text = f'units = "mm"\nwork = {{ material = "brass", outside = "30mm", length = "10mm", bore = "16mm" }}\n[hold]\n{lines}'
    with pytest.raises(RefusedInput, match="collet set"):
        plan(job(text), source_tables=TABLES)


def test_shelf_check_doubts_a_tool_that_no_table_knows() -> None:
    shelf = parse_shelf('have_not = ["unicorn"]\n[[holding]]\nkind = "bogus"', "shelf.toml")
    said = [str(d) for d in shelf_doubts(shelf, TABLES, Show("mm"))]
    assert any("bogus" in s for s in said)
    assert any("unicorn" in s for s in said)


def test_a_mandrel_needs_a_dog_and_a_tailstock_center_like_any_other_hold() -> None:
    bare = replace(wheel_job().shelf, have_not=("lathe dog", "tailstock center"))
    answer = plan(replace(wheel_job(), shelf=bare), source_tables=TABLES)
    best = next(c for c in answer.candidates if c.tool == "16 mm mandrel")
    assert {n.have.value for n in best.needs} == {"make", "buy"}
    assert answer.chosen is None or answer.chosen.way != "plain-taper"


def test_every_margin_of_every_row_is_a_number() -> None:
    for length in (0.001, 0.002, 0.003, 0.012, 0.16):
        answer = plan(wheel_job(0.05, length), source_tables=TABLES)
        for question in answer.questions:
            assert not math.isnan(question.margin), (length, question.id)
            assert "nan" not in question.reason.split()


def test_hardened_steel_is_not_drilled_in_one_chucking() -> None:
    text = 'units = "mm"\n[work]\nmaterial = "o1 hardened"\nblank = "bar"\noutside = "80mm"\nlength = "10mm"\nbore = "16.006mm"\n[hold]\nmandrels = "none"'
    answer = plan(job(text), source_tables=TABLES)
    row = next(c for c in answer.candidates if c.way == "one-chucking")
    assert row.verdict is Verdict.NO
    assert "hardened" in row.reason
    assert answer.bore_route is None


def test_cones_do_not_push_in_the_mouths_of_a_pin_hole() -> None:
    text = 'units = "mm"\n[work]\nmaterial = "brass"\nblank = "bar"\noutside = "8mm"\nlength = "8mm"\nbore = { size = "1.5mm", made_by = "reamed", measured_with = "plug gauge" }'
    answer = plan(job(text), use="cone-centers", source_tables=TABLES)
    assert answer.verdict is Verdict.NO
    assert "push of a cone" in answer.headline


def test_no_washer_spans_a_foot_of_bore() -> None:
    text = 'units = "mm"\n[work]\nmaterial = "gray iron"\nblank = "casting"\noutside = "400mm"\nlength = "60mm"\nbore = { size = "300mm", made_by = "bored", measured_with = "caliper" }'
    answer = plan(job(text), source_tables=TABLES)
    assert not [c.tool for c in answer.candidates if "bolt through the bore" in c.tool]
