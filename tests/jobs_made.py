"""Small jobs for tests, in SI; invented."""

from __future__ import annotations

from borewright.job.records import (
    Bore,
    BoreReading,
    CutWish,
    Finished,
    Job,
    Machine,
    MandrelNote,
    Piece,
    Shelf,
    Work,
)


def wheel_job(
    outside: float = 0.063,
    length: float = 0.025,
    bore: float = 0.016006,
    material: str = "al-6061-t6",
    readings: tuple[BoreReading, ...] = (),
    cuts: tuple[CutWish, ...] = (),
    mandrels: tuple[MandrelNote, ...] | None = (MandrelNote(0.016),),
    press: str = "arbor press 1 ton",
    uncertainty: float = 3e-6,
) -> Job:
    """A plain wheel on a 16 mm mandrel, everyday unless told otherwise. `mandrels` None: not said."""
    shelf = Shelf(
        mandrels or (),
        mandrels is not None,
        press,
        machine=Machine(swing_over_cross_slide=0.4, between_centers=0.8),
    )
    hole = Bore(bore, uncertainty, "plug gauge", "reamed", readings)
    work = Work(material, (Piece(0.0, length, outside),), hole, "bar", Finished())
    return Job("A wheel", work, "mm", shelf, cuts=cuts)


def turning(depth: float = 0.5e-3, feed: float = 0.1e-3) -> tuple[CutWish, ...]:
    """One turning cut at a modest speed."""
    return (CutWish("turn", depth, feed, 1.0),)
