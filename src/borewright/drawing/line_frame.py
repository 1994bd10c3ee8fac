"""The frame of a line chart: its scales with ticks and names, and its lines put on paper."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from borewright.answer.schedule import Curve, LineChart
from borewright.drawing.dimension import SIZE
from borewright.drawing.line_axis import Axis, place_axis, usable, value_axis
from borewright.drawing.line_marks import EDGE, ROW, fitted
from borewright.drawing.line_trace import Trace
from borewright.drawing.measure import Box, text_width
from borewright.drawing.scene import Item, Line, LineKind, Text
from borewright.quantities.show import Show

FOOT = 8.9
"""Under the plot: its numbers and the name of the places, mm."""
_TICK, _AIR = 1.2, 0.7
_APART = 4.0
"""Least room between two numbers of the level scale, mm."""
_PER_TICK = 6.0
"""Least height from one number of an upright scale to the next, mm."""
_SOLID = (LineKind.VISIBLE, LineKind.TRACE, LineKind.EDGE)
_POOR = (LineKind.HIDDEN, LineKind.LIMIT)


@dataclass(frozen=True, slots=True)
class Lined:
    """A line of the chart on paper, and how it is drawn."""

    trace: Trace
    kind: LineKind


@dataclass(frozen=True, slots=True)
class Scales:
    """The scale of places, that of the lines, and that of the second lines where there are any."""

    width: float
    x: Axis
    y: Axis
    second: Axis | None

    def upright(self, top: float, base: float) -> Scales:
        """The same with the scales of values laid from `base` up to `top`."""
        second = self.second and self.second.laid(base, top)
        return replace(self, y=self.y.laid(base, top), second=second)

    def lines(self, chart: LineChart) -> tuple[Lined, ...]:
        """All lines on paper that have anything to draw; each of a kind gets a dash of its own."""
        kinds = _kinds((*chart.lines, *chart.second))
        axes = [self.y] * len(chart.lines) + [self.second or self.y] * len(chart.second)
        curves = (*chart.lines, *chart.second)
        found = []
        for k, (curve, axis, kind) in enumerate(zip(curves, axes, kinds, strict=True)):
            corners = tuple((self.x.at(x), axis.at(y)) for x, y in _drawable(curve))
            if len(corners) > 1:
                found.append(Lined(Trace(f"line-{k}", curve.label, corners), kind))
        return tuple(found)


def scales_of(chart: LineChart, show: Show, width: float, height: float) -> Scales:
    """The scales, that of places laid between the numbers of the others; not yet upright."""
    most = max(2, int((height - 22.0) / _PER_TICK))
    y = value_axis(chart.y_kind, _values(chart.lines), show, most)
    second = (
        value_axis(chart.second_kind, _values(chart.second), show, most) if chart.second else None
    )
    left = EDGE + _widest(y) + _AIR + _TICK
    right = width - (EDGE + _widest(second) + _AIR + _TICK if second else 3.0)
    places = [*_places(chart)]
    for most in range(12, 1, -1):
        x = place_axis(chart.x_kind, places, show, most)
        if not _tight(x.laid(left, right)):
            break
    turned = _runs_down(chart)
    return Scales(width, x.laid(right, left) if turned else x.laid(left, right), y, second)


def head_items(chart: LineChart, scales: Scales, width: float) -> tuple[Text, ...]:
    """The title, what is read at the left and what at the right, in one line where they fit."""
    room = width - 2 * EDGE
    title = fitted(chart.title, room, bold=True)
    left = fitted(_named(chart.y_name, scales.y), room)
    right = fitted(_named(chart.second_name, scales.second), room) if scales.second else ""
    x, y = EDGE, 0.6 + 0.75 * SIZE
    rows = [Text(x, y, title, SIZE, bold=True, name="title")]
    for words, bold, name in ((left, False, "left-name"), (right, False, "right-name")):
        before = rows[-1]
        end = before.x + text_width(before.text, SIZE, before.bold) + _APART
        wide = text_width(words, SIZE, bold)
        if end + wide > width - EDGE:
            end, y = EDGE, y + ROW
        at = width - EDGE - wide if name == "right-name" else end
        rows.append(Text(at, y, words, SIZE, name=name))
    return tuple(text for text in rows if text.text)


def frame_items(chart: LineChart, scales: Scales, plot: Box) -> Iterator[Item]:
    """Edges, ticks, numbers, faint lines across, and the name of the places."""
    yield from _upright_scale(scales.y, plot.left, -1.0, plot)
    if scales.second:
        yield from _upright_scale(scales.second, plot.right, 1.0, plot)
    yield Line(plot.left, plot.bottom, plot.right, plot.bottom, LineKind.EDGE, "base")
    for x, number in scales.x.ticks:
        yield Line(x, plot.bottom, x, plot.bottom + _TICK, LineKind.THIN, "tick")
        y = plot.bottom + _TICK + _AIR + 0.74 * SIZE + 0.2
        yield Text(_inside(x, number, scales.width), y, number, SIZE, "middle", name="place")
    name = fitted(_named(chart.x_name, scales.x), scales.width - 2 * EDGE)
    middle = _inside((plot.left + plot.right) / 2, name, scales.width)
    yield Text(middle, plot.bottom + FOOT - 0.95, name, SIZE, "middle", name="places-name")


def _upright_scale(axis: Axis, x: float, side: float, plot: Box) -> Iterator[Item]:
    yield Line(x, plot.bottom, x, plot.top - 0.8, LineKind.THIN, "edge")
    for y, number in axis.ticks:
        yield Line(x, y, x + side * _TICK, y, LineKind.THIN, "tick")
        anchor, at = ("start", x + side * (_TICK + _AIR)), y + 0.33 * SIZE
        yield Text(anchor[1], at, number, SIZE, "start" if side > 0 else "end", name="value")
        if side < 0 and plot.bottom - y > 0.1:
            yield Line(plot.left, y, plot.right, y, LineKind.FAINT, "across")


def _named(name: str, axis: Axis) -> str:
    said = name[:1].upper() + name[1:]
    return f"{said}, {axis.symbol}" if axis.symbol else said


def _inside(x: float, words: str, width: float) -> float:
    """The middle of words that stand as near to x as the edges of the chart let them."""
    half = text_width(words, SIZE) / 2 + EDGE
    return min(max(x, half), width - half)


def _tight(axis: Axis) -> bool:
    """Whether any two of its numbers stand too close."""
    ticks = axis.ticks
    pairs = pairwise(ticks)
    return any(
        abs(x2 - x1) < (text_width(a, SIZE) + text_width(b, SIZE)) / 2 + _APART
        for (x1, a), (x2, b) in pairs
    )


def _kinds(curves: Sequence[Curve]) -> list[LineKind]:
    """A dash for each: the likely ones, the poor ones and the light ones in their own order."""
    counts = {"solid": 0, "poor": 0}
    kinds = []
    for curve in curves:
        if curve.thin:
            kinds.append(LineKind.AXIS if curve.dashed else LineKind.THIN)
            continue
        family, named = (_POOR, "poor") if curve.dashed else (_SOLID, "solid")
        kinds.append(family[counts[named] % len(family)])
        counts[named] += 1
    return kinds


def _runs_down(chart: LineChart) -> bool:
    """Whether places fall from the first to the last: the scale then falls to the right too."""
    first = next((c for c in (*chart.lines, *chart.second) if len(c.x) > 1), None)
    return first is not None and first.x[-1] < first.x[0]


def _places(chart: LineChart) -> Iterator[float]:
    for curve in (*chart.lines, *chart.second):
        yield from (x for x, _ in _drawable(curve))
    for mark in chart.marks:
        yield mark.x
        if mark.band is not None:
            yield mark.band


def _values(curves: Sequence[Curve]) -> list[float]:
    return [y for curve in curves for _, y in _drawable(curve)]


def _drawable(curve: Curve) -> list[tuple[float, float]]:
    return [(x, y) for x, y in zip(curve.x, curve.y, strict=False) if usable(x) and usable(y)]


def _widest(axis: Axis) -> float:
    return max((text_width(number, SIZE) for _, number in axis.ticks), default=0.0)
