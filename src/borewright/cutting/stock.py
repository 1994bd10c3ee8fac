"""The metal there is to come off, and how deep a pass it bears."""

from __future__ import annotations

from borewright.cutting.loads import cuts_gear, gear_outside
from borewright.job.crown_wish import turned_rings
from borewright.job.records import Job, Work
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


def runout_of(job: Job) -> Metre:
    """How far (m) the outside of a casting is out, the whole reading; 0 where nobody says."""
    return (job.work.casting_runout or 0.0) if job.work.blank == "casting" else 0.0


def clean_up(job: Job, finish: Metre, tables: Tables) -> Metre:
    """Metal (m) off the radius with which a casting that is out cleans up, with its last cut."""
    return runout_of(job) / 2 + least_rough(job, finish, tables) + finish


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


def metal_of_face(work: Work) -> Metre:
    """How far (m) a tool goes in metal over the larger face: rim and hub, not between.

    >>> from borewright.job.records import Bore, Piece, Work
    >>> wheel = (Piece(0, 0.03, 0.05), Piece(0.01, 0.02, 0.16, 0.05), Piece(0, 0.03, 0.19, 0.16))
    >>> round(metal_of_face(Work("steel", wheel, Bore(0.02))), 6)
    0.03
    """
    ends = max(p.end for p in work.pieces), min(p.start for p in work.pieces)
    faces = (
        [p for p in work.pieces if abs(p.end - ends[0]) < REACHES],
        [p for p in work.pieces if abs(p.start - ends[1]) < REACHES],
    )
    return max(sum((p.outside - (p.inside or work.bore.size)) / 2 for p in f) for f in faces)


def face_outside(work: Work) -> Metre:
    """The largest outside (m) of the metal that reaches either face: that of the hub where it
    stands out past the rim."""
    ends = max(p.end for p in work.pieces), min(p.start for p in work.pieces)
    return max(
        p.outside
        for p in work.pieces
        if abs(p.end - ends[0]) < REACHES or abs(p.start - ends[1]) < REACHES
    )


def turned_length(work: Work) -> Metre:
    """How far (m) a tool goes along the outside: over the metal of the largest outside.

    >>> from borewright.job.records import Bore, Piece, Work
    >>> wheel = (Piece(0, 0.03, 0.05), Piece(0.01, 0.02, 0.16, 0.05), Piece(0, 0.03, 0.19, 0.16))
    >>> round(turned_length(Work("steel", wheel, Bore(0.02))), 6)
    0.03
    """
    return sum(end - start for start, end in turned_rings(work))


REACHES = 1e-6
"""A ring this near a face (m) reaches it."""
