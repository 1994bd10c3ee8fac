"""How far to press: far enough for the cut, not so far that the bore is hurt or the press stalls.

The travel is a decision, in steps that a rule can read. The longest travel allowed is the least of
what the bore stands, what the press can push, the room on the mandrel, and where hands usually end
up. The shortest wanted is what the cut needs, and no less than the usual least or a full bore.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from borewright.answer.held import Drive
from borewright.answer.records import Cut, Demand, Draws, TaperGrip, Verdict
from borewright.answer.streams import Stream, positive
from borewright.cutting.schedule import turning_is_planned
from borewright.holding.taper.plain_taper import TaperHold
from borewright.job.records import Job
from borewright.mechanics.inverse import where_it_reaches_by_rows
from borewright.mechanics.spread import likely, low_end
from borewright.planning.weighing.judge import judge, share_of_yes
from borewright.planning.weighing.margins import bore_margins, driven_by, rock_margins, slip_margins
from borewright.planning.weighing.power import power_share
from borewright.planning.weighing.served import cuts_and_demands, depth_shares
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

BORE = "the bore"
"""Said where the bore stands no more travel. A cut that would then slip is planned with the travel it
needs, so that the crack question shows what the cut asks of the bore and gives the verdict."""

PRESS = "the press"
"""Said where what presses can push no further."""

ROOM = "the room left on the mandrel"
"""Said where the leading face would come too near the dog."""

EASY, MOST_OF_IT = 1.5, 0.68
"""A bore whose margin is less than EASY times what a yes asks is filled to MOST_OF_IT only (ours)."""

RULE_STEP = {"inch": 0.0254 / 16, "mm": 0.001}
"""Travel is chosen in these steps (m): a sixteenth, or a millimetre."""


class Ladder:
    """The grips at every step of travel, each worked out when first asked for."""

    def __init__(self, hold: TaperHold, start: Metre, step: Metre, count: int) -> None:
        self._hold, self._start, self._step, self._count = hold, start, step, count
        self._known: dict[int, TaperGrip] = {}

    def __len__(self) -> int:
        return self._count

    def __getitem__(self, rung: int) -> TaperGrip:
        if rung not in self._known:
            self._known[rung] = self._hold.grip(self.setting(rung))
        return self._known[rung]

    def setting(self, rung: int) -> Metre:
        """The travel of a step (m)."""
        return self._start + (rung + 1) * self._step

    def first(self, holds: Callable[[TaperGrip], bool]) -> int:
        """The lowest rung where `holds` is true, one past the top where it never is.

        More travel only ever grips, pushes and strains more, so what holds once holds from there up.
        """
        return bisect_left(range(self._count), True, key=lambda rung: holds(self[rung]))

    def past(self, least: Metre) -> int:
        """The lowest rung whose travel is more than this (m): no grip need be worked out for that."""
        return bisect_right(range(self._count), least, key=self.setting)

    def at_least(self, least: Metre) -> int:
        """The lowest rung whose travel is this (m) or more."""
        return bisect_left(range(self._count), least, key=self.setting)


@dataclass(frozen=True, slots=True, eq=False)
class Chosen:
    """A travel with its grip, and the cuts it serves. `press` is measured from the hand's touch.

    `strongest`: the grip at the longest travel that bore, press and room allow.
    """

    travel: Metre
    press: Metre
    grip: TaperGrip
    cuts: tuple[Cut, ...]
    demands: tuple[Demand, ...]
    limited_by: str
    past_bore: bool
    strongest: TaperGrip


def choose(
    job: Job,
    hold: TaperHold,
    tables: Tables,
    force: Range,
    room: Metre,
    hand: Metre,
    drive: Drive | None = None,
) -> Chosen:
    """The travel for one hold.

    `force`: what the press gives (N); `room`: travel left on the mandrel (m); `hand`: travel that
    the hand's own push has made (m); `drive`: what takes the torque off the friction, if anything.
    """
    step = RULE_STEP[job.units]
    usual = tables.allowance("press_travel")
    grips = Ladder(hold, hand, step, max(1, round(usual.high / step)))
    stops = _stops(grips, hold, tables, press_draws(force), room)
    cuts, demands = _cuts_served(job, hold.leading, grips[stops.cap], tables, drive)
    wanted = _shortest(grips, demands, hold, tables, usual)
    index = min(stops.cap, wanted)
    steady = _teeth_steady(grips, cuts, demands, hold, tables)
    if index < steady <= stops.cap:
        index = steady
    if stops.reason == BORE and _slip_is_no(grips[index], demands, tables):
        index = min(wanted, stops.cap_without_bore)
    past_bore = index > stops.cap
    limit = stops.reason if wanted > stops.cap else ""
    grip = grips[index]
    strongest = grips[stops.cap]
    return Chosen(
        grip.setting, grip.setting - hand, grip, cuts, demands, limit, past_bore, strongest
    )


def hand_travel(hold: TaperHold, tables: Tables) -> Metre:
    """How far (m) the light push that defines touch has itself pressed the work."""
    push = tables.allowance("touch_push").best

    return where_it_reaches_by_rows(hold.light_pushes, push, 0.0, 0.02) or 0.0


def press_draws(force: Range) -> Draws:
    """What the press gives, as draws (N)."""
    return positive(force.low, force.best, force.high, Stream.RESULTANT)


def slip_share(grip: TaperGrip, demands: tuple[Demand, ...], tables: Tables) -> float:
    """At least 1 where every cut's slip margin is a yes."""
    shares = []
    for demand in demands:
        m = slip_margins(grip, demand)
        shares.append(share_of_yes("slip", likely(m), low_end(m), tables))
    return min(shares)


def crack_share(grip: TaperGrip, hold: TaperHold, tables: Tables) -> float:
    """At least 1 where the bore's margin is a yes."""
    m = bore_margins(grip, hold.facts)
    question = "crack" if hold.facts.brittle else "yield"
    return share_of_yes(question, likely(m), low_end(m), tables)


def push_share(grip: TaperGrip, force: Draws, tables: Tables) -> float:
    """At least 1 where the press's margin is a yes."""
    m = press_margins(grip, force)
    return share_of_yes("push", likely(m), low_end(m), tables)


def press_margins(grip: TaperGrip, force: Draws) -> Draws:
    """What the press gives over the push needed; a push below 1 N counts as 1 N."""
    return np.asarray(force / np.maximum(grip.push_on, 1.0))


@dataclass(frozen=True, slots=True)
class _Stops:
    """Indices of the longest travel allowed, with and without regard to the bore, and what stops it."""

    cap: int
    cap_without_bore: int
    reason: str


def _stops(grips: Ladder, hold: TaperHold, tables: Tables, force: Draws, room: Metre) -> _Stops:
    """What stops the travel, and where."""
    last = len(grips) - 1
    stalls = {
        BORE: grips.first(lambda g: crack_share(g, hold, tables) < 1),
        PRESS: grips.first(lambda g: push_share(g, force, tables) < 1),
        ROOM: grips.past(room),
    }
    reason = min(stalls, key=lambda name: stalls[name])
    others = min(index for name, index in stalls.items() if name != BORE)
    cap = stalls[reason] - 1
    return _Stops(
        max(0, min(cap, last)),
        max(0, min(others - 1, last)),
        reason if cap < last else "the usual longest travel",
    )


def _slip_is_no(grip: TaperGrip, demands: tuple[Demand, ...], tables: Tables) -> bool:
    """True where some cut's slip margin is a no."""
    margins = [slip_margins(grip, d) for d in demands]
    verdicts = [judge("slip", likely(m), low_end(m), tables) for m in margins]
    return Verdict.NO in verdicts


def _cuts_served(
    job: Job, leading: str, longest: TaperGrip, tables: Tables, drive: Drive | None
) -> tuple[tuple[Cut, ...], tuple[Demand, ...]]:
    """The deepest usual cuts that grip and lathe serve; the lightest if none is."""
    shares = depth_shares(job, tables) if turning_is_planned(job, tables) else (1.0,)
    for share in shares:
        cuts, plain = cuts_and_demands(job, tables, share, leading)
        demands = with_drive(plain, drive)
        turned = tuple(d for c, d in zip(cuts, demands, strict=True) if c.on_lathe)
        serves = not turned or slip_share(longest, turned, tables) >= 1
        if serves and power_share(cuts, demands, job.shelf.machine, tables) >= 1:
            break
    return cuts, demands


def with_drive(demands: tuple[Demand, ...], drive: Drive | None) -> tuple[Demand, ...]:
    """The demands with their torque on a positive drive, where there is one."""
    if drive is None or drive.torque is None:
        return demands
    return tuple(driven_by(demand, drive.torque) for demand in demands)


def _teeth_steady(
    grips: Ladder,
    cuts: tuple[Cut, ...],
    demands: tuple[Demand, ...],
    hold: TaperHold,
    tables: Tables,
) -> int:
    """Index of the shortest travel with which no cutting of teeth rocks the work; 0 without any."""
    teeth = [d for c, d in zip(cuts, demands, strict=True) if c.space is not None]
    if not teeth:
        return 0

    def steady(grip: TaperGrip) -> bool:
        margins = (rock_margins(hold, grip, d) for d in teeth)
        return all(share_of_yes("rock", likely(m), low_end(m), tables) >= 1 for m in margins)

    return grips.first(steady)


def _shortest(
    grips: Ladder, demands: tuple[Demand, ...], hold: TaperHold, tables: Tables, usual: Range
) -> int:
    """Index of the shortest travel that serves the cuts and fills the bore, within the usual.

    A bore that a full length would strain hard is not filled for its own sake: most of it will do.
    """
    least = min(max(usual.low, hold.length), usual.high)
    serves = grips.first(lambda g: slip_share(g, demands, tables) >= 1)
    fills = grips.at_least(least)
    strained = grips[min(fills, len(grips) - 1)]
    if crack_share(strained, hold, tables) < EASY:
        enough = grips.first(lambda g: likely(g.contact_length) >= MOST_OF_IT * hold.bears)
        fills = min(fills, max(enough, grips.at_least(usual.low)))
    return max(serves, fills)
