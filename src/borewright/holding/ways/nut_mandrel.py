"""A mandrel with shoulder and nut, between centers: it clamps the faces and leaves the bore alone.

Nothing presses on the bore, so thin and brittle work stands it; the price is the clearance, which
throws the rim over, and faces out of parallel, which bend the mandrel. It is turned for this bore
in the plan: a nut mandrel of unknown size is not taken to fit.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import HEAD_FACE, OUTSIDE, TAIL_FACE, Check, Held, line
from borewright.answer.records import Step
from borewright.holding.faces.nutted import (
    Nutted,
    cannot_nut,
    effort_of,
    figures_of,
    grip_of,
    needs_of,
    nutted,
    picture_of,
    seat_of,
)
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.job.web import web_of
from borewright.mechanics.plate import dish
from borewright.mechanics.spread import likely
from borewright.reference.library import Tables

SHOULDER = 1.6
"""Widest shoulder and washer, in bores (ours): three tenths of the bore of face all round."""


class NutMandrel:
    """Way of holding: a shouldered mandrel between centers, with a nut."""

    id = "nut-mandrel"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One mandrel made for the bore, the wider hub towards the shoulder."""
        part = Part(job, tables)
        reason = cannot_nut(part)
        return (Held(self.id, cannot=reason),) if reason else (_held(part),)


def _held(part: Part) -> Held:
    n = nutted(part, 1, SHOULDER)
    show, proud = part.show, min(part.sticks_out(face) for face in "AB") > 0
    size, thread = show.bore(part.bore), show.length(n.thread)
    return Held(
        way=NutMandrel.id,
        tool=f"nut mandrel turned to {size}",
        do_it=f"turn a mandrel with a shoulder between centers to this bore, {size}, and clamp the work on it by a washer "
        f"and a {thread} nut",
        leading=n.leading,
        grip=grip_of(part, n, n.clamp.torque),
        needs=needs_of(part, n, "the mandrel"),
        reaches=(OUTSIDE, TAIL_FACE, HEAD_FACE) if proud else (OUTSIDE,),
        seat=seat_of(part, n),
        fit=_fit(part, n),
        effort=effort_of(part, n),
        room=(part.outside, n.span.length),
        more_grip="a wider shoulder where the hub has the face for it, or a pin from shoulder to work",
        steadier="A lighter cut, a wider shoulder and washer, a firmer nut; a closer fit.",
        truer="A closer mandrel, trued faces, a lighter hand on the wrench, a pair of spherical washers under the nut.",
        spares="A washer no wider than the shoulder and right across from it, a lighter hand on the wrench.",
        marks="Rings where shoulder and washer bear; keep the faces clean.",
        mount=_mount(part, n),
        release=_release(),
        ready=("micrometer, wrench, oil, rag, pencil",),
        caution_tags=("dog", "mandrel", "nut"),
        picture=picture_of(part, n, "shouldered mandrel, turned to the bore"),
        faces_done=not proud,
        figures=figures_of(part, n),
        sources=n.clamp.sources,
        notes=_notes(part, n),
    )


def _fit(part: Part, n: Nutted) -> Check:
    show = part.show
    several = " A batch is fitted to its smallest bore." if part.work.quantity > 1 else ""
    return Check(
        2.0,
        2.0,
        f"The mandrel is turned to the bore as it is, {show.bore(part.bore)}, the work itself the gauge; about "
        f"{show.small(likely(n.clearance))} of clearance is left.{several}",
        "Trying the work on: it should just slide on with no shake.",
    )


def _notes(part: Part, n: Nutted) -> tuple[str, ...]:
    said = [
        "Only the shoulder's face is counted: the nut's face can turn on its thread. The cut drags a right-hand nut at the "
        "tailstock end the way that tightens it."
    ]
    back = max(part.lies_back(face) for face in "AB")
    if back > 0:
        said.append(
            f"The hub lies back by up to {part.show.length(back)}: shoulder and washer reach in to its face, clear of the rim."
        )
    web = web_of(part.work)
    if web is not None and part.work.spokes is None:
        size = web.inner / 2, web.outer / 2, web.thickness
        elastic = part.elastic
        poisson = part.range("poisson").best
        sunk = likely(np.asarray(dish(n.clamp.force, *size, elastic.modulus, poisson)))
        said.append(
            f"Never a washer that reaches out to the rim: the same nut would dish the web by about {part.show.small(sunk)}."
        )
    return tuple(said)


def _mount(part: Part, n: Nutted) -> tuple[Step, ...]:
    show = part.show
    return (
        line(
            "Faces first",
            "Both faces that are clamped turned flat and square to the bore, burrs off: faces out of parallel bend the mandrel. "
            "The hub's own face takes shoulder and washer, never web or rim.",
        ),
        line(
            "Turn the mandrel",
            f"Bar with good center holes, between centers, a dog on the end. Shoulder {show.length(n.shoulder)}; thread the "
            f"tailstock end {show.length(n.thread)} for the nut; the seat shorter than the work, so that the washer bears on the "
            "work.",
        ),
        line(
            "To the bore",
            f"The last cuts by trial, about {show.bore(part.bore)}: done when the work just slides on with no shake. A light "
            "undercut in the corner, and the shoulder faced in the same setting. Face the nut on its own thread.",
            (figures_of(part, n)[-2],),
            ("seat of the mandrel",),
        ),
        line(
            "Clamp the work",
            f"Wipe every face. Work on, washer no wider than the shoulder, nut, about {show.torque(n.clamp.wrench)}. Clock the "
            "mandrel's bare end before and after the nut is drawn up: what it moves is the bend. Pencil line across work and "
            "shoulder: if it breaks, it slipped: stop.",
            (*n.clamp.figures, figures_of(part, n)[-1]),
            ("bend", "rim runs out"),
        ),
    )


def _release() -> tuple[Step, ...]:
    return (
        line(
            "Off it comes",
            "Mandrel out of the centers, shoulder held in the vise between soft jaws, nut off, work off by hand. Mark the "
            "mandrel with its size and keep it: it goes back between centers true.",
        ),
    )
