"""Rock: does the cut tilt the work on its grip."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Demand, Draws, Figure, Question
from borewright.mechanics.rock import lift_moment, rocking_moment
from borewright.mechanics.spread import likely, low_end
from borewright.planning.figures import given, spread, times
from borewright.planning.judge import judge
from borewright.planning.trial import Trial
from borewright.quantities.si import Metre


def ask_rock(trial: Trial) -> Question:
    """Margin: the moment at which the grip lifts at one end over the moment of the worst cut."""
    arm = _arm(trial)
    held = np.asarray(lift_moment(trial.grip.normal_force, trial.grip.contact_length))
    moments = [_moment(d, arm) for d in trial.demands]
    worst = max(moments, key=likely)
    margin = np.asarray(held / worst)
    best, low = likely(margin), low_end(margin)
    return Question(
        "rock",
        judge("rock", best, low, trial.tables),
        best,
        low,
        f"The grip stands {times(best)} the tilt of the worst cut, {times(low)} in the poor case (1 in 20).",
        "More travel, a longer hub, a lighter cut, or cutting nearer the middle of the grip.",
        _figures(trial, arm, held, worst),
        (trial.tables.threshold("rock").source,),
    )


def _arm(trial: Trial) -> Metre:
    """From the middle of the grip to the farther face (m): the tool gets that far."""
    middle = likely(trial.grip.contact_length) / 2
    return max(middle, trial.hold.length - middle)


def _moment(demand: Demand, arm: Metre) -> Draws:
    return np.asarray(
        rocking_moment(demand.radial, demand.axial, demand.tangential, arm, demand.radius)
    )


def _figures(trial: Trial, arm: Metre, held: Draws, worst: Draws) -> tuple[Figure, ...]:
    demand = max(trial.demands, key=lambda d: likely(_moment(d, arm)))
    asked = (
        given("passive force", likely(demand.radial), "N"),
        given("thrust", likely(np.abs(demand.axial)), "N"),
        given("cutting force", likely(demand.tangential), "N"),
        given("arm", arm, "m"),
        given("radius", demand.radius, "m"),
    )
    grip = (
        given("normal force", likely(trial.grip.normal_force), "N"),
        given("contact length", likely(trial.grip.contact_length), "m"),
        given("moment", likely(worst), "N·m"),
    )
    return (
        spread("rocking_moment", worst, "N·m", "torque", "rock_moment", asked),
        spread("rock_margin", np.asarray(held / worst), "", "", "rock_margin", grip),
    )
