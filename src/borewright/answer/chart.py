"""What the wall chart of a shop's own shelf says, as frozen records in SI.

A chart answers two questions at a glance: which mandrel takes this bore and where it touches, and
how deep a cut holds on a wheel of this size.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Assumption
from borewright.quantities.si import Metre, Newton, Ratio


@dataclass(frozen=True, slots=True)
class TouchMark:
    """A straight bore, and what a rule reads from large-end face to leading face at touch."""

    bore: Metre
    reading: Metre


@dataclass(frozen=True, slots=True)
class ChartBar:
    """One mandrel: go and not-go bore, marks where bores touch; no window where it is too short.

    `reading_go` and `reading_not_go` are the rule readings at which those two bores touch.
    `as_stated` False: its ends are those of the table of plain mandrels, not its own.
    """

    mandrel: str
    nominal: Metre
    hub_length: Metre
    bore_window: tuple[Metre, Metre] | None
    overall_length: Metre
    end_length: Metre
    ground_length: Metre
    reading_go: Metre
    reading_not_go: Metre
    marks: tuple[TouchMark, ...]
    as_stated: bool


@dataclass(frozen=True, slots=True)
class ChartGap:
    """Bores between two ends that no mandrel of the shelf takes."""

    low: Metre
    high: Metre


@dataclass(frozen=True, slots=True)
class ChartColumn:
    """One mandrel and one material: how far to press (m past touch), what stops it, likely push."""

    mandrel: str
    nominal: Metre
    material: str
    material_name: str
    press: Metre
    limited_by: str
    push: Newton


@dataclass(frozen=True, slots=True)
class ChartCell:
    """The deepest cut whose slip question is yes; None where no cut worth setting is.

    Margins are those of this depth, likely and poor case. `or_more`: the chart stops there, the
    grip does not. `leaves_skin`: the depth is too little to get under the skin of a casting.
    """

    mandrel: str
    material: str
    outside: Metre
    depth: Metre | None
    margin: Ratio | None
    margin_low: Ratio | None
    or_more: bool
    leaves_skin: bool = False


@dataclass(frozen=True, slots=True)
class Chart:
    """The whole chart. `cells` go by outside, then by column; `units` is what is shown first.

    `skin_depth`: the least depth that gets under the skin of a casting.
    """

    title: str
    units: str
    press: Metre
    feed: Metre
    depth_step: Metre
    skin_depth: Metre
    bars: tuple[ChartBar, ...]
    gaps: tuple[ChartGap, ...]
    columns: tuple[ChartColumn, ...]
    outsides: tuple[Metre, ...]
    cells: tuple[ChartCell, ...]
    not_shown: tuple[str, ...]
    assumed: tuple[Assumption, ...]
    sources: tuple[str, ...]
