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

        >>> path = pressed_path(np.diag([1.0, 2.0]), np.array([0.0, 1.0]))
        >>> path.at(np.array([-1.0, 0.5, 3.0])).tolist()
        [[0.0, 0.0], [0.5, 0.0], [3.0, 1.0]]
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
    t = float(shape.min())
    rows: list[tuple[float, Floats]] = [(t, np.zeros(len(shape)))]
    active = _beyond(gives, shape, t + AHEAD * size)
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
