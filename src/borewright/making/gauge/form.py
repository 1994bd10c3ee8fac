"""The form of a plug gauge: ends, pilot, necks, handle, mark, bar and center holes."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import Literal

from borewright.making.cannot import Cannot
from borewright.making.center_holes import CenterCut, center_for
from borewright.making.facts import best_of
from borewright.making.gauge.asked import GaugeAsked
from borewright.making.shop_sizes import down_to_shop, to_dial, to_rule, up_to_shop
from borewright.quantities.show import Show
from borewright.quantities.si import Kilogram, Metre
from borewright.reference.library import Tables

STEEL = "steel-1018"
"""Bar of the shop: its weight and its warmth count, whatever steel it is."""
TOUCH: Metre = 1e-9
"""A step so little short of the least is the least."""


@dataclass(frozen=True, slots=True)
class GaugeForm:
    """Lengths and diameters in m. `step_long`: of one step, 0 where there are two ends.

    `gauging`: pilot and what gauges, to the neck. `reach`: how deep it goes until the handle stops
    it; None where the handle goes in too.
    """

    go_long: Metre
    not_go_long: Metre
    step_long: Metre
    step_gap: Metre
    gauging: Metre
    reach: Metre | None
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
    units = asked.units
    pilot_long, neck_long = to_rule(own("pilot_long"), units), to_rule(own("neck_long"), units)
    gap, handle = to_rule(own("step_gap"), units), _handle(size, units, tables)
    go = _go_long(asked, handle > size, pilot_long, tables)
    if isinstance(go, Cannot):
        return go
    step = _step_long(asked, steps, (pilot_long, gap), tables) if steps else 0.0
    if isinstance(step, Cannot):
        return step
    handle_long = to_rule(own("handle_long"), units)
    not_go = to_rule(own("not_go_long") * go, units)
    gauging = pilot_long + (steps * step + (steps - 1) * gap if steps else go)
    length = gauging + neck_long + handle_long + (0.0 if steps else not_go + neck_long)
    over = tables.making_fact("bar_over").best
    density = tables.material_range(STEEL, "density").best
    body = handle**2 * handle_long + size**2 * (length - handle_long)
    neck = to_rule(max(size - own("neck_under"), own("neck_share") * size), units)
    return GaugeForm(
        go_long=go,
        not_go_long=not_go,
        step_long=step,
        step_gap=gap,
        gauging=gauging,
        reach=gauging + neck_long if handle > size else None,
        pilot_long=pilot_long,
        pilot=to_dial(size - own("pilot_under"), units),
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


def goes_deep(asked: GaugeAsked, form: GaugeForm) -> Metre | None:
    """How deep it goes (m): to the handle or the bottom, whichever stops it; None right through."""
    bottom = asked.depth if asked.blind else None
    return min((x for x in (form.reach, bottom) if x is not None), default=None)


def _handle(size: Metre, units: Literal["inch", "mm"], tables: Tables) -> Metre:
    """The handle (m): plainly thicker than the bore, or plainly thinner where that is too thick."""
    own = best_of(tables, "plug_facts")
    thick = up_to_shop(max(size + own("handle_over"), own("handle_least")), units)
    if thick <= own("handle_most"):
        return thick
    return down_to_shop(min(size - own("handle_over"), own("handle_most")), units)


def _go_long(asked: GaugeAsked, stopped: bool, pilot: Metre, tables: Tables) -> Metre | Cannot:
    """Length of the going end (m): usual, as long as the bore where the handle stops it, no deeper
    than a blind one."""
    own, units = best_of(tables, "plug_facts"), asked.units
    most = own("go_long_most")
    usual = to_rule(min(max(own("go_long") * asked.low, own("go_long_least")), most), units)
    if asked.depth is None:
        return usual
    if not asked.blind:
        return max(usual, min(up_to_shop(asked.depth, units), most)) if stopped else usual
    least, room = (
        up_to_shop(own("step_long_of_use"), units),
        asked.depth - pilot - own("blind_clear"),
    )
    if room < least and not asked.stepped:
        return Cannot(
            f"A blind bore {Show(units).length(asked.depth)} deep has no room for a pilot and a going end of "
            f"{Show(units).length(least)}, the shortest of use.",
            "Measure it with a bore gauge set in a ring.",
        )
    return min(usual, max(down_to_shop(room, units), least))


def _step_long(
    asked: GaugeAsked, steps: int, beside: tuple[Metre, Metre], tables: Tables
) -> Metre | Cannot:
    """Length of one step (m), as short as the bore's depth asks; `beside`: pilot and groove (m)."""
    own, units, (pilot, gap) = best_of(tables, "plug_facts"), asked.units, beside
    usual = to_rule(
        min(max(own("step_long") * asked.low, own("step_long_least")), own("step_long_most")),
        units,
    )
    if asked.depth is None:
        return usual
    least = up_to_shop(own("step_long_of_use"), units)
    clear = own("blind_clear") if asked.blind else 0.0
    room = (asked.depth - clear - pilot - (steps - 1) * gap) / steps
    if room >= least - TOUCH:
        return min(usual, max(down_to_shop(room, units), least))
    if not asked.blind:
        return least
    show = Show(units)
    return Cannot(
        f"{steps} steps of {show.length(least)}, the shortest of use, with pilot and grooves ask for a bore "
        f"{show.length(clear + pilot + steps * least + (steps - 1) * gap)} deep; this blind one is {show.length(asked.depth)}.",
        "Ask for fewer with --steps, or make a go and not-go plug.",
    )
