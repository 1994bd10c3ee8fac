"""How far to press: far enough for the cut, not so far that the bore is hurt or the press stalls.

The travel is a decision, in steps that a rule can read. The longest travel allowed is the least of
what the bore stands, what the press can push, the room on the mandrel, and where hands usually end
up. The shortest wanted is what the cut needs, and no less than the usual least or a full bore.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from borewright.answer.records import Cut, Demand, Draws, Grip, Verdict
from borewright.answer.streams import Stream, positive
from borewright.cutting.demand import demand_of
from borewright.cutting.knock import knock_of
from borewright.cutting.load_demand import softer
from borewright.cutting.schedule import planned_cuts, turning_is_planned
from borewright.holding.plain_taper import TaperHold
from borewright.job.records import Job
from borewright.mechanics.inverse import where_it_reaches
from borewright.mechanics.spread import likely, low_end
from borewright.planning.weighing.judge import judge, share_of_yes
from borewright.planning.weighing.margins import bore_margins, rock_margins, slip_margins
from borewright.planning.weighing.power import in_gear, power_share
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

DEPTH_SHARES = (1.0, 0.75, 0.5, 0.35, 0.25)
"""Rough depths tried, as shares of the usual one, when the grip does not serve the usual one."""


class Ladder:
    """The grips at every step of travel, each worked out when first asked for."""

    def __init__(self, hold: TaperHold, start: Metre, step: Metre, count: int) -> None:
        self._hold, self._start, self._step, self._count = hold, start, step, count
        self._known: dict[int, Grip] = {}

    def __len__(self) -> int:
        return self._count

    def __getitem__(self, rung: int) -> Grip:
        if rung not in self._known:
            self._known[rung] = self._hold.grip(self._start + (rung + 1) * self._step)
        return self._known[rung]

    def first(self, holds: Callable[[Grip], bool]) -> int:
        """The lowest rung where `holds` is true, one past the top where it never is.

        More travel only ever grips, pushes and strains more, so what holds once holds from there up.
        """
        return bisect_left(range(self._count), True, key=lambda rung: holds(self[rung]))


@dataclass(frozen=True, slots=True, eq=False)
class Chosen:
    """A travel with its grip, and the cuts it serves. `press` is measured from the hand's touch.

    `strongest`: the grip at the longest travel that bore, press and room allow.
    """

    travel: Metre
    press: Metre
    grip: Grip
    cuts: tuple[Cut, ...]
    demands: tuple[Demand, ...]
    limited_by: str
    past_bore: bool
    strongest: Grip


def choose(
    job: Job, hold: TaperHold, tables: Tables, force: Range, room: Metre, hand: Metre
) -> Chosen:
    """The travel for one hold.

    `force`: what the press gives (N); `room`: travel left on the mandrel (m); `hand`: travel that
    the hand's own push has made (m).
    """
    step = RULE_STEP[job.units]
    usual = tables.allowance("press_travel")
    grips = Ladder(hold, hand, step, max(1, round(usual.high / step)))
    stops = _stops(grips, hold, tables, press_draws(force), room)
    cuts, demands = _cuts_served(job, grips[stops.cap], tables)
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

    return where_it_reaches(hold.light_push, push, 0.0, 0.02, steps=16) or 0.0


def press_draws(force: Range) -> Draws:
    """What the press gives, as draws (N)."""
    return positive(force.low, force.best, force.high, Stream.RESULTANT)


def slip_share(grip: Grip, demands: tuple[Demand, ...], tables: Tables) -> float:
    """At least 1 where every cut's slip margin is a yes."""
    shares = []
    for demand in demands:
        m = slip_margins(grip, demand)
        shares.append(share_of_yes("slip", likely(m), low_end(m), tables))
    return min(shares)


def crack_share(grip: Grip, hold: TaperHold, tables: Tables) -> float:
    """At least 1 where the bore's margin is a yes."""
    m = bore_margins(grip, hold.facts)
    question = "crack" if hold.facts.brittle else "yield"
    return share_of_yes(question, likely(m), low_end(m), tables)


def push_share(grip: Grip, force: Draws, tables: Tables) -> float:
    """At least 1 where the press's margin is a yes."""
    m = press_margins(grip, force)
    return share_of_yes("push", likely(m), low_end(m), tables)


def press_margins(grip: Grip, force: Draws) -> Draws:
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
        ROOM: grips.first(lambda g: g.setting > room),
    }
    reason = min(stalls, key=lambda name: stalls[name])
    others = min(index for name, index in stalls.items() if name != BORE)
    cap = stalls[reason] - 1
    return _Stops(
        max(0, min(cap, last)),
        max(0, min(others - 1, last)),
        reason if cap < last else "the usual longest travel",
    )


def _slip_is_no(grip: Grip, demands: tuple[Demand, ...], tables: Tables) -> bool:
    """True where some cut's slip margin is a no."""
    margins = [slip_margins(grip, d) for d in demands]
    verdicts = [judge("slip", likely(m), low_end(m), tables) for m in margins]
    return Verdict.NO in verdicts


def _cuts_served(
    job: Job, longest: Grip, tables: Tables
) -> tuple[tuple[Cut, ...], tuple[Demand, ...]]:
    """The deepest usual cuts that grip and lathe serve; the lightest if none is."""
    cuts, demands = _cuts(job, tables, 1.0)
    if not turning_is_planned(job, tables):
        return cuts, demands
    for share in _shares(job, tables):
        cuts, demands = _cuts(job, tables, share)
        turned = tuple(d for c, d in zip(cuts, demands, strict=True) if c.on_lathe)
        serves = slip_share(longest, turned, tables) >= 1
        if serves and power_share(cuts, demands, job.shelf.machine, tables) >= 1:
            break
    return cuts, demands


def _shares(job: Job, tables: Tables) -> tuple[float, ...]:
    """The shares to try: a casting's first cut must get under its skin."""
    if job.work.blank != "casting":
        return DEPTH_SHARES
    least = tables.allowance("skin_depth").low / tables.cut_defaults(job.work.material).rough_depth
    return tuple(s for s in DEPTH_SHARES if s >= least) or (1.0,)


def _cuts(job: Job, tables: Tables, share: float) -> tuple[tuple[Cut, ...], tuple[Demand, ...]]:
    cuts = planned_cuts(job, tables, share)
    demands = tuple(_demand(c, job, tables) for c in cuts)
    return in_gear(cuts, demands, job, tables), demands


def _demand(cut: Cut, job: Job, tables: Tables) -> Demand:
    demand = demand_of(cut, job.work.material, tables, knock_of(cut, job, tables))
    if cut.space is None:
        return demand
    return replace(demand, grip_left=softer(cut, job, tables).grip, goes_round=False)


def _teeth_steady(
    grips: Ladder,
    cuts: tuple[Cut, ...],
    demands: tuple[Demand, ...],
    hold: TaperHold,
    tables: Tables,
) -> int:
    """Index of the shortest travel with which no cutting of teeth rocks the work; 0 without any."""
    teeth = [d for c, d in zip(cuts, demands, strict=True) if c.space is not None]

    def steady(grip: Grip) -> bool:
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
    fills = grips.first(lambda g: g.setting >= least)
    strained = grips[min(fills, len(grips) - 1)]
    if crack_share(strained, hold, tables) < EASY:
        enough = grips.first(lambda g: likely(g.contact_length) >= MOST_OF_IT * hold.bears)
        fills = min(fills, max(enough, grips.first(lambda g: g.setting >= usual.low)))
    return max(serves, fills)
