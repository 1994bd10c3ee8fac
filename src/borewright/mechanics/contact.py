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


def end_of_contact(strips: Floats, pressure: Floats) -> float:
    """Where the pressure ends along z, inside the last strip that is pressed; 0 where none is.

    The pressure falls to nothing as the root of the distance from its end (smooth contact), so what
    presses beyond a place, to the power 2/3, falls along a line. A parabola through the last three
    edges of strips but one, where the strips' own coarseness does not tell, gives the place, kept
    within the end strip and the one after it.
    """
    touching = np.flatnonzero(pressure > 0)
    if not len(touching):
        return float(strips[0, 0])
    last = int(touching[-1])
    if last < 4 or last == len(pressure) - 1:
        return float(strips[last, 1])
    beyond = np.cumsum((pressure * (strips[:, 1] - strips[:, 0]))[last::-1]) ** (2 / 3)
    x, z = beyond[1:4], strips[[last - 1, last - 2, last - 3], 0]
    if not x[0] < x[1] < x[2]:
        return float(strips[last, 1])
    a, b, c = x
    end = (
        z[0] * b * c / ((a - b) * (a - c))
        + z[1] * a * c / ((b - a) * (b - c))
        + z[2] * a * b / ((c - a) * (c - b))
    )
    return float(min(max(end, strips[last, 0]), strips[last + 1, 1]))
