"""The set screw in the work's hub: which has room, and what would be room where none has.

A hub thicker than is tapped through takes one all the same: its hole is opened outside the thread.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.making.cannot import Cannot
from borewright.making.facts import best_of
from borewright.making.soft.asked import SoftAsked
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.drives import SetScrew
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class HubScrew:
    """The listed screw; `opened`: how far the hole is opened from outside (m), 0 in a usual hub."""

    screw: SetScrew
    opened: Metre


def hub_screw(asked: SoftAsked, bar: Metre, tables: Tables) -> HubScrew | Cannot:
    """The screw for a bar (m); `Cannot` says the least hub that has room for the smallest."""
    wall = hub_wall(asked)
    usual = tables.set_screw_for(bar, wall, asked.hub_out)
    if usual is not None:
        return HubScrew(usual, 0.0)
    fact = tables.holding_fact
    over_bar, over_hub = fact("screw_over_bar").best, fact("screw_over_hub").best
    thin = fact("screw_wall_least").best
    most = min(over_bar * bar, over_hub * asked.hub_out, wall / thin)
    screws = sorted(tables.set_screws(), key=lambda s: s.diameter)
    fits = [s for s in screws if s.diameter <= most]
    if fits:
        tapped = best_of(tables, "stub_facts")("thick_wall_tapped") * fits[-1].diameter
        return HubScrew(fits[-1], max(wall - tapped, 0.0))
    least, show = screws[0], Show(asked.units)
    wants = [
        text
        for short, text in (
            (
                wall < thin * least.diameter,
                f"a hub {show.length(asked.bore + 2 * thin * least.diameter)} across",
            ),
            (
                over_hub * asked.hub_out < least.diameter,
                f"a hub that stands out {show.length(least.diameter / over_hub)}",
            ),
            (
                over_bar * bar < least.diameter,
                f"a bar of {show.length(least.diameter / over_bar)}",
            ),
        )
        if short
    ]
    return Cannot(
        f"There is no room for a set screw: the smallest listed, {least.id}, asks for {' and '.join(wants)} at least.",
        "A collar on the bar stops the work endwise only; turn the bar to the bore, or clamp the work by its faces.",
    )


def hub_wall(asked: SoftAsked) -> Metre:
    """Wall of the hub (m) where the screw goes in."""
    return ((asked.hub or 2 * asked.bore) - asked.bore) / 2
