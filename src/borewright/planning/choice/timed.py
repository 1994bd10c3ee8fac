"""The recommended hold with its cuts set to take the least time, and asked all over again."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.schedule import Schedule
from borewright.planning.choice.arrangement import Arranged
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.held_rows import WeighedHeld
from borewright.planning.choice.ranking import Row, held_row, taper_row
from borewright.planning.choice.recommended import recommended
from borewright.planning.held.held_questions import ask_held
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.passes.scheduled import as_planned, scheduled
from borewright.planning.questions.asked import ask_of_cuts
from borewright.planning.taper.trial import Trial
from borewright.reference.library import Tables


def timed(found: Arranged, tables: Tables) -> tuple[Arranged, Schedule | None]:
    """The same rows, the recommended one with its cuts set; its schedule, None without a hold.

    Where no setting leaves every answer as good as it was, the cuts stay as they were planned.
    """
    row = recommended(found)
    if row is None or row.weighed.trial is None:
        return found, None
    for cool in (False, True):
        done = scheduled(row.weighed.trial, cool=cool)
        weighed = _asked(row.weighed, done.trial)
        if weighed.verdict.rank <= row.weighed.verdict.rank:
            break
    else:
        return found, as_planned(row.weighed.trial, done.schedule.blocked)
    new = replace(_row(weighed, row, tables), key=row.key)
    rows = tuple(new if r is row else r for r in found.weighing.rows)
    return replace(found, weighing=replace(found.weighing, rows=rows)), done.schedule


def _asked(weighed: Weighed | WeighedHeld, trial: Trial | HeldTrial) -> Weighed | WeighedHeld:
    if isinstance(trial, Trial):
        return Weighed(trial, ask_of_cuts(trial, weighed.questions))
    assert isinstance(weighed, WeighedHeld)
    return WeighedHeld(weighed.held, trial, ask_held(trial))


def _row(weighed: Weighed | WeighedHeld, row: Row, tables: Tables) -> Row:
    if isinstance(weighed, Weighed):
        by_its_end = ", its end in " in row.candidate.tool
        return taper_row(weighed, tables, by_its_end=by_its_end)
    assert weighed.trial is not None
    return held_row(weighed, weighed.trial.job.work.quantity, tables)
