"""Work between two cones that sit in the mouths of its bore.

The mouths find the middle, whatever the size of the bore; only the headstock's cone drives, by
friction, so the cuts are light. Where there are spokes a stud on the faceplate drives one of them,
and the cones need only carry.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.held import (
    HEAD_FACE,
    OUTSIDE,
    TAIL_FACE,
    Check,
    Grip,
    Held,
    Joint,
    line,
)
from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Draws, Figure, Input, Need, Step
from borewright.answer.streams import Stream
from borewright.holding.figured import drawn_figure
from borewright.holding.fits.cone_reach import (
    HALF_ANGLE,
    ordinary,
    reach_in,
    room_inside,
    small_end,
    to_the_point,
    too_thin,
)
from borewright.holding.owned import bar_at_least, made, needed
from borewright.holding.part import Part, endless, none_at_all
from borewright.job.records import Job
from borewright.job.web import web_of
from borewright.mechanics.beam import Bar, deflection, round_step
from borewright.mechanics.cone_drive import cone_torque, hoop_pull, lifts, stud_force
from borewright.mechanics.spread import likely, low_end
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

WIDER = 1.15
"""Large end of a cone over its mouth (ours)."""

STUD = {"inch": 0.5 * 0.0254, "mm": 12e-3}
STUD_CLEAR = {"inch": 0.5 * 0.0254, "mm": 12e-3}
"""A driver stud, and the air between its plate and the work (m; ours)."""

BURRED = ("unknown", "sand-casting", "drilling")
"""Ways of making a bore that leave rough mouths."""


@dataclass(frozen=True, slots=True, eq=False)
class _Cones:
    """Push of the tailstock (N), mouth from and to (m, diameters), what the stud adds (N·m).

    `at`: radius of the stud; `into`: how far a cone reaches in; `pointed`: with its point on.
    """

    push: Draws
    inside: Metre
    outside: Metre
    friction: Draws
    torque: Draws
    stud: Draws | None
    at: Metre
    into: Metre
    pointed: bool


class ConeCenters:
    """Way of holding: between cone centers."""

    id = "cone-centers"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """By friction of the cones; with a driver stud too where there are spokes."""
        part = Part(job, tables)
        if part.oval:
            return (
                Held(self.id, cannot="The mouths are worn with the bore: cones find no middle."),
            )
        if part.bore < part.tables.holding_fact("cone_least_bore").best:
            why = "The mouths of so small a bore do not stand the push of a cone."
            return (Held(self.id, cannot=why),)
        if too_thin(part):
            return (
                Held(
                    self.id,
                    cannot="It is so thin that two cones meet inside of it, even with their points cut off.",
                ),
            )
        plain = _held(part, _cones(part, stud=False))
        if part.work.spokes is None or web_of(part.work) is None:
            return (plain,)
        return (_held(part, _cones(part, stud=True)), plain)


def _cones(part: Part, *, stud: bool) -> _Cones:
    push = part.fact("tail_push", Stream.CLAMPING)
    friction = part.fact("face_friction", Stream.FRICTION)
    legs = part.work.chamfers.legs
    inside, outside = part.bore, part.bore + 2 * min(legs)
    torque = np.asarray(cone_torque(push, friction, HALF_ANGLE, inside, outside))
    reach = (reach_in(part), ordinary(part))
    web = web_of(part.work)
    if not stud or web is None:
        return _Cones(push, inside, outside, friction, torque, None, 0.0, *reach)
    radius, size = (web.inner + web.outer) / 4, STUD[part.job.units]
    steel = part.drawn(part.tables.material_range("steel-1018", "yield"), Stream.TOOL)
    out = STUD_CLEAR[part.job.units] + part.length / 2
    pushed = np.asarray(stud_force(steel, size, out) * radius)
    return _Cones(push, inside, outside, friction, torque, pushed, radius, *reach)


def _held(part: Part, c: _Cones) -> Held:
    by = "a driver stud against a spoke" if c.stud is not None else "the headstock's cone alone"
    return Held(
        way=ConeCenters.id,
        tool=f"cones in the mouths of the bore, driven by {by}",
        do_it=f"hold it between cones in the mouths of its bore, driven by {by}",
        leading=max("BA", key=lambda face: part.ring_at(face).outside),
        grip=_grip(part, c),
        needs=_needs(part, c),
        reaches=(OUTSIDE, TAIL_FACE, HEAD_FACE),
        seat=Check(
            1.5,
            1.2,
            "The cones stop it lengthwise and center it by the two mouths; what the mouths are out, the work is.",
        ),
        fit=_fit(part),
        effort=_effort(part, c),
        room=(part.outside, part.length + 2 * part.bore),
        more_grip="a driver stud on the faceplate against a spoke or in a hole, or a dog where one finds room",
        steadier="A lighter cut, a firmer push of the tailstock, the quill clamped.",
        truer="Chamfering both mouths in the setting in which it was bored; clean cones.",
        spares="A lighter push of the tailstock, chamfered mouths.",
        marks="A bright line round each mouth.",
        mount=_mount(part, c),
        release=_release(),
        ready=("oil for a plain center, rag, pencil",),
        caution_tags=("cones", "mandrel") if c.stud is None else ("cones", "mandrel", "dog"),
        picture=_picture(part, c),
        figures=_figures(part, c),
        sources=("friction-memory",),
        notes=(
            "The tailstock's cone turns with the work and drives nothing: a live one, or oiled.",
        ),
    )


def _grip(part: Part, c: _Cones) -> Grip:
    ring = min((part.ring_at(f) for f in "AB"), key=lambda p: p.outside)
    wall = (ring.outside - part.bore) / 2
    bears = wall * np.sqrt(part.bore / 2 * wall)
    strength = part.strength * bears / hoop_pull(c.push, HALF_ANGLE)
    return Grip(
        torque=c.torque if c.stud is None else c.torque + c.stud,
        thrust_in=c.push,
        thrust_out=c.push,
        tilt=np.asarray(lifts(c.push, HALF_ANGLE) * part.length),
        runout=_runout(part),
        strength=np.asarray(strength),
        springs=none_at_all(),
        stiffness=_stiffness(part),
        half_warm=endless(),
        joint=Joint.CLAMP if c.stud is None else Joint.APART,
        brittle=part.brittle,
    )


def _runout(part: Part) -> Draws:
    """What the mouths are out of the bore (m), by how they were made."""
    return part.fact(_mouths(part), Stream.CENTERING)


def _mouths(part: Part) -> str:
    if min(part.work.chamfers.legs) > 0:
        return "mouth_chamfered"
    return "mouth_rough" if part.work.bore.made_by in BURRED else "mouth_plain"


def _stiffness(part: Part) -> float:
    """The least anywhere along the work: the work as a bar between two centers."""
    modulus = likely(np.atleast_1d(part.elastic.modulus))
    hub = min(p.outside for p in part.work.pieces if p.inside is None)
    bend, slide = round_step(hub, modulus, part.range("poisson").best, part.bore)
    spring = part.tables.allowance("center_stiffness").best
    bar = Bar(np.array([0.0, part.length]), np.array([bend]), np.array([slide]), (spring, spring))
    places = (float(p) for p in np.linspace(0.0, part.length, 5))
    return 1.0 / max(deflection(bar, p, 1.0) for p in places)


def _needs(part: Part, c: _Cones) -> tuple[Need, ...]:
    job, tables = part.job, part.tables
    found = [needed(job, tables, "tail-center"), needed(job, tables, "indicator")]
    if not c.pointed:
        minutes = tables.holding_fact("head_cone_making").best
        found = [
            needed(job, tables, "indicator"),
            needed(job, tables, "three-jaw-chuck"),
            bar_at_least(job, tables, WIDER * c.outside, "bar for the cones"),
            needed(job, tables, "top-slide"),
            needed(job, tables, "pipe-center", part.bore),
            made("a cone for the headstock, turned where it stands", minutes),
        ]
    if c.stud is not None:
        found.append(needed(job, tables, "faceplate"))
    return tuple(found)


def _fit(part: Part) -> Check:
    said = {
        "mouth_chamfered": "Both mouths are chamfered: the cones bear on the chamfers.",
        "mouth_plain": "The cones bear on the edges of the mouths, which must be free of burrs.",
        "mouth_rough": "Nothing says that the mouths are true to the bore: as made they are rough.",
    }[_mouths(part)]
    margin = 1.5 if _mouths(part) != "mouth_rough" else 0.8
    return Check(
        margin,
        margin / 2,
        said,
        "Chamfering both mouths in one setting with the bore.",
        ("practice",),
    )


def _effort(part: Part, c: _Cones) -> Check:
    show = part.show
    return Check(
        2.0,
        1.2,
        f"A hand on the tailstock wheel pushes with about {show.force(likely(c.push))}, {show.force(low_end(c.push))} in the "
        "poor case (1 in 20); more loads the center's bearing.",
        "A firm hand on the wheel, the quill clamped.",
        ("ours",),
    )


def _mount(part: Part, c: _Cones) -> tuple[Step, ...]:
    steps = [
        line(
            "Mouths first",
            "Burrs off both mouths; best a 60 degree chamfer cut in the setting in which it was bored. Wipe cones and mouths.",
        )
    ]
    if not c.pointed:
        steps.append(_cone_step(part, c))
    steps.append(
        line(
            "Between the cones",
            "Work up, tailstock brought up by a firm hand and clamped, quill clamped. Spin it by hand: it must turn with the "
            "headstock without shake. Clock the rim, or the bore where the indicator reaches.",
            _figures(part, c),
            ("runs out",),
        )
    )
    if c.stud is not None:
        steps.append(
            line(
                "Driver stud",
                f"A {part.show.length(STUD[part.job.units])} stud in the faceplate, {part.show.length(c.at)} from the axis, "
                "short, against the side of a spoke that follows it; card between. It must not touch the rim.",
            )
        )
    steps.append(
        line(
            "Ease it",
            "After the first pass the work is warm and longer: let the quill off and bring it up again by the same hand.",
        )
    )
    return tuple(steps)


def _cone_step(part: Part, c: _Cones) -> Step:
    show, into = part.show, part.show.length(c.into)
    meet = (
        " With more, the two would meet inside." if to_the_point(part) > room_inside(part) else ""
    )
    return line(
        "The headstock's cone",
        f"Bar in the chuck: top slide at 30 degrees, turn it to a 60 degree cone where it stands, {show.length(WIDER * c.outside)} "
        f"at its large end, and leave it there. Cut the points off both cones, so that each reaches {into} into its mouth, "
        f"{show.length(small_end(part))} across at the end.{meet}",
    )


def _release() -> tuple[Step, ...]:
    return (line("Off it comes", "A hand under the work before the quill goes back."),)


def _figures(part: Part, c: _Cones) -> tuple[Figure, ...]:
    push = Input("push of the tailstock", likely(c.push), "N")
    cone = (
        Input("friction", likely(c.friction), ""),
        push,
        Input("mouth, inside", c.inside, "m"),
        Input("mouth, outside", c.outside, "m"),
        Input("half angle", HALF_ANGLE, "rad"),
    )
    torque = drawn_figure(
        "cone_torque", c.torque, "N·m", "torque", "cone_torque", cone, "ours-derived"
    )
    if c.stud is None:
        return (torque,)
    stud = (
        Input("yield", part.tables.material_range("steel-1018", "yield").best, "Pa"),
        Input("stud", STUD[part.job.units], "m"),
        Input("out", STUD_CLEAR[part.job.units] + part.length / 2, "m"),
        Input("radius", c.at, "m"),
    )
    return (
        torque,
        drawn_figure("stud_torque", c.stud, "N·m", "torque", "stud_torque", stud, "ours-derived"),
    )


def _picture(part: Part, c: _Cones) -> HeldPicture:
    bore, length = part.bore, part.length
    into, back = c.into, 0.7 * bore
    wide = bore / 2 + back * np.tan(HALF_ANGLE)
    tip = small_end(part) / 2
    rings = (
        HeldRing(Role.SPINDLE, -2.2 * back, -back, 1.4 * bore),
        HeldRing(Role.CENTER, -back, into, wide, outer_end=tip),
        *part.rings(max("BA", key=lambda face: part.ring_at(face).outside), 0.0),
        HeldRing(Role.CENTER, length - into, length + back, tip, outer_end=wide),
    )
    marks: tuple[HeldMark, ...] = (HeldMark(Role.CENTER, 0.0, bore),)
    notes = [HeldNote(Role.CENTER, "cone")]
    if c.stud is not None:
        marks = (*marks, HeldMark(Role.PIN, c.at, STUD[part.job.units]))
        notes.append(HeldNote(Role.PIN, "driver stud"))
    return HeldPicture(rings, marks, tuple(notes), tailstock=True, turned=(0.0, length))
