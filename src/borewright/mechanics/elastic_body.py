"""The compliance of a body of revolution by finite elements. Heavy: loaded only to build a shape.

Axisymmetric linear elasticity, 9-node quadrilaterals (scikit-fem), one symmetric factorisation,
an even pressure on each strip of the bore line written down exactly: h/6, 4h/6, h/6 on the three
nodes of its element. Source: Zienkiewicz and Taylor, The Finite Element Method, ch. on axisymmetric
stress, from memory; nothing of it is taken beyond the weak form. Weakness: sharp corners have no
highest stress (see `compliance.largest_tension`).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from scipy.sparse.linalg import splu
from skfem import Basis, BilinearForm, ElementQuad2, ElementVector, MeshQuad
from skfem.helpers import grad

from borewright.errors.tree import OutsideModel
from borewright.mechanics.body_mesh import mandrel_mesh, work_lines, work_strips
from borewright.mechanics.compliance import Compliance, principal_tension
from borewright.mechanics.num import Floats
from borewright.mechanics.revolved import BORE, Revolved, cells
from borewright.quantities.si import Ratio

MOST_CELLS: Final = 12_000
"""More cells than this are not solved: a shape that needs them is no wheel."""

ENDLESS: Final = 2.0
"""How far (over d) a mandrel stands out of either face; from one d on more makes no difference."""

CORNER: Final = 0.02
"""Points nearer than this (over d) to a corner that opens inwards are left to its radius."""

GAUSS: Final = 1 / np.sqrt(3)
MEAN: Final = np.array([1.0, 4.0, 1.0]) / 6


@dataclass(frozen=True, slots=True, eq=False)
class Solved:
    """A mesh, its solution for unit load on each strip, and where the bore's nodes are."""

    basis: Any
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
    """The work under one pressure (n,) on its strips, per unit of modulus; `moved` is (dofs, 1)."""
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
    count = len(strips)
    none = np.zeros((0, count))
    return Compliance(
        strips,
        _gives(solved),
        none,
        none,
        np.zeros((0, 2)),
        np.zeros((0, 4, count)),
        np.zeros((0, 2)),
        none,
    )


def _stiffness(poisson: Ratio) -> Any:
    first = poisson / ((1 + poisson) * (1 - 2 * poisson))
    shear = 0.5 / (1 + poisson)

    @BilinearForm  # type: ignore[untyped-decorator]
    def form(u: Any, v: Any, w: Any) -> Any:
        r, du, dv = w.x[0], grad(u), grad(v)
        a, b, c = du[0, 0], du[1, 1], u[0] / r
        e, f, g = dv[0, 0], dv[1, 1], v[0] / r
        slide = (du[0, 1] + du[1, 0]) * (dv[0, 1] + dv[1, 0])
        return r * (
            first * (a + b + c) * (e + f + g) + 2 * shear * (a * e + b * f + c * g) + shear * slide
        )

    return form


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
    stiff = _stiffness(poisson).assemble(basis).tocsc()
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
    return Solved(basis, radial, moved_by(stiff, loads, fixed), strips, bore_r, bore_z)


def moved_by(stiff: Any, loads: Floats, held: Any) -> Floats:
    """Movements (N, n) under loads (N, n), those unknowns held; one symmetric factorisation."""
    free = np.setdiff1d(np.arange(len(loads)), held)
    factors = splu(
        stiff[free][:, free],
        permc_spec="MMD_AT_PLUS_A",
        diag_pivot_thresh=0.0,
        options={"SymmetricMode": True},
    )
    moved = np.zeros_like(loads)
    moved[free] = factors.solve(loads[free])
    return moved


def even_loads(bore: np.ndarray, unknowns: int) -> Floats:
    """Loads (unknowns, n) of p h = 1 on each strip whose three nodes are `bore` (3, n)."""
    count = bore.shape[1]
    loads = np.zeros((unknowns, count))
    for node in range(3):
        loads[bore[node], np.arange(count)] += BORE * MEAN[node]
    return loads


def basis_of(body: Revolved, z: Floats, r: Floats, ways: int) -> Any:
    """Nine-node elements with so many unknowns a node. OutsideModel for too large a mesh."""
    metal = cells(body, z, r)
    if metal.sum() > MOST_CELLS:
        raise OutsideModel("cells of the mesh", int(metal.sum()), f"at most {MOST_CELLS}")
    return Basis(_mesh(metal, z, r), ElementVector(ElementQuad2(), ways), intorder=5)


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
    by_pressure = solved.moved * lengths
    around = by_pressure[solved.bore_r[1]] / BORE
    along = (by_pressure[solved.bore_z[2]] - by_pressure[solved.bore_z[0]]) / lengths[:, None]
    radial = -np.eye(len(lengths))
    a, b = around + poisson * radial, along + poisson * radial
    hoop, axial = ((x + poisson * y) / (1 - poisson**2) for x, y in ((a, b), (b, a)))
    points, stress = _beside(body, solved, by_pressure, poisson)
    places = solved.basis.doflocs
    top = solved.radial & (np.abs(places[0] - places[0].max()) < 1e-9)
    return Compliance(
        solved.strips,
        _gives(solved),
        hoop,
        axial,
        points,
        stress,
        places[:, top].T[:, ::-1].copy(),
        by_pressure[top],
    )


def field(solved: Solved, moved: Floats, poisson: Ratio) -> tuple[Floats, Floats]:
    """Points (m, 2) as z, r and stresses (m, 4, …) at the 2 x 2 Gauss points of every cell.

    `moved`: movement of all degrees of freedom, (dofs, …), for unit modulus.
    """
    basis = solved.basis
    dofs, places = basis.element_dofs, basis.doflocs
    corner_r, corner_z = basis.mesh.p[0][basis.mesh.t], basis.mesh.p[1][basis.mesh.t]
    low, size = (
        np.array([corner_r.min(0), corner_z.min(0)]),
        np.array([np.ptp(corner_r, axis=0), np.ptp(corner_z, axis=0)]),
    )
    where = (places[:, dofs] - low[:, None]) / size[:, None]
    lines = np.rint(2 * where).astype(int)
    is_r = solved.radial[dofs]
    points, stresses = [], []
    for gr in (0.5 - GAUSS / 2, 0.5 + GAUSS / 2):
        for gz in (0.5 - GAUSS / 2, 0.5 + GAUSS / 2):
            (nr, dr), (nz, dz) = _quadratic(gr), _quadratic(gz)
            shape = nr[lines[0]] * nz[lines[1]]
            by_r, by_z = (
                dr[lines[0]] * nz[lines[1]] / size[0],
                nr[lines[0]] * dz[lines[1]] / size[1],
            )
            r, z = low[0] + gr * size[0], low[1] + gz * size[1]
            local = moved[dofs]
            strain = [
                np.einsum("dc,dc...->c...", np.where(is_r, by_r, 0.0), local),
                np.einsum("dc,dc...->c...", np.where(is_r, 0.0, by_z), local),
                np.einsum("dc,dc...->c...", np.where(is_r, shape / r, 0.0), local),
                np.einsum("dc,dc...->c...", np.where(is_r, by_z, by_r), local),
            ]
            points.append(np.column_stack([z, r]))
            stresses.append(_hooke(strain, poisson))
    return np.concatenate(points), np.concatenate(stresses)


def _quadratic(x: float) -> tuple[Floats, Floats]:
    """The three quadratic shapes on 0 to 1 at x, and their slopes."""
    value = np.array([(1 - x) * (1 - 2 * x), 4 * x * (1 - x), x * (2 * x - 1)])
    return value, np.array([4 * x - 3, 4 - 8 * x, 4 * x - 1])


def _hooke(strain: list[Floats], poisson: Ratio) -> Floats:
    first, twice = poisson / ((1 + poisson) * (1 - 2 * poisson)), 1 / (1 + poisson)
    whole = first * (strain[0] + strain[1] + strain[2])
    return np.stack([*(whole + twice * e for e in strain[:3]), 0.5 * twice * strain[3]], axis=1)


def _beside(
    body: Revolved, solved: Solved, by_pressure: Floats, poisson: Ratio
) -> tuple[Floats, Floats]:
    """The few points beside the bore line where the greatest tension may be, by trial states."""
    points, stress = field(solved, by_pressure, poisson)
    kept = _away(points, body, solved.strips)
    points, stress = points[kept], stress[kept]
    tension = principal_tension(np.einsum("mcn,sn->scm", stress, _trial_states(solved.strips)))
    best = np.unique(np.argsort(tension, axis=1)[:, -4:])
    return points[best], stress[best]


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
