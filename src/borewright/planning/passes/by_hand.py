"""Cuts of a form that is plunged or fed by hand: grooves, the crown of a pulley, edges and chamfers."""

from __future__ import annotations

import math
from dataclasses import replace

from borewright.answer.records import Cut
from borewright.cutting.base import (
    GROOVE_TOOL,
    NARROWEST_TOOL,
    SMALLEST_LEG,
    side_by_side,
)
from borewright.cutting.edges import edge_cuts
from borewright.planning.passes.bench import Bench, Set, cuts_of
from borewright.planning.passes.limits import Wanted
from borewright.planning.weighing.crown_cut import crown_cuts

CROWNED = 2.0
"""A pass of the crown is at most so many usual finishing cuts deep at the edge (ours)."""

HALVES = 2

PLUNGED = Wanted(quiet=False)
"""A plunge is set without the limit of chatter, which would forbid grooves that shops cut every day:
one mode of the work says too little of a tool whose whole edge cuts. It is said where it may sing."""


def groove(bench: Bench, cut: Cut) -> Set:
    """A groove, plunged side by side by the widest tool that all limits bear."""
    width = cut.depth * cut.passes
    run = replace(
        bench.rough(cut, width, cut.diameter),
        deepest=width / side_by_side(width, GROOVE_TOOL, NARROWEST_TOOL),
        usual_feed=bench.last_feed,
        surface=bench.plunge_speed * bench.surface,
        least=NARROWEST_TOOL,
        bears=math.inf,
    )
    found = bench.found(cut, run, PLUNGED, by_hand=True)
    made = cuts_of(cut, found.setting, run.begins)
    wide = bench.holding.show.length(made.depth)
    return Set((replace(made, name=f"{cut.name}, by a tool {wide} wide"),), found)


def crown(bench: Bench, cut: Cut) -> Set:
    """A crown: half by half in equal passes of the top slide; in steps as many as there are stops."""
    job = bench.holding.job
    wish = job.work.finished.form.crown
    assert wish is not None
    whole = next(crown_cuts(job, bench.holding.tables))
    stepped = wish.shape == "arc"
    run = replace(
        bench.rough(whole, whole.depth, whole.diameter),
        length=whole.passes * whole.length,
        deepest=whole.depth if stepped else CROWNED * bench.last_depth,
        usual_feed=bench.last_feed if bench.ridges is None else bench.feed,
        coarser=False,
        between=whole.passes * bench.between,
        once=stepped,
    )
    found = bench.found(whole, run, Wanted(ridges=bench.ridges), by_hand=not stepped)
    made = cuts_of(cut, found.setting, run.begins)
    return Set((replace(made, passes=whole.passes if stepped else HALVES * made.passes),), found)


def edge(bench: Bench, cut: Cut) -> Set:
    """Edges: each in one plunge of a tool as wide as the slope, or in several side by side."""
    rows = edge_cuts(bench.holding.job, bench.holding.tables)
    whole = next(row for row in rows if row.id == cut.id)
    run = replace(
        bench.rough(whole, whole.depth, whole.diameter),
        length=whole.passes * whole.length,
        deepest=whole.depth,
        usual_feed=bench.last_feed,
        surface=bench.plunge_speed * bench.surface,
        between=whole.passes * bench.between,
        least=SMALLEST_LEG,
        bears=math.inf,
    )
    found = bench.found(replace(cut, length=whole.length), run, PLUNGED, by_hand=True)
    made = cuts_of(cut, found.setting, run.begins)
    several = f", {made.passes} plunges side by side" if made.passes > 1 else ""
    return Set((replace(made, name=cut.name + several, passes=whole.passes * made.passes),), found)
