"""Bored work that something is made for: from a job file, or from a few sizes typed.

Sizes typed become a job too, so that both go the same way and say the same as the plan.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from borewright.answer.figure import Assumption
from borewright.errors import RefusedInput
from borewright.holding.part import Part
from borewright.job.records import Bore, BoreLimits, Job, Piece, Work
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

USUAL_GAUGE: Final = "telescoping-gauge"
"""Ours: what a bore was read with where nobody says, as when a bore is planned."""

WIDE: Final = 2.0
"""Ours: outside over the bore where it is not stated: wide enough for any shoulder."""

SMALLEST: Final = 1e-3
LARGEST: Final = 0.15
"""Bores (m) that these things are made for; the tables end nearby."""


@dataclass(frozen=True, slots=True)
class WorkTyped:
    """What was typed in place of a job file. `bore` is the middle of `limits` where it has them."""

    bore: Metre
    limits: BoreLimits | None
    length: Metre | None
    outside: Metre | None
    material: str
    measured_with: str
    units: Literal["inch", "mm"]


@dataclass(frozen=True, slots=True)
class BoredWork:
    """A job with what was taken where nothing was said; `from_file`: it is a job file's."""

    job: Job
    assumed: tuple[Assumption, ...] = ()
    from_file: bool = False


def work_typed(typed: WorkTyped, tables: Tables, length: Metre | None = None) -> BoredWork:
    """The job that a few sizes make. `length` stands where none was typed and none is needed.

    RefusedInput for an outside that is not over the bore, UnknownName for what the tables lack.
    """
    long = typed.length or length
    if long is None:
        raise RefusedInput("--length", "nothing", "the length of the bore")
    largest = typed.limits.high if typed.limits else typed.bore
    if typed.outside is not None and not typed.outside > largest:
        found = Show(typed.units).length(typed.outside)
        raise RefusedInput("--outside", found, f"more than the bore, {largest * 1e3:.3f} mm")
    outside = typed.outside or WIDE * largest
    material = tables.material(typed.material).id if typed.material else ""
    gauge = tables.gauge(typed.measured_with or USUAL_GAUGE)
    half = typed.limits.half_band if typed.limits else gauge.half_band
    bore = Bore(typed.bore, half, gauge.id, limits=typed.limits)
    work = Work(material, (Piece(0.0, long, outside),), bore)
    return BoredWork(Job("", work, typed.units), tuple(_assumed(typed, gauge.id)))


def _assumed(typed: WorkTyped, gauge: str) -> list[Assumption]:
    taken = []
    if typed.outside is None:
        taken.append(Assumption("outside", "wide enough for a shoulder of 1.4 bores", "ours"))
    if typed.limits is None and not typed.measured_with:
        taken.append(Assumption("measured with", gauge, "ours"))
    return taken


def band_of(part: Part) -> tuple[Metre, Metre, bool]:
    """Smallest and largest bore (m), and whether these are the limits of a batch.

    Without limits both are the size that was read: what is made is tried on the work itself.
    """
    limits = part.work.bore.limits
    if limits is not None:
        return limits.low, limits.high, True
    return part.bore, part.bore, False


def check_bore(part: Part) -> None:
    """RefusedInput for a bore beyond what any of these things is made for."""
    low, high, _ = band_of(part)
    if not SMALLEST <= low <= high <= LARGEST:
        show = Show(part.job.units)
        allowed = f"{show.length(SMALLEST)} to {show.length(LARGEST)}"
        raise RefusedInput("bore", show.bore(low), allowed)
