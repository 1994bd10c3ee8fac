"""The bar past the work: how far it reaches, the flat for the dog, center holes, the chuck's grip."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.making.center_holes import CenterCut, center_for
from borewright.making.facts import best_of
from borewright.making.shop_sizes import to_rule, up_to_shop
from borewright.making.soft.asked import SoftAsked
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class Ends:
    """Lengths in m. `past`: bar past each face of the work; `grip`: what the chuck holds besides.

    `head` and `tail` are the diameters of the ends. `dog_flat`: depth on radius and length, 0 in a
    chuck. `tail_center` is drilled in both cases; in a chuck for the tailstock to help.
    """

    past: Metre
    grip: Metre
    head: Metre
    tail: Metre
    dog_flat: tuple[Metre, Metre]
    head_center: CenterCut | None
    tail_center: CenterCut | None


def past_faces(asked: SoftAsked, tables: Tables) -> Metre:
    """Bar past each face of the work (m), as the plan counts it, up to what a shop cuts."""
    fact = tables.holding_fact
    past = fact("bar_end_bores").best * asked.bore + fact(f"bar_end_{asked.units}").best
    return up_to_shop(past, asked.units)


def ends_of(asked: SoftAsked, bar: Metre, reduced: Metre, tables: Tables) -> Ends:
    """The ends of a mandrel: `bar` (m) where it is left as it is, `reduced` (m) where turned."""
    past = past_faces(asked, tables)
    tail_center = center_for(reduced, asked.units, tables)
    if asked.held == "chuck":
        own, least = best_of(tables, "stub_facts"), tables.holding_fact("bar_grip_least").best
        grip = min(max(own("grip_share") * bar, least), own("grip_most"))
        grip = up_to_shop(grip, asked.units)
        return Ends(past, grip, bar, reduced, (0.0, 0.0), None, tail_center)
    made = best_of(tables, "mandrel_making")
    flat = (
        to_rule(made("flat_share") * reduced, asked.units),
        to_rule(made("flat_length_share") * past / 2, asked.units),
    )
    return Ends(past, 0.0, reduced, reduced, flat, tail_center, tail_center)
