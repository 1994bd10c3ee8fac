"""The order in which a stub is turned, and what is done when it went under size."""

from __future__ import annotations

from borewright.answer.papers import Route, RouteStep, Said
from borewright.making.facts import best_of
from borewright.making.fine_feed import TRAVEL, usual_feed
from borewright.making.stub.asked import StubAsked
from borewright.making.stub.sizes import StubSizes
from borewright.making.stub.slit import Slit, no_control
from borewright.quantities.show import Show
from borewright.reference.library import Tables

FEW_STEPS = 3
"""Ours: a turn of fewer of the steps that a hand sets is not said."""


def own(shown: str) -> str:
    """A shown size without the other units in their brackets.

    >>> own("16 mm (0.63 in)")
    '16 mm'
    """
    return shown.partition(" (")[0]


def stub_route(asked: StubAsked, stub: StubSizes, slit: Slit | None, tables: Tables) -> Route:
    """Step by step; what else the chuck must turn comes first, the stub is never let go."""
    steps = (
        *(
            (_plug(asked, slit), _plug_washer(asked, slit), _filler(asked, slit))
            if slit
            else (_washer(asked, stub),)
        ),
        _chuck(asked, stub),
        _rough(asked, stub),
        *(_expanding(asked, slit, tables) if slit else (_tapped(asked, stub),)),
        _last_tenths(asked, stub, slit, tables),
        _shoulder(asked, stub),
        _mount(asked, stub, slit, tables),
    )
    return Route("Order of turning", steps)


def _washer(asked: StubAsked, stub: StubSizes) -> RouteStep:
    show, clamp = Show(asked.units), stub.clamp
    assert clamp is not None
    return RouteStep(
        "Make the washer first",
        (
            f"{show.length(clamp.washer_outside)} across, {show.length(clamp.washer_thick)} thick, "
            f"hole {clamp.screw.clearance_drill}; both faces true, or it tilts the work. First, because the chuck "
            f"is not opened again once the stub is in it. Look out the screw: {clamp.screw.id}, "
            f"{show.length(clamp.length)} under its head.",
        ),
    )


def _plug(asked: StubAsked, slit: Slit) -> RouteStep:
    show = Show(asked.units)
    hole = (
        f"Drill {slit.puller.tap_drill} and tap {slit.puller.id} through: the screw {slit.screw.id} passes, and a longer "
        f"{slit.puller.id} screw run against the bottom of the stub's bore draws the plug out, which holds itself."
        if slit.puller
        else f"Drill {slit.screw.clearance_drill} through. So steep a cone lets go by itself when the screw is slack."
    )
    travel = TRAVEL[asked.units]
    return RouteStep(
        "Turn the plug first",
        (
            f"Any bar that gives {show.turned(slit.plug_large)}, in the chuck. {hole}",
            f"Set the top slide over {show.angle(slit.slide_angle)} by an indicator, its plunger square to the lathe's "
            f"axis: it moves {show.depth(slit.indicator(travel))} over {own(show.length(travel))} of slide. Lock it: it is not "
            "touched again until the mouth is bored.",
            f"Large end free, to the tailstock, so that the same setting, tool in front, fits the mouth: "
            f"{show.turned(slit.plug_large)} at the large end, {show.length(slit.plug_length)} long, which leaves about "
            f"{show.depth(slit.plug_small)} at the small end. Face, part off, break the edges.",
        ),
    )


def _plug_washer(asked: StubAsked, slit: Slit) -> RouteStep:
    show = Show(asked.units)
    over = f"the {slit.puller.id} thread" if slit.puller else "the hole"
    return RouteStep(
        "Make the washer",
        (
            f"{show.length(slit.washer_outside)} across, {show.length(slit.washer_thick)} thick, hole "
            f"{slit.screw.clearance_drill}: without it the head would bear on the edge of {over}. Screw "
            f"{slit.screw.id}, {show.length(slit.screw_length)} under its head.",
        ),
    )


def _filler(asked: StubAsked, slit: Slit) -> RouteStep:
    show = Show(asked.units)
    return RouteStep(
        "Turn a filler for the saw",
        (
            f"Hard wood or soft aluminium, {show.length(slit.hole)} across and {show.length(slit.length)} long, thrown away "
            "after: it fills the bore while the slits are sawn, because the saw goes through it.",
        ),
    )


def _chuck(asked: StubAsked, stub: StubSizes) -> RouteStep:
    show = Show(asked.units)
    return RouteStep(
        "Bar in the chuck",
        (
            f"Bar {show.length(stub.stock)}, {show.length(stub.bar_length)} long, {show.length(stub.grip)} of it in the jaws, "
            f"{show.length(stub.stick_out)} out. Key pulled up at each pinion. From here on it is not moved.",
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
            f"{show.length(stub.groove_depth)} deep: the work must meet the shoulder, not a corner.",
        ),
        ("spigot roughed to",),
    )


def _tapped(asked: StubAsked, stub: StubSizes) -> RouteStep:
    show, clamp = Show(asked.units), stub.clamp
    assert clamp is not None
    return RouteStep(
        f"Tap the end {clamp.screw.id}",
        (
            f"Center drill, drill {clamp.screw.tap_drill} {show.length(clamp.drill_depth)} deep to the drill's point, tap "
            f"{show.length(clamp.thread_depth)} of full thread, the tap started by the tailstock, "
            "power off. Wash out the chips: one in the thread is felt as a tight fit.",
        ),
    )


def _expanding(asked: StubAsked, slit: Slit, tables: Tables) -> tuple[RouteStep, ...]:
    show = Show(asked.units)
    return (
        RouteStep(
            "Bore the inside",
            (
                f"Drill and bore {show.length(slit.hole)}, {show.length(slit.length)} deep, until the filler goes in snug. Center its "
                f"bottom, drill {show.length(slit.drill_depth)} further with {slit.screw.tap_drill} and tap "
                f"{slit.screw.id}, {show.length(slit.thread_depth)} of full thread: it stands in whole metal behind the slits.",
                f"Mouth with the top slide as it stands since the plug, tool in front, until the plug, pushed in by hand, "
                f"stands out {show.length(slit.stands_out)}: about {own(show.depth(slit.mouth))} at the face, "
                f"{show.length(slit.cone_length)} deep. Blue the plug: it marks the mouth all along.",
            ),
            ("plug stands out",),
        ),
        RouteStep(
            "Saw the slits",
            (
                f"First drill {slit.number} holes of {show.length(slit.end_hole)} through the wall, "
                f"{show.length(slit.length)} from the end, evenly round. Plug out and laid aside: it is never sawn. The "
                "filler in its place, flush with the end, so that the fingers do not chatter; power off, spindle locked; saw "
                "from the end to the holes, through the filler, two opposite slits in one cut.",
                "What is left of the filler out, every burr off inside and out, chips washed away.",
            ),
        ),
        RouteStep(
            "Nip the plug",
            (
                f"Plug in until it is snug, washer, screw; then nip it: {_nip(asked, slit, tables)}. The spigot is "
                "finished like that, so that it is round when it holds.",
            ),
            ("plug stands out, nipped",),
        ),
    )


def _nip(asked: StubAsked, slit: Slit, tables: Tables) -> str:
    """How the nip is set: by an indicator, beside a turn of the screw where a hand can set one."""
    show, own_fact = Show(asked.units), best_of(tables, "stub_facts")
    rises = (
        f"by feel, or by an indicator on the spigot near its end, which rises {show.small(slit.nipped / 2)}, half of "
        f"the {show.small(slit.nipped)} that it opens"
    )
    steps = round(slit.nipped / slit.per_turn / own_fact("turn_step"))
    if no_control(slit, tables) or steps < FEW_STEPS:
        return rises
    return f"{rises}, about {360 * own_fact('turn_step') * steps:.0f}° of the screw"


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


def _shoulder(asked: StubAsked, stub: StubSizes) -> RouteStep:
    show = Show(asked.units)
    return RouteStep(
        "Face the shoulder, chamfer the end",
        (
            f"In this setting, a light cut outwards, {show.length(stub.before_work)} left. Chamfer "
            f"{show.depth(stub.chamfer)}. Indicator on spigot and shoulder: neither moves.",
        ),
        ("spigot runs out", "shoulder runs out"),
    )


def _mount(asked: StubAsked, stub: StubSizes, slit: Slit | None, tables: Tables) -> RouteStep:
    show = Show(asked.units)
    if slit is None:
        assert stub.clamp is not None
        words = (
            f"Faces wiped, work on, washer, the {stub.clamp.screw.id} screw, {show.length(stub.clamp.length)} under its head, by "
            "wrench. Pencil line across work and shoulder: if it breaks, it slipped: stop."
        )
    else:
        words = (
            f"Screw slack, plug loose; the plug is smaller than the bore, so the work goes on over it, against the "
            f"shoulder. Screw in until it holds: no more than {show.depth(slit.travel_most)} of plug from snug"
            f"{_turns(slit, tables)}. Pencil line across work and shoulder. Light cuts: fingers hold at the outer end only."
        )
    return RouteStep("Put the work on", (words,), ("rim runs out",))


def _turns(slit: Slit, tables: Tables) -> str:
    """The most that the screw is turned, rounded down, where a hand can set it."""
    fact, turns = best_of(tables, "stub_facts"), slit.turns_most
    if no_control(slit, tables):
        return (
            f", {turns:.2f} of a turn from snug to the most: the steep plug gives no control by the screw, so stop by feel at "
            "the first hold, or watch an indicator on the spigot's end before the work goes on"
        )
    if turns >= 1:
        return f", {int(10 * turns) / 10:.1f} turns of the screw"
    step = fact("turn_step")
    return f", {360 * step * int(turns / step):.0f}° of the screw"


def under_size(asked: StubAsked, stub: StubSizes, tables: Tables) -> Said:
    """What is done with a stub that went under size, the best first."""
    show, fact = Show(asked.units), tables.holding_fact
    gap, own = fact("bond_gap"), tables.ranged("stub_facts", "knurl_raises")
    return Said(
        "If it went under size",
        (
            "Shake that can be felt is shake that an indicator shows, all of it: do not talk it away.",
            "1. Is there a smaller bore in the batch, or a job that wants one? Turn it down for that.",
            f"2. Make it again from a new piece of bar, {show.length(stub.bar_length)} long: rough sizes are known now, "
            "washer, plug and screw are there.",
            f"3. Bond it, if the job may: retaining compound is meant for a gap of "
            f"{show.band(gap.low, gap.high, 'small')} on diameter; turn the stub down to that and leave a "
            "narrow band at the shoulder that finds the bore.",
            f"4. Knurl it straight and fine, which raises {show.band(own.low, own.high, 'small')}, and turn the "
            "crests to the bore: they bear on little and wear, good for one or two pieces.",
            "5. Shim of paper or foil only to rough: it is never even round, and the work runs out by what it "
            "differs. Marks of a center punch on the spigot make no fit.",
        ),
    )
