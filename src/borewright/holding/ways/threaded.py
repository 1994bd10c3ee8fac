"""A threaded mandrel between centers: work with a thread in its bore screws up to a shoulder.

A right-hand thread is tightened by the usual cut, so it cannot slip; it comes off by a strap wrench
and by nothing gentler after a heavy cut. A left-hand one has only what a hand screwed it up with.
It runs as true as its thread was cut to its bore.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.held import HEAD_FACE, OUTSIDE, TAIL_FACE, Check, Grip, Held, Joint, line
from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Draws, Figure, Input, Need, Step
from borewright.answer.streams import Stream
from borewright.holding.between import Span, head_length, stiffness_between
from borewright.holding.close_fit import fit_tilt
from borewright.holding.faces.clamped import face_strength
from borewright.holding.figured import drawn_figure
from borewright.holding.owned import bar_at_least, made, needed
from borewright.holding.part import Part, endless, none_at_all
from borewright.job.records import BoreThread, Job
from borewright.mechanics.screw_torque import Screw, force_from, torque_off, torque_on
from borewright.mechanics.spread import likely
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

SHOULDER = 1.4
"""Widest shoulder, in threads (ours)."""

NARROWEST = 0.04
"""Width of the ring that squares the work, in threads, that is just enough (ours)."""

TURNS = 5.0
"""Turns of thread that are just enough to hold it square (ours)."""

CORE = 1.08
"""Depth of a 60 degree thread on diameter, in pitches."""

SHEARS = 0.5
"""Share of a thread's cylinder that stands against stripping, with even load (ours)."""

SHEAR_STRENGTH = 0.58
"""Shear over tension at yield: von Mises."""


@dataclass(frozen=True, slots=True, eq=False)
class _Screwed:
    """Thread, shoulder (m, diameter), what a hand screws it up with and what it stands, as draws."""

    thread: BoreThread
    leading: str
    shoulder: Metre
    screw: Screw
    friction: Draws
    hand: Draws
    pressed: Draws
    most: Draws
    span: Span

    @property
    def torque(self) -> Draws:
        """Right-hand: until face or thread give; left-hand: until it turns off (N·m)."""
        if self.thread.left:
            return np.maximum(torque_off(self.pressed, self.friction, self.screw), 1e-6)
        return np.asarray(torque_on(self.most, self.friction, self.screw))


class Threaded:
    """Way of holding: a threaded mandrel with a shoulder, between centers."""

    id = "threaded"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One mandrel cut to the bore's thread."""
        part = Part(job, tables)
        thread = job.work.bore.thread
        if thread is None:
            return (Held(self.id, cannot="The bore has no thread."),)
        s = _screwed(part, thread)
        if s.shoulder < thread.size * (1 + NARROWEST):
            reason = "The wall leaves no face for a shoulder to press on."
            return (Held(self.id, cannot=reason),)
        return (_held(part, s),)


def _screwed(part: Part, thread: BoreThread) -> _Screwed:
    leading = max("BA", key=part.clear_of_tool)
    shoulder = min(SHOULDER * thread.size, part.clear_of_tool(leading))
    core = thread.size - CORE * thread.pitch
    screw = Screw(thread.pitch, (thread.size + core) / 4, (thread.size + shoulder) / 4)
    friction = part.fact("face_friction", Stream.FRICTION)
    hand = part.fact("strap_hand", Stream.TOOL)
    stripped = SHEARS * np.pi * thread.size * part.length * SHEAR_STRENGTH * part.strength
    face = face_strength(part) * np.pi * max(shoulder**2 - thread.size**2, 1e-9) / 4
    head = head_length(part, shoulder)
    work = head + part.length
    steps = ((head, shoulder), (part.length, core), (thread.size, core))
    return _Screwed(
        thread,
        leading,
        shoulder,
        screw,
        friction,
        hand,
        np.asarray(force_from(hand, friction, screw)),
        np.minimum(stripped, face),
        Span(steps, head, work),
    )


def _held(part: Part, s: _Screwed) -> Held:
    thread, proud = s.thread, part.sticks_out(s.leading) > 0
    return Held(
        way=Threaded.id,
        tool=f"threaded mandrel, {thread.text}",
        do_it=f"cut a mandrel between centers to the thread of the bore ({thread.text}) with a shoulder, and screw the work up "
        "to it",
        leading=s.leading,
        grip=_grip(part, s),
        needs=_needs(part, s),
        reaches=(OUTSIDE, TAIL_FACE, HEAD_FACE) if proud else (OUTSIDE, TAIL_FACE),
        seat=_seat(part, s),
        fit=_fit(s),
        effort=_effort(part, s),
        room=(part.outside, s.span.length),
        more_grip="a cut that tightens it: run backwards with the tool behind, or a nut against it"
        if thread.left
        else "a wider shoulder",
        steadier="A lighter cut, screwed up harder.",
        truer="A register turned on the mandrel for the mouth of the bore; a face cut true with the thread.",
        spares="A paper washer at the shoulder; lighter cuts.",
        marks="A ring where the shoulder bears; the strap, not a pipe wrench, takes it off.",
        mount=_mount(part, s),
        release=_release(part, s),
        ready=("threading tool, thread gauge or a mating part, strap wrench, oil, rag, pencil",),
        caution_tags=("dog", "mandrel", "threaded"),
        picture=_picture(part, s),
        figures=_figures(s),
        sources=("ours-derived",),
        notes=_notes(part, s),
    )


def _grip(part: Part, s: _Screwed) -> Grip:
    r, c = s.shoulder / 2, s.thread.size / 2
    return Grip(
        torque=s.torque,
        thrust_in=endless(),
        thrust_out=s.most,
        tilt=np.maximum(s.pressed * (r**2 + c**2) / (4 * r), fit_tilt(part)),
        runout=part.fact("thread_runout", Stream.CENTERING),
        strength=np.asarray(s.most / s.pressed),
        springs=none_at_all(),
        stiffness=stiffness_between(part, s.span),
        half_warm=endless(),
        joint=Joint.APART,
        brittle=part.brittle,
    )


def _needs(part: Part, s: _Screwed) -> tuple[Need, ...]:
    job, tables = part.job, part.tables
    minutes = tables.holding_fact("threaded_making").best
    return (
        bar_at_least(job, tables, s.shoulder, "mild steel or brass bar"),
        needed(job, tables, "screwcutting"),
        needed(job, tables, "dog"),
        needed(job, tables, "tail-center"),
        needed(job, tables, "indicator"),
        made(f"the mandrel, threaded {s.thread.text}", minutes),
    )


def _seat(part: Part, s: _Screwed) -> Check:
    width = (s.shoulder - s.thread.size) / 2
    margin = min(width / (NARROWEST * s.thread.size), part.length / s.thread.pitch / TURNS, 3.0)
    show = part.show
    return Check(
        margin,
        margin,
        f"{part.length / s.thread.pitch:.0f} turns of thread pull it up to the shoulder, {show.length(s.shoulder)} across, which "
        f"squares it on a ring {show.length(width)} wide.",
    )


def _fit(s: _Screwed) -> Check:
    return Check(
        2.0,
        1.5,
        f"The mandrel is cut to {s.thread.text}, the work itself the gauge: on by hand, no shake.",
        "Trying the work on at every spring cut.",
    )


def _effort(part: Part, s: _Screwed) -> Check:
    show = part.show
    return Check(
        2.0,
        1.4,
        f"A hand with a strap screws it up with about {show.torque(likely(s.hand))}: about {show.force(likely(s.pressed))} on "
        "the shoulder.",
        "Oil on thread and face.",
        ("ours",),
    )


def _notes(part: Part, s: _Screwed) -> tuple[str, ...]:
    show = part.show
    off = float(torque_off(1.0, likely(s.friction), s.screw)) / float(
        torque_on(1.0, likely(s.friction), s.screw)
    )
    if s.thread.left:
        return (
            "A left-hand thread is turned off by the usual cut: it has only what a hand screwed it up with, about "
            f"{show.torque(likely(s.torque))} before it lets go.",
        )
    return (
        "The usual cut tightens a right-hand thread: it cannot slip. It comes off with about "
        f"{100 * off:.0f} % of the torque that it was last tightened by, more where a knock did it.",
        "Never brake or reverse the spindle hard: the work would spin off.",
    )


def _mount(part: Part, s: _Screwed) -> tuple[Step, ...]:
    show, thread = part.show, s.thread
    return (
        line(
            "Turn and thread the mandrel",
            f"Bar with good center holes, between centers, a dog on the end. Shoulder {show.length(s.shoulder)}; the rest to "
            f"{show.turned(thread.size)}, threaded {thread.text}, by trial with the work: on by hand, no shake. A groove in the "
            "corner as deep as the thread, and the shoulder faced in the same setting.",
            (),
            ("pitch diameter, or tried on",),
        ),
        line(
            "Face first",
            "The face that meets the shoulder must be true to the thread: where it was not cut with it, screw the work on, clock "
            "it, and skim that face on the mandrel the other way round.",
            (),
            ("face runs out",),
        ),
        line(
            "Screw it up",
            f"Thread and faces wiped and oiled, work up to the shoulder with the strap, about {show.torque(likely(s.hand))}. "
            "Pencil line across work and shoulder: it may creep on as the cut tightens it; if it creeps back, stop.",
            _figures(s),
            ("rim runs out",),
        ),
    )


def _release(part: Part, s: _Screwed) -> tuple[Step, ...]:
    return (
        line(
            "Screw it off",
            "Shoulder in the vise between soft jaws, strap wrench on the finished outside over paper, a sharp pull; where it "
            "will not, warm the work, not the mandrel.",
        ),
    )


def _figures(s: _Screwed) -> tuple[Figure, ...]:
    force = s.pressed if s.thread.left else s.most
    inputs = (
        Input("force on the shoulder", likely(force), "N"),
        Input("friction", likely(s.friction), ""),
        Input("pitch", s.screw.pitch, "m"),
        Input("radius of the thread", s.screw.radius, "m"),
        Input("radius of the face", s.screw.face, "m"),
    )
    name = "unscrewing_torque" if s.thread.left else "screwed_torque"
    return (drawn_figure(name, s.torque, "N·m", "torque", name, inputs, "ours-derived"),)


def _picture(part: Part, s: _Screwed) -> HeldPicture:
    span, size = s.span, s.thread.size
    core = size - CORE * s.thread.pitch
    rings = (
        HeldRing(Role.CENTER, -s.shoulder / 2, 0.0, 0.3 * s.shoulder, outer_end=0.5e-3),
        HeldRing(Role.DOG, 0.15 * span.start, 0.55 * span.start, 0.9 * s.shoulder, s.shoulder / 2),
        HeldRing(Role.MANDREL, 0.0, span.start, s.shoulder / 2),
        HeldRing(Role.SCREW, span.start, span.end, part.bore / 2),
        HeldRing(Role.MANDREL, span.end, span.length, core / 2),
        *part.rings(s.leading, span.start),
        HeldRing(Role.CENTER, span.length, span.length + size / 2, 0.5e-3, outer_end=0.3 * size),
    )
    return HeldPicture(
        rings,
        (HeldMark(Role.DOG, 0.8 * s.shoulder, 0.3 * s.shoulder),),
        (HeldNote(Role.SCREW, f"thread {s.thread.text}"), HeldNote(Role.DOG, "dog")),
        tailstock=True,
        turned=(span.start, span.end),
    )
