"""How a plug gauge is turned, brought to size, measured, marked and used."""

from __future__ import annotations

from borewright.answer.papers import Route, RouteStep, Said
from borewright.making.gauge.asked import GaugeAsked
from borewright.making.gauge.form import STEEL, GaugeForm, goes_deep
from borewright.making.gauge.shown import below
from borewright.making.gauge.steps import PlugStep
from borewright.making.gauge.worth import Worth
from borewright.quantities.show import Show
from borewright.reference.library import Tables


def gauge_route(
    asked: GaugeAsked,
    worth: Worth,
    form: GaugeForm,
    steps: tuple[PlugStep, ...],
    lapping: float,
) -> Route:
    """From bar to the mark. `lapping` (m): what lapping leaves to take, on diameter."""
    show = Show(asked.units)
    centers = f", center drilled {form.center.name}" if form.center else ""
    over = lapping if worth.finish == "lapped" else 0.0
    left = f" Leave {show.small(over)} for the lap." if over else ""
    gauging = (
        f"{len(steps)} steps of {show.length(form.step_long)}, grooves of {show.length(form.step_gap)} between"
        if steps
        else f"the end that goes {show.length(form.go_long)} long, the other {show.length(form.not_go_long)}: eye and finger tell "
        "them apart"
    )
    return Route(
        "Order of making",
        (
            RouteStep(
                "Bar",
                (
                    f"Bar {show.length(form.stock)}, {show.length(form.length)} and facing long, both ends faced{centers}. Drill rod "
                    "or mild steel, left soft: mild steel does for one batch, drill rod wears better.",
                    "A hardened plug is bought: steel warps in the fire and must be ground after, and no step here does that.",
                ),
            ),
            RouteStep(
                "Turn it between centers",
                (
                    f"Handle {show.length(form.handle)}, knurled; necks {show.length(form.neck)}; {gauging}; pilot "
                    f"{show.turned(form.pilot)}, {show.length(form.pilot_long)} long.",
                    *(
                        (
                            f"A flat {show.depth(form.vent)} deep along the gauging length lets the air out.",
                        )
                        if form.vent
                        else ()
                    ),
                ),
            ),
            RouteStep("Bring it to size", (_to_size(worth), *((left.strip(),) if left else ()))),
            RouteStep(
                "Measure it",
                (
                    f"At three places, two ways each, at rest, an hour in the room: by {measured_with(worth, asked)} it is known to "
                    f"{show.small(worth.known)} either way, so the reading must lie that far inside its limits, as the table says.",
                ),
                tuple(f"step {step.name}" for step in steps) or ("goes", "does not go"),
            ),
            RouteStep(
                "Mark it",
                (
                    "Stamp the sizes on the handle, not on the gauging length. A ring groove, filled red, at the end that does not go."
                    if not steps
                    else "Stamp the sizes of the steps on the handle, smallest first.",
                    "Break every edge with a stone, wash, oil; a box or a peg of its own.",
                ),
            ),
        ),
    )


def _to_size(worth: Worth) -> str:
    if worth.finish == "lapped":
        return (
            "A split ring of cast iron, closed by a screw, fine compound and oil, slow, stroked end to end, so that it "
            "turns on every part alike; finer compound for the last of it. Cool it and wash it before each reading: "
            "lapping warms it."
        )
    return (
        "Fine cuts with a keen tool, then emery on a flat stick with oil, finer at the end, stroked along; let it cool "
        "before each reading."
    )


def measured_with(worth: Worth, asked: GaugeAsked) -> str:
    """What the plug is measured with."""
    if asked.comparator:
        return "a bench comparator set by a gauge block of nearly its size"
    if worth.finish == "lapped":
        return "a micrometer read beside a gauge block or a bought pin of nearly its size"
    return "a micrometer that reads tenths, its zero tried first"


def in_use(asked: GaugeAsked, worth: Worth, form: GaugeForm, stepped: bool, tables: Tables) -> Said:
    """How it is used, and what warmth does."""
    return Said(
        "In use",
        (
            "Bore and plug wiped, burrs off the mouth, a trace of thin oil, the spindle stopped. It goes by its own weight or a light "
            "push, straight; a plug that is forced tells nothing and sticks.",
            _reach(asked, form, stepped),
            "The end that does not go may enter no further than its chamfer. Try it at "
            f"{'its one mouth, two ways round' if asked.blind else 'both mouths and two ways round'}.",
            f"Worn out when {'the first step' if stepped else 'the going end'} reads {below(worth.worn_out, asked.units)} or less, the "
            f"smallest bore and the {Show(asked.units).small(worth.known)} to which it is known: throw it away or turn it to the next smaller job.",
            _warmth(asked, tables),
            "It feels the tightest place only: a bore that is oval, bell-mouthed or lobed may pass it. Look with an indicator too.",
        ),
    )


def _reach(asked: GaugeAsked, form: GaugeForm, stepped: bool) -> str:
    """How deep it goes, and what of the bore it does not feel."""
    show = Show(asked.units)
    if stepped:
        past = asked.depth is not None and form.gauging > asked.depth
        unfelt = f" {_blind(asked, form, show)}" if asked.blind else ""
        return (
            f"All steps in, it stands {show.length(form.gauging)} deep."
            + (
                " That is more than the bore is long: the smaller steps stand out of its far end, which must be open and free."
                if past
                else " A blind bore must be as deep as that."
                if asked.depth is None
                else ""
            )
            + unfelt
        )
    if asked.blind:
        return _blind(asked, form, show)
    if form.reach is None:
        return "The handle is thinner than the bore: the plug goes right through."
    deep = f"It goes {show.length(form.reach)} deep, there the handle stops it, plainly thicker than the bore."
    if asked.depth is not None and asked.depth <= form.reach:
        return deep
    return f"{deep} Try a longer bore from both mouths; what lies deeper is not felt."


def _blind(asked: GaugeAsked, form: GaugeForm, show: Show) -> str:
    """What stops it in a bore with a bottom, and what it does not feel there."""
    deep, unfelt = goes_deep(asked, form), _unfelt(form, show)
    if deep is None:
        return f"It goes down to the bottom, the handle thinner than the bore. {unfelt}"
    if asked.depth is None:
        return f"It stops on the bottom, or {show.length(deep)} deep by its handle; look which. {unfelt}"
    if deep < asked.depth:
        return (
            f"It goes {show.length(deep)} deep, there the handle stops it, {show.length(asked.depth - deep)} short of the bottom. "
            f"What lies deeper than {show.length(deep - form.pilot_long)} is not felt: the pilot is smaller."
        )
    if form.reach is None:
        return f"It stops on the bottom, {show.length(deep)} deep, the handle thinner than the bore. {unfelt}"
    return f"It stops on the bottom, {show.length(deep)} deep, the handle clear by {show.length(form.reach - deep)}. {unfelt}"


def _unfelt(form: GaugeForm, show: Show) -> str:
    return f"The last {show.length(form.pilot_long)} above the bottom is not felt: the pilot is smaller."


def _warmth(asked: GaugeAsked, tables: Tables) -> str:
    show = Show(asked.units)
    swing = tables.ranged("plug_facts", "room_swing").best
    steel = tables.material_range(STEEL, "expansion").best
    work = asked.material or "al-6061-t6"
    other = tables.material_range(work, "expansion").best
    apart = abs(other - steel) * swing * asked.low
    whom = "this metal" if asked.material else "aluminium"
    return (
        f"Sizes are those at 20 °C. With work and plug alike at {show.temperature_difference(swing)} beside it, {whom} and a "
        f"steel plug differ by {show.small(apart)}; a plug that a hand has warmed by as much grows by {show.small(steel * swing * asked.low)}. "
        "Let both lie together."
    )
