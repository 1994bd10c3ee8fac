"""The stress in the whole section of a pressed work, for its picture. Heavy: loaded to draw only.

The state that `contact` found is laid on a finer mesh than the one that a compliance is built on.
Stresses are taken at the 2 x 2 Gauss points of every cell, where a 9-node quadrilateral is at its
best, carried to the cell's corners along straight lines, and the mean of all cells that meet at a
corner is its value (Zienkiewicz and Taylor, The Finite Element Method, from memory).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from borewright.mechanics.compliance import principal_tension
from borewright.mechanics.elastic_body import Solved, field, solved_work
from borewright.mechanics.num import Bools, Floats
from borewright.mechanics.revolved import BORE, Revolved
from borewright.quantities.si import Ratio

FIRST: Final = 0.025
GROWTH: Final = 0.05
"""Size of a cell at the bore, over d, and how much longer it is for each d of distance from it."""

FINEST: Final = 0.012
SHARE: Final = 0.02
"""Wanted size of a drawn cell, over d: FINEST at the bore, and SHARE of the distance beyond it."""


@dataclass(frozen=True, slots=True, eq=False)
class StressField:
    """Lines `z` (n,) and `r` (m,) over d; `stress` (4, m, n) radial, axial, hoop, shear where they
    cross; `metal` (m - 1, n - 1): which cells between the lines are metal.
    """

    z: Floats
    r: Floats
    stress: Floats
    metal: Bools

    @property
    def tension(self) -> Floats:
        """Greatest principal stress at every crossing, shape (m, n)."""
        flat = principal_tension(self.stress.reshape(4, -1))
        return np.asarray(flat.reshape(self.stress.shape[1:]))


def stress_field(body: Revolved, poisson: Ratio, pressure: Floats) -> StressField:
    """Stresses for a pressure (n,) on each strip of the work's bore, in the pressure's unit.

    A thick ring under an even pressure, against Lame's (5/3 at the bore of a ring twice its bore):

    >>> from borewright.mechanics.body_mesh import work_strips
    >>> from borewright.mechanics.revolved import revolved
    >>> ring = revolved([(0.0, 1.0, 0.5, 1.0)])
    >>> found = stress_field(ring, 0.3, np.ones(len(work_strips(ring))))
    >>> round(float(found.stress[2, 0, len(found.z) // 2]), 2)
    1.67
    """
    solved = solved_work(body, poisson, pressure, FIRST, GROWTH)
    _, gauss = field(solved, solved.moved[:, 0], poisson)
    return _at_crossings(solved, _carried(gauss))


def hoop_pull(body: Revolved, poisson: Ratio, pressure: Floats) -> float:
    """Hoop stress summed over the half section, over d squared: N / (2 pi) in balance."""
    solved = solved_work(body, poisson, pressure, FIRST, GROWTH)
    _, gauss = field(solved, solved.moved[:, 0], poisson)
    r, z = (solved.basis.mesh.p[k][solved.basis.mesh.t] for k in (0, 1))
    area = np.ptp(r, axis=0) * np.ptp(z, axis=0)
    return float((gauss[:, 2].reshape(4, -1).mean(axis=0) * area).sum())


def finer(found: StressField) -> StressField:
    """The same on the closer lines that contours are drawn on; straight between the given ones."""
    z = _closer(found.z, _nearest_bearing(found))
    r = _closer(found.r, found.r - BORE)
    row, up = _between(found.r, r)
    column, along = _between(found.z, z)
    s, up, along = found.stress, up[:, None], along[None, :]
    low = s[:, row][:, :, column] * (1 - along) + s[:, row][:, :, column + 1] * along
    high = s[:, row + 1][:, :, column] * (1 - along) + s[:, row + 1][:, :, column + 1] * along
    stress = low * (1 - up) + high * up
    return StressField(z, r, stress, found.metal[np.ix_(row[:-1], column[:-1])])


def cut_off(found: StressField, radius: Ratio) -> StressField:
    """What lies within a radius (over d), which becomes one of the lines."""
    if radius >= found.r[-1]:
        return found
    count = int(np.searchsorted(found.r, radius - 1e-9))
    r = np.append(found.r[:count], radius)
    share = (radius - found.r[count - 1]) / (found.r[count] - found.r[count - 1])
    edge = found.stress[:, count - 1] * (1 - share) + found.stress[:, count] * share
    stress = np.concatenate([found.stress[:, :count], edge[:, None]], axis=1)
    return StressField(found.z, r, stress, found.metal[:count])


def _carried(gauss: Floats) -> Floats:
    """From Gauss points (4 cells, 4) to corners (2 along r, 2 along z, cells, 4)."""
    points = gauss.reshape(2, 2, -1, 4)
    far, near = (1 + np.sqrt(3)) / 2, (1 - np.sqrt(3)) / 2
    out = np.array([[far, near], [near, far]])
    return np.asarray(np.einsum("ag,bh,ghcs->abcs", out, out, points))


def _at_crossings(solved: Solved, corners: Floats) -> StressField:
    mesh = solved.basis.mesh
    r, z = (np.unique(mesh.p[k].round(12)) for k in (0, 1))
    i, j = (
        np.searchsorted(lines, mesh.p[k][mesh.t].min(axis=0).round(12))
        for k, lines in ((0, r), (1, z))
    )
    total, count = np.zeros((len(r), len(z), 4)), np.zeros((len(r), len(z), 1))
    for a in (0, 1):
        for b in (0, 1):
            np.add.at(total, (i + a, j + b), corners[a, b])
            np.add.at(count, (i + a, j + b), 1.0)
    metal = np.zeros((len(r) - 1, len(z) - 1), dtype=bool)
    metal[i, j] = True
    return StressField(z, r, np.moveaxis(total / np.maximum(count, 1.0), -1, 0), metal)


def _nearest_bearing(found: StressField) -> Floats:
    """How far each line z is from the stretch of bore with metal at it."""
    row = found.metal[np.searchsorted(found.r, BORE - 1e-9)]
    low = found.z[int(np.argmax(row))]
    high = found.z[len(row) - int(np.argmax(row[::-1]))]
    return np.asarray(np.maximum(0.0, np.maximum(low - found.z, found.z - high)))


def _closer(lines: Floats, distance: Floats) -> Floats:
    wanted = FINEST + SHARE * np.minimum(distance[1:], distance[:-1])
    counts = np.ceil(np.diff(lines) / wanted - 1e-9).astype(int)
    pieces = [np.linspace(a, b, n, endpoint=False) for a, b, n in zip(lines, lines[1:], counts)]  # noqa: B905
    return np.append(np.concatenate(pieces), lines[-1])


def _between(lines: Floats, at: Floats) -> tuple[np.ndarray, Floats]:
    """The interval each place is in, and how far along it."""
    home = np.clip(np.searchsorted(lines, at, side="right") - 1, 0, len(lines) - 2)
    return home, np.asarray((at - lines[home]) / (lines[home + 1] - lines[home]))
