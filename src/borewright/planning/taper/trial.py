"""One hold with its travel chosen: everything that the questions look at."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from borewright.answer.held import Drive
from borewright.answer.records import Cut, Demand, Draws, TaperGrip
from borewright.holding.taper.measured_mandrel import window_of
from borewright.holding.taper.plain_taper import TaperHold
from borewright.job.records import Job, Mandrel
from borewright.mechanics.spread import high_end, low_end
from borewright.planning.shop.shop import Shop
from borewright.planning.taper.travel import (
    Chosen,
    choose,
    crack_share,
    hand_travel,
    press_draws,
    push_share,
)
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True, eq=False)
class Trial:
    """A hold, its travel, and the lines between which the leading face may sit (x, m)."""

    job: Job
    shop: Shop
    tables: Tables
    show: Show
    hold: TaperHold
    chosen: Chosen
    hand: Metre
    line_small: Metre
    line_large: Metre
    drive: Drive | None = None

    @property
    def mandrel(self) -> Mandrel:
        return self.hold.mandrel

    @property
    def grip(self) -> TaperGrip:
        return self.chosen.grip

    @property
    def cuts(self) -> tuple[Cut, ...]:
        return self.chosen.cuts

    @property
    def demands(self) -> tuple[Demand, ...]:
        return self.chosen.demands

    @property
    def seat(self) -> Draws:
        """x of the leading face once pressed (m)."""
        return self.hold.touch + self.chosen.travel

    @property
    def seat_band(self) -> tuple[float, float]:
        """5 % and 95 % ends of the seat (m)."""
        return low_end(self.seat), high_end(self.seat)

    @property
    def window(self) -> tuple[float, float]:
        """Smallest and largest straight bore (m) that fits with this travel and these reserves."""
        m, a = self.mandrel, self.tables.allowance
        reserves = a("tool_clearance").best, a("dog_clearance").best
        low, high = window_of(m, self.hold.length, self.chosen.travel, *reserves)
        return low - self.behind, high - self.behind

    @property
    def behind(self) -> Metre:
        """How much smaller (m) a bore is than the mandrel at its leading face when it touches: the
        taper over what stands free there, a counterbore or the depth to a hub that begins further in."""
        return self.mandrel.taper * self.hold.free_before

    @property
    def chance_to_sit(self) -> float:
        """Share of the drawn cases in which the work comes to sit between its lines."""
        seat = self.seat[1:]
        return float(np.mean((seat >= self.line_small) & (seat <= self.line_large)))

    @property
    def touch_gate(self) -> tuple[float, float]:
        """Rule readings (m, near and far) between which the hand's touch must lie to press at all."""
        press = self.chosen.press
        near = self.from_large_end(self.line_large - press)
        return near, self.from_large_end(max(self.line_small - press, self.hand))

    @property
    def seat_lines(self) -> tuple[float, float]:
        """The x (m) of the leading face, lowest and highest, when pressed from inside the gate."""
        press = self.chosen.press
        return max(self.line_small, self.hand + press), self.line_large

    def within_lines(self, low: Metre, high: Metre) -> tuple[float, float]:
        """The part of a band of x (m) that the gate lets through."""
        least, most = sorted(self.seat_lines)
        return min(max(low, least), most), min(max(high, least), most)

    @property
    def touch_is_known(self) -> bool:
        """True where the reading of the bore tells where it will touch closer than the gate does."""
        near, far = self.touch_gate
        band = high_end(self.hold.touch) - low_end(self.hold.touch)
        return band < 0.8 * (far - near)

    def from_large_end(self, x: Metre) -> Metre:
        """What a rule reads from the large-end face of the mandrel to this x (m)."""
        m = self.mandrel
        return m.ground_length + m.end_length - x


def _room(hold: TaperHold, small: Metre, large: Metre, least: Metre) -> Metre:
    """Travel left before the large-end line; without limit where it must not shorten the travel.

    A loose reading must not: the hand's touch will tell where the work is. Nor where less than half
    of the usual least is left: then the bore is too large for this mandrel, and that is the answer.
    """
    touch_band = high_end(hold.touch) - low_end(hold.touch)
    inside = small - hold.length < hold.likely_touch < large - least / 2
    return large - hold.likely_touch if inside and touch_band < (large - small) / 2 else math.inf


def make_trial(
    job: Job, shop: Shop, hold: TaperHold, tables: Tables, drive: Drive | None = None
) -> Trial:
    """Choose the travel of a hold and find the lines it may sit between."""
    m, a = hold.mandrel, tables.allowance
    small = hold.length + a("tool_clearance").best
    large = m.ground_length - a("dog_clearance").best
    hand = hand_travel(hold, tables)
    room = _room(hold, small, large, a("press_travel").low)
    chosen = choose(job, hold, tables, shop.press_force, room, hand, drive)
    show = Show(job.units)
    return Trial(job, shop, tables, show, hold, chosen, hand, small, large, drive)


def past_what(trial: Trial, travel: Metre) -> str:
    """What gives out before this travel (m), as the beginning of a clause; empty where nothing does."""
    grip, t = trial.hold.grip(travel), trial.tables
    large = trial.mandrel.ground_length - t.allowance("dog_clearance").best
    if crack_share(grip, trial.hold, t) < 1:
        return "the bore would be strained too hard"
    if push_share(grip, press_draws(trial.shop.press_force), t) < 1:
        return "what presses gives out"
    return "the mandrel ends" if trial.hold.likely_touch + travel > large else ""
