"""Section lines: where 45 degree lines cross a region."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, floor, sqrt

from borewright.drawing.scene import Hatch, Point


def hatch_lines(region: Hatch) -> tuple[tuple[Point, Point], ...]:
    """The line pieces that hatch a region, on one grid through the paper's origin.

    Contours may share edges (the cells of a union of rectangles): abutting pieces are joined.

    >>> square = Hatch((((0, 0), (2, 0), (2, 2), (0, 2)),), spacing=sqrt(2))
    >>> [(round(a[0]), round(b[0])) for a, b in hatch_lines(square)]
    [(0, 2)]
    """
    if region.falling:
        return tuple((_across(a), _across(b)) for a, b in hatch_lines(_mirrored(region)))
    sums = [x + y for contour in region.contours for x, y in contour]
    if not sums:
        return ()
    step = region.spacing * sqrt(2)
    rows = range(ceil(min(sums) / step), floor(max(sums) / step) + 1)
    return tuple(piece for k in rows for piece in _pieces(region, k * step))


def _mirrored(region: Hatch) -> Hatch:
    """The region seen from behind: what falls now rises."""
    contours = tuple(tuple(_across(p) for p in contour) for contour in region.contours)
    return replace(region, contours=contours, falling=False)


def _across(point: Point) -> Point:
    return -point[0], point[1]


def _pieces(region: Hatch, level: float) -> list[tuple[Point, Point]]:
    xs = sorted(x for contour in region.contours for x in _crossings(contour, level))
    joined = _joined(list(zip(xs[::2], xs[1::2], strict=False)))
    return [((a, level - a), (b, level - b)) for a, b in joined if b - a > 1e-6]


def _crossings(contour: tuple[Point, ...], level: float) -> list[float]:
    found = []
    for (x1, y1), (x2, y2) in zip(contour, (*contour[1:], contour[0]), strict=True):
        low, high = x1 + y1, x2 + y2
        # Half-open, so that a line through a corner meets it once.
        if (low <= level) != (high <= level):
            found.append(x1 + (x2 - x1) * (level - low) / (high - low))
    return found


def _joined(spans: list[tuple[float, float]]) -> list[tuple[float, float]]:
    joined: list[tuple[float, float]] = []
    for a, b in spans:
        if joined and a - joined[-1][1] < 1e-6:
            joined[-1] = (joined[-1][0], b)
        else:
            joined.append((a, b))
    return joined
