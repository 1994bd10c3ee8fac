"""The deepest cut that holds on a wheel of a given outside: the slip question, asked backwards."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass, replace

from borewright.answer.chart import ChartBar, ChartCell, ChartColumn
from borewright.answer.records import Demand, TaperGrip, Verdict
from borewright.cutting.demand import demand_of
from borewright.cutting.schedule import planned_cuts
from borewright.job.records import CutWish, Job, Mandrel, Piece, Shelf
from borewright.mechanics.spread import likely, low_end
from borewright.planning.chart.chart_hub import HUB_OUTSIDE, hub_hold, hub_job, pressed
from borewright.planning.questions.slip import LEAST_DEPTH
from borewright.planning.taper.travel import hand_travel
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.margins import slip_margins
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

DEPTH_STEP = {"inch": 0.0000254, "mm": 0.00002}
"""Depths go in what a dial can set (m): a thou, or two hundredths (ours)."""

MOST_DEPTH = {"inch": 0.00254, "mm": 0.0025}
"""The chart looks no deeper (m): lathe and tool give out before the grip (ours)."""


SAME_DEPTH = 1e-9
"""Depths (m) nearer than this are one: whole steps are not exact floats."""


@dataclass(frozen=True, slots=True, eq=False)
class Gripped:
    """One column of the chart with its grip; no grip where the work cannot be pressed at all."""

    column: ChartColumn
    job: Job
    grip: TaperGrip | None
    sources: tuple[str, ...]


def gripped(
    mandrel: Mandrel,
    bar: ChartBar,
    material: str,
    shelf: Shelf,
    units: str,
    force: Range,
    tables: Tables,
) -> Gripped:
    """The hub pressed on this mandrel as far as is usual, or as the bore and the press allow."""
    assert bar.bore_window is not None
    job = hub_job(sum(bar.bore_window) / 2, material, shelf, units)
    hold = hub_hold(mandrel, job, tables)
    p = pressed(hold, units, force, tables)
    grip = hold.grip(hand_travel(hold, tables) + p.press) if p.press > 0 else None
    column = ChartColumn(
        mandrel.name,
        mandrel.nominal,
        material,
        tables.material(material).name,
        p.press,
        p.limited_by,
        likely(grip.push_on) if grip is not None else 0.0,
    )
    return Gripped(column, job, grip, (*hold.facts.sources, tables.kienzle(material).source))


def cell_of(held: Gripped, outside: Metre, feed: Metre, tables: Tables) -> ChartCell | None:
    """The deepest cut with a yes at this outside (m); None where the hub itself is larger."""
    step, most = DEPTH_STEP[held.job.units], MOST_DEPTH[held.job.units]
    if outside <= HUB_OUTSIDE * held.column.nominal * (1 + 1e-9):
        return None
    steps = round(most / step)

    def slips(k: int) -> bool:
        return slip_verdict(held, outside, (k + 1) * step, feed, tables) is not Verdict.YES

    deep = bisect_left(range(steps), True, key=slips) if held.grip is not None else 0
    if held.grip is None or deep * step < LEAST_DEPTH:
        return _cell(held, outside, None, None, False)
    margins = slip_margins(held.grip, demand_at(held.job, outside, deep * step, feed, tables))
    cell = _cell(held, outside, deep * step, (likely(margins), low_end(margins)), deep == steps)
    skin = tables.allowance("skin_depth").low
    return replace(cell, leaves_skin=deep * step < skin - SAME_DEPTH)


def slip_verdict(
    held: Gripped, outside: Metre, depth: Metre, feed: Metre, tables: Tables
) -> Verdict:
    """What the slip question says of one turning cut (m) at this outside."""
    if held.grip is None:
        return Verdict.NO
    margins = slip_margins(held.grip, demand_at(held.job, outside, depth, feed, tables))
    return judge("slip", likely(margins), low_end(margins), tables)


def demand_at(job: Job, outside: Metre, depth: Metre, feed: Metre, tables: Tables) -> Demand:
    """What a turning cut fed towards the headstock asks, the tool as a plan takes it."""
    wheel = replace(job.work, pieces=(Piece(0.0, job.work.length, outside),))
    wish = CutWish("turn", depth=depth, feed=feed)
    (cut,) = planned_cuts(replace(job, work=wheel, cuts=(wish,)), tables)
    return demand_of(cut, job.work.material, tables)


def _cell(
    held: Gripped,
    outside: Metre,
    depth: Metre | None,
    margins: tuple[float, float] | None,
    or_more: bool,
) -> ChartCell:
    best, low = margins or (None, None)
    return ChartCell(held.column.mandrel, held.column.material, outside, depth, best, low, or_more)
