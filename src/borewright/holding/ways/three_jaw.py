"""The scroll chuck: quick, strong, and as true as its scroll; by what leaves the outside free.

Its jaws are moved together, so nothing can be set true: rim to bore is what the chuck runs out, with
what the gripped hub or rim runs out to the bore. Three narrow jaws spring a free ring.
"""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.held import Check, Held
from borewright.answer.streams import Stream
from borewright.holding.figured import Throws, thrown
from borewright.holding.jaws.chucked import (
    arm_of,
    chuck_picture,
    grasp_runout,
    grasp_words,
    in_line,
    key_pull,
    out_line,
    reached,
    stands,
)
from borewright.holding.jaws.grasp import (
    Grasp,
    Where,
    by_the_outside,
    grasps,
    nothing_to_grip,
    only_faces,
    still_to_bore,
)
from borewright.holding.jaws.jawed import SCROLL, chuck_stiffness, grip_of, jawed
from borewright.holding.owned import needed
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.reference.library import Tables


class ThreeJaw:
    """Way of holding: three jaws on one scroll."""

    id = "three-jaw"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One record for each place to grip: hub, inside of the rim, bore."""
        part = Part(job, tables)
        if part.oval:
            reason = "The bore is worn oval, and a scroll chuck cannot be set true to anything."
            return (Held(self.id, cannot=reason),)
        if (rough := still_to_bore(part)) and not only_faces(part):
            return (Held(self.id, cannot=rough),)
        found = (by_the_outside(part),) if only_faces(part) else grasps(part)
        if not found:
            return (Held(self.id, cannot=nothing_to_grip(part)),)
        return tuple(_held(part, grasp) for grasp in found)


def _held(part: Part, grasp: Grasp) -> Held:
    held = jawed(part, grasp, SCROLL, grasp.where is not Where.OUTSIDE)
    words = grasp_words(part, grasp)
    arm, throws = arm_of(part, grasp), _throws(part, grasp)
    return Held(
        way=ThreeJaw.id,
        tool=f"three-jaw chuck, {grasp.where}",
        do_it=f"grip it in the three-jaw {words}, and turn it in one go",
        leading=grasp.leading,
        grip=replace(
            grip_of(part, held, thrown(throws), chuck_stiffness(part, arm)), throws=throws
        ),
        needs=(needed(part.job, part.tables, "three-jaw-chuck"),),
        reaches=reached(grasp),
        seat=stands(part, grasp),
        fit=_fit(part, grasp),
        effort=key_pull(part, held),
        room=(part.outside, 0.0),
        arm=arm,
        presses_bore=grasp.where is Where.BORE,
        more_grip="a heavier chuck, or lighter cuts",
        truer="A four-jaw set true by indicator, or soft jaws bored in place.",
        spares="A lighter hand on the key, soft strips under the jaws.",
        marks="Jaws mark what they grip: soft strips under them where it is finished.",
        mount=(in_line(part, grasp, held),),
        release=(out_line("Once out it does not go back as true as it was."),),
        ready=("indicator, soft strips, rag",),
        caution_tags=("chuck", "jaws", *(("jaws-outward",) if grasp.outwards else ())),
        picture=chuck_picture(part, grasp, 3, "three jaws on a scroll"),
        figures=held.figures,
        sources=("ours", "friction-memory"),
        notes=("The size of the chuck is not known here: see that its jaws reach.",),
    )


def _throws(part: Part, grasp: Grasp) -> Throws:
    chuck = part.drawn(part.tables.allowance("three_jaw_runout"), Stream.CENTERING)
    return (("chuck", chuck), ("what is gripped", grasp_runout(part, grasp)))


def _fit(part: Part, grasp: Grasp) -> Check:
    if grasp.where is Where.BORE:
        return Check(
            1.2,
            0.9,
            "The jaws open to any bore, three narrow marks in it.",
            "Soft strips under the jaws, or soft jaws turned to it.",
        )
    return Check(2.0, 2.0, "Nothing goes into the bore: any size does.")
