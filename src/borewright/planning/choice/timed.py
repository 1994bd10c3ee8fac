"""The recommended hold with its cuts set to take the least time, and asked all over again.

Among holds that are alike but for time, the one that takes least in all is recommended: minutes of
setting up and of cutting; first those on which every cut can be set within its limits. One that is set up no sooner than another is done needs no sum.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import inf

from borewright.answer.schedule import Schedule
from borewright.planning.choice.arrangement import Arranged
from borewright.planning.choice.candidates import Weighed
from borewright.planning.choice.held_rows import WeighedHeld
from borewright.planning.choice.ranking import NOW, UP_TO_TIME, Row, held_row, taper_row
from borewright.planning.choice.recommended import insisted, recommended
from borewright.planning.held.held_questions import ask_held
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.passes.scheduled import as_planned, scheduled
from borewright.planning.questions.asked import ask_of_cuts
from borewright.planning.taper.trial import Trial
from borewright.quantities.si import Second
from borewright.reference.library import Tables

MOST = 6
"""So many ways at most have their cuts set to find the quickest (ours)."""


@dataclass(frozen=True, slots=True, eq=False)
class Timed:
    """A row with its cuts set: the row as it was, as it is, and the schedule."""

    before: Row
    row: Row
    schedule: Schedule

    @property
    def seconds(self) -> dict[str, Second]:
        """Of every cut."""
        return {t.cut: t.seconds + t.wait for t in self.schedule.taken}

    def minutes(self, elsewhere: dict[str, Second]) -> float:
        """Setting up and cutting, for the batch; `elsewhere`: seconds of cuts that some hold does not
        reach, which another hold then takes."""
        trial, own = self.row.weighed.trial, self.seconds
        many = trial.job.work.quantity if trial is not None else 1
        cutting = sum((elsewhere | own).values())
        return self.row.candidate.minutes + many * cutting / 60


def timed(found: Arranged, tables: Tables) -> tuple[Arranged, Schedule | None]:
    """The same rows, the quickest of the best first and with its cuts set; its schedule, None
    without a hold.

    Where no setting leaves every answer as good as it was, the cuts stay as they were planned.
    """
    row = recommended(found)
    first = None if row is None else _timed(row, tables)
    if row is None or first is None:
        return found, None
    tried = [first, *_contest(found, row, first, tables)]
    quickest: dict[str, Second] = {}
    for one in tried:
        for cut, seconds in one.seconds.items():
            quickest[cut] = min(seconds, quickest.get(cut, seconds))
    best = min(tried, key=lambda t: (bool(t.schedule.blocked), t.minutes(quickest)))
    rows = [best.row if r is best.before else r for r in found.weighing.rows]
    if best is not first:
        rows.remove(best.row)
        rows.insert(0, best.row)
    return replace(found, weighing=replace(found.weighing, rows=tuple(rows))), best.schedule


def _contest(found: Arranged, best: Row, first: Timed, tables: Tables) -> Iterator[Timed]:
    """The best row of every other way that is as good but for time, soonest set up first, while one
    might still be done sooner. One with a cut past its limits comes after all without."""
    if best.key[0] != NOW or insisted(found):
        return
    least = inf if first.schedule.blocked else first.minutes({})
    seen = {best.candidate.way}
    for row in found.weighing.rows:
        alike = row.key[:UP_TO_TIME] == best.key[:UP_TO_TIME]
        if not alike or row.candidate.way in seen:
            continue
        if row.candidate.minutes >= least or len(seen) >= MOST:
            return
        seen.add(row.candidate.way)
        other = _timed(row, tables)
        if other is None:
            continue
        if not other.schedule.blocked and first.seconds.keys() <= other.seconds.keys():
            least = min(least, other.minutes({}))
        yield other


def _timed(row: Row, tables: Tables) -> Timed | None:
    if row.weighed.trial is None:
        return None
    for cool in (False, True):
        done = scheduled(row.weighed.trial, cool=cool)
        weighed = _asked(row.weighed, done.trial)
        if weighed.verdict.rank <= row.weighed.verdict.rank:
            break
    else:
        return Timed(row, row, as_planned(row.weighed.trial, done.schedule.blocked))
    new = replace(_row(weighed, row, tables), key=row.key)
    return Timed(row, new, done.schedule)


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
