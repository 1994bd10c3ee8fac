"""Stiffness and movements against scikit-fem's own assembly of the same weak forms.

The forms are written out here once more, as integrals; scikit-fem numbers, integrates and puts
together, scipy solves. Nothing of that comes from the package.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import spsolve
from skfem import Basis, BilinearForm, ElementQuad2, ElementVector, condense
from skfem.helpers import grad

from borewright.mechanics import elastic_body, tilt_body
from borewright.mechanics.body_mesh import mandrel_mesh, work_lines, work_strips
from borewright.mechanics.rectangle import Section, hooke, moved_by, stiffness, with_middles
from borewright.mechanics.revolved import revolved

SAME = 1e-10
"""Share of the largest: the same integrals at the same points, so only rounding is left."""

SOLVED = 1e-8
"""The same for movements, in which rounding grows by the condition of the whole."""

WEBBED = revolved([(0.0, 2.0, 0.5, 1.0), (0.8, 1.2, 1.0, 2.5), (0.4, 1.6, 2.5, 3.0)])
FLANGED = revolved([(0.0, 2.0, 0.5, 0.9), (0.0, 0.4, 0.9, 3.0)])
BODIES = {
    "webbed": (WEBBED, *work_lines(WEBBED, work_strips(WEBBED))),
    "flanged": (FLANGED, *work_lines(FLANGED, work_strips(FLANGED))),
    "solid bar": mandrel_mesh(work_strips(WEBBED), 0.0, (2.0, 0.3)),
    "hollow bar": mandrel_mesh(work_strips(WEBBED), 0.2, (1.0, 1.0)),
}
FORMS = {2: (elastic_body.STRAINS, 1), 3: (tilt_body.STRAINS, 3)}
"""Unknowns a node: the package's strains, and how many of them are shears."""


def even(u: Any, r: Any) -> tuple[list[Any], list[Any]]:
    """Direct strains and shears of a body that stays a body of revolution."""
    by = grad(u)
    return [by[0, 0], by[1, 1], u[0] / r], [by[0, 1] + by[1, 0]]


def tilted(u: Any, r: Any) -> tuple[list[Any], list[Any]]:
    """The same for U cos, W cos, V sin: radial, axial, around."""
    by = grad(u)
    around = (u[0] + u[2]) / r
    shears = [by[0, 1] + by[1, 0], by[2, 0] - around, by[2, 1] - u[1] / r]
    return [by[0, 0], by[1, 1], around], shears


def by_scikit_fem(mesh: Any, ways: int, poisson: float) -> tuple[Any, Basis]:
    """The assembled matrix for unit modulus, and the basis that numbers it."""
    lame = poisson / ((1 + poisson) * (1 - 2 * poisson))
    shear = 0.5 / (1 + poisson)
    strain = even if ways == 2 else tilted

    @BilinearForm
    def form(u: Any, v: Any, w: Any) -> Any:
        (a, s), (b, t) = strain(u, w.x[0]), strain(v, w.x[0])
        direct = sum(x * y for x, y in zip(a, b, strict=True))
        slides = sum(x * y for x, y in zip(s, t, strict=True))
        return w.x[0] * (lame * sum(a) * sum(b) + 2 * shear * direct + shear * slides)

    basis = Basis(mesh, ElementVector(ElementQuad2(), ways), intorder=5)
    return form.assemble(basis).tocsr(), basis


def ours(name: str, ways: int, poisson: float) -> tuple[Section, np.ndarray]:
    strains, shears = FORMS[ways]
    whole = elastic_body.basis_of(*BODIES[name], ways)
    return whole, stiffness(whole, strains, hooke(poisson, shears))


@pytest.mark.parametrize("ways", FORMS)
@pytest.mark.parametrize("name", BODIES)
def test_the_unknowns_are_numbered_and_placed_as_scikit_fem_does(name: str, ways: int) -> None:
    whole, _ = ours(name, ways, 0.3)
    _, basis = by_scikit_fem(whole.mesh, ways, 0.3)
    assert np.array_equal(whole.element_dofs, basis.element_dofs)
    assert whole.N == basis.N
    assert whole.doflocs == pytest.approx(basis.doflocs, abs=1e-12)


@pytest.mark.parametrize("ways", FORMS)
@pytest.mark.parametrize("name", BODIES)
@pytest.mark.parametrize("poisson", [0.0, 0.26, 0.45])
def test_the_stiffness_is_scikit_fem_s(name: str, ways: int, poisson: float) -> None:
    whole, cells = ours(name, ways, poisson)
    truth, _ = by_scikit_fem(whole.mesh, ways, poisson)
    dofs = whole.element_dofs.T
    rows, columns = np.broadcast_arrays(dofs[:, :, None], dofs[:, None, :])
    found = coo_matrix((cells.ravel(), (rows.ravel(), columns.ravel())), shape=truth.shape)
    # An entry far from the axis is large, one near it small: each row is held to its own size.
    size = abs(truth).max(axis=1).toarray().ravel()
    apart = abs(found.tocsr() - truth).max(axis=1).toarray().ravel()
    assert (apart / size).max() < SAME


@pytest.mark.parametrize("ways", FORMS)
@pytest.mark.parametrize("name", BODIES)
def test_the_movements_are_those_of_scikit_fem_s_matrix(name: str, ways: int) -> None:
    whole, cells = ours(name, ways, 0.26)
    truth, basis = by_scikit_fem(whole.mesh, ways, 0.26)
    held = np.flatnonzero(basis.doflocs[1] < basis.doflocs[1].min() + 1e-9)
    edges = whole.N - ways * whole.mesh.t.shape[1]
    loads = np.zeros((whole.N, 3))
    loads[:edges] = np.random.default_rng(5).normal(size=(edges, 3))
    loads[held] = 0.0
    matrix, right, _, free = condense(truth, loads[:, 0], D=held)
    wanted = np.zeros((whole.N, 3))
    wanted[free] = np.column_stack([spsolve(matrix, load) for load in loads[free].T])
    assert np.array_equal(right, loads[free, 0])
    found = with_middles(whole, cells, moved_by(whole, cells, loads, held))
    assert np.abs(found - wanted).max() < SOLVED * np.abs(wanted).max()
