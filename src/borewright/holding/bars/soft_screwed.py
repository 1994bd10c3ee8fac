"""A bar as drawn between centers, a set screw through the hub on its flat: the whole hold.

It is loose: the screw throws the work over by half the clearance, so the indicator shows all of it.
The flat keeps the bruise below the round, so that a spin cannot gall the work on.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import Check, Grip, Held, line
from borewright.answer.records import Figure, Input, Step
from borewright.answer.streams import Stream
from borewright.holding.bars.between_centers import bar_stiffness, span_of
from borewright.holding.bars.flatted_bar import FlattedBar
from borewright.holding.bars.soft_bar import ALL_ROUND, WAY, bar_needs, bar_picture, centered
from borewright.holding.figured import Throws, drawn_figure, thrown
from borewright.holding.part import Part, endless, none_at_all
from borewright.mechanics.runout import face_reading_of_lean, lean_in_clearance
from borewright.mechanics.spread import likely


def screwed_bar(part: Part, bar: FlattedBar) -> Held:
    """The hold of this bar and screw."""
    show, size = part.show, part.show.length(bar.nominal)
    screw = show.length(bar.screw.diameter)
    thrown = likely(bar.clearance)
    return Held(
        way=WAY,
        tool=f"{size} bar as drawn, a set screw on a flat",
        do_it=f"put it on a {size} bar as drawn between centers, a {screw} set screw through the hub on a flat, if the hub may have "
        "the hole",
        leading=bar.leading,
        grip=_screw_grip(part, bar),
        needs=bar_needs(
            part,
            f"the bar centered, a flat filed, a {screw} hole tapped in the hub",
            "flat_making",
            "set-screw",
            "drill-and-tap",
            drawn=bar.nominal,
        ),
        reaches=ALL_ROUND,
        seat=_screw_seat(part, bar),
        fit=Check(
            2.0,
            2.0,
            f"The bar goes in with about {show.small(thrown)} to spare; the screw throws the work over by half of that, and "
            "an indicator shows all of it.",
        ),
        effort=Check(2.0, 1.4, f"A key does it: about {show.torque(bar.screw.seating_torque)}."),
        room=(part.outside, span_of(part, part.length)),
        more_grip="a second screw in line with the first, or retaining compound in the gap",
        truer="A bar turned to the bore; the screw alone throws the work over by half the clearance.",
        spares="A lighter hand on the key; a larger hub.",
        marks="A tapped hole stays in the hub; the bar is bruised under the screw, on its flat.",
        mount=_screw_mount(part, bar),
        release=(
            line(
                "Off again",
                "Screw back two turns, slide it off: the bruise lies on the flat, below the round, and scores nothing.",
            ),
        ),
        ready=("tap and drill, set screw and key, file, oil",),
        caution_tags=("dog", "set-screw", "soft-bar"),
        picture=bar_picture(part, bar.nominal, "bar as drawn, flat under the screw"),
        figures=_screw_figures(part, bar),
        sources=("shigley-memory", "ours-derived"),
        notes=(
            "Why the flat: a screw on the round raises a burr, and if the work slips once the burr galls the bar into the bore.",
        ),
    )


def _screw_grip(part: Part, bar: FlattedBar) -> Grip:
    drawn = part.fact("drawn_bar_runout", Stream.CENTERING)
    throws: Throws = (("bar as drawn", drawn), ("clearance", bar.clearance))
    return Grip(
        torque=bar.torque,
        thrust_in=bar.holding,
        thrust_out=bar.holding,
        tilt=bar.tilt,
        runout=thrown(throws),
        strength=bar.strength,
        springs=none_at_all(),
        stiffness=bar_stiffness(part, bar.nominal, span_of(part, part.length)),
        half_warm=endless(),
        brittle=part.brittle,
        throws=throws,
    )


def _screw_seat(part: Part, bar: FlattedBar) -> Check:
    margin = 2.0 if bar.hole_is_there else 0.9
    said = (
        "The cross hole in the hub can be tapped for it."
        if bar.hole_is_there
        else "It needs a tapped hole through the hub: only where the drawing allows one."
    )
    return Check(
        margin, margin, said, "Nothing needs to." if margin > 1 else "Asking whose part it is."
    )


def _screw_figures(part: Part, bar: FlattedBar) -> tuple[Figure, ...]:
    inputs = (
        Input("bore", part.bore, "m", "bore"),
        Input("bar", part.bore - likely(bar.clearance), "m", "bore"),
    )
    return (
        drawn_figure("screw_torque", bar.torque, "N·m", "torque", "", (), "shigley-memory"),
        drawn_figure(
            "thrown_runout", bar.clearance, "m", "small", "thrown_runout", inputs, "ours-derived"
        ),
        _face_figure(part, bar),
    )


def _face_figure(part: Part, bar: FlattedBar) -> Figure:
    """What a face may show: with no shoulder the work leans corner to corner in its clearance."""
    lean = lean_in_clearance(bar.clearance, part.length)
    face = np.asarray(face_reading_of_lean(lean, part.outside))
    inputs = (
        Input("clearance", likely(bar.clearance), "m", "small"),
        Input("length of the fit", part.length, "m"),
        Input("outside", part.outside, "m"),
    )
    return drawn_figure("face_leans", face, "m", "small", "face_leans", inputs, "ours-derived")


def _screw_mount(part: Part, bar: FlattedBar) -> tuple[Step, ...]:
    show = part.show
    return (
        centered(part),
        line(
            "Flat and hole",
            f"A flat {show.depth(bar.flat)} deep on the bar where the hub stands, filed square; through the hub, midway of what "
            f"sticks out, a hole tapped {show.length(bar.screw.diameter)}; no burr in the bore.",
        ),
        line(
            "Screw it on",
            f"Work on, hole over the flat, screw tight: about {show.torque(bar.screw.seating_torque)}. Clock the rim: what the "
            "indicator shows is the clearance.",
            _screw_figures(part, bar),
            ("rim runs out",),
        ),
    )
