"""What the bore should have been: the drawing's limits, else what the mandrel takes, else as stated."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from borewright.holding.bores.bore_reading import half_band_of
from borewright.job.records import BoreLimits, Job
from borewright.planning.choice.candidates import Weighed
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


class Whose(StrEnum):
    """Who asks for the size: the drawing, the mandrel that was chosen, or the job file's own size."""

    DRAWING = "drawing"
    MANDREL = "mandrel"
    STATED = "stated"


@dataclass(frozen=True, slots=True)
class Wanted:
    """Smallest and largest bore (m), who asks for it, and the same in words."""

    low: Metre
    high: Metre
    whose: Whose
    said: str
    sources: tuple[str, ...] = ()

    @property
    def middle(self) -> Metre:
        return (self.low + self.high) / 2

    def takes(self, least: Metre, largest: Metre) -> bool:
        """Whether a bore read between these sizes (m) is what was asked for.

        A mandrel meets the least size only; a drawing means every one.
        """
        high = least if self.whose is Whose.MANDREL else largest
        return self.low <= least and high <= self.high


def wanted_of(
    stated: Job, limits: BoreLimits | None, best: Weighed | None, tables: Tables
) -> Wanted:
    """`limits` of the drawing where there are any; `best`: the mandrel chosen for the job as stated."""
    limits = limits or stated.work.bore.limits
    show = Show(stated.units)
    if limits is not None:
        said = f"the drawing's limits, {show.band(limits.low, limits.high, 'bore')}"
        return Wanted(limits.low, limits.high, Whose.DRAWING, said, limits.sources)
    if best is not None and best.trial.window[0] < best.trial.window[1]:
        low, high = best.trial.window
        said = f"what {best.trial.mandrel.name} takes, {show.band(low, high, 'bore')}"
        return Wanted(low, high, Whose.MANDREL, said, ("ours-derived",))
    size, known = stated.work.bore.size, half_band_of(stated, tables)
    low, high = size - known.size, size + known.size
    said = f"the size stated, as well as it is known, {show.band(low, high, 'bore')}"
    return Wanted(low, high, Whose.STATED, said, known.sources)
