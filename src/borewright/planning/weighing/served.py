"""The cuts of a job at a share of their usual depth, and what each asks: the first a hold serves is taken."""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.records import Cut, Demand
from borewright.cutting.demand import EdgeForces, demand_from, demand_of, edge_forces
from borewright.cutting.edges import edge_cuts
from borewright.cutting.knock import knock_of
from borewright.cutting.led import led
from borewright.cutting.load_demand import softer
from borewright.cutting.schedule import planned_cuts, turning_is_planned
from borewright.job.records import Job
from borewright.planning.weighing.crown_cut import crown_cuts
from borewright.planning.weighing.power import in_gear
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

DEPTH_SHARES = (1.0, 0.75, 0.5, 0.35, 0.25)
"""Rough depths tried, as shares of the usual one, when the grip does not serve the usual one."""


def depth_shares(job: Job, tables: Tables) -> tuple[float, ...]:
    """The shares to try: a casting's first cut must get under its skin."""
    if job.work.blank != "casting":
        return DEPTH_SHARES
    least = tables.allowance("skin_depth").low / tables.cut_defaults(job.work.material).rough_depth
    return tuple(s for s in DEPTH_SHARES if s >= least) or (1.0,)


def cuts_and_demands(
    job: Job, tables: Tables, share: float, leading: str = "A"
) -> tuple[tuple[Cut, ...], tuple[Demand, ...]]:
    """The planned cuts at this share of the usual rough depth, each in a gear with the power for it;
    `leading`: the face towards the headstock."""
    last = (*crown_cuts(job, tables, share), *edge_cuts(job, tables, share))
    cuts = led(planned_cuts(job, tables, share, last), job.work, leading)
    demands = tuple(demand_for(c, job, tables) for c in cuts)
    return in_gear(cuts, demands, job, tables), demands


def demand_for(cut: Cut, job: Job, tables: Tables) -> Demand:
    """What one cut of a job asks, with what knocks in it and what cutting teeth leaves of the grip."""
    demand = demand_of(cut, job.work.material, tables, knock_of(cut, job, tables))
    if cut.space is None:
        return demand
    return replace(demand, grip_left=softer(cut, job, tables).grip, goes_round=False)


class CutsByShare:
    """The cuts of one job at each share of their usual depth, worked out when first asked for."""

    def __init__(self, job: Job, tables: Tables) -> None:
        self._job, self._tables = job, tables
        self._known: dict[tuple[float, str], tuple[tuple[Cut, ...], tuple[Demand, ...]]] = {}
        form = job.work.finished.form
        self._uneven = bool(form.steps or form.edges or any(form.chamfers.legs))
        planned = turning_is_planned(job, tables)
        self.shares = depth_shares(job, tables) if planned else (1.0,)

    def at(self, share: float, leading: str) -> tuple[tuple[Cut, ...], tuple[Demand, ...]]:
        """Cuts and what each asks, at this share, this face towards the headstock."""
        key = share, leading if self._uneven else ""
        if key not in self._known:
            self._known[key] = cuts_and_demands(self._job, self._tables, share, leading)
        return self._known[key]


class Asking:
    """What cuts of one job ask, the forces of its metal looked up once."""

    def __init__(self, job: Job, tables: Tables) -> None:
        self._job, self._tables = job, tables
        self._known: dict[Range, EdgeForces] = {}

    def demand(self, cut: Cut) -> Demand:
        """As `demand_for`, sooner."""
        if not cut.on_lathe:
            return demand_for(cut, self._job, self._tables)
        knock = knock_of(cut, self._job, self._tables)
        if knock not in self._known:
            self._known[knock] = edge_forces(self._job.work.material, self._tables, knock)
        return demand_from(cut, self._known[knock])
