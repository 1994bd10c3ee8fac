"""Whether an answer leaves nothing to be changed: a yes in which the grip does not keep the cuts light."""

from __future__ import annotations

from borewright.answer.records import Cut, Verdict
from borewright.cutting.stock import deepest_pass
from borewright.planning.changes.deepest import deepest_of, reference_cut
from borewright.planning.choice.candidates import Weighed

LIGHT = 0.5
"""A yes whose deepest cut is less than this share of the usual roughing cut still has its trouble (ours)."""


def plain_yes(best: Weighed) -> bool:
    """A yes in which the grip does not keep the cuts light."""
    if best.verdict is not Verdict.YES:
        return False
    cut = reference_cut(best)
    return cut is None or bool(best.trial.job.cuts) or not _kept_light(best, cut)


def _kept_light(best: Weighed, cut: Cut) -> bool:
    trial = best.trial
    usual = trial.tables.cut_defaults(trial.job.work.material)
    wanted = min(usual.rough_depth, deepest_pass(trial.job, trial.tables))
    # A shallow cut at a coarse feed is not light, so depth counts with its feed.
    least = LIGHT * wanted * min(1.0, usual.rough_feed / cut.feed)
    return cut.depth < least and deepest_of(best, cut).depth < least
