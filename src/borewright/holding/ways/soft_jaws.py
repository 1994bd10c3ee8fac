"""Soft jaws cut in place, under load, to the size that they grip: true, and all round the work.

They repeat as true as they were cut, piece after piece, and bear on most of the round, so that they
spring a ring far less than narrow jaws. They must be bored or turned again once taken off.
"""

from __future__ import annotations

from dataclasses import replace

from borewright.answer.held import Check, Held, line
from borewright.answer.records import Step
from borewright.answer.streams import Stream
from borewright.holding.figured import Throws, thrown
from borewright.holding.jaws.chucked import (
    arm_of,
    as_cast_within,
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
from borewright.holding.jaws.jawed import Jawed, Jaws, chuck_stiffness, grip_of, jawed
from borewright.holding.owned import needed
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.reference.library import Tables


class SoftJaws:
    """Way of holding: soft jaws bored, or turned, in place."""

    id = "soft-jaws"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One record for each place to grip."""
        part = Part(job, tables)
        if part.oval:
            reason = "The bore is worn oval: jaws cut round find no middle in it."
            return (Held(self.id, cannot=reason),)
        if (rough := still_to_bore(part)) and not only_faces(part):
            return (Held(self.id, cannot=rough),)
        found = (by_the_outside(part),) if only_faces(part) else grasps(part)
        if not found:
            return (Held(self.id, cannot=nothing_to_grip(part)),)
        return tuple(_held(part, grasp) for grasp in found)


def _held(part: Part, grasp: Grasp) -> Held:
    bears = part.tables.holding_fact("pie_jaw_share").best
    held = jawed(part, grasp, Jaws(3, "scroll_jaw_force", bears), grasp.where is not Where.OUTSIDE)
    arm, throws = arm_of(part, grasp), _throws(part, grasp)
    cut = "turned" if grasp.outwards else "bored"
    return Held(
        way=SoftJaws.id,
        tool=f"soft jaws, {grasp.where}",
        do_it=f"hold it in soft jaws {cut} in place to it, {grasp_words(part, grasp)}, and turn",
        leading=grasp.leading,
        grip=replace(
            grip_of(part, held, thrown(throws), chuck_stiffness(part, arm)), throws=throws
        ),
        needs=tuple(
            needed(part.job, part.tables, tool) for tool in ("three-jaw-chuck", "soft-jaws")
        ),
        reaches=reached(grasp),
        seat=_seat(part, grasp),
        fit=_fit(part, grasp),
        effort=key_pull(part, held),
        room=(part.outside, 0.0),
        arm=arm,
        presses_bore=grasp.where is Where.BORE,
        more_grip="longer jaws, or lighter cuts",
        truer="Cutting the jaws again, at the same place of the scroll and the same pull on the key.",
        spares="A lighter hand on the key.",
        marks="None to speak of: they bear all round. Keep chips out.",
        mount=_mount(part, grasp, held, cut),
        release=(
            out_line(
                "Jaws stay on until the batch is done; taken off they are cut again before use."
            ),
        ),
        ready=("indicator, boring tool, a ring or plug to load the scroll, brush",),
        caution_tags=("chuck", "jaws", "soft-jaws", *(("jaws-outward",) if grasp.outwards else ())),
        picture=chuck_picture(part, grasp, 3, f"soft jaws, {cut} in place"),
        figures=held.figures,
        sources=("ours", "practice", "friction-memory"),
        notes=("Jaws that bear all round are worked as even patches on a free ring.",),
    )


def _seat(part: Part, grasp: Grasp) -> Check:
    """The shoulder cut with the jaws squares it, however short the jaws; draft they slide off too."""
    length = stands(part, grasp)
    if as_cast_within(part, grasp):
        return length
    return Check(
        max(1.0, length.margin),
        max(1.0, length.margin_low),
        f"It stands against a shoulder cut with the jaws, {part.show.length(grasp.length)} in them: square as cut.",
        "Nothing needs to.",
        length.sources,
    )


def _throws(part: Part, grasp: Grasp) -> Throws:
    jaws = part.fact("soft_jaw_runout", Stream.CENTERING)
    return (("soft jaws", jaws), ("what is gripped", grasp_runout(part, grasp)))


def _fit(part: Part, grasp: Grasp) -> Check:
    if grasp.where is Where.BORE:
        return Check(
            2.0, 2.0, f"The jaws are turned to this bore, {part.show.bore(part.bore)}, by trial."
        )
    return Check(2.0, 2.0, "Nothing goes into the bore: any size does.")


def _mount(part: Part, grasp: Grasp, held: Jawed, cut: str) -> tuple[Step, ...]:
    size = part.show.bore(grasp.diameter)
    load = "round the jaws" if grasp.outwards else "behind the cut"
    return (
        line(
            "Cut the jaws in place",
            f"A ring or plug {load}, gripped the way the work will be and pulled up as hard. Light cuts: {cut} to "
            f"{size} and a shoulder to stand against, a small undercut in its corner for chips. Deburr.",
        ),
        in_line(part, grasp, held),
    )
