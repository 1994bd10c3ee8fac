"""Mesh lines through given marks: fine where the pressure is, coarser with distance from it."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from borewright.mechanics.num import Floats
from borewright.quantities.si import Ratio


def graded_lines(marks: Sequence[Ratio], near: Ratio, first: Ratio, growth: Ratio) -> Floats:
    """Lines through every mark; a piece at distance x from `near` is about first + growth x long.

    Rising; at least two pieces between two marks. `near` lies at or beyond one end of the marks.

    >>> graded_lines([0.0, 1.0], 0.0, 0.2, 0.5).round(3).tolist()
    [0.0, 0.207, 0.522, 1.0]
    """
    lines = [np.array(marks[:1], dtype=float)]
    lines += [_cut(a, b, near, first, growth)[1:] for a, b in pairwise(marks)]
    return np.concatenate(lines)


def _cut(a: float, b: float, near: float, first: float, growth: float) -> Floats:
    # Along t = ln(1 + growth x distance / first) / growth a piece of the wanted size is 1 long.
    ta, tb = (np.log1p(growth * abs(x - near) / first) / growth for x in (a, b))
    count = max(2, int(np.ceil(abs(tb - ta) - 1e-9)))
    away = first * np.expm1(growth * np.linspace(ta, tb, count + 1)) / growth
    lines = near + np.sign((a + b) / 2 - near) * away
    lines[0], lines[-1] = a, b
    return np.asarray(lines)


END_SHARE = 0.4
"""Strips at the ends of a bearing are shorter than the mean by this share."""

FIRST_CUT = 0.4
"""Where the strip at either end is cut again, over its length: stress is steep at a sharp edge."""


def strip_edges(start: Ratio, end: Ratio, marks: Sequence[Ratio], count: int) -> Floats:
    """About `count` + 2 strips from start to end, finer at both, an edge at every mark between.

    >>> strip_edges(0.0, 1.0, [0.3], 4).round(3).tolist()
    [0.0, 0.075, 0.186, 0.3, 0.5, 0.814, 0.925, 1.0]
    """
    inner = [m for m in marks if start < m < end]
    share = np.linspace(0.0, 1.0, count + 1)
    even = start + (end - start) * (share - END_SHARE * np.sin(2 * np.pi * share) / (2 * np.pi))
    bounds = [start, *inner, end]
    edges = np.concatenate([[start], *(_within(a, b, even) for a, b in pairwise(bounds))])
    first = start + FIRST_CUT * (edges[1] - start)
    last = end - FIRST_CUT * (end - edges[-2])
    return np.concatenate([edges[:1], [first], edges[1:-1], [last], edges[-1:]])


def _within(a: float, b: float, even: Floats) -> Floats:
    """The even edges between two marks, none a hair from either; then the second mark."""
    inside = even[(even > a) & (even < b)]
    least = 0.4 * float(np.diff(even).min())
    return np.append(inside[(inside - a > least) & (b - inside > least)], b)
