"""The top slide as a fine feed: what each angle gives per division of the dial, as a table."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from borewright.answer.figure import Figure, Input
from borewright.answer.papers import Grid
from borewright.mechanics.fine_angle import along_per_slide, diameter_per_slide
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerMetre, Radian
from borewright.reference.library import Tables

TRAVEL: Final = {"inch": 0.0254, "mm": 0.025}
"""Ours: travel of the top slide over which an indicator checks its angle."""

USUAL: Final = "1 in 10"
"""The row of the table fine_feeds that a stub is turned with: a thou of slide takes a tenth."""


@dataclass(frozen=True, slots=True)
class FineFeed:
    """One setting: change of diameter and movement along the work, per travel of the slide."""

    id: str
    angle: Radian
    diameter_per_slide: MetrePerMetre
    along_per_slide: MetrePerMetre
    source: str

    def on_diameter(self, slide: Metre) -> Metre:
        """Change of diameter (m) for a slide travel (m)."""
        return self.diameter_per_slide * slide

    def slide_for(self, on_diameter: Metre) -> Metre:
        """Slide travel (m) for a change of diameter (m)."""
        return on_diameter / self.diameter_per_slide

    def indicator(self, travel: Metre) -> Metre:
        """What an indicator square to the lathe's axis reads (m) over a slide travel (m)."""
        return self.diameter_per_slide / 2 * travel


def fine_feeds(tables: Tables) -> tuple[FineFeed, ...]:
    """Every setting of the table, from the finest.

    >>> from borewright.reference import tables
    >>> half = fine_feeds(tables())[1]
    >>> half.id, round(half.on_diameter(0.1e-3) * 1e6, 2)
    ('half a degree', 1.75)
    """
    rows = tables.table("fine_feeds").rows
    feeds = (
        FineFeed(
            row.text("id"),
            row.number("angle"),
            float(diameter_per_slide(row.number("angle"))),
            float(along_per_slide(row.number("angle"))),
            row.text("source"),
        )
        for row in rows
    )
    return tuple(sorted(feeds, key=lambda feed: feed.angle))


def usual_feed(tables: Tables) -> FineFeed:
    """The setting that a stub is turned with."""
    return next(feed for feed in fine_feeds(tables) if feed.id == USUAL)


def divisions(units: Literal["inch", "mm"], tables: Tables) -> tuple[Metre, ...]:
    """Divisions of a top slide's dial (m): this shop's usual one first."""
    fact = tables.holding_fact
    inch, metric = fact("slide_division_inch").best, fact("slide_division_mm").best
    coarse = tables.ranged("stub_facts", "slide_division_coarse").best
    return (inch, metric, coarse) if units == "inch" else (metric, coarse, inch)


def feed_grid(units: Literal["inch", "mm"], last: Metre, tables: Tables) -> Grid:
    """The table for the sheet; `last` (m) is what is left on diameter when roughing is done."""
    show, dials = Show(units), divisions(units, tables)
    travel = TRAVEL[units]
    # A division is known by its own unit: a dial in thou does not count in mm.
    names = {dial: _dial_name(dial) for dial in dials}
    columns = (
        "set over",
        f"indicator over {_own(travel, units)} of slide",
        *(f"one division of {names[dial]}" for dial in dials),
        "along, for 1 of slide",
        f"slide for the last {_own_small(last, units)}",
    )
    rows = tuple(
        (
            f"{show.angle(feed.angle)} ({feed.id})",
            show.small(feed.indicator(travel)),
            *(show.small(feed.on_diameter(dial)) for dial in dials),
            f"{feed.along_per_slide:.4f}",
            show.depth(feed.slide_for(last)),
        )
        for feed in fine_feeds(tables)
    )
    notes = (
        "Changes are on diameter. The angle is from the lathe's axis, 0 where the slide runs "
        "along it.",
        "The scale is read to half a degree at best: set the angle by an indicator, its plunger "
        "square to the lathe's axis, over the travel of the second column. Push one way only.",
    )
    return Grid("Top slide as a fine feed", columns, rows, notes)


def feed_figure(feed: FineFeed, division: Metre) -> Figure:
    """The setting's angle with its rule, as the plan says it."""
    return Figure(
        "top_slide_angle",
        feed.angle,
        "rad",
        formula="fine_feed_angle",
        inputs=(
            Input("step on diameter", feed.on_diameter(division), "m", "small"),
            Input("division of the slide", division, "m", "small"),
        ),
        sources=(feed.source,),
        kind="angle",
    )


def _dial_name(dial: Metre) -> str:
    in_thou = dial / 25.4e-6
    return "0.001 in" if abs(in_thou - 1) < 1e-6 else f"{dial * 1e3:g} mm"


def _own(length: Metre, units: str) -> str:
    return f"{length / 0.0254:g} in" if units == "inch" else f"{length * 1e3:g} mm"


def _own_small(length: Metre, units: str) -> str:
    return Show("inch" if units == "inch" else "mm").small(length)
