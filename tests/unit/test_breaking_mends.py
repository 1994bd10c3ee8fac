"""What a hostile trial broke, and must not break again."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from tests.cli_run import ran
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan
from tests.unit.test_planning_choices import trial_of

from borewright.answer.plan import Plan
from borewright.answer.records import Question, Verdict
from borewright.errors import RefusedInput
from borewright.job import parse_job
from borewright.job.interrupted import CrossHole, Keyway, Spokes
from borewright.job.parts_file import parse_parts
from borewright.job.records import Finished, Job, Machine, MandrelNote, Piece
from borewright.job.shelf_file import parse_shelf
from borewright.job.tools import OwnHammer, OwnPress
from borewright.mechanics.spokes import spokes_turning_stress
from borewright.planning.taper.soundness import spoke_turning
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service.parts_planned import parts_csv, parts_lines, parts_planned
from borewright.service.shelf_doubts import shelf_doubts

TABLES = Tables()
MANDREL_THAT_RISES_AND_FALLS = ((0.005, 0.015985), (0.05, 0.01603), (0.095, 0.015985))


def planned(job: Job) -> Plan:
    return plan(job, source_tables=TABLES)


def asked(job: Job, name: str) -> Question:
    return next(q for q in planned(job).questions if q.id == name)


def work_of(job: Job, **said: object) -> Job:
    return replace(job, work=replace(job.work, **said))


def shelved(job: Job, **said: object) -> Job:
    return replace(job, shelf=replace(job.shelf, **said))


def test_nothing_is_pressed_on_a_mandrel_that_is_beyond_use() -> None:
    note = MandrelNote(0.016, ground_length=0.1, stations=MANDREL_THAT_RISES_AND_FALLS)
    seat = asked(wheel_job(mandrels=(note,)), "seat")
    assert (seat.verdict, seat.margin) == (Verdict.NO, 0.0)
    typed = [
        a
        for x, d in MANDREL_THAT_RISES_AND_FALLS
        for a in ("--at", f"{1e3 * x:.6g}mm", f"{1e3 * d:.6g}mm")
    ]
    fit = [
        "fit",
        "--outside",
        "40mm",
        "--length",
        "25mm",
        "--bore",
        "16.006mm",
        "--material",
        "brass",
        "--travel",
        "20mm",
    ]
    assert ran("mandrel", *typed).code == 3
    assert ran(*fit, *typed).code == 3


@pytest.mark.parametrize(
    ("said", "place"),
    [
        ('keyway = { width = "8.5mm", depth = "2mm" }', "work.keyway.width"),
        ('keyway = { width = "4mm", depth = "1um" }', "work.keyway.depth"),
        ('cross_hole = { diameter = "1um" }', "work.cross_hole.diameter"),
    ],
)
def test_a_keyway_or_hole_that_no_tool_leaves_is_refused(said: str, place: str) -> None:
    text = f'units = "mm"\n[work]\nmaterial = "brass"\noutside = 50\nlength = 25\nbore = 16\n{said}'
    with pytest.raises(RefusedInput, match=place):
        parse_job(text, "job.toml")


def test_a_cross_hole_takes_its_mouths_off_the_grip_and_a_wide_one_forbids() -> None:
    def normal(hole: CrossHole | None) -> float:
        figures = planned(work_of(wheel_job(cuts=turning()), cross_hole=hole)).figures
        press = next(f.best for f in figures if f.name == "press_distance")
        return next(f.best for f in figures if f.name == "normal_force") / press**2

    assert normal(CrossHole(0.006, 0.0125)) < normal(CrossHole(0.002, 0.0125))
    wide = asked(work_of(wheel_job(), cross_hole=CrossHole(0.012, 0.0125)), "crack")
    assert wide.verdict is Verdict.NO
    assert "more than half" in wide.reason


def test_the_half_wall_of_a_keyway_is_that_of_the_finished_work() -> None:
    job = work_of(wheel_job(0.0285, 0.025, material="steel-1018"), keyway=Keyway(0.003, 0.0023))
    assert "half" not in asked(job, "crack").reason
    turned = work_of(job, finished=Finished(0.024))
    assert asked(turned, "crack").verdict is Verdict.NO
    assert "more than half" in asked(turned, "crack").reason


def spoked(width: float) -> Job:
    hub, rim = Piece(0.0, 0.04, 0.045), Piece(0.0, 0.04, 0.16, 0.144)
    web = Piece(0.014, 0.026, 0.144, 0.045)
    job = wheel_job(0.16, 0.04, material="gray-iron-30", cuts=turning(0.3e-3))
    return work_of(job, pieces=(hub, web, rim), spokes=Spokes(2, width, 0.012))


def test_spokes_must_carry_the_cut() -> None:
    assert asked(spoked(0.02), "crack").verdict is not Verdict.NO
    slight = asked(spoked(0.0015), "crack")
    assert slight.verdict is Verdict.NO
    assert "too slight for the cut" in slight.reason


def test_the_bending_of_spokes_goes_by_one_over_their_width_squared_and_their_number() -> None:
    one = spokes_turning_stress(50.0, 4, 0.05, 0.15, 0.02, 0.01)
    assert spokes_turning_stress(50.0, 8, 0.05, 0.15, 0.02, 0.01) == pytest.approx(one / 2)
    assert spokes_turning_stress(50.0, 4, 0.05, 0.15, 0.04, 0.01) == pytest.approx(one / 4)
    wide, thin = (spoke_turning(trial_of(spoked(w))) for w in (0.02, 0.01))
    assert wide is not None
    assert thin == pytest.approx(4 * wide, rel=1e-6)


def test_a_hammer_of_a_gram_ends_in_an_answer() -> None:
    job = shelved(wheel_job(press="soft hammer"), hammer=OwnHammer(0.001))
    assert planned(job).verdict is Verdict.NO


def test_a_press_with_a_name_alone_is_a_press_of_unknown_kind() -> None:
    own = OwnPress("the old press", daylight=0.5)
    answer = planned(shelved(wheel_job(), presses=(own,), press=own.called))
    assert answer.have_ready[1].startswith("the old press")
    assert any(a.what == "what presses the work on" for a in answer.assumed)


def test_a_press_of_a_strange_kind_is_told_of_as_the_shelf_s() -> None:
    own = OwnPress("", "nonsense")
    with pytest.raises(RefusedInput, match="shelf"):
        planned(shelved(wheel_job(), presses=(own,), press=own.called))


@pytest.mark.parametrize("said", ['["0.01mm"]', '["19m"]', '[{size = "16mm", taper = 2}]'])
def test_a_mandrel_that_no_shop_has_is_refused(said: str) -> None:
    with pytest.raises(RefusedInput, match="mandrel"):
        parse_shelf(f"mandrel = {said}", "shelf.toml")


def test_a_slower_gear_is_taken_where_the_wanted_one_lacks_the_power() -> None:
    speeds = (1.0, 2.5, 6.7)
    strong = Machine(speeds=speeds, power_by_gear=(1000.0, 1000.0, 1000.0))
    weak = Machine(speeds=speeds, power_by_gear=(1000.0, 1.0, 1.0))
    cuts = {m: planned(shelved(wheel_job(), machine=m)).cuts[0] for m in (strong, weak)}
    assert cuts[strong].spindle_speed > 1.0
    assert cuts[weak].spindle_speed == 1.0
    assert asked(shelved(wheel_job(), machine=weak), "speed").verdict is Verdict.YES


def test_a_speed_that_was_asked_for_is_not_changed_for_want_of_power() -> None:
    weak = Machine(speeds=(1.0, 2.5), power_by_gear=(1000.0, 1.0))
    wish = (replace(turning()[0], speed=None, spindle_speed=2.5),)
    assert planned(shelved(wheel_job(cuts=wish), machine=weak)).cuts[0].spindle_speed == 2.5


PARTS = (
    "part,material,outside,length,bore,blank,measured_with\n"
    "=1+1,iron,4in,1in,0.6251in,casting,plug gauge\n"
)


def test_a_list_of_parts_keeps_the_condition_and_is_no_formula() -> None:
    text = 'mandrel = ["5/8in"]\npress = { kind = "arbor press 3 ton" }'
    shelf = parse_shelf(text, "shelf.toml")
    done = parts_planned(parse_parts(PARTS, "parts.csv"), shelf, TABLES)
    assert any("if the casting is sound" in line for line in parts_lines(done, Show("inch")))
    assert b"'=1+1" in parts_csv(done, Show("inch"))


def test_a_row_with_cells_that_no_header_stands_over_is_not_read() -> None:
    read = parse_parts(PARTS.rstrip("\n") + ",more,and more\n", "parts.csv")
    assert read.parts == ()
    assert "9 cells under 7 headers" in read.bad[0].reason


def test_a_title_of_two_lines_is_refused_before_anything_is_asked(tmp_path: Path) -> None:
    done = ran("ask", "--title", "a\nb", stdin="\n" * 6)
    assert done.code == 2
    assert "--title" in done.err


@pytest.mark.parametrize("driver", ["collet", "three-jaw"])
def test_without_a_dog_nothing_is_said_of_one(driver: str) -> None:
    answer = planned(replace(wheel_job(cuts=turning()), driven_by=driver))
    said = " ".join([*(s.text for s in answer.steps), *(c.text for c in answer.cautions)])
    assert "dog" not in said.replace("three-jaw", "").replace("a dog between centers", "")
    assert ("chuck key" in said) is (driver == "three-jaw")


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ('[vice]\nopening = "1mm"', "opening"),
        ('[[press]]\nkind = "arbor press"\nthroat = "1mm"', "throat"),
        ('[[gauge]]\nkind = "bore gauge"\nuncertainty = "20m"', "uncertainty"),
    ],
)
def test_a_size_far_from_anything_usual_is_doubted(said: str, name: str) -> None:
    doubts = shelf_doubts(parse_shelf(said, "shelf.toml"), TABLES, Show("mm"))
    assert any(f"{name} " in d.what and "far from the usual" in d.what for d in doubts)
