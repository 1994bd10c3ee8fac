"""A set screw through the hub on a flat of what is turned to the bore: it takes the torque.

On a round the screw raises a burr, and once the work slips the burr galls the bore; on a flat the
bruise lies below the round. The flat also makes it hold more: the screw must be lifted to turn.
Source: the table of set screws (from memory; other charts give 2 to 2.5 times less, and so does its
best value), and `mechanics.set_screw` for the flat. Weakness: the hole stays in the hub.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import Drive, line
from borewright.answer.held_picture import HeldMark, Role
from borewright.answer.records import Draws, Figure, Input
from borewright.answer.streams import Stream
from borewright.holding.bars.flatted_bar import flat_and_tip, screw_for
from borewright.holding.figured import drawn_figure
from borewright.holding.owned import made, needed
from borewright.holding.part import Part
from borewright.mechanics.set_screw import torque_on_flat
from borewright.quantities.si import Newton
from borewright.reference.drives import SetScrew

NAME = "a set screw on a flat"


def flat_screw(part: Part, leading: str) -> Drive:
    """The drive through the hub at the face away from the headstock, or why it cannot be had."""
    face = "B" if leading == "A" else "A"
    screw = screw_for(part, face, part.bore)
    if screw is None:
        bare = part.sticks_out(face) < 1e-4
        why = "No hub stands out" if bare else "The hub has no room for a screw"
        return Drive("flat-screw", NAME, cannot=f"{why} towards the tailstock.")
    push = screw.seating_torque / (part.tables.holding_fact("nut_factor").best * screw.diameter)
    holding = part.drawn(screw.holding, Stream.CLAMPING)
    flat, tip = flat_and_tip(part, part.bore, screw)
    torque = np.asarray(torque_on_flat(holding, push, part.bore, flat, tip))
    show, size = part.show, part.show.length(screw.diameter)
    return Drive(
        "flat-screw",
        NAME,
        torque=torque,
        needs=(
            needed(part.job, part.tables, "set-screw"),
            needed(part.job, part.tables, "drill-and-tap"),
            made(f"a {size} hole tapped in the hub", part.tables.holding_fact("flat_making").best),
        ),
        marks="A tapped hole stays in the hub: ask whoever drew it.",
        mount=line(
            "Set screw on a flat",
            f"A flat {show.depth(flat)} deep on the bar where the hub stands, filed square; through the hub a hole tapped {size}, "
            f"no burr in the bore. Screw tight on the flat: about {show.torque(screw.seating_torque)}, its head below the hub.",
            (_figure(part, torque, screw, push),),
        ),
        mark=HeldMark(Role.SCREW, part.ring_at(face).outside / 2, screw.diameter),
        caution_tags=("set-screw",),
        sources=("shigley-memory", "ours-derived"),
    )


def _figure(part: Part, torque: Draws, screw: SetScrew, push: Newton) -> Figure:
    flat, tip = flat_and_tip(part, part.bore, screw)
    inputs = (
        Input("holding force of the screw", screw.holding.best, "N"),
        Input("push of the screw", push, "N"),
        Input("bar", part.bore, "m", "bore"),
        Input("flat", flat, "m"),
        Input("tip", tip, "m"),
    )
    return drawn_figure(
        "drive_torque", torque, "N·m", "torque", "flat_torque", inputs, "ours-derived"
    )
