"""The route to a bore: when there is one, what it aims at, which tools it takes, what it says."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from jsonschema import validate
from tests.bore_jobs import (
    INCH,
    SPEEDS,
    WINDOW,
    bored_job,
    by_class,
    drilled,
    made,
    route_of,
    solid,
)

from borewright.job.interrupted import Chamfers
from borewright.job.records import Bore, BoreLimits, Machine, Piece
from borewright.job.tools import OwnBoringBar, OwnDrill, OwnGauge, OwnReamer
from borewright.report import explain_text, plan_text
from borewright.report.plan_json import plan_object
from borewright.report.schema import plan_schema
from borewright.service.planned import plan

BY_64THS = OwnDrill(None, "by 64ths", INCH / 16, INCH)
KNOWN = OwnReamer(0.015875, "the 5/8 reamer", 0.0002 * INCH)


# When there is a route


@pytest.mark.parametrize("how", ["reamed", "bored", "honed", "turned"])
def test_a_finished_bore_in_its_window_needs_no_route(how: str) -> None:
    assert route_of(drilled(0.01588, how)) is None


@pytest.mark.parametrize("how", ["drilled", "cored", "cast", "unknown"])
def test_a_bore_that_is_not_finished_gets_one(how: str) -> None:
    assert route_of(drilled(0.0145, how) if how != "unknown" else solid()) is not None


def test_a_hole_that_was_measured_and_lies_in_its_window_is_taken_as_it_is() -> None:
    assert route_of(drilled(0.01588, "unknown")) is None


def test_a_reamed_bore_a_little_under_the_window_is_opened_into_it() -> None:
    job, window = drilled(WINDOW[0] - 0.03e-3, "reamed")
    told = replace(job.work.bore, uncertainty=2e-6)
    route = made((replace(job, work=replace(job.work, bore=told)), window))
    assert route.way == "ream with a 5/8 in machine reamer"
    assert "the bore as reamed" in route.starts_from


def test_a_reamed_bore_far_under_the_window_belongs_to_another_mandrel() -> None:
    assert route_of(drilled(WINDOW[0] - 1e-3, "reamed")) is None


# What it aims at


def test_it_aims_at_what_the_mandrel_takes() -> None:
    aim = made(solid()).aims_at
    assert (aim.low, aim.high) == WINDOW
    assert "the 5/8 in mandrel takes" in aim.set_by


def test_it_aims_at_the_class_where_no_mandrel_takes_most_of_it() -> None:
    aim = made(by_class("15 H7")).aims_at
    assert aim.low == pytest.approx(0.015)
    assert aim.high == pytest.approx(0.015018)
    assert "15 H7; no mandrel" in aim.set_by


def test_two_limits_without_a_class_find_the_reamer_between_them() -> None:
    limits = BoreLimits(0.6247 * INCH, 0.6262 * INCH)
    bore = Bore(limits.middle, limits.half_band, limits=limits)
    route = made((bored_job(bore), None))
    assert route.steps[-1].tool == "a 5/8 in machine reamer"
    assert (route.aims_at.low, route.aims_at.high) == (limits.low, limits.high)


def test_it_aims_at_what_the_mandrel_takes_of_the_class() -> None:
    job, _ = by_class("15 H7")
    aim = made((job, (0.0149, 0.015012))).aims_at
    assert aim.low == pytest.approx(0.015)
    assert aim.high == pytest.approx(0.015012)
    assert "the 5/8 in mandrel takes 15.000 to 15.012 mm" in aim.set_by


def test_a_drilled_hole_already_in_the_window_is_opened_to_no_size_but_made_clean() -> None:
    """Rough and out of round, and nothing is left to clean it up with at this size."""
    route = made(drilled(0.01588))
    assert route.aims_at.low is None
    assert route.chance is None
    assert route.go is None
    assert "any size serves" in route.aims_at.set_by


def test_without_a_mandrel_any_size_serves_and_is_measured() -> None:
    route = made(drilled(0.0141, window=None))
    assert [step.process for step in route.steps] == ["bore"]
    assert "It is what it is" in route.measure
    assert "any size serves" in route.steps[0].text


# Which tools


def test_five_eighths_after_39_64_is_the_everyday_way() -> None:
    route = made(solid())
    assert [step.process for step in route.steps] == ["spot", "pilot", "drill", "ream"]
    assert route.steps[2].tool == "the 39/64 in drill"
    assert route.steps[3].tool == "a 5/8 in machine reamer"
    assert route.chance is not None
    assert route.chance.best > 0.9
    stock = route.steps[3].stock
    assert stock is not None
    # TM 1-420 leaves 0.005 to 0.010 in for the reamer; this one cuts 0.0005 in over its mark besides.
    assert 0.005 * INCH <= stock.best - 0.0005 * INCH <= 0.010 * INCH


def test_reaming_runs_at_half_the_speed_of_drilling_or_the_next_slower() -> None:
    free = made(solid())
    job, window = solid()
    endless = tuple(k / 60 for k in range(20, 2000))
    job = replace(job, shelf=replace(job.shelf, machine=Machine(speeds=endless)))
    route = made((job, window))
    drill, ream = route.steps[2].spindle, route.steps[3].spindle
    assert drill is not None
    assert ream is not None
    # 70 ft/min on 39/64 in, half of it on 5/8 in, by rpm = fpm / (0.2618 D): the next whole rpm.
    assert drill.best * 60 == pytest.approx(math.floor(70 / (0.2618 * 39 / 64)), abs=1)
    assert ream.best * 60 == pytest.approx(math.floor(35 / (0.2618 * 5 / 8)), abs=1)
    for step in free.steps:
        assert step.spindle is not None
        assert any(math.isclose(step.spindle.best, speed) for speed in SPEEDS)


def test_a_cored_hole_is_bored_before_any_reamer_and_never_drilled() -> None:
    route = made(drilled(0.0140, "cored", blank="casting"))
    assert route.steps[0].process == "bore"
    assert "drill" not in {step.process for step in route.steps}
    assert "under the skin" in route.steps[0].text
    ways = [a.way for a in route.alternatives]
    assert not any(way.startswith("drill") for way in ways)


def test_a_casting_is_bored_true_before_it_is_reamed() -> None:
    route = made(solid(blank="casting", reamers=(KNOWN,)))
    assert [s.process for s in route.steps][-2:] == ["bore", "ream"]
    assert "follows" in route.ream_or_bore


def test_a_hand_reamer_gets_little_stock_and_no_spindle_speed() -> None:
    hand = OwnReamer(0.015875, "hand reamer", 0.0002 * INCH)
    route = made(solid(reamers=(hand,)))
    last = route.steps[-1]
    assert route.steps[-2].process == "bore"
    assert last.spindle is None
    assert "turned by hand" in last.feed
    assert last.stock is not None
    assert last.stock.best <= 0.005 * INCH


def test_an_expanding_reamer_is_set_in_scrap_to_the_middle_of_the_window() -> None:
    expanding = OwnReamer(0.015875, "the expanding 5/8 reamer")
    short = OwnBoringBar(0.009, 0.010)
    route = made(solid(reamers=(expanding,), boring_bar=short, drills=(OwnDrill(0.6160 * INCH),)))
    size = route.steps[-1].size
    assert size is not None
    assert size.best == pytest.approx(sum(WINDOW) / 2)
    assert "set by trial in scrap to 0.6249 in" in route.steps[-1].text
    far = made(solid(reamers=(OwnReamer(0.0127, "expanding 1/2"),)))
    assert "expanding" not in far.way


def test_a_reamer_of_known_cut_is_believed() -> None:
    route = made(solid(reamers=(KNOWN,)))
    size = route.steps[-1].size
    assert size is not None
    assert size.best == pytest.approx(0.6252 * INCH)
    assert "scrap" not in route.steps[-1].text
    assert not [f for f in route.figures if f.name == "window_chance"]


def test_a_reamer_of_unknown_cut_is_tried_in_scrap_first_and_both_chances_are_told() -> None:
    route = made(solid())
    alone = next(f for f in route.figures if f.name == "window_chance")
    assert route.chance is not None
    assert alone.best < route.chance.best
    assert "Where the scrap does not land, bore to size instead" in route.steps[-1].text


def test_a_reamer_that_hardly_ever_lands_is_not_worth_a_trial() -> None:
    route = made(solid(window=(0.015862, 0.015878)))
    assert route.steps[-1].process == "bore"
    other = next(a for a in route.alternatives if a.way.startswith("drill, then ream"))
    assert other.chance is not None
    assert other.chance < 0.2


def test_a_reamer_made_for_the_class_is_sized_by_the_usual_rule() -> None:
    """15 H7 is 18 um wide. By the rule the largest reamer lies 15 % of it under 15.018, rounded up
    to a whole um: 15.0153, so 15.016; its band is 35 %, 6.3, so 7: 15.009 to 15.016, 15.0125 in the
    middle, and a tenth of the 18 over that: 15.0143."""
    size = made(by_class("15 H7")).steps[-1].size
    assert size is not None
    assert size.best == pytest.approx(0.0150143, abs=1e-9)


def test_a_reamer_for_the_hole_of_a_textbook_is_the_one_printed() -> None:
    """55 +0.035/0 wants a reamer of 55.017 to 55.030 mm: P. C. Sharma, Production Engineering,
    Ex. 15.5. Ours cuts a tenth of the 0.035 over the middle of that; the middle is unsure by half
    of the 0.013, the cut downwards by the tenth."""
    limits = BoreLimits(0.055, 0.055035, "H7", 0.055)
    bore = Bore(limits.middle, limits.half_band, limits=limits)
    pieces = (Piece(0.0, 0.025, 0.09),)
    own = (OwnReamer(0.055, "the 55 H7 reamer"),)
    route = made((bored_job(bore, "mm", reamers=own, pieces=pieces), None))
    size = route.steps[-1].size
    assert size is not None
    assert size.low is not None
    assert size.best * 1e3 == pytest.approx((55.017 + 55.030) / 2 + 0.0035, abs=1e-6)
    assert (size.best - size.low) * 1e3 == pytest.approx(math.hypot(0.0035, 0.0065), abs=1e-6)


def test_opening_a_drilled_hole_by_much_is_said() -> None:
    assert "see that the part allows it" in made(drilled(0.0131)).aims_at.set_by
    assert "allows" not in made(drilled(0.0149)).aims_at.set_by


def test_a_reamer_that_is_not_on_a_listed_shelf_is_said_but_not_taken() -> None:
    route = made(solid(reamers=(OwnReamer(0.0127, "the half inch"),)))
    assert route.way == "bore to size"
    missing = [a for a in route.alternatives if a.owned == "no"]
    assert missing
    assert all("would have to be got" in a.reason for a in missing)


def test_a_drill_that_is_not_on_a_listed_shelf_is_named_as_what_to_get() -> None:
    only, bar = (OwnDrill(0.003),), OwnBoringBar(0.02)
    route = made(solid(drills=only, reamers=(KNOWN,), boring_bar=bar))
    drill = next(step for step in route.steps if step.process == "drill")
    assert (drill.tool, drill.owned) == ("a 39/64 in drill", "no")


def test_a_bar_that_does_not_reach_leaves_the_reamer() -> None:
    short = OwnBoringBar(0.009, 0.010)
    route = made(solid(boring_bar=short))
    assert route.steps[-1].process == "ream"
    bored = next(a for a in route.alternatives if a.way == "bore to size")
    assert (bored.possible, bored.chance) == (False, None)
    assert bored.reason == "the bore is deeper than the bar reaches"


def test_where_nothing_serves_it_says_so_and_gives_no_steps() -> None:
    pieces = (Piece(0.0, 0.2, 0.0635),)
    route = made(drilled(0.0140, "cored", blank="casting", pieces=pieces))
    assert route.steps == ()
    assert route.chance is None
    assert route.ream_or_bore.startswith("Neither, with what is here")


def test_what_is_not_stated_is_said_to_be_taken() -> None:
    assert {a.what for a in made(solid()).assumed} >= {"drills", "boring bar", "reamer"}
    own = made(solid(drills=(BY_64THS,), boring_bar=OwnBoringBar(), reamers=(KNOWN,)))
    assert {a.what for a in own.assumed} == {"micrometer"}
    assert {s.owned for s in own.steps if s.process not in ("spot",)} == {"yes"}


# How it is measured


def test_the_plug_goes_from_the_smallest_to_the_largest() -> None:
    route = made(solid())
    assert route.go is not None
    assert route.not_go is not None
    steps = [f.best for f in route.plug_steps]
    assert (route.go.best, route.not_go.best) == WINDOW == (steps[0], steps[-1])
    assert steps == sorted(steps)
    assert 2 <= len(steps) <= 4


@pytest.mark.parametrize(
    ("sure", "says"),
    [(1.4e-6, "ten to one, as the trade asks"), (3e-6, "four to one at least"), (7e-6, "less than the four to one")],
)  # fmt: skip
def test_the_gauge_is_held_against_the_window(sure: float, says: str) -> None:
    route = made(solid(gauges=(OwnGauge("bore gauge", sure, 0.010, 0.020),)))
    assert route.gauge == "the bore gauge"
    assert says in route.measure
    assert route.ratio is not None
    assert route.ratio.best == pytest.approx((WINDOW[1] - WINDOW[0]) / (2 * sure))


def test_a_gauge_that_does_not_go_in_is_left_in_its_box() -> None:
    route = made(solid(gauges=(OwnGauge("bore gauge", 1e-6, 0.018, 0.035),)))
    assert route.gauge == "a stepped plug turned for it"


def test_the_tell_tale_is_the_chamfer_that_is_there_or_one_to_be_cut() -> None:
    assert "Chamfer both edges" in made(solid()).before_mounting
    assert "nearly eaten one" in made(solid(chamfers=Chamfers(0.001, 0.001))).before_mounting


# On the screen and in the files


@pytest.fixture(scope="module")
def planned() -> object:
    return plan(bored_job(Bore(0.015478, None, "caliper", "drilled")))


def test_the_terminal_shows_it_before_the_steps(planned: object) -> None:
    text = plan_text(planned)  # type: ignore[arg-type]
    part = text[text.index("\nBore route\n") :]
    assert "From the hole as drilled, 0.6094 in (15.478 mm)." in part
    assert max(len(line) for line in text.splitlines()) <= 90
    assert "\nSteps\n" not in text or text.index("\nSteps\n") > text.index("\nBore route\n")


def test_the_explanation_has_its_figures(planned: object) -> None:
    text = explain_text(planned)  # type: ignore[arg-type]
    said = " ".join(text.split())
    assert "reamed size = 0.6255 in" in said
    assert "chance with trial = " in said


def test_the_json_fits_the_schema_with_and_without_a_figure(planned: object) -> None:
    validate(plan_object(planned), plan_schema())  # type: ignore[arg-type]
    route = plan_object(planned)["bore_route"]  # type: ignore[arg-type]
    assert {"size_m", "stock_m", "spindle_rev_per_s"} <= set(route["steps"][0])
    stub = plan(bored_job(Bore(0.0141, None, "caliper", "drilled")))
    validate(
        plan_object(replace(stub, bore_route=made(drilled(0.0141, window=None)))), plan_schema()
    )
    validate(plan_object(replace(stub, bore_route=None)), plan_schema())


def test_two_reamers_of_one_name_and_size_are_told_apart_by_how_they_cut() -> None:
    known, unknown = OwnReamer(0.015875, cuts=30e-6), OwnReamer(0.015875)
    alone, both = (made(solid(reamers=r)).best_chance for r in ((unknown,), (known, unknown)))
    assert both == pytest.approx(alone)
