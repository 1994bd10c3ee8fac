"""A bar of soft steel between its own centers: turned to this bore, or as drawn with a set screw, or bonded.

Turned in place it runs true with its centers and may go back between them. As drawn it is loose, and
the screw throws the work over by half the clearance, so the indicator shows all of it; a flat under
the screw keeps the bruise below the round, so that a spin cannot gall the work on.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held import (
    Check,
    Grip,
    Held,
    line,
)
from borewright.answer.records import Draws, Figure, Input, Step
from borewright.answer.streams import Stream
from borewright.holding.bars.between_centers import bar_stiffness, span_of
from borewright.holding.bars.flatted_bar import flatted_bar
from borewright.holding.bars.soft_bar import ALL_ROUND, WAY, bar_needs, bar_picture, centered
from borewright.holding.bars.soft_screwed import screwed_bar
from borewright.holding.bonding.bonds import NOTHING_STICKS
from borewright.holding.bonding.soft_bonded import bonded_bar
from borewright.holding.close_fit import fit_tilt
from borewright.holding.figured import drawn_figure
from borewright.holding.fits.friction_fit import FrictionFit, push_friction
from borewright.holding.fits.pressed_ring import PressedRing
from borewright.holding.no_middle import no_middle
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.mechanics.press import push_on_force
from borewright.mechanics.spread import likely
from borewright.quantities.si import Newton
from borewright.reference.library import Tables

SHORT = 0.5
"""Length that bears, in bores, from which work sits square on a turned bar (ours)."""


class SoftMandrel:
    """Way of holding: a soft bar between centers."""

    id = WAY

    def offer(self, job: Job, tables: Tables) -> tuple[Held, ...]:
        """Turned to the bore; as drawn with a set screw where the hub takes one; bonded."""
        part = Part(job, tables)
        reason = _cannot(part)
        if reason:
            return (Held(self.id, cannot=reason),)
        found = [_turned(part)]
        screwed = flatted_bar(part)
        if screwed is not None:
            found.append(screwed_bar(part, screwed))
        if tables.material(job.work.material).family not in NOTHING_STICKS:
            found.append(bonded_bar(part))
        return tuple(found)


def _cannot(part: Part) -> str:
    largest = part.tables.holding_fact("soft_largest").best
    if part.bore > largest:
        return f"A bar over {part.show.length(largest)} is heavy to turn between centers: a plate with a spigot does the same."
    return no_middle(part, "a round bar")


# Turned to the bore


def _turned(part: Part) -> Held:
    show, size = part.show, part.show.bore(part.bore)
    ring = _ring(part)
    meant, normal = _pushed(part, ring)
    fit = FrictionFit(part, normal, ring.length)
    return Held(
        way=WAY,
        tool=f"soft mandrel turned to {size}",
        do_it=f"turn a soft bar between centers to this bore, {size}, with a slight taper, push the work on with about "
        f"{show.force(meant)}, and cut it on the same centers",
        leading="A",
        grip=_turned_grip(part, ring, fit),
        needs=bar_needs(
            part, "the bar, centered and turned to the bore", "soft_making", "top-slide"
        ),
        reaches=ALL_ROUND,
        seat=_seat(part, ring),
        fit=Check(
            2.0,
            2.0,
            f"The bar is turned to the bore as it is, {size}: whatever the reading says, the work itself is the gauge.",
        ),
        effort=_effort(part, meant),
        room=(part.outside, span_of(part, part.length)),
        presses_bore=True,
        more_grip="a firmer push, a drop of retaining compound, or a second dog on the hub",
        steadier="A lighter cut, a firmer push, a bar that fits over more of the bore.",
        truer="Turning it between the centers it will run on, finish cut last; marking the dog's place.",
        spares="A lighter push and lighter cuts; a way that clamps the faces.",
        marks="None if oiled; soft steel scores with use, so it is good for one batch.",
        mount=_turned_mount(part, meant, _turned_figures(part, meant, fit)),
        release=_pressed_off(part),
        ready=("center drill, micrometer, arbor press or soft hammer, oil",),
        caution_tags=("dog", "press", "soft-bar"),
        picture=bar_picture(part, part.bore, "soft bar turned to the bore"),
        figures=_turned_figures(part, meant, fit),
        sources=("ours-derived",),
        notes=(
            "The push is what holds: the grip is counted from it, over the share of the bore that a bar turned by hand fills.",
            "A push fit is tight by a micron or so. The bar warms with the work and most of the fit stays; where the work runs well "
            "ahead of it, it lets go first by turning. A second dog on the hub, a set screw on a flat or a drop of retaining "
            "compound then drives it: a push fit needs none of them for light cuts, with a wait or coolant between.",
        ),
    )


def _ring(part: Part) -> PressedRing:
    return PressedRing(part, part.length * part.tables.holding_fact("turned_fit_share").best)


def _pushed(part: Part, ring: PressedRing) -> tuple[Newton, Draws]:
    """The push that is meant, and the radial force (N) it leaves."""
    taper, fact = part.tables.holding_fact("soft_taper").best, part.tables.holding_fact
    per_radial = np.asarray(push_on_force(1.0, push_friction(part), taper))
    bears = ring.most_normal() * likely(per_radial)
    meant = min(fact("push_per_bore").best * part.bore, bears)
    pushed = meant * part.fact("push_spread", Stream.CLAMPING)
    return meant, np.asarray(pushed / per_radial)


def _turned_grip(part: Part, ring: PressedRing, fit: FrictionFit) -> Grip:
    return Grip(
        torque=fit.torque,
        thrust_in=fit.along,
        thrust_out=fit.along,
        tilt=np.maximum(fit.tilt, fit_tilt(part, ring.length)),
        runout=part.fact("soft_runout", Stream.CENTERING),
        strength=np.asarray(part.strength / np.maximum(ring.stress(fit.normal), 1.0)),
        springs=ring.springs(fit.normal),
        stiffness=bar_stiffness(part, part.bore, span_of(part, part.length)),
        half_warm=ring.half_warm(fit.normal, part.fact("warm_lag", Stream.WARMING)),
        brittle=part.brittle,
    )


def _seat(part: Part, ring: PressedRing) -> Check:
    margin = ring.length / (SHORT * part.bore)
    return Check(
        margin,
        margin,
        f"A bar turned by hand fills about {ring.length / part.length:.0%} of the bore, {part.show.length(ring.length)}; "
        f"{SHORT:g} of the bore's size is enough to sit square.",
        "Nothing needs to." if margin >= 1 else "A stub or mandrel with a shoulder to square it.",
        ("ours",),
    )


def _effort(part: Part, meant: Newton) -> Check:
    less = meant < part.tables.holding_fact("push_per_bore").best * part.bore
    why = ", no more, because the work would spring or stretch" if less else ""
    return Check(
        2.0,
        1.4,
        f"A hand press or a few taps of a soft hammer: about {part.show.force(meant)}{why}.",
        "Pushing by a press that can be felt, not by a hammer.",
        ("ours",),
    )


def _turned_figures(part: Part, meant: Newton, fit: FrictionFit) -> tuple[Figure, ...]:
    taper = part.tables.holding_fact("soft_taper").best
    push = (
        Input("push", meant, "N"),
        Input("friction on", likely(push_friction(part)), ""),
        Input("taper", taper, ""),
    )
    slip = (
        Input("slip friction", likely(fit.friction), ""),
        Input("normal force", likely(fit.normal), "N"),
        Input("bore", part.bore, "m", "bore"),
    )
    return (
        drawn_figure(
            "pushed_normal", fit.normal, "N", "force", "pushed_normal", push, "ours-derived"
        ),
        drawn_figure("fit_torque", fit.torque, "N·m", "torque", "fit_torque", slip, "shigley"),
    )


def _turned_mount(part: Part, meant: Newton, figures: tuple[Figure, ...]) -> tuple[Step, ...]:
    show, taper = part.show, part.tables.holding_fact("soft_taper").best
    return (
        centered(part),
        line(
            "Turn it to the bore",
            f"Finish a tenth or two over {show.bore(part.bore)} where the work is to stand, smaller towards the tailstock by "
            f"{show.small(taper * part.length)} over its length; the tailstock set over a hair or the top slide does it. Try the "
            "work: it must start by hand and stop short of its place.",
            (),
            ("bar", "starts at"),
        ),
        line(
            "Push the work on",
            f"A film of oil; about {show.force(meant)} by press or soft hammer, square. Back between centers, dog on its flat; "
            "clock the rim.",
            figures,
            ("rim runs out",),
        ),
    )


def _pressed_off(part: Part) -> tuple[Step, ...]:
    rest = (
        " The bar serves the rest of the batch; touch it up between centers when it scores."
        if part.work.quantity > 1
        else ""
    )
    return (
        line(
            "Off again",
            f"Press or tap it back towards the small end, the hub supported.{rest}",
            (),
            ("bore when off",),
        ),
    )
