"""How far a stepped bar between sprung supports gives at many places at once.

With the bending moment m_a(s), the shear v_a(s) and the two reactions r_a of a unit load at a, the
unit-load theorem gives the deflection at x of a unit load at a
    G(x, a) = ∫ m_x m_a / EI ds + ∫ v_x v_a / G A_s ds + Σ r_x r_a / k,
a sum of products: so one row for each load, and every pair of places is one product of rows. A unit
couple has the moments -s/L before it and 1 - s/L behind it, and gives the turn of the section at
its place the same way. Exact for stepped bars: every product is at most quadratic within a step.
Answers the whole deflection line of a bar under one load, and what gives under a tool wherever it
stands along a cut. Units: places in m from the first edge, m/N, 1/N, 1/(N·m). OutsideModel for a
place off the bar. Source: unit-load theorem; tested against `beam.deflection`, closed forms and
CalculiX. Weakness: small deflections; the supports carry no moment.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.mechanics.allowed import refuse_unless
from borewright.mechanics.beam import Bar, per_step
from borewright.mechanics.num import Floats, distinct
from borewright.quantities.si import Metre, Newton


@dataclass(frozen=True, slots=True, eq=False)
class UnderTool:
    """What the bar gives at each place (n,) where the tool stands.

    `per_force` (m/N): of a force across it there. `per_moment` (m/(N·m)): of a moment there, as a
    force along the bar at the rim puts on it; also how far (rad) a unit force turns the section.
    """

    per_force: Floats
    per_moment: Floats


def under_tool(bar: Bar, places: Floats) -> UnderTool:
    """What gives under the tool with the tool at each of these places (n,).

    >>> bar = Bar(np.array([0.0, 1.0]), np.array([1.0]), np.array([np.inf]))
    >>> give = under_tool(bar, np.array([0.25, 0.5]))
    >>> [round(1 / float(g), 6) for g in give.per_force], round(float(give.per_moment[1]), 9)
    ([85.333333, 48.0], 0.0)
    """
    force, couple = _rows(bar, places)
    return UnderTool(
        np.asarray((force * force).sum(axis=1)), np.asarray((force * couple).sum(axis=1))
    )


def deflection_line(bar: Bar, load_at: Metre, force: Newton, places: Floats) -> Floats:
    """Deflection (m) at each of these places (n,) of one force (N) at `load_at`.

    >>> bar = Bar(np.array([0.0, 1.0]), np.array([1.0]), np.array([np.inf]))
    >>> deflection_line(bar, 0.5, 48.0, np.array([0.0, 0.25, 0.5])).round(6).tolist()
    [0.0, 0.6875, 1.0]
    """
    force_rows, _ = _rows(bar, np.array([load_at, *places]))
    return np.asarray(force * (force_rows[1:] @ force_rows[0]))


def flexibility(bar: Bar, places: Floats) -> Floats:
    """Deflection (m) at each place of a unit force at each other: (n, n), symmetric.

    >>> bar = Bar(np.array([0.0, 1.0]), np.array([1.0]), np.array([np.inf]))
    >>> (48 * flexibility(bar, np.array([0.25, 0.5]))).round(6).tolist()
    [[0.5625, 0.6875], [0.6875, 1.0]]
    """
    force, _ = _rows(bar, places)
    return np.asarray(force @ force.T)


def full_flexibility(bar: Bar, places: Floats) -> Floats:
    """The same, couples after the forces and turns of the section after deflections: (2n, 2n)."""
    rows = np.concatenate(_rows(bar, places))
    return np.asarray(rows @ rows.T)


def _rows(bar: Bar, places: Floats) -> tuple[Floats, Floats]:
    """One row for a unit force and one for a unit couple at each place: two arrays (n, s)."""
    refuse_unless(
        (places >= 0) & (places <= bar.span), "place", places, "m", f"0 to {bar.span:.6g} m"
    )
    edges = distinct([*(bar.edges - bar.edges[0]).tolist(), *places.tolist()])
    share = places[:, None, None] / bar.span
    left = 0.5 * (edges[1:] + edges[:-1]) < places[:, None, None]
    along = np.stack([edges[:-1], 0.5 * (edges[1:] + edges[:-1]), edges[1:]]) / bar.span
    moment = bar.span * np.where(left, (1 - share) * along, share * (1 - along))
    turned = np.where(left, -along, 1 - along)
    level, side = share[:, 0], left[:, 0]
    shear = np.where(side, 1 - level, -level)
    level_shear = np.full_like(shear, -1 / bar.span)
    ends = np.concatenate([1 - level, level], axis=1)
    ends_turned = np.full_like(ends, 1 / bar.span) * (-1.0, 1.0)
    weighed = _weights(bar, edges)
    return _weighed(moment, shear, ends, weighed), _weighed(
        turned, level_shear, ends_turned, weighed
    )


def _weights(bar: Bar, edges: Floats) -> tuple[Floats, Floats, Floats]:
    """Square roots of what a product counts: Simpson's shares over EI, length over G A_s, 1 / k."""
    ei, gas = per_step(bar, edges)
    length = np.diff(edges)
    simpson = np.array([1.0, 4.0, 1.0])[:, None] / 6
    return np.sqrt(simpson * length / ei), np.sqrt(length / gas), 1 / np.sqrt(np.array(bar.springs))


def _weighed(
    moment: Floats, shear: Floats, ends: Floats, weights: tuple[Floats, Floats, Floats]
) -> Floats:
    bend, slide, give = weights
    flat = (moment * bend).reshape(len(moment), -1)
    return np.concatenate([flat, shear * slide, ends * give], axis=1)
