"""A stepped steel mandrel between two centers: how far it gives where the work stands.

The work is not counted as stiffening it. Source: `mechanics.beam`.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.holding.part import Part
from borewright.mechanics.beam import Bar, deflection, round_step
from borewright.quantities.si import Metre

DOG_END = {"inch": 25.4e-3, "mm": 25e-3}
"""Least length (m) that a dog and the tool's way clear of it take at the headstock end (ours)."""


@dataclass(frozen=True, slots=True)
class Span:
    """Steps (length, diameter; m) from the headstock center on; the work from `start` to `end`."""

    steps: tuple[tuple[Metre, Metre], ...]
    start: Metre
    end: Metre

    @property
    def length(self) -> Metre:
        return sum(length for length, _ in self.steps)


def head_length(part: Part, shoulder: Metre) -> Metre:
    """Of the end that the dog takes, with the shoulder (m)."""
    return max(1.5 * shoulder, DOG_END[part.job.units])


def bending_of(part: Part, diameter: Metre) -> float:
    """E I (N·m²) of a round of mild steel."""
    return round_step(diameter, *_steel(part))[0]


def stiffness_between(part: Part, span: Span) -> float:
    """The least force over deflection (N/m) anywhere along the work, centers included."""
    edges = np.cumsum([0.0, *(length for length, _ in span.steps)])
    made = [round_step(diameter, *_steel(part)) for _, diameter in span.steps]
    spring = part.tables.allowance("center_stiffness").best
    bend, slide = (np.array([m[k] for m in made]) for k in (0, 1))
    bar = Bar(edges, bend, slide, (spring, spring))
    places = (float(p) for p in np.linspace(span.start, span.end, 5))
    return 1.0 / max(deflection(bar, p, 1.0) for p in places)


def _steel(part: Part) -> tuple[float, float]:
    steel = (part.tables.material_range("steel-1018", q).best for q in ("modulus", "poisson"))
    modulus, poisson = steel
    return modulus, poisson
