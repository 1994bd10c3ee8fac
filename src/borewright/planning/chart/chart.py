"""The wall chart of a shelf: which mandrel takes which bore, and how deep a cut holds on it."""

from __future__ import annotations

from borewright.answer.chart import Chart, ChartBar, ChartCell, ChartColumn
from borewright.cutting.base import feed_for
from borewright.errors import RefusedInput
from borewright.job.records import Shelf
from borewright.planning.chart.chart_bars import bar_of, gaps_between
from borewright.planning.chart.chart_cells import DEPTH_STEP, Gripped, cell_of, gripped
from borewright.planning.chart.chart_hub import hub_job, usual_press
from borewright.planning.chart.chart_words import chart_assumed, chart_sources
from borewright.planning.shop.shop import Shop, shop_of
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

OUTSIDES = {
    "inch": tuple(k * 0.0254 for k in (1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0)),
    "mm": (0.025, 0.04, 0.05, 0.075, 0.1, 0.15, 0.2, 0.25),
}
"""Outside diameters of the rows (ours)."""

COMMON = {
    "inch": tuple(k * 0.0254 / 8 for k in (4, 5, 6, 8)),
    "mm": (0.012, 0.016, 0.02, 0.025),
}
"""Mandrel sizes shown first where the shelf has them (ours)."""

MOST_COLUMNS, MOST_SIZES = 12, 6
MOST_MATERIALS = 4

TITLE = "Mandrels on our shelf"


def chart_of(shelf: Shelf, materials: tuple[str, ...], units: str, tables: Tables) -> Chart:
    """The chart of a shelf for these materials (ids); `units` is inch or mm.

    RefusedInput where the shelf holds no mandrel.
    """
    shop = _shop(shelf, materials[0], units, tables)
    mandrels = {m.name: m for m in shop.mandrels}
    bars = tuple(
        sorted(
            (bar_of(m, materials, shelf, units, tables) for m in shop.mandrels),
            key=lambda b: (b.bore_window or (b.nominal, b.nominal), b.mandrel),
        )
    )
    feed = _feed(shelf, materials, tables)
    shown = _common(bars, units, min(MOST_SIZES, MOST_COLUMNS // len(materials)))
    held = [
        gripped(mandrels[b.mandrel], b, m, shelf, units, shop.press_force, tables)
        for b in shown
        for m in materials
    ]
    outsides = _outsides(shelf, units, shown)
    columns = tuple(h.column for h in held)
    return Chart(
        title=TITLE,
        units=units,
        press=usual_press(units, tables),
        feed=feed,
        depth_step=DEPTH_STEP[units],
        skin_depth=tables.allowance("skin_depth").low,
        bars=bars,
        gaps=gaps_between(bars, units),
        columns=columns,
        outsides=outsides,
        cells=_cells(held, outsides, feed, tables),
        not_shown=_not_shown(bars, columns, shelf, units),
        assumed=chart_assumed(shop, bars, held, units, tables),
        sources=chart_sources(shop, held, tables),
    )


def _shop(shelf: Shelf, material: str, units: str, tables: Tables) -> Shop:
    if not shelf.mandrels:
        raise RefusedInput(
            "mandrel", "no mandrel on this shelf", "at least one [[mandrel]] to chart"
        )
    return shop_of(hub_job(0.016, material, shelf, units), tables)


def _feed(shelf: Shelf, materials: tuple[str, ...], tables: Tables) -> Metre:
    """One feed for all: the finest usual roughing feed of these materials, as the lathe has it."""
    return feed_for(min(tables.cut_defaults(m).rough_feed for m in materials), shelf.machine)


def _common(bars: tuple[ChartBar, ...], units: str, most: int) -> tuple[ChartBar, ...]:
    """One bar for each size, common sizes first, the rest evenly spread; smallest first."""
    sizes: dict[int, ChartBar] = {}
    for bar in bars:
        if bar.bore_window is not None:
            sizes.setdefault(round(bar.nominal * 1e6), bar)
    common = {round(size * 1e6) for size in COMMON[units]}
    first = [b for size, b in sizes.items() if size in common][:most]
    rest = [b for b in sizes.values() if b not in first]
    return tuple(sorted([*first, *_spread(rest, most - len(first))], key=lambda b: b.nominal))


def _spread(bars: list[ChartBar], count: int) -> list[ChartBar]:
    """So many of the bars, evenly from first to last."""
    if count >= len(bars) or count <= 0:
        return bars[: max(0, count)]
    if count == 1:
        return [bars[len(bars) // 2]]
    return [bars[round(k * (len(bars) - 1) / (count - 1))] for k in range(count)]


def _widest_swing(shelf: Shelf) -> Metre | None:
    """What the largest lathe swings over its cross slide; None where one of them is not stated."""
    lathes = shelf.lathes or (shelf.machine,)
    swings = [lathe.swing_over_cross_slide for lathe in lathes]
    known = [swing for swing in swings if swing is not None]
    return max(known) if len(known) == len(swings) else None


def _outsides(shelf: Shelf, units: str, shown: tuple[ChartBar, ...]) -> tuple[Metre, ...]:
    """The rows: what the lathe swings, where that is known."""
    swing = _widest_swing(shelf)
    return tuple(d for d in OUTSIDES[units] if shown and (swing is None or d <= swing))


def _cells(
    held: list[Gripped], outsides: tuple[Metre, ...], feed: Metre, tables: Tables
) -> tuple[ChartCell, ...]:
    found = (cell_of(h, d, feed, tables) for d in outsides for h in held)
    return tuple(cell for cell in found if cell is not None)


def _not_shown(
    bars: tuple[ChartBar, ...], columns: tuple[ChartColumn, ...], shelf: Shelf, units: str
) -> tuple[str, ...]:
    """In sentences, what the chart leaves out and why."""
    show, said = Show("mm" if units == "mm" else "inch"), []
    charted = {c.mandrel for c in columns}
    sizes = {round(b.nominal * 1e6) for b in bars if b.bore_window is not None}
    shown = {round(b.nominal * 1e6) for b in bars if b.mandrel in charted}
    if left := len(sizes - shown):
        count = "1 other size" if left == 1 else f"{left} other sizes"
        said.append(f"Depths for {count} on the shelf are left out: ask plan.")
    swing = _widest_swing(shelf)
    if swing is not None and swing < OUTSIDES[units][-1]:
        said.append(f"Outsides over the cross slide's swing of {show.length(swing)} are left out.")
    return tuple(said)
