"""A job with its cuts settled, however it is held: what the questions of the cut alone look at."""

from __future__ import annotations

from typing import Protocol

from borewright.answer.records import Cut, Demand
from borewright.job.records import Job
from borewright.quantities.show import Show
from borewright.reference.library import Tables


class Turned(Protocol):
    """What every hold under trial has, a taper or any other."""

    @property
    def job(self) -> Job:
        """The job."""

    @property
    def tables(self) -> Tables:
        """The tables in use."""

    @property
    def show(self) -> Show:
        """How sizes are said."""

    @property
    def cuts(self) -> tuple[Cut, ...]:
        """The cuts in order."""

    @property
    def demands(self) -> tuple[Demand, ...]:
        """What each asks, in their order."""
