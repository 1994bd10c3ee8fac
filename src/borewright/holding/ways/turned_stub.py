"""A stub turned in the chuck to this very bore, shouldered, the work held by a washer and screw.

It runs true because it was turned where it stands; so it stays in the chuck until the batch is
done. The screw clamps the work on the shoulder; a cut of the usual sense tightens a right-hand
screw. The stub sticks out, so it bends more than a mandrel between centers.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import Check, Grip, Held, Joint, line
from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Draws, Input, Need, Step
from borewright.answer.streams import Stream
from borewright.holding.clamped import Clamped, clamped, drawn_figure, thread_within
from borewright.holding.owned import made, needed
from borewright.holding.part import Part, endless, none_at_all
from borewright.job.records import Job
from borewright.mechanics.beam import Bar, round_step
from borewright.mechanics.overhang import Root, stub_stiffness
from borewright.mechanics.spread import likely, low_end
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

THREAD_SHARE = 0.5
"""Largest thread in the end of a stub, as a share of its diameter (ours): the wall must stand."""

SHOULDER = {"inch": 0.25 * 0.0254, "mm": 6e-3}
"""Width along the axis of what stands between jaws and work (m): the tool must clear (ours)."""

IN_THE_JAWS = 1.5
"""Length gripped in the chuck, in bores (ours)."""


class TurnedStub:
    """Way of holding: a shouldered stub turned in the chuck to the bore."""

    id = "turned-stub"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One stub, the face with the wider hub towards the shoulder."""
        part = Part(job, tables)
        reason = _cannot(part)
        return (Held(self.id, cannot=reason),) if reason else (_held(part),)


def _cannot(part: Part) -> str:
    if part.oval:
        return "The bore is worn oval: a round stub finds no middle in it."
    if part.bore > part.tables.holding_fact("stub_largest").best:
        return "The bore is too large for a stub from bar: a plate with a spigot does the same."
    if thread_within(part, THREAD_SHARE * part.bore) is None:
        return "The bore is too small for a stub with a screw in its end."
    return ""


def _held(part: Part) -> Held:
    leading = max("BA", key=lambda face: part.ring_at(face).outside)
    thread = thread_within(part, THREAD_SHARE * part.bore) or 0.0
    shoulder = _shoulder(part, leading)
    clamp = clamped(part, thread, part.bore, shoulder)
    show = part.show
    overhang = SHOULDER[part.job.units] + part.length
    size = show.bore(part.bore)
    return Held(
        way=TurnedStub.id,
        tool=f"stub turned to {show.bore(part.bore)}",
        do_it=f"turn a stub in the chuck to this bore ({size}), clamp the work on it by a washer and "
        f"a {show.length(thread)} screw, and leave it there until the batch is done",
        leading=leading,
        grip=_grip(part, clamp, overhang),
        needs=_needs(part, thread),
        seat=_seat(part, shoulder),
        fit=_fit(part),
        effort=_effort(part, clamp),
        room=(part.outside, 0.0),
        more_grip="a larger screw and shoulder, or a pin through both",
        truer="Facing shoulder and turning stub in one setting; clean faces; never taking it out.",
        spares="A wider washer and shoulder, a lighter hand on the wrench.",
        marks="A ring where the washer bears; keep the faces clean.",
        mount=_mount(part, clamp, shoulder),
        release=_release(),
        ready=("micrometer, indicator, tap and drill, washer and screw, oil, rag",),
        caution_tags=("chuck", "overhang"),
        picture=_picture(part, leading, shoulder, thread),
        bore_window=None,
        figures=clamp.figures,
        sources=clamp.sources,
        notes=("The friction of the washer's face is left out of what the clamp holds.",),
    )


def _shoulder(part: Part, leading: str) -> Metre:
    """Outside of the shoulder (m): a fifth of the bore wider each side, no wider than the hub."""
    return min(part.bore * 1.4, part.ring_at(leading).outside)


def _grip(part: Part, clamp: Clamped, overhang: Metre) -> Grip:
    return Grip(
        torque=clamp.torque,
        thrust_in=endless(),
        thrust_out=clamp.force,
        tilt=clamp.tilt,
        runout=_runout(part),
        strength=clamp.strength,
        springs=none_at_all(),
        stiffness=_stiffness(part, overhang),
        half_warm=endless(),
        joint=Joint.CLAMP,
        brittle=part.brittle,
    )


def _runout(part: Part) -> Draws:
    """Root-sum-square of what a stub turned in place shows and of its clearance (m)."""
    turned = part.fact("stub_runout", Stream.CENTERING)
    return np.asarray(np.hypot(turned, _clearance(part)))


def _clearance(part: Part) -> Draws:
    return part.fact_with_zero("stub_clearance", Stream.SETTING)


def _stiffness(part: Part, overhang: Metre) -> float:
    """At the far face, of the bare stub in its chuck; the work's own stiffness is left out."""
    steel = (part.tables.material_range("steel-1018", q).best for q in ("modulus", "poisson"))
    bend, slide = round_step(part.bore, *steel)
    bar = Bar(np.array([0.0, overhang]), np.array([bend]), np.array([slide]))
    root = Root(
        part.tables.holding_fact("stub_root_turn").best,
        part.tables.holding_fact("stub_root_give").best,
    )
    return float(stub_stiffness(bar, overhang, root))


def _needs(part: Part, thread: Metre) -> tuple[Need, ...]:
    job, tables = part.job, part.tables
    minutes = tables.holding_fact("stub_making").best
    return (
        needed(job, tables, "three-jaw-chuck"),
        needed(job, tables, "bar-stock"),
        needed(job, tables, "drill-and-tap"),
        made(f"the stub and its washer, with a {part.show.length(thread)} screw", minutes),
    )


def _seat(part: Part, shoulder: Metre) -> Check:
    most = part.tables.holding_fact("chuck_overhang_share")
    overhang = SHOULDER[part.job.units] + part.length
    margin = most.best * part.bore / overhang
    show = part.show
    return Check(
        margin,
        margin,
        f"The shoulder, {show.length(shoulder)} across, stops it lengthwise and squares it. It stands out "
        f"{show.length(overhang)}, {overhang / part.bore:.1f} of its diameter; {most.best:g} is the usual most without a "
        "center.",
        "Nothing needs to."
        if margin >= 1
        else "A center hole in the screw's head and the tailstock brought up, lighter cuts.",
        (most.source,),
    )


def _fit(part: Part) -> Check:
    return Check(
        2.0,
        2.0,
        f"The stub is turned to the bore as it is, {part.show.bore(part.bore)}: whatever the reading says, the work "
        "itself is the gauge.",
        "Trying the work on: it should just slide on with no shake.",
    )


def _effort(part: Part, clamp: Clamped) -> Check:
    show = part.show
    return Check(
        2.0,
        1.4,
        f"An ordinary wrench does it: about {show.torque(clamp.wrench)} on the screw clamps with about "
        f"{show.force(likely(clamp.force))}, {show.force(low_end(clamp.force))} in the poor case (1 in 20).",
        "A cleaner, oiled thread clamps harder at the same torque.",
        clamp.sources,
    )


def _mount(part: Part, clamp: Clamped, shoulder: Metre) -> tuple[Step, ...]:
    show = part.show
    clearance = _clearance(part)
    fit = drawn_figure(
        "stub_clearance",
        clearance,
        "m",
        "small",
        "",
        (Input("bore", part.bore, "m", "bore"),),
        "practice",
    )
    return (
        line(
            "Rough the stub",
            f"Bar in the chuck, out by {show.length(part.length + SHOULDER[part.job.units])} and a little. Face it, turn the "
            f"shoulder to {show.length(shoulder)}, rough the stub to within {show.small(0.25e-3)} of the bore, shorter than "
            "the work so that the washer bears on the work.",
        ),
        line(
            "Tap the end",
            f"Center, drill and tap {show.length(clamp.thread)}, deeper than the screw reaches.",
        ),
        line(
            "Turn it to the bore",
            f"The last cuts by the top slide set over a little, as a fine feed, the free end the smaller; oil, and try the work "
            f"every time: done when it just slides on with no shake, about {show.bore(part.bore)}.",
            (fit,),
            ("stub",),
        ),
        line(
            "Undercut and face the shoulder",
            "In the same setting, so that it runs true; a light undercut in the corner so that the work seats.",
        ),
        line(
            "Clamp the work",
            f"Wipe every face. Work on, washer, screw, about {show.torque(clamp.wrench)}. Pencil line across work and "
            "shoulder: if it breaks, it slipped: stop.",
            clamp.figures,
            ("rim runs out",),
        ),
    )


def _release() -> tuple[Step, ...]:
    return (
        line(
            "Next piece",
            "Screw out, work off, next on: the stub stays in the chuck, unmoved, until the batch is done. Once it has been out "
            "it no longer runs true.",
        ),
    )


def _picture(part: Part, leading: str, shoulder: Metre, thread: Metre) -> HeldPicture:
    start = SHOULDER[part.job.units]
    end, grip = start + part.length, IN_THE_JAWS * part.bore
    washer = min(part.bore * 1.5, part.ring_at("A" if leading == "B" else "B").outside)
    rings = (
        HeldRing(Role.SPINDLE, -grip - 0.6 * grip, -grip, 2.2 * part.bore),
        HeldRing(Role.JAW, -grip, 0.0, 1.6 * part.bore, shoulder / 2),
        HeldRing(Role.MANDREL, -grip, start, shoulder / 2),
        HeldRing(Role.MANDREL, start, end - 0.05 * part.length, part.bore / 2),
        *part.rings(leading, start),
        HeldRing(Role.WASHER, end, end + 0.25 * thread, washer / 2, thread / 2),
        HeldRing(Role.SCREW, end + 0.25 * thread, end + 1.1 * thread, 0.8 * thread),
    )
    return HeldPicture(
        rings,
        (HeldMark(Role.JAW, 1.2 * part.bore, 0.8 * part.bore, 3),),
        (
            HeldNote(Role.MANDREL, "stub, stays in the chuck"),
            HeldNote(Role.WASHER, "washer and screw"),
        ),
        turned=(start, end),
    )
