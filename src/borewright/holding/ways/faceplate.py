"""Work held down on the faceplate, set true by an indicator in its bore.

Nothing has to fit the bore, so a worn bore and a rough one are served; each piece is set true by
hand. It is held where the cut pulls, so a small bore under a large rim does not slip.
"""

from __future__ import annotations

from functools import partial

from borewright.answer.held import Held, line
from borewright.answer.records import Draws, Step
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
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.reference.library import Tables


class Faceplate:
    """Way of holding: on the faceplate, set true by indicator."""

    id = "faceplate"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One record for every place where it can be held down."""
        part = Part(job, tables)
        found = ways_down(part, FINGER)
        if not found:
            return (Held(self.id, cannot=why_nothing_holds(part)),)
        return tuple(map(partial(_held, part), found))


FINGER = 5e-3
"""Room beside a bolt (m) that the finger of a lever indicator wants in the bore (ours)."""


def _held(part: Part, down: HeldDown) -> Held:
    leading = max("BA", key=lambda face: part.ring_at(face).outside)
    by = held_by(part, down)
    return Held(
        way=Faceplate.id,
        tool=f"faceplate, {by}",
        do_it=f"hold it on the faceplate by {by}, set true by the indicator in the bore",
        leading=leading,
        grip=plate_grip(part, down, _runout(part)),
        needs=plate_needs(part, down),
        seat=plate_seat(part, down),
        fit=plate_fit(
            part,
            down,
            "Nothing has to fit the bore: it is set true by the indicator, as well as it is round.",
        ),
        effort=plate_effort(part, down),
        room=(part.outside, 0.0),
        more_grip=plate_more(down),
        truer="Patience with the indicator, the mean of two readings across; read again when it is drawn up.",
        spares="Packing right under every strap, card on the faces, a lighter hand on the wrench.",
        marks=plate_marks(down),
        mount=_mount(part, down),
        release=_release(part),
        ready=("faceplate bolts, card or paper, soft hammer, rag",),
        caution_tags=("plate",),
        picture=plate_picture(part, down, leading, 0.0),
        handling=_handling(part, down),
        figures=plate_figures(part, down),
        sources=down.clamp.sources,
        notes=(tail_words(part, down),),
    )


def _handling(part: Part, down: HeldDown) -> float:
    """Minutes for the batch beyond the usual ones."""
    if down.by != BORE:
        return 0.0
    return part.tables.holding_fact("bore_bolt_setting").best * part.work.quantity


def _runout(part: Part) -> Draws:
    """How true a careful hand sets the middle of the bore (m)."""
    return part.fact("indicator_care", Stream.CENTERING)


def _mount(part: Part, down: HeldDown) -> tuple[Step, ...]:
    show = part.show
    return (
        line(
            "Clean the plate",
            "Faceplate and nose wiped, the plate's face clocked: a light facing cut where it is out. The back face of the work "
            "flat, burrs off, or three packings alike where the rim or hub stands proud.",
        ),
        *holes_step(part, down),
        line(
            "Nip it",
            "Spindle in its lowest gear, plate flat on the bench or the work held by the tailstock center: "
            + _nipped(down),
        ),
        line(
            "Set it true",
            f"Indicator in the bore, at both ends: tap the work over by half of what it reads until it is within "
            f"{show.small(part.tables.holding_fact('indicator_care').best)}, then clock the face.",
            (),
            ("bore runs out", "face runs out"),
        ),
        hold_down_step(part, down),
        line(
            "Read it again",
            "Drawing up moves it: indicator in the bore once more, and again after the first cut.",
            (),
            ("bore runs out, drawn up",),
        ),
        balance_step(part, down),
    )


def _nipped(down: HeldDown) -> str:
    if down.by == BORE:
        return (
            "the bolt just nipped, a strap or a washer cut open on one side under its head, so that the indicator's finger gets "
            "into the bore beside it."
        )
    return "bolts just nipped, each one in."


def _release(part: Part) -> tuple[Step, ...]:
    again = " The next piece is set true anew." if part.work.quantity > 1 else ""
    return (
        line(
            "Off it comes",
            f"A hand or the tailstock under it before the last nut is off.{again}",
        ),
    )
