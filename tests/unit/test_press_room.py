"""A press or vice that is too small turns the push question, whatever its force."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.jobs_made import wheel_job
from tests.on_a_mandrel import plan
from tests.unit.test_planning_choices import trial_of

from borewright.answer.records import Question, Verdict
from borewright.job.records import Job
from borewright.job.tools import OwnPress, OwnVice
from borewright.mechanics.spread import high_end, likely
from borewright.planning.taper.press_room import height_needed, opening_needed, tube_length
from borewright.reference.library import Tables

TABLES = Tables()
ROOMY = OwnPress("the big press", "arbor press 3 ton", 20e3, 0.4, 0.2, 0.15, 0.05)


def with_press(press: OwnPress) -> Job:
    job = wheel_job()
    shelf = replace(job.shelf, presses=(press,), press=press.called, press_force=press.force)
    return replace(job, shelf=shelf)


def push(job: Job) -> Question:
    return next(q for q in plan(job, source_tables=TABLES).questions if q.id == "push")


def test_a_roomy_press_is_a_yes() -> None:
    assert push(with_press(ROOMY)).verdict is Verdict.YES


@pytest.mark.parametrize(
    ("short", "says"),
    [
        ({"daylight": 0.05}, "daylight"),
        ({"throat": 0.03}, "throat"),
        ({"ram_travel": 0.01}, "ram travel"),
        ({"table_slot": 0.012}, "table slot"),
    ],
)
def test_each_thing_it_is_too_small_for_is_named(short: dict[str, float], says: str) -> None:
    asked = push(with_press(replace(ROOMY, **short)))
    assert asked.verdict is Verdict.NO
    assert says in asked.reason


def test_what_is_not_stated_is_not_held_against_it() -> None:
    assert push(with_press(OwnPress("the big press", force=20e3))).verdict is Verdict.YES


def test_a_vice_must_open_past_work_and_mandrel() -> None:
    job = wheel_job(press="bench vice")
    need = opening_needed(trial_of(job))
    for opening, verdict in ((need * 1.01, Verdict.YES), (need * 0.99, Verdict.NO)):
        shelf = replace(job.shelf, vice=OwnVice(opening))
        assert push(replace(job, shelf=shelf)).verdict is verdict


def test_the_height_is_what_stands_above_the_table() -> None:
    """Mandrel overall, less its small end and what hangs below the face the work stands on."""
    trial = trial_of(wheel_job())
    m = trial.mandrel
    touched = float(trial.seat[0]) - trial.chosen.press
    below = m.end_length + touched - trial.hold.length
    assert height_needed(trial) == pytest.approx(m.overall_length - below)


def test_a_vice_opens_for_the_tube_the_work_and_what_stands_out_at_touch() -> None:
    """The small end ends inside the tube even where the work sits nearest to the large end."""
    trial = trial_of(wheel_job(press="bench vice"))
    m = trial.mandrel
    tube = tube_length(trial)
    assert tube >= high_end(trial.seat) - 0.025 + m.end_length
    at_touch = likely(trial.seat) - trial.chosen.press
    stands_out = m.ground_length + m.end_length - at_touch
    assert opening_needed(trial) == pytest.approx(tube + 0.025 + stands_out)
