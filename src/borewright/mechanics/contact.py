"""Where two elastic bodies pushed into each other press, and how hard: a complementarity problem.

Find q with `q >= 0`, `w = G q - g >= 0`, `q w = 0`: G (n, n) symmetric positive definite is what
both bodies together give, g (n,) the overlap that would be without any give. Scales of G and g do
not matter: both are made even first.

Method: block principal pivoting (Judice and Pires, 1994), which exchanges all strips of the wrong
sign at once and, where that has not helped for three rounds, one at a time by the least index
(Murty, 1974), which always ends for a positive definite G. The answer is checked and a wrong one
raised, never returned.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from borewright.errors.tree import OutsideModel
from borewright.mechanics.num import Floats

SAME: Final = 1e-10
"""Signs and residuals are judged to this share of the largest value, in the even scale."""

PATIENCE: Final = 3
"""Rounds of block exchange that may pass without fewer wrong signs."""

CHECKED: Final = 1e-7
"""A residual above this share of the largest overlap is a failure, not an answer."""


def pressed(gives: Floats, overlap: Floats) -> Floats:
    """Loads q (n,) of the strips. OutsideModel where G is not positive definite or nothing settles.

    >>> pressed(np.array([[2.0, 1.0], [1.0, 2.0]]), np.array([3.0, -1.0])).tolist()
    [1.5, 0.0]
    """
    own = np.diagonal(gives)
    if not (np.isfinite(own).all() and (own > 0).all()):
        raise OutsideModel("compliance", float(own.min()), "above zero")
    scale = np.sqrt(own)
    even = gives / np.outer(scale, scale)
    wanted = overlap / scale
    size = float(np.abs(wanted).max(initial=0.0))
    if size == 0 or (wanted <= 0).all():
        return np.zeros(len(overlap))
    loads = _settled(even, wanted / size)
    _check(even, wanted / size, loads)
    return np.asarray(np.maximum(loads, 0.0) * size / scale)


def _settled(even: Floats, wanted: Floats) -> Floats:
    active = wanted > 0
    fewest, patience = len(wanted) + 1, PATIENCE
    for _ in range(_most_rounds(len(wanted))):
        loads, wrong = _tried(even, wanted, active)
        count = int(wrong.sum())
        if count == 0:
            return loads
        if count < fewest:
            fewest, patience = count, PATIENCE
        elif patience > 0:
            patience -= 1
        else:
            last = np.flatnonzero(wrong)[-1]
            active[last] = not active[last]
            continue
        active ^= wrong
    raise OutsideModel("contact", len(wanted), "strips whose signs settle")


def _most_rounds(count: int) -> int:
    return 2000 + 200 * count


def _tried(even: Floats, wanted: Floats, active: np.ndarray) -> tuple[Floats, np.ndarray]:
    """Loads with these strips touching, and the strips of the wrong sign."""
    loads = np.zeros(len(wanted))
    if active.any():
        loads[active] = np.linalg.solve(even[np.ix_(active, active)], wanted[active])
    gap = even @ loads - wanted
    small = SAME * max(1.0, float(np.abs(loads).max()))
    return loads, (active & (loads < -small)) | (~active & (gap < -small))


def _check(even: Floats, wanted: Floats, loads: Floats) -> None:
    """OutsideModel where the answer does not answer."""
    held = np.maximum(loads, 0.0)
    gap = even @ held - wanted
    worst = max(float(-gap.min()), float(np.abs(gap[held > 0]).max(initial=0.0)))
    if not worst <= CHECKED * max(1.0, float(np.abs(held).max())):
        raise OutsideModel("residual of the contact", worst, f"at most {CHECKED:g}")


def piece(gives: Floats, shape: Floats, active: np.ndarray) -> tuple[Floats, Floats]:
    """Slope and start (n,): loads are t slope - start at overlap t - shape, `active` touching."""
    found = np.zeros((len(shape), 2))
    right = np.column_stack([np.ones(int(active.sum())), shape[active]])
    found[active] = np.linalg.solve(gives[np.ix_(active, active)], right)
    return found[:, 0], found[:, 1]


ENTERS: Final = 0.38
"""How far into a strip the contact has come when the strip begins to take load, as a share of it.

Held to Hertz's line contact, whose half-width is known: 0.36 to 0.385 from the second strip on.
"""


def end_of_contact(
    strips: Floats, gives: Floats, overlap: Floats, loads: Floats, enters: float = ENTERS
) -> float:
    """Where the contact ends along z, inside a strip; for contact unbroken from the first strip on.

    Between the overlap at which the last strip began to take load and that at which the next will,
    the end moves in step with the overlap.
    """
    last = int(np.flatnonzero(loads > 0)[-1])
    active = loads > 0
    slope, _ = piece(gives, -overlap, active)
    at = strips[:, 0] + enters * (strips[:, 1] - strips[:, 0])
    at[0] = strips[0, 0]
    since = float(loads[last] / slope[last]) if slope[last] > 0 else 0.0
    if last + 1 < len(strips):
        gap = float(gives[last + 1] @ loads - overlap[last + 1])
        closing = 1 - float(gives[last + 1] @ slope)
        if closing <= 0:
            return float(at[last + 1])
        share = since / max(since + max(gap, 0.0) / closing, 1e-300)
        return float(at[last] + share * (at[last + 1] - at[last]))
    return min(float(strips[-1, 1]), float(at[last]) + since * _pace(gives, overlap, loads, at))


def _pace(gives: Floats, overlap: Floats, loads: Floats, at: Floats) -> float:
    """How fast the end moved over the strip before the last, per overlap."""
    last = len(loads) - 1
    before = np.arange(len(loads)) < last
    slope, start = piece(gives, -overlap, before)
    closing = 1 - float(gives[last] @ slope)
    reached = (float(gives[last] @ -start) - float(overlap[last])) / closing if closing > 0 else 0.0
    span = reached + float(-start[last - 1] / slope[last - 1]) if last and slope[last - 1] else 0.0
    return float((at[last] - at[last - 1]) / span) if span > 0 else np.inf
