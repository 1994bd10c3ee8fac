"""A second dog on the hub, its tail driven by the dog of the mandrel, or by a jaw of the chuck.

The dog's screw holds the hub as a set screw holds a shaft: by the table of set screws, which was
written for cup points on steel; through a copper pad it holds less (a stated share). The tail meets
the driver on the side that pushes, so the sense of rotation matters.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import Drive, line
from borewright.answer.held_picture import HeldMark, Role
from borewright.answer.records import Draws, Figure, Have, Input, Need
from borewright.answer.streams import Stream
from borewright.holding.figured import drawn_figure
from borewright.holding.owned import made, needed
from borewright.holding.part import Part
from borewright.mechanics.set_screw import screw_torque
from borewright.quantities.si import Metre
from borewright.reference.drives import SetScrew

WIDE = 0.4
"""Width of a dog along the axis, as a share of the round it takes (ours)."""

LEAST_WIDE = 8e-3
"""Narrowest dog (m); ours."""

SCREW = 0.25
"""Diameter of a dog's screw as a share of the round it takes (ours)."""


def second_dog(part: Part, leading: str) -> Drive:
    """The drive for a hold with this face towards the headstock, or why it cannot be had."""
    hub = part.ring_at(leading).outside
    room, wants = part.sticks_out(leading), max(LEAST_WIDE, WIDE * hub)
    show = part.show
    if room < wants:
        bare = "no hub sticks out" if room < 1e-4 else f"the hub sticks out {show.length(room)}"
        return Drive(
            "second-dog",
            "a second dog on the hub",
            cannot=f"A second dog wants {show.length(wants)} of hub towards the headstock: {bare}.",
        )
    dog = _dog(part, hub)
    screw = part.tables.set_screw_near(SCREW * hub)
    torque = _torque(part, screw, hub)
    return Drive(
        "second-dog",
        "a second dog on the hub",
        torque=torque,
        needs=(dog,),
        marks="A dent in the hub under the dog's screw, less with a copper pad.",
        mount=line(
            "Second dog on the hub",
            f"A dog for {show.length(hub)} on the hub, copper under its screw, its tail laid against the other dog's tail on the "
            "side that it is pushed from: turning forward, the mandrel's dog must push it, with no slack between. Turn once by "
            "hand, both tails guarded.",
            (_figure(part, torque, screw, hub),),
            ("tails touch",),
        ),
        mark=HeldMark(Role.DOG, 0.75 * hub, 0.3 * hub, 1, -0.6),
        caution_tags=("dog",),
        sources=("shigley-memory", "ours"),
    )


def _dog(part: Part, hub: Metre) -> Need:
    own = [d for d in part.job.shelf.dogs if (d.smallest or 0.0) <= hub <= (d.largest or 1.0)]
    if part.job.shelf.dogs:
        named = own[0].name if own else ""
        said = named or f"a dog that takes {part.show.length(hub)}"
        minutes = part.tables.holding_tool("dog").minutes
        return Need(said, Have.OWN) if own else made(said, minutes)
    return needed(part.job, part.tables, "dog", what=f"a dog for {part.show.length(hub)}")


def _torque(part: Part, screw: SetScrew, hub: Metre) -> Draws:
    holding = part.drawn(screw.holding, Stream.CLAMPING)
    pad = part.fact("pad_share", Stream.TOOL)
    return np.asarray(screw_torque(holding * pad, hub))


def _figure(part: Part, torque: Draws, screw: SetScrew, hub: Metre) -> Figure:
    inputs = (
        Input("holding force of the screw", screw.holding.best, "N"),
        Input("share through a pad", part.tables.holding_fact("pad_share").best, ""),
        Input("hub", hub, "m"),
    )
    return drawn_figure(
        "drive_torque", torque, "N·m", "torque", "dog_torque", inputs, "shigley-memory"
    )
