"""The independent chuck: every jaw by its own screw, so the work is set true by indicator.

It serves where the bore is what must run true, and where the bore itself is the trouble: a worn or
oval bore is bored round again while what must run true with it stands true.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import Check, Held, line
from borewright.answer.records import Draws, Step
from borewright.answer.streams import Stream
from borewright.holding.jaws.chucked import (
    arm_of,
    chuck_picture,
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
from borewright.holding.jaws.jawed import INDEPENDENT, Jawed, chuck_stiffness, grip_of, jawed
from borewright.holding.owned import needed
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.reference.library import Tables


class FourJaw:
    """Way of holding: four jaws, each with its screw, set true by indicator."""

    id = "four-jaw"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One record for each place to grip; a worn bore is bored round, by the outside if need be."""
        part = Part(job, tables)
        if (rough := still_to_bore(part)) and not only_faces(part):
            return (Held(self.id, cannot=rough),)
        found = _places(part)
        if not found:
            return (Held(self.id, cannot=nothing_to_grip(part)),)
        return tuple(_held(part, grasp) for grasp in found)


def _places(part: Part) -> tuple[Grasp, ...]:
    if only_faces(part):
        return (by_the_outside(part),)
    free = grasps(part)
    boring = part.oval and not part.job.cuts and part.work.finished.outside is None
    if boring:
        return (by_the_outside(part),)
    return free


def _held(part: Part, grasp: Grasp) -> Held:
    squeezed = grasp.where is not Where.OUTSIDE or part.oval
    held = jawed(part, grasp, INDEPENDENT, squeezed)
    arm = arm_of(part, grasp)
    needs = ("four-jaw-chuck", "indicator", *(("boring-bar",) if part.oval else ()))
    return Held(
        way=FourJaw.id,
        tool=f"four-jaw chuck, {grasp.where}",
        do_it=_do_it(part, grasp),
        leading=grasp.leading,
        grip=grip_of(part, held, _runout(part), chuck_stiffness(part, arm)),
        needs=tuple(needed(part.job, part.tables, tool) for tool in needs),
        reaches=reached(grasp),
        seat=stands(part, grasp),
        fit=_fit(part),
        effort=key_pull(part, held),
        room=(part.outside, 0.0),
        arm=arm,
        presses_bore=grasp.where is Where.BORE,
        more_grip="a firmer pull at every jaw, or lighter cuts",
        truer="Reading near both ends of the bore, and again after the last pull on the key.",
        spares="Soft strips under the jaws, a lighter hand on the key.",
        marks="Soft strips (copper, aluminium, card) under the jaws leave no marks.",
        mount=_mount(part, grasp, held),
        release=(out_line("It can go back, set true by indicator again."),),
        ready=("indicator with a lever that enters the bore, soft strips, chalk",),
        caution_tags=("chuck", "jaws", *(("jaws-outward",) if grasp.outwards else ())),
        picture=chuck_picture(part, grasp, 4, "each jaw by its own screw"),
        figures=held.figures,
        sources=("ours", "friction-memory"),
        notes=("The size of the chuck is not known here: see that its jaws reach.",),
    )


def _do_it(part: Part, grasp: Grasp) -> str:
    words = grasp_words(part, grasp)
    if part.oval:
        return (
            f"grip it in the four-jaw {words}, on soft strips, set the rim true by indicator inside what wear has left, and "
            "bore the hole round"
        )
    return f"grip it in the four-jaw {words}, set the bore true by indicator, and turn"


def _runout(part: Part) -> Draws:
    """Careful setting; a bore cut in the same setting as what was set true is no truer."""
    return np.asarray(part.fact("indicator_care", Stream.SETTING))


def _fit(part: Part) -> Check:
    if part.oval:
        return Check(
            2.0,
            2.0,
            "The bore is worn oval: here it is not used, it is bored round again.",
            "A bush or a larger shaft, as it comes out larger.",
        )
    return Check(2.0, 2.0, "The bore is only read by the indicator: any size does.")


def _mount(part: Part, grasp: Grasp, held: Jawed) -> tuple[Step, ...]:
    return (in_line(part, grasp, held), _set_true(part), *((_bored(part),) if part.oval else ()))


def _set_true(part: Part) -> Step:
    care = part.show.small(part.tables.holding_fact("indicator_care").best)
    on = "the rim, inside and out where it is least worn," if part.oval else "the bore"
    return line(
        "Set it true",
        f"Indicator on {on} near the front, the work turned by hand: slacken the low jaw, tighten the one across, two jaws at "
        f"a time, to {care} whole reading. Read the face and near the back as well. Pull up all round, and read again.",
        (),
        ("bore or rim runs out",),
    )


def _bored(part: Part) -> Step:
    most = part.show.bore(max(r.size for r in part.work.bore.readings))
    return line(
        "Bore it round",
        f"Light cuts with the boring bar until the wear is out: no smaller than {most}. Free cuts last, spring pass, then "
        "measure across three ways, for the bush or the shaft that goes in.",
        (),
        ("bore",),
    )
