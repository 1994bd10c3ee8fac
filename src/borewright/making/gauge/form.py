"""The form of a plug gauge: ends, pilot, necks, handle, mark, bar and center holes."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from borewright.making.cannot import Cannot
from borewright.making.center_holes import CenterCut, center_for
from borewright.making.facts import best_of
from borewright.making.gauge.asked import GaugeAsked
from borewright.making.shop_sizes import to_rule
from borewright.quantities.show import Show
from borewright.quantities.si import Kilogram, Metre
from borewright.reference.library import Tables

STEEL = "steel-1018"
"""Bar of the shop: its weight and its warmth count, whatever steel it is."""


@dataclass(frozen=True, slots=True)
class GaugeForm:
    """Lengths and diameters in m. `steps`: length of one step, 0 where there are two ends."""

    go_long: Metre
    not_go_long: Metre
    step_long: Metre
    step_gap: Metre
    pilot_long: Metre
    pilot: Metre
    neck_long: Metre
    neck: Metre
    handle_long: Metre
    handle: Metre
    lead: Metre
    vent: Metre
    mark_wide: Metre
    mark_deep: Metre
    stock: Metre
    center: CenterCut | None
    length: Metre
    mass: Kilogram


def form_of(asked: GaugeAsked, steps: int, tables: Tables) -> GaugeForm | Cannot:
    """The form for a bore; `steps` 0 for two ends. `Cannot` for a plug too small or too large."""
    own, show, size = best_of(tables, "plug_facts"), Show(asked.units), asked.low
    if size < own("smallest"):
        return Cannot(
            f"A plug of {show.bore(size)} is thinner than is turned from bar.",
            "Bought pins, the one that goes and the one that does not, serve below that.",
        )
    if size > own("largest"):
        return Cannot(
            f"A plug of {show.bore(size)} weighs more than a hand feels with.",
            "Make a flat gauge, a slice of the plug, or a rod with rounded ends of the two sizes.",
        )
    go = to_rule(
        min(max(own("go_long") * size, own("go_long_least")), own("go_long_most")), asked.units
    )
    step = to_rule(
        min(max(own("step_long") * size, own("step_long_least")), own("step_long_most")),
        asked.units,
    )
    gap, neck_long = own("step_gap"), own("neck_long")
    handle_long = to_rule(own("handle_long"), asked.units)
    not_go = to_rule(own("not_go_long") * go, asked.units)
    handle = to_rule(min(max(size, own("handle_least")), own("handle_most")), asked.units)
    gauging = steps * step + (steps - 1) * gap if steps else go + not_go + neck_long
    length = own("pilot_long") + gauging + neck_long + handle_long
    over = tables.making_fact("bar_over").best
    density = tables.material_range(STEEL, "density").best
    body = handle**2 * handle_long + size**2 * (length - handle_long)
    neck = max(size - own("neck_under"), own("neck_share") * size)
    return GaugeForm(
        go_long=go,
        not_go_long=not_go,
        step_long=step,
        step_gap=gap,
        pilot_long=own("pilot_long"),
        pilot=size - own("pilot_under"),
        neck_long=neck_long,
        neck=neck,
        handle_long=handle_long,
        handle=handle,
        lead=min(own("lead"), neck / 8),
        vent=own("vent_deep") if asked.blind else 0.0,
        mark_wide=own("mark_wide"),
        mark_deep=own("mark_deep"),
        stock=tables.bar_for(max(asked.high, handle) + over, asked.units).diameter,
        center=center_for(neck, asked.units, tables),
        length=length,
        mass=density * pi / 4 * body,
    )
