"""Bore, rim and one face without letting go: nothing is truer, and no mandrel is wanted.

It serves while the bore is still to be finished and something past the work can be gripped: bar left
longer, a hub, the inside of the rim. It costs that length of stock, and the second face, which is
taken afterwards.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from borewright.answer.held import Check, Held, line
from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Figure, Input, Need, Step
from borewright.answer.streams import Stream
from borewright.holding.jaws.chucked import (
    THICK,
    arm_of,
    chuck_picture,
    grasp_words,
    in_line,
    key_pull,
    stands,
)
from borewright.holding.jaws.grasp import ROUGH, Grasp, Where, grasps
from borewright.holding.jaws.jawed import Jawed, Jaws, chuck_stiffness, grip_of, jawed
from borewright.holding.owned import needed
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.mechanics.beam import Bar, round_step
from borewright.mechanics.overhang import Root, stub_stiffness
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

UNFINISHED = (*ROUGH, "unknown")
"""How a bore is made that is still to be finished, or may be."""

IF_LEFT = 0.8
"""Margin where it is not said whether anything was left to grip: with care (ours)."""

IF_TO_BORE = 0.5
"""Margin where the bore has been read, so that it may be finished already: with care (ours)."""

SCROLL = Jaws(3, "scroll_jaw_force")


class OneChucking:
    """Way of holding: bore, rim and one face in one setting."""

    id = "one-chucking"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """From the bar where it is bar; else by the hub or the inside of the rim."""
        part = Part(job, tables)
        reason = _cannot(part)
        if reason:
            return (Held(self.id, cannot=reason),)
        if part.work.blank == "casting":
            return (_by_the_casting(part, _of_casting(part)[0]),)
        return (_from_bar(part),)


def _cannot(part: Part) -> str:
    made_by = part.work.bore.made_by
    if part.tables.roughness_id(made_by) not in UNFINISHED:
        return f"The bore is finished already ({made_by}): one chucking serves while it is still to be bored."
    if part.oval:
        return "The bore is worn oval, so the work is no blank: one chucking is for new work."
    if part.work.blank == "casting" and not _of_casting(part):
        return "Nothing past the work to grip: no hub stands out, and no jaw goes inside the rim."
    return ""


def _of_casting(part: Part) -> tuple[Grasp, ...]:
    return tuple(g for g in grasps(part) if g.where is not Where.BORE)


def _bored_already(part: Part) -> bool:
    """True where somebody read the bore, yet did not say how it was made."""
    bore = part.work.bore
    if part.tables.roughness_id(bore.made_by) != "unknown" or bore.limits:
        return False
    return bool(bore.readings) or bore.uncertainty is not None or bore.measured_with != "unknown"


def _from_bar(part: Part) -> Held:
    length, parting = _left_in_chuck(part), part.tables.holding_fact("parting_stock").best
    grasp = Grasp(Where.OUTSIDE, "B", part.outside, length)
    held = jawed(part, grasp, SCROLL)
    out = part.length + parting
    runout = part.fact("same_setting_runout", Stream.CENTERING)
    extra = _extra(length, parting)
    show = part.show
    return replace(
        _common(part, held),
        tool=f"bar in the chuck, {show.length(extra.best)} longer",
        do_it=f"do it in one chucking: bar gripped {show.length(length)} past the work, faced, bored and turned without "
        f"letting go, then parted off, which costs {show.length(extra.best)} of bar for each piece",
        leading="B",
        grip=grip_of(part, held, runout, _bar_stiffness(part, out), stands_back=False),
        seat=_bar_seat(part, length, out),
        arm=out + length / 2,
        mount=_bar_steps(part, held, extra, out),
        release=_parted(part),
        caution_tags=("chuck", "jaws", "parting"),
        picture=_bar_picture(part, grasp, parting),
        figures=(extra, *held.figures),
    )


def _by_the_casting(part: Part, grasp: Grasp) -> Held:
    held = jawed(part, grasp, SCROLL)
    arm = arm_of(part, grasp)
    runout = part.fact("same_setting_runout", Stream.CENTERING)
    words = grasp_words(part, grasp)
    return replace(
        _common(part, held),
        tool=f"one chucking by the {grasp.where}",
        do_it=f"do it in one chucking: grip it {words}, and face, bore and turn without letting go",
        leading=grasp.leading,
        grip=grip_of(part, held, runout, chuck_stiffness(part, arm)),
        seat=stands(part, grasp),
        arm=arm,
        mount=(_true_by_eye(part), in_line(part, grasp, held), _bore_step(part)),
        release=(
            line(
                "Let it go",
                "Out of the chuck, edges broken. It does not go back as true: what is still to be cut hangs on the finished "
                "bore.",
            ),
        ),
        caution_tags=("chuck", "jaws", *(("jaws-outward",) if grasp.outwards else ())),
        picture=chuck_picture(part, grasp, 3, "gripped by what is not cut"),
        figures=held.figures,
    )


def _common(part: Part, held: Jawed) -> Held:
    return Held(
        way=OneChucking.id,
        needs=_needs(part),
        fit=_fit(part),
        effort=key_pull(part, held),
        room=(part.outside, 0.0),
        more_grip="a longer grip, or lighter cuts",
        truer="A spring pass in bore and rim, nothing touched in between.",
        spares="A lighter hand on the key for the last cuts.",
        marks="Only where the jaws grip, which is cut away or not seen.",
        ready=("drill, boring bar or reamer, gauge for the bore, indicator, oil",),
        sources=("ours", "practice", "friction-memory"),
        notes=("The second face is taken afterwards, on the finished bore or in soft jaws.",),
    )


def _needs(part: Part) -> tuple[Need, ...]:
    tools = ("three-jaw-chuck", "boring-bar")
    return tuple(needed(part.job, part.tables, tool) for tool in tools)


def _fit(part: Part) -> Check:
    if _bored_already(part):
        return Check(
            IF_TO_BORE,
            IF_TO_BORE,
            "The bore has been read, so there is one: this serves if it is still to be finished, and it was not said how it "
            "was made.",
            "Saying how it was made: drilled, it is finished here; reamed or bored, it needs another way.",
        )
    return Check(
        2.0,
        2.0,
        f"The bore is finished in the same setting, to {part.show.bore(part.bore)}: nothing has to fit it.",
    )


def _left_in_chuck(part: Part) -> Metre:
    fact = part.tables.holding_fact
    return max(fact("bar_grip_share").best * part.outside, fact("bar_grip_least").best)


def _extra(length: Metre, parting: Metre) -> Figure:
    inputs = (Input("grip", length, "m", "length"), Input("parting", parting, "m", "length"))
    return Figure(
        "stock_to_grip",
        length + parting,
        "m",
        formula="stock_to_grip",
        inputs=inputs,
        sources=("ours", "practice"),
        kind="length",
    )


def _bar_stiffness(part: Part, out: Metre) -> float:
    """At the end of the bar, solid; the bore takes little of it."""
    metal = (part.range("modulus").best, part.range("poisson").best)
    bend, slide = round_step(part.outside, *metal, hole=min(part.bore, 0.99 * part.outside))
    fact = part.tables.holding_fact
    bar = Bar(np.array([0.0, out]), np.array([bend]), np.array([slide]))
    root = Root(fact("stub_root_turn").best, fact("stub_root_give").best)
    return float(stub_stiffness(bar, out, root))


def _bar_seat(part: Part, length: Metre, out: Metre) -> Check:
    most, show = part.tables.holding_fact("chuck_overhang_share"), part.show
    margin = most.best * part.outside / out
    unsure = _bored_already(part) or part.work.blank != "bar"
    said = (
        f"{show.length(length)} of bar in the jaws, {show.length(out)} out of them, {out / part.outside:.1f} of its diameter; "
        f"{most.best:g} is the usual most without a center."
    )
    if unsure:
        left = show.length(length + part.tables.holding_fact("parting_stock").best)
        return Check(
            min(margin, IF_LEFT),
            min(margin, IF_LEFT),
            f"Only if the bar was left long enough to grip, {left} longer than the work, which was not said. {said}",
            "Bar that is that much longer; cut to length already, it needs another way.",
            (most.source,),
        )
    helps = (
        "Nothing needs to." if margin >= 1 else "A steady, or the bore last and a center till then."
    )
    return Check(margin, margin, said, helps, (most.source,))


def _bar_steps(part: Part, held: Jawed, extra: Figure, out: Metre) -> tuple[Step, ...]:
    show = part.show
    return (
        line(
            "Grip the bar",
            f"Bar {show.length(extra.best)} longer than the work, out by {show.length(out)}, key pulled up at every screw.",
            (extra, *held.figures),
        ),
        _bore_step(part),
    )


def _bore_step(part: Part) -> Step:
    return line(
        "Face, drill, bore",
        "Face the end. Center, drill under size, then the boring bar: it makes the hole straight and true. Rough bore and rim "
        f"both, let it cool, then finish the bore to {part.show.bore(part.bore)} with bar or reamer, and the rim after it, "
        "nothing slackened in between.",
        (),
        ("bore",),
    )


def _true_by_eye(part: Part) -> Step:
    return line(
        "Set true what stays rough",
        "Turn it by hand against a point: inside of the rim and web must run even, as they are not cut; pack a jaw if need be. "
        "Face and bore first: a hole in the metal shows before more work is spent.",
    )


def _parted(part: Part) -> tuple[Step, ...]:
    return (
        line(
            "Part off",
            "Break the edges, part off behind the work with the facing of the second face to spare, or saw it. The rest of the "
            "bar is the next piece.",
        ),
    )


def _bar_picture(part: Part, grasp: Grasp, parting: Metre) -> HeldPicture:
    radius, thick = part.outside / 2, THICK[part.job.units]
    back, outer = -grasp.length - 0.002, radius + thick
    rings = (
        HeldRing(Role.SPINDLE, back - 0.5 * outer, back, 1.3 * outer),
        HeldRing(Role.JAW, back, 0.0, outer, radius),
        HeldRing(Role.WORK, back, parting, radius),
        *part.rings("B", parting),
    )
    return HeldPicture(
        rings,
        (HeldMark(Role.JAW, radius + thick / 2, thick, 3),),
        (HeldNote(Role.JAW, "bar gripped past the work"),),
        turned=(parting, parting + part.length),
    )
