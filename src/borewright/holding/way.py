"""What every way of holding offers to the plan."""

from __future__ import annotations

from typing import Protocol

from borewright.answer.held import Held
from borewright.job.records import Job
from borewright.reference.library import Tables


class Way(Protocol):
    """A way of holding, as the registry keeps it."""

    id: str

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """The job on this way: one record for each tool or arrangement that differs.

        At least one: where nothing serves, the record says why not.
        """
