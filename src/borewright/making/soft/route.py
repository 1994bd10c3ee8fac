"""The order in which a soft mandrel is made and the work put on."""

from __future__ import annotations

from borewright.answer.papers import Route, RouteStep
from borewright.making.soft.as_drawn import DrawnBar
from borewright.making.soft.asked import SoftAsked
from borewright.making.soft.ends import Ends
from borewright.making.soft.turned import TurnedBar
from borewright.quantities.show import Show


def turned_route(asked: SoftAsked, bar: TurnedBar) -> Route:
    """From bar to the work pushed on."""
    show, chuck = Show(asked.units), asked.held == "chuck"
    ends = bar.ends
    setting = (
        RouteStep(
            "Bar in the chuck",
            (
                f"Bar {show.length(bar.stock)}, {show.rule(bar.length)} long, out of the jaws {show.rule(bar.out_of_jaws)}. "
                f"Face the end{_drilled(ends)}. From here on it is not moved.",
            ),
        )
        if chuck
        else RouteStep(
            "Center the bar",
            (
                f"Bar {show.length(bar.stock)}, {show.rule(bar.length)} long, both ends faced{_drilled(ends)}. Ends turned to "
                f"{show.length(ends.head)}, below the small end, so that the tool runs out. Flat for the dog at the head end, "
                f"{show.depth(ends.dog_flat[0])} deep, {show.length(ends.dog_flat[1])} long, filed in the vise.",
            ),
        )
    )
    taper = (
        f"By the top slide: {show.angle(bar.slide_angle)} is finer than its scale; an indicator square to the axis moves "
        f"{show.small(bar.indicator)} over {show.length(bar.travel)} of slide."
        if chuck
        else f"By the tailstock: set over towards the operator by {show.small(bar.set_over)}, half of the taper over the whole "
        "length between centers, read by an indicator on its barrel; then two cuts a known distance apart prove it."
    )
    return Route(
        "Order of making",
        (
            setting,
            RouteStep(
                "Set the taper",
                (
                    f"{show.taper(bar.taper)} on diameter, smaller to the tailstock. {taper} Or leave all straight and step "
                    "it down by the staircase below, then blend with a fine file and emery.",
                ),
                ("first band", "second band"),
            ),
            RouteStep("Turn it to the bore", _to_the_bore(asked, bar), ("at the leading face",)),
            RouteStep("Push the work on", _pushed(asked, bar), ("rim runs out", "pushed with")),
            RouteStep(
                "Off again",
                (
                    "Press it back towards the small end, the hub supported. Touch the bar up when it scores; oil it away.",
                ),
                ("bore when off",),
            ),
        ),
    )


def _drilled(ends: Ends) -> str:
    if ends.tail_center is None:
        return ""
    return f" and center drilled {ends.tail_center.name}"


def _to_the_bore(asked: SoftAsked, bar: TurnedBar) -> tuple[str, ...]:
    show = Show(asked.units)
    batch = (
        f"The smallest bore of the batch sits with its leading face {show.rule(bar.room + bar.spread)} from the large end, the "
        f"largest {show.rule(bar.spread)} nearer to it."
        if asked.batch and bar.spread > 0
        else "The work is the gauge: it must start by hand and stop short of its place by a quarter of its length or so."
    )
    return (
        f"Finish at {show.bore(bar.seat)} where the leading face is to stand, {show.bore(bar.large)} at the large end, "
        f"{show.bore(bar.small)} at the small end. {batch}",
        "Work and bar wiped, at the temperature of the room, a film of oil before each trial: a dry bar galls.",
    )


def _pushed(asked: SoftAsked, bar: TurnedBar) -> tuple[str, ...]:
    show = Show(asked.units)
    back = (
        ""
        if asked.held == "chuck"
        else " Tailstock set back to zero first, proved on two bands, or the work comes out tapered. Back between the centers, dog on "
        "its flat, its tail in the same slot; cut towards the headstock, the large end."
    )
    return (
        f"Oil; by hand press or soft hammer with no more than {show.force(bar.push)}, less for thin or brittle work: `plan` says "
        f"how much that bears.{back} Pencil line across the joint: if it breaks, it slipped: stop.",
    )


def drawn_route(asked: SoftAsked, bar: DrawnBar) -> Route:
    """From bar as it comes to the work screwed on."""
    show, chuck = Show(asked.units), asked.held == "chuck"
    ends = bar.ends
    drill = f", tap drill {bar.thread.tap_drill}" if bar.thread else ""
    listed = (
        ""
        if bar.thread_name == bar.screw.id
        else f" (its forces scaled from the listed {bar.screw.id})"
    )
    hold = (
        f"Bar in the chuck, out {show.rule(bar.length - ends.grip)}: what the chuck runs out comes on top of the clearance."
        if chuck
        else f"Bar {show.rule(bar.length)} long, both ends faced{_drilled(ends)} on its own middle; flat for the dog at the head "
        f"end {show.depth(ends.dog_flat[0])} deep, {show.length(ends.dog_flat[1])} long."
    )
    return Route(
        "Order of making",
        (
            RouteStep(
                "Measure the bar, try it",
                (
                    f"Micrometer on the bar at three places, two ways: {show.bore(bar.nominal)} is its name, not its size. It "
                    "must go through the bore by hand.",
                ),
                ("bar measures", "bore measures"),
            ),
            RouteStep("Center it" if not chuck else "Chuck it", (hold,)),
            RouteStep(
                "File the flat",
                (
                    f"{show.depth(bar.flat_depth)} deep, {show.length(bar.flat_width)} wide, "
                    f"{show.length(bar.flat_end - bar.flat_start)} long, its middle {show.rule(bar.screw_at)} from the head end; "
                    "square, edges broken. The screw bruises the flat below the round: on the round its burr would gall the "
                    "work on at the first slip.",
                ),
            ),
            RouteStep(
                "Tap the hub",
                (
                    f"The screw sits in the work's own hub, midway of what stands out, {bar.thread_name}{drill}{listed}: only if "
                    "the drawing allows the hole. No burr in the bore. A collar on the bar beside the work would stop it endwise "
                    "only and carry no cut.",
                ),
            ),
            RouteStep(
                "Screw the work on",
                (
                    f"Hole over the flat, headless screw below the hub, about {show.torque(bar.seating_torque)}. It pushes "
                    f"the work over by {show.small(bar.thrown)}; the indicator shows all of "
                    f"{show.band(bar.runout[0], bar.runout[2], 'small')}. Pencil line across the joint.",
                ),
                ("rim runs out",),
            ),
            RouteStep("Off again", ("Screw back two turns, slide the work off over the flat.",)),
        ),
    )
