"""Bend, of any hold but the taper: one stiffness at the tool, the work as one mass on it."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Cut, Demand, Figure, Question
from borewright.mechanics.spread import likely, low_end
from borewright.mechanics.vibration import single_mode_frequency
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.weighing.chatter import Swing, chatter_figure, tightest
from borewright.planning.weighing.figures import given, spread, times
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.spring_pass import (
    share_left,
    spring_pass_figure,
    spring_pass_words,
)
from borewright.planning.weighing.swing import frequency_figure
from borewright.planning.weighing.work_mass import work_mass
from borewright.quantities.si import Metre

HARDLY = 1e-7
"""Sizes (m) below this are nothing; ours."""


def ask_held_bend(trial: HeldTrial) -> Question:
    """Margin: size error allowed over what bending and letting go leave."""
    cut, demand = _finishing(trial)
    bent = 2 * demand.radial / trial.grip.stiffness
    springs = trial.grip.springs
    swings = _swings(trial, cut, likely(bent))
    kept = share_left(cut, trial.grip.stiffness, trial.job, trial.tables)
    error = kept * bent + springs
    tolerance = trial.job.work.finished.tolerance
    allowed = tolerance or trial.tables.allowance("usual_tolerance").best
    margin = allowed / np.maximum(error, 1e-12)
    best, low, show = likely(margin), low_end(margin), trial.show
    out = (
        f", and it springs {show.small(likely(springs))} when it is let go"
        if likely(springs) > HARDLY
        else ""
    )
    unsaid = "" if tolerance else " (tolerance not stated)"
    inputs = (
        given("radial force", likely(demand.radial), "N"),
        given("stiffness at the tool", trial.grip.stiffness, "N/m"),
    )
    return Question(
        "bend",
        judge("bend", best, low, trial.tables),
        best,
        low,
        f"Bending leaves about {show.small(likely(bent))} on diameter{out}; {show.small(allowed)} is allowed{unsaid}, "
        f"{times(best)} that."
        + (f" A spring pass is planned: it leaves {100 * kept:.0f} % of it." if kept < 1 else ""),
        f"{spring_pass_words(swings[0]) if swings else 'A spring pass'}; a lighter finishing cut, less overhang."
        if likely(springs) <= HARDLY
        else "A lighter grip for the last pass, a spring pass; a way of holding that does not squeeze it.",
        (spread("size_error", error, "m", "small", "", inputs, ("ours",)), *swings),
        (trial.tables.threshold("bend").source,),
    )


def _swings(trial: HeldTrial, cut: Cut, bent: Metre) -> tuple[Figure, ...]:
    """What a spring pass leaves, the first frequency, the work side's chatter: of one stiffness."""
    swing, t = held_swing(trial), trial.tables
    if swing is None:
        return ()
    stiff = trial.grip.stiffness
    chatter = tightest(zip(trial.cuts, trial.demands, strict=True), swing, t)
    return (
        spring_pass_figure(bent, cut, stiff, trial.job, t),
        frequency_figure(stiff, work_mass(trial.job.work, t)),
        *((chatter_figure(chatter, t),) if chatter else ()),
    )


def held_swing(trial: HeldTrial) -> Swing | None:
    """What chatters on the work side: its mass on one stiffness; None where nothing gives."""
    stiff, work = trial.grip.stiffness, trial.job.work
    if not np.isfinite(stiff):
        return None
    frequency = float(single_mode_frequency(stiff, work_mass(work, trial.tables)))
    return Swing(stiff, frequency, work.material)


def _finishing(trial: HeldTrial) -> tuple[Cut, Demand]:
    pairs = list(zip(trial.cuts, trial.demands, strict=True))
    return ([p for p in pairs if p[0].kind in ("turn", "grind")] or pairs)[-1]
