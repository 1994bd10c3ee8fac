"""A line chart as a workshop draws one: scales at the edges, words at the lines, marks as uprights.

Lines are told apart by dash, weight and the words at them, never by color, so that a copy in black
serves as well. Words never stand on each other: where a line has no room for its own, they go over
the frame with a thin line down to it, and the chart grows as high as its rows of words ask.

Charts are made of our own primitives and by no plotting library: that keeps a plan quick to start,
and gives one look to every drawing.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from borewright.answer.schedule import Curve, LineChart
from borewright.drawing.callout import Placed
from borewright.drawing.line_frame import FOOT, Lined, Scales, frame_items, head_items, scales_of
from borewright.drawing.line_labels import Labels, labels_at_lines
from borewright.drawing.line_marks import (
    OVER,
    ROW,
    Upright,
    band_items,
    mark_items,
    marked,
    over_frame,
    pointed_at,
    rows_of,
)
from borewright.drawing.line_trace import Trace
from borewright.drawing.measure import Box
from borewright.drawing.scene import Item, Path, Scene
from borewright.quantities.show import Show

WIDE, HALF = 186.0, 91.0
"""Widths, mm: of a page between its margins, and of each of two charts side by side on it."""
ALONE = 120.0
"""Width of a chart in a file of its own, mm: on a telephone its letters can still be read."""
HEIGHT = 52.0
"""Height where the words over the frame take no more than two rows, mm."""
LEAST_PLOT = 24.0
"""The lowest plot, mm: more rows of words make the chart higher."""


@dataclass(frozen=True, slots=True)
class _Laid:
    """A chart laid out: its lines and marks on paper, and where all words stand."""

    plot: Box
    scales: Scales
    lines: tuple[Lined, ...]
    marks: tuple[Upright, ...]
    aside: tuple[Trace, ...]
    over: tuple[Placed, ...]
    labels: Labels


def line_chart(chart: LineChart, show: Show, width: float = WIDE, height: float = HEIGHT) -> Scene:
    """The chart, `width` mm wide and `height` mm high, or higher where its words ask for it."""
    scales = scales_of(chart, show, width, height)
    head = head_items(chart, scales, width)
    top = ROW * max(1, round(max((text.y for text in head), default=0.0) / ROW))
    aside: tuple[str, ...] = ()
    while True:
        laid = _laid(chart, scales, aside, top, height)
        if not laid.labels.left:
            break
        aside = (*aside, *laid.labels.left)
    items = (*frame_items(chart, laid.scales, laid.plot), *_body(laid), *head)
    said = (("chart", chart.id),)
    return Scene(width, laid.plot.bottom + FOOT, items, chart.title, described(chart, show), said)


def in_rows(charts: Sequence[LineChart]) -> tuple[tuple[LineChart, ...], ...]:
    """Two side by side; of an odd number the one with two scales, else the last, by itself below.

    >>> one, two = (LineChart(name, "", "", "", "", "", ()) for name in ("one", "two"))
    >>> [[chart.id for chart in row] for row in in_rows((one, two, one))]
    [['one', 'two'], ['one']]
    """
    rest = list(charts)
    last = []
    if len(rest) % 2:
        alone = next((k for k, chart in enumerate(rest) if chart.second), len(rest) - 1)
        last = [(rest.pop(alone),)]
    pairs = [tuple(rest[k : k + 2]) for k in range(0, len(rest), 2)]
    return (*pairs, *last)


def described(chart: LineChart, show: Show) -> str:
    """What the chart shows, for who cannot see it."""
    lines = [
        *(_line_words(line, chart.y_kind, show) for line in chart.lines if line.y),
        *(_line_words(line, chart.second_kind, show) for line in chart.second if line.y),
    ]
    marks = [f"{mark.label} at {show.quantity(mark.x, '', chart.x_kind)}" for mark in chart.marks]
    named = " and ".join(name for name in (chart.y_name, chart.second_name) if name)
    return f"{named} against {chart.x_name}. {'; '.join([*lines, *marks])}."


def _line_words(line: Curve, kind: str, show: Show) -> str:
    first, last = (show.quantity(y, "", kind) for y in (line.y[0], line.y[-1]))
    return f"{line.label}: {first} to {last}"


def _laid(
    chart: LineChart, scales: Scales, aside: Sequence[str], top: float, height: float
) -> _Laid:
    """The chart with the words of the lines named `aside` over the frame."""
    marks = marked(chart.marks, scales.x)
    lines = scales.upright(0.0, 100.0).lines(chart)
    pointers: list[Upright] = []
    for line in lines:
        if line.trace.name in aside:
            stems = [m.stem for m in (*marks, *pointers)]
            pointers.append(pointed_at(line.trace, stems))
    over = over_frame((*marks, *pointers), scales.width)
    ceiling = top + ROW * rows_of(over) + OVER + 0.4
    left, right = sorted((scales.x.start, scales.x.end))
    plot = Box(left, ceiling, right, max(height - FOOT, ceiling + LEAST_PLOT))
    upright = scales.upright(plot.top, plot.bottom)
    lines = upright.lines(chart)
    traces = [line.trace for line in lines]
    labels = labels_at_lines(traces, plot, [m.x for m in marks], aside)
    pointed = tuple(t for t in traces if t.name in aside)
    return _Laid(plot, upright, lines, marks, pointed, over, labels)


def _body(laid: _Laid) -> tuple[Item, ...]:
    stems = {placed.callout.name: placed.callout.stems[0] for placed in laid.over}
    feet = {t.name: t.highest(stems[t.name]) for t in laid.aside}
    return (
        *band_items(laid.marks, laid.plot),
        *(Path(line.trace.corners, line.kind, name=line.trace.name) for line in laid.lines),
        *mark_items(laid.over, laid.marks, feet, laid.plot),
        *laid.labels.pointers,
        *laid.labels.words,
    )
