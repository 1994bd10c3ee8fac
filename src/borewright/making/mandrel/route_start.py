"""The first steps of a mandrel's route: stock, ends and centers, roughing, flats and stamps."""

from __future__ import annotations

from borewright.answer.made_mandrel import MadeMandrel
from borewright.answer.papers import RouteStep
from borewright.making.shop_sizes import to_rule
from borewright.quantities.show import Show
from borewright.reference.library import Tables


def first_steps(made: MadeMandrel, show: Show, tables: Tables) -> tuple[RouteStep, ...]:
    """From the bar to the blank that waits for hardening, grinding or the last turning."""
    return (
        _stock(made, show, tables),
        _ends(made, show),
        _rough(made, show, tables),
        _flats(made, show),
    )


def _stock(made: MadeMandrel, show: Show, tables: Tables) -> RouteStep:
    stock = made.stock
    lines = [
        f"{stock.steel.name[:1].upper()}{stock.steel.name[1:]}, round, {stock.bar.size} or the next larger, "
        f"{show.length(stock.bar_length)} long: "
        f"{show.length(to_rule(tables.making_fact('face_stock').best, made.units))} on each end for facing.",
        stock.steel.note,
        f"The blank weighs {show.weight(stock.mass)}.",
    ]
    if stock.steel.hard:
        lines.append("Mark the bar with its steel: two bars that look alike are hardened apart.")
    return RouteStep(
        "Stock", tuple(line for line in lines if line), ("bar in hand", "its maker's sheet read")
    )


def _ends(made: MadeMandrel, show: Show) -> RouteStep:
    form = made.form
    lines = [f"Face both ends to {show.length(form.overall_length)} overall."]
    if form.center is None:
        lines.append("Turn a 60 degree point on both ends; they run in hollow centers.")
    else:
        center = form.center
        kept = (
            "its bell stands back from the cone and keeps bruises off it"
            if center.bell
            else "its bell just shows as a ring, and keeps bruises off the cone"
            if center.series == "inch-bell"
            else "face a shallow recess round it, so that a knock on the end does not reach the cone"
        )
        lines.append(
            f"Center both with {center.as_named} ({center.id}), "
            f"{show.depth(form.center_depth)} to the end of the pilot's full width: {kept}. "
            "Full speed, light hand, oil; a wandering center drill is felt before it is seen."
        )
        lines.append(
            "A bar too long for chuck and drill together goes through the spindle; one too thick for that runs "
            "in the fixed steady; failing both, mark out the middle, punch it and drill it upright.",
        )
        lines.append(
            "The end that is drilled runs true in chuck or steady: what the two holes are out of line "
            "is in every job that this mandrel ever holds."
        )
    return RouteStep("Face and center", tuple(lines))


def _rough(made: MadeMandrel, show: Show, tables: Tables) -> RouteStep:
    stock, form = made.stock, made.form
    corner = show.length(to_rule(tables.making_fact("corner").best, made.units))
    ends = (
        f"Both ends to {show.turned(form.end_diameter)}, {show.length(form.end_length)} long, "
        f"finished now, with a radius of about {corner} in the corner."
    )
    if made.grinder:
        lines = [
            f"Between centers, the taper's length parallel to {show.turned(stock.rough)}: the largest "
            f"diameter and {show.depth(stock.taken)} for grinding.",
            f"The old figure, for work that is hardened, leaves {show.depth(stock.old)} at every size; one that grows with "
            f"thickness and length leaves {show.depth(stock.scaled)} here, and is taken."
            + (
                " Leave the old figure where the hardening is a first try."
                if stock.steel.hard
                else " Nothing is hardened, so it only has to hide the turning."
            ),
        ]
    else:
        lines = [
            f"Between centers, the taper's length parallel to {show.turned(stock.rough)}: the largest "
            f"diameter and {show.depth(stock.taken)}. Nothing is hardened or ground, so the "
            f"{show.depth(stock.old)} that the trade leaves for that is not wanted.",
        ]
    return RouteStep("Rough it", (*lines, ends), ("roughed to",))


def _flats(made: MadeMandrel, show: Show) -> RouteStep:
    form = made.form
    which = (
        "the large end only: it goes to the headstock and takes the dog, and work is cut towards it"
        if form.flats == "large"
        else "both ends, so that it can be turned end for end; cuts towards the small end loosen the work"
    )
    return RouteStep(
        "Flats and stamps",
        (
            f"Mill or file a flat {show.length(form.flat_depth)} deep and "
            f"{show.length(form.flat_length)} long on {which}.",
            f"Stamp {made.stamp} on it, and L. Stamp now, while it is soft, and stone off what stands "
            "up: on the taper a raised edge would hold every bore off.",
        ),
    )
