"""Push: can what the shop presses with do it, and what will it feel like."""

from __future__ import annotations

import math

import numpy as np

from borewright.answer.records import Figure, Input, Question, Verdict
from borewright.mechanics.press import blow_travel, pressing_work
from borewright.mechanics.rings import Elastic, ring_compliance
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.planning.taper.dishing import dish_figures
from borewright.planning.taper.press_room import press_troubles
from borewright.planning.taper.rings_check import over_rings, rings_check, rings_words
from borewright.planning.taper.support import support_doubt, support_figures
from borewright.planning.taper.travel import press_draws, press_margins
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import given, spread, times
from borewright.planning.weighing.judge import judge
from borewright.quantities.si import Joule

LEAST_PUSH = 1.0
"""A push below 1 N counts as 1 N where something is divided by it."""


def ask_push(trial: Trial) -> Question:
    """Margin: what the press gives over the push needed."""
    margin = press_margins(trial.grip, press_draws(trial.shop.press_force))
    best, low = likely(margin), low_end(margin)
    troubles = press_troubles(trial)
    doubt = support_doubt(trial)
    verdict = Verdict.NO if troubles else judge("push", best, low, trial.tables)
    return Question(
        "push",
        Verdict.CARE if doubt and verdict is Verdict.YES else verdict,
        best,
        low,
        f"{trial.shop.press_name} has too little room: {'; '.join(troubles)}."
        if troubles
        else f"{_reason(trial, best)} {doubt}".rstrip(),
        "Another press, a vice, or a soft hammer." if troubles else _changes(trial),
        _figures(trial),
        (trial.tables.threshold("push").source, trial.shop.press_force.source),
    )


def _reason(trial: Trial, margin: float) -> str:
    push, show = trial.grip.push_on, trial.show
    band = show.band(low_end(push), high_end(push), "force")
    expect = f"Expect a push of about {show.force(likely(push))} (between {band})"
    if trial.shop.hammers:
        last = show.small(float(blow_travel(_energy(trial), max(likely(push), LEAST_PUSH))))
        hammer = f"about {blows(trial)} blows of a soft hammer, the last moving it {last}"
        return f"{expect}: {hammer}. {rings_words(trial)}".rstrip()
    gives = f"{trial.shop.press_name} gives {times(margin)} the likely push"
    return f"{expect}; {gives}. {rings_words(trial)}".rstrip()


def blows(trial: Trial) -> int:
    """Blows of a soft hammer to the chosen travel, likely case."""
    half = trial.hold.grip(trial.chosen.travel / 2)
    work = pressing_work(likely(half.push_on), likely(trial.grip.push_on), trial.chosen.travel)
    return max(1, math.ceil(float(work) / _energy(trial)))


def _energy(trial: Trial) -> Joule:
    return trial.shop.blow_energy.best


def _changes(trial: Trial) -> str:
    return "Less travel pushes easier; oil on the bore eases it and costs grip in the same measure."


def _figures(trial: Trial) -> tuple[Figure, ...]:
    g, f = trial.grip, trial.hold.facts
    n = given("normal force", likely(g.pressed_force), "N")
    on = (n, given("friction on", likely(f.friction_on)), given("taper", g.taper, "m/m"))
    off = (n, given("friction off", likely(f.friction_off)), given("taper", g.taper, "m/m"))
    return (
        *_pressures(trial),
        *support_figures(trial),
        *dish_figures(trial),
        spread(
            "normal_force", g.pressed_force, "N", "force", "normal_force", _summed(trial), f.sources
        ),
        spread("push_on_force", g.push_on, "N", "force", "push_on", on, f.sources),
        spread("push_off_force", g.push_off, "N", "force", "push_off", off, f.sources),
    )


def _pressures(trial: Trial) -> tuple[Figure, ...]:
    """What the peaks take, and the pressure at the hardest-pressed place, by pencil and in truth."""
    g, f, line = trial.grip, trial.hold.facts, trial.hold.line
    rough = trial.tables.roughness(trial.job.work.bore.made_by)
    ground = trial.tables.roughness("ground-mandrel")
    peaks = (
        given("Rz work", rough.best, "m", "small"),
        given("Rz mandrel", ground.best, "m", "small"),
        given("share", trial.tables.allowance("roughness_loss").best),
    )
    rings = likely(rings_check(trial).pressed.pressure)
    squeeze = rings * g.diameter * likely_compliance(trial)
    lame = (
        given("squeeze kept", squeeze, "m", "small"),
        given("bore", g.diameter, "m", "bore"),
        given("outside, stiffest ring", float(line.outside[line.outside > 0].max()), "m"),
        given("E work", likely(np.atleast_1d(f.work.modulus)), "Pa"),
        given("v work", float(f.work.poisson)),
        given("E mandrel", float(f.mandrel.modulus), "Pa"),
        given("v mandrel", float(f.mandrel.poisson)),
        given("hole in the mandrel", trial.mandrel.hole, "m"),
        over_rings(likely(g.pressed_pressure), rings),
    )
    return (
        spread(
            "lost_to_peaks",
            f.lost_rough,
            "m",
            "small",
            "roughness_loss",
            peaks,
            (rough.source, ground.source),
        ),
        spread(
            "pressure_at_face",
            g.pressed_pressure,
            "Pa",
            "pressure",
            "lame_pressure",
            lame,
            f.sources,
        ),
    )


def likely_compliance(trial: Trial) -> float:
    """C (1/Pa) of the stiffest ring of the work, likely case."""
    f, outside = trial.hold.facts, trial.hold.line.outside
    work = Elastic(likely(np.atleast_1d(f.work.modulus)), f.work.poisson)
    d, hole = trial.grip.diameter, trial.mandrel.hole
    return float(ring_compliance(d, float(outside.max()), work, f.mandrel, hole))


def _summed(trial: Trial) -> tuple[Input, ...]:
    g = trial.grip
    length = likely(g.contact_length)
    share = trial.hold.facts.bearing_share
    mean = likely(g.pressed_force) / (np.pi * g.diameter * length * share) if length > 0 else 0.0
    return (
        given("bore", g.diameter, "m", "bore"),
        given("mean pressure", mean, "Pa"),
        given("contact length", length, "m"),
        given("share of the round that bears", share),
    )
