"""How wide a chip may be before the work itself chatters, however it is held.

Of the work side only: nothing here says that a cut runs quietly.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from borewright.answer.records import Cut, Demand, Draws, Figure
from borewright.answer.streams import Stream, positive
from borewright.cutting.demand import chip_taken
from borewright.mechanics.chatter import (
    chatter_depth,
    cutting_stiffness,
    facing_direction,
    rubbed_depth,
    rubbing_growth,
    turning_direction,
)
from borewright.mechanics.kienzle import Chip
from borewright.mechanics.num import Num
from borewright.mechanics.spread import likely, low_end
from borewright.planning.weighing.figures import given, spread, times
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.ranges import Range


@dataclass(frozen=True, eq=False)
class Chatter:
    """One turning or facing cut against the limit of the work side.

    `stiffness` N/m and `damping` as draws; `cutting` (Pa): force for each metre of chip width and
    each metre of its thickness; `direction`: the share of it that acts on the bending; `chip`: its
    width and thickness; `rubbing` (1/m): how much the flank damps for each metre of width.
    `margin`: widest chip over that of the cut, at the speed of the cut.
    """

    cut: Cut
    stiffness: Draws
    damping: Draws
    cutting: Draws
    direction: Draws
    chip: Chip
    rubbing: Draws

    @property
    def width(self) -> Draws:
        """The widest chip (m of engaged edge) in which the work itself stays quiet at any speed."""
        return np.asarray(chatter_depth(self.stiffness, self.damping, self._across))

    @property
    def likely_width(self) -> Metre:
        """The same in the likely case alone."""
        stiffness, damping, across = (
            float(d[0]) for d in (self.stiffness, self.damping, self._across)
        )
        return float(chatter_depth(stiffness, damping, across))

    @cached_property
    def margin(self) -> Draws:
        widest = rubbed_depth(self.stiffness, self.damping, self._across, self.rubbing)
        return np.asarray(widest / self.chip.width)

    @cached_property
    def _across(self) -> Draws:
        return self.cutting * self.direction


@dataclass(frozen=True, slots=True, eq=False)
class Swing:
    """What chatters: its stiffness (N/m, one or draws), its first frequency (Hz), of what metal."""

    stiffness: Num
    frequency: float
    material: str


def chatter_of(cut: Cut, demand: Demand, swing: Swing, tables: Tables) -> Chatter | None:
    """The work side's limit for a cut; None for no lathe tool."""
    if not cut.on_lathe:
        return None
    chip = chip_taken(cut)
    exponent = tables.kienzle(swing.material).mc.best
    cutting = cutting_stiffness(demand.tangential, chip.width * chip.thickness, exponent)
    across, edge = _directions(cut, demand, chip)
    damping = _drawn(tables.allowance("work_damping"), Stream.TOOL)
    stiff = np.broadcast_to(np.asarray(swing.stiffness, dtype=np.float64), damping.shape)
    flank = _drawn(tables.allowance("flank_rubbing"), Stream.CENTERING)
    rubs = rubbing_growth(flank, swing.frequency, cut.cutting_speed, stiff, edge)
    return Chatter(
        cut, stiff, damping, np.asarray(cutting), np.asarray(across), chip, np.asarray(rubs)
    )


def _directions(cut: Cut, demand: Demand, chip: Chip) -> tuple[Num, float]:
    """Share of the cutting stiffness that bends the bar, and how far its edge stands across it. A
    slope of 45 degrees takes half of the waves; a groove and a face take them whole."""
    if cut.kind == "edge":
        return turning_direction(demand.radial, demand.tangential, np.pi / 4), float(
            np.cos(np.pi / 4)
        )
    if cut.kind in ("turn", "crown"):
        angle = chip.effective_angle
        return turning_direction(demand.radial, demand.tangential, angle), float(np.cos(angle))
    angle = chip.effective_angle
    return facing_direction(demand.radial, demand.tangential, angle), float(np.sin(angle))


def _drawn(r: Range, stream: Stream) -> Draws:
    return positive(r.low, r.best, r.high, stream)


NO_CHIP = 1.0
"""No chip is so wide (m): the limit of a sharp square edge, which does not feel the bar at all; ours."""


def tightest(pairs: Iterable[tuple[Cut, Demand]], swing: Swing, tables: Tables) -> Chatter | None:
    """The lathe cut nearest to its limit in the poor case; None where none has one, or nothing gives."""
    if not np.isfinite(swing.stiffness).all():
        return None
    found = [chatter_of(c, d, swing, tables) for c, d in pairs]
    near = (f for f in found if f and f.likely_width < NO_CHIP)
    return min(near, key=lambda f: low_end(f.margin), default=None)


def chatter_words(chatter: Chatter) -> str:
    """The limit in a sentence; never that a cut is free of chatter."""
    best, low = likely(chatter.margin), low_end(chatter.margin)
    return (
        f"To {chatter.cut.name}, the work itself stands {times(best)} the chip before it chatters at this speed, "
        f"{times(low)} in the poor case (1 in 20). That is the work side only: top slide, saddle and spindle chatter too."
    )


def chatter_figure(chatter: Chatter, tables: Tables) -> Figure:
    """The widest chip as a figure, beside that of the cut."""
    inputs = (
        given("stiffness at the tool", likely(chatter.stiffness), "N/m"),
        given("damping ratio", likely(chatter.damping)),
        given("cutting stiffness", likely(chatter.cutting), "Pa"),
        given("share across the work", likely(chatter.direction)),
        given("chip width of the cut", chatter.chip.width, "m", "depth"),
    )
    sources = (tables.allowance("work_damping").source, "vibration-memory")
    return spread("work_side_chip", chatter.width, "m", "depth", "work_side_chip", inputs, sources)
