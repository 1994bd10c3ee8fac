"""Rock: does the cut tilt the work on its grip."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Demand, Figure, Question, Verdict
from borewright.mechanics.spread import likely, low_end
from borewright.planning.figures import given, spread, times
from borewright.planning.judge import judge
from borewright.planning.margins import rock_arm, rock_margins, tilt_of
from borewright.planning.trial import Trial


def ask_rock(trial: Trial) -> Question:
    """Margin: the moment at which the grip lifts at one end over the moment of the worst cut."""
    length = trial.hold.length
    worst = min(trial.demands, key=lambda d: likely(rock_margins(trial.grip, d, length)))
    margin = rock_margins(trial.grip, worst, length)
    best, low = likely(margin), low_end(margin)
    return Question(
        "rock",
        judge("rock", best, low, trial.tables),
        best,
        low,
        f"The grip stands {times(best)} the tilt of the worst cut, {times(low)} in the poor case (1 in 20).",
        _changes(trial, worst),
        _figures(trial, worst),
        (trial.tables.threshold("rock").source,),
    )


def rock_verdict(trial: Trial, demand: Demand) -> Verdict:
    """The answer for one cut by itself."""
    margin = rock_margins(trial.grip, demand, trial.hold.length)
    return judge("rock", likely(margin), low_end(margin), trial.tables)


def _changes(trial: Trial, worst: Demand) -> str:
    cut = next(c for c in trial.cuts if c.id == worst.cut)
    if cut.kind == "gear":
        left_open = any(w.kind == "gear" and w.depth is None for w in trial.job.cuts)
        passes = (
            "two or three passes do not mend it, more passes may" if left_open else "more passes"
        )
        return f"A lighter feed, more travel, or a longer hub; {passes}."
    return "More travel, a longer hub, a lighter cut, or cutting nearer the middle of the grip."


def _figures(trial: Trial, demand: Demand) -> tuple[Figure, ...]:
    arm = rock_arm(trial.grip, trial.hold.length)
    moment = tilt_of(demand, arm)
    asked = (
        given("passive force", likely(demand.radial), "N"),
        given("thrust", likely(np.abs(demand.axial)), "N"),
        given("cutting force", likely(demand.tangential), "N"),
        given("arm", arm, "m"),
        given("radius", demand.radius, "m"),
    )
    grip = (
        given("normal force", likely(trial.grip.normal_force) * demand.grip_left, "N"),
        given("contact length", likely(trial.grip.contact_length), "m"),
        given("moment", likely(moment), "N·m"),
    )
    return (
        spread("rocking_moment", moment, "N·m", "torque", "rock_moment", asked),
        spread(
            "rock_margin",
            rock_margins(trial.grip, demand, trial.hold.length),
            "",
            "",
            "rock_margin",
            grip,
        ),
    )
