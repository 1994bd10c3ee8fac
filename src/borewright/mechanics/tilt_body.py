"""How a body of revolution gives way to a tilting load: pressure `cos φ` on its bore line. Heavy.

The same mesh and strips as `elastic_body`, the first harmonic round the axis: movements
`U cos φ` (radial), `W cos φ` (axial), `V sin φ` (around), so that a body keeps three unknowns a
node in place of two. What holds it is two radial points of the bore: a body that is pushed with no
force and no moment in all feels nothing of them, and `tilt.tilted` always asks that of it.

The tool's moment comes in as an axial pull `cos φ` spread along the outermost surface: thrust at
the rim, which is most of the moment on a disc. On a bush whose outside is near its bore it matters
where the tool is; this stands for the middle of the cut.

Source: Zienkiewicz and Taylor, The Finite Element Method, ch. on semi-analytical methods, from
memory; nothing of it is taken beyond the weak form. Checked against CalculiX on whole bodies.
"""

from __future__ import annotations

from typing import Any, Final

import numpy as np

from borewright.mechanics.body_mesh import mandrel_mesh, work_lines, work_strips
from borewright.mechanics.elastic_body import (
    MEAN,
    basis_of,
    even_loads,
    nodes_of,
)
from borewright.mechanics.num import Floats
from borewright.mechanics.rectangle import (
    BY_R,
    BY_Z,
    OVER_R,
    Strains,
    hooke,
    moved_by,
    stiffness,
)
from borewright.mechanics.revolved import BORE, Revolved
from borewright.mechanics.tilt_shape import TiltShape
from borewright.quantities.si import Ratio

RADIAL, AXIAL, AROUND = 0, 1, 2
STRAINS: Final[Strains] = (
    ((RADIAL, BY_R, 1.0),),
    ((AXIAL, BY_Z, 1.0),),
    ((RADIAL, OVER_R, 1.0), (AROUND, OVER_R, 1.0)),
    ((RADIAL, BY_Z, 1.0), (AXIAL, BY_R, 1.0)),
    ((AROUND, BY_R, 1.0), (RADIAL, OVER_R, -1.0), (AROUND, OVER_R, -1.0)),
    ((AROUND, BY_Z, 1.0), (AXIAL, OVER_R, -1.0)),
)
"""Radial, axial and hoop; shear in the section, across the radius, and along the axis."""


def work_tilt(body: Revolved, poisson: Ratio) -> TiltShape:
    """The work's: its bore pressed by cos φ. OutsideModel for an outline too large to mesh."""
    strips = work_strips(body)
    z, r = work_lines(body, strips)
    basis = basis_of(body, z, r, 3)
    bore, loads = _loaded(basis, strips)
    outside = _along_rim(basis) / (np.pi * basis.doflocs[0].max())
    held = [int(bore[1][len(strips) // 3]), int(bore[1][2 * len(strips) // 3])]
    moved = _moved(basis, poisson, np.column_stack([loads, outside]), held)
    mean = _mean(moved, bore)
    own = float(np.pi * outside[: len(moved)] @ moved[:, -1])
    return TiltShape(strips, _even(mean[:, :-1]), mean[:, -1], own)


def mandrel_sways(
    strips: Floats, poisson: Ratio, hole: Ratio, stands_out: tuple[Ratio, Ratio]
) -> Floats:
    """The mandrel's (n, n), for unit modulus: held at the middle of both ends, free to turn there.

    Local give and bending at once; `stands_out` as for `tilt.bar_bending`, which is the cheap way.
    """
    body, z, r = mandrel_mesh(strips, hole, stands_out)
    basis = basis_of(body, z, r, 3)
    bore, loads = _loaded(basis, strips)
    places, way = basis.doflocs, _ways(basis)
    at_end = (np.abs(places[1] - z[0]) < 1e-9) | (np.abs(places[1] - z[-1]) < 1e-9)
    held = at_end & (way != AXIAL) | (places[0] < 1e-12) & (way == AXIAL)
    return _even(_mean(_moved(basis, poisson, loads, np.flatnonzero(held)), bore))


def _loaded(basis: Any, strips: Floats) -> tuple[np.ndarray, Floats]:
    """The bore's radial unknowns (3, n) of every strip, and the loads (N, n) of p h = 1 on each."""
    radial = (_ways(basis) == RADIAL) & (np.abs(basis.doflocs[0] - BORE) < 1e-9)
    bore = nodes_of(basis.doflocs, radial, strips)
    return bore, even_loads(bore, basis.N)


def _moved(basis: Any, poisson: Ratio, loads: Floats, held: Any) -> Floats:
    return moved_by(basis, stiffness(basis, STRAINS, hooke(poisson, 3)), loads, held)


def _mean(moved: Floats, bore: np.ndarray) -> Floats:
    return np.asarray(sum(MEAN[k] * moved[bore[k]] for k in range(3)))


def _even(matrix: Floats) -> Floats:
    return np.asarray(0.5 * (matrix + matrix.T))


def _ways(basis: Any) -> np.ndarray:
    """RADIAL, AXIAL or AROUND for every unknown."""
    way = np.zeros(basis.N, dtype=int)
    for dofs in (basis.dofs.nodal_dofs, basis.dofs.facet_dofs, basis.dofs.interior_dofs):
        for k in (RADIAL, AXIAL, AROUND):
            way[dofs[k]] = k
    return way


def _along_rim(basis: Any) -> Floats:
    """Axial loads on the outermost surface, even along it, 1 in all."""
    mesh = basis.mesh
    on_rim = mesh.p[0][mesh.facets] > mesh.p[0].max() - 1e-9
    edges = np.flatnonzero(on_rim.all(axis=0))
    ends = mesh.facets[:, edges]
    lengths = np.abs(np.diff(mesh.p[1][ends], axis=0))[0]
    loads = np.zeros(basis.N)
    for unknowns, share in (
        (basis.dofs.nodal_dofs[AXIAL, ends[0]], MEAN[0]),
        (basis.dofs.facet_dofs[AXIAL, edges], MEAN[1]),
        (basis.dofs.nodal_dofs[AXIAL, ends[1]], MEAN[2]),
    ):
        np.add.at(loads, unknowns, share * lengths / lengths.sum())
    return loads
