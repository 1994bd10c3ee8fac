"""How an endless solid bar gives way under bands of pressure: a closed form, no mesh.

A pressure p cos(k z) on a solid bar of radius a presses its surface inward by g(k a) p a / E:

    g(x) = 2 (1 - v^2) / (x^2 (c^2 - 1) - 2 (1 - v)),    c = I0(x) / I1(x).

Derived here from Love's function (A I0(kr) + B kr I1(kr)) sin kz with no shear on the surface: for
long waves g is Lame's 1 - v, for short ones the half-plane's 2 (1 - v^2) / x. What one band does
fades along the bar as exp(-5.4 z/d), so a bar loaded again and again, far apart, is the endless
bar, and its waves are counted instead of integrated. The first powers of 1/x are summed to the end
in closed form (polylogarithms: Lewin, Polylogarithms and Associated Functions, from memory); what
is left of g is nothing beyond x = 40.
"""

from __future__ import annotations

from functools import cache
from math import factorial, pi
from typing import Final

import numpy as np

from borewright.mechanics.num import Floats, distinct
from borewright.quantities.si import Ratio

CLEAR: Final = 5.0
"""How far (over d) the loads end before they begin again: what reaches so far is 1e-12."""

SHORTEST: Final = 40.0
"""Waves up to this x one by one; beyond it the powers of 1/x are g to 1e-9."""

POWERS: Final = 5
"""How many powers of 1/x are summed in closed form."""

DEEP: Final = 40
"""Where the fraction for I0 / I1 begins: rounding is all that is left of it up to `SHORTEST`."""

SERIES: Final = 36
"""Highest power of the angle, at most half a turn, in the sums over all waves."""


def endless_bar(strips: Floats, poisson: Ratio) -> Floats:
    """Mean inward movement (n, n), over d, of every strip (n, 2) for p h = 1 on every other.

    Per unit of modulus; lengths over d. Symmetric positive definite for strips that do not overlap.
    Within 1e-7 of the integrals, beside what a strip does to itself. Weakness: the bar has no ends.

    >>> edges = np.linspace(0.0, 8.0, 81)  # Lame in the middle: (1 - v) / 2 on radius over d
    >>> strips = np.column_stack([edges[:-1], edges[1:]])
    >>> round(float((endless_bar(strips, 0.29) @ np.diff(edges))[40]), 6)
    0.355
    """
    span = float(strips.max() - strips.min())
    period = max(span + CLEAR, 2 * span)
    step = pi / period  # of x = k a from one wave to the next
    x = step * np.arange(1.0, int(SHORTEST / step) + 1)
    powers = _powers(poisson)
    left = _pressed_in(x, poisson) - np.polyval([*powers[::-1], 0.0], 1 / x)
    edges = distinct(strips.ravel().tolist())
    place = np.searchsorted(edges, strips)
    start, end = place.reshape(strips.shape).T
    lengths = strips[:, 1] - strips[:, 0]
    phase = 2 * np.outer(edges - edges[0], x)
    waves = np.concatenate([np.sin(phase), np.cos(phase)], axis=1)
    means = (waves[end] - waves[start]) / lengths[:, None]
    mean = (means * np.tile(left / (4 * x * x), 2)) @ means.T + 0.5 * (1 - poisson)
    all_waves = _twice_summed(np.abs(edges[:, None] - edges) * (2 * step), powers, step)
    across = all_waves[end] - all_waves[start]
    mean -= (across[:, end] - across[:, start]) / np.outer(lengths, lengths)
    return np.asarray(0.5 * (mean + mean.T) / period)


def _pressed_in(x: Floats, poisson: Ratio) -> Floats:
    """g at x above nothing and up to `SHORTEST`."""
    ratio = (DEEP + np.sqrt(DEEP**2 + x * x)) / x  # of I at DEEP - 1 to I at DEEP, nearly
    for order in range(DEEP - 1, 0, -1):
        ratio = 2 * order / x + 1 / ratio
    return np.asarray(2 * (1 - poisson**2) / (x * x * (ratio * ratio - 1) - 2 * (1 - poisson)))


def _powers(poisson: Ratio) -> Floats:
    """Factors (POWERS,) of 1/x, 1/x^2 … in g where x is large."""
    ratio = [1.0]  # of I0 / I1, whose slope is 1 - ratio^2 + ratio / x
    for n in range(1, POWERS):
        ratio.append((n * ratio[n - 1] - sum(ratio[i] * ratio[n - i] for i in range(1, n))) / 2)
    below = [(1 + n) * r for n, r in enumerate(ratio)]
    below[1] -= 2 * (1 - poisson)
    found = [1.0]
    for n in range(1, POWERS):
        found.append(-sum(below[i] * found[n - i] for i in range(1, n + 1)))
    return 2 * (1 - poisson**2) * np.array(found)


def _twice_summed(angle: Floats, powers: Floats, step: float) -> Floats:
    """All waves of the powers, summed twice along z, at angles from nothing to half a turn."""
    factors = -powers / step ** np.arange(1, POWERS + 1) / (2 * step) ** 2
    even, logs, odd = (factors @ table for table in _cosine_sums())
    square = angle * angle
    found = np.polyval(even[::-1], square) + angle * np.polyval(odd[::-1], square)
    log = np.log(np.where(angle > 0, angle, 1.0))
    return np.asarray(found + log * np.polyval(logs[::-1], square))


@cache
def _cosine_sums() -> tuple[Floats, Floats, Floats]:
    """Sums of cos(n t) / n^s over all n, s = 3, 4 …, by powers of t: even ones, those times ln t,
    and odd ones; each (POWERS, …)."""
    even = np.zeros((POWERS, SERIES // 2 + 1))
    logs, odd = (np.zeros((POWERS, POWERS // 2 + 2)) for _ in range(2))
    zeta = _zetas()
    for row, s in enumerate(range(3, POWERS + 3)):
        for k in range(0, SERIES + 1, 2):
            if k != s - 1:
                even[row, k // 2] = (-1) ** (k // 2) * zeta[s - k] / factorial(k)
        ends = (-1) ** (s // 2) / factorial(s - 1)
        if s % 2:
            even[row, s // 2] = ends * sum(1 / k for k in range(1, s))
            logs[row, s // 2] = -ends
        else:
            odd[row, s // 2 - 1] = ends * pi / 2
    return even, logs, odd


def _zetas() -> dict[int, float]:
    """Riemann's zeta at whole numbers, but 1: Euler and Maclaurin's sum, then its reflection."""
    n = 100.0
    s = np.arange(2.0, SERIES + 2)
    found = (np.arange(1, n)[:, None] ** -s).sum(axis=0) + n ** (1.0 - s) / (s - 1)
    found += n**-s * (0.5 + s / (12 * n) - s * (s + 1) * (s + 2) / (720 * n**3))
    zeta = {0: -0.5, **dict(zip(range(2, SERIES + 2), found.tolist(), strict=True))}
    for k in range(2, SERIES + 1, 2):
        zeta[-k] = 0.0
        zeta[1 - k] = 2 * (-1) ** (k // 2) * factorial(k - 1) / (2 * pi) ** k * zeta[k]
    return zeta
