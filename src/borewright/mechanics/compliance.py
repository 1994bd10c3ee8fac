"""What a body of revolution gives way when its bore line is pressed: kept per unit of modulus.

Lengths are over the bore's diameter d, so that one shape serves every size and every modulus. The
bore line is cut into strips; on each the pressure is even. The load of a strip is q = p h, its
pressure times its length; all that is linear in q is a matrix here.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from borewright.mechanics.num import Floats


@dataclass(frozen=True, slots=True, eq=False)
class Compliance:
    """The matrices of one body; n strips, m points, k points on the outside.

    `strips` (n, 2): start and end of each along z. `gives` (n, n), symmetric positive definite:
    the mean outward movement of each strip (inward for a mandrel), over d, for q / (E d) on each.
    `hoop`, `axial` (n, n): stress at the middle of each strip for p on each, the strip's own
    pressure being its radial stress. `points` (m, 2): z and r where the greatest principal
    tension may be, beside the bore line; `stress` (m, 4, n): radial, axial, hoop and shear there.
    `outside` (k, 2): z and r on the outermost surface; `growth` (k, n): outward movement there.
    """

    strips: Floats
    gives: Floats
    hoop: Floats
    axial: Floats
    points: Floats
    stress: Floats
    outside: Floats
    growth: Floats

    @property
    def lengths(self) -> Floats:
        """Length of each strip, over d."""
        return np.asarray(self.strips[:, 1] - self.strips[:, 0])

    @property
    def middles(self) -> Floats:
        """Middle of each strip, over d."""
        return np.asarray(self.strips.mean(axis=1))


def of_the_bore_line(strips: Floats, gives: Floats) -> Compliance:
    """A body of which nothing is asked but how its bore line (a mandrel's surface) gives way.

    >>> of_the_bore_line(np.array([[0.0, 1.0]]), np.array([[0.3]])).points.shape
    (0, 2)
    """
    none, nowhere = np.zeros((0, len(strips))), np.zeros((0, 2))
    nothing = np.zeros((0, 4, len(strips)))
    return Compliance(strips, gives, none, none, nowhere, nothing, nowhere, none)


def principal_tension(stress: Floats) -> Floats:
    """Greatest principal stress of (…, 4, points) radial, axial, hoop and shear; shape (…, points).

    >>> principal_tension(np.array([[1.0], [3.0], [2.0], [0.0]])).tolist()
    [3.0]
    """
    radial, axial, hoop, shear = np.moveaxis(stress, -2, 0)
    middle, half = 0.5 * (radial + axial), 0.5 * (radial - axial)
    return np.asarray(np.maximum(middle + np.sqrt(half * half + shear * shear), hoop))


def bore_tension(body: Compliance, pressure: Floats, first: float, last: float) -> Floats:
    """Greatest hoop stress on the bore line between two shares of its length, for p on each strip.

    Shape of `pressure` (…, n) gives (…,). Units are those of the pressure.
    """
    return np.asarray((pressure @ between(body, body.hoop, first, last).T).max(axis=-1))


def between(body: Compliance, stress: Floats, first: float, last: float) -> Floats:
    """Rows of `stress` for the strips with their middles between two shares of the bore's length.

    The stress is steep near an edge, so the shares themselves come with them, along a line between
    the middles on either side.
    """
    start, length = body.strips[0, 0], body.strips[-1, 1] - body.strips[0, 0]
    along = (body.middles - start) / length
    ends = np.clip((first, last), along[0], along[-1])
    high = np.clip(np.searchsorted(along, ends), 1, len(along) - 1)
    share = ((ends - along[high - 1]) / (along[high] - along[high - 1]))[:, None]
    at_ends = (1 - share) * stress[high - 1] + share * stress[high]
    return np.concatenate([stress[(along >= first) & (along <= last)], at_ends])


def largest_tension(body: Compliance, pressure: Floats, margin: float = 0.01) -> Floats:
    """Greatest principal stress anywhere but within `margin` of the bore's length from its edges.

    Sharp edges have no value that a finer mesh would not raise: they are left to a radius.
    """
    return tension_by(tension_rows(body, margin), pressure)


def tension_rows(body: Compliance, margin: float = 0.01) -> tuple[Floats, Floats]:
    """What `tension_by` needs of a body: hoop and axial stress along the bore line (a, n), and the
    four stresses at the points beside it (4 m, n), for p on each strip."""
    along = [between(body, stress, margin, 1 - margin) for stress in (body.hoop, body.axial)]
    return np.concatenate(along), body.stress.transpose(1, 0, 2).reshape(-1, len(body.strips))


def tension_by(rows: tuple[Floats, Floats], pressure: Floats) -> Floats:
    """Greatest principal stress for p (…, n), as `largest_tension`; shape (…,)."""
    along, beside = rows
    on_bore = np.asarray((pressure @ along.T).max(axis=-1))
    if not len(beside):
        return on_bore
    stress = (pressure @ beside.T).reshape(*pressure.shape[:-1], 4, -1)
    return np.asarray(np.maximum(on_bore, principal_tension(stress).max(axis=-1)))


EDGE = 0.05
"""Ours: nearer (over d) to a sharp edge of the bore the pressure has no greatest value."""


def largest_equivalent(body: Compliance, pressure: Floats) -> Floats:
    """Greatest von Mises stress on the bore line but at its edges, for p (…, n); shape (…,).

    No shear there: hoop, axial and the pressure itself are the principal stresses.
    """
    inside = _off_the_edges(body)
    hoop, axial = pressure @ body.hoop[inside].T, pressure @ body.axial[inside].T
    p = pressure[..., inside]
    square = (hoop - axial) ** 2 + (axial + p) ** 2 + (hoop + p) ** 2
    return np.asarray(np.sqrt(square / 2).max(axis=-1))


def largest_pressure(body: Compliance, pressure: Floats) -> Floats:
    """Greatest pressure but at the bore's edges, for p (…, n); shape (…,)."""
    return np.asarray(pressure[..., _off_the_edges(body)].max(axis=-1))


def _off_the_edges(body: Compliance) -> np.ndarray:
    """Strips whose middle is no edge's; the middle half of a bore that is all edge."""
    length = float(body.strips[-1, 1] - body.strips[0, 0])
    share = min(EDGE / length, 0.25)
    return _inside(body, share, 1 - share)


def _inside(body: Compliance, first: float, last: float) -> np.ndarray:
    """Strips whose middle lies between two shares of the bore's length."""
    start, length = body.strips[0, 0], body.strips[-1, 1] - body.strips[0, 0]
    along = (body.middles - start) / length
    return np.asarray((along >= first) & (along <= last))


def turned_round(body: Compliance) -> Compliance:
    """The same body seen from its other face: z runs the other way, from minus its end.

    >>> one = Compliance(np.array([[0.0, 1.0], [1.0, 3.0]]), *[np.zeros((2, 2))] * 3,
    ...                  np.zeros((0, 2)), np.zeros((0, 4, 2)), np.zeros((0, 2)), np.zeros((0, 2)))
    >>> (turned_round(one).strips + 3.0).tolist()
    [[0.0, 2.0], [2.0, 3.0]]
    """
    other_way = np.array([-1.0, 1.0])
    shear = np.array([1.0, 1.0, 1.0, -1.0])[:, None]
    return Compliance(
        -body.strips[::-1, ::-1],
        body.gives[::-1, ::-1],
        body.hoop[::-1, ::-1],
        body.axial[::-1, ::-1],
        body.points * other_way,
        (body.stress * shear)[..., ::-1],
        body.outside * other_way,
        body.growth[:, ::-1],
    )


def moved(body: Compliance, by: float) -> Compliance:
    """The same body with `by` added to every z."""
    along = np.array([by, 0.0])
    return replace(
        body,
        strips=body.strips + by,
        points=body.points + along,
        outside=body.outside + along,
    )
