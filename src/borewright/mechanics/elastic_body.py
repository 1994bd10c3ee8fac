"""The compliance of a body of revolution by finite elements. Heavy: loaded only to build a shape.

Axisymmetric linear elasticity, 9-node quadrilaterals (scikit-fem), one symmetric factorisation,
an even pressure on each strip of the bore line written down exactly: h/6, 4h/6, h/6 on the three
nodes of its element. Source: Zienkiewicz and Taylor, The Finite Element Method, ch. on axisymmetric
stress, from memory; nothing of it is taken beyond the weak form. Weakness: sharp corners have no
highest stress (see `compliance.largest_tension`). With one element a strip, a strip's own movement
is 1.7 % small, 7 % at the short strips by a bore's ends; on an endless mandrel, which has no such
error, the largest tension comes out up to 1.7 % below CalculiX's, the force within 0.05 %.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from skfem import MeshQuad

from borewright.errors.tree import OutsideModel
from borewright.mechanics.body_mesh import mandrel_mesh, work_lines, work_strips
from borewright.mechanics.compliance import Compliance, of_the_bore_line, principal_tension
from borewright.mechanics.num import Floats
from borewright.mechanics.rectangle import (
    BY_R,
    BY_Z,
    OVER_R,
    Section,
    Strains,
    hooke,
    middles_by,
    moved_by,
    section,
    stiffness,
    strains_at,
    with_middles,
)
from borewright.mechanics.revolved import BORE, Revolved, cells
from borewright.quantities.si import Ratio

MOST_CELLS: Final = 12_000
"""More cells than this are not solved: a shape that needs them is no wheel."""

ENDLESS: Final = 2.0
"""How far (over d) a mandrel stands out of either face; from one d on more makes no difference."""

CORNER: Final = 0.02
"""Points nearer than this (over d) to a corner that opens inwards are left to its radius."""

RADIAL, AXIAL = 0, 1
STRAINS: Final[Strains] = (
    ((RADIAL, BY_R, 1.0),),
    ((AXIAL, BY_Z, 1.0),),
    ((RADIAL, OVER_R, 1.0),),
    ((RADIAL, BY_Z, 1.0), (AXIAL, BY_R, 1.0)),
)
"""Radial, axial and hoop; shear in the section."""

GAUSS: Final = 1 / np.sqrt(3)
MEAN: Final = np.array([1.0, 4.0, 1.0]) / 6


@dataclass(frozen=True, slots=True, eq=False)
class Solved:
    """A mesh, its solution for unit load on each strip, and where the bore's nodes are.

    `stiff`: the stiffness of every cell; `moved` (m, n): all unknowns but those in the middle of a
    cell, which are the last.
    """

    basis: Section
    stiff: Floats
    radial: np.ndarray
    moved: Floats
    strips: Floats
    bore_r: np.ndarray
    bore_z: np.ndarray


def work_compliance(body: Revolved, poisson: Ratio) -> Compliance:
    """The work's: its bore pressed outward. OutsideModel for an outline too large to mesh."""
    strips = work_strips(body)
    z, r = work_lines(body, strips)
    solved = _solve(body, z, r, strips, poisson, axis=False)
    return _compliance(body, solved, poisson)


def solved_work(
    body: Revolved,
    poisson: Ratio,
    pressure: Floats,
    first: Ratio | None = None,
    growth: Ratio | None = None,
) -> Solved:
    """The work under one pressure (n,) on its strips, per unit of modulus; `moved` is (m, 1)."""
    strips = work_strips(body)
    z, r = work_lines(body, strips, first, growth)
    loads = pressure * (strips[:, 1] - strips[:, 0])
    return _solve(body, z, r, strips, poisson, axis=False, state=loads)


def mandrel_compliance(
    strips: Floats,
    poisson: Ratio,
    hole: Ratio = 0.0,
    stands_out: tuple[Ratio, Ratio] = (ENDLESS, ENDLESS),
) -> Compliance:
    """The mandrel's: pressed inward on the same strips; `hole`: its own bore, radius over d."""
    body, z, r = mandrel_mesh(strips, hole, stands_out)
    solved = _solve(body, z, r, strips, poisson, axis=hole == 0)
    return of_the_bore_line(strips, _gives(solved))


def _solve(
    body: Revolved,
    z: Floats,
    r: Floats,
    strips: Floats,
    poisson: Ratio,
    *,
    axis: bool,
    state: Floats | None = None,
) -> Solved:
    basis = basis_of(body, z, r, 2)
    places = basis.doflocs
    radial = np.zeros(basis.N, dtype=bool)
    for dofs in (basis.dofs.nodal_dofs, basis.dofs.facet_dofs, basis.dofs.interior_dofs):
        radial[dofs[0]] = True
    on_bore = np.abs(places[0] - BORE) < 1e-9
    bore_r, bore_z = (nodes_of(places, on_bore & which, strips) for which in (radial, ~radial))
    loads = even_loads(bore_r, basis.N)
    if state is not None:
        loads = (loads @ state)[:, None]
    fixed = [int(bore_z[1][len(strips) // 2])]
    if axis:
        fixed += np.flatnonzero(radial & (places[0] < 1e-12)).tolist()
    stiff = stiffness(basis, STRAINS, hooke(poisson, 1))
    moved = moved_by(basis, stiff, loads, fixed)
    return Solved(basis, stiff, radial, moved, strips, bore_r, bore_z)


def even_loads(bore: np.ndarray, unknowns: int) -> Floats:
    """Loads (unknowns, n) of p h = 1 on each strip whose three nodes are `bore` (3, n)."""
    count = bore.shape[1]
    loads = np.zeros((unknowns, count))
    for node in range(3):
        loads[bore[node], np.arange(count)] += BORE * MEAN[node]
    return loads


def basis_of(body: Revolved, z: Floats, r: Floats, ways: int) -> Section:
    """Nine-node elements with so many unknowns a node. OutsideModel for too large a mesh."""
    metal = cells(body, z, r)
    if metal.sum() > MOST_CELLS:
        raise OutsideModel("cells of the mesh", int(metal.sum()), f"at most {MOST_CELLS}")
    return section(_mesh(metal, z, r), ways)


def _mesh(metal: np.ndarray, z: Floats, r: Floats) -> Any:
    many = len(z)
    rr, zz = np.meshgrid(r, z, indexing="ij")
    i, j = np.nonzero(metal)
    corners = np.array([i * many + j, (i + 1) * many + j, (i + 1) * many + j + 1, i * many + j + 1])
    used, found = np.unique(corners, return_inverse=True)
    points = np.array([rr.ravel(), zz.ravel()])[:, used]
    return MeshQuad(
        np.ascontiguousarray(points), np.ascontiguousarray(found.reshape(corners.shape))
    )


def nodes_of(places: Floats, which: np.ndarray, strips: Floats) -> np.ndarray:
    """Start, middle and end node of every strip; shape (3, n)."""
    nodes = np.flatnonzero(which)
    nodes = nodes[np.argsort(places[1][nodes])]
    first = np.searchsorted(places[1][nodes], strips[:, 0] - 1e-9)
    return np.array([nodes[first], nodes[first + 1], nodes[first + 2]])


def _gives(solved: Solved) -> Floats:
    """Mean movement of every strip for a load q on every other; q = p h is what `loads` holds."""
    mean = sum(MEAN[k] * solved.moved[solved.bore_r[k]] for k in range(3))
    # What moves strip i when j is loaded moves j when i is: the little that rounding left goes.
    return np.asarray(0.5 * (mean + mean.T))


def _compliance(body: Revolved, solved: Solved, poisson: Ratio) -> Compliance:
    lengths = solved.strips[:, 1] - solved.strips[:, 0]
    moved = solved.moved
    around = moved[solved.bore_r[1]] * lengths / BORE
    along = (moved[solved.bore_z[2]] - moved[solved.bore_z[0]]) * lengths / lengths[:, None]
    radial = -np.eye(len(lengths))
    a, b = around + poisson * radial, along + poisson * radial
    hoop, axial = ((x + poisson * y) / (1 - poisson**2) for x, y in ((a, b), (b, a)))
    points, stress = _beside(body, solved, poisson)
    places = solved.basis.doflocs[:, : len(moved)]
    top = solved.radial[: len(moved)] & (np.abs(places[0] - places[0].max()) < 1e-9)
    return Compliance(
        solved.strips,
        _gives(solved),
        hoop,
        axial,
        points,
        stress,
        places[:, top].T[:, ::-1].copy(),
        moved[top] * lengths,
    )


def field(solved: Solved, moved: Floats, poisson: Ratio) -> tuple[Floats, Floats]:
    """Points (m, 2) as z, r and stresses (m, 4, …) at the 2 x 2 Gauss points of every cell.

    `moved` (m, …) as in `solved`, for unit modulus.
    """
    points, by_moved = _by_moved(solved.basis, poisson)
    every = with_middles(solved.basis, solved.stiff, moved.reshape(len(moved), -1))
    local = every[solved.basis.element_dofs.T]
    found = by_moved @ local
    return points, found.reshape(len(points), 4, *moved.shape[1:])


def _by_moved(basis: Section, poisson: Ratio) -> tuple[Floats, Floats]:
    """Gauss points (4 cells, 2) as z, r; stresses (4, cells, 4, 18) by each cell's unknowns."""
    points, stresses = [], []
    for x in (0.5 - GAUSS / 2, 0.5 + GAUSS / 2):
        for y in (0.5 - GAUSS / 2, 0.5 + GAUSS / 2):
            r, z = basis.low + np.array([[x], [y]]) * basis.size
            points.append(np.column_stack([z, r]))
            stresses.append(hooke(poisson, 1) @ strains_at(basis, STRAINS, x, y))
    return np.concatenate(points), np.array(stresses)


def _beside(body: Revolved, solved: Solved, poisson: Ratio) -> tuple[Floats, Floats]:
    """The few points beside the bore line where the greatest tension may be, by trial states."""
    lengths = solved.strips[:, 1] - solved.strips[:, 0]
    states = lengths[:, None] * _trial_states(solved.strips).T
    points, by_all = _by_moved(solved.basis, poisson)
    by_moved = by_all[..., :-2] + by_all[..., -2:] @ middles_by(solved.stiff, 2)
    local = solved.basis.element_dofs.T[:, :-2]
    tension = _tensions(by_moved, solved.moved @ states, local)
    tension[~_away(points, body, solved.strips)] = -np.inf
    best = np.unique(np.argpartition(tension, -4, axis=0)[-4:])
    moved = solved.moved[local[best % len(local)]] * lengths
    return points[best], by_moved.reshape(len(points), 4, -1)[best] @ moved


AT_ONCE: Final = 32
"""Cells whose stresses are worked together: more would leave the processor's own memory."""


def _tensions(by_moved: Floats, moved: Floats, local: np.ndarray) -> Floats:
    """Greatest principal stress (4 cells, states) at the Gauss points for `moved` (m, states)."""
    cells, states = len(local), moved.shape[1]
    rows = by_moved.transpose(1, 0, 2, 3).reshape(cells, 16, -1)
    tension = np.empty((4, cells, states))
    for first in range(0, cells, AT_ONCE):
        some = slice(first, first + AT_ONCE)
        stress = (rows[some] @ moved[local[some]]).reshape(-1, 4, 4, states)
        tension[:, some] = principal_tension(stress).transpose(1, 0, 2)
    return tension.reshape(-1, states)


def _away(points: Floats, body: Revolved, strips: Floats) -> np.ndarray:
    """Points that are not at an edge of the bore nor in a corner that opens inwards."""
    length = strips[-1, 1] - strips[0, 0]
    kept = np.ones(len(points), dtype=bool)
    for z in (strips[0, 0], strips[-1, 1]):
        kept &= np.hypot(points[:, 0] - z, points[:, 1] - BORE) > 0.01 * length
    for z, r in _corners(body):
        kept &= np.hypot(points[:, 0] - z, points[:, 1] - r) > CORNER
    return kept


def _corners(body: Revolved) -> list[tuple[float, float]]:
    """Corners of the outline with metal on three sides."""
    z, r = np.array(body.z), np.array(body.r)
    metal = np.pad(cells(body, z, r), 1)
    around = metal[:-1, :-1].astype(int) + metal[1:, :-1] + metal[:-1, 1:] + metal[1:, 1:]
    return [(float(z[j]), float(r[i])) for i, j in zip(*np.nonzero(around == 3), strict=True)]


def _trial_states(strips: Floats) -> Floats:
    """Pressures (states, n) such as a taper makes: falling from either face, even, a bump."""
    x = (strips.mean(axis=1) - strips[0, 0]) / (strips[-1, 1] - strips[0, 0])
    reach = np.linspace(0.1, 1.0, 10)
    falling = [np.clip(1 - x / a, 0, None) ** power for a in reach for power in (0.5, 1.0)]
    rising = [state[::-1] if len(state) else state for state in falling]
    bumps = [np.exp(-(((x - c) / 0.1) ** 2)) for c in np.linspace(0, 1, 11)]
    return np.array([*falling, *rising, *bumps, np.ones_like(x)])
