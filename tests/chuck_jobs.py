"""Parts for tests of chuck, jaws and plate, in SI; invented."""

from __future__ import annotations

from dataclasses import replace

from tests.jobs_made import wheel_job

from borewright.job import Spokes
from borewright.job.records import Bore, BoreReading, Finished, Job, Piece


def thin_ring(wall: float = 0.006, length: float = 0.008) -> Job:
    """A ring of 100 mm bore with half a millimetre to come off, round within 0.02 mm."""
    finished = 0.100 + 2 * wall
    job = wheel_job(finished + 0.001, length, 0.100)
    return replace(job, work=replace(job.work, finished=Finished(finished, 0.02e-3)))


def hubbed(sticks_out: float = 0.015, material: str = "gray-iron-30", blank: str = "bar") -> Job:
    """A wheel of 120 mm with a 40 mm hub that stands out at face A, its bore finished."""
    long = sticks_out + 0.025
    pieces = (
        Piece(0.0, long, 0.040),
        Piece(sticks_out, sticks_out + 0.012, 0.100, 0.040),
        Piece(sticks_out, long, 0.120, 0.100),
    )
    job = wheel_job(material=material)
    work = replace(job.work, pieces=pieces, bore=bored("bored"), blank=blank, flaws="none")
    return replace(job, work=work)


def spoked() -> Job:
    """The same without a hub that stands out, its rim on spokes and open for jaws at face A."""
    pieces = (
        Piece(0.0, 0.040, 0.040),
        Piece(0.016, 0.024, 0.100, 0.040),
        Piece(0.0, 0.040, 0.120, 0.100),
    )
    job = wheel_job(material="gray-iron-30")
    spokes = Spokes(5, 0.012, 0.008)
    work = replace(job.work, pieces=pieces, bore=bored("bored"), spokes=spokes, flaws="none")
    return replace(job, work=work)


def bored(how: str, size: float = 0.018) -> Bore:
    """A bore made so, and not said to have been read."""
    return Bore(size, made_by=how)


def worn(job: Job) -> Job:
    """The same with a bore worn oval by 0.2 mm."""
    low, at = job.work.bore.size, job.work.length / 2
    readings = (BoreReading(at, low), BoreReading(at, low + 0.2e-3))
    bore = Bore(low, 5e-6, "bore gauge", "bored", readings)
    return replace(job, work=replace(job.work, bore=bore))


def with_bore(job: Job, bore: Bore, blank: str = "bar") -> Job:
    """The same with another bore."""
    return replace(job, work=replace(job.work, bore=bore, blank=blank))
