"""The drill that opens a bore in the hold: how large, and what it asks of the jaws.

Weakness: which drill is really taken hangs on the shelf; this is the largest that still leaves the
boring bar its stock, from the solid, so it is seldom less than what is asked.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import Drilling
from borewright.answer.records import Input
from borewright.answer.streams import Stream
from borewright.holding.figured import drawn_figure
from borewright.holding.jaws.grasp import ROUGH
from borewright.holding.part import Part
from borewright.mechanics.drilling import drill_chip, drill_torque, specific_force
from borewright.mechanics.spread import likely

PER_SQUARE_MILLIMETRE = 1e6
"""k_c11 is printed in N/mm²."""


def drilling_of(part: Part) -> Drilling | None:
    """The largest drill; None where the hole is there already, and is only bored."""
    if part.tables.roughness_id(part.work.bore.made_by) in ROUGH:
        return None
    fact = part.tables.holding_fact
    across = min(part.bore - fact("drill_under").best, fact("drill_largest").best)
    if across <= 0:
        across = part.bore
    feed = part.fact("drill_feed", Stream.TOOL)
    constant = part.tables.kienzle(part.work.material)
    correction = part.tables.cutting_correction
    wear = part.drawn(correction("tool_wear"), Stream.CUTTING) * correction("hss_tool").best
    kc11 = part.drawn(constant.kc11, Stream.CUTTING) * PER_SQUARE_MILLIMETRE
    force = specific_force(drill_chip(feed), kc11, constant.mc.best, wear)
    torque = np.asarray(drill_torque(force, feed, across))
    # The likely case is worked from the numbers shown.
    inputs = (
        Input("specific force", likely(np.asarray(force)), "Pa"),
        Input("feed each turn", likely(feed), "m", "feed"),
        Input("drill", across, "m", "length"),
    )
    said = drawn_figure("drill_torque", torque, "N·m", "torque", "drill_torque", inputs, "ours")
    return Drilling(across, torque, said)
