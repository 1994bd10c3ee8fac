"""A stepped bar between two sprung supports, loaded across at one place.

Deflection by the unit-load method: bending, shear and the two support springs. Exact for stepped
bars because every product is at most quadratic within a step (Simpson's rule is then exact).
Source: unit-load theorem (any textbook on strength of materials); checked against Wentzell,
Machine Design, Ex. 3.2. Weakness: small deflections; the supports carry no moment.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.errors import OutsideModel
from borewright.mechanics.num import Floats, distinct
from borewright.quantities.si import Metre, Newton, NewtonPerMetre


@dataclass(frozen=True, slots=True, eq=False)
class Bar:
    """Steps between supports: `edges` (k+1,) m, `bending` EI (k,) N·m², `shear` G A_s (k,) N."""

    edges: Floats
    bending: Floats
    shear: Floats
    springs: tuple[NewtonPerMetre, NewtonPerMetre] = (np.inf, np.inf)

    @property
    def span(self) -> float:
        return float(self.edges[-1] - self.edges[0])


def round_step(
    diameter: float, modulus: float, poisson: float, hole: float = 0.0
) -> tuple[float, float]:
    """EI (N·m²) and G A_s (N) of a round step, bored by `hole` (m); I = π (d⁴ - hole⁴) / 64.

    Shear shape by Cowper (1966, from memory), solid and hollow; with m = hole / d
    6 (1 + ν) (1 + m²)² / ((7 + 6 ν) (1 + m²)² + (20 + 12 ν) m²).

    >>> solid, bored = round_step(0.02, 207e9, 0.29), round_step(0.02, 207e9, 0.29, 0.01)
    >>> round(bored[0] / solid[0], 4)
    0.9375
    """
    m2 = (hole / diameter) ** 2
    area = np.pi * (diameter**2 - hole**2) / 4
    square = (1 + m2) ** 2
    shape = 6 * (1 + poisson) * square / ((7 + 6 * poisson) * square + (20 + 12 * poisson) * m2)
    inertia = np.pi * (diameter**4 - hole**4) / 64
    return modulus * inertia, shape * area * modulus / (2 * (1 + poisson))


def deflection(bar: Bar, load_at: Metre, force: Newton, at: Metre | None = None) -> float:
    """Deflection (m) at `at` (default under the load) of a force (N) at `load_at`.

    Places are in m from the first edge.

    >>> bar = Bar(np.array([0.0, 1.0]), np.array([1.0]), np.array([np.inf]))
    >>> round(deflection(bar, 0.5, 48.0), 9)
    1.0
    """
    at = load_at if at is None else at
    on_the_bar(bar, load_at)
    on_the_bar(bar, at)
    edges = distinct([*(bar.edges - bar.edges[0]).tolist(), load_at, at])
    ei, gas = per_step(bar, edges)
    moment, shear = _unit_load(edges, bar.span, load_at)
    virtual, virtual_shear = _unit_load(edges, bar.span, at)
    length = np.diff(edges)
    bend = (simpson(moment * virtual) / ei * length).sum()
    slide = (shear * virtual_shear / gas * length).sum()
    return float(force * (bend + slide + _springs(bar, load_at, at)))


def largest_moment(span: Metre, load_at: Metre, force: Newton) -> float:
    """Bending moment (N·m) under a single load between two supports."""
    return force * load_at * (span - load_at) / span


def on_the_bar(bar: Bar, place: Metre) -> None:
    """OutsideModel for a place (m from the first edge) off the bar."""
    if not 0 <= place <= bar.span:
        raise OutsideModel("place along the bar", place, f"0 to {bar.span:.6g} m")


def per_step(bar: Bar, edges: Floats) -> tuple[Floats, Floats]:
    """EI (N·m²) and G A_s (N) between finer edges (m from the first edge of the bar)."""
    middles = 0.5 * (edges[1:] + edges[:-1]) + bar.edges[0]
    home = np.clip(np.searchsorted(bar.edges, middles) - 1, 0, len(bar.bending) - 1)
    return bar.bending[home], bar.shear[home]


def _unit_load(edges: Floats, span: float, at: float) -> tuple[Floats, Floats]:
    """Moment (3, k) at start, middle, end of each step and shear (k,) of a unit load at `at`."""
    places = np.stack([edges[:-1], 0.5 * (edges[1:] + edges[:-1]), edges[1:]])
    left, right = (span - at) / span, at / span
    moment = np.where(places <= at, left * places, right * (span - places))
    shear = np.where(places[1] < at, left, -right)
    return np.asarray(moment, dtype=np.float64), np.asarray(shear, dtype=np.float64)


def simpson(values: Floats) -> Floats:
    """Means over steps from values (3, k) at their start, middle, end; exact to third order."""
    return np.asarray((values[0] + 4 * values[1] + values[2]) / 6, dtype=np.float64)


def _springs(bar: Bar, load_at: float, at: float) -> float:
    """Share of the deflection at `at` that comes from the supports giving way under a unit load."""
    left, right = bar.springs
    return (1 - load_at / bar.span) * (
        1 - at / bar.span
    ) / left + load_at * at / bar.span**2 / right
