"""Push: can what the shop presses with do it, and what will it feel like."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Figure, Input, Question
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.planning.figures import given, spread, times
from borewright.planning.judge import judge
from borewright.planning.travel import press_draws, press_margins
from borewright.planning.trial import Trial


def ask_push(trial: Trial) -> Question:
    """Margin: what the press gives over the push needed."""
    margin = press_margins(trial.grip, press_draws(trial.shop.press_force))
    best, low = likely(margin), low_end(margin)
    return Question(
        "push",
        judge("push", best, low, trial.tables),
        best,
        low,
        _reason(trial, best),
        _changes(trial),
        _figures(trial),
        (trial.tables.threshold("push").source, trial.shop.press_force.source),
    )


def _reason(trial: Trial, margin: float) -> str:
    push, show = trial.grip.push_on, trial.show
    band = show.band(low_end(push), high_end(push), "force")
    return (
        f"Expect a push of about {show.force(likely(push))} (between {band}); "
        f"{trial.shop.press_name} gives {times(margin)} the likely push."
    )


def _changes(trial: Trial) -> str:
    return "Less travel pushes easier; oil on the bore eases it and costs grip in the same measure."


def _figures(trial: Trial) -> tuple[Figure, ...]:
    g, f = trial.grip, trial.hold.facts
    n = given("normal force", likely(g.normal_force), "N")
    on = (n, given("friction on", likely(f.friction_on)), given("taper", g.taper, "m/m"))
    off = (n, given("friction off", likely(f.friction_off)), given("taper", g.taper, "m/m"))
    return (
        spread(
            "normal_force", g.normal_force, "N", "force", "normal_force", _elastic(trial), f.sources
        ),
        spread("push_on_force", g.push_on, "N", "force", "push_on", on, f.sources),
        spread("push_off_force", g.push_off, "N", "force", "push_off", off, f.sources),
    )


def _elastic(trial: Trial) -> tuple[Input, ...]:
    f, line = trial.hold.facts, trial.hold.line
    return (
        given("bore", trial.grip.diameter, "m"),
        given("travel", trial.chosen.travel, "m"),
        given("hub outside", float(line.outside[line.outside > 0].min()), "m"),
        given("lost to peaks", likely(f.lost_rough), "m"),
        given("lost to warmth", likely(f.lost_warm_per_metre) * trial.grip.diameter, "m"),
        given("modulus of the work", likely(np.atleast_1d(f.work.modulus)), "Pa"),
    )
