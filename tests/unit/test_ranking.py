"""One order of all rows: total, by the printed key, and never worse for what is added to the shelf."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.jobs_made import turning, wheel_job

from borewright.answer.records import Verdict
from borewright.job.records import Job, MandrelNote
from borewright.job.tools import OwnDog, OwnHolding
from borewright.planning.choice.arrangement import arrange
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.ranking import NOW, RANKED_BY
from borewright.planning.choice.weighing_all import in_order
from borewright.planning.shop.names import material_taken
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()
TOOLS = TABLES.table("holding_tools").column("id")
NONE_OF_THEM = tuple(TOOLS)

MANDRELS = (
    MandrelNote(0.016),
    MandrelNote(0.0159),
    MandrelNote(0.016, "long", ground_length=0.15, overall_length=0.2),
    MandrelNote(0.02),
)


def rows_of(job: Job) -> tuple:
    taken, _ = material_taken(job, TABLES)
    return arrange(taken, TABLES).weighing.rows


def with_shelf(job: Job, mandrels: int, tools: tuple[str, ...], dogs: int) -> Job:
    """Nothing is owned but what is named here; the shelf grows at its end."""
    shelf = replace(
        job.shelf,
        mandrels=MANDRELS[:mandrels],
        stated=True,
        have_not=NONE_OF_THEM,
        holding=tuple(OwnHolding(t) for t in tools),
        dogs=(OwnDog("a dog", 0.005, 0.05),) * dogs,
    )
    return replace(job, shelf=shelf)


JOBS = {
    "an everyday wheel": wheel_job(),
    "a big disc": wheel_job(outside=0.3, cuts=turning(1.5e-3, 0.2e-3)),
    "a thin ring": wheel_job(outside=0.02, length=0.008),
    "a dozen iron wheels": replace(
        wheel_job(material="gray-iron-30"),
        work=replace(wheel_job(material="gray-iron-30").work, quantity=12),
    ),
}


@pytest.mark.parametrize("name", JOBS)
def test_no_two_rows_tie(name: str) -> None:
    keys = [row.key for row in rows_of(JOBS[name])]
    assert len(set(keys)) == len(keys)
    assert keys == sorted(keys)


@pytest.mark.parametrize("name", JOBS)
def test_the_order_does_not_hang_on_the_order_of_asking(name: str) -> None:
    rows = rows_of(JOBS[name])
    assert [r.candidate for r in in_order(reversed(rows))] == [r.candidate for r in rows]


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.sampled_from(sorted(JOBS)),
    st.integers(0, len(MANDRELS)),
    st.lists(st.sampled_from(TOOLS), unique=True, max_size=6),
    st.integers(0, 1),
    st.sampled_from(["mandrel", "tool", "dog"]),
    st.sampled_from(TOOLS),
)
def test_what_is_added_to_the_shelf_never_makes_the_best_worse(
    name: str, mandrels: int, tools: list[str], dogs: int, added: str, tool: str
) -> None:
    before = rows_of(with_shelf(JOBS[name], mandrels, tuple(tools), dogs))
    more = (
        min(mandrels + (added == "mandrel"), len(MANDRELS)),
        tuple(dict.fromkeys([*tools, *([tool] if added == "tool" else [])])),
        1 if added == "dog" else dogs,
    )
    after = rows_of(with_shelf(JOBS[name], *more))
    assert after[0].key <= before[0].key


def test_the_key_is_printed_with_the_plan() -> None:
    answer = plan(wheel_job(), source_tables=TABLES)
    assert answer.notes[-1] == f"Candidates are ranked by {RANKED_BY}."


def test_what_must_be_bought_is_never_recommended() -> None:
    for job in JOBS.values():
        bare = with_shelf(job, 0, (), 0)
        for row in rows_of(bare):
            if row.key[0] == NOW:
                assert not [n for n in row.candidate.needs if n.have.value == "buy"]
        answer = plan(bare, source_tables=TABLES)
        if answer.verdict is not Verdict.NO:
            assert answer.chosen is not None
            assert not [n for n in answer.chosen.needs if n.have.value == "buy"]


def test_making_is_counted_in_the_minutes() -> None:
    owner = with_shelf(JOBS["an everyday wheel"], 0, tuple(TOOLS), 1)
    stub = next(r.candidate for r in rows_of(owner) if r.candidate.way == "turned-stub")
    minutes = TABLES.setup_minutes("turned-stub")
    making = sum(n.minutes for n in stub.needs)
    assert making > 0
    second = TABLES.holding_fact("second_face").best
    assert stub.minutes == pytest.approx(
        minutes.once.best + minutes.each.best + making + second, rel=1e-12
    )


def by_its_end(job: Job) -> dict[str, tuple]:
    found = (r.candidate for r in rows_of(job) if ", its end in " in r.candidate.tool)
    return {c.tool.rpartition(" ")[2]: (c.verdict, c.decided_by, c.needs) for c in found}


def test_a_mandrel_by_its_own_end_runs_truer_in_a_collet_than_in_a_scroll_chuck() -> None:
    found = by_its_end(JOBS["an everyday wheel"])
    assert found["three-jaw"][:2] == (Verdict.CARE, "true")
    assert found["collet"][0] is Verdict.YES
    assert [n.have.value for n in found["collet"][2]] == ["buy", "own"]
    owner = replace(JOBS["an everyday wheel"].shelf, holding=(OwnHolding("collets"),))
    own = by_its_end(replace(JOBS["an everyday wheel"], shelf=owner))
    assert [n.have.value for n in own["collet"][2]] == ["own", "own"]


def test_a_driver_that_was_asked_for_is_the_only_one_weighed() -> None:
    assert by_its_end(replace(JOBS["an everyday wheel"], driven_by="collet")) == {}


def test_each_row_says_what_it_gives_by_sense() -> None:
    rows = {r.candidate.way: r.candidate for r in reversed(rows_of(JOBS["an everyday wheel"]))}
    taper, stub = rows["plain-taper"].gives, rows["turned-stub"].gives
    assert taper is not None
    assert stub is not None
    assert taper.thrust_in > taper.thrust_out > 0  # it tightens up the taper
    assert stub.thrust_in == float("inf") > stub.thrust_out > 0  # a shoulder one way
    assert all(c.marks for c in rows.values() if c.gives)


@pytest.mark.parametrize("by", ["collet", "three-jaw"])
@pytest.mark.parametrize("name", ["an everyday wheel", "a dozen iron wheels"])
def test_its_own_end_held_is_what_a_job_that_asks_for_it_is_told(name: str, by: str) -> None:
    """The rows by its own end take grip and travel over from the dog's: asked afresh, all the same."""
    row = next(
        r
        for r in rows_of(JOBS[name])
        if isinstance(r.weighed, Weighed) and r.weighed.trial.job.driven_by == by
    )
    job = JOBS[name]
    use = replace(job, driven_by=by, use=row.weighed.trial.mandrel.name)
    afresh = next(
        r.weighed
        for r in rows_of(use)
        if r.candidate.leading_face == row.candidate.leading_face
        and isinstance(r.weighed, Weighed)
        and r.weighed.trial.drive == row.weighed.trial.drive
    )
    assert row.weighed.questions == afresh.questions
