"""What of the part to change: what is tried has a reason, what is listed brings something.

Expected changes are the trade's (common practice, no source): rough in the chuck and only finish on
the mandrel; leave a boss on a thin blank; cut the keyway last; bore up to the mandrel you have; no
change removes a doubt about a flaw.
"""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import validate
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.change import Change
from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.job import Job, Keyway, MandrelNote, OwnReamer, Piece, parse_job
from borewright.planning.assemble import plan_job
from borewright.planning.changes import changes as room
from borewright.planning.changes.changes import MOST, changes
from borewright.planning.choice.arrangement import arrange
from borewright.planning.choice.candidates import Weighed
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.report.change_words import change_words
from borewright.report.plan_json import plan_object
from borewright.report.schema import plan_schema
from borewright.report.terminal import plan_text

TABLES = Tables()
TWELVE = Path(__file__).resolve().parents[2] / "examples" / "twelve"
DIAL = 5e-6  # metres: depths that no dial tells apart

HUB, RIM = Piece(0.0, 0.025, 0.036), Piece(0.0, 0.025, 0.160, 0.148)
WEB = Piece(0.009, 0.017, 0.148, 0.036)
THIN = wheel_job(length=0.006)
LARGE = wheel_job(outside=0.150, cuts=turning(0.8e-3, 0.15e-3))
BETWEEN = wheel_job(bore=0.0170, mandrels=(MandrelNote(0.018),))


def with_part(job: Job, **parts: object) -> Job:
    return replace(job, work=replace(job.work, **parts))  # type: ignore[arg-type]


def keyed(flaws: str = "none") -> Job:
    """A keyed wheel of scrap: the corner of its keyway is what cracks."""
    job = wheel_job(outside=0.05, material="al-scrap-cast", press="arbor press 3 ton")
    job = replace(job, cuts=turning(0.5e-3, 0.12e-3))
    return with_part(job, keyway=Keyway(0.005, 0.002), flaws=flaws)


def webbed() -> Job:
    job = wheel_job(material="gray-iron-30", press="arbor press 3 ton")
    return with_part(replace(job, cuts=turning(0.8e-3, 0.15e-3)), pieces=(HUB, WEB, RIM))


def listed(job: Job) -> dict[str, Change]:
    return {change.id: change for change in plan(job, source_tables=TABLES).changes}


COARSE = ('"200rpm"]', '"200rpm"]\nfeeds = ["0.004in/rev"]')


def twelve(name: str, change: tuple[str, str] = ("", "")) -> Plan:
    text = (TWELVE / f"{name}.toml").read_text(encoding="utf-8").replace(*change, 1)
    return plan(parse_job(text, name), source_tables=TABLES)


# When nothing is weighed


@pytest.mark.parametrize("name", ["02-class-blanks", "03-locomotive-wheels", "04-flywheel"])
def test_a_plain_yes_has_no_changes_and_weighs_none(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(room, "_weighed", lambda *asked: pytest.fail("a variant was weighed"))
    assert twelve(name).changes == ()


def test_a_list_of_parts_asks_for_none(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(room, "_weighed", lambda *asked: pytest.fail("a variant was weighed"))
    assert plan_job(LARGE, TABLES, with_changes=False).changes == ()


def test_no_change_removes_a_doubt_at_the_key_corner() -> None:
    assert twelve("11-worn-pulley").changes == ()
    assert plan(keyed("suspected"), source_tables=TABLES).changes == ()


def test_no_change_is_tried_on_an_empty_shelf() -> None:
    assert twelve("09-no-mandrels").changes == ()


def test_never_more_than_so_many_are_weighed(monkeypatch: pytest.MonkeyPatch) -> None:
    weighed: list[Job] = []
    monkeypatch.setattr(room, "_weighed", lambda job, *rest: weighed.append(job))
    job = with_part(webbed(), keyway=Keyway(0.005, 0.002))
    plan(job, source_tables=TABLES)
    assert 2 <= len(weighed) <= MOST


# The trade's changes


def bare(job: Job) -> Weighed:
    """Its best mandrel with no positive drive."""
    rows = (row.weighed for row in arrange(job, TABLES).weighing.rows)
    return next(w for w in rows if isinstance(w, Weighed) and w.trial.drive is None)


def test_the_home_cast_pulley_is_roughed_in_the_chuck_or_given_a_larger_hub() -> None:
    """On a lathe that has no finer feed: a fine one would let the mandrel drive it."""
    found = {c.id: c for c in twelve("08-home-cast-pulley", COARSE).changes}
    assert next(iter(found)) == "rough-first"
    assert found["rough-first"].verdict_after is Verdict.YES
    assert "to yes, if the casting is sound" in change_words(found["rough-first"], Show("inch"))
    larger = {c.id: c for c in changes(webbed(), TABLES, bare(webbed()))}["larger-hub"]
    assert larger.gains > 0
    assert "ask whoever drew it" in larger.drawing


def test_the_bush_that_warms_is_roughed_before_it_is_mounted() -> None:
    (change,) = twelve("06-bronze-bush").changes
    assert change.id == "rough-first"
    assert change.turns == ("heat",)
    assert "29.00 mm" in change.what  # 28.6 and a finishing cut of 0.2 a side


def test_a_thin_blank_keeps_a_boss_that_comes_off_last() -> None:
    """6 mm of bore, three quarters of 16.006 wanted: 6.005 more, which in steps of 2 mm is 8."""
    change = listed(THIN)["boss-left-on"]
    assert "turn it off last" in change.what
    assert "comes off again" in change.drawing
    assert "seat" in change.turns
    assert change.verdict_after is Verdict.YES
    assert "8 mm (0.31 in) long, 32.0 mm (1.26 in) outside" in change.what


def test_plain_work_is_not_asked_for_a_longer_hub() -> None:
    assert "longer-hub" not in listed(THIN)


def test_the_keyway_is_cut_last_where_its_corner_cracks() -> None:
    change = listed(keyed())["keyway-last"]
    assert change.verdict_before is Verdict.NO
    assert change.verdict_after is not Verdict.NO


def test_a_bore_between_two_sizes_is_opened_to_the_mandrel_that_is_there() -> None:
    change = listed(BETWEEN)["bore-up"]
    assert change.depth_before.best == 0
    assert change.verdict_after is Verdict.YES
    assert "18" in change.what
    assert "the shaft that goes in it" in change.drawing


def test_it_is_opened_by_the_shop_s_own_reamer_to_what_it_really_cuts() -> None:
    shelf = replace(BETWEEN.shelf, reamers=(OwnReamer(0.018, "the 18 reamer", cuts=6e-6),))
    change = listed(replace(BETWEEN, shelf=shelf))["bore-up"]
    assert "the 18 reamer" in change.what
    assert "18.006 mm" in change.what


def test_a_bore_is_not_opened_by_more_than_a_little() -> None:
    assert listed(wheel_job(bore=0.0150, mandrels=(MandrelNote(0.018),))) == {}


def test_a_drilled_bore_is_finished_first_and_the_drawing_stays() -> None:
    drilled = with_part(BETWEEN, bore=replace(BETWEEN.work.bore, made_by="drilled"))
    assert "nothing" in listed(drilled)["bore-finished"].drawing


def test_a_keyed_bore_is_not_opened() -> None:
    assert "bore-up" not in listed(with_part(BETWEEN, keyway=Keyway(0.004, 0.001)))


def test_a_flawed_casting_that_is_still_to_be_bored_is_fed_otherwise_next_time() -> None:
    job = with_part(wheel_job(material="gray-iron-30"), blank="casting", flaws="seen")
    job = with_part(job, bore=replace(job.work.bore, made_by="as-cast"))
    (change,) = listed(job).values()
    assert change.id == "sprue-moved"
    assert "looked at no less" in change.what
    assert "sound" not in change.what


def test_where_the_press_gives_out_no_hub_is_made_longer() -> None:
    """A push that stalls is all the grip there is, however long the bore."""
    assert "boss-left-on" not in listed(LARGE)
    assert "longer-hub" not in listed(LARGE)


def test_a_yes_whose_grip_keeps_the_cuts_light_is_roughed_in_the_chuck() -> None:
    """A 300 mm iron disc on 16 mm: a yes only because the cut is a third of the usual 0.8 mm."""
    job = wheel_job(outside=0.3, material="gray-iron-30", press="arbor press 3 ton")
    answer = plan(job, source_tables=TABLES)
    assert answer.verdict is Verdict.YES
    assert answer.cuts[0].depth < 0.4e-3
    assert answer.changes[0].id == "rough-first"


# What is listed brings something


JOBS = {"thin": THIN, "large": LARGE, "between": BETWEEN, "keyed": keyed(), "webbed": webbed()}


@pytest.mark.parametrize("name", JOBS)
def test_a_change_never_costs_depth_and_removes_trouble_or_gains_it(name: str) -> None:
    found = plan(JOBS[name], source_tables=TABLES).changes
    assert found
    for c in found:
        assert c.depth_after.best >= c.depth_before.best
        assert c.gains == pytest.approx(c.depth_after.best - c.depth_before.best)
        assert c.verdict_after.rank <= c.verdict_before.rank
        assert c.turns or c.gains >= 0.1 * c.depth_before.best


@given(
    outside=st.floats(0.04, 0.25),
    length=st.floats(0.006, 0.04),
    depth=st.floats(0.2e-3, 1.5e-3),
    press=st.sampled_from(["tailstock", "arbor press 1 ton", "arbor press 3 ton"]),
    material=st.sampled_from(["al-6061-t6", "gray-iron-30", "al-scrap-cast"]),
)
@settings(max_examples=12, deadline=None)
def test_no_change_to_any_wheel_costs_depth_or_verdict(
    outside: float, length: float, depth: float, press: str, material: str
) -> None:
    # in whole mm: every other size is another shape to be built
    mm, cut = (round(outside, 2), round(length, 3)), turning(depth, 0.15e-3)
    shelf = (MandrelNote(0.016), MandrelNote(0.018))
    job = wheel_job(*mm, material=material, press=press, cuts=cut, mandrels=shelf)
    for c in plan(job, source_tables=TABLES).changes:
        assert c.depth_after.best >= c.depth_before.best
        assert c.verdict_after.rank <= c.verdict_before.rank
        assert not math.isnan(c.gains)


@pytest.mark.parametrize("name", JOBS)
def test_they_go_by_the_depth_gained_then_by_what_they_cost(name: str) -> None:
    found = plan(JOBS[name], source_tables=TABLES).changes
    keys = [(-round(c.gains / DIAL), c.time.best) for c in found]
    assert keys == sorted(keys)


def test_the_depth_is_that_of_the_same_cut_in_step_with_its_margins() -> None:
    """By hand: depth x the lesser of likely margin / 2 and poor-case margin / 1."""
    found = {c.id: c for c in changes(webbed(), TABLES, bare(webbed()))}
    change = found["larger-hub"]
    for found in (change.depth_before, change.depth_after):
        inputs = {i.label: i.value for i in found.inputs}
        assert inputs["depth"] == pytest.approx(0.8e-3)
        by_hand = 0.8e-3 * min(inputs["likely margin"] / 2, inputs["poor-case margin"] / 1)
        assert found.best == pytest.approx(min(by_hand, 0.15 * (0.160 - 0.148) / 2))


def test_the_same_variant_weighed_by_itself_gives_the_verdict_that_is_listed() -> None:
    whole = with_part(keyed(), keyway=None)
    alone = plan(whole, source_tables=TABLES)
    assert listed(keyed())["keyway-last"].verdict_after is alone.verdict


def test_the_seam_takes_the_job_its_best_hold_and_the_tables() -> None:
    found = arrange(LARGE, TABLES)
    assert changes(found.job, TABLES, found.best) == plan(LARGE, source_tables=TABLES).changes


# As it is shown


def test_the_terminal_shows_what_each_brings_and_costs() -> None:
    answer = plan(webbed(), source_tables=TABLES)
    text = " ".join(plan_text(answer).split())
    assert "Change the part" in text
    for change in answer.changes:
        assert " ".join(change_words(change, Show("mm")).split()) in text
    assert "was not weighed" in text


def test_the_json_holds_them_with_their_figures() -> None:
    written = plan_object(plan(webbed(), source_tables=TABLES))["changes"]
    assert [c["id"] for c in written]
    for change in written:
        assert change["depth_after_m"]["best"] >= change["depth_before_m"]["best"]
        assert change["time_s"]["sources"] == ["ours"]
    validate(plan_object(plan(webbed(), source_tables=TABLES)), plan_schema())
