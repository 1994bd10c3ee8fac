"""The charts of a hold and its cuts that need no clock: grip against radius, push against position."""

from __future__ import annotations

from borewright.answer.schedule import LineChart
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.picture.grip_chart import grip_chart
from borewright.planning.picture.push_chart import push_chart
from borewright.planning.taper.trial import Trial


def charts_of(trial: Trial | HeldTrial) -> tuple[LineChart, ...]:
    """Those that have a meaning for this hold, in the order a sheet prints them."""
    found = (grip_chart(trial), push_chart(trial) if isinstance(trial, Trial) else None)
    return tuple(chart for chart in found if chart is not None)
