"""A paper strip, bore against position: laid along a mandrel it makes a bore gauge of it.

Work of unknown bore is slid on from the small end with a light push; the line at its leading face
says the straight bore that stops there. The mandrel read backwards, as `mechanics.taper` has it.
"""

from __future__ import annotations

from typing import Final, Literal

import numpy as np

from borewright.answer.strip import Strip, Tick
from borewright.errors import RefusedInput
from borewright.job.records import Mandrel
from borewright.making.strip_words import strip_words
from borewright.mechanics.measured import Profile, diameter_on, largest_so_far, profile
from borewright.mechanics.measured_touch import first_reaching
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

UNIT: Final[dict[str, Metre]] = {"inch": 0.0254e-4, "mm": 1e-6}
"""What a bore is counted in: ten-thousandths of an inch, or µm."""

COUNTS: Final = (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100)
"""Steps tried, in those units; each at most 2.5 times the one before."""

APART: Final[tuple[Metre, Metre]] = (0.002, 0.006)
"""Ours: lines nearer than 2 mm run together, further than 6 mm they leave the eye guessing."""

MOST_TICKS: Final = 600

Unread = tuple[tuple[Metre, Metre], ...]


def strip_of(
    mandrel: Mandrel,
    units: Literal["inch", "mm"],
    *,
    hand_travel: Metre = 0.0,
    flats: Unread = (),
    end_stated: bool = True,
) -> Strip:
    """The strip of one mandrel. RefusedInput where its taper is too steep or too slight for one.

    `hand_travel`: how far (m) the hand's own push moves the work past first touch; every line is
    moved that far towards the large end. `flats`: stretches, m from the small end, left unread.

    >>> straight = Mandrel("m", 0.018, 0.01799, 0.0005, 0.11, 0.15, 0.015, 0.02)
    >>> strip = strip_of(straight, "mm")
    >>> strip.ticks[5].label, round(strip.ticks[5].position, 6)
    ('18.000', 0.11)
    """
    along, zero = _profile(mandrel), mandrel.ground_length + mandrel.end_length
    step = step_for(mandrel.taper, units)
    unread = _unread(along, flats, mandrel.ground_length)
    ticks = _ticks(mandrel, along, step, hand_travel, units)
    kept = tuple(t for t in ticks if not _inside(zero - t.position - hand_travel, unread))
    zero_of_seat = zero - hand_travel
    return Strip(
        name=mandrel.name,
        units=units,
        step=step,
        ticks=kept,
        unread=tuple((zero_of_seat - b, zero_of_seat - a) for a, b in reversed(unread)),
        ground_from=mandrel.end_length,
        ground_to=zero,
        end_stated=end_stated,
        hand_travel=hand_travel,
        words=strip_words(step, mandrel.taper, hand_travel, Show(units), end_stated),
    )


def step_for(taper: float, units: str) -> Metre:
    """The step of bore (m) whose lines stand 2 to 6 mm apart.

    >>> round(step_for(0.0005, "inch") / 0.0254, 9), round(step_for(0.0005, "mm") * 1e6, 9)
    (0.0001, 2.0)
    """
    for count in reversed(COUNTS):
        if APART[0] <= count * UNIT[units] / taper <= APART[1]:
            return count * UNIT[units]
    found = f"a taper of {Show('mm').taper(taper)}"
    raise RefusedInput("strip", found, "a taper of which a step of bore is 2 to 6 mm")


def _profile(mandrel: Mandrel) -> Profile:
    """The mandrel as measured, or the straight line between its ends."""
    if len(mandrel.stations) > 2:
        xs, ds = zip(*mandrel.stations, strict=True)
        return profile(xs, ds, mandrel.ground_length)
    ends = np.array([0.0, mandrel.ground_length])
    return Profile(ends, mandrel.small_end + mandrel.taper * ends, mandrel.taper)


def _ticks(
    mandrel: Mandrel, along: Profile, step: Metre, hand_travel: Metre, units: str
) -> tuple[Tick, ...]:
    """Every step of bore whose line lies on the ground length."""
    ground = mandrel.ground_length
    low = float(diameter_on(0.0, along))
    high = float(largest_so_far(ground - hand_travel, along))
    first, last = int(np.ceil(low / step - 1e-6)), int(np.floor(high / step + 1e-6))
    if not 2 <= last - first + 1 <= MOST_TICKS:
        found = f"room for {max(0, last - first + 1)} lines"
        raise RefusedInput("strip", found, f"a mandrel with 2 to {MOST_TICKS} lines on it")
    counts = range(first, last + 1)
    seats = first_reaching(along, np.array(counts) * step) + hand_travel
    zero = ground + mandrel.end_length
    return tuple(
        Tick(k * step, zero - x, k, _label(k * step, step, units))
        for k, x in zip(counts, seats.tolist(), strict=True)
    )


def _label(bore: Metre, step: Metre, units: str) -> str:
    """As many decimals as the step needs: four of an inch and three of a mm, one more if finer."""
    whole, usual = (0.0254, 4) if units == "inch" else (1e-3, 3)
    decimals = usual if step / UNIT[units] > 0.99 else usual + 1
    return f"{bore / whole:.{decimals}f}"


def _unread(along: Profile, flats: Unread, ground: Metre) -> Unread:
    """Flat stretches, and those behind a larger place, joined; m from the small end, rising."""
    found = sorted([*flats, *_shadowed(along)])
    joined: list[tuple[float, float]] = []
    for start, end in found:
        if joined and start <= joined[-1][1] + 1e-9:
            joined[-1] = (joined[-1][0], max(end, joined[-1][1]))
        else:
            joined.append((start, end))
    return tuple((max(a, 0.0), min(b, ground)) for a, b in joined)


def _shadowed(along: Profile) -> Unread:
    """Stretches no larger than a place before them: no bore stops there."""
    found = []
    before = np.maximum.accumulate(along.d)[:-1]
    for k, largest in enumerate(before.tolist()):
        x, end = along.x[k : k + 2].tolist()
        d, next_d = along.d[k : k + 2].tolist()
        if next_d <= largest:
            found.append((x, end))
        elif d < largest:
            found.append((x, x + (largest - d) / (next_d - d) * (end - x)))
    return tuple(found)


def _inside(x: Metre, stretches: Unread) -> bool:
    return any(start + 1e-6 < x < end - 1e-6 for start, end in stretches)
