"""A schedule with its heat: waits, warmth, the size to read warm, and the charts of the plan."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.schedule import Schedule, Taken
from borewright.planning.heating.heat_chart import heat_chart
from borewright.planning.heating.heat_words import wait_sentences
from borewright.planning.heating.waits import TakenHeat, waited
from borewright.planning.heating.warm_size import warm_size
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.picture.charts import charts_of
from borewright.planning.taper.trial import Trial


def filled(schedule: Schedule, trial: Trial | HeldTrial) -> Schedule:
    """The same cuts with what heat makes of them, and the three charts where they have a meaning."""
    run, heats = waited(trial)
    by_cut = {h.cut: h for h in heats}
    taken = tuple(_warmed(t, by_cut.get(t.cut)) for t in schedule.taken)
    size = warm_size(trial, run)
    return replace(
        schedule,
        taken=taken,
        seconds=sum(t.seconds + t.wait for t in taken),
        target=None if size is None else (size.reads, size.warmth),
        charts=(*charts_of(trial), *((heat_chart(run),) if run.cuts else ())),
        notes=(*schedule.notes, *wait_sentences(trial.cuts, heats)),
    )


def _warmed(taken: Taken, heat: TakenHeat | None) -> Taken:
    if heat is None:
        return taken
    return replace(
        taken,
        wait=heat.wait,
        warm_before=heat.warm_before,
        warm_after=heat.warm_after,
        grip_left=heat.grip_left,
    )
