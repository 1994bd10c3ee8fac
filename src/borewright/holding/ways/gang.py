"""Several flat blanks between the shoulder and nut of one mandrel: they are turned as one.

Each blank hands the torque on to the next by its faces, down to the shoulder: the weakest of those
faces is what a cut on any one of them has. The nut's end is free to turn and holds nothing. Every
joint adds its own wedge, so a long gang bends its mandrel more than a short one: gangs of several
lengths are offered, and truth and time choose.
"""

from __future__ import annotations

import math
from functools import partial

import numpy as np

from borewright.answer.held import OUTSIDE, Check, Held, line
from borewright.answer.records import Draws, Need, Step
from borewright.answer.streams import Stream
from borewright.holding.faces.nutted import (
    Nutted,
    cannot_nut,
    effort_of,
    figures_of,
    flat_disc,
    grip_of,
    needs_of,
    nutted,
    picture_of,
    seat_of,
)
from borewright.holding.owned import bar_at_least, made
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.mechanics.face_friction import gang_torque, wear_torque
from borewright.mechanics.spread import likely
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

SHOULDER = 1.6
"""Widest shoulder and washer, in bores (ours), as for one work."""

SHARES = (1.0, 0.5, 0.25)
"""Lengths of gang that are offered, as shares of the longest (ours)."""


class Gang:
    """Way of holding: several blanks between shoulder and nut."""

    id = "gang"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """Gangs of several lengths, the longest first."""
        part = Part(job, tables)
        reason = _cannot(part)
        if reason:
            return (Held(self.id, cannot=reason),)
        most = longest(part)
        numbers = sorted({_of_loads(part, max(2, int(most * s))) for s in SHARES}, reverse=True)
        return tuple(map(partial(_held, part), numbers))


def _cannot(part: Part) -> str:
    if part.work.quantity < 2:
        return "There is only one: a gang takes several alike."
    if not flat_disc(part):
        return "Only flat blanks stack: these do not meet face to face from bore to rim."
    if part.length > _longest_blank(part):
        return "Each is so long that it sits square on a mandrel by itself, and two bend it."
    if part.work.blank == "casting":
        return "Castings go singly: a gang needs faces turned flat and parallel, and bores alike."
    if longest(part) < 2:
        return "Two of them find no room on a mandrel of this bore between these centers."
    return cannot_nut(part)


def _longest_blank(part: Part) -> Metre:
    """Longest blank (m) that is worth ganging."""
    fact = part.tables.holding_fact
    return max(
        fact("gang_each_bores").best * part.bore, fact("gang_each_share").best * part.outside
    )


def cheeks(part: Part) -> tuple[Metre, Metre]:
    """Outside and thickness (m) of the cheeks that thin wide discs want; nothing for others."""
    fact = part.tables.holding_fact
    across = min(part.clear_of_tool(face) for face in "AB")
    stands_out = (across - SHOULDER * part.bore) / 2
    thin = part.length < fact("cheek_thin").best * stands_out
    if not thin or part.outside < fact("cheek_bores").best * part.bore:
        return 0.0, 0.0
    return across, fact("cheek_thick").best * across


def longest(part: Part) -> int:
    """How many fit on a mandrel of this bore and between the centers, at most the batch."""
    room = part.tables.holding_fact("gang_longest").best * part.bore
    bed = part.job.shelf.machine.between_centers
    if bed is not None:
        ends = nutted(part, 1, SHOULDER, cheeks(part)).span.length - part.length
        room = min(room, bed - ends)
    return min(part.work.quantity, int(room / part.length + 1e-9))


def _of_loads(part: Part, most: int) -> int:
    """Loads as even as they come: the number in each that needs no more loads than the most."""
    quantity = part.work.quantity
    return math.ceil(quantity / math.ceil(quantity / min(most, quantity)))


def _held(part: Part, number: int) -> Held:
    n = nutted(part, number, SHOULDER, cheeks(part))
    show, loads = part.show, math.ceil(part.work.quantity / number)
    size, thread = show.bore(part.bore), show.length(n.thread)
    each = part.tables.holding_fact("gang_load").best
    between = ", two stout cheeks outside of them" if n.cheek[1] else ""
    together = f"{number} at a time" if loads > 1 else f"all {number} at once"
    return Held(
        way=Gang.id,
        tool=f"gang of {number} on a nut mandrel turned to {size}",
        do_it=f"turn a mandrel with a shoulder between centers to this bore, {size}, and clamp the blanks on it by a washer "
        f"and a {thread} nut, {together}{between}",
        leading=n.leading,
        grip=grip_of(part, n, torque_of_one(part, n)),
        needs=_needs(part, n),
        reaches=(OUTSIDE,),
        edges_hidden=number > 1,
        seat=seat_of(part, n),
        fit=_fit(part, n),
        effort=effort_of(part, n),
        room=(part.outside, n.span.length),
        arm=part.length,
        more_grip="a wider shoulder and washer, or a pin through all of them",
        steadier="A lighter cut, a wider shoulder and washer, a firmer nut.",
        truer="Fewer at a time, truer faces, bores sorted by feel, a pair of spherical washers under the nut.",
        spares="A washer as wide as the shoulder, a lighter hand on the wrench.",
        marks="Rings where shoulder and washer bear on the first and last.",
        mount=_mount(part, n),
        release=_release(part, n, loads),
        ready=("micrometer, wrench, oil, rag, pencil",),
        caution_tags=("dog", "mandrel", "nut", "gang"),
        picture=picture_of(part, n, f"shouldered mandrel, {number} blanks"),
        faces_done=True,
        handling=each * loads + _second_faces(part),
        figures=figures_of(part, n),
        sources=n.clamp.sources,
        notes=(
            "Both faces of every blank are taken as turned flat and parallel when they were bored. Where they are not, or where "
            "the bores differ, turn them singly on a plain mandrel.",
            "Only the way to the shoulder is counted: the nut can turn on its thread. At a joint the tool cuts on two at once, "
            "which asks no more than one cut.",
        ),
    )


def _second_faces(part: Part) -> float:
    """Minutes for the batch to face what a mandrel of its own would let be faced on it.

    A disc shorter than its bore does not sit square enough for that anyhow and is faced before.
    """
    if part.length <= part.bore:
        return 0.0
    return part.tables.holding_fact("second_face").best * part.work.quantity


def _needs(part: Part, n: Nutted) -> tuple[Need, ...]:
    found = needs_of(part, n, f"the mandrel, long enough for {n.number}")
    if not n.cheek[1]:
        return found
    size = part.show.length(n.cheek[0])
    minutes = part.tables.holding_fact("cheek_making").best
    return (
        *found,
        bar_at_least(part.job, part.tables, n.cheek[0], "bar or plate for the cheeks"),
        made(f"two cheeks {size} across", minutes),
    )


def torque_of_one(part: Part, n: Nutted) -> Draws:
    """Torque (N·m) of a cut on the blank farthest from the shoulder: the weakest face on its way."""
    friction = part.fact("face_friction", Stream.FRICTION)
    between = np.asarray(wear_torque(n.clamp.force, friction, n.inside, part.outside))
    faces = np.stack([n.clamp.torque, *[between] * (n.number - 1)])
    return np.asarray(gang_torque(faces))


def _fit(part: Part, n: Nutted) -> Check:
    show = part.show
    alike = part.bore_band
    allowed = part.tables.holding_fact("gang_alike").best
    margin = allowed / alike if alike else 2.0
    return Check(
        margin,
        margin,
        f"The mandrel is turned to the smallest bore; they are known alike to {show.small(alike)} either way, and about "
        f"{show.small(likely(n.clearance))} of clearance is left.",
        "Sorting them by feel: those that shake go on the taper mandrel, singly.",
        ("ours",),
    )


def _mount(part: Part, n: Nutted) -> tuple[Step, ...]:
    show = part.show
    last = "cheek" if n.cheek[1] else "blank"
    outer = "a cheek first and one last; then washer" if n.cheek[1] else "Washer"
    return (
        line(
            "Faces first",
            "Both faces of every blank turned flat and parallel, burrs off: every joint that is out adds to the bend. Feel each "
            "pair under a straightedge, or measure the thickness in three places.",
            (),
            ("thickness, three places",),
        ),
        line(
            "Turn the mandrel",
            f"Bar with good center holes, between centers, a dog on the end. Shoulder {show.length(n.shoulder)}; thread the "
            f"tailstock end {show.length(n.thread)} for the nut; the seat {show.length(n.seat)} or a little "
            f"less, so that the washer bears on the last {last}.",
        ),
        line(
            "To the bore",
            f"The last cuts by trial with the smallest bore, about {show.bore(part.bore)}: done when it just slides on with no "
            "shake. Shoulder faced in the same setting; face the nut on its own thread.",
            (figures_of(part, n)[-2],),
            ("seat of the mandrel",),
        ),
        *_cheek_step(part, n),
        line(
            f"Stack {n.number}",
            f"Wipe every face, a mark on each that tells which way it lay when it was bored, turned half round from one to the "
            f"next{', ' if n.cheek[1] else '. '}{outer}, nut, about {show.torque(n.clamp.wrench)}. Clock the mandrel's "
            "bare end before and after: what it moves is the bend. Pencil line along all of them and the shoulder: if it breaks, one slipped: stop.",
            (*n.clamp.figures, figures_of(part, n)[-1]),
            ("bend",),
        ),
    )


def _cheek_step(part: Part, n: Nutted) -> tuple[Step, ...]:
    across, thick = n.cheek
    if not thick:
        return ()
    show, out = part.show, (across - n.shoulder) / 2
    return (
        line(
            "Two cheeks",
            f"Loose washers {show.length(across)} across, just under the finished size, and {show.length(thick)} thick, bored to "
            f"slide on the mandrel, faced both sides, a hair hollow in the middle so that they press near the rim. Without them "
            f"{show.length(out)} of each thin disc stands out past the shoulder, rings under the tool and dishes under the nut.",
        ),
    )


def _release(part: Part, n: Nutted, loads: int) -> tuple[Step, ...]:
    off = line(
        "Off they come",
        "Mandrel out of the centers, shoulder in the vise between soft jaws, nut off, blanks off one by one. Break the burrs at "
        "every joint.",
    )
    if loads == 1:
        return (off,)
    last = part.work.quantity - (loads - 1) * n.number
    short = (
        f" The last load is {last} only: a plain collar makes up the missing length, so that the nut still draws up."
        if last < n.number
        else ""
    )
    return (
        off,
        line(
            "Next load",
            f"{loads} loads in all; the mandrel stays as it is. Wipe it and every face, the next ones on as the first were, nut to the "
            f"same pull, a new pencil line, clock the bare end, and cut as before.{short}",
            (),
            ("bend, next load",),
        ),
    )
