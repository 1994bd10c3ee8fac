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
    worst = min(trial.demands, key=lambda d: likely(_held(trial, d) / _moment(d, arm)))
    margin = np.asarray(_held(trial, worst) / _moment(worst, arm))
    best, low = likely(margin), low_end(margin)
    return Question(
        "rock",
        judge("rock", best, low, trial.tables),
        best,
        low,
        f"The grip stands {times(best)} the tilt of the worst cut, {times(low)} in the poor case (1 in 20).",
        "More travel, a longer hub, a lighter cut, or cutting nearer the middle of the grip.",
        _figures(trial, arm, worst),
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


def _held(trial: Trial, demand: Demand) -> Draws:
    """Moment (N·m) that lifts one end, with the grip that this cut leaves."""
    normal = trial.grip.normal_force * demand.grip_left
    return np.asarray(lift_moment(normal, trial.grip.contact_length))


def _figures(trial: Trial, arm: Metre, demand: Demand) -> tuple[Figure, ...]:
    moment, held = _moment(demand, arm), _held(trial, demand)
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
        spread("rock_margin", np.asarray(held / moment), "", "", "rock_margin", grip),
    )
