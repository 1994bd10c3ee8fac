"""A stepped bar on two springs as CalculiX reads it: B32 beam elements. Nothing here is the package.

CalculiX makes a section rigid wherever the sections of two beams differ, which stiffens a bar of
several diameters by some 2 % however fine the mesh; so the steps here are of modulus and density,
and the sections, squares, are alike. Square, because its round sections need a far finer mesh.
Units there: mm, N, t, s.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from tests.independent.calculix import run
from tests.independent.calculix_read import tables

POISSON = 0.29
STEEL = 207e9


@dataclass(frozen=True)
class Stepped:
    """Edges (m), side of the square (m), modulus (Pa) and density (kg/m³) by step, two springs (N/m)."""

    edges: tuple[float, ...]
    side: float
    moduli: tuple[float, ...]
    densities: tuple[float, ...]
    springs: tuple[float, float]
    cells: int = 16

    @property
    def places(self) -> list[float]:
        """Where the nodes stand (m): ends and middles of so many elements in every step."""
        found = [self.edges[0]]
        for low, high in zip(self.edges, self.edges[1:], strict=False):
            found += np.linspace(low, high, 2 * self.cells + 1)[1:].tolist()
        return found

    def node(self, place: float) -> int:
        return int(np.argmin(np.abs(np.array(self.places) - place))) + 1


def body(bar: Stepped) -> list[str]:
    """Nodes, elements, sections, springs and what is held."""
    text = ["*NODE,NSET=NALL"]
    text += [f"{n},{1e3 * x:.9g},0,0" for n, x in enumerate(bar.places, 1)]
    element = 0
    for s, (modulus, density) in enumerate(zip(bar.moduli, bar.densities, strict=True)):
        text.append(f"*ELEMENT,TYPE=B32,ELSET=E{s}")
        for _ in range(bar.cells):
            element += 1
            text.append(f"{element},{2 * element - 1},{2 * element},{2 * element + 1}")
        text += [f"*MATERIAL,NAME=M{s}", "*ELASTIC", f"{modulus * 1e-6:.9g},{POISSON}"]
        text += ["*DENSITY", f"{density * 1e-12:.9g}"]
        text.append(f"*BEAM SECTION,ELSET=E{s},MATERIAL=M{s},SECTION=RECT")
        text += [f"{1e3 * bar.side:.9g},{1e3 * bar.side:.9g}", "0,0,1"]
    for k, node in enumerate((1, len(bar.places))):
        text += [f"*ELEMENT,TYPE=SPRING1,ELSET=K{k}", f"{element + 1 + k},{node}"]
        text += [f"*SPRING,ELSET=K{k}", "2", f"{bar.springs[k] * 1e-3:.9e}"]
    last = len(bar.places)
    return [*text, "*BOUNDARY", "1,1,1", "1,4,4", f"{last},4,4", "NALL,3,3"]


def line(bar: Stepped, load: str, folder: Path) -> np.ndarray:
    """Deflection (mm) at every node under a load as CalculiX reads one."""
    step = ["*STEP", "*STATIC", "*CLOAD", load, "*NODE PRINT,NSET=NALL", "U", "*END STEP"]
    _solve(bar, step, folder)
    return tables(folder / "fit.dat")[-1][:, 2]


def frequencies(bar: Stepped, folder: Path) -> list[float]:
    """The first two natural frequencies (Hz); the bar's ends are kept from leaving the plane."""
    _solve(bar, ["*STEP", "*FREQUENCY", "2", "*END STEP"], folder)
    rows = (text.split() for text in (folder / "fit.dat").read_text().splitlines())
    found = {row[0]: float(row[3]) for row in rows if len(row) == 5 and row[0] in ("1", "2")}
    return [found["1"], found["2"]]


def _solve(bar: Stepped, step: list[str], folder: Path) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "fit.inp").write_text("\n".join([*body(bar), *step]) + "\n")
    run(folder)
