"""A schedule with its heat: warmth, grip and waits of every cut, the size to read warm, the chart."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from borewright.answer.records import Cut
from borewright.answer.schedule import Schedule, Taken
from borewright.planning.heating.heat_chart import heat_chart
from borewright.planning.heating.heat_words import wait_sentences
from borewright.planning.heating.loosened import Gripped
from borewright.planning.heating.waits import TakenHeat, waited
from borewright.planning.heating.warm_size import warm_size
from borewright.planning.taper.trial import Trial

FELT = 5e-6
"""A warm reading nearer than this (m) to the cold size is not told apart at the lathe (ours)."""


def with_heat(trial: Trial | Gripped, schedule: Schedule) -> Schedule:
    """The schedule of a trial's own cuts, in their order, with what heat makes of each.

    ValueError where it is not that of these cuts.
    """
    run, heats = waited(trial)
    target = warm_size(trial, run)
    if target is not None and abs(target.reads - target.cold) < FELT:
        target = None
    return replace(
        schedule,
        taken=tuple(_filled(t, h) for t, h in zip(schedule.taken, heats, strict=True)),
        seconds=schedule.seconds + sum(h.wait for h in heats),
        target=None if target is None else (target.reads, target.warmth),
        charts=(*schedule.charts, heat_chart(run, _numbered(schedule), _holder(trial)))
        if run.cuts
        else schedule.charts,
        notes=(*schedule.notes, *wait_sentences(trial.cuts, heats)),
    )


def _holder(trial: Trial | Gripped) -> str:
    """What the work sits on, in a word or two."""
    if isinstance(trial, Trial) or "mandrel" in trial.held.tool:
        return "mandrel"
    return "what holds it"


def _numbered(schedule: Schedule) -> Callable[[Cut], str]:
    """Cuts by their numbers in the table."""
    order = {t.cut: str(k) for k, t in enumerate(schedule.taken, 1)}
    return lambda cut: order.get(cut.id, cut.name)


def _filled(taken: Taken, heat: TakenHeat) -> Taken:
    if taken.cut != heat.cut:
        raise ValueError(f"{taken.cut} stands where {heat.cut} is cut")
    return replace(
        taken,
        wait=heat.wait,
        warm_before=heat.warm_before,
        warm_after=heat.warm_after,
        grip_left=heat.grip_left,
    )
