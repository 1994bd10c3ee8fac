"""The name of a shape: the same for inch and metric spellings, another for another scheme."""

from __future__ import annotations

import hashlib
from typing import Final

import numpy as np

from borewright.mechanics.num import Floats
from borewright.mechanics.revolved import Revolved
from borewright.quantities.si import Ratio

SCHEME: Final = 5
"""Raised whenever the same shape would get other numbers: mesh, elements, what is kept."""

DIGITS: Final = 9
"""Outlines that differ by less than 1e-9 bore diameters are one shape."""

ENDLESS: Final = 1.0
"""A mandrel that stands out this far (over d) at both faces is endless."""

STEP: Final = 0.05
"""A shorter mandrel's ends go by steps of this (over d), rounded down."""


def work_key(body: Revolved, poisson: Ratio) -> str:
    """The name of a work's shape.

    >>> from borewright.mechanics.revolved import revolved
    >>> inch, metric = ([(0.0, 25.4 / d, 0.5, 25.4 / d)] for d in (12.7, 12.7 + 1e-12))
    >>> work_key(revolved(inch), 0.26) == work_key(revolved(metric), 0.26)
    True
    """
    return _name("work", [poisson, *_edges(body)])


def tilt_key(body: Revolved, poisson: Ratio) -> str:
    """The name of a work's shape under a tilting load."""
    return _name("tilt", [poisson, *_edges(body)])


def mandrel_key(
    strips: Floats, poisson: Ratio, hole: Ratio, stands_out: tuple[Ratio, Ratio]
) -> str:
    """The name of a mandrel's shape under these strips; `stands_out` as `ends` gives it."""
    return _name("mandrel", [poisson, hole, *stands_out, *strips.ravel().tolist()])


def ends(stands_out: tuple[Ratio, Ratio], endless: Ratio) -> tuple[Ratio, Ratio]:
    """How far a mandrel is taken to stand out at either face: `endless`, or in steps.

    >>> ends((1.3, 4.0), 2.0), ends((0.13, 4.0), 2.0)
    ((2.0, 2.0), (0.1, 1.0))
    """
    if min(stands_out) >= ENDLESS:
        return endless, endless
    small, large = (min(ENDLESS, max(0.0, np.floor(x / STEP + 1e-9) * STEP)) for x in stands_out)
    return float(round(small, DIGITS)), float(round(large, DIGITS))


def _edges(body: Revolved) -> list[float]:
    return [edge for ring in sorted(body.rings) for edge in ring]


def _name(what: str, numbers: list[float]) -> str:
    text = ",".join(f"{round(n, DIGITS) + 0.0:.{DIGITS}f}" for n in numbers)
    return hashlib.sha256(f"{what} {SCHEME} {text}".encode()).hexdigest()
