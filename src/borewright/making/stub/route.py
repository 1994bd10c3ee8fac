"""The order in which a stub is turned, and what is done when it went under size."""

from __future__ import annotations

from borewright.answer.papers import Route, RouteStep, Said
from borewright.making.facts import best_of
from borewright.making.fine_feed import usual_feed
from borewright.making.stub.asked import StubAsked
from borewright.making.stub.sizes import StubSizes
from borewright.making.stub.slit import Slit
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def stub_route(asked: StubAsked, stub: StubSizes, slit: Slit | None, tables: Tables) -> Route:
    """Step by step; the stub is never let go once the spigot is begun."""
    steps = (
        _chuck(asked, stub),
        _rough(asked, stub),
        *(_expanding(asked, slit) if slit else _screwed(asked, stub)),
        _last_tenths(asked, stub, slit, tables),
        _shoulder(asked, stub, slit),
        _mount(asked, stub, slit),
    )
    return Route("Order of turning", steps)


def _chuck(asked: StubAsked, stub: StubSizes) -> RouteStep:
    show = Show(asked.units)
    return RouteStep(
        "Bar in the chuck",
        (
            f"Bar {show.length(stub.stock)}, {show.rule(stub.bar_length)} long, out of the jaws "
            f"{show.rule(stub.stick_out)}. Key pulled up at each pinion. From here on it is not moved.",
        ),
    )


def _rough(asked: StubAsked, stub: StubSizes) -> RouteStep:
    show = Show(asked.units)
    return RouteStep(
        "Rough it",
        (
            f"Face the end. Shoulder {show.length(stub.shoulder)} across; spigot to "
            f"{show.turned(stub.rough)} over {show.length(stub.spigot_length)}.",
            f"In the corner a groove {show.length(stub.groove_width)} wide, "
            f"{show.small(stub.groove_depth)} deep: the work must meet the shoulder, not a corner.",
        ),
        ("spigot roughed to",),
    )


def _screwed(asked: StubAsked, stub: StubSizes) -> tuple[RouteStep, ...]:
    show, clamp = Show(asked.units), stub.clamp
    assert clamp is not None
    screw = clamp.screw
    return (
        RouteStep(
            f"Tap the end {screw.id}",
            (
                f"Center drill, drill {screw.tap_drill} {show.length(clamp.drill_depth)} deep, tap "
                f"{show.length(clamp.thread_depth)} of full thread, the tap started by the tailstock, "
                "power off. Wash out the chips: one in the thread is felt as a tight fit.",
            ),
        ),
        RouteStep(
            "Make the washer",
            (
                f"{show.length(clamp.washer_outside)} across, {show.length(clamp.washer_thick)} thick, "
                f"hole {screw.clearance_drill}; both faces true, or it tilts the work. Screw "
                f"{show.band(clamp.shank_least, clamp.shank_most, 'length')} under its head.",
            ),
        ),
    )


def _expanding(asked: StubAsked, slit: Slit) -> tuple[RouteStep, ...]:
    show = Show(asked.units)
    release = (
        f"It holds itself when the screw is slack: its hole is tapped {slit.puller.id}, so that a longer "
        "screw of that size, run against the bottom of the hole, draws it out."
        if slit.puller
        else "So steep a cone lets go by itself when the screw is slack."
    )
    return (
        RouteStep(
            "Bore the inside",
            (
                f"Drill and bore {show.turned(slit.hole)}, {show.length(slit.length)} deep. Center its "
                f"bottom, drill {show.length(slit.drill_depth)} further with {slit.screw.tap_drill} and tap "
                f"{slit.screw.id}, {show.length(slit.thread_depth)} of full thread: it stands in whole metal behind the slits.",
                f"Mouth with the top slide at {show.angle(slit.slide_angle)}: "
                f"{show.turned(slit.mouth)} at the face, {show.length(slit.cone_length)} deep.",
            ),
        ),
        RouteStep(
            "Turn the plug at the same setting of the top slide",
            (
                f"{show.turned(slit.plug_small)} at the small end, {show.turned(slit.plug_large)} at the "
                f"large, {show.length(slit.plug_length)} long. Blue it: it marks the mouth all along. "
                f"Snug it stands out {show.length(slit.stands_out)}. {release}",
            ),
        ),
        RouteStep(
            "Saw the slits",
            (
                f"First drill {slit.number} holes of {show.length(slit.end_hole)} through the wall, "
                f"{show.length(slit.length)} from the end, evenly round. Plug in, finger tight, so that the "
                "fingers do not chatter; power off, spindle locked; saw from the end to each hole, two "
                "opposite slits in one cut.",
                "Plug out, every burr off inside and out, chips washed away.",
            ),
        ),
        RouteStep(
            "Nip the plug",
            (
                f"Plug in until it is snug, then {_turns(slit, slit.nipped)} more: about "
                f"{show.small(slit.nipped)} of opening. The spigot is finished like that, so that it is "
                "round when it holds.",
            ),
            ("plug stands out, nipped",),
        ),
    )


def _last_tenths(asked: StubAsked, stub: StubSizes, slit: Slit | None, tables: Tables) -> RouteStep:
    show, feed = Show(asked.units), usual_feed(tables)
    division = tables.holding_fact(f"slide_division_{asked.units}").best
    last = best_of(tables, "stub_facts")("last_sizes")
    misses = best_of(tables, "stub_facts")("hand_hits")
    band = (
        f"The smallest piece of the batch is the gauge, or a plug of {show.bore(asked.bore)}: between "
        f"{show.band(stub.spigot_low, stub.spigot_high, 'bore')}."
        if asked.batch
        else f"The work itself is the gauge: expected at {show.bore(stub.spigot)}, and as far either way "
        f"as the bore is known, {show.small(asked.half_band)}."
    )
    return RouteStep(
        "The last tenths",
        (
            f"From about {show.small(last)} over size use the top slide, set over {show.angle(feed.angle)}: "
            f"one division of {show.small(division)} takes {show.small(feed.on_diameter(division))} off the "
            f"diameter, {show.depth(feed.slide_for(last))} of slide takes the last "
            f"{show.small(last)}. Lock the cross slide, push the slide one way only, sharp tool, same "
            "feed and speed each pass.",
            f"{band} Bore and stub wiped dry, both at the temperature of the room; hands warm a thin ring.",
            f"A patient hand misses by {show.small(misses)} either way. Stop when the work starts and does not "
            "go on; emery on a flat stick, turning, takes the rest a little at a time from the free end. "
            "Done when it wrings on with no shake.",
        ),
        ("spigot measures", "work goes on"),
    )


def _shoulder(asked: StubAsked, stub: StubSizes, slit: Slit | None) -> RouteStep:
    show = Show(asked.units)
    return RouteStep(
        "Face the shoulder, chamfer the end",
        (
            f"In this setting, a light cut outwards, {show.length(stub.before_work)} left. Chamfer "
            f"{show.depth(stub.chamfer)}. Indicator on spigot and shoulder: neither moves.",
        ),
        ("spigot runs out", "shoulder runs out"),
    )


def _mount(asked: StubAsked, stub: StubSizes, slit: Slit | None) -> RouteStep:
    show = Show(asked.units)
    if slit is None:
        words = (
            "Faces wiped, work on, washer, screw by wrench. Pencil line across work and shoulder: if it "
            "breaks, it slipped: stop."
        )
    else:
        words = (
            f"Plug slack, work on against the shoulder, screw in until it holds: no more than "
            f"{show.depth(slit.travel_most)} of plug from snug, {_turns(slit, slit.opens_most)}. Pencil "
            "line across work and shoulder. Light cuts: fingers hold at the outer end only."
        )
    return RouteStep("Put the work on", (words,), ("rim runs out",))


def _turns(slit: Slit, opening: Metre) -> str:
    """How far the screw is turned for an opening (m), rounded down: no further than that."""
    turns = opening / slit.per_turn
    if turns >= 1:
        return f"{int(10 * turns) / 10:.1f} turns of the screw"
    return f"{int(360 * turns)}° of the screw"


def under_size(asked: StubAsked, stub: StubSizes, tables: Tables) -> Said:
    """What is done with a stub that went under size, the best first."""
    show, fact = Show(asked.units), tables.holding_fact
    gap, own = fact("bond_gap"), tables.ranged("stub_facts", "knurl_raises")
    return Said(
        "If it went under size",
        (
            "Shake that can be felt is shake that an indicator shows, all of it: do not talk it away.",
            "1. Is there a smaller bore in the batch, or a job that wants one? Turn it down for that.",
            f"2. Make it again: pull the bar out by {show.rule(stub.before_work + stub.spigot_length)}, or turn "
            "the next length behind the shoulder; rough sizes and holes are known now.",
            f"3. Bond it, if the job may: retaining compound is meant for a gap of "
            f"{show.band(gap.low, gap.high, 'small')} on diameter; turn the stub down to that and leave a "
            "narrow band at the shoulder that finds the bore.",
            f"4. Knurl it straight and fine, which raises {show.band(own.low, own.high, 'small')}, and turn the "
            "crests to the bore: they bear on little and wear, good for one or two pieces.",
            "5. Shim of paper or foil only to rough: it is never even round, and the work runs out by what it "
            "differs. Marks of a center punch on the spigot make no fit.",
        ),
    )
