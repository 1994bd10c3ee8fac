"""The order in which a soft mandrel is made and the work put on."""

from __future__ import annotations

from borewright.answer.papers import Route, RouteStep
from borewright.making.shop_sizes import to_rule
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
                f"Bar {show.length(bar.stock)}, {show.length(bar.length)} long, out of the jaws {show.length(bar.out_of_jaws)}. "
                f"Face the end{_drilled(ends)}. From here on it is not moved.",
            ),
        )
        if chuck
        else RouteStep(
            "Center the bar",
            (
                f"Bar {show.length(bar.stock)}, {show.length(bar.length)} long, both ends faced{_drilled(ends)}. Ends turned to "
                f"{show.length(ends.head)}, below the small end, so that the tool runs out. Flat for the dog at the head end, "
                f"{show.length(ends.dog_flat[0])} deep, {show.length(ends.dog_flat[1])} long, filed in the vise.",
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
                    "Twist it off by hand, or draw it by a puller behind the hub; no hammer. Touch the bar up when it scores; "
                    "oil it away."
                    if chuck
                    else "Press it back towards the small end, the hub supported. Touch the bar up when it scores; oil it away.",
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
        f"The smallest bore of the batch sits with its leading face {show.length(bar.room + bar.spread)} from the large end, the "
        f"largest {show.length(bar.spread)} nearer to it."
        if asked.batch and bar.spread > 0
        else f"The work is the gauge: it must start by hand and stop {short_words(bar, show)} short of its place, where bar "
        "and bore are of one size. The rest of the way is the push that holds."
    )
    return (
        f"Finish at {seat_words(bar, show)} where the leading face is to stand, {show.length(bar.room + bar.spread)} from the "
        f"large end: over the bore by {one_or_band(bar.grip, show)}. That leaves about {show.bore(bar.large)} at the large end, "
        f"{show.bore(bar.small)} at the small end. {batch}",
        "Work and bar wiped, at the temperature of the room, a film of oil before each trial: a dry bar galls.",
    )


def _pushed(asked: SoftAsked, bar: TurnedBar) -> tuple[str, ...]:
    show = Show(asked.units)
    if asked.held == "chuck":
        return (
            "Oil; by hand with a twist, then by the tailstock, spindle stopped and out of gear: its barrel, a pad with a hole "
            f"between, pushes on the hub, {show.force(bar.push)} at the very most. No hammer: its blows go into the bearings of the "
            "spindle. Pencil line across the joint: if it breaks, it slipped: stop.",
        )
    back = (
        " Tailstock set back to zero first, proved on two bands, or the work comes out tapered. Back between the centers, dog on "
        "its flat, its tail in the same slot; cut towards the headstock, the large end."
    )
    return (
        f"Oil; by hand press with no more than {show.force(bar.push)}, less for thin or brittle work: `plan` says how much that "
        f"bears. Without a press, light taps of a soft hammer on a block across the hub, each moving it a little: stop when it "
        f"does not move.{back} Pencil line across the joint: if it breaks, it slipped: stop.",
    )


def one_or_band(span: tuple[float, float, float], show: Show) -> str:
    """Low to high of a small length, or the one that both are."""
    low, _, high = span
    return (
        show.small(high) if show.small(low) == show.small(high) else show.band(low, high, "small")
    )


def seat_words(bar: TurnedBar, show: Show) -> str:
    """The size at the leading face, from and to."""
    low, high = bar.seat_limits(show.units)
    return show.band(low, high, "bore")


def short_words(bar: TurnedBar, show: Show) -> str:
    """How far short of its place the work stops by hand: where bar and bore are of one size."""
    low, high = (to_rule(over / bar.taper, show.units) for over in (bar.grip[0], bar.grip[2]))
    return show.length(low) if low == high else show.band(low, high, "length")


def _named(bar: DrawnBar, show: Show) -> str:
    if bar.measured:
        return f"{show.bore(bar.nominal)} was read; a bar is not of one size all along."
    return f"{show.bore(bar.nominal)} is its name, not its size."


def _opened(bar: DrawnBar, show: Show) -> str:
    """What is done in a hub thicker than is tapped through."""
    if not bar.opened:
        return ""
    drill = bar.thread.clearance_drill if bar.thread else "clear of the screw"
    return (
        f" The hub is thicker than a tap reaches: open the hole from outside, {drill}, {show.length(bar.opened)} deep, and tap "
        "what is left."
    )


def drawn_route(asked: SoftAsked, bar: DrawnBar) -> Route:
    """From bar as it comes to the work screwed on."""
    show, chuck = Show(asked.units), asked.held == "chuck"
    ends = bar.ends
    drill = f", tap drill {bar.thread.tap_drill}" if bar.thread else ""
    listed = (
        ""
        if bar.thread_name == bar.screw.id
        else f", in place of {bar.screw.id} and tightened less"
    )
    hold = (
        f"Bar in the chuck, out {show.length(bar.length - ends.grip)}: what the chuck runs out comes on top of the clearance."
        if chuck
        else f"Bar {show.length(bar.length)} long, both ends faced{_drilled(ends)} on its own middle; flat for the dog at the head "
        f"end {show.length(ends.dog_flat[0])} deep, {show.length(ends.dog_flat[1])} long."
    )
    return Route(
        "Order of making",
        (
            RouteStep(
                "Measure the bar, try it",
                (
                    f"Micrometer on the bar at three places, two ways: {_named(bar, show)} It must go through the bore by hand.",
                ),
                ("bar measures", "bore measures"),
            ),
            RouteStep("Center it" if not chuck else "Chuck it", (hold,)),
            RouteStep(
                "File the flat",
                (
                    f"{show.depth(bar.flat_depth)} deep, {show.length(bar.flat_width)} wide, "
                    f"{show.length(bar.flat_end - bar.flat_start)} long, its middle {show.length(bar.screw_at)} from the head end; "
                    "square, edges broken. The screw bruises the flat below the round: on the round its burr would gall the "
                    "work on at the first slip.",
                ),
            ),
            RouteStep(
                "Tap the hub",
                (
                    f"The screw sits in the work's own hub, midway of what stands out, {bar.thread_name}{drill}{listed}: only if "
                    f"the drawing allows the hole.{_opened(bar, show)} No burr in the bore. A collar on the bar beside the work would stop it endwise "
                    "only and carry no cut.",
                ),
            ),
            RouteStep(
                "Screw the work on",
                (
                    f"Hole over the flat, headless screw below the hub, about {show.torque(bar.seating_torque)}. It pushes "
                    f"the work over by {show.small(bar.thrown)}; the indicator shows all of "
                    f"{one_or_band(bar.runout, show)}. Pencil line across the joint.",
                ),
                ("rim runs out",),
            ),
            RouteStep("Off again", ("Screw back two turns, slide the work off over the flat.",)),
        ),
    )
