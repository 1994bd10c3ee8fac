"""A ring squeezed by jaws as a plane body: scikit-fem puts it together, nothing is the package's.

One sector from the middle of a jaw to half-way to the next, plane stress, both ends on planes of
symmetry, nine-node cells. The jaw is an even pressure over a small arc of the outside.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from skfem import (
    Basis,
    BilinearForm,
    ElementQuad2,
    ElementVector,
    FacetBasis,
    LinearForm,
    MeshQuad,
    MeshQuad2,
    condense,
    solve,
)
from skfem.models.elasticity import linear_elasticity

STIFF = 1e8
"""The slanted plane of symmetry as springs, so many times stiffer than the metal."""


def squeezed_sector(
    jaws: int,
    inside: float,
    outside: float,
    poisson: float,
    half_jaw: float = 0.01,
    across: int = 8,
) -> tuple[float, float, float]:
    """Outward moves of the bore at a jaw and between, and the hoop stress of the bore at a jaw.

    For unit force, modulus and width; radii; `half_jaw` in rad; `across` cells in the wall.
    """
    end = np.pi / jaws
    mesh = sector(inside, outside, end, half_jaw, across)
    basis = Basis(mesh, ElementVector(ElementQuad2()), intorder=5)
    lame, shear = poisson / (1 - poisson**2), 0.5 / (1 + poisson)
    whole = linear_elasticity(lame, shear).assemble(basis) + slanted_plane(mesh, end)
    flat = basis.get_dofs(lambda x: abs(x[1]) < 1e-9).all("u^2")
    u = solve(*condense(whole, jaw_load(mesh, outside, half_jaw), D=flat))
    at_jaw = outward(basis, u, inside, 0.0)
    return at_jaw, outward(basis, u, inside, end), hoop_at_jaw(mesh, u, inside, poisson)


def sector(inside: float, outside: float, end: float, half_jaw: float, across: int) -> MeshQuad2:
    """Cells finer under the jaw and towards the outside, curved along the ring."""
    along = max(16, int(across * end * (inside + outside) / 2 / (outside - inside)))
    rest = half_jaw + (end - half_jaw) * np.linspace(0, 1, along + 1) ** 1.3
    angles = np.unique(np.concatenate([np.linspace(0, half_jaw, 5), rest]))
    radii = outside - (outside - inside) * np.linspace(1, 0, across + 1) ** 1.2
    square = MeshQuad2.from_mesh(MeshQuad.init_tensor(radii, angles))
    r, a = square.doflocs
    return MeshQuad2(np.stack([r * np.cos(a), r * np.sin(a)]), square.t)


def slanted_plane(mesh: MeshQuad2, end: float) -> Any:
    across = (-np.sin(end), np.cos(end))
    there = mesh.facets_satisfying(
        lambda x: abs(x[0] * across[0] + x[1] * across[1]) < 1e-9, boundaries_only=True
    )

    @BilinearForm
    def springs(u: Any, v: Any, w: Any) -> Any:
        off = u[0] * across[0] + u[1] * across[1]
        return STIFF * off * (v[0] * across[0] + v[1] * across[1])

    return springs.assemble(
        FacetBasis(mesh, ElementVector(ElementQuad2()), facets=there, intorder=5)
    )


def jaw_load(mesh: MeshQuad2, outside: float, half_jaw: float) -> Any:
    """Half of the unit force of a jaw, inwards, over its half arc."""

    def under(x: Any) -> Any:
        return (np.hypot(*x) > outside * (1 - 1e-4)) & (np.arctan2(x[1], x[0]) < half_jaw)

    there = mesh.facets_satisfying(under, boundaries_only=True)

    @LinearForm
    def pressure(v: Any, w: Any) -> Any:
        return -0.5 / (outside**2 * half_jaw) * (v[0] * w.x[0] + v[1] * w.x[1])

    return pressure.assemble(
        FacetBasis(mesh, ElementVector(ElementQuad2()), facets=there, intorder=5)
    )


def outward(basis: Basis, u: Any, radius: float, angle: float) -> float:
    place = radius * np.array([np.cos(angle), np.sin(angle)])
    apart = np.hypot(*(basis.doflocs - place[:, None]))
    ux, uy = sorted(np.argsort(apart, kind="stable")[:2])
    return float(u[ux] * np.cos(angle) + u[uy] * np.sin(angle))


def hoop_at_jaw(mesh: MeshQuad2, u: Any, inside: float, poisson: float) -> float:
    """On the bore itself, at the integration point nearest the middle of a jaw."""
    bore = mesh.facets_satisfying(
        lambda x: np.hypot(*x) < inside * (1 + 1e-4), boundaries_only=True
    )
    on_it = FacetBasis(mesh, ElementVector(ElementQuad2()), facets=bore, intorder=5)
    by = on_it.interpolate(u).grad
    y = np.asarray(on_it.global_coordinates())[1]
    near = np.unravel_index(y.argmin(), y.shape)
    return float((by[1, 1][near] + poisson * by[0, 0][near]) / (1 - poisson**2))
