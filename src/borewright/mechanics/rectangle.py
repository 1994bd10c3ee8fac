"""Nine-node rectangles of a section: their stiffness and strains, all cells at once. Heavy.

The weak form of an elastic body of revolution, written as strains of its unknowns. Every strain is
a sum of terms `factor * unknown`, each taken by its slope along r or z or divided by r. With three
Gauss points along either side a cell's stiffness is a sum of fixed matrices, each times a number
that only the cell's place and size set; so all cells are one matrix product. The node in the
middle of a cell touches no other cell: it is taken out before anything is put together, and found
again afterwards. Numbering is scikit-fem's, and its own assembly of the form is what the tests
hold this to.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import splu
from skfem import ElementQuad2, ElementVector
from skfem.assembly.dofs import Dofs

from borewright.mechanics.num import Floats
from borewright.quantities.si import Ratio

BY_R, BY_Z, OVER_R = 0, 1, 2
Term = tuple[int, int, float]
"""Which unknown of a node, how it is taken, and a factor."""

Strains = tuple[tuple[Term, ...], ...]

PLACE: Final = np.array([0.5 - np.sqrt(0.15), 0.5, 0.5 + np.sqrt(0.15)])
WEIGHT: Final = np.array([5.0, 8.0, 5.0]) / 18
"""Gauss points on 0 to 1 and what each counts."""

NODES: Final = np.rint(2 * np.asarray(ElementQuad2.doflocs)).astype(int).T
"""Which of three lines along r and along z each node of a cell is on; shape (2, 9)."""

PAIRS: Final = tuple((a, b) for a in range(3) for b in range(a, 3))


@dataclass(frozen=True, slots=True, eq=False)
class Section:
    """A mesh of rectangles with so many unknowns a node.

    `dofs`: scikit-fem's numbering; `doflocs` (2, N): r and z of each unknown; `low`, `size`
    (2, cells): the corner of each cell with least r and z, and its sides.
    """

    mesh: Any
    dofs: Any
    doflocs: Floats
    low: Floats
    size: Floats

    @property
    def N(self) -> int:  # noqa: N802 - scikit-fem's name for it
        """How many unknowns there are."""
        return int(self.doflocs.shape[1])

    @property
    def element_dofs(self) -> np.ndarray:
        """Unknowns (9 ways, cells) of every cell: node by node, the node's unknowns together."""
        return np.asarray(self.dofs.element_dofs)


def section(mesh: Any, ways: int) -> Section:
    """The unknowns of a mesh whose cells' corners run low-low, r up, z up, r down."""
    dofs = Dofs(mesh, ElementVector(ElementQuad2(), ways))
    low, high = mesh.p[:, mesh.t[0]], mesh.p[:, mesh.t[2]]
    nodes = low[:, None] + NODES[:, :, None] / 2 * (high - low)[:, None]
    places = np.empty((2, dofs.N))
    places[:, dofs.element_dofs] = np.repeat(nodes, ways, axis=1)
    return Section(mesh, dofs, places, low, high - low)


def hooke(poisson: Ratio, shears: int) -> Floats:
    """Stresses of the three direct strains and so many shears, for unit modulus.

    A bar pulled along the first way thins by Poisson's ratio, and is stressed along it alone:

    >>> np.round(hooke(0.25, 1) @ [1.0, -0.25, -0.25, 0.0], 12).tolist() == [1, 0, 0, 0]
    True
    """
    first = poisson / ((1 + poisson) * (1 - 2 * poisson))
    twice = 1 / (1 + poisson)
    law = np.diag([twice] * 3 + [twice / 2] * shears)
    law[:3, :3] += first
    return law


def stiffness(whole: Section, strains: Strains, law: Floats) -> Floats:
    """Stiffness of every cell (cells, 9 ways, 9 ways), per radian."""
    ways = len(whole.element_dofs) // 9
    taken = np.zeros((len(law), ways, 3))
    for k, strain in enumerate(strains):
        for unknown, how, factor in strain:
            taken[k, unknown, how] += factor
    joined = np.einsum("swk,st,tvl->kwlv", taken, law, taken)
    points = np.array([_at(g, PLACE) for g in PLACE])  # r point, how, node, z point
    fixed = np.einsum("gkih,gljh,h,g->gklij", points, points, WEIGHT, WEIGHT)
    full = np.einsum("gklij,kwlv->gkliwjv", fixed, joined).reshape(3, 3, 3, -1)
    table = [full[g, a, b] + (full[g, b, a] if a != b else 0) for g in range(3) for a, b in PAIRS]
    return np.asarray(_numbers(whole) @ np.array(table)).reshape(-1, 9 * ways, 9 * ways)


def _numbers(whole: Section) -> Floats:
    """What each fixed matrix counts in each cell; shape (cells, 18)."""
    (dr, dz), found = whole.size, []
    for g in PLACE:
        r = whole.low[0] + g * dr
        scale = 1 / dr, 1 / dz, 1 / r
        found += [r * dr * dz * scale[a] * scale[b] for a, b in PAIRS]
    return np.array(found).T


def strains_at(whole: Section, strains: Strains, x: float, y: float) -> Floats:
    """Strains (cells, s, 9 ways) of a cell's unknowns at a place on 0 to 1 along r and z."""
    shapes = _at(x, np.array([y]))[:, :, 0]
    scale = np.array([*(1 / whole.size), 1 / (whole.low[0] + x * whole.size[0])])
    ways = len(whole.element_dofs) // 9
    found = np.zeros((whole.size.shape[1], len(strains), 9, ways))
    for k, strain in enumerate(strains):
        for unknown, how, factor in strain:
            found[:, k, :, unknown] += factor * scale[how][:, None] * shapes[how]
    return found.reshape(*found.shape[:2], -1)


def _at(x: float, y: Floats) -> Floats:
    """Slope along r and z, and value, of all nine shapes at x, and y (m,) along z: (3, 9, m)."""
    (vr, sr), (vz, sz) = _quadratic(np.array([x])), _quadratic(y)
    vr, sr, vz, sz = vr[NODES[0]], sr[NODES[0]], vz[NODES[1]], sz[NODES[1]]
    return np.array([sr * vz, vr * sz, vr * vz])


def _quadratic(x: Floats) -> tuple[Floats, Floats]:
    """The three quadratic shapes on 0 to 1 at x (m,), and their slopes; each (3, m)."""
    value = np.array([(1 - x) * (1 - 2 * x), 4 * x * (1 - x), x * (2 * x - 1)])
    return value, np.array([4 * x - 3, 4 - 8 * x, 4 * x - 1])


def moved_by(whole: Section, cells: Floats, loads: Floats, held: Any) -> Floats:
    """Movements (m, n) under loads (N, n), those unknowns held; one symmetric factorisation.

    `cells`: the stiffness of each. The m unknowns are all but those in the middle of a cell, which
    are the last of N: no load may stand there. `with_middles` finds them where they are asked for.
    """
    dofs, ways = whole.element_dofs.T, cells.shape[1] // 9
    count = whole.N - len(dofs) * ways
    moved = _factors(_without_middles(cells, ways), dofs[:, :-ways], held, count).solve(
        loads[:count]
    )
    moved[held] = 0.0
    return np.asarray(moved)


def with_middles(whole: Section, cells: Floats, moved: Floats) -> Floats:
    """Movements (N, n) of all unknowns from those that `moved_by` finds."""
    dofs, ways = whole.element_dofs.T, cells.shape[1] // 9
    every = np.empty((whole.N, moved.shape[1]))
    every[: len(moved)] = moved
    every[dofs[:, -ways:]] = middles_by(cells, ways) @ moved[dofs[:, :-ways]]
    return every


def middles_by(cells: Floats, ways: int) -> Floats:
    """What moves the middle node of each cell, by its other unknowns: (cells, ways, 8 ways)."""
    across = cells[:, -ways:, :-ways]
    return -np.asarray(np.linalg.solve(cells[:, -ways:, -ways:], across), dtype=np.float64)


def _without_middles(cells: Floats, ways: int) -> Floats:
    """Stiffness of the eight nodes round each cell."""
    across = cells[:, -ways:, :-ways]
    return np.asarray(
        cells[:, :-ways, :-ways] + across.transpose(0, 2, 1) @ middles_by(cells, ways)
    )


def _factors(cells: Floats, dofs: np.ndarray, held: Any, count: int) -> Any:
    """Factors of the whole from cells (cells, m, m) of unknowns `dofs`; one held is on its own."""
    free = np.ones(count)
    free[held] = 0.0
    each = free[dofs]
    shape = cells.shape
    values = cells * (each[:, :, None] * each[:, None, :])
    rows, columns = (np.broadcast_to(x, shape) for x in (dofs[:, :, None], dofs[:, None, :]))
    alone = np.flatnonzero(free == 0).astype(dofs.dtype)
    entries = [
        np.append(x.ravel(), y)
        for x, y in ((values, np.ones(len(alone))), (rows, alone), (columns, alone))
    ]
    stiff = coo_matrix((entries[0], (entries[1], entries[2])), shape=(count, count))
    return splu(
        stiff.tocsc(),
        permc_spec="MMD_AT_PLUS_A",
        diag_pivot_thresh=0.0,
        options={"SymmetricMode": True},
    )
