"""Rock: does the cut tilt the work on its grip."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Demand, Draws, Figure, Input, Question, Verdict
from borewright.mechanics.rock import lift_moment
from borewright.mechanics.spread import likely, low_end
from borewright.planning.figures import given, spread, times
from borewright.planning.judge import judge
from borewright.planning.margins import rock_arm, rock_margins, tilt_of, walk_of
from borewright.planning.trial import Trial


def ask_rock(trial: Trial) -> Question:
    """Margin: the tilt under which the grip lifts over that of the worst cut, with some in hand."""
    margins = [rock_margins(trial.hold, trial.grip, d) for d in trial.demands]
    margin, worst = min(zip(margins, trial.demands, strict=True), key=lambda m: likely(m[0]))
    best, low = likely(margin), low_end(margin)
    return Question(
        "rock",
        judge("rock", best, low, trial.tables),
        best,
        low,
        _reason(trial, worst, best, low),
        _changes(trial, worst),
        _figures(trial, worst, margin),
        (trial.tables.threshold("rock").source,),
    )


def rock_verdict(trial: Trial, demand: Demand) -> Verdict:
    """The answer for one cut by itself."""
    margin = rock_margins(trial.hold, trial.grip, demand)
    return judge("rock", likely(margin), low_end(margin), trial.tables)


def _reason(trial: Trial, worst: Demand, best: float, low: float) -> str:
    kept = likely(walk_of(trial.hold.facts, worst))
    in_hand = f" with {kept:.1f} kept in hand because the load goes round" if kept > 1 else ""
    return (
        f"The grip stands {times(best)} the tilt of the worst cut{in_hand}, "
        f"{times(low)} in the poor case (1 in 20)."
    )


def _changes(trial: Trial, worst: Demand) -> str:
    cut = next(c for c in trial.cuts if c.id == worst.cut)
    if cut.kind == "gear":
        left_open = any(w.kind == "gear" and w.depth is None for w in trial.job.cuts)
        passes = (
            "two or three passes do not mend it, more passes may" if left_open else "more passes"
        )
        return f"A lighter feed, more travel, or a longer hub; {passes}."
    return "More travel, a longer hub, a lighter cut, or cutting nearer the middle of the grip."


def _figures(trial: Trial, demand: Demand, margin: Draws) -> tuple[Figure, ...]:
    arm = rock_arm(trial.grip, trial.hold.length)
    moment = tilt_of(demand, arm)
    asked = (
        given("passive force", likely(demand.radial), "N"),
        given("thrust", likely(np.abs(demand.axial)), "N"),
        given("cutting force", likely(demand.tangential), "N"),
        given("arm", arm, "m"),
        given("radius", demand.radius, "m"),
    )
    held = trial.hold.lift_moment(trial.grip.setting) * demand.grip_left
    both = (
        given("lift moment", likely(held), "N·m"),
        given("kept in hand", likely(walk_of(trial.hold.facts, demand))),
        given("moment", likely(moment), "N·m"),
    )
    return (
        spread("rocking_moment", moment, "N·m", "torque", "rock_moment", asked),
        spread("lift_moment", held, "N·m", "torque", "lift_moment", _grip(trial, demand, held)),
        spread("rock_margin", margin, "", "", "rock_margin", both),
    )


def _grip(trial: Trial, demand: Demand, held: Draws) -> tuple[Input, ...]:
    """The pencil's numbers, and the factor from its lift moment to the elastic one."""
    force = likely(trial.grip.normal_force) * demand.grip_left
    length = likely(trial.grip.contact_length)
    by_pencil = float(lift_moment(force, length))
    return (
        given("normal force", force, "N"),
        given("contact length", length, "m"),
        given("elastic over springs", likely(held) / by_pencil if by_pencil > 0 else 1.0),
    )
