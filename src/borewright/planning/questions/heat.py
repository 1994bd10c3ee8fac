"""Heat: does the grip outlast the warmth of the cut; when it drops off by itself."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.answer.records import Cut, Demand, Draws, Figure, Question
from borewright.answer.streams import Stream, positive
from borewright.job.web import metal_share
from borewright.mechanics.inverse import where_it_reaches
from borewright.mechanics.spread import high_end, likely
from borewright.mechanics.warmth import cooling_time, cutting_time, temperature_rise
from borewright.planning.figures import figure, given, spread
from borewright.planning.judge import judge
from borewright.planning.questions.slip import hardest_cut
from borewright.planning.trial import Trial
from borewright.quantities.si import Kelvin, Metre

HOTTEST = 300.0
"""Warmth (K) beyond which no limit is looked for."""

COOLED = 0.1
"""Share of the warmth that may be left when it counts as cool."""


@dataclass(frozen=True, slots=True)
class Body:
    """The work as one lump: m c (J/K) and surface (m²)."""

    heat_capacity: float
    area: float


def ask_heat(trial: Trial) -> Question:
    """Margin: the warmth that takes half of the grip over that at the end of the hardest cut's passes."""
    hard = hardest_cut(trial)
    body = work_body(trial)
    rise = _rise(trial, hard.cut, hard.demand, body)
    limit = half_grip(trial)
    best, low = limit / max(likely(rise), 1e-3), limit / max(high_end(rise), 1e-3)
    return Question(
        "heat",
        judge("heat", best, low, trial.tables),
        best,
        low,
        _reason(trial, rise, limit),
        f"Waiting: {_wait(trial, body)} of turning in the air lets nine tenths of it go; coolant at once; lighter passes.",
        _figures(trial, rise, limit, hard.cut),
        (trial.tables.threshold("heat").source, trial.tables.allowance("heat_share").source),
    )


def work_body(trial: Trial) -> Body:
    """Volume times density and heat capacity, and the outer surface, of the turned rings."""
    work, t = trial.job.work, trial.tables
    rings = [
        (p.end - p.start, p.outside, p.inside or work.bore.size, metal_share(p, work))
        for p in work.pieces
    ]
    volume = sum(np.pi / 4 * (o**2 - i**2) * length * share for length, o, i, share in rings)
    area = sum(
        (np.pi * o * length + np.pi / 2 * (o**2 - i**2)) * share for length, o, i, share in rings
    )
    density, specific = (
        t.material_range(work.material, q).best for q in ("density", "heat_capacity")
    )
    return Body(float(volume * density * specific), float(area))


def half_grip(trial: Trial) -> Kelvin:
    """Warmth (K) of the work, mandrel cool, that takes half of the likely grip."""
    expansion, rough = _expansion(trial), trial.hold.facts.lost_rough[:1]

    def lost_share(rise: float) -> float:
        lost = rough + expansion * trial.grip.diameter * rise
        rings = trial.hold.rings(trial.chosen.travel, lost, likely_only=True)
        return 1 - float(trial.hold.normal_force(rings)[0]) / cold if cold > 0 else 1.0

    cold = likely(trial.grip.pressed_force)
    found = where_it_reaches(lost_share, 0.5, 0.0, HOTTEST, steps=24)
    return HOTTEST if found is None else found


def drop_off(trial: Trial) -> Kelvin:
    """Warmth (K) at which the squeeze at the leading face is gone."""
    squeeze = trial.mandrel.taper * trial.chosen.travel
    return squeeze / (_expansion(trial) * trial.grip.diameter)


def _expansion(trial: Trial) -> float:
    return trial.tables.material_range(trial.job.work.material, "expansion").best


def _rise(trial: Trial, cut: Cut, demand: Demand, body: Body) -> Draws:
    share, loss = (trial.tables.allowance(name) for name in ("heat_share", "air_loss"))
    power = (
        demand.tangential
        * cut.cutting_speed
        * positive(share.low, share.best, share.high, Stream.WARMING)
    )
    seconds = cut.passes * cutting_time(
        _path(trial, cut), cut.feed, cut.cutting_speed, cut.diameter
    )
    return np.asarray(temperature_rise(power, seconds, body.heat_capacity, loss.best, body.area))


def _path(trial: Trial, cut: Cut) -> Metre:
    """Length of the tool's path (m): along the outside, or from rim to bore."""
    if cut.kind == "turn":
        return trial.hold.length
    return (cut.diameter - trial.grip.diameter) / 2


def _wait(trial: Trial, body: Body) -> str:
    loss = trial.tables.allowance("air_loss").best
    minutes = float(cooling_time(COOLED, body.heat_capacity, loss, body.area)) / 60
    return f"about {minutes:.0f} minutes" if minutes >= 1.5 else "a minute"


def _reason(trial: Trial, rise: Draws, limit: Kelvin) -> str:
    show = trial.show
    warm = f"{show.temperature_difference(likely(rise))} warmer (up to {show.temperature_difference(high_end(rise))})"
    return (
        f"The hardest cut leaves the work about {warm} than the mandrel; half of the grip is gone at "
        f"{show.temperature_difference(limit)} and it drops off at {show.temperature_difference(drop_off(trial))}."
    )


def _figures(trial: Trial, rise: Draws, limit: Kelvin, cut: Cut) -> tuple[Figure, ...]:
    share = trial.tables.allowance("heat_share")
    inputs = (
        given("share", share.best),
        given("force", likely(hardest_cut(trial).demand.tangential), "N"),
        given("speed", cut.cutting_speed, "m/s"),
        given("passes", cut.passes),
    )
    off = (
        given("squeeze", trial.mandrel.taper * trial.chosen.travel, "m", "small"),
        given("expansion x bore (nm/K)", _expansion(trial) * trial.grip.diameter * 1e9),
    )
    return (
        spread(
            "heat_rise", rise, "K", "temperature difference", "heat_rise", inputs, (share.source,)
        ),
        figure("heat_limit", limit, "K", "temperature difference", "heat_limit"),
        figure("drop_off", drop_off(trial), "K", "temperature difference", "drop_off", off),
    )
