"""Push against position: what the press feels on the way from touch to the seat, and a little on.

Read at the press, push beside rule: a push that runs above or below the band tells more or less
grip than was planned. Only a taper is pressed so; under a hammer nobody feels a push.
"""

from __future__ import annotations

import math
from bisect import bisect_left

from borewright.answer.schedule import Curve, LineChart, Mark
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.planning.taper.travel import crack_share
from borewright.planning.taper.trial import Trial
from borewright.quantities.si import Metre

TO_SEAT, BEYOND = 10, 4
"""Travels looked at from touch to the seat, and past it."""

PAST = 0.3
"""How far past the seat the chart goes, as a share of the way to it (ours)."""


def push_chart(trial: Trial) -> LineChart | None:
    """The chart; None where a hammer drives the work on."""
    if trial.shop.hammers:
        return None
    travels = _travels(trial)
    places = tuple(_place(trial, travel) for travel in travels)
    pushes = [trial.hold.push_at(travel) for travel in travels]
    stop = high_end(trial.grip.push_on)
    known = trial.touch_is_known
    face = f"rule reading, large-end face to face {trial.hold.leading}"
    return LineChart(
        id="push-against-position",
        title="Push against position",
        x_name=face if known else "pressed on past first touch",
        x_kind="rule",
        y_name="push",
        y_kind="force",
        lines=(
            Curve("likely", places, tuple(likely(p) for p in pushes)),
            Curve("1 case in 20 is above", places, tuple(high_end(p) for p in pushes), dashed=True),
            Curve("1 case in 20 is below", places, tuple(low_end(p) for p in pushes), dashed=True),
            Curve("stop at this push", (places[0], places[-1]), (stop, stop), thin=True),
        ),
        marks=(
            Mark("first touch", places[0]),
            Mark("seat", _place(trial, trial.chosen.travel)),
            *_strained(trial, travels),
        ),
    )


def _travels(trial: Trial) -> tuple[Metre, ...]:
    """From the hand's touch to the seat, evenly, and on as far as mandrel and chart reach."""
    seat, start = trial.chosen.travel, trial.hand
    room = trial.line_large - trial.hold.likely_touch
    end = seat + PAST * (seat - start)
    end = min(end, room) if seat < room else end
    way = [start + (seat - start) * k / (TO_SEAT - 1) for k in range(TO_SEAT)]
    return (*way, *(seat + (end - seat) * k / BEYOND for k in range(1, BEYOND + 1)))


def _place(trial: Trial, travel: Metre) -> Metre:
    """What a rule reads (m) at this travel: from the large end, or from touch where the bore is not
    known well enough to say where that is."""
    if trial.touch_is_known:
        return trial.from_large_end(trial.hold.likely_touch + travel)
    return travel - trial.hand


def _strained(trial: Trial, travels: tuple[Metre, ...]) -> tuple[Mark, ...]:
    """From where the bore's margin is no more a yes, read between the travels looked at."""

    def share(travel: Metre) -> float:
        return crack_share(trial.hold.grip(travel), trial.hold, trial.tables)

    if share(travels[-1]) >= 1:
        return ()
    k = bisect_left(travels, True, key=lambda travel: share(travel) < 1)
    at = travels[k]
    if k and share(travels[k - 1]) < math.inf:
        # Stress grows evenly with travel, so the place is read off the share's inverse.
        before, after = 1 / share(travels[k - 1]), 1 / share(at)
        at -= (at - travels[k - 1]) * (after - 1) / (after - before)
    return (Mark("bore strained too far", _place(trial, at), _place(trial, travels[-1])),)
