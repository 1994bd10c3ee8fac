"""A wall chart as words, and its strips as shares of their width: the template computes nothing."""

from __future__ import annotations

from fractions import Fraction
from itertools import groupby

from borewright.answer.chart import Chart, ChartBar, ChartCell, ChartColumn, ChartGap
from borewright.quantities.inch_fractions import mixed_text
from borewright.quantities.rounding import fixed
from borewright.quantities.show import Show, inch_number
from borewright.quantities.si import Metre
from borewright.report.one_page import Words
from borewright.report.sheet_data import shortened
from borewright.report.words import citation

NAME_ROOM, LEFT_ROOM = 30, 300
"""Letters of a mandrel's name, and of all the names left out, that the page prints."""


def chart_data(chart: Chart, most: int | None = None) -> Words:
    """All that the page says; with `most`, the bars after so many are left out and named."""
    show = _show(chart)
    bars = chart.bars[:most]
    return {
        "title": chart.title,
        "how": _how(chart, show, strips=True),
        "how_lines": _how(chart, show, strips=False),
        "bars": _bars(chart, bars),
        "ends": _ends(show, bars),
        "gaps": _gaps(chart, show, bars),
        "none": _too_short(chart),
        "left_out": _left_out(chart.bars[len(bars) :]),
        "cuts": _cuts(chart, show),
        "cuts_how": _cuts_how(chart, show),
        "skin": _skin(chart, show),
        "not_shown": list(chart.not_shown),
        "assumed": [f"{a.what}: {a.taken} ({_source(a.source)})" for a in chart.assumed],
        "sources": _sources(chart),
    }


def gap_lines(chart: Chart) -> list[str]:
    """Each gap as a sentence."""
    return [f"{_gap(g, _show(chart)).capitalize()}." for g in chart.gaps]


def rule_reading(reading: Metre, units: str) -> str:
    """What a rule shows: the nearest sixteenth of an inch, or millimetre.

    >>> rule_reading(0.0953, "inch"), rule_reading(0.0953, "mm")
    ('3 3/4', '95')
    """
    if units == "mm":
        return f"{round(reading * 1000)}"
    return mixed_text(Fraction(round(inch_number(reading) * 16), 16))


def bore_number(bore: Metre, units: str) -> str:
    """A bore without its unit, in tenths of a thou or in micrometres.

    >>> bore_number(0.0158877, "inch"), bore_number(0.0158877, "mm")
    ('0.6255', '15.888')
    """
    return fixed(bore * 1000, 3) if units == "mm" else fixed(inch_number(bore), 4)


def depth_number(depth: Metre, units: str) -> str:
    """A depth of cut without its unit: a thou, or two hundredths of a millimetre."""
    return fixed(depth * 1000, 2) if units == "mm" else fixed(inch_number(depth), 3)


def _show(chart: Chart) -> Show:
    return Show("mm" if chart.units == "mm" else "inch")


def _unit(chart: Chart) -> str:
    return "mm" if chart.units == "mm" else "in"


DAGGER = "\N{DAGGER}"

SPOKEN = {"inch": "inches", "mm": "millimetres"}
FINE = {
    "inch": "0.0001 in of bore moves the touch about 0.2 in",
    "mm": "5 µm of bore moves the touch about 10 mm",
}
"""Geometry at the usual taper of 1 in 2000."""


def _how(chart: Chart, show: Show, strips: bool) -> str:
    unit = SPOKEN[chart.units]
    drawn = f"Black is where that face stands at touch: bore above, rule reading below, in {unit}."
    told = f"At touch gives a bore and what the rule then reads, in {unit}."
    return (
        "Slide the work on from the small end until it stops under a light push; lay a rule from "
        "the large-end face of the mandrel (left) to the leading face of the work. "
        f"{drawn if strips else told} Then press {show.length(chart.press)} towards the large "
        f"end, less where the table says so. At the usual taper {FINE[chart.units]}: the mandrel "
        "is the gauge."
    )


def _bars(chart: Chart, bars: tuple[ChartBar, ...]) -> list[Words]:
    """The bars with a window, each under what no mandrel takes before it."""
    said = {g.high: _gap(g, _show(chart)) for g in chart.gaps}
    written = []
    for bar in bars:
        if bar.bore_window is not None:
            # Bars that begin alike share one gap: it is said once, before the first.
            written.append(_bar(chart, bar, bar.bore_window, said.pop(bar.bore_window[0], "")))
    return written


def _gap(gap: ChartGap, show: Show) -> str:
    return f"no mandrel takes {show.band(gap.low, gap.high, 'bore')}"


def _bar(chart: Chart, bar: ChartBar, window: tuple[Metre, Metre], gap: str) -> Words:
    marks = [
        {
            "at": m.reading / bar.overall_length,
            "bore": bore_number(m.bore, chart.units),
            "reading": rule_reading(m.reading, chart.units),
        }
        for m in bar.marks
    ]
    star = "" if bar.as_stated else "*"
    return {
        "gap": gap,
        "name": shortened(bar.mandrel, NAME_ROOM) + star,
        "window": _show(chart).band(*window, "bore"),
        "marks": marks,
        "line": "; ".join(f"{m['bore']}: {_unbroken(m['reading'])}" for m in marks),
        "ground_from": bar.end_length / bar.overall_length,
        "ground_to": (bar.end_length + bar.ground_length) / bar.overall_length,
        "touch_from": bar.reading_not_go / bar.overall_length,
        "touch_to": bar.reading_go / bar.overall_length,
    }


def _unbroken(words: object) -> str:
    """The words with spaces at which no line breaks."""
    return str(words).replace(" ", "\u00a0")


def _ends(show: Show, bars: tuple[ChartBar, ...]) -> str:
    """What no mandrel shown takes because it is smaller or larger than them all."""
    windows = [b.bore_window for b in bars if b.bore_window is not None]
    if not windows:
        return ""
    low, high = min(w[0] for w in windows), max(w[1] for w in windows)
    return f"No mandrel shown takes a bore below {show.bore(low)} or above {show.bore(high)}."


def _gaps(chart: Chart, show: Show, bars: tuple[ChartBar, ...]) -> str:
    """All gaps between the bars shown, in one sentence."""
    reached = max((b.bore_window[1] for b in bars if b.bore_window is not None), default=0.0)
    between = [show.band(g.low, g.high, "bore") for g in chart.gaps if g.high <= reached]
    return f"No mandrel shown takes {'; '.join(between)}." if between else ""


def _too_short(chart: Chart) -> str:
    names = [b.mandrel for b in chart.bars if b.bore_window is None]
    if not names:
        return ""
    return (
        f"Too short for a hub of one and a half bores, its travel, dog and tool: {_listed(names)}."
    )


def _left_out(bars: tuple[ChartBar, ...]) -> str:
    if not bars:
        return ""
    count = "1 mandrel" if len(bars) == 1 else f"{len(bars)} mandrels"
    return f"Left out for room: {count}, {_listed([b.mandrel for b in bars])}."


def _listed(names: list[str]) -> str:
    return shortened(", ".join(shortened(n, NAME_ROOM) for n in names), LEFT_ROOM)


def _cuts(chart: Chart, show: Show) -> Words:
    """The table: sizes over materials, the travel of each column, a row for each outside."""
    cells = {(c.mandrel, c.material, c.outside): c for c in chart.cells}
    rows = [
        (d, [cells.get((c.mandrel, c.material, d)) for c in chart.columns]) for d in chart.outsides
    ]
    groups = [list(g) for _, g in groupby(chart.columns, key=lambda c: c.mandrel)]
    return {
        "head": f"deepest cut at {_turn_feed(chart)}, on radius in {SPOKEN[chart.units]}",
        "sizes": [{"name": shortened(g[0].mandrel, NAME_ROOM), "span": len(g)} for g in groups],
        "materials": [shortened(_short(c), 26) for c in chart.columns],
        "travels": [_travel(c, chart) for c in chart.columns],
        "rows": [
            {"outside": _outside(d, show), "cells": [_cell(c, chart) for c in row]}
            for d, row in rows
            if any(c is not None for c in row)
        ],
    }


def _turn_feed(chart: Chart) -> str:
    """The feed in the chart's own unit: `0.05 mm a turn`."""
    return _show(chart).feed(chart.feed).partition(" (")[0].replace("/rev", " a turn")


def _outside(outside: Metre, show: Show) -> str:
    return show.length(outside).replace(" (", "\n(")


def _short(column: ChartColumn) -> str:
    """The material's name up to its first comma."""
    return column.material_name.split(",")[0]


def _travel(column: ChartColumn, chart: Chart) -> str:
    if column.press <= 0:
        return f"none: {column.limited_by}"
    said = rule_reading(column.press, chart.units)
    return f"{said} {_unit(chart)}" + (f", {column.limited_by}" if column.limited_by else "")


def _cell(cell: ChartCell | None, chart: Chart) -> list[str]:
    """Depth, and margins below it; two empty texts where the hub is larger than the outside."""
    if cell is None:
        return ["", ""]
    if cell.depth is None or cell.margin is None or cell.margin_low is None:
        return ["none", ""]
    more = ("+" if cell.or_more else "") + (DAGGER if cell.leaves_skin else "")
    return [
        f"{depth_number(cell.depth, chart.units)}{more}",
        f"{_times(cell.margin)}, {_times(cell.margin_low)}",
    ]


def _skin(chart: Chart, show: Show) -> str:
    """What the dagger means, for the head of the table; empty where no depth has one."""
    if not any(cell.leaves_skin for cell in chart.cells):
        return ""
    least = show.length(chart.skin_depth)
    return f"{DAGGER}: does not get under the skin of a casting, {least} at least; from bar only."


def _times(margin: float) -> str:
    """A margin with one figure after the point, never rounded up.

    >>> _times(1.99), _times(1.0)
    ('1.9', '1.0')
    """
    return f"{int(margin * 10 + 1e-9) / 10:.1f}"


def _cuts_how(chart: Chart, show: Show) -> str:
    return (
        f"Depth on radius in {SPOKEN[chart.units]}, at {show.feed(chart.feed)}, for a wheel of "
        "this outside pressed as far past touch as the table says (the bore, the press: it allows "
        "no more). Below it, how many times the grip holds that cut, likely and in the poor case "
        "(1 in 20). None: no cut worth setting has the usual reserve, and a second dog on the hub "
        "takes the torque. A plus: the chart stops there; lathe and tool give out first. Only "
        "slipping is judged here. Prove the grip with a weight before cutting."
    )


def _source(name: str) -> str:
    words = citation(name)
    return {"ours": "ours", "practice": "common practice, no source", "stated": "as stated"}.get(
        name, words
    )


def _sources(chart: Chart) -> str:
    named = "; ".join(s.partition(": ")[2].rstrip(".") for s in chart.sources)
    return f"Sources: {named}." if named else ""
