"""A stub turned in the chuck to this very bore, shouldered, the work held by a washer and screw.

It runs true because it was turned where it stands; so it stays in the chuck until the batch is
done. The screw clamps the work on the shoulder; a cut of the usual sense tightens a right-hand
screw. The stub sticks out, so it bends more than a mandrel between centers; where it sticks out too
far, a center in the head of the screw and the tailstock hold its end.
"""

from __future__ import annotations

from borewright.answer.held import Grip, Held, Joint, line
from borewright.answer.records import Need, Step
from borewright.answer.streams import Stream
from borewright.holding.bars.stub import Stub
from borewright.holding.bars.stub_picture import stub_picture
from borewright.holding.figured import Throws, thrown
from borewright.holding.no_middle import no_middle
from borewright.holding.owned import bar_at_least, made, needed
from borewright.holding.part import Part, endless
from borewright.job.records import Job
from borewright.reference.library import Tables


class TurnedStub:
    """Way of holding: a shouldered stub turned in the chuck to the bore."""

    id = "turned-stub"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One stub, the face with the wider hub towards the shoulder; a long one with a center too."""
        part = Part(job, tables)
        stub = Stub(part, max("BA", key=lambda face: part.ring_at(face).outside))
        reason = _cannot(stub)
        if reason:
            return (Held(self.id, cannot=reason),)
        long = stub.overhang_check().margin < 1
        return (_held(stub), _held(stub, tailstock=True)) if long else (_held(stub),)


def _cannot(stub: Stub) -> str:
    part = stub.part
    lost = no_middle(part, "a round stub")
    if lost:
        return lost
    if part.bore > part.tables.holding_fact("stub_largest").best:
        return "The bore is too large for a stub from bar: a plate with a spigot does the same."
    if not stub.thread:
        return "The bore is too small for a stub with a screw in its end."
    if part.length < part.tables.holding_fact("stub_shortest").best:
        return "The work is too thin to sit on a stub and still stand out past its end."
    return "" if stub.has_faces else "The wall or its chamfer leaves no face to clamp on."


def _held(stub: Stub, *, tailstock: bool = False) -> Held:
    part, clamp, show = stub.part, stub.clamp, stub.part.show
    size = show.bore(part.bore)
    stays = ", and leave it there until the batch is done" if part.work.quantity > 1 else ""
    center = ", bring the tailstock up to a center in its head" if tailstock else ""
    return Held(
        way=TurnedStub.id,
        tool=f"stub turned to {size}{' with the tailstock brought up' if tailstock else ''}",
        do_it=f"turn a stub in the chuck to this bore, {size}, clamp the work on it by a washer and "
        f"a {show.length(stub.thread)} screw{center}{stays}",
        leading=stub.leading,
        grip=_grip(stub, tailstock=tailstock),
        needs=_needs(stub, tailstock=tailstock),
        seat=stub.overhang_check(tailstock=tailstock),
        fit=stub.fit_check(),
        effort=stub.effort_check(),
        room=(part.outside, 0.0),
        more_grip="a larger screw and shoulder, or a pin through both",
        steadier="A lighter cut, a larger screw and shoulder." if tailstock else "",
        truer="Facing shoulder and turning stub in one setting; clean faces; never taking it out.",
        spares="A wider washer and shoulder, a lighter hand on the wrench.",
        marks="A ring where the washer bears; keep the faces clean.",
        mount=_mount(stub, tailstock=tailstock),
        release=_release(part),
        ready=("micrometer, indicator, tap and drill, washer and screw, oil, rag",),
        caution_tags=("chuck", "overhang", *(("center",) if tailstock else ())),
        picture=stub_picture(stub, stub.shoulder, collet=False, tailstock=tailstock),
        figures=clamp.figures,
        sources=clamp.sources,
        notes=(
            "The friction of the washer's face, and what the stub holds by fitting the bore, are left out of the torque that "
            "the clamp holds.",
        ),
    )


def _grip(stub: Stub, *, tailstock: bool) -> Grip:
    clamp = stub.clamp
    return Grip(
        torque=clamp.torque,
        thrust_in=endless(),
        thrust_out=clamp.force,
        tilt=stub.tilt,
        runout=thrown(_throws(stub)),
        strength=clamp.strength,
        springs=clamp.swell,
        stiffness=stub.stiffness(tailstock=tailstock),
        half_warm=endless(),
        joint=Joint.CLAMP,
        brittle=stub.part.brittle,
        throws=_throws(stub),
    )


def _throws(stub: Stub) -> Throws:
    """What a stub turned in place shows, and its clearance (m)."""
    turned = stub.part.fact("stub_runout", Stream.CENTERING)
    return (("stub turned in place", turned), ("clearance", stub.clearance))


def _needs(stub: Stub, *, tailstock: bool) -> tuple[Need, ...]:
    job, tables = stub.part.job, stub.part.tables
    minutes = tables.holding_fact("stub_making").best
    screw = f"with a {stub.part.show.length(stub.thread)} screw"
    drilled = f"{screw}, a center drilled in its head" if tailstock else screw
    return (
        needed(job, tables, "three-jaw-chuck"),
        bar_at_least(job, tables, stub.shoulder, "mild steel or brass bar"),
        needed(job, tables, "drill-and-tap"),
        needed(job, tables, "top-slide"),
        *(needed(job, tables, t) for t in ("tail-center", "indicator") if tailstock),
        made(f"the stub and its washer, {drilled}", minutes),
    )


def _mount(stub: Stub, *, tailstock: bool) -> tuple[Step, ...]:
    out = stub.part.show.length(stub.overhang)
    steps = (
        *stub.turning_steps(f"Bar in the chuck, out by {out} and a little."),
        stub.clamp_step(),
    )
    if not tailstock:
        return steps
    center = line(
        "Bring up the tailstock",
        "Center drilled in the screw's head in this setting, oiled; the tailstock center just home, no push that bends the "
        "stub; clock the work again.",
    )
    return (*steps, center)


def _release(part: Part) -> tuple[Step, ...]:
    if part.work.quantity == 1:
        return (
            line(
                "Off it comes", "Screw out, a hand under the work, off the stub by a straight pull."
            ),
        )
    return (
        line(
            "Next piece",
            "Screw out, work off, next on: the stub stays in the chuck, unmoved, until the batch is done. Once it has been out "
            "it no longer runs true.",
        ),
    )
