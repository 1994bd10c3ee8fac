"""The hub that a wall chart is worked with, and how far it is pressed: as a plan would press it.

The hub alone holds: web and rim are left out, which only takes from the grip. Its proportions are
ours, counted in bores, so that one elastic shape serves every mandrel of the shelf.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.holding.taper.plain_taper import TaperHold, holds
from borewright.job.records import Bore, Job, Mandrel, Piece, Shelf, Work
from borewright.planning.taper.travel import (
    BORE,
    RULE_STEP,
    Ladder,
    crack_share,
    hand_travel,
    press_draws,
    push_share,
)
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

HUB_OUTSIDE = 2.0
HUB_LENGTH = 1.5
"""Outside and length of the hub over its bore (ours)."""


@dataclass(frozen=True, slots=True)
class Pressed:
    """How far (m) past the hand's touch the hub is pressed, and what allows no more; "" if nothing."""

    press: Metre
    limited_by: str


def hub_length(bore: Metre) -> Metre:
    """Length (m) of the hub of this bore (m)."""
    return HUB_LENGTH * bore


def hub_job(bore: Metre, material: str, shelf: Shelf, units: str) -> Job:
    """A job with just the hub: straight reamed bore, taken as known."""
    piece = Piece(0.0, hub_length(bore), HUB_OUTSIDE * bore)
    work = Work(material, (piece,), Bore(bore, 0.0, "plug gauge", "reamed"))
    return Job("chart", work, "mm" if units == "mm" else "inch", shelf)


def hub_hold(mandrel: Mandrel, job: Job, tables: Tables) -> TaperHold:
    """The hub on this mandrel; both faces are alike."""
    return holds(job, mandrel, tables)[0]


def usual_press(units: str, tables: Tables) -> Metre:
    """The usual travel past the hand's touch (m), in whole steps of a rule."""
    step = RULE_STEP["mm" if units == "mm" else "inch"]
    return round(tables.allowance("press_travel").best / step) * step


def pressed(hold: TaperHold, units: str, force: Range, tables: Tables) -> Pressed:
    """The usual travel, or as much of it as the bore stands and the press gives with a yes."""
    step = RULE_STEP["mm" if units == "mm" else "inch"]
    count = round(usual_press(units, tables) / step)
    ladder = Ladder(hold, hand_travel(hold, tables), step, count)
    stops = {
        BORE: ladder.first(lambda g: crack_share(g, hold, tables) < 1),
        "the press": ladder.first(lambda g: push_share(g, press_draws(force), tables) < 1),
    }
    reason = min(stops, key=lambda name: stops[name])
    return Pressed(stops[reason] * step, reason if stops[reason] < count else "")
