"""How long to stand before a cut so that at its end the grip still has the usual reserve.

A wait is asked for only where it helps: not where the cut slips on a cold grip too, which is no
matter of heat, and not where it warms the work too far by itself; then `mend` says what would.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

import numpy as np

from borewright.answer.records import Draws
from borewright.mechanics.spread import likely, low_end
from borewright.planning.heating.bursts import Burst, bursts_of
from borewright.planning.heating.heat_run import Heated, Heater, HeatRun, heater_of, take, take_from
from borewright.planning.heating.loosened import Gripped
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.judge import share_of_yes
from borewright.quantities.si import Kelvin, Second
from borewright.reference.library import Tables

STEP: Second = 60.0
"""Waits come in whole minutes."""


RESERVE = 0.75
"""Warm work may give up a quarter of the usual reserve before a wait is asked for (ours)."""


class Mend(StrEnum):
    """What keeps the grip where waiting before the cut does not."""

    NONE = ""
    BETWEEN_PASSES = "wait between passes"
    COOLANT = "coolant"
    LIGHTER = "lighter"


@dataclass(frozen=True, slots=True)
class TakenHeat:
    """What heat makes of one cut. `seconds` are of its passes; `wait` comes beyond the usual pause.

    `warm_before` and `warm_after`: likely warmth of the work over the mandrel; `work_warm`: over the
    room, at its end. `grip_left`: share of the cold grip where it is least, likely and in the poor
    case (1 in 20); `margin`: against slipping there. `mend`: where no wait is enough; then `between`
    is the wait from one pass to the next, where that is the mend.
    """

    cut: str
    seconds: Second
    wait: Second
    warm_before: Kelvin
    warm_after: Kelvin
    work_warm: Kelvin
    grip_left: tuple[float, float]
    margin: tuple[float, float]
    mend: Mend = Mend.NONE
    between: Second = 0.0


def taken_heat(
    trial: Trial | Gripped, bursts: Sequence[Burst] | None = None
) -> tuple[TakenHeat, ...]:
    """Every cut of a trial (or of `bursts`) in order, with the wait before it."""
    return waited(trial, bursts)[1]


def waited(
    trial: Trial | Gripped, bursts: Sequence[Burst] | None = None
) -> tuple[HeatRun, tuple[TakenHeat, ...]]:
    """The run with its waits, and what heat makes of every cut."""
    heater, tables = heater_of(trial), trial.tables
    found: list[Heated] = []
    said: list[TakenHeat] = []
    for burst in bursts_of(trial) if bursts is None else bursts:
        last = found[-1] if found else None
        heated, mend, between = _kept(heater, last, burst, tables)
        found.append(heated)
        said.append(_said(heated, mend, between))
    return HeatRun(heater, tuple(found)), tuple(said)


def _kept(
    heater: Heater, last: Heated | None, burst: Burst, tables: Tables
) -> tuple[Heated, Mend, Second]:
    """The cut after the shortest wait that keeps the reserve; at once, and a mend, where none does."""
    at_once = take(heater, last, burst, 0.0)
    if _holds(at_once, tables) or not _holds_cold(heater, burst, tables):
        return at_once, Mend.NONE, 0.0
    wait = _wait(heater, last, burst, tables)
    if wait is None:
        return at_once, *_mend(heater, burst, tables)
    return take(heater, last, burst, wait), Mend.NONE, 0.0


def _wait(heater: Heater, last: Heated | None, burst: Burst, tables: Tables) -> Second | None:
    """The shortest wait before a cut that keeps its reserve (s, whole steps); None where none does."""
    if not _holds(take(heater, None, burst, 0.0), tables):
        return None
    steps = range(int(tables.allowance("wait_worth").best / STEP) + 1)
    place = bisect_left(
        steps, True, key=lambda n: _holds(take(heater, last, burst, n * STEP), tables)
    )
    return None if place == len(steps) else steps[place] * STEP


def _mend(heater: Heater, burst: Burst, tables: Tables) -> tuple[Mend, Second]:
    """The first of the mends that is enough: a wait between passes, coolant, less metal."""
    between = _between(heater, burst, tables)
    if between is not None:
        return Mend.BETWEEN_PASSES, between
    wet = replace(burst, cut=replace(burst.cut, coolant=True))
    helps = not burst.cut.coolant and _holds(take(heater, None, wet, 0.0), tables)
    return (Mend.COOLANT if helps else Mend.LIGHTER), 0.0


def _between(heater: Heater, burst: Burst, tables: Tables) -> Second | None:
    """The wait from pass to pass (s) with which the last keeps the reserve; None where none does."""
    one, passes = replace(burst, cut=replace(burst.cut, passes=1)), burst.cut.passes
    first = take(heater, None, one, 0.0)
    if passes == 1 or not burst.cut.on_lathe or not _holds(first, tables):
        return None

    def enough(steps: int) -> bool:
        last = first
        for _ in range(passes - 1):
            last = take_from(heater, heater.stand(last.after, steps * STEP), 0.0, one)
        return _holds(last, tables)

    steps = range(1, int(tables.allowance("wait_worth").best / STEP) + 1)
    place = bisect_left(steps, True, key=enough)
    return None if place == len(steps) else steps[place] * STEP


def _holds(heated: Heated, tables: Tables) -> bool:
    return _yes(heated.slip, tables)


def _holds_cold(heater: Heater, burst: Burst, tables: Tables) -> bool:
    return _yes(heater.hold.slip(burst.demand, np.ones(1)), tables)


def _yes(margin: Draws, tables: Tables) -> bool:
    return share_of_yes("slip", likely(margin), low_end(margin), tables) >= RESERVE


def _said(heated: Heated, mend: Mend, between: Second) -> TakenHeat:
    return TakenHeat(
        heated.burst.cut.id,
        heated.burst.cut.passes * heated.burst.seconds,
        heated.wait,
        heated.warm_before,
        heated.warm_after,
        likely(heated.after[0]),
        heated.grip_left,
        (likely(heated.slip), low_end(heated.slip)),
        mend,
        between,
    )
