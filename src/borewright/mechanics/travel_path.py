"""Every state of a contact as the overlap grows: exact, by following the strips that touch.

With loads q, `q >= 0`, `w = G q - (t - shape) >= 0`, `q w = 0`: for growing t the loads run
straight from one t, at which a strip begins to touch or lets go, to the next. One linear solve per
such t gives the whole family, so nothing is interpolated. Source: parametric complementarity
(Cottle, Pang and Stone, The Linear Complementarity Problem, ch. 4.5, from memory); here with all
strips that change at one t exchanged at once and the next piece proven, else found anew by
`contact.pressed`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.errors.tree import OutsideModel
from borewright.mechanics.contact import piece, pressed
from borewright.mechanics.num import Floats

HAIR: Final = 1e-9
"""Changes nearer to each other than this share of the whole are one."""

AHEAD: Final = 1e-6
"""Where the strips that touch beyond a change are looked for, as a share of the whole."""

WRONG: Final = 1e-9
"""A load or gap of the wrong sign beyond this share of the largest is an error."""


@dataclass(frozen=True, slots=True, eq=False)
class PressPath:
    """`raised` (k,) rising, `loads` (k, n) at each, `slope` (n,) of the loads beyond the last."""

    raised: Floats
    loads: Floats
    slope: Floats

    def at(self, raised: Floats) -> Floats:
        """Loads (..., n) at t (...); nothing below the first.

        >>> path = pressed_path(np.diag([1.0, 4.0]), np.array([0.0, 1.0]))
        >>> path.at(np.array([-1.0, 0.5, 3.0])).tolist()
        [[0.0, 0.0], [0.5, 0.0], [3.0, 0.5]]
        """
        t = np.asarray(raised, dtype=np.float64)
        k = np.clip(np.searchsorted(self.raised, t, side="right") - 1, 0, len(self.raised) - 1)
        steps = np.diff(self.raised)
        slopes = np.vstack([np.diff(self.loads, axis=0) / steps[:, None], self.slope])
        along = np.maximum(t - self.raised[k], 0.0)
        return np.asarray(self.loads[k] + along[..., None] * slopes[k])


def pressed_path(gives: Floats, shape: Floats) -> PressPath:
    """The family for `gives` (n, n), symmetric positive definite, and `shape` (n,).

    OutsideModel where it does not come to an end.
    """
    size = max(float(np.ptp(shape)), float(np.abs(shape).max()), 1e-30)
    head = _one_by_one(gives, shape, size)
    if head.whole:
        return PressPath(head.raised, head.loads, head.slope)
    t = float(head.raised[-1])
    rows = list(zip(head.raised, head.loads, strict=True))
    active = head.active if head.active.any() else _beyond(gives, shape, t + AHEAD * size)
    for _ in range(40 * len(shape)):
        now = _stretch(gives, shape, active)
        if not now.holds(t + AHEAD * size, size):
            active = _beyond(gives, shape, t + AHEAD * size)
            now = _stretch(gives, shape, active)
        changes = now.changes()
        after = changes[np.isfinite(changes) & (changes > t + HAIR * size)]
        if not len(after):
            break
        t = float(after.min())
        rows.append((t, np.maximum(t * now.slope - now.start, 0.0)))
        active = active ^ ((changes > t - HAIR * size) & (changes < t + HAIR * size))
    else:
        raise OutsideModel("contact", len(shape), "strips that come to rest")
    return PressPath(np.array([r for r, _ in rows]), np.array([q for _, q in rows]), now.slope)


@dataclass(frozen=True, slots=True, eq=False)
class _Head:
    """The path as far as strips do nothing but begin to touch, one by one; `active` beyond it.

    `whole`: nothing changes after it, and `slope` goes on.
    """

    raised: Floats
    loads: Floats
    active: np.ndarray
    slope: Floats
    whole: bool


def _one_by_one(gives: Floats, shape: Floats, size: float) -> _Head:
    """The path as if strips touched in the order of their gaps, as far as that is proven."""
    count = len(shape)
    order = np.argsort(shape, kind="stable")
    found, slope, active = np.zeros((1, count)), np.zeros(count), np.zeros(count, dtype=bool)
    try:
        t, loads, gaps, slopes = _in_turn(gives[np.ix_(order, order)], shape[order])
    except np.linalg.LinAlgError:  # whoever asks next says so
        return _Head(shape[order[:1]], found, active, slope, False)
    far = _proven(t, loads, gaps, size)
    if far == 0:
        return _Head(shape[order[:1]], found, active, slope, False)
    found = np.zeros((far, count))
    found[:, order] = loads[:far]
    slope[order] = slopes[far - 1]
    active[order[:far]] = True
    return _Head(t[:far], found, active, slope, far == count and bool((slope >= 0).all()))


def _in_turn(gives: Floats, shape: Floats) -> tuple[Floats, Floats, Floats, Floats]:
    """Where each strip would begin to touch if they did so in turn; one factorisation holds it all.

    With G = L L', y = L^-1 1 and z = L^-1 shape: strip k begins at t = z_k / y_k, and loads and
    gaps while k strips touch are sums of k terms. Returns t (n,), loads and gaps (n, n) at each,
    and the slope (n, n) of the loads after each.
    """
    lower = np.linalg.cholesky(gives)
    back = np.linalg.inv(lower)
    y, z = back.sum(axis=1), back @ shape
    t = z / np.where(y > 0, y, np.nan)
    slopes, starts = (np.cumsum(back * x[:, None], axis=0) for x in (y, z))
    opening, base = (np.cumsum(lower * x, axis=1).T for x in (y, z))
    loads, gaps = np.zeros_like(gives), shape - t[:, None]
    loads[1:] = t[1:, None] * slopes[:-1] - starts[:-1]
    gaps[1:] += t[1:, None] * opening[:-1] - base[:-1]
    return t, loads, gaps, slopes


def _proven(t: Floats, loads: Floats, gaps: Floats, size: float) -> int:
    """How many strips begin to touch in turn: the earlier ones press, the later ones are clear."""
    earlier = np.tri(len(t), k=-1, dtype=bool)
    good = ((loads > 0) | ~earlier).all(axis=1)
    good &= ((gaps > HAIR * size) | np.tri(len(t), dtype=bool)).all(axis=1)
    good &= np.diff(t, prepend=-np.inf) > HAIR * size
    return len(t) if good.all() else int(np.argmin(good))


def _beyond(gives: Floats, shape: Floats, t: float) -> np.ndarray:
    return pressed(gives, t - shape) > 0


@dataclass(frozen=True, slots=True, eq=False)
class _Stretch:
    """While the same strips touch: loads t slope - start, gaps t opening + base; all (n,)."""

    active: np.ndarray
    slope: Floats
    start: Floats
    opening: Floats
    base: Floats

    def holds(self, t: float, size: float) -> bool:
        """Whether loads and gaps have their signs there; `size` of the gaps."""
        loads, gap = t * self.slope - self.start, t * self.opening + self.base
        low, high = float(loads.min()), float(loads.max())
        least = float(gap[~self.active].min(initial=0.0))
        return bool(low >= -WRONG * high and least >= -WRONG * (size + abs(t)))

    def changes(self) -> Floats:
        """The t (n,) at which each strip would change; without end where it would not."""
        with np.errstate(divide="ignore", invalid="ignore"):
            lets_go = np.where(self.slope < 0, self.start / self.slope, np.inf)
            touches = np.where(self.opening < 0, -self.base / self.opening, np.inf)
        return np.asarray(np.where(self.active, lets_go, touches))


def _stretch(gives: Floats, shape: Floats, active: np.ndarray) -> _Stretch:
    slope, start = piece(gives, shape, active)
    given = gives @ np.column_stack([slope, start])
    return _Stretch(active, slope, start, given[:, 0] - 1, shape - given[:, 1])
