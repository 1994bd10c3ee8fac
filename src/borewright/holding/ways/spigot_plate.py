"""A plate on the faceplate, with a spigot turned in place to the bore; held down near the rim.

The spigot finds the bore at once, piece after piece, and carries nothing; bolts or straps hold the
work where the cut pulls. It stays on the lathe until the batch is done.
"""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from borewright.answer.held import Held, line
from borewright.answer.records import Need, Step
from borewright.answer.streams import Stream
from borewright.holding.faces.on_plate import (
    BORE,
    HeldDown,
    plate_effort,
    plate_figures,
    plate_grip,
    ways_down,
    why_nothing_holds,
)
from borewright.holding.faces.on_plate_words import (
    balance_step,
    held_by,
    hold_down_step,
    holes_step,
    plate_fit,
    plate_marks,
    plate_more,
    plate_needs,
    plate_picture,
    plate_seat,
    tail_words,
)
from borewright.holding.figured import Throws, thrown
from borewright.holding.owned import made, needed
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


class SpigotPlate:
    """Way of holding: a plate with a spigot turned in place."""

    id = "spigot-plate"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One record for every place where it can be held down."""
        part = Part(job, tables)
        reason = _cannot(part)
        if reason:
            return (Held(self.id, cannot=reason),)
        return tuple(map(partial(_held, part), ways_down(part)))


def _cannot(part: Part) -> str:
    if part.work.bore.made_by == "sand-casting":
        return "The bore is as cast: bore it first, a spigot finds no middle in it yet."
    if part.oval:
        return "The bore is worn oval: a round spigot finds no middle in it."
    return "" if ways_down(part) else why_nothing_holds(part)


def spigot_length(part: Part) -> Metre:
    """Short, so that it finds the bore and does not jam: half a bore, at most half the work (m)."""
    return min(part.bore, part.length) / 2


def _held(part: Part, down: HeldDown) -> Held:
    leading = max("BA", key=lambda face: part.ring_at(face).outside)
    by, size = held_by(part, down), part.show.bore(part.bore)
    throws = _throws(part)
    return Held(
        way=SpigotPlate.id,
        tool=f"plate with a spigot of {size}, {by}",
        do_it=f"turn a spigot to this bore, {size}, on a plate where it stands, and hold the work on it by {by}"
        + (", the plate left on until the batch is done" if part.work.quantity > 1 else ""),
        leading=leading,
        grip=replace(plate_grip(part, down, thrown(throws)), throws=throws),
        needs=_needs(part, down),
        seat=plate_seat(part, down),
        fit=plate_fit(
            part,
            down,
            f"The spigot is turned to the bore as it is, {size}: the work itself is the gauge.",
        ),
        effort=plate_effort(part, down),
        room=(part.outside, 0.0),
        more_grip=plate_more(down),
        truer="Facing plate and turning spigot in one setting, clean faces, never taking it off.",
        spares="Packing right under every strap, card on the faces, a lighter hand on the wrench.",
        marks=plate_marks(down),
        mount=_mount(part, down),
        release=_release(part, down),
        ready=("micrometer, bolts, oil, rag, pencil",),
        caution_tags=("plate",),
        picture=plate_picture(part, down, leading, spigot_length(part)),
        figures=plate_figures(part, down),
        sources=down.clamp.sources,
        notes=(tail_words(part, down),),
    )


def _throws(part: Part) -> Throws:
    """Of a spigot turned in place, with its clearance (m)."""
    turned = part.fact("stub_runout", Stream.CENTERING)
    clearance = part.fact_with_zero("stub_clearance", Stream.SETTING)
    return (("spigot turned in place", turned), ("clearance", clearance))


def _needs(part: Part, down: HeldDown) -> tuple[Need, ...]:
    minutes = part.tables.holding_fact("plate_spigot_making").best
    return (
        needed(part.job, part.tables, "plate"),
        *plate_needs(part, down, indicator=False),
        made("the spigot, turned in place", minutes),
    )


def _mount(part: Part, down: HeldDown) -> tuple[Step, ...]:
    show, length = part.show, spigot_length(part)
    tapped = (
        f" A hole in its middle for the {show.length(down.thread)} bolt, its head sunk behind, put in before the plate goes on; "
        "or the hole tapped."
        if down.by == BORE
        else ""
    )
    return (
        line(
            "Plate on the faceplate",
            "A stout plate bolted flat on the faceplate, its bolts sunk. Rough a boss in its middle a little over the bore, or "
            f"screw a piece of bar in.{tapped}",
        ),
        line(
            "Face it and turn the spigot",
            f"In one setting: face the plate as far out as the work bears, a little hollow in the middle; turn the spigot "
            f"{show.length(length)} long to the bore, about {show.bore(part.bore)}, by trial: done when the work just slides "
            "on with no shake. A light undercut in the corner.",
            (),
            ("spigot",),
        ),
        *holes_step(part, down),
        hold_down_step(part, down),
        balance_step(part, down),
    )


def _release(part: Part, down: HeldDown) -> tuple[Step, ...]:
    nuts = "Bolt out" if down.number == 1 else "Nuts off in turn, a hand under it for the last"
    if part.work.quantity == 1:
        return (line("Off it comes", f"{nuts}; work off by hand, no knock on the spigot."),)
    return (
        line(
            "Next piece",
            f"{nuts}; work off, plate and spigot wiped, next on. The plate stays on the spindle, unmoved, until the batch is "
            "done.",
        ),
    )
