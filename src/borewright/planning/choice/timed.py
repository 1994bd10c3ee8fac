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
from borewright.planning.heating.waits import waited
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
    """A row with its cuts set: the row as it was, as it is, and the schedule. `floor`: seconds of
    cutting that no other hold goes under."""

    before: Row
    row: Row
    schedule: Schedule
    floor: Second = 0.0

    @property
    def seconds(self) -> dict[str, Second]:
        """Of every cut; what is cut over the whole outside, and of one step, together."""
        found: dict[str, Second] = {}
        for t in self.schedule.taken:
            group = _group(t.cut)
            found[group] = found.get(group, 0.0) + t.seconds + t.wait
        return found

    @property
    def floor_minutes(self) -> float:
        """Of the batch."""
        trial = self.row.weighed.trial
        return self.floor * (trial.job.work.quantity if trial is not None else 1) / 60

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
    if len(tried) > 1:
        tried = [_waited(one) for one in tried]
    quickest: dict[str, Second] = {}
    for one in tried:
        for cut, seconds in one.seconds.items():
            quickest[cut] = min(seconds, quickest.get(cut, seconds))
    best = min(tried, key=lambda t: (bool(t.schedule.blocked), t.minutes(quickest)))
    rows = [best.row if r is best.before else r for r in found.weighing.rows]
    if best.before is not row:
        rows.remove(best.row)
        rows.insert(0, best.row)
    return replace(found, weighing=replace(found.weighing, rows=tuple(rows))), _bare(best.schedule)


def _waited(one: Timed) -> Timed:
    """The same with what it has to wait for its cuts to cool; the plan works that out once more for
    the one that is chosen, with its charts."""
    trial = one.row.weighed.trial
    if trial is None:
        return one
    _, heats = waited(trial)
    waits = {h.cut: h.wait for h in heats}
    taken = tuple(replace(t, wait=waits.get(t.cut, 0.0)) for t in one.schedule.taken)
    return replace(one, schedule=replace(one.schedule, taken=taken))


def _bare(schedule: Schedule) -> Schedule:
    """The schedule before anything waits."""
    return replace(schedule, taken=tuple(replace(t, wait=0.0) for t in schedule.taken))


def _contest(found: Arranged, best: Row, first: Timed, tables: Tables) -> Iterator[Timed]:
    """The best row of every other way that is as good but for time, soonest set up first, while one
    might still be done sooner. One with a cut past its limits comes after all without."""
    if best.key[0] != NOW or insisted(found):
        return
    least = inf if first.schedule.blocked else first.minutes({})
    seen, floor = {best.candidate.way}, first.floor_minutes
    for row in found.weighing.rows:
        alike = row.key[:UP_TO_TIME] == best.key[:UP_TO_TIME]
        if not alike or row.candidate.way in seen:
            continue
        if row.candidate.minutes + floor >= least or len(seen) >= MOST:
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
    for cool, keep in TRIES:
        done = scheduled(row.weighed.trial, cool=cool, keep=keep)
        weighed = _asked(row.weighed, done.trial)
        if _as_good(weighed, row.weighed):
            break
    else:
        return Timed(row, row, as_planned(row.weighed.trial, done.schedule.blocked))
    new = replace(_row(weighed, row, tables), key=row.key)
    return Timed(row, new, done.schedule, done.floor)


TRIES = (False, False), (True, False), (False, True), (True, True)
"""Cool and keep, in the order they are tried: see `scheduled`."""


def _as_good(after: Weighed | WeighedHeld, before: Weighed | WeighedHeld) -> bool:
    """Whether no question is answered worse than before."""
    was = {q.id: q.verdict.rank for q in before.questions}
    return all(q.verdict.rank <= was.get(q.id, q.verdict.rank) for q in after.questions)


def _group(cut: str) -> str:
    """What a cut is counted with: some holds rough in one go what others take in three.

    >>> [_group(cut) for cut in ("skin", "finish", "step-1-rough", "face-leading")]
    ['outside', 'outside', 'step-1', 'face-leading']
    """
    if cut in ("skin", "rough", "finish"):
        return "outside"
    return cut.removesuffix("-skin").removesuffix("-rough").removesuffix("-finish")


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
