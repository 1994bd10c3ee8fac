"""The bar as it comes, loose in the bore: its clearance, the flat under the screw, the screw.

The screw sits in the work's own hub and pushes the work over by half the clearance, so an indicator
shows the whole of it. A bar that was measured has one clearance; one from stock has a band, by what
drawn bar is usually under its name, beside what the grades of drawn bar allow.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from borewright.making.cannot import Cannot
from borewright.making.facts import best_of
from borewright.making.shop_sizes import to_rule, up_to_shop
from borewright.making.soft.asked import SoftAsked
from borewright.making.soft.ends import Ends, ends_of
from borewright.making.soft.screwed import hub_screw
from borewright.making.soft.turned import too_large
from borewright.mechanics.runout import face_reading_of_lean, lean_in_clearance
from borewright.mechanics.set_screw import flat_width, thrown_over, thrown_runout, torque_on_flat
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, NewtonMetre
from borewright.reference.drives import SetScrew
from borewright.reference.library import Tables
from borewright.reference.screws import Screw

WHOLE = 1e-9
"""Of a step of stock: a bore that is one already takes that bar."""

PROCESS = "cold-drawing"


@dataclass(frozen=True, slots=True)
class DrawnBar:
    """Lengths in m. `clearance`, `runout`: low, likely, high; the runout is the whole reading.

    `seating_torque` is that of the thread; `opened`: how far its hole is opened from outside.

    `by_grade`: what two grades of drawn bar may be under their name, with the grade. `thread`: the
    shop's own thread, at or near the listed `screw`; None where that is too small for one.
    `flat_start` and `_end` run from the left end of the bar.
    """

    nominal: Metre
    measured: bool
    under: tuple[Metre, Metre, Metre]
    clearance: tuple[Metre, Metre, Metre]
    thrown: Metre
    runout: tuple[Metre, Metre, Metre]
    by_grade: tuple[tuple[str, Metre], ...]
    screw: SetScrew
    opened: Metre
    thread: Screw | None
    seating_torque: NewtonMetre
    flat_depth: Metre
    flat_width: Metre
    flat_start: Metre
    flat_end: Metre
    screw_at: Metre
    torque: NewtonMetre
    face_reading: Metre | None
    ends: Ends
    length: Metre
    leading_face: Metre
    bar_runout: Metre

    @property
    def thread_name(self) -> str:
        return self.thread.id if self.thread else self.screw.id


def drawn_bar(asked: SoftAsked, tables: Tables) -> DrawnBar | Cannot:
    """The bar and its screw; `Cannot` where none enters, it is too loose, or no screw has room."""
    fact, own, show = tables.holding_fact, best_of(tables, "stub_facts"), Show(asked.units)
    no = too_large(asked, tables)
    if no is not None:
        return no
    step = fact(f"drawn_step_{asked.units}").best
    nominal = asked.bar or step * math.floor(asked.bore / step + WHOLE)
    if not 0 < nominal <= asked.bore:
        entered = (
            f"A bar of {show.bore(nominal)} does not enter" if nominal else "No drawn bar enters"
        )
        return Cannot(f"{entered} a bore of {show.bore(asked.bore)}.", "Turn a bar to the bore.")
    usual = fact("drawn_bar_under")
    under = (0.0, 0.0, 0.0) if asked.bar else (usual.low, usual.best, usual.high)
    low, likely, high = (
        float(thrown_runout(bore, nominal - less))
        for bore, less in zip((asked.bore, asked.bore, asked.bore_high), under, strict=True)
    )
    if likely > own("bar_loosest"):
        return Cannot(
            f"A bar of {show.length(nominal)} is {show.small(likely)} loose in a bore of {show.bore(asked.bore)}: a set screw "
            "would lean the work on it.",
            "Turn the next larger bar to the bore: ask again without --as-drawn.",
        )
    found = hub_screw(asked, nominal, tables)
    if isinstance(found, Cannot):
        return found
    screw = found.screw
    ends = ends_of(asked, nominal, nominal, tables)
    chuck = asked.held == "chuck"
    before = ends.grip + up_to_shop(own("out_over"), asked.units) if chuck else ends.past
    after = up_to_shop(own("seat_room") * asked.bore, asked.units) if chuck else ends.past
    screw_at = before + asked.length - asked.hub_out / 2
    flat = max(fact("screw_flat_share").best * nominal, own("screw_flat_least"))
    long = min(to_rule(own("screw_flat_long") * screw.diameter, asked.units), asked.length)
    thread = tables.screw_within(asked.units, own("near_thread") * screw.diameter)
    # A thread thinner than the listed one bears less: torque goes with the cube, force the square.
    thinner = min(1.0, thread.diameter / screw.diameter) if thread else 1.0
    torque, across = screw.seating_torque * thinner**3, screw.diameter * thinner
    push = torque / (fact("nut_factor").best * across)
    tip = fact("screw_tip_share").best * across
    holding = screw.holding.best * thinner**2
    lean = lean_in_clearance(likely, asked.length)
    return DrawnBar(
        nominal=nominal,
        measured=asked.bar is not None,
        under=under,
        clearance=(low, likely, high),
        thrown=float(thrown_over(asked.bore, nominal - under[1])),
        runout=(low, likely, high),
        by_grade=() if asked.bar else _grades(nominal, tables),
        screw=screw,
        opened=found.opened,
        thread=thread,
        seating_torque=torque,
        flat_depth=flat,
        flat_width=float(flat_width(nominal, flat)),
        flat_start=to_rule(screw_at - long / 2, asked.units),
        flat_end=to_rule(screw_at - long / 2, asked.units) + long,
        screw_at=screw_at,
        torque=float(torque_on_flat(holding, push, nominal, flat, tip)),
        face_reading=float(face_reading_of_lean(lean, asked.outside)) if asked.outside else None,
        ends=ends,
        length=before + asked.length + after,
        leading_face=before,
        bar_runout=fact("drawn_bar_runout").best,
    )


def _grades(nominal: Metre, tables: Tables) -> tuple[tuple[str, Metre], ...]:
    """What the likely and the coarse grade of drawn bar allow it to be under its name."""
    drawn = tables.process(PROCESS)
    codes = (f"h{int(drawn.grade.best)}", f"h{int(drawn.grade.high)}")
    return tuple((code, -tables.limits(code, nominal).lower) for code in codes)
