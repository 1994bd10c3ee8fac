"""True, for a hold of any way but the taper: how far rim runs out to bore, and by which shares."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Figure, Question, Verdict
from borewright.mechanics.spread import likely, low_end
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.weighing.figures import spread, times
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.trueness import runout_figures, worst_figure

HARDLY = 1e-7
"""Runouts (m) below this are nothing; ours."""


def ask_held_true(trial: HeldTrial) -> Question:
    """Margin: whole reading allowed over that expected; the worst case is said beside it."""
    stated, usual = trial.job.work.finished.runout, trial.tables.allowance("usual_runout")
    allowed = usual.best if stated is None else stated
    runout = np.maximum(trial.grip.runout, HARDLY)
    margin = allowed / runout
    best, low, show = likely(margin), low_end(margin), trial.show
    found = judge("true", best, low, trial.tables)
    if found is Verdict.NO and stated is None:
        found = Verdict.CARE
    shares = _shares_of_runout(trial)
    worst = f" (at worst, all in line, {show.small(shares[0].best)})" if shares else ""
    return Question(
        "true",
        found,
        best,
        low,
        f"Expect the rim to run out about {show.small(likely(runout))} to the bore, whole reading{worst}; {show.small(allowed)} is "
        f"{'taken as ' if stated is None else ''}allowed, {times(best)} that.",
        trial.held.truer,
        (spread("runout", runout, "m", "small", ""), *shares),
        (trial.tables.threshold("true").source, *(() if stated else (usual.source,))),
    )


def _shares_of_runout(trial: HeldTrial) -> tuple[Figure, ...]:
    """Worst case and arrows anywhere round; none where one share is all there is."""
    throws, sources = trial.grip.throws, trial.held.sources
    if len(throws) < 2:
        return ()
    return (worst_figure(throws, sources), *runout_figures(throws, sources))
