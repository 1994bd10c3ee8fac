"""What a wall chart takes for granted, and where its numbers come from."""

from __future__ import annotations

from collections.abc import Sequence

from borewright.answer.chart import ChartBar
from borewright.answer.records import Assumption
from borewright.planning.chart.chart_cells import Gripped
from borewright.planning.chart.chart_hub import HUB_LENGTH, HUB_OUTSIDE
from borewright.planning.shop.shop import Shop
from borewright.quantities.show import Show
from borewright.reference.library import Tables

Said = tuple[Assumption, ...]


def chart_assumed(
    shop: Shop,
    bars: tuple[ChartBar, ...],
    held: Sequence[Gripped],
    units: str,
    tables: Tables,
) -> Said:
    """Every assumption of the chart, each with the id of its source."""
    show = Show("mm" if units == "mm" else "inch")
    return (
        *_of_the_hub(tables),
        *_of_the_travel(shop, show, tables),
        *(_of_the_cut(held, show, tables) if held else ()),
        *_of_the_ends(bars),
    )


def chart_sources(shop: Shop, held: Sequence[Gripped], tables: Tables) -> tuple[str, ...]:
    """Every source behind the chart as `id: citation`."""
    used = ("press_travel", "tool_clearance", "dog_clearance", "touch_push", "edge_factor")
    ids = {tables.allowance(name).source for name in used}
    ids |= {s for m in shop.mandrels for s in m.sources} | {s for h in held for s in h.sources}
    ids |= {tables.threshold(q).source for q in ("slip", "crack", "yield", "push")}
    ids |= {tables.formula(f).source for f in ("bore_window", "kienzle_force", "slip_demand")}
    ids |= {shop.press_force.source}
    ids -= {"stated", ""}
    return tuple(f"{i}: {tables.source(i).citation}" for i in sorted(ids))


def _of_the_hub(tables: Tables) -> Said:
    reamed = tables.roughness("reamed")
    return (
        Assumption(
            "hub",
            f"{HUB_OUTSIDE:g} bores across and {HUB_LENGTH:g} bores long, sound and solid; "
            "web and rim are not counted, they only add grip",
            "ours",
        ),
        Assumption("bore", "straight, round, reamed, pressed for the first time", reamed.source),
        Assumption(
            "bore and mandrel", "a wiped film of oil", tables.friction("steel").mu_on.source
        ),
    )


def _of_the_travel(shop: Shop, show: Show, tables: Tables) -> Said:
    push, tool, dog, travel = (
        tables.allowance(n)
        for n in ("touch_push", "tool_clearance", "dog_clearance", "press_travel")
    )
    return (
        Assumption("usual travel past touch", show.length(travel.best), travel.source),
        Assumption(
            "touch", f"where it stops under a light push of {show.force(push.best)}", push.source
        ),
        Assumption("kept free at the dog", show.length(dog.best), dog.source),
        Assumption("kept free for the tool", show.length(tool.best), tool.source),
        Assumption(
            "press",
            f"{shop.press_name}, about {show.force(shop.press_force.best)}",
            shop.press_force.source,
        ),
    )


def _of_the_cut(held: Sequence[Gripped], show: Show, tables: Tables) -> Said:
    edge, nose, wear, chip = (
        tables.cutting_correction(n)
        for n in ("edge_angle", "nose_radius", "tool_wear", "least_chip")
    )
    skin = tables.allowance("skin_depth")
    materials = dict.fromkeys(h.column.material for h in held)
    tools = sorted({tables.cut_defaults(m).tool for m in materials})
    named = " or ".join("high-speed steel" if t == "hss" else t for t in tools)
    slip, feed_source = tables.threshold("slip"), tables.cut_defaults(next(iter(materials))).source
    return (
        Assumption("feed", "the finest usual roughing feed of these materials", feed_source),
        Assumption("cut", "turning, fed towards the headstock and the large end", "od1645"),
        Assumption(
            "tool",
            f"{named}, edge angle {show.angle(edge.best)} (ISO 3002), part worn",
            wear.source,
        ),
        Assumption("nose of the tool", show.length(nose.best), nose.source),
        Assumption(
            "holds",
            f"at least {slip.yes_likely:g} times what the cut asks in the likely case, and "
            f"{slip.yes_low:g} times in the poor case (1 in 20)",
            slip.source,
        ),
        Assumption(
            "first cut on a casting",
            f"gets under its skin, {show.length(skin.low)} at least: a lesser depth here is marked and will not do",
            skin.source,
        ),
        Assumption(
            "thin chips", f"under {show.length(chip.best)} the force law is stretched", chip.source
        ),
    )


def _of_the_ends(bars: tuple[ChartBar, ...]) -> Said:
    guessed = [b.mandrel for b in bars if not b.as_stated]
    if not guessed:
        return ()
    who = "all of them" if len(guessed) == len(bars) else f"{len(guessed)} of {len(bars)}, marked *"
    return (
        Assumption(
            "mandrels not measured",
            f"{who}: small end half a thou under size below 1 in, a thou from 1 in; measure both ends",
            "practice",
        ),
        Assumption("their taper, where not stated", "0.006 in/ft (1:2000)", "tm-1-420"),
        Assumption(
            "their ground length, where not stated", "as in our table of plain mandrels", "ours"
        ),
    )
