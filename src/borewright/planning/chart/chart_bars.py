"""Which bores each mandrel of a shelf takes, where they touch, and what falls between them."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise

from borewright.answer.chart import ChartBar, ChartGap, TouchMark
from borewright.holding.taper.measured_mandrel import window_of
from borewright.job.records import Mandrel, Shelf
from borewright.planning.chart.chart_hub import hub_hold, hub_job, hub_length, usual_press
from borewright.planning.taper.travel import hand_travel
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

BORE_STEP = {"inch": 2.54e-6, "mm": 1e-6}
"""Bores are marked in these steps (m): a tenth, or a micrometre."""

NEAR = 1e-6
"""Share of a step within which an end is a whole step, so that float noise loses no mark."""

MOST_MARKS = 5
MARKS_APART = 0.085
"""Marks stand at least this share of the mandrel's length apart, so that their words do."""


def bar_of(
    mandrel: Mandrel, materials: tuple[str, ...], shelf: Shelf, units: str, tables: Tables
) -> ChartBar:
    """Go and not-go of one mandrel for every one of these materials, at the usual travel.

    A light push is already travel, and more of it in a yielding material: the window is the part
    that all the materials have in common, and the marks are at their mean.
    """
    middle = (mandrel.small_end + mandrel.large_end) / 2
    # The hub goes by its bore, and on a measured mandrel the hand's travel by the place: again, at
    # the window's middle.
    for _ in range(3):
        hands = [_hand(mandrel, middle, m, shelf, units, tables) for m in materials]
        window = _window(mandrel, middle, hands, usual_press(units, tables), tables)
        middle = sum(window) / 2 if window is not None else middle

    def read(bore: Metre) -> Metre:
        job = hub_job(bore, materials[0], shelf, units)
        touch = hub_hold(mandrel, job, tables).likely_touch + sum(hands) / len(hands)
        return mandrel.ground_length + mandrel.end_length - touch

    go, not_go = (read(bore) for bore in window) if window is not None else (0.0, 0.0)
    return ChartBar(
        mandrel=mandrel.name,
        nominal=mandrel.nominal,
        hub_length=hub_length(mandrel.nominal),
        bore_window=window,
        overall_length=mandrel.overall_length,
        end_length=mandrel.end_length,
        ground_length=mandrel.ground_length,
        reading_go=go,
        reading_not_go=not_go,
        marks=_marks(mandrel, window, read, units) if window is not None else (),
        as_stated=mandrel.origin != "table",
    )


def gaps_between(bars: tuple[ChartBar, ...], units: str) -> tuple[ChartGap, ...]:
    """The bores between the smallest and the largest taken that no mandrel takes.

    >>> def bar(low, high):
    ...     return ChartBar("m", low, 0.02, (low, high), 0.1, 0.01, 0.08, 0.08, 0.05, (), True)
    >>> gaps_between((bar(0.016, 0.01602), bar(0.012, 0.01202)), "mm")
    (ChartGap(low=0.01202, high=0.016),)
    """
    windows = sorted(b.bore_window for b in bars if b.bore_window is not None)
    reached = [max(high for _, high in windows[: k + 1]) for k in range(len(windows))]
    ends = zip(reached, (low for low, _ in windows[1:]), strict=False)
    return tuple(ChartGap(a, b) for a, b in ends if b - a > BORE_STEP[units])


def _hand(
    mandrel: Mandrel, bore: Metre, material: str, shelf: Shelf, units: str, tables: Tables
) -> Metre:
    """How far (m) a light push has itself pressed the hub."""
    job = hub_job(bore, material, shelf, units)
    return hand_travel(hub_hold(mandrel, job, tables), tables)


def _window(
    mandrel: Mandrel, bore: Metre, hands: list[Metre], press: Metre, tables: Tables
) -> tuple[Metre, Metre] | None:
    """The bores that every hand's touch and the press after it leave room for; None if none are.

    The hub is as long as that of this `bore`.
    """
    tool = tables.allowance("tool_clearance").best
    dog = tables.allowance("dog_clearance").best
    windows = [window_of(mandrel, hub_length(bore), h + press, tool, dog) for h in hands]
    low, high = max(w[0] for w in windows), min(w[1] for w in windows)
    return (low, high) if low < high else None


def _marks(
    mandrel: Mandrel,
    window: tuple[Metre, Metre],
    read: Callable[[Metre], Metre],
    units: str,
) -> tuple[TouchMark, ...]:
    """As many bores as there is room to mark, five at most."""
    apart = MARKS_APART * mandrel.overall_length
    for count in range(MOST_MARKS, 0, -1):
        bores = _round_bores(window, count, BORE_STEP[units])
        found = tuple(TouchMark(b, read(b)) for b in bores)
        if all(a.reading - b.reading >= apart for a, b in pairwise(found)):
            return found
    return ()


def _round_bores(window: tuple[Metre, Metre], count: int, step: Metre) -> list[Metre]:
    """Up to so many bores (m) in whole steps inside the window, evenly spread.

    >>> [round(b * 1e6) for b in _round_bores((0.0159993, 0.0160404), 5, 1e-6)]
    [16000, 16010, 16020, 16030, 16040]
    """
    low, high = window
    first, last = math.ceil(low / step - NEAR), math.floor(high / step + NEAR)
    if first > last:
        return [(low + high) / 2]
    if count == 1:
        return [round((first + last) / 2) * step]
    return [
        k * step
        for k in sorted({round(first + i * (last - first) / (count - 1)) for i in range(count)})
    ]
