"""The pressure along the bore, drawn under the section at the section's own places."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import ceil

from borewright.answer.pressed import PressedPicture, StripPressure
from borewright.drawing.dimension import SIZE, Span, level_dimension, without_other_unit
from borewright.drawing.measure import text_width
from borewright.drawing.pressed_frame import WIDTH, PressedFrame
from borewright.drawing.scene import Item, Line, LineKind, Path, Text
from borewright.mechanics.bands import round_step
from borewright.quantities.show import Show

HEIGHT = 24.0
"""Height of the largest pressure on paper, mm."""

MOST_MARKS = 5
"""Most marks on its scale above zero."""

ORDINATE = 2.0
"""From one of the thin lines under the curve to the next, mm."""

_HEADS = 7.5
"""Room for the arrow heads of a dimension with its words inside, mm."""


class ChartFrame:
    """`base` is the height of no pressure; `per_pascal` mm on paper."""

    def __init__(self, frame: PressedFrame, picture: PressedPicture, base: float) -> None:
        self.frame, self.base = frame, base
        self.most = max(strip.pressure for strip in picture.pressure)
        self.per_pascal = HEIGHT / self.most

    def y(self, pressure: float) -> float:
        """The height of a pressure (Pa)."""
        return self.base - self.per_pascal * pressure


def chart_items(
    chart: ChartFrame, picture: PressedPicture, show: Show, size: float, symbol: str
) -> tuple[Item, ...]:
    """Curve, scale, faces and where contact ends; `size` (Pa) and `symbol` are the unit's."""
    return (
        *_scale(chart, picture, size, symbol),
        *_ordinates(chart, picture),
        *_curves(chart, picture),
        *_contact(chart, picture, show),
    )


def _ends(picture: PressedPicture) -> tuple[float, float]:
    first, last = picture.pressure[0], picture.pressure[-1]
    return first.z - first.length / 2, last.z + last.length / 2


def _scale(chart: ChartFrame, picture: PressedPicture, size: float, symbol: str) -> Iterator[Item]:
    left, right = (chart.frame.x(z) for z in _ends(picture))
    step = round_step(chart.most / size, MOST_MARKS)
    yield Line(left, chart.base, right, chart.base, name="chart-base")
    yield Line(left, chart.base, left, chart.y(chart.most) - 1.5, LineKind.THIN, "chart-leading")
    yield Line(right, chart.base, right, chart.y(chart.most) - 1.5, LineKind.THIN, "chart-far")
    for k in range(int(chart.most / size / step) + 1):
        y = chart.y(k * step * size)
        words = f"{k * step:,.10g}"
        yield Line(left - 1.2, y, left, y, LineKind.THIN, "chart-mark")
        yield Text(left - 1.8, y + 0.33 * SIZE, words, SIZE, "end", mask=False, name="chart-number")
    top = chart.y(chart.most) - 3.4
    yield Text(
        left, top, f"Pressure along the bore, {symbol}", SIZE, bold=True, name="chart-caption"
    )


def _ordinates(chart: ChartFrame, picture: PressedPicture) -> Iterator[Item]:
    """Thin lines from the base to the curve, evenly along it."""
    for run in _runs(picture.pressure):
        places = [(chart.frame.x(s.z), chart.y(s.pressure)) for s in run]
        for (x1, y1), (x2, y2) in pairwise(places):
            for k in range(ceil(x1 / ORDINATE), ceil(x2 / ORDINATE)):
                x = k * ORDINATE
                y = y1 + (y2 - y1) * (x - x1) / (x2 - x1)
                if chart.base - y > 0.3:
                    yield Line(x, chart.base, x, y, LineKind.THIN, "chart-ordinate")


def _curves(chart: ChartFrame, picture: PressedPicture) -> Iterator[Item]:
    """Both pressures over each stretch of bore with metal at it."""
    for run in _runs(picture.pressure):
        tight = tuple((chart.frame.x(s.z), chart.y(s.pressure)) for s in run)
        eased = tuple((chart.frame.x(s.z), chart.y(s.pressure_eased)) for s in run)
        yield Path(tight, LineKind.VISIBLE, name="pressure")
        yield Path(eased, LineKind.HIDDEN, name="pressure-eased")


def _runs(strips: tuple[StripPressure, ...]) -> list[list[StripPressure]]:
    runs: list[list[StripPressure]] = []
    for strip in strips:
        last = runs[-1][-1] if runs else None
        joined = last is not None and (
            abs(strip.z - strip.length / 2 - last.z - last.length / 2) < 1e-3 * strip.length
        )
        if joined:
            runs[-1].append(strip)
        else:
            runs.append([strip])
    return runs


def _contact(chart: ChartFrame, picture: PressedPicture, show: Show) -> Iterator[Item]:
    low, high = _ends(picture)
    start, end = picture.contact_from, picture.contact_to
    whole = start <= low * (1 + 1e-9) + 1e-9 and end >= high - 1e-9
    a, b = chart.frame.x(start), chart.frame.x(end)
    length = show.length(end - start)
    parts = len(_runs(picture.pressure))
    said = "contact along the whole bore" if whole else "contact"
    said = "first to last contact" if parts > 1 else said
    short = without_other_unit(length)
    words = (
        f"{said}, {length}",
        f"{said}, {short}",
        f"{said.partition(' along')[0]}, {short}",
        short,
    )
    inside = tuple(w for w in words if text_width(w, SIZE) + _HEADS < b - a)
    span = Span(a, chart.base + 0.6, b, chart.base + 0.6, inside or words[1:], "contact")
    yield from level_dimension(span, chart.base + 4.4, 0.0, WIDTH)
    if not whole:
        yield Line(b, chart.base, b, chart.base - 3.0, LineKind.THIN, "contact-end")
