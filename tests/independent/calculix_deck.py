"""A taper fit as CalculiX reads it: both bodies, face-to-face penalty contact, what to print.

The mandrel's nodes are moved out by half the overlap on diameter before anything is solved, so the
overlap must be small: `SMALL` of the bore keeps that below one part in ten thousand.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from tests.independent.calculix_mesh import BORE, Grid, Near, Ring, corners_inward, grid, lines

SMALL = 1e-5
"""Taper of the mandrel; all is linear in it."""

STANDS_OUT = 2.0
"""How far the mandrel goes on past either face, over the bore's diameter."""


Point = tuple[float, float]


@dataclass(frozen=True)
class Fit:
    """Work over its bore's diameter, its metal and the mandrel's (modulus, Poisson's ratio).

    The mandrel's overlap on diameter at z is SMALL (share length - z): `share` of the bore's length
    would be engaged were both bodies rigid. `taper` False: an even overlap SMALL.
    """

    rings: tuple[Ring, ...]
    work: tuple[float, float]
    mandrel: tuple[float, float]
    share: float
    taper: bool = True

    @property
    def length(self) -> float:
        return max(ring[1] for ring in self.rings if ring[2] == BORE)

    def overlap(self, z: float) -> float:
        return SMALL * (self.share * self.length - z) if self.taper else SMALL


@dataclass(frozen=True)
class Mesh:
    """How fine: sizes over the usual ones, contact stiffness, where contact is thought to end."""

    scale: float
    stiff: float
    end: tuple[float, float] | None


def bodies(fit: Fit, mesh: Mesh) -> tuple[Grid, Grid]:
    """Work and mandrel, with the same lines along the bore."""
    k = mesh.scale
    z_marks = sorted({edge for ring in fit.rings for edge in ring[:2]})
    r_marks = sorted({edge for ring in fit.rings for edge in ring[2:]})
    edge = min(0.02, 0.004 * fit.length) * k
    along = [Near(x, x, edge) for x in (0.0, fit.length)]
    along += [Near(z, z, 0.02 * k) for z, _ in corners_inward(fit.rings)]
    along += [Near(*mesh.end, min(0.015, 0.0075 * fit.length) * k)] if mesh.end else []
    out = [Near(BORE, BORE, edge), *(Near(r, r, 0.02 * k) for _, r in corners_inward(fit.rings))]
    z, r = lines(z_marks, along, 0.1 * k), lines(r_marks, out, 0.3 * k)
    on_bore = z[(z > -1e-9) & (z < fit.length + 1e-9)]
    low, high = z[0] - STANDS_OUT, z[-1] + STANDS_OUT
    faces = [Near(0.0, 0.0, edge, 0.4), Near(fit.length, fit.length, edge, 0.4)]
    left, right = (lines(ends, faces, 0.5) for ends in ((low, 0.0), (fit.length, high)))
    bar_z = sorted({*left, *on_bore, *right})
    bar_r = lines((0.0, BORE), [Near(BORE, BORE, edge, 0.3)], 0.2 * k)
    work = grid(fit.rings, r, z, 0)
    return work, grid([(low, high, 0.0, BORE)], bar_r, np.array(bar_z), len(work.nodes))


def deck(fit: Fit, mesh: Mesh, work: Grid, bar: Grid) -> str:
    """The whole input."""
    text = placed(work.nodes, [(r + fit.overlap(z) / 2 * r / BORE, z) for r, z in bar.nodes])
    text += metal(fit, work, bar)
    text += contact(fit, mesh, work, bar)
    bore, outside = work.line("r", BORE), work.line("r", max(work.r))
    surface = bar.line("r", BORE)
    for name, nodes in (("BORE", bore), ("OUT", outside), ("BAR", surface)):
        text += [f"*NSET,NSET={name}", *(f"{n}," for n in nodes)]
    text += ["*BOUNDARY", f"{bore[len(bore) // 2]},2,2", f"{surface[len(surface) // 2]},2,2"]
    text += [f"{n},1,1" for n in bar.line("r", 0.0)]
    text += ["*STEP,INC=200", "*STATIC", "1.,1."]
    text += ["*EL PRINT,ELSET=EW", "S", "*NODE PRINT,NSET=BORE", "U"]
    text += ["*NODE PRINT,NSET=OUT", "U", "*NODE PRINT,NSET=BAR", "U", "*END STEP"]
    return "\n".join(text) + "\n"


def placed(work: Iterable[Point], bar: Iterable[Point]) -> list[str]:
    """The nodes of both bodies (r, z), numbered through."""
    text, number = [], 0
    for name, points in (("NW", work), ("NM", bar)):
        text.append(f"*NODE,NSET={name}")
        for r, z in points:
            number += 1
            text.append(f"{number},{r:.12g},{z:.12g},0")
    return text


def metal(fit: Fit, work: Grid, bar: Grid) -> list[str]:
    """Cells and what they are made of."""
    text = []
    for name, one in (("W", work), ("M", bar)):
        text.append(f"*ELEMENT,TYPE=CAX8,ELSET=E{name}")
        text += [f"{k},{','.join(map(str, c))}" for k, c in enumerate(one.corners, one.first + 1)]
    for name, (modulus, poisson) in (("W", fit.work), ("M", fit.mandrel)):
        text += [f"*MATERIAL,NAME=M{name}", "*ELASTIC", f"{modulus},{poisson}"]
        text += [f"*SOLID SECTION,ELSET=E{name},MATERIAL=M{name}"]
    return text


def contact(fit: Fit, mesh: Mesh, work: Grid, bar: Grid, friction: Sequence[str] = ()) -> list[str]:
    """The bore, the mandrel's surface and the law between them; `friction` are lines of that law."""
    at_bore = min(range(len(work.r)), key=lambda i: abs(work.r[i] - BORE))
    top = len(bar.r) - 2
    text = ["*SURFACE,NAME=SW"]
    text += [f"{k},S4" for k, (i, j) in enumerate(work.cells, 1) if i == at_bore]
    text.append("*SURFACE,NAME=SM")
    text += [f"{k},S2" for k, (i, _) in enumerate(bar.cells, bar.first + 1) if i == top]
    text += ["*SURFACE INTERACTION,NAME=SI", "*SURFACE BEHAVIOR,PRESSURE-OVERCLOSURE=LINEAR"]
    text += [f"{mesh.stiff * fit.work[0] / BORE:.6g},{1e-12 * fit.work[0]:.3g}", *friction]
    return [*text, "*CONTACT PAIR,INTERACTION=SI,TYPE=SURFACE TO SURFACE", "SW,SM"]
