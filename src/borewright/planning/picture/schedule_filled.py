"""A schedule with its heat and the charts of the plan."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.schedule import Schedule
from borewright.planning.heating.in_schedule import with_heat
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.picture.charts import charts_of
from borewright.planning.taper.trial import Trial


def filled(schedule: Schedule, trial: Trial | HeldTrial) -> Schedule:
    """The same cuts with waits and warmth, and the charts that have a meaning for this hold."""
    return with_heat(trial, replace(schedule, charts=charts_of(trial)))
