"""Heat: does the grip outlast the warmth of the cut; when it drops off by itself."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Cut, Draws, Figure, Input, Question
from borewright.mechanics.inverse import where_it_reaches_by_rows
from borewright.mechanics.num import Floats
from borewright.mechanics.spread import high_end, likely
from borewright.planning.heating.heat_run import Heated, Heater, HeatRun, heat_run
from borewright.planning.heating.heat_words import at_least_care, in_short, wait_sentences
from borewright.planning.heating.waits import waited
from borewright.planning.heating.warm_size import warm_size_figures
from borewright.planning.questions.slip import hardest_cut
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given, spread
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.warmed import (
    Body,
    heat_share,
    seconds_counted,
    wait_words,
    warmth_after,
    work_body,
)
from borewright.quantities.si import Kelvin

HOTTEST = 300.0
"""Warmth (K) beyond which no limit is looked for."""

ROOM = 293.15
"""Temperature (K) that sizes are stated for, 20 °C (ISO 1)."""


def ask_heat(trial: Trial) -> Question:
    """Margin: the warmth that takes half of the grip over that at the end of a cut's passes.

    The cut is the one hardest on the grip, or a grinding or gear-cutting one that warms it more. Its
    warmth is the greater of two: the cut by itself without a pause, the mandrel still cool; and the
    cut in its place after the others, with the pauses of a hand and a mandrel that warms too. A wait
    is named where a later cut would find too little of the grip without it.
    """
    waiting, taken = waited(trial)
    run = heat_run(trial, heater=waiting.heater) if any(t.wait for t in taken) else waiting
    body, limit = work_body(trial), half_grip(trial)
    heated = _warmest(trial, run, body)
    cut, rise = heated.burst.cut, _rise(trial, heated, body)
    best, low = limit / max(likely(rise), 1e-3), limit / max(high_end(rise), 1e-3)
    waits = "".join(f" {said}" for said in wait_sentences(trial.cuts, taken))
    return Question(
        "heat",
        at_least_care(judge("heat", best, low, trial.tables), taken),
        best,
        low,
        _reason(trial, heated, rise, limit) + in_short(taken),
        f"Waiting: {wait_words(trial, body)} of turning in the air lets nine tenths of it go; {_cooling(cut)}; lighter passes.{waits}{_drops_on(trial)}",
        (*_figures(trial, body, heated, run, limit), *warm_size_figures(trial, waiting)),
        (trial.tables.threshold("heat").source, heat_share(trial, cut).source),
    )


def _cooling(cut: Cut) -> str:
    return "more coolant, aimed where the wheel touches" if cut.coolant else "coolant at once"


def _warmest(trial: Trial, run: HeatRun, body: Body) -> Heated:
    """The hardest cut in its place, or a load that loosens the joint more."""
    hard = hardest_cut(trial).cut
    counted = [h for h in run.cuts if h.burst.cut is hard or not h.burst.cut.on_lathe]
    return max(counted, key=lambda h: likely(_rise(trial, h, body)))


def _rise(trial: Trial, heated: Heated, body: Body) -> Draws:
    """Warmth (K) that counts: of the cut by itself on a cool mandrel, or in its place, if more.

    How much of the heat the mandrel takes, and how long a hand pauses, is too little known to be
    counted in favor of a single cut.
    """
    alone = warmth_after(trial, heated.burst.cut, heated.burst.demand, body)
    return np.asarray(np.maximum(alone, heated.worst))


def half_grip(trial: Trial) -> Kelvin:
    """Warmth (K) of the work, mandrel cool, that takes half of the likely grip."""
    expansion, rough = _expansion(trial), float(trial.hold.facts.lost_rough[0])

    def lost_share(rises: Floats) -> Floats:
        lost = rough + expansion * trial.grip.diameter * rises
        left = trial.hold.likely_forces(np.full_like(rises, trial.chosen.travel), lost)
        return np.asarray(1 - left / cold if cold > 0 else np.ones_like(rises))

    cold = likely(trial.grip.pressed_force)
    found = where_it_reaches_by_rows(lost_share, 0.5, 0.0, HOTTEST)
    return HOTTEST if found is None else found


def drop_off(trial: Trial) -> Kelvin:
    """Warmth (K) at which the squeeze at the leading face is gone."""
    squeeze = trial.mandrel.taper * trial.chosen.travel
    return squeeze / (_expansion(trial) * trial.grip.diameter)


def drop_on(trial: Trial) -> Kelvin:
    """Temperature (K) at which the work slides to this place by itself, the mandrel at 20 °C (ISO 1)."""
    return ROOM + drop_off(trial) + trial.tables.allowance("drop_on_spare").best


def _drops_on(trial: Trial) -> str:
    """Said where the work can be warmed so far without harm."""
    hot = drop_on(trial)
    if hot > trial.tables.allowance("warm_limit").best:
        return ""
    return (
        f" Warmed right through in an oven or in hot water or oil to {trial.show.temperature(hot)}, never by a flame, the "
        "work would slide to this place unpressed."
    )


def _expansion(trial: Trial) -> float:
    return trial.tables.material_range(trial.job.work.material, "expansion").best


def _reason(trial: Trial, heated: Heated, rise: Draws, limit: Kelvin) -> str:
    show, cut = trial.show, heated.burst.cut
    subject = {"grind": "The grinding", "gear": "Cutting the teeth"}.get(
        cut.kind, "The hardest cut"
    )
    if likely(heated.before[0]) > 0 and likely(rise) == likely(heated.worst):
        subject = f"After the cuts before it, {subject[0].lower()}{subject[1:]}"
    dry = ", dry and without a pause," if cut.kind == "grind" and not cut.coolant else ""
    warm = f"{show.temperature_difference(likely(rise))} warmer (up to {show.temperature_difference(high_end(rise))})"
    return (
        f"{subject}{dry} leaves the work about {warm} than a mandrel still cool; half of the grip is gone when it is "
        f"{show.temperature_difference(limit)} warmer than the mandrel, and it drops off when it is "
        f"{show.temperature_difference(drop_off(trial))} warmer.{_coolant_would(cut)}"
    )


def _coolant_would(cut: Cut) -> str:
    if cut.kind != "grind" or cut.coolant:
        return ""
    return " With coolant on the wheel it stays far cooler: coolant = true says so."


def _figures(
    trial: Trial, body: Body, heated: Heated, run: HeatRun, limit: Kelvin
) -> tuple[Figure, ...]:
    cut, demand = heated.burst.cut, heated.burst.demand
    share = heat_share(trial, cut)
    inputs: tuple[Input, ...]
    if cut.on_lathe:
        inputs = (
            given("share", share.best),
            given("force", likely(demand.tangential), "N"),
            given("speed", cut.cutting_speed, "m/s"),
            given("passes", cut.passes),
        )
    else:
        inputs = (
            given("share", share.best),
            given("power", likely(demand.power), "W"),
            given("time that counts", seconds_counted(trial, cut), "s"),
            given("passes", cut.passes),
        )
    rule = {"grind": "grinding_heat", "gear": "milling_heat"}.get(cut.kind, "heat_rise")
    alone = warmth_after(trial, cut, demand, body)
    off = (
        given("squeeze", trial.mandrel.taper * trial.chosen.travel, "m", "small"),
        given("expansion x bore (nm/K)", _expansion(trial) * trial.grip.diameter * 1e9),
    )
    spare = trial.tables.allowance("drop_on_spare")
    on = (
        given("room", ROOM, "K", "temperature"),
        given("drop off", drop_off(trial), "K", "temperature difference"),
        given("to spare", spare.best, "K", "temperature difference"),
    )
    return (
        spread("heat_rise", alone, "K", "temperature difference", rule, inputs, (share.source,)),
        *_counted(trial, run.heater, heated),
        figure("heat_limit", limit, "K", "temperature difference", "heat_limit"),
        figure("drop_off", drop_off(trial), "K", "temperature difference", "drop_off", off),
        figure("drop_on", drop_on(trial), "K", "temperature", "drop_on", on, (spare.source,)),
    )


def _counted(trial: Trial, heater: Heater, heated: Heated) -> tuple[Figure, ...]:
    """The warmth of both bodies at the worst end of the cut, and the one that counts."""
    ends = heated.before, heated.after
    work, mandrel = max(ends, key=lambda w: likely(heater.counts(w)))
    kind, sources = "temperature difference", (trial.tables.allowance("joint_heat").source,)
    inputs = (
        given("work", likely(work), "K", kind),
        given("mandrel", likely(mandrel), "K", kind),
        given("follows", heater.hold.follows),
    )
    return (
        spread("work_warmth", work, "K", kind, "two_bodies", (), sources),
        spread("mandrel_warmth", mandrel, "K", kind, "two_bodies", (), sources),
        spread("warmth_that_counts", heated.worst, "K", kind, "warm_that_counts", inputs),
    )
