"""A soft bar between centers with the work bonded on it by retaining compound: the whole hold."""

from __future__ import annotations

import numpy as np

from borewright.answer.held import Check, Grip, Held, line
from borewright.answer.records import Input
from borewright.answer.streams import Stream
from borewright.holding.bars.between_centers import bar_stiffness, span_of
from borewright.holding.bars.soft_bar import ALL_ROUND, WAY, bar_needs, bar_picture, centered
from borewright.holding.bonding.bonds import RETAINING, release_check, warm_words
from borewright.holding.figured import drawn_figure
from borewright.holding.part import Part, endless, none_at_all
from borewright.mechanics.bonded_joint import gap_axial, gap_torque
from borewright.mechanics.spread import likely


def bonded_bar(part: Part) -> Held:
    """The hold of a bar turned smaller by the gap that the compound is meant for."""
    show, gap = part.show, part.fact("bond_gap", Stream.SETTING)
    size = show.bore(part.bore - likely(gap))
    shear = RETAINING.shear(part)
    torque = np.asarray(gap_torque(shear, part.bore, part.length))
    along = np.asarray(gap_axial(shear, part.bore, part.length))
    inputs = (
        Input("shear", likely(shear), "Pa"),
        Input("bore", part.bore, "m", "bore"),
        Input("length", part.length, "m"),
    )
    figure = drawn_figure(
        "bond_torque", torque, "N·m", "torque", "bond_gap_torque", inputs, "ours-derived"
    )
    return Held(
        way=WAY,
        tool=f"soft mandrel turned to {size}, with {RETAINING.called}",
        do_it=f"turn a soft bar between centers to {size}, stick the work on it with {RETAINING.called}, and cut it on the same "
        "centers",
        leading="A",
        grip=Grip(
            torque=torque,
            thrust_in=along,
            thrust_out=along,
            tilt=np.asarray(shear * np.pi * part.bore**2 * part.length / 4),
            runout=part.fact("bond_gap_runout", Stream.CENTERING),
            strength=endless(),
            springs=none_at_all(),
            stiffness=bar_stiffness(part, part.bore, span_of(part, part.length)),
            half_warm=RETAINING.half_warm(part),
            brittle=part.brittle,
        ),
        needs=bar_needs(part, "the bar, centered and turned", "soft_making", RETAINING.tool),
        reaches=ALL_ROUND,
        seat=Check(2.0, 2.0, "The whole bore is stuck; a narrow band of the bar finds its middle."),
        fit=Check(2.0, 2.0, "The gap fills whatever the bore is by some hundredths."),
        effort=release_check(part, RETAINING),
        room=(part.outside, span_of(part, part.length)),
        more_grip="a longer bore, cleaner and a little rough",
        truer="A narrow band turned to the bore, so that the gap cannot throw it over.",
        spares="Nothing needs to: a bond squeezes nothing.",
        marks="None; a film that scrapes off.",
        mount=(
            centered(part),
            line(
                "Turn it and stick it",
                f"A narrow band just sliding in the bore, the rest {size}. {RETAINING.thick}",
                (figure,),
                ("rim runs out",),
            ),
        ),
        release=(line("Let it go", warm_words(part, RETAINING), (), ("bore when off",)),),
        ready=(f"{RETAINING.called}, acetone, rag, gloves",),
        caution_tags=("dog", "bonded", RETAINING.key),
        picture=bar_picture(part, part.bore - likely(gap), "soft bar, bonded"),
        figures=(figure,),
        sources=("adhesive-memory", "ours-derived"),
        notes=("Shear is taken as even along the bore; stiff bonds give first at the ends.",),
    )
