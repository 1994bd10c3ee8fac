"""rescue: a job and the bore as it was found, to every way out, ranked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from borewright.job.records import BoreLimits, BoreReading, Job, Shelf
from borewright.job.shelf_file import merge_shelf
from borewright.quantities.si import Metre
from borewright.reference.library import Tables, tables
from borewright.service.sums import sums_over

if TYPE_CHECKING:
    from borewright.answer.rescue import Rescue


def rescue(
    job: Job,
    shelf: Shelf | None = None,
    *,
    bore: Metre | None = None,
    readings: tuple[BoreReading, ...] = (),
    trouble: tuple[str, ...] = (),
    wanted: BoreLimits | None = None,
    measured_with: str = "",
    source_tables: Tables | None = None,
) -> Rescue:
    """How to save one piece whose bore, or whose mandrel, has gone wrong.

    `bore` (m) and `readings` say how the bore was found; without them it is as the job states it.
    `trouble`: words for what is wrong, worked out from the readings as well. `wanted`: the limits
    of the drawing, where the job does not state them. Raises RefusedInput (UnknownName for a word
    that is not in the tables) where nothing says what is wrong, or the bore is none of this part.

    >>> from borewright.job.records import Bore, Piece, MandrelNote, Work
    >>> wheel = Work("al-6061-t6", (Piece(0, 0.025, 0.063),),
    ...              Bore(0.015885, 3e-6, "plug gauge", "reamed"), "bar")
    >>> shop = Shelf((MandrelNote(0.015875),), True, "arbor press 1 ton")
    >>> found = rescue(Job("A wheel", wheel, "mm", shop), bore=0.01600)
    >>> [t.id for t in found.trouble], found.way("other-mandrel").verdict.value
    (['too-big'], 'no')
    """
    from borewright.planning.rescue.rescue_job import Reported, rescue_job

    whole = job if shelf is None else merge_shelf(job, shelf)
    used = source_tables or tables()
    said = Reported(bore, readings, trouble, wanted, measured_with)
    with sums_over(used):
        return rescue_job(whole, said, used)
