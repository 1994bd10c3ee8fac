"""The inset: interference along the bore, drawn far higher than it is long."""

from __future__ import annotations

from math import floor, log10

from borewright.answer.picture import Layout
from borewright.drawing.dimension import SIZE, fitting
from borewright.drawing.measure import text_width
from borewright.drawing.scene import Hatch, Item, Line, LineKind, Path, Point, Scene, Text
from borewright.quantities.show import Show

LINE = 4.0
_PLOT = 13.0
"""Height on paper of the largest interference, mm."""
NEAR = 0.01
"""Share of the bore's length from its end at which grip counts as reaching it."""
_BELOW = 3.0
"""Room under the zero line for where there is clearance, mm."""


def inset(layout: Layout, show: Show, width: float = 62.0) -> Scene:
    """Interference on diameter against depth behind the leading face, exaggerated.

    Dashed as pressed, thick what is left when the peaks of both surfaces have flattened; hatched
    where it grips. Leading face at the left, as in the side view.
    """
    zs = layout.interference_z
    kept = _unclipped(layout.interference, layout.interference_kept)
    most = max(*layout.interference, 0.0) if layout.interference else 0.0
    if most <= 0.0 or len(zs) < 2:
        return _nothing(width)
    plot = _Plot(zs, most, width)
    items = (
        *_caption(plot),
        *_axes(plot, layout, show),
        *_area(plot, zs, kept),
        Path(plot.line(zs, layout.interference), LineKind.HIDDEN, name="interference"),
        Path(plot.line(zs, kept), LineKind.VISIBLE, name="interference-kept"),
        *_ends(plot, zs, kept, layout.grips, show),
    )
    return Scene(width, plot.zero + _BELOW + 3 * LINE + 0.5, items)


class _Plot:
    """The plot's own frame: depth to the right, interference up."""

    def __init__(self, zs: tuple[float, ...], most: float, width: float) -> None:
        self.left, self.right = 1.0, width - 3.0
        self.zero = 3.2 + LINE + 1.6 + _PLOT
        self.zs, self.most = zs, most
        self.across = (self.right - self.left) / (zs[-1] - zs[0])
        self.upward = _PLOT / most

    @property
    def times(self) -> float:
        """How many times higher than long the plot is drawn, to one digit."""
        ratio = self.upward / self.across
        step = 10.0 ** floor(log10(ratio))
        return round(ratio / step) * step

    def x(self, z: float) -> float:
        return self.left + (z - self.zs[0]) * self.across

    def y(self, interference: float) -> float:
        return self.zero - max(interference * self.upward, -_BELOW)

    def line(self, zs: tuple[float, ...], values: tuple[float, ...]) -> tuple[Point, ...]:
        """The curve, left out where it runs below the plot."""
        pairs = zip(zs, values, strict=True)
        return tuple((self.x(z), self.y(v)) for z, v in pairs if v * self.upward >= -_BELOW)


def _nothing(width: float) -> Scene:
    words = "No interference along the bore to draw."
    return Scene(width, 5.0, (Text(0.0, 3.2, words, SIZE),))


def _caption(plot: _Plot) -> tuple[Item, ...]:
    words = f"Squeeze in the bore (height × {plot.times:,.0f})"
    return (Text(0.0, 3.2, words, SIZE, bold=True, name="inset-caption"),)


def _axes(plot: _Plot, layout: Layout, show: Show) -> tuple[Item, ...]:
    foot = plot.zero + _BELOW + 0.9 * SIZE
    top = plot.y(plot.most)
    room = plot.right - plot.left - text_width(_near_words(plot, layout, show), SIZE) - 3.0
    return (
        Line(plot.left, plot.zero, plot.right, plot.zero, LineKind.THIN, "inset-zero"),
        Line(plot.left, plot.zero + 1.0, plot.left, top - 1.5, LineKind.THIN, "inset-leading"),
        Line(plot.right, plot.zero + 1.0, plot.right, top - 1.5, LineKind.THIN, "inset-far"),
        Line(plot.left - 0.8, top, plot.left + 0.8, top, LineKind.THIN),
        Text(plot.left + 2.0, top - 0.6, f"{show.small(plot.most)} on diameter", SIZE),
        Text(plot.left, foot, _near_words(plot, layout, show), SIZE),
        Text(plot.right, foot, fitting(_far_words(plot, layout, show), room), SIZE, "end"),
    )


def _near_words(plot: _Plot, layout: Layout, show: Show) -> str:
    """What stands at the left: the leading face, or how far behind it the bore begins to bear."""
    face, start = f"face {layout.leading_face}", plot.zs[0]
    if start <= 0:
        return face
    from_face = f" from {face}"
    room = (plot.right - plot.left) / 2 - text_width(from_face, SIZE)
    return fitting(show.length(start), room) + from_face


def _far_words(plot: _Plot, layout: Layout, show: Show) -> str:
    """What stands at the right: the far face, or where the bore ends before it."""
    end = plot.zs[-1]
    where = "far face" if end >= layout.work_length - 1e-9 else "bore ends"
    return f"{where}, {show.length(end)}"


def _area(plot: _Plot, zs: tuple[float, ...], kept: tuple[float, ...]) -> tuple[Item, ...]:
    tops = plot.line(zs, tuple(max(v, 0.0) for v in kept))
    contour = ((plot.x(zs[0]), plot.zero), *tops, (plot.x(zs[-1]), plot.zero))
    return (Hatch((contour,), 1.3, "grip"),)


def _ends(
    plot: _Plot,
    zs: tuple[float, ...],
    kept: tuple[float, ...],
    grips: float | None,
    show: Show,
) -> tuple[Item, ...]:
    """Lines where contact begins and ends, and the sentence that says so.

    Two bodies that give way part a little before or after the squeeze is gone: `grips` says where.
    """
    crossings = _zeros(zs, kept)
    if grips is not None and kept[0] > 0 and len(crossings) <= 1:
        end = zs[0] + grips
        crossings = [end] if end < zs[-1] - NEAR * (zs[-1] - zs[0]) else []
    foot = plot.zero + _BELOW + 0.9 * SIZE + LINE
    lines = tuple(
        Line(plot.x(z), plot.zero + 1.5, plot.x(z), plot.zero - 4.0, LineKind.THIN, "contact-end")
        for z in crossings
    )
    return (
        *lines,
        Text(plot.left, foot, _sentence(zs, kept, crossings, show), SIZE),
        Text(plot.left, foot + LINE, "dashed: before the peaks flatten", SIZE),
    )


def _sentence(
    zs: tuple[float, ...], kept: tuple[float, ...], crossings: list[float], show: Show
) -> str:
    if max(kept) <= 0.0:
        return "no grip is left once peaks flatten"
    if kept[0] > 0:
        begin, end = zs[0], crossings[-1] if crossings else zs[-1]
    else:
        begin, end = crossings[0], crossings[-1] if kept[-1] <= 0 else zs[-1]
    if begin == zs[0] and end == zs[-1]:
        return "grips along the whole bore"
    if begin == 0.0:
        return f"grips the first {show.length(end)}"
    return f"grips {show.length(begin)} to {show.length(end)}"


def _unclipped(over: tuple[float, ...], kept: tuple[float, ...]) -> tuple[float, ...]:
    """What is kept, carried on below zero where a plan says 0, so that the end of grip is exact."""
    losses = [a - b for a, b in zip(over, kept, strict=True) if b > 0]
    if not losses:
        return kept
    return tuple(b if b != 0 else a - losses[-1] for a, b in zip(over, kept, strict=True))


def _zeros(zs: tuple[float, ...], values: tuple[float, ...]) -> list[float]:
    """Depths where the values pass through zero, by straight lines between the points."""
    found = []
    for z1, z2, a, b in zip(zs, zs[1:], values, values[1:], strict=False):
        if (a > 0) != (b > 0):
            found.append(z1 + (z2 - z1) * a / (a - b))
    return found
