"""Studs in the driver plate that bear on spokes, or through holes in the web.

Each stud is a short stub held in the plate: it bends where it enters, F e / (π d³ / 32). Two studs
opposite each other drive without a sideways push, as far as both bear: a single one pushes the work
sideways by all of its force. So only one of a pair is counted, at the radius where it bears.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import Drive, line
from borewright.answer.held_picture import HeldMark, Role
from borewright.answer.records import Draws, Figure, Input
from borewright.answer.streams import Stream
from borewright.holding.figured import drawn_figure
from borewright.holding.owned import made, needed
from borewright.holding.part import Part
from borewright.job.web import web_of
from borewright.quantities.si import Metre

SIZES: dict[str, tuple[Metre, ...]] = {
    "inch": tuple(0.0254 * s for s in (0.25, 0.3125, 0.375, 0.5)),
    "mm": (6e-3, 8e-3, 10e-3, 12e-3),
}
"""Bar and bolts that studs are made of (m)."""

OF_THE_SPAN = 0.35
"""Largest stud as a share of the room between hub and rim (ours)."""

GAP = 3e-3
"""From the driver plate to the nearest face of the work (m); ours."""


def stud(part: Part, leading: str) -> Drive:
    """The drive for a hold with this face towards the headstock, or why it cannot be had."""
    web, spokes = web_of(part.work), part.work.spokes
    name = "studs against the spokes" if spokes else "studs through the web"
    if web is None:
        return Drive("stud", name, cannot="There is no spoke or web for a stud to bear on.")
    span = (web.outer - web.inner) / 2
    size = max((s for s in SIZES[part.job.units] if s <= OF_THE_SPAN * span), default=None)
    if size is None:
        return Drive("stud", name, cannot="Between hub and rim there is no room for a stud.")
    radius = (web.inner + web.outer) / 4
    out = _reach(part, leading)
    torque = _torque(part, size, out, radius)
    show = part.show
    hole = "" if spokes else " The web gets two holes: ask whoever drew it."
    return Drive(
        "stud",
        name,
        torque=torque,
        needs=(
            needed(part.job, part.tables, "plate", what="driver plate or faceplate to hold studs"),
            made(f"two studs of {show.length(size)}", part.tables.holding_fact("stud_making").best),
        ),
        marks="A bruise where each stud bears, none through a soft pad."
        if spokes
        else "Two holes in the web.",
        mount=line(
            "Studs in the driver plate",
            f"Two studs of {show.length(size)}, opposite each other, {show.length(2 * radius)} apart across the axis, standing out "
            f"{show.length(out)}. A soft pad where each bears; both must touch at once on the side that pushes.{hole} Turn once "
            "by hand: nothing may catch.",
            (_figure(part, torque, size, out, radius),),
            ("both touch",),
        ),
        mark=HeldMark(Role.PIN, radius, size, 2, 0.3),
        caution_tags=("studs",),
        sources=("ours-derived", "ours"),
    )


def _reach(part: Part, leading: str) -> Metre:
    """How far (m) a stud stands out of the plate to the middle of web or spokes."""
    web = web_of(part.work)
    assert web is not None
    pieces = [
        p for p in part.work.pieces if p.outside > web.inner and (p.inside or 0.0) < web.outer
    ]
    near = min((p.start if leading == "A" else part.length - p.end) for p in pieces)
    return GAP + max(near, 0.0) + web.thickness / 2


def _torque(part: Part, size: Metre, out: Metre, radius: Metre) -> Draws:
    stress = part.fact("stud_stress", Stream.TOOL)
    return np.asarray(stress * np.pi * size**3 / (32 * out) * radius)


def _figure(part: Part, torque: Draws, size: Metre, out: Metre, radius: Metre) -> Figure:
    inputs = (
        Input("stress", part.tables.holding_fact("stud_stress").best, "Pa"),
        Input("stud", size, "m"),
        Input("standing out", out, "m"),
        Input("radius", radius, "m"),
    )
    return drawn_figure(
        "drive_torque", torque, "N·m", "torque", "stud_torque", inputs, "ours-derived"
    )
