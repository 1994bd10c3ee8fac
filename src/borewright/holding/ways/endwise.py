"""A ring clamped by its faces to a plate: the clamp presses along the axis, where a ring is stiff.

The plate is faced where it stands, so the work lies flat; bolts go through the bore into the plate
and a clamp ring spreads them over the tail face, smaller than the finished size, so the whole
outside is free. One piece is set true by indicator; for many a low step is turned on the plate.
Weakness: faces are taken as flat and parallel; a face that is not is bent flat and springs back.
"""

from __future__ import annotations

from borewright.answer.held import OUTSIDE, Check, Grip, Held, Joint, line
from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Need, Step
from borewright.answer.streams import Stream
from borewright.holding.faces.clamped import Clamped, clamped, how_hard, thread_within
from borewright.holding.figured import Throws, thrown
from borewright.holding.jaws.grasp import still_to_bore
from borewright.holding.jaws.jawed import chuck_stiffness
from borewright.holding.owned import made, needed
from borewright.holding.part import FACE_MEETS, Part, endless
from borewright.job.records import Job
from borewright.mechanics.spread import likely, low_end
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

BOLTS = 3
"""Bolts through the bore (ours)."""

BOLT_SHARE, LARGEST_BOLT = 1 / 6, 8.1e-3
"""Largest bolt over the bore, and in any bore (m): three and a wrench must go in (ours)."""

FEW = 3
"""Up to so many pieces are set true by indicator; more are worth a step (ours)."""

PLATE = {"inch": 0.75 * 0.0254, "mm": 20e-3}
"""Thickness the plate is drawn with (m)."""


class Endwise:
    """Way of holding: clamped by the faces to a plate faced in place."""

    id = "endwise"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One arrangement: set true by indicator, or on a low step where there are many."""
        part = Part(job, tables)
        reason = _cannot(part)
        return (Held(self.id, cannot=reason),) if reason else (_held(part),)


def _cannot(part: Part) -> str:
    fact, show = part.tables.holding_fact, part.show
    if part.oval:
        return "The bore is worn oval: there is no middle in it to set true."
    if rough := still_to_bore(part):
        return rough
    if part.bore < fact("endwise_least_bore").best:
        return "The bore is too small for bolts through it: a stub or a nut clamps the same faces."
    if reason := _too_long(part):
        return reason
    if not _flat_at_bore(part):
        return "The hub lies back from the faces of the rim: nothing flat round the bore to clamp."
    wall, least = (_outer(part) - part.bore) / 2, fact("endwise_least_wall").best
    if wall < least:
        return (
            f"The faces are too narrow: a clamp ring that clears the tool bears on {show.length(max(wall, 0.0))}, and "
            f"{show.length(least)} is about the least."
        )
    return ""


def _too_long(part: Part) -> str:
    """Rings and discs only: long work stands on its end and leans, long thin bolts hold it badly."""
    fact, show, length = part.tables.holding_fact, part.show, part.length
    most = min(fact("endwise_longest").best * part.bore, fact("bolt_longest").best * _thread(part))
    if length <= most:
        return ""
    return (
        f"It is {show.length(length)} long: bolted endwise through a bore of {show.bore(part.bore)} it may be about "
        f"{show.length(most)}. That is for rings and discs; a mandrel between centers serves the long ones."
    )


def _thread(part: Part) -> Metre:
    """The bolts (m): three and a wrench go into the bore."""
    return thread_within(part, min(BOLT_SHARE * part.bore, LARGEST_BOLT)) or 0.0


def _flat_at_bore(part: Part) -> bool:
    """True where the ring round the bore reaches both ends of the work."""
    bored = [p for p in part.work.pieces if p.inside is None]
    starts, ends = min(p.start for p in part.work.pieces), max(p.end for p in part.work.pieces)
    first, last = min(p.start for p in bored), max(p.end for p in bored)
    return first - starts < FACE_MEETS and ends - last < FACE_MEETS


def _outer(part: Part) -> Metre:
    """Outside of plate and clamp ring (m): within both faces, and clear of the tool."""
    finished = part.work.finished.outside or part.outside
    clear = finished - 2 * part.tables.holding_fact("jaw_tool_room").best
    return min(clear, *(part.ring_at(face).outside for face in "AB"))


def _held(part: Part) -> Held:
    thread = _thread(part)
    outer = _outer(part)
    clamp = clamped(part, thread, part.bore, outer, BOLTS)
    step = part.work.quantity > FEW
    place = "on a low step turned to the bore" if step else "set true by indicator on the bore"
    return Held(
        way=Endwise.id,
        tool="plate with a low step" if step else "plate, set true by indicator",
        do_it=f"clamp it by its faces to a plate faced in place, {place}, three {part.show.length(thread)} bolts through "
        "the bore and a clamp ring on the face, the whole outside free",
        leading=max("BA", key=lambda face: part.ring_at(face).outside),
        grip=_grip(part, clamp, step),
        needs=_needs(part, step),
        reaches=(OUTSIDE,),
        seat=Check(
            2.0,
            1.5,
            f"It lies flat on a plate faced where it stands, {part.show.length(outer)} across, a little smaller than the "
            "finished size so that the tool runs past.",
        ),
        fit=_fit(part, step),
        effort=_effort(part, clamp),
        room=(part.outside, 0.0),
        more_grip="larger bolts, a sheet of paper under the work",
        truer="Reading at both ends of the bore before and after the last pull on the bolts.",
        spares="A wider clamp ring, a lighter hand on the wrench.",
        marks="A ring where the clamp bears; paper under it leaves none.",
        mount=_mount(part, clamp, outer, step),
        release=_release(part, step),
        ready=("facing tool, thin paper, feeler strip, wrench, rag",),
        caution_tags=("endwise",),
        picture=_picture(part, thread, outer, step),
        figures=clamp.figures,
        sources=clamp.sources,
        notes=(
            "Faces are taken as flat and parallel; one that is not springs back when it is let go.",
        ),
    )


def _grip(part: Part, clamp: Clamped, step: bool) -> Grip:
    throws = _throws(part, step)
    return Grip(
        torque=clamp.torque,
        thrust_in=endless(),
        thrust_out=clamp.force,
        tilt=clamp.tilt,
        runout=thrown(throws),
        strength=clamp.strength,
        springs=clamp.swell,
        stiffness=chuck_stiffness(part, part.length + PLATE[part.job.units]),
        half_warm=endless(),
        joint=Joint.CLAMP,
        brittle=part.brittle,
        throws=throws,
    )


def _throws(part: Part, step: bool) -> Throws:
    if not step:
        return (("set by indicator", part.fact("indicator_care", Stream.SETTING)),)
    return (
        ("step as turned", part.fact("stub_runout", Stream.CENTERING)),
        ("clearance", part.fact_with_zero("stub_clearance", Stream.SETTING)),
    )


def _needs(part: Part, step: bool) -> tuple[Need, ...]:
    job, tables = part.job, part.tables
    if step:
        what = f"a low step on the plate to {part.show.bore(part.bore)}, and a clamp ring"
        row = "endwise_step_making"
    else:
        what, row = "a plate faced in place, and a clamp ring", "endwise_ring_making"
    return (
        needed(job, tables, "faceplate"),
        needed(job, tables, "plate"),
        needed(job, tables, "straps"),
        needed(job, tables, "drill-and-tap"),
        needed(job, tables, "indicator"),
        made(what, tables.holding_fact(row).best),
    )


def _fit(part: Part, step: bool) -> Check:
    if step:
        said = f"The step is turned to this bore, {part.show.bore(part.bore)}, by trial."
        return Check(2.0, 2.0, said, "Trying the work on: no shake.")
    return Check(2.0, 2.0, "The bore is only read by the indicator: any size does.")


def _effort(part: Part, clamp: Clamped) -> Check:
    show = part.show
    return Check(
        2.0,
        1.4,
        f"{how_hard(part, clamp)}: about {show.torque(clamp.wrench)} on each of three bolts clamps with about "
        f"{show.force(likely(clamp.force))} in all, {show.force(low_end(clamp.force))} in the poor case (1 in 20).",
        "Cleaner, oiled threads clamp harder at the same torque.",
        clamp.sources,
    )


def _mount(part: Part, clamp: Clamped, outer: Metre, step: bool) -> tuple[Step, ...]:
    show = part.show
    how = (
        f"; turn a low step to {show.bore(part.bore)}, shorter than the bore is deep"
        if step
        else ""
    )
    stays = " It stays there until the batch is done." if part.work.quantity > 1 else ""
    care = show.small(part.tables.holding_fact("indicator_care").best)
    located = (
        "Work on the step, bolts finger tight: it must lie flat, so clear the step's corner by an undercut or a chamfer."
        if step
        else f"Bolts finger tight. Indicator in the bore, tap the work true to {care} whole reading."
    )
    return (
        line(
            "Face the plate in place",
            f"Plate bolted to the faceplate, faced true and turned to {show.length(outer)}{how}. Three tapped holes for "
            f"{show.length(clamp.thread)} on a circle that leaves the bore free.{stays}",
            (),
            ("step",) if step else (),
        ),
        line("Locate it before tightening", located, (), () if step else ("bore runs out",)),
        line(
            "Tighten across",
            f"A feeler or a strip of paper under the work all round first: never tighten over a gap, it bends the ring. Clamp "
            f"ring on, a little at a time, across, to about {show.torque(clamp.wrench)} each; read the bore again. Pencil line "
            "across work and plate: if it breaks, it slipped: stop.",
            clamp.figures,
            ("bore runs out, clamped",),
        ),
        line(
            "Ease it before the last cut",
            "After roughing slacken the bolts, let the ring come as it likes, tighten again a little lighter and read it again: "
            "what roughing set free is then gone before the last cut.",
        ),
    )


def _release(part: Part, step: bool) -> tuple[Step, ...]:
    if part.work.quantity == 1:
        return (line("Off it comes", "Bolts out evenly, a hand under the work for the last."),)
    again = "next on: the plate stays" if step else "next on, and set true again: the plate stays"
    return (line("Next piece", f"Bolts out evenly, work off, wipe, {again} as faced, unmoved."),)


def _picture(part: Part, thread: Metre, outer: Metre, step: bool) -> HeldPicture:
    leading = max("BA", key=lambda face: part.ring_at(face).outside)
    thick, end = PLATE[part.job.units], part.length
    cap = max(1.2 * thread, 4e-3)
    circle = part.bore / 2 - 1.2 * thread
    low = (HeldRing(Role.PLATE, 0.0, min(0.3 * end, 3e-3), part.bore / 2),) if step else ()
    rings = (
        HeldRing(Role.SPINDLE, -2.2 * thick, -1.0 * thick, 0.7 * outer),
        HeldRing(Role.PLATE, -thick, 0.0, outer / 2),
        *low,
        *part.rings(leading, 0.0),
        HeldRing(Role.WASHER, end, end + cap, outer / 2, max(0.0, circle - 1.2 * thread)),
    )
    return HeldPicture(
        rings,
        (HeldMark(Role.SCREW, circle, 1.6 * thread, BOLTS),),
        (
            HeldNote(Role.PLATE, "plate, faced in place"),
            HeldNote(Role.WASHER, "clamp ring, clear of the tool"),
        ),
        turned=(0.0, end),
    )
