"""The plan for a job on a plain taper mandrel: for tests of that way, whatever else would serve."""

from __future__ import annotations

from borewright.answer.plan import Plan
from borewright.holding.registry import PLAIN_TAPER
from borewright.job.records import Job, Shelf
from borewright.reference.library import Tables
from borewright.service import planned


def plan(
    job: Job, shelf: Shelf | None = None, *, use: str = "", source_tables: Tables | None = None
) -> Plan:
    """As the service plans it, insisting on a plain mandrel where the job leaves the way open."""
    open_way = not use and job.use in ("any", "")
    asked = PLAIN_TAPER if open_way else use
    return planned.plan(job, shelf, use=asked, source_tables=source_tables)
