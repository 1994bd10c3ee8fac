"""Heat, of a hold of any way but the plain taper."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Draws, Question
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.planning.heating.heat_run import Heated, heat_run
from borewright.planning.heating.heat_words import at_least_care, in_short, wait_sentences
from borewright.planning.heating.waits import TakenHeat, waited
from borewright.planning.held.held_trial import HeldTrial, hardest
from borewright.planning.weighing.figures import spread
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.warmed import (
    heat_share,
    wait_words,
    warmth_after,
    work_body,
)


def ask_held_heat(trial: HeldTrial) -> Question:
    """Margin: the warmth that takes half of the hold over that at the end of the hardest cut.

    By itself without a pause, or in its place after the other cuts, whichever is more. A hold that
    warmth does not loosen needs no more than the first.
    """
    loosens = bool(np.isfinite(likely(trial.grip.half_warm)))
    body, (cut, demand, _) = work_body(trial), hardest(trial)
    alone = warmth_after(trial, cut, demand, body)
    taken: tuple[TakenHeat, ...] = ()
    rise, after, waits = alone, False, ""
    if loosens:
        rise, after, waits, taken = _in_its_place(trial, alone)
    margin = trial.grip.half_warm / np.maximum(rise, 1e-3)
    best, low = likely(margin), low_end(margin)
    return Question(
        "heat",
        at_least_care(judge("heat", best, low, trial.tables), taken),
        best,
        low,
        _reason(trial, rise, loosens=loosens, after=after) + in_short(taken),
        f"Waiting: {wait_words(trial, body)} of turning in the air lets nine tenths of it go; coolant at once; lighter passes.{waits}",
        (spread("heat_rise", rise, "K", "temperature difference", ""),),
        (trial.tables.threshold("heat").source, heat_share(trial, cut).source),
    )


def _in_its_place(trial: HeldTrial, alone: Draws) -> tuple[Draws, bool, str, tuple[TakenHeat, ...]]:
    """Warmth (K) that counts of the hardest cut, whether those before it make it so, and the waits."""
    waiting, taken = waited(trial)
    run = heat_run(trial, heater=waiting.heater) if any(t.wait for t in taken) else waiting
    cut = hardest(trial)[0]
    heated: Heated = next(h for h in run.cuts if h.burst.cut is cut)
    waits = "".join(f" {said}" for said in wait_sentences(trial.cuts, taken))
    more = likely(heated.before[0]) > 0 and likely(heated.worst) > likely(alone)
    return np.asarray(np.maximum(alone, heated.worst)), more, waits, taken


def _reason(trial: HeldTrial, rise: Draws, *, loosens: bool, after: bool) -> str:
    show = trial.show
    subject = "After the cuts before it, the hardest cut" if after else "The hardest cut"
    warm = f"{show.temperature_difference(likely(rise))} warmer (up to {show.temperature_difference(high_end(rise))})"
    if not loosens:
        return f"{subject} leaves the work about {warm}; that takes nothing from this hold, only from the size measured warm."
    limit = show.temperature_difference(likely(trial.grip.half_warm))
    return f"{subject} leaves the work about {warm}; half of the hold is gone at {limit}."
