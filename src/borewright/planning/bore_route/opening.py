"""The hole that a bar or a reamer starts from: spot, pilot, drill; or the hole that is there."""

from __future__ import annotations

from typing import Final

from borewright.job.records import Job
from borewright.mechanics.bore_sizes import SizeBand, band_of_half
from borewright.planning.bore_route.kit import Drill, Kit
from borewright.planning.bore_route.passes import Pass, drilled, piloted, spotted
from borewright.planning.bore_route.wanted import Wanted
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

ENOUGH: Final = 0.003
"""A bar takes up to this much (m on diameter) before it is worth drilling first; ours."""


def opened(drill: Drill, want: Wanted, kit: Kit, job: Job, tables: Tables) -> tuple[Pass, ...]:
    """This drill with what goes before it."""
    cut = drilled(drill, tables)
    if want.start:
        return (cut,)
    pilot = _pilot(drill, kit, tables)
    return (spotted(job), *((piloted(pilot),) if pilot else ()), cut)


def up_to(
    limit: Metre, want: Wanted, kit: Kit, job: Job, tables: Tables
) -> tuple[Pass, ...] | None:
    """The passes to a hole that is seldom larger than `limit` (m), as near as the drills come.

    Empty where the hole that is there will do; None where there is no way to one.
    """
    if want.cored:
        return () if not want.start or want.start <= limit else None
    if want.start > limit:
        return None
    if want.start and limit - want.start <= ENOUGH:
        return ()

    def nearest(drills: tuple[Drill, ...]) -> Drill | None:
        fits = (d for d in drills if _high(d, tables) <= limit and d.size > want.start)
        return max(fits, key=lambda d: d.size, default=None)

    own = nearest(kit.drills)
    small = want.start if own is None else own.size
    drill = own if small >= kit.bar.smallest else nearest((*kit.drills, *kit.to_get))
    if drill is None:
        return () if want.start else None
    return opened(drill, want, kit, job, tables)


def hole_after(passes: tuple[Pass, ...], want: Wanted) -> Metre:
    """The likely size (m) of the hole after these passes; 0 for a cored hole of unknown size."""
    return passes[-1].size if passes else want.start


def start_band(want: Wanted) -> SizeBand:
    """The hole as it stands, as well as it is known (m)."""
    return band_of_half(want.start, want.start_half_band)


def _high(drill: Drill, tables: Tables) -> Metre:
    band = drilled(drill, tables).band
    return drill.size if band is None else band[2]


def _pilot(drill: Drill, kit: Kit, tables: Tables) -> Drill | None:
    """The drill nearest to a third of this one, where this one is large."""
    share = tables.boring("pilot_share")
    if drill.size < tables.boring("pilot_above").best:
        return None
    likely = [d for d in kit.drills if share.low * drill.size <= d.size <= share.high * drill.size]
    return min(likely, key=lambda d: abs(d.size - share.best * drill.size), default=None)
