"""Speed: does everything run slow enough, and has the lathe the power in that gear."""

from __future__ import annotations

import math

from borewright.answer.records import Question, Verdict
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.paces import Pace, pace_figures, paces
from borewright.planning.weighing.power import Pull, hardest_pull, power_figures, power_words
from borewright.planning.weighing.rim_speed import rim_figures
from borewright.planning.weighing.turned import Turned


def ask_speed(trial: Turned) -> Question:
    """Margin: the highest usual speed over the speed used, the worst of turning, wheel, work and cutter.

    Turning is held against the usual speeds for its metal, the rim of a wheel, the work under it and
    a form cutter each against their own. Where the lathe's power is stated and is scarcer than all
    of them, the margin is that of the power. A speed that was asked for is with care for longer than
    one that the plan chose, but not without end, nor where the lathe has not got it.
    """
    found = paces(trial)
    pull = hardest_pull(trial.cuts, trial.demands, trial.job.shelf.machine, trial.tables)
    power = Verdict.YES if pull is None else judge("power", pull.margin, pull.margin, trial.tables)
    if pull is not None and (not found or power.rank > found[0].verdict.rank):
        return _of_power(trial, pull, power, found)
    return _of_pace(trial, found[0], found, pull)


def _of_power(trial: Turned, pull: Pull, verdict: Verdict, found: tuple[Pace, ...]) -> Question:
    return Question(
        "speed",
        verdict,
        pull.margin,
        pull.margin,
        power_words(pull, trial.show),
        "A shallower pass, a finer feed, the next slower speed, or a lathe with more power.",
        (
            *(pace_figures(found[0]) if found else ()),
            *power_figures(pull, trial.tables),
            *rim_figures(trial),
        ),
        (trial.tables.threshold("power").source,),
    )


def _of_pace(trial: Turned, worst: Pace, found: tuple[Pace, ...], pull: Pull | None) -> Question:
    said = [p.reason for p in found if p is worst or p.verdict is not Verdict.YES]
    margin = worst.margin if math.isfinite(worst.margin) else math.inf
    return Question(
        "speed",
        worst.verdict,
        margin,
        margin,
        " ".join([*said, *([] if pull is None else [power_words(pull, trial.show)])]),
        "Nothing needs to." if worst.verdict is Verdict.YES else worst.mend,
        (*pace_figures(worst), *power_figures(pull, trial.tables), *rim_figures(trial)),
        (trial.tables.threshold("speed").source, worst.source),
    )
