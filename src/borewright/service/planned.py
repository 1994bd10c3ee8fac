"""plan: a job, and perhaps a shelf, to the whole plan."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from borewright.job.records import Job, Shelf
from borewright.job.shelf_file import merge_shelf
from borewright.reference.library import Tables, tables
from borewright.service.sums import sums_over

if TYPE_CHECKING:
    from borewright.answer.plan import Plan


def plan(
    job: Job, shelf: Shelf | None = None, *, use: str = "", source_tables: Tables | None = None
) -> Plan:
    """How to hold, press, cut and take off one part.

    `shelf` fills what the job does not state of the shop; `use` overrides the job's own wish for a
    way or a mandrel. The tables are the built-in ones unless others are given. Raises RefusedInput
    (UnknownName for a material, gauge, process or press that is not in the tables).

    >>> from borewright.job.records import Bore, Piece, Shelf, MandrelNote, Work
    >>> wheel = Work("al-6061-t6", (Piece(0, 0.025, 0.063),),
    ...              Bore(0.015885, 3e-6, "plug gauge", "reamed"), "bar")
    >>> shop = Shelf((MandrelNote(0.015875),), True, "arbor press 1 ton")
    >>> plan(Job("A wheel", wheel, "mm", shop)).verdict.value
    'yes'
    """
    from borewright.planning.assemble import plan_job

    whole = job if shelf is None else merge_shelf(job, shelf)
    whole = replace(whole, use=use) if use else whole
    used = source_tables or tables()
    with sums_over(used):
        return plan_job(whole, used)
