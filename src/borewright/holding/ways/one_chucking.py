"""Bore, rim and one face without letting go: nothing is truer, and no mandrel is wanted.

It serves while the bore is still to be finished and something past the work can be gripped: bar left
longer, a hub, the inside of the rim. It costs that length of stock, and the second face, which is
taken afterwards. Bar goes into whichever chuck is there; a casting, which runs out, into the one
whose jaws set it true. Rim and bore are true with each other only where a boring bar trues the bore.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from borewright.answer.held import Check, Held, InJaws, line
from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.records import Draws, Figure, Input, Need, Step
from borewright.answer.streams import Stream
from borewright.holding.jaws.as_cast import jaw_place_of
from borewright.holding.jaws.chuck_there import CALLED, JAWS, THREE, chuck_for
from borewright.holding.jaws.chucked import (
    THICK,
    arm_of,
    chuck_picture,
    grasp_words,
    key_pull,
    stands,
)
from borewright.holding.jaws.drilled_out import drilling_of
from borewright.holding.jaws.grasp import ROUGH, Grasp, Where, grasps
from borewright.holding.jaws.jawed import (
    Jawed,
    Jaws,
    chuck_stiffness,
    grip_of,
    jawed,
)
from borewright.holding.jaws.one_setting import (
    bar_gripped,
    bar_trues_it,
    bore_finished,
    opened_up,
    set_up_casting,
)
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

IF_ROUND = 0.8
"""Margin of a casting in a scroll chuck, which sets nothing true, where it was stated round: with
care (ours)."""

IF_DRILLED = 1.0
"""Margin where no boring bar trues the bore: it fits, and its runout is what counts (ours)."""


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


HARD = "hard-steel"
"""Class of metal, in the table materials, that drills and reamers do not cut."""


def _cannot(part: Part) -> str:
    made_by = part.work.bore.made_by
    if part.tables.roughness_id(made_by) not in UNFINISHED:
        return f"The bore is finished already ({made_by}): one chucking serves while it is still to be bored."
    if part.tables.material(part.work.material).cut_class == HARD:
        return "It is hardened: no drill or reamer makes its bore; it is ground, or turned before hardening."
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
    chuck = chuck_for(part)
    length, parting = _left_in_chuck(part), part.tables.holding_fact("parting_stock").best
    grasp = Grasp(Where.OUTSIDE, "B", part.outside, length)
    held = jawed(part, grasp, JAWS[chuck])
    out = part.length + parting
    extra = _extra(part, length, parting)
    show, pieces = part.show, part.work.quantity
    costs = (
        f"costs {show.length(extra.best)} of bar"
        if pieces == 1
        else f"costs {show.length(length)} of bar for the grip, once, and {show.length(parting)} for each piece"
    )
    return replace(
        _common(part, held, chuck),
        tool=f"bar in the {CALLED[chuck]} chuck, {show.length(length + parting)} longer",
        do_it=f"do it in one chucking, no mandrel needed: bar gripped {show.length(length)} past the work, faced, bored and turned without "
        f"letting go, then parted off, which {costs}",
        leading="B",
        grip=grip_of(part, held, _runout(part), _bar_stiffness(part, out), stands_back=False),
        seat=_bar_seat(part, length, out),
        arm=out + length / 2,
        mount=(bar_gripped(part, held, extra, out, set_by=CALLED[chuck]),),
        release=(_parted(part),),
        ready=(*READY, "parting tool"),
        caution_tags=("chuck", "jaws", "parting"),
        picture=_bar_picture(part, grasp, parting, JAWS[chuck]),
        figures=(extra, *_drilled(part), *held.figures),
    )


READY = ("drills, reamer if one is used, gauge for the bore, indicator, oil",)


def _by_the_casting(part: Part, grasp: Grasp) -> Held:
    chuck = chuck_for(part)
    jaws = JAWS[chuck]
    held = jawed(part, grasp, jaws)
    arm = arm_of(part, grasp)
    words = grasp_words(part, grasp)
    seat = stands(part, grasp)
    return replace(
        _common(part, held, chuck),
        tool=f"one chucking by the {grasp.where}, in the {CALLED[chuck]}",
        do_it=f"do it in one chucking, no mandrel needed: grip it in the {CALLED[chuck]} {words}, set it true, and face, bore and turn without "
        "letting go",
        leading=grasp.leading,
        grip=grip_of(part, held, _runout(part), chuck_stiffness(part, arm)),
        seat=_not_set(seat) if chuck == THREE else seat,
        arm=arm,
        mount=set_up_casting(part, grasp, held, jaws),
        release=(
            line(
                "Let it go",
                "Out of the chuck, edges broken. It does not go back as true: what is still to be cut hangs on the finished "
                "bore.",
            ),
        ),
        ready=(*READY, "soft strips, chalk, a bent wire or scriber"),
        caution_tags=("chuck", "jaws", *(("jaws-outward",) if grasp.outwards else ())),
        picture=chuck_picture(part, grasp, jaws.number, "gripped by what is not cut"),
        figures=(*_drilled(part), *held.figures),
        handling=part.tables.holding_fact("casting_setting").best * part.work.quantity,
        in_jaws=InJaws(jaw_place_of(part, grasp), jaws.number),
    )


def _not_set(seat: Check) -> Check:
    """A scroll chuck moves its jaws together."""
    margin = min(seat.margin, IF_ROUND)
    return Check(
        margin,
        min(seat.margin_low, IF_ROUND),
        f"A scroll chuck sets nothing true: only as the casting was stated round. {seat.reason}",
        "A four-jaw, in which it is set true.",
        seat.sources,
    )


def _common(part: Part, held: Jawed, chuck: str) -> Held:
    return Held(
        way=OneChucking.id,
        needs=_needs(part, chuck),
        fit=_fit(part),
        effort=key_pull(part, held),
        room=(part.outside, 0.0),
        more_grip="a longer grip, or lighter cuts",
        truer="A spring pass in bore and rim, nothing touched in between."
        if bar_trues_it(part)
        else "A boring bar that goes in and reaches through.",
        spares="A lighter hand on the key for the last cuts.",
        marks="Only where the jaws grip, which is cut away or not seen.",
        first=(opened_up(part),),
        last=(bore_finished(part),),
        drilling=drilling_of(part),
        sources=("ours", "practice", "friction-memory"),
        notes=(
            "No mandrel is needed for bore, rim and one face. The second face is taken afterwards, on the finished bore or in soft jaws.",
        ),
    )


def _drilled(part: Part) -> tuple[Figure, ...]:
    drilling = drilling_of(part)
    return (drilling.figure,) if drilling else ()


def _runout(part: Part) -> Draws:
    """Bored, it is as true as the spindle; drilled and reamed, as the drill ran."""
    name = "same_setting_runout" if bar_trues_it(part) else "drill_wander"
    return part.fact(name, Stream.CENTERING)


def _needs(part: Part, chuck: str) -> tuple[Need, ...]:
    tools = (chuck, *(("boring-bar",) if bar_trues_it(part) else ()))
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
    if not bar_trues_it(part):
        return Check(
            IF_DRILLED,
            IF_DRILLED,
            "No boring bar goes into this bore and reaches through it: a reamer follows the drill, and rim and bore are only as "
            "true with each other as the drill ran.",
            "A smaller or longer boring bar; or ream it, and turn the rim on a mandrel.",
        )
    return Check(
        2.0,
        2.0,
        f"The bore is finished in the same setting, to {part.show.bore(part.bore)}: nothing has to fit it.",
    )


def _left_in_chuck(part: Part) -> Metre:
    fact = part.tables.holding_fact
    return max(fact("bar_grip_share").best * part.outside, fact("bar_grip_least").best)


def _extra(part: Part, length: Metre, parting: Metre) -> Figure:
    """Bar beyond the work itself: the grip is lost once, the parting with each piece."""
    pieces = part.work.quantity
    inputs = (
        Input("grip", length, "m", "length"),
        Input("pieces", pieces, ""),
        Input("parting", parting, "m", "length"),
    )
    return Figure(
        "stock_to_grip",
        length + pieces * parting,
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


def _parted(part: Part) -> Step:
    again = (
        " Feed the bar out for the next piece, grip and set it as the first."
        if part.work.quantity > 1
        else ""
    )
    return line(
        "Part off",
        "Break the edges, part off behind the work with the facing of the second face to spare, or saw it. The rest of the "
        f"bar is the next piece.{again}",
    )


def _bar_picture(part: Part, grasp: Grasp, parting: Metre, jaws: Jaws) -> HeldPicture:
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
        (HeldMark(Role.JAW, radius + thick / 2, thick, jaws.number),),
        (HeldNote(Role.JAW, "bar gripped past the work"),),
        turned=(parting, parting + part.length),
    )
