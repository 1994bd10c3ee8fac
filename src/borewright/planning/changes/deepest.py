"""The deepest cut with the usual reserve, pressed as far as bore, press and room allow."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Cut, Figure, Verdict
from borewright.cutting.demand import demand_of
from borewright.cutting.knock import knock_of
from borewright.cutting.stock import deepest_pass
from borewright.mechanics.spread import likely, low_end
from borewright.planning.choice.candidates import Weighed
from borewright.planning.questions.slip import HardestCut, deepest, hardest_cut
from borewright.planning.taper.travel import crack_share
from borewright.planning.weighing.figures import figure, given
from borewright.planning.weighing.margins import slip_margins
from borewright.quantities.si import Metre

ASKED_FIRST = ("bore", "seat", "push")
"""Where one of these is a no the work does not go on, and no cut holds."""


@dataclass(frozen=True, slots=True, eq=False)
class Deepest:
    """A depth (m) of one pass, and how it came about.

    `hard`: None where no cut holds at all, and where the cut is not taken on the mandrel.
    """

    depth: Metre
    wall: Metre
    hard: HardestCut | None
    weighed: Weighed | None


def reference_cut(weighed: Weighed) -> Cut | None:
    """The cut of the lathe that asks most: depths are compared for it; None where nothing is turned."""
    hard = hardest_cut(weighed.trial).cut
    if hard.on_lathe:
        return hard
    turned = [c for c in weighed.trial.cuts if c.on_lathe]
    return max(turned, key=lambda c: c.depth * c.diameter, default=None)


def deepest_of(weighed: Weighed | None, cut: Cut) -> Deepest:
    """The depth of this cut (its feed, its diameter) that would just be a yes on this hold."""
    if weighed is None or not _goes_on(weighed):
        return Deepest(0.0, 0.0, None, weighed)
    trial = weighed.trial
    job, grip = trial.job, trial.chosen.strongest
    demand = demand_of(cut, job.work.material, trial.tables, knock_of(cut, job, trial.tables))
    hard = HardestCut(cut, demand, slip_margins(grip, demand))
    wall = deepest_pass(job, trial.tables)
    return Deepest(min(deepest(hard, trial), wall), wall, hard, weighed)


def rough_in_chuck(before: Deepest, best: Weighed | None, after: Weighed) -> Deepest:
    """The usual roughing cut, as deep as the wall bears: the chuck drives it, and is not weighed.

    Never less than before: what held on the mandrel may still be done there.
    """
    trial = (best or after).trial
    usual = trial.tables.cut_defaults(trial.job.work.material).rough_depth
    wall = deepest_pass(trial.job, trial.tables)
    return Deepest(max(before.depth, min(usual, wall)), wall, None, after)


def _goes_on(weighed: Weighed) -> bool:
    """Whether it can be pressed on, and its bore stands a travel at all."""
    if any(weighed.question(name).verdict is Verdict.NO for name in ASKED_FIRST):
        return False
    trial = weighed.trial
    forbidden = weighed.question("crack").margin == 0
    return not forbidden and crack_share(trial.chosen.strongest, trial.hold, trial.tables) >= 1


def depth_figure(name: str, found: Deepest) -> Figure:
    """The depth with the numbers it comes from; bare where no cut holds, or a chuck takes it."""
    if found.hard is None or found.weighed is None:
        return figure(name, found.depth, "m", "depth", "", (), ("ours",) if found.depth else ())
    threshold = found.weighed.trial.tables.threshold("slip")
    margin = found.hard.margin
    inputs = (
        given("depth", found.hard.cut.depth, "m", "depth"),
        given("likely margin", likely(margin)),
        given("poor-case margin", low_end(margin)),
        given("margin for yes", threshold.yes_likely),
        given("poor-case margin for yes", threshold.yes_low),
        given("what the wall bears", found.wall, "m", "depth"),
    )
    sources = (threshold.source,)
    return figure(name, found.depth, "m", "depth", "deepest_allowed", inputs, sources)
