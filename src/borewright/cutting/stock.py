"""The metal there is to come off, and how deep a pass it bears."""

from __future__ import annotations

from borewright.cutting.loads import cuts_gear, gear_outside
from borewright.job.records import Job
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

LATHE_READS = 0.005e-3
"""Half a thousandth of a hand's care on the dial (m): stock is not counted finer (ours)."""


def finished_outside(job: Job, tables: Tables) -> Metre | None:
    """The outside wanted (m): as stated, or that of the gear; None where nobody says."""
    if job.work.finished.outside is not None:
        return job.work.finished.outside
    return next((gear_outside(w, tables) for w in job.cuts if cuts_gear(w)), None)


def stock_of(job: Job, tables: Tables) -> Metre | None:
    """Metal to come off the radius (m); None where the finished size is not stated."""
    finished = finished_outside(job, tables)
    return None if finished is None else max(0.0, (job.work.outside - finished) / 2)


def face_stock(job: Job) -> Metre | None:
    """Metal to come off each face (m), shared evenly; None where no length is stated."""
    length = job.work.finished.form.length
    return None if length is None else max(0.0, (job.work.length - length) / 2)


def outermost_inside(job: Job) -> Metre:
    """Inside diameter (m) of the metal that is turned: of the rim, or the bore of plain work."""
    work = job.work
    rim = [p for p in work.pieces if p.outside >= work.outside * (1 - 1e-9)]
    return max(p.inside or work.bore.size for p in rim)


def deepest_pass(job: Job, tables: Tables) -> Metre:
    """The deepest pass (m) that the wall it is cut from bears."""
    wall = (job.work.outside - outermost_inside(job)) / 2
    return wall * tables.allowance("wall_share").best


def least_rough(job: Job, finish: Metre, tables: Tables) -> Metre:
    """Least roughing depth (m): under the skin of a casting, else half a finishing cut."""
    return tables.allowance("skin_depth").low if job.work.blank == "casting" else finish / 2
