"""What the way out of a blocked cut says: with the number it names, the plan is blocked no more."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from tests.blocked_cuts import (
    COARSE,
    FINE,
    TABLES,
    WEAK,
    blocked_cuts,
    own,
    text_of,
)

from borewright.answer.schedule import Blocked
from borewright.job import parse_job
from borewright.job.records import Job
from borewright.mechanics.roughness import ridge_height
from borewright.mechanics.spread import likely
from borewright.planning.passes import search
from borewright.planning.passes.least_time import Found, solved
from borewright.planning.passes.limits import Wanted
from borewright.planning.passes.mends import MENDS, Change, changes
from borewright.planning.passes.other_holds import travelled
from borewright.planning.passes.problem import Problem
from borewright.planning.passes.search import searched, single_changes
from borewright.planning.passes.way_out import LIMITS, way_out
from borewright.planning.taper.trial import Trial, past_what
from borewright.reference import Tables
from borewright.service.planned import plan

TWELVE = Path(__file__).parents[2] / "examples" / "twelve"


def blocked_in(text: str, tables: Tables = TABLES) -> dict[str, Blocked]:
    schedule = plan(parse_job(text, "job"), source_tables=tables).schedule
    assert schedule is not None
    return {b.cut: b for b in schedule.blocked}


def first(changed: dict[str, str], cut: str = "", tables: Tables = TABLES) -> Problem:
    """The problem of a blocked cut, or of the first."""
    return next(p for c, _, p in blocked_cuts(text_of(**changed), tables) if cut in ("", c.id))


def on_twelve(stem: str, power: float = 5e3) -> Job:
    """One of the twelve jobs on a lathe with one feed and one speed, both far too fast."""
    job = parse_job((TWELVE / f"{stem}.toml").read_text("utf-8"), "job")
    machine = replace(job.shelf.machine, feeds=(0.6e-3,), speeds=(20.0,), power=power)
    return replace(job, shelf=replace(job.shelf, machine=machine))


@pytest.mark.parametrize("mend", ["finer-feed", "other-nose", "more-passes"])
@pytest.mark.parametrize("minutes", [4, 40])
def test_more_minutes_never_make_a_mend_cheaper(mend: str, minutes: int, tmp_path: Path) -> None:
    row = next(r for r in TABLES.table("mend_minutes").rows if r.text("id") == mend)
    best, high = row.text("once_best"), row.text("once_high")
    old = f"{mend},{row.text('once_low')},{best},{high}"
    new = f"{mend},{row.text('once_low')},{float(best) + minutes},{float(high) + minutes}"
    dearer = own(tmp_path, "mend_minutes", (old, new))
    for lathe in (COARSE, FINE):
        before, after = costs(first(lathe)), costs(first(lathe, tables=dearer))
        assert before.keys() == after.keys()
        assert all(after[m] >= before[m] - 1e-9 for m in before)
        assert all(after[m] == pytest.approx(before[m] + minutes) for m in before if m == mend)
        assert min(after.values()) >= min(before.values()) - 1e-9
        named_first = searched(first(lathe, tables=dearer)).mended[0]
        assert named_first.cost == pytest.approx(min(after.values()))


def costs(problem: Problem) -> dict[str, float]:
    """Minutes of every single change that unblocks, the cheapest of its kind."""
    found: dict[str, float] = {}
    for change in single_changes(problem):
        answer = solved(change.problem)
        if not answer.blocked:
            (mend,) = change.mends
            cost = search.setting_up(change) + answer.setting.seconds / 60
            found[mend] = min(cost, found.get(mend, cost))
    return found


def test_a_batch_is_worth_a_dearer_tool() -> None:
    """One wheel is faced at a hand's feed; for twenty a nose is ground, and each is cut sooner."""
    one = searched(first(FINE, "finish")).mended[0]
    twenty = searched(first({**FINE, "quantity": "20"}, "finish")).mended[0]
    assert one.change.mends == ("finer-feed",)
    assert twenty.change.mends == ("other-nose",)
    assert twenty.found.setting.seconds < one.found.setting.seconds
    assert twenty.setting_up > one.setting_up


def test_no_mend_leaves_ridges_higher_than_its_pass_is_deep() -> None:
    for lathe in (COARSE, WEAK):
        for _, _, problem in blocked_cuts(text_of(**lathe)):
            for mended in searched(problem).mended:
                nose = mended.change.problem.model.nose_radius
                ridge = float(ridge_height(mended.found.setting.feed, nose))
                assert ridge <= min(mended.found.setting.depths)


def test_a_shoulder_is_not_cut_with_a_slanting_edge_nor_a_groove_with_another_nose() -> None:
    stepped = 'outside = "156mm", steps = [{ from = "0mm", to = "10mm", outside = "120mm" }]'
    step = first({**COARSE, "finished": stepped}, "step-1-rough")
    groove = replace(step, model=replace(step.model, kind="groove"))
    bare = Change((), step, ())
    assert not list(changes("tool-turned", bare))
    assert list(changes("other-nose", bare))
    for mend in ("other-nose", "tool-turned", "more-passes", "spring-pass"):
        assert not list(changes(mend, Change((), groove, ())))


def test_a_longer_travel_is_one_that_hurts_nothing_and_grips_more() -> None:
    found = 0
    for _, _, problem in blocked_cuts(on_twelve("06-bronze-bush")):
        now = problem.holding.trial  # type: ignore[attr-defined]
        for press, other in travelled(problem):
            trial: Trial = other.holding.trial  # type: ignore[attr-defined]
            found += 1
            assert not past_what(trial, trial.chosen.travel)
            assert trial.chosen.travel > now.chosen.travel
            assert press == pytest.approx(trial.chosen.travel - trial.hand)
            assert likely(trial.grip.friction_force) > likely(now.grip.friction_force)
    assert found >= 2


def test_a_positive_drive_is_tried_where_one_can_be_had_and_counts_its_making() -> None:
    problems = [p for _, _, p in blocked_cuts(on_twelve("11-worn-pulley"))]
    slips = next(p for p in problems if p.model.id == "face-leading")
    assert solved(slips).blocked == "slip"
    (change,) = changes("positive-drive", Change((), slips, ()))
    assert not solved(change.problem).blocked
    assert search.setting_up(change) > change.making > 0
    driven = replace(slips, holding=change.problem.holding)
    assert not list(changes("positive-drive", Change((), driven, ())))


def test_two_changes_together_are_named_only_where_no_one_is_enough() -> None:
    found = [(p, searched(p)) for _, _, p in blocked_cuts(on_twelve("10-gear-blanks"))]
    both = [(p, r.mended[0]) for p, r in found if len(r.mended[0].change.mends) == 2]
    assert len(both) >= 2
    for problem, mended in both:
        assert not costs(problem)
        assert not solved(mended.change.problem).blocked
        said = way_out(solved(problem), problem.model, problem.holding)
        assert ", and " in said.partition("Cheapest: ")[2]


def test_pairs_are_bounded_and_it_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    cuts = {c.id: p for c, _, p in blocked_cuts(on_twelve("10-gear-blanks"))}
    problem = cuts["finish"]
    assert not costs(problem)
    assert searched(problem).mended, "two together do it"
    monkeypatch.setattr(search, "WORK", 1)
    result = searched(problem)
    assert not result.all_pairs
    assert not result.mended
    said = way_out(solved(problem), problem.model, problem.holding)
    assert "nor two together, as far as tried" in said


def case(limit: str, folder: Path) -> tuple[Problem, Found]:
    """A problem blocked by each of the limits; own tables where no common lathe meets it."""
    if limit in ("slip", "finish", "power"):
        lathe = {"slip": COARSE, "finish": FINE, "power": WEAK}[limit]
        cuts = blocked_cuts(text_of(**lathe))
    elif limit == "chatter":
        cuts = blocked_cuts(on_twelve("10-gear-blanks"))
    elif limit == "tool":
        coarse = first(COARSE, "rough")
        problem = replace(coarse, run=replace(coarse.run, bears=1e-9))
        return problem, solved(problem)
    elif limit == "bend":
        problem = replace(first(COARSE, "rough"), wanted=Wanted(left=1e-6))
        return problem, solved(problem)
    else:
        old, new = {
            "rock": ("rock,1.3,1,", "rock,300,250,"),
            "heat": ("heat_share,0.05,0.12,0.3", "heat_share,8,9,10"),
            "least_chip": ("least_thickness,3e-6,5e-6,1e-5", "least_thickness,2e-4,3e-4,4e-4"),
        }[limit]
        tables = own(folder, "thresholds" if limit == "rock" else "allowances", (old, new))
        cuts = blocked_cuts(text_of(material="6061", feeds='"0.3mm"'), tables)
    return next((p, f) for _, f, p in cuts if f.blocked == limit)


@pytest.mark.parametrize("limit", [name for name in LIMITS if name != "lathe"])
def test_every_limit_has_its_sentence_with_a_number_of_the_shop(limit: str, tmp_path: Path) -> None:
    problem, found = case(limit, tmp_path)
    assert found.blocked == limit
    said = way_out(found, problem.model, problem.holding)
    assert said.startswith(f"To {problem.model.name}: {LIMITS[limit].what}, ")
    assert re.search(r", [0-9]+ % short at the best that can be set\. ", said)
    mended = searched(problem).mended
    assert ("Cheapest: " in said) == bool(mended)
    if mended:
        numbers = r"[0-9]+ passes|mm/rev|[0-9]+ rpm|nose of|coolant"
        assert re.search(numbers, said.partition("Cheapest: ")[2])
        assert said.count("Cheapest: ") == 1
    else:
        assert "No usual change" in said
        assert said.endswith(LIMITS[limit].mend)
    assert len(said) < 420


def test_where_the_hold_letting_go_alone_is_too_much_no_change_of_the_cut_is_named() -> None:
    text = text_of(finished='outside = "58mm", tolerance = "2um"')
    (blocked,) = blocked_in(text).values()
    assert blocked.limit == "bend"
    assert "letting go alone" in blocked.way_out
    assert "Cheapest" not in blocked.way_out
    (_, _, problem) = next(blocked_cuts(text))
    assert not searched(problem).mended


def test_every_mend_has_its_minutes_and_every_row_is_a_mend() -> None:
    assert set(TABLES.table("mend_minutes").column("id")) == set(MENDS)
