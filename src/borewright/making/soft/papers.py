"""All papers of a soft mandrel: the answer, route, what is measured, cautions."""

from __future__ import annotations

from borewright.answer.papers import Grid, Papers, Said, Sheet
from borewright.making.cautioned import cautioned
from borewright.making.soft.as_drawn import DrawnBar
from borewright.making.soft.asked import SoftAsked
from borewright.making.soft.figures import drawn_figures, turned_figures
from borewright.making.soft.route import (
    drawn_route,
    one_or_band,
    seat_words,
    short_words,
    turned_route,
)
from borewright.making.soft.turned import TurnedBar
from borewright.quantities.show import Show
from borewright.reference.library import Tables


def turned_papers(asked: SoftAsked, bar: TurnedBar, care: str, tables: Tables) -> Papers:
    """Papers of a bar turned to the bore. `care`: why with care, or ""."""
    show = Show(asked.units)
    where = "in the chuck" if asked.held == "chuck" else "between its own centers"
    also = f" With care: {care}" if care else ""
    headline = (
        f"Turn a bar {where} to {seat_words(bar, show)} where the work is to stand, tapered {show.taper(bar.taper)} from "
        f"{show.bore(bar.large)} to {show.bore(bar.small)}, from {show.length(bar.stock)} bar {show.length(bar.length)} long. Turned "
        f"in place it runs true; the push of the work on it is what holds.{also}"
    )
    measured = Grid(
        "What is measured",
        ("what", "wanted", "found"),
        (
            ("bore, two depths, two ways", show.bore(asked.bore), ""),
            ("at the leading face", seat_words(bar, show), ""),
            ("large end", f"about {show.bore(bar.large)}, by the taper", ""),
            ("small end", f"about {show.bore(bar.small)}, by the taper", ""),
            ("work starts, from the small end", "by hand", ""),
            ("by hand it stops short of its place by", short_words(bar, show), ""),
            ("rim runs out, whole reading", "", ""),
        ),
    )
    tags = ("chuck", "soft-chuck") if asked.held == "chuck" else ("dog", "flat-filing", "press")
    return Papers(
        "Soft mandrel",
        headline,
        asked.units,
        (
            Sheet(
                "Route",
                (
                    cautioned(tables, *tags, "soft-bar", "emery", material=asked.material),
                    turned_route(asked, bar),
                ),
            ),
            Sheet("Measured", (measured, *_stairs(asked, bar))),
        ),
        turned_figures(asked, bar, tables),
    )


def _stairs(asked: SoftAsked, bar: TurnedBar) -> tuple[Grid, ...]:
    if not bar.stops:
        return ()
    show = Show(asked.units)
    rows = tuple(
        (str(k), show.length(stop), show.small(depth))
        for k, (stop, depth) in enumerate(zip(bar.stops, bar.depths, strict=True), 1)
    )
    notes = (
        "Cut from the small end, each a step deeper than the one before, and stopped so far from the large end. No cut goes "
        "under the taper; ridges of one step are left for file and emery.",
    )
    columns = ("cut", "stops from the large end", "below the large end, on diameter")
    return (Grid("The taper as a staircase", columns, rows, notes),)


def drawn_papers(asked: SoftAsked, bar: DrawnBar, care: str, tables: Tables) -> Papers:
    """Papers of a bar as drawn."""
    show = Show(asked.units)
    also = f" With care: {care}" if care else ""
    name = show.bore(bar.nominal) if bar.measured else show.length(bar.nominal)
    headline = (
        f"Use {name} bar as drawn: the work is {show.small(bar.clearance[1])} loose on it, a "
        f"{bar.thread_name} set screw in its hub throws it over by half of that, {show.small(bar.thrown)}, and the indicator shows "
        f"all of it, {one_or_band(bar.runout, show)}. Turned in place instead it would run true.{also}"
    )
    tags = ("chuck",) if asked.held == "chuck" else ("dog",)
    return Papers(
        "Soft mandrel, bar as drawn",
        headline,
        asked.units,
        (
            Sheet(
                "Route",
                (
                    cautioned(
                        tables,
                        *tags,
                        "soft-bar",
                        "set-screw",
                        "flat-filing",
                        material=asked.material,
                    ),
                    drawn_route(asked, bar),
                ),
            ),
            Sheet("Measured", (_looseness(asked, bar, tables), _measured(asked, bar))),
        ),
        drawn_figures(asked, bar, tables),
    )


def _looseness(asked: SoftAsked, bar: DrawnBar, tables: Tables) -> Said:
    show = Show(asked.units)
    usual = (
        "The bar was measured: its clearance is what it is."
        if bar.measured
        else f"Drawn bar is usually {show.band(bar.under[0], bar.under[2], 'small')} under its name. By grade it may be "
        + " and ".join(f"{show.small(under)} ({code})" for code, under in bar.by_grade)
        + " under. The two do not agree; the micrometer decides."
    )
    face = (
        f" With no shoulder it may lean corner to corner: a face shows up to {show.small(bar.face_reading)}."
        if bar.face_reading is not None
        else ""
    )
    return Said(
        "How loose, how far out",
        (
            usual,
            f"Bow of the bar and centers that miss its middle come on top: about {show.small(bar.bar_runout)}, whole reading.{face}",
            f"Seated by its torque the screw on its flat holds about {show.torque(bar.torque)} before the bar begins to turn; the "
            "charts of holding forces differ by more than two to one.",
        ),
    )


def _measured(asked: SoftAsked, bar: DrawnBar) -> Grid:
    show = Show(asked.units)
    return Grid(
        "What is measured",
        ("what", "wanted", "found"),
        (
            ("bore, two depths, two ways", show.bore(asked.bore), ""),
            (
                "bar, three places, two ways",
                f"{show.bore(bar.nominal)}{'' if bar.measured else ' or less'}",
                "",
            ),
            ("bore less bar", show.small(bar.clearance[1]), ""),
            (
                "rim runs out, whole reading",
                one_or_band(bar.runout, show),
                "",
            ),
        ),
    )
