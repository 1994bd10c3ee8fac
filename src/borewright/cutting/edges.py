"""Edges broken and chamfered by a tool ground to 45 degrees, plunged straight in by hand.

An edge whose free side looks to the tailstock is pushed towards the headstock and tightens the
seat; one that looks to the headstock is pushed off it and loosens. Which face is which, the hold
says: see `led`.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import groupby

from borewright.answer.records import Cut
from borewright.cutting.base import SMALLEST_LEG, Base, base_of, side_by_side, spindle_for
from borewright.cutting.directions import TIGHTENS
from borewright.job.finished_edges import Edge, leg_of, outer_edges
from borewright.job.records import Job
from borewright.mechanics.turning import surface_speed
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

LEAST_LEG = 1e-6
"""A leg below this (m) is no leg."""


def edge_cuts(job: Job, tables: Tables, share: float = 1.0) -> Iterator[Cut]:
    """One row for all edges that look to one face and have one leg, chamfers first.

    `share`: of what the tool usually takes at once, in width and feed."""
    base, feed = base_of(job, tables), share * tables.cut_defaults(job.work.material).finish_feed

    def kind(edge: Edge) -> tuple[Metre, str]:
        return -leg_of(edge, job.work), edge.looks

    wanted = sorted((e for e in outer_edges(job.work) if leg_of(e, job.work) > LEAST_LEG), key=kind)
    for (minus, looks), edges in groupby(wanted, key=kind):
        whole = _row(job, base, feed, -minus, looks, tuple(edges))
        plunges = side_by_side(whole.depth, share * whole.depth, SMALLEST_LEG)
        yield replace(whole, depth=whole.depth / plunges, passes=whole.passes * plunges)


def _row(job: Job, base: Base, feed: Metre, leg: Metre, looks: str, edges: tuple[Edge, ...]) -> Cut:
    own = (job.work.finished.form.chamfers.a, job.work.finished.form.chamfers.b)
    chamfer = leg in own and leg != job.work.finished.form.edges
    largest = max(e.outside for e in edges)
    spindle = spindle_for(base.surface, largest, base.machine)
    return Cut(
        id=f"{'chamfer' if chamfer else 'edges'}-{looks.lower()}",
        kind="edge",
        name=_name(Show(job.units).length(leg), looks, len(edges), chamfer=chamfer),
        diameter=largest,
        depth=leg,
        feed=feed,
        passes=len(edges),
        cutting_speed=surface_speed(spindle, largest),
        spindle_speed=spindle,
        edge_angle=math.pi / 2,
        nose_radius=0.0,
        direction="straight in at 45°",
        seat_effect=TIGHTENS,
        length=leg / math.sqrt(2),
    )


def _name(leg: str, looks: str, number: int, *, chamfer: bool) -> str:
    if chamfer:
        return f"chamfer the edge of face {looks}, {leg} at 45 degrees"
    edges = "the edge" if number == 1 else f"the {number} edges"
    return f"break {edges} that look{'s' if number == 1 else ''} towards face {looks} by {leg}"
