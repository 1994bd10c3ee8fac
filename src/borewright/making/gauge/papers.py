"""All papers of a plug gauge: the answer, route, acceptance, what is read off, cautions."""

from __future__ import annotations

from borewright.answer.papers import Grid, Papers, Said, Sheet
from borewright.making.cautioned import cautioned
from borewright.making.facts import best_of
from borewright.making.gauge.asked import GaugeAsked
from borewright.making.gauge.figures import gauge_figures
from borewright.making.gauge.form import GaugeForm
from borewright.making.gauge.route import gauge_route, in_use
from borewright.making.gauge.shown import at_least, below, bounds, limits
from borewright.making.gauge.steps import PlugStep, ReadOff, read_off
from borewright.making.gauge.worth import Worth, on_comparator
from borewright.quantities.show import Show
from borewright.reference.library import Tables


def gauge_papers(
    asked: GaugeAsked,
    worth: Worth,
    form: GaugeForm,
    steps: tuple[PlugStep, ...],
    care: str,
    tables: Tables,
) -> Papers:
    """`steps` empty for a plug with two ends. `care`: why with care, or ""."""
    tags = ("gauging", *(("lapping",) if worth.finish == "lapped" else ("emery",)))
    lapping = best_of(tables, "plug_facts")("lap_stock")
    route = Sheet(
        "Route",
        (
            cautioned(tables, *tags, material=asked.material),
            gauge_route(asked, worth, form, steps, lapping),
        ),
    )
    accepted = Sheet(
        "Acceptance",
        (
            _readings(asked, worth, steps),
            _taken(asked, worth, tables),
            *((_read_off(asked, steps),) if steps else ()),
            in_use(asked, worth, form, bool(steps), tables),
        ),
    )
    return Papers(
        "Stepped plug" if steps else "Go and not-go plug",
        headline(asked, worth, steps, care),
        asked.units,
        (route, accepted),
        gauge_figures(asked, worth, steps, tables),
    )


def headline(asked: GaugeAsked, worth: Worth, steps: tuple[PlugStep, ...], care: str) -> str:
    """The answer in two or three sentences."""
    show, zones = Show(asked.units), worth.zones
    also = f" With care: {care}" if care else ""
    bores = f"{asked.name + ', ' if asked.name else ''}{show.band(asked.low, asked.high, 'bore')}"
    if steps:
        sizes = ", ".join(at_least(step.nominal, asked.units) for step in steps)
        return (
            f"A {worth.finish} plug of {len(steps)} steps for bores of {bores}: {sizes}, each within {show.small(worth.width)}. "
            f"How many go in tells the bore; the first goes, the last does not.{also}"
        )
    return (
        f"A {worth.finish} plug for bores of {bores}: the end that goes {limits(zones.go, asked.units)}, the one that does not "
        f"{limits(zones.not_go, asked.units)}. It never passes a bore outside the window, and at the worst calls bad the good ones in "
        f"{zones.lost_worst:.0%} of it.{also}"
    )


def _readings(asked: GaugeAsked, worth: Worth, steps: tuple[PlugStep, ...]) -> Grid:
    show = Show(asked.units)
    rows = (
        tuple(_row(f"step {s.name}", s.zone, s.reads, asked.units) for s in steps)
        if steps
        else (
            _row("goes", worth.zones.go, worth.go_reads, asked.units),
            _row("does not go", worth.zones.not_go, worth.not_go_reads, asked.units),
        )
    )
    return Grid(
        "Accepted when it reads",
        ("end", "true size, limits", "reading from, to", "found", "found, other way"),
        rows,
        (
            f"Known to {show.small(worth.known)} either way; at rest, at the temperature of the room.",
        ),
    )


def _row(
    name: str, zone: tuple[float, float], reads: tuple[float, float], units: str
) -> tuple[str, ...]:
    return (name, limits(zone, units), limits(reads, units), "", "")


def _taken(asked: GaugeAsked, worth: Worth, tables: Tables) -> Said:
    show, zones = Show(asked.units), worth.zones
    finer = (
        f"A tenth of the window, {show.small(worth.tenth)}, is finer than a {worth.finish} plug is made and measured here; it takes "
        f"{show.small(worth.width)} at each end instead, and the window pays."
        if worth.coarser
        else f"Each end has a tenth of the window, {show.small(worth.width)}, which a {worth.finish} plug keeps."
    )
    wear = (
        f" The going end is larger by {show.small(worth.wear)} besides, to wear away."
        if worth.wear
        else ""
    )
    return Said(
        "What the gauge takes of the window",
        (
            f"{finer}{wear}",
            f"Both ends lie inside the window, so no bore outside it is passed. Bores of {limits(zones.left, asked.units)} pass every plug "
            f"within its limits; with a new plug in the middle of both it takes {zones.lost_middle:.0%}, at the worst {zones.lost_worst:.0%}.",
            *_finer(asked, worth, tables),
        ),
    )


def _finer(asked: GaugeAsked, worth: Worth, tables: Tables) -> tuple[str, ...]:
    """What a bench comparator would give back of the window."""
    better = on_comparator(asked, worth, tables) if worth.coarser else None
    if better is None:
        return ()
    show = Show(asked.units)
    return (
        f"On a bench comparator, which knows it to {show.small(better.known)}, each end would take {show.small(better.width)} and the "
        f"window lose {better.zones.lost_worst:.0%} at the worst: borrow one and ask with --comparator, or buy the plug.",
    )


def _read_off(asked: GaugeAsked, steps: tuple[PlugStep, ...]) -> Grid:
    rows = read_off(steps)
    return Grid(
        "What goes in, and what that says",
        ("goes in", "bore", "it is"),
        tuple((_entered(row, len(steps)), _between(row, asked.units), row.word) for row in rows),
        (
            "Bounds with every step at the far side of its limits. Too small or too large: not proved to lie within the window.",
        ),
    )


def _entered(row: ReadOff, number: int) -> str:
    if row.entered == 0:
        return "none"
    if row.entered == number:
        return "all"
    return f"step {row.entered}, not step {row.entered + 1}"


def _between(row: ReadOff, units: str) -> str:
    if row.least is None:
        return f"below {below(row.below or 0.0, units)}"
    if row.below is None:
        return f"{at_least(row.least, units)} or more"
    return bounds((row.least, row.below), units)
