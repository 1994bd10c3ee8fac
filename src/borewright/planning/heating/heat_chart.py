"""Temperature and grip against time: what work and mandrel do through all cuts, waits included."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np

from borewright.answer.records import Cut
from borewright.answer.schedule import Curve, LineChart, Mark
from borewright.mechanics.num import Floats
from borewright.mechanics.spread import high_end, low_end
from borewright.mechanics.two_bodies import Pace
from borewright.planning.heating.bursts import Stretch, stretches
from borewright.planning.heating.heat_run import NO_HEAT, Heater, HeatRun
from borewright.planning.heating.heat_words import minutes
from borewright.quantities.si import Second

POINTS = 5
"""Places drawn along each stretch of steady heat."""


HELD = 0.999
"""A grip that never falls below this share is not drawn: warmth takes nothing from it (ours)."""


def heat_chart(
    run: HeatRun, named: Callable[[Cut], str] | None = None, holder: str = "mandrel"
) -> LineChart:
    """The chart of a run. `named` gives the word at each cut's beginning, its name if not stated;
    `holder` is what the work sits on.

    Left: warmth over the room, likely, and the work's in the poor case (1 in 20); right: what is
    left of the cold grip, as a share.
    """
    times, likely = _likely_course(run)
    left = run.heater.hold.likely_shares(run.heater.counts(likely))
    ends, poor = _poor_course(run)
    low = [low_end(run.heater.hold.share(run.heater.counts(w))) for w in poor]
    loosens = min(low) < HELD
    return LineChart(
        id="heat",
        title="Temperature and grip against time" if loosens else "Temperature against time",
        x_name="time from the first chip; numbers: where each cut begins",
        x_kind="time",
        y_name="warmer than the room",
        y_kind="temperature difference",
        lines=(
            _curve("work", times, likely[0]),
            _curve(holder, times, likely[1]),
            _curve("work, poor case", ends, [high_end(w[0]) for w in poor], dashed=True),
        ),
        marks=tuple(_marks(run, named or _name)),
        second_name="share of the cold grip left" if loosens else "",
        second_kind="ratio" if loosens else "",
        second=(
            _curve("grip", times, left),
            _curve("grip, poor case", ends, low, dashed=True),
        )
        if loosens
        else (),
    )


def _name(cut: Cut) -> str:
    return cut.name


def _curve(
    label: str, x: Floats | list[float], y: Floats | list[float], *, dashed: bool = False
) -> Curve:
    return Curve(label, tuple(float(v) for v in x), tuple(float(v) for v in y), dashed)


def _marks(run: HeatRun, named: Callable[[Cut], str]) -> Iterator[Mark]:
    """A line where each cut begins, a band for each wait."""
    for cut in run.cuts:
        if cut.wait:
            yield Mark(f"wait {minutes(cut.wait)}", cut.begins - cut.wait, cut.begins)
        yield Mark(named(cut.burst.cut), cut.begins)


def _course(run: HeatRun) -> Iterator[tuple[Second, Stretch]]:
    """Every stretch in order with its beginning: pauses, waits and passes."""
    now = 0.0
    for cut in run.cuts:
        if cut.begins > now:
            yield now, Stretch(cut.begins - now, NO_HEAT, coolant=False)
        now = cut.begins
        for stretch in stretches(cut.burst):
            yield now, stretch
            now += stretch.seconds


def _likely_course(run: HeatRun) -> tuple[Floats, Floats]:
    """Times (k,) and likely warmth (2, k) of both bodies."""
    bodies = run.heater.bodies
    paces: dict[bool, Pace] = {wet: bodies.likely_pace(coolant=wet) for wet in (False, True)}
    state = np.zeros((2, 1))
    times, found = [np.zeros(1)], [state]
    for begins, stretch in _course(run):
        on = np.linspace(0.0, stretch.seconds, POINTS + 1)[1:]
        course = paces[stretch.coolant].after(state, stretch.watts[:1], on)
        state = course[:, -1:]
        times.append(begins + on)
        found.append(course)
    return np.concatenate(times), np.concatenate(found, axis=1)


def _poor_course(run: HeatRun) -> tuple[list[float], list[Floats]]:
    """Times and warmth (2, n) of every drawn case at the ends of the stretches."""
    heater: Heater = run.heater
    times, found = [0.0], [heater.bodies.cold]
    for begins, stretch in _course(run):
        found.append(heater.on(found[-1], stretch))
        times.append(begins + stretch.seconds)
    return times, found
