"""One work, or several, between the shoulder and the nut of a mandrel turned between centers.

The shoulder is one piece with the mandrel that the dog drives: its face holds by friction. The
nut's face is not counted: it can turn on its thread. A right-hand nut at the tailstock end is
dragged the way that tightens it, so it does not let go. Work sits anywhere within the clearance
and, where faces are not parallel, bends the mandrel; both throw the rim off the bore.
Sources: `clamped`, `mechanics.tilted_nut`. Weakness: how parallel faces are is a habit, not a
reading.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.held import Check, Grip, Joint
from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Draws, Figure, Input, Need
from borewright.answer.streams import Stream
from borewright.holding.between import Span, bending_of, head_length, stiffness_between
from borewright.holding.close_fit import fit_tilt
from borewright.holding.faces.clamped import Clamped, clamped, how_hard, thread_within
from borewright.holding.figured import Throws, drawn_figure, thrown
from borewright.holding.owned import bar_at_least, made, needed
from borewright.holding.part import FACE_MEETS, Part, endless
from borewright.mechanics.spread import likely, low_end
from borewright.mechanics.tilted_nut import bow, gang_wedge, kink
from borewright.quantities.si import Metre

THREAD_SHARE = 0.95
"""Largest thread as a share of the bore (ours): the work must slide over it."""

WASHER, NUT, TAIL = 0.25, 0.9, 0.6
"""Along the axis, in threads: washer, nut, and the end with its center (ours)."""

NARROWEST = 0.04
"""Width of the ring that squares the work, in bores, that is just enough (ours)."""


@dataclass(frozen=True, slots=True, eq=False)
class Nutted:
    """`number` works on one mandrel: sizes (m), what the clamp holds, where the work stands."""

    leading: str
    number: int
    inside: Metre
    shoulder: Metre
    thread: Metre
    clamp: Clamped
    span: Span
    clearance: Draws
    bent: Draws
    """Bow of the mandrel (m), as draws."""
    cheek: tuple[Metre, Metre] = (0.0, 0.0)
    """Outside and thickness (m) of two loose thick washers that back thin works; 0: none."""

    @property
    def seat(self) -> Metre:
        """Length (m) that works and cheeks take up on the mandrel."""
        return self.span.end - self.span.start + 2 * self.cheek[1]


def cannot_nut(part: Part) -> str:
    """Why no nut mandrel serves; empty where one does."""
    if part.work.bore.made_by == "sand-casting":
        return "The bore is as cast: bore it first, nothing finds its middle yet."
    if part.oval:
        return "The bore is worn oval: a round mandrel finds no middle in it."
    if part.bore > part.tables.holding_fact("nut_largest").best:
        return (
            "The bore is too large for a mandrel turned from bar: a plate with a spigot is lighter."
        )
    if thread_within(part, THREAD_SHARE * part.bore) is None:
        return "The bore is too small for a mandrel with a thread on its end."
    if any(shoulder_at(part, f, 1.4) < _mouth(part, f) * (1 + NARROWEST) for f in "AB"):
        return "The wall leaves no face for a shoulder and a nut to press on."
    return ""


def nutted(part: Part, number: int, wide: float, cheek: tuple[Metre, Metre] = (0.0, 0.0)) -> Nutted:
    """So many works between a shoulder at most `wide` bores across and the nut, cheeks or none."""
    leading = max("BA", key=lambda face: part.ring_at(face).outside)
    inside = max(_mouth(part, face) for face in "AB")
    shoulder = min(shoulder_at(part, face, wide) for face in "AB")
    thread = thread_within(part, THREAD_SHARE * part.bore) or 0.0
    clamp = clamped(part, thread, inside, shoulder)
    span = _span(part, number, shoulder, thread, cheek[1])
    return Nutted(
        leading,
        number,
        inside,
        shoulder,
        thread,
        clamp,
        span,
        _clearance(part),
        _bent(part, joints(number, cheek[1]), clamp, span),
        cheek,
    )


def joints(number: int, cheek: Metre) -> int:
    """Joints between shoulder and nut; each has its own wedge."""
    return number + (3 if cheek else 1)


def shoulder_at(part: Part, face: str, wide: float) -> Metre:
    """Outside of what presses on a face (m): so many bores, never in the tool's way."""
    return min(part.bore * wide, part.clear_of_tool(face))


def _mouth(part: Part, face: str) -> Metre:
    """Where the metal of a face begins (m, diameter): outside of the bore's chamfer."""
    chamfers = part.work.chamfers
    return part.bore + 2 * (chamfers.a if face == "A" else chamfers.b)


def _span(part: Part, number: int, shoulder: Metre, thread: Metre, cheek: Metre) -> Span:
    head, work = head_length(part, shoulder), number * part.length
    end = (WASHER + NUT + TAIL) * thread
    steps = ((head, shoulder), (work + 2 * cheek, part.bore), (end, thread))
    return Span(steps, head + cheek, head + cheek + work)


def _clearance(part: Part) -> Draws:
    """Bore over mandrel (m, diametral); several alike differ besides by how well they are known."""
    alike = part.bore_band if part.work.quantity > 1 else 0.0
    return np.asarray(part.fact_with_zero("nut_clearance", Stream.SETTING) + alike)


def _bent(part: Part, faces: int, clamp: Clamped, span: Span) -> Draws:
    wedge = gang_wedge(part.fact("face_wedge", Stream.ROUGHNESS), faces)
    off_axis = part.fact("nut_off_axis", Stream.CLAMPING) * clamp.thread / 2
    length = span.end - span.start
    angle = kink(wedge, clamp.force, off_axis, length, bending_of(part, part.bore))
    return np.asarray(bow(angle, span.length, span.start, span.end))


def grip_of(part: Part, n: Nutted, torque: Draws) -> Grip:
    """What the clamp holds of one work; `torque` (N·m) through the faces that count."""
    return Grip(
        torque=torque,
        thrust_in=endless(),
        thrust_out=n.clamp.force,
        tilt=np.maximum(n.clamp.tilt, fit_tilt(part)),
        runout=thrown(throws_of(part, n)),
        strength=n.clamp.strength,
        springs=n.clamp.swell,
        stiffness=stiffness_between(part, n.span),
        half_warm=endless(),
        joint=Joint.CLAMP,
        brittle=part.brittle,
        throws=throws_of(part, n),
    )


def throws_of(part: Part, n: Nutted) -> Throws:
    """Whole readings (m): the mandrel itself, all of the clearance to one side, twice the bow."""
    itself = part.fact("between_centers_runout", Stream.CENTERING)
    bow = np.asarray(2 * n.bent)
    return (("mandrel", itself), ("clearance", n.clearance), ("bent by its nut", bow))


def needs_of(part: Part, n: Nutted, what: str) -> tuple[Need, ...]:
    """Bar, thread, dog and center; the mandrel is made: one of unknown size is not taken to fit."""
    job, tables = part.job, part.tables
    minutes = tables.holding_fact("nut_mandrel_making").best
    thread = part.show.length(n.thread)
    return (
        bar_at_least(job, tables, n.shoulder, "mild steel or brass bar"),
        needed(job, tables, "screwcutting"),
        needed(job, tables, "dog"),
        needed(job, tables, "tail-center"),
        needed(job, tables, "indicator"),
        made(f"{what}, with its {thread} nut and washer faced true", minutes),
    )


def seat_of(part: Part, n: Nutted) -> Check:
    """How wide a ring stops and squares the work."""
    width = (n.shoulder - n.inside) / 2
    margin = width / (NARROWEST * part.bore)
    show = part.show
    return Check(
        margin,
        margin,
        f"The shoulder, {show.length(n.shoulder)} across, stops it lengthwise and squares it on a "
        f"ring {show.length(width)} wide.",
    )


def effort_of(part: Part, n: Nutted) -> Check:
    """An ordinary wrench."""
    show, clamp = part.show, n.clamp
    usual, poor = show.force(likely(clamp.force)), show.force(low_end(clamp.force))
    return Check(
        2.0,
        1.4,
        f"{how_hard(part, clamp)}: about {show.torque(clamp.wrench)} on the nut clamps with "
        f"about {usual}, {poor} in the poor case (1 in 20).",
        "A cleaner, oiled thread clamps harder at the same torque.",
        clamp.sources,
    )


def figures_of(part: Part, n: Nutted) -> tuple[Figure, ...]:
    """Clamp, clearance and bow."""
    clearance, bent = n.clearance, n.bent
    bore = (Input("bore", part.bore, "m", "bore"),)
    return (
        *n.clamp.figures,
        drawn_figure("clearance", clearance, "m", "small", "", bore, "practice"),
        drawn_figure(
            "mandrel_bow", bent, "m", "small", "mandrel_bow", _bow_inputs(part, n), "ours"
        ),
    )


def _bow_inputs(part: Part, n: Nutted) -> tuple[Input, ...]:
    faces = joints(n.number, n.cheek[1])
    wedge = gang_wedge(part.tables.holding_fact("face_wedge").best, faces)
    off = part.tables.holding_fact("nut_off_axis").best * n.thread / 2
    return (
        Input("wedge", float(wedge), "rad", "angle"),
        Input("clamp force", likely(n.clamp.force), "N"),
        Input("off the axis", off, "m", "small"),
        Input("E", part.tables.material_range("steel-1018", "modulus").best, "Pa"),
        Input("mandrel", part.bore, "m", "bore"),
        Input("a", n.span.start, "m"),
        Input("b", n.span.end, "m"),
        Input("between centers", n.span.length, "m"),
    )


def picture_of(part: Part, n: Nutted, said: str) -> HeldPicture:
    """Mandrel, works, washer, nut and both centers."""
    s, t = n.span, n.thread
    far, (across, thick) = "A" if n.leading == "B" else "B", n.cheek
    shoulder = s.start - thick + part.lies_back(n.leading)
    washer = s.end + thick - part.lies_back(far)
    nut = s.end + thick + WASHER * t
    rings = [
        HeldRing(
            Role.CENTER, -0.5 * n.shoulder, 0.0, 0.3 * n.shoulder, outer_end=0.02 * n.shoulder
        ),
        HeldRing(Role.DOG, 0.15 * s.start, 0.55 * s.start, 0.9 * n.shoulder, n.shoulder / 2),
        HeldRing(Role.MANDREL, 0.0, shoulder, n.shoulder / 2),
        HeldRing(Role.MANDREL, shoulder, s.end + thick, part.bore / 2),
        HeldRing(Role.MANDREL, s.end + thick, s.length, t / 2),
        HeldRing(Role.WASHER, washer, nut, n.shoulder / 2, t / 2),
        HeldRing(Role.NUT, nut, nut + NUT * t, 0.85 * t, t / 2),
        HeldRing(Role.CENTER, s.length, s.length + 0.5 * t, 0.5e-3, outer_end=0.3 * t),
    ]
    if thick:
        for at in (s.start - thick, s.end):
            rings.append(HeldRing(Role.PLATE, at, at + thick, across / 2, part.bore / 2))
    for k in range(n.number):
        rings += part.rings(n.leading, s.start + k * part.length)
    return HeldPicture(
        tuple(rings),
        (HeldMark(Role.NUT, 0.0, 1.7 * t), HeldMark(Role.DOG, 0.8 * n.shoulder, 0.3 * n.shoulder)),
        (
            HeldNote(Role.MANDREL, said),
            HeldNote(Role.NUT, "nut and washer"),
            HeldNote(Role.DOG, "dog"),
            *((HeldNote(Role.PLATE, "cheek"),) if thick else ()),
        ),
        tailstock=True,
        turned=(s.start, s.end),
    )


def flat_disc(part: Part) -> bool:
    """Both faces flat from the bore to the outside."""
    whole = [p for p in part.work.pieces if p.outside >= part.outside * (1 - 1e-9)]
    runs = max(p.end for p in whole) - min(p.start for p in whole) >= part.length - FACE_MEETS
    return runs and len(part.work.pieces) == 1
