"""Does the press have room: daylight, throat, ram travel, table slot; or the vice its opening.

Before pressing the work stands on its far face with the small end of the mandrel through the bore
and the table, and the large end up: what is above the table must pass under the ram.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from borewright.job.tools import OwnPress
from borewright.mechanics.spread import likely
from borewright.planning.taper.travel import RULE_STEP
from borewright.planning.taper.trial import Trial
from borewright.quantities.si import Metre


def press_troubles(trial: Trial) -> tuple[str, ...]:
    """What the press or vice that is used is too small for, in words; empty where nothing is known."""
    if "vice" in trial.shop.press_name:
        return tuple(_vice(trial))
    press = _used(trial)
    return tuple(_press(trial, press)) if press else ()


def height_needed(trial: Trial) -> Metre:
    """From the face the work stands on to the end of the mandrel above it, at touch (m)."""
    at_touch = likely(trial.seat) - trial.chosen.press
    return trial.from_large_end(at_touch) + trial.hold.length


def comes_through(trial: Trial) -> Metre:
    """How far (m) the small end may stand out past the far face once pressed: what a tube must swallow.

    With the seat as near the large end as its lines let it come.
    """
    _, nearest = trial.within_lines(*trial.seat_band)
    if not trial.touch_is_known:
        nearest = max(trial.seat_lines)
    return max(0.0, nearest - trial.hold.length) + trial.mandrel.end_length


def tube_length(trial: Trial) -> Metre:
    """Length (m) of the tube between jaw and hub, up to the next step of four on the rule."""
    step = 4 * RULE_STEP[trial.job.units]
    return math.ceil(round(comes_through(trial) / step, 6)) * step


def opening_needed(trial: Trial) -> Metre:
    """Opening (m) of a vice: the tube, the work, and what stands out at the large end at touch."""
    return tube_length(trial) + height_needed(trial)


def _used(trial: Trial) -> OwnPress | None:
    shelf = trial.job.shelf
    named = [p for p in shelf.presses if shelf.press in (p.name, p.kind, p.called)]
    return named[0] if named else None


def _press(trial: Trial, press: OwnPress) -> Iterator[str]:
    outside, mandrel = trial.job.work.outside, trial.mandrel
    yield from _short(trial, "daylight", press.daylight, height_needed(trial))
    yield from _short(trial, "throat", press.throat, outside / 2)
    yield from _short(trial, "ram travel", press.ram_travel, trial.chosen.press)
    yield from _short(
        trial, "table slot", press.table_slot, max(mandrel.small_end, mandrel.end_diameter)
    )


def _vice(trial: Trial) -> Iterator[str]:
    vice = trial.job.shelf.vice
    opening = vice.opening if vice else None
    yield from _short(trial, "opening of the vice", opening, opening_needed(trial))


def _short(trial: Trial, what: str, has: Metre | None, needs: Metre) -> Iterator[str]:
    if has is not None and has < needs:
        yield f"{what} {trial.show.length(has)}, and {trial.show.length(needs)} is needed"
