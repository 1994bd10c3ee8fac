"""Which bores each mandrel of a shelf takes, where they touch, and what falls between them."""

from __future__ import annotations

from itertools import pairwise

from borewright.answer.chart import ChartBar, ChartGap, TouchMark
from borewright.holding.measured_mandrel import window_of
from borewright.job.records import Mandrel, Shelf
from borewright.planning.chart_hub import hub_hold, hub_job, hub_length, usual_press
from borewright.planning.travel import hand_travel
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

BORE_STEP = {"inch": 2.54e-6, "mm": 1e-6}
"""Bores are marked in these steps (m): a tenth, or a micrometre."""

MOST_MARKS = 5
MARKS_APART = 0.11
"""Marks stand at least this share of the mandrel's length apart, so that their words do."""


def bar_of(
    mandrel: Mandrel, materials: tuple[str, ...], shelf: Shelf, units: str, tables: Tables
) -> ChartBar:
    """Go and not-go of one mandrel for every one of these materials, at the usual travel.

    A light push is already travel, and more of it in a yielding material: the window is the part
    that all the materials have in common, and the marks are at their mean.
    """
    hands = [_hand(mandrel, m, shelf, units, tables) for m in materials]
    window = _window(mandrel, hands, usual_press(units, tables), tables)
    mean = sum(hands) / len(hands)
    marks = (
        _marks(mandrel, window, mean, materials[0], shelf, units, tables)
        if window is not None
        else ()
    )
    return ChartBar(
        mandrel=mandrel.name,
        nominal=mandrel.nominal,
        hub_length=hub_length(mandrel),
        bore_window=window,
        overall_length=mandrel.overall_length,
        end_length=mandrel.end_length,
        ground_length=mandrel.ground_length,
        marks=marks,
        as_stated=mandrel.origin != "table",
    )


def gaps_between(bars: tuple[ChartBar, ...], units: str) -> tuple[ChartGap, ...]:
    """The bores between the smallest and the largest taken that no mandrel takes.

    >>> def bar(low, high):
    ...     return ChartBar("m", low, 0.02, (low, high), 0.1, 0.01, 0.08, (), True)
    >>> gaps_between((bar(0.016, 0.01602), bar(0.012, 0.01202)), "mm")
    (ChartGap(low=0.01202, high=0.016),)
    """
    windows = sorted(b.bore_window for b in bars if b.bore_window is not None)
    reached = [max(high for _, high in windows[: k + 1]) for k in range(len(windows))]
    ends = zip(reached, (low for low, _ in windows[1:]), strict=False)
    return tuple(ChartGap(a, b) for a, b in ends if b - a > BORE_STEP[units])


def _hand(mandrel: Mandrel, material: str, shelf: Shelf, units: str, tables: Tables) -> Metre:
    middle = (mandrel.small_end + mandrel.large_end) / 2
    job = hub_job(mandrel, middle, material, shelf, units)
    return hand_travel(hub_hold(mandrel, job, tables), tables)


def _window(
    mandrel: Mandrel, hands: list[Metre], press: Metre, tables: Tables
) -> tuple[Metre, Metre] | None:
    """The bores that every hand's touch and the press after it leave room for; None if none are."""
    tool = tables.allowance("tool_clearance").best
    dog = tables.allowance("dog_clearance").best
    windows = [window_of(mandrel, hub_length(mandrel), h + press, tool, dog) for h in hands]
    low, high = max(w[0] for w in windows), min(w[1] for w in windows)
    return (low, high) if low < high else None


def _marks(
    mandrel: Mandrel,
    window: tuple[Metre, Metre],
    hand: Metre,
    material: str,
    shelf: Shelf,
    units: str,
    tables: Tables,
) -> tuple[TouchMark, ...]:
    def mark(bore: Metre) -> TouchMark:
        hold = hub_hold(mandrel, hub_job(mandrel, bore, material, shelf, units), tables)
        face = mandrel.ground_length + mandrel.end_length
        return TouchMark(bore, face - (hold.likely_touch + hand))

    bores = _round_bores(window, MOST_MARKS, BORE_STEP[units])
    for count in range(len(bores), 0, -1):
        found = tuple(mark(b) for b in _round_bores(window, count, BORE_STEP[units]))
        apart = MARKS_APART * mandrel.overall_length
        if all(a.reading - b.reading >= apart for a, b in pairwise(found)):
            return found
    return ()


def _round_bores(window: tuple[Metre, Metre], count: int, step: Metre) -> list[Metre]:
    """Up to so many bores (m) in whole steps inside the window, evenly spread.

    >>> [round(b * 1e6) for b in _round_bores((0.0159993, 0.0160404), 5, 1e-6)]
    [16000, 16010, 16020, 16030, 16040]
    """
    low, high = window
    first, last = -int(-low // step), int(high // step)
    if first > last:
        return [(low + high) / 2]
    if count == 1:
        return [round((first + last) / 2) * step]
    return [
        k * step
        for k in sorted({round(first + i * (last - first) / (count - 1)) for i in range(count)})
    ]
