"""A bar as drawn, loose in the bore, with a flat under a set screw through the hub.

The bar is the largest size in stock that enters; what a drawn bar is under its size, and so the
clearance, is drawn. The screw is the largest listed that hub and bar have room for.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Draws
from borewright.answer.streams import Stream
from borewright.holding.part import Part
from borewright.mechanics.rings import hoop_factor
from borewright.mechanics.set_screw import thrown_runout, torque_on_flat
from borewright.quantities.si import Metre, Newton
from borewright.reference.drives import SetScrew


@dataclass(frozen=True, slots=True, eq=False)
class FlattedBar:
    """Bar size in stock and flat (m), the screw, and what they give as draws (m, N, N·m)."""

    leading: str
    nominal: Metre
    flat: Metre
    screw: SetScrew
    clearance: Draws
    holding: Draws
    push: Newton
    torque: Draws
    tilt: Draws
    strength: Draws
    hole_is_there: bool


def flatted_bar(part: Part) -> FlattedBar | None:
    """The bar and screw for a part; None where no hub stands out that takes a screw."""
    face = max("AB", key=part.sticks_out)
    fact = part.tables.holding_fact
    step = fact(f"drawn_step_{part.job.units}").best
    nominal = step * np.floor(part.bore / step + 1e-9)
    screw = screw_for(part, face, nominal)
    if screw is None:
        return None
    under = part.fact_with_zero("drawn_bar_under", Stream.SETTING)
    clearance = np.asarray(thrown_runout(part.bore, np.minimum(nominal - under, part.bore)))
    holding = part.drawn(screw.holding, Stream.CLAMPING)
    push = screw.seating_torque / (fact("nut_factor").best * screw.diameter)
    flat, tip = flat_and_tip(part, nominal, screw)
    return FlattedBar(
        leading="B" if face == "A" else "A",
        nominal=nominal,
        flat=flat,
        screw=screw,
        clearance=clearance,
        holding=holding,
        push=push,
        torque=np.asarray(torque_on_flat(holding, push, nominal, flat, tip)),
        # The screw holds the bar against the far wall along the bore.
        tilt=holding * part.length / 4,
        strength=_strength(part, face, push),
        hole_is_there=part.work.cross_hole is not None,
    )


def screw_for(part: Part, face: str, bar: Metre) -> SetScrew | None:
    """The largest set screw that hub and bar (m) have room for at a face; None where none fits."""
    hub = part.ring_at(face)
    wall = (hub.outside - part.bore) / 2
    return part.tables.set_screw_for(bar, wall, part.sticks_out(face))


def flat_and_tip(part: Part, bar: Metre, screw: SetScrew) -> tuple[Metre, Metre]:
    """Depth of the flat on a bar (m), and the tip of the screw that stands on it."""
    fact = part.tables.holding_fact
    return fact("screw_flat_share").best * bar, fact("screw_tip_share").best * screw.diameter


def _strength(part: Part, face: str, push: Newton) -> Draws:
    """What the hub stands over its tension: the screw's push spread along what stands out."""
    ratio = part.bore / part.ring_at(face).outside
    pressure = push / (part.bore * part.sticks_out(face))
    return np.asarray(part.strength / (pressure * float(hoop_factor(np.asarray(ratio)))))
