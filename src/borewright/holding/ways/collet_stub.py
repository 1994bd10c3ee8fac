"""A shouldered stub held in a headstock collet: it goes back true, so it can wait for the next batch.

The stub itself is that of the chuck; what differs is what holds it. The collet is closed by a pull
along its cone, and slips when its own friction is less than what the clamp on the work holds:
    N = F (1 - mu T / 2) / (mu + T / 2),  torque = mu N d / 2     F the pull, T the cone, d the shank
Source: `expanding_sleeve`, which is the same wedge pressing outward. Weakness: what a hand pulls.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import Grip, Held, Joint, line
from borewright.answer.records import Draws, Figure, Input, Need, Step
from borewright.answer.streams import Stream
from borewright.holding.bars.stub import Stub
from borewright.holding.bars.stub_picture import stub_picture
from borewright.holding.figured import Throws, drawn_figure, thrown
from borewright.holding.no_middle import no_middle
from borewright.holding.owned import bar_at_least, made, needed, owned
from borewright.holding.part import Part, endless
from borewright.job.records import Job
from borewright.mechanics.expanding_sleeve import normal_on_bore
from borewright.mechanics.slip import slip_torque
from borewright.mechanics.spread import likely
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

COLLETS = "collet-chuck"


class ColletStub:
    """Way of holding: a shouldered stub turned to the bore, held in a collet."""

    id = "collet-stub"

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """One stub, the face with the wider hub towards the shoulder."""
        part = Part(job, tables)
        stub = Stub(part, max("BA", key=lambda face: part.ring_at(face).outside))
        reason = _cannot(stub)
        return (Held(self.id, cannot=reason),) if reason else (_held(stub),)


def _cannot(stub: Stub) -> str:
    part = stub.part
    lost = no_middle(part, "a round stub")
    if lost:
        return lost
    if part.bore > _capacity(part):
        return "The stub would be larger than a collet takes: turn it in the chuck."
    if not stub.thread:
        return "The bore is too small for a stub with a screw in its end."
    if part.length < part.tables.holding_fact("stub_shortest").best:
        return "The work is too thin to sit on a stub and still stand out past its end."
    return "" if stub.has_faces else "The wall or its chamfer leaves no face to clamp on."


def _capacity(part: Part) -> Metre:
    """Largest shank that goes into the owner's collets, or into the usual ones (m)."""
    own = [h.largest for h in owned(part.job, part.tables, COLLETS) if h.largest]
    return max(own, default=part.tables.holding_fact("collet_largest").best)


def _shank(stub: Stub) -> Metre:
    return min(stub.shoulder, _capacity(stub.part))


def _held(stub: Stub) -> Held:
    part, clamp, show = stub.part, stub.clamp, stub.part.show
    size, shank = show.bore(part.bore), _shank(stub)
    grip = _grip(stub)
    return Held(
        way=ColletStub.id,
        tool=f"stub turned to {size} in a collet",
        do_it=f"turn a stub to this bore, {size}, in a collet on a {show.length(shank)} shank, and clamp the work on it by a "
        f"washer and a {show.length(stub.thread)} screw",
        leading=stub.leading,
        grip=grip,
        needs=_needs(stub, shank),
        seat=stub.overhang_check(),
        fit=stub.fit_check(),
        effort=stub.effort_check(),
        room=(part.outside, 0.0),
        more_grip="a harder pull on the collet and a larger screw",
        steadier="A lighter cut, a larger screw and shoulder.",
        truer="Turning the stub in the collet that will hold it, a line on both; a clean collet.",
        spares="A wider washer and shoulder, a lighter hand on the wrench.",
        marks="A ring where the washer bears; keep the faces clean.",
        mount=_mount(stub, shank),
        release=_release(part),
        ready=("micrometer, tap and drill, washer and screw, oil, rag",),
        caution_tags=("collet", "overhang"),
        picture=stub_picture(stub, shank, collet=True),
        figures=(*clamp.figures, _collet_figure(stub)),
        sources=clamp.sources,
        notes=("The weaker of clamp and collet is counted.",),
    )


def _collet_torque(stub: Stub) -> tuple[Draws, Draws, Draws, float]:
    """Torque (N·m) at which the shank slips, with pull (N), friction and cone."""
    part = stub.part
    pull = part.fact("collet_pull", Stream.TOOL)
    friction = part.fact("face_friction", Stream.FRICTION)
    cone = part.tables.holding_fact("collet_cone").best
    normal = normal_on_bore(pull, 0.0, friction, cone)
    return np.asarray(slip_torque(normal, friction, _shank(stub))), pull, friction, cone


def _collet_figure(stub: Stub) -> Figure:
    torque, pull, friction, cone = _collet_torque(stub)
    inputs = (
        Input("pull on the collet", likely(pull), "N"),
        Input("friction", likely(friction), ""),
        Input("cone", cone, ""),
        Input("shank", _shank(stub), "m"),
    )
    return drawn_figure(
        "collet_torque", torque, "N·m", "torque", "collet_torque", inputs, "ours-derived"
    )


def _grip(stub: Stub) -> Grip:
    clamp, part = stub.clamp, stub.part
    back = part.drawn(part.tables.allowance("collet_runout"), Stream.CENTERING)
    throws: Throws = (("collet", back), ("clearance", stub.clearance))
    return Grip(
        torque=np.minimum(clamp.torque, _collet_torque(stub)[0]),
        thrust_in=endless(),
        thrust_out=clamp.force,
        tilt=stub.tilt,
        runout=thrown(throws),
        strength=clamp.strength,
        springs=clamp.swell,
        stiffness=stub.stiffness(),
        half_warm=endless(),
        joint=Joint.CLAMP,
        brittle=part.brittle,
        throws=throws,
    )


def _needs(stub: Stub, shank: Metre) -> tuple[Need, ...]:
    job, tables = stub.part.job, stub.part.tables
    minutes = tables.holding_fact("stub_making").best
    return (
        needed(job, tables, COLLETS, shank),
        bar_at_least(job, tables, max(stub.shoulder, shank), "mild steel or brass bar"),
        needed(job, tables, "drill-and-tap"),
        needed(job, tables, "top-slide"),
        needed(job, tables, "indicator"),
        made(
            f"the stub and its washer, with a {stub.part.show.length(stub.thread)} screw", minutes
        ),
    )


def _mount(stub: Stub, shank: Metre) -> tuple[Step, ...]:
    show = stub.part.show
    held = (
        f"A shank {show.length(shank)} across, straight and as long as the collet grips, in the collet, pulled up hard; "
        "a line across both, so that it goes back the same way."
    )
    return (*stub.turning_steps(held), stub.clamp_step())


def _release(part: Part) -> tuple[Step, ...]:
    many = part.work.quantity > 1
    return (
        line(
            "Next piece" if many else "Off it comes",
            f"Screw out, work off{', next on' if many else ''}. The stub may come out and go back later, lines together, collet and shank wiped: "
            "clock it again before it is trusted.",
            (),
            ("stub runs out, put back",),
        ),
    )
