"""A taper fit solved by CalculiX on a mesh of our own making here; takes nothing from the package.

Axisymmetric 8-node quadrilaterals for work and mandrel, face-to-face penalty contact, the mandrel's
nodes moved out by half the overlap. The normal force is 2 pi times the integral of the hoop stress
over the work's section, by equilibrium of half a ring, which no contact stiffness enters.
"""

from __future__ import annotations

import os
import subprocess
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

import numpy as np
from tests.tools import system_tool

BORE = 0.5
MANY = 100_000
GAUSS = np.outer([5, 8, 5], [5, 8, 5]).ravel() / 81 / 4
"""Weights of 3 x 3 points on a unit square."""


@dataclass(frozen=True)
class Body:
    """A grid of cells, those of metal kept; nodes at corners and mid-sides."""

    r: np.ndarray
    z: np.ndarray
    nodes: list[tuple[float, float]]
    numbers: dict[tuple[int, int], int]
    elements: dict[tuple[int, int], int]
    corners: list[list[int]]


def body(rings: list, r: np.ndarray, z: np.ndarray, first: int) -> Body:
    both = [np.sort(np.concatenate([x, (x[1:] + x[:-1]) / 2])) for x in (r, z)]
    nodes: list[tuple[float, float]] = []
    numbers: dict[tuple[int, int], int] = {}
    elements: dict[tuple[int, int], int] = {}
    corners: list[list[int]] = []

    def node(i: int, j: int) -> int:
        if (i, j) not in numbers:
            numbers[i, j] = first + len(nodes) + 1
            nodes.append((float(both[0][i]), float(both[1][j])))
        return numbers[i, j]

    for i in range(len(r) - 1):
        for j in range(len(z) - 1):
            middle = (z[j] + z[j + 1]) / 2, (r[i] + r[i + 1]) / 2
            if any(s < middle[0] < e and a < middle[1] < b for s, e, a, b in rings):
                k, m = 2 * i, 2 * j
                square = ((0, 0), (2, 0), (2, 2), (0, 2), (1, 0), (2, 1), (1, 2), (0, 1))
                corners.append([node(k + a, m + b) for a, b in square])
                elements[i, j] = first + len(corners)
    return Body(both[0], both[1], nodes, numbers, elements, corners)


@dataclass(frozen=True)
class Fit:
    """Work rings (start, end, inside, outside) over the bore's diameter, and the two metals."""

    rings: list
    length: float
    work: tuple[float, float]
    mandrel: tuple[float, float]


def normal_force(
    fit: Fit, overlap: Callable[[float], float], cells: int, stiff: float, folder: Path
) -> float:
    """N over E-consistent units: lengths in bore diameters, so N / d^2 in the units of E."""
    edges = sorted({edge for ring in fit.rings for edge in ring[2:]})
    r = np.unique(np.concatenate([_graded(a, b, cells) for a, b in pairwise(edges)]))
    marks = sorted({edge for ring in fit.rings for edge in ring[:2]})
    share = np.linspace(0, 1, 3 * cells + 1)
    z = fit.length * (share - 0.3 * np.sin(2 * np.pi * share) / (2 * np.pi))
    z = np.unique(np.round(np.concatenate([z, marks]), 9))
    z = z[np.append(True, np.diff(z) > 4e-3)]
    out = 2 * np.linspace(0, 1, cells + 1)[1:] ** 1.6
    bar_z = np.concatenate([-out[::-1], z, fit.length + out])
    bar_r = BORE * (1 - (1 - np.linspace(0, 1, cells)) ** 1.6)
    work = body(fit.rings, r, z, 0)
    bar = body([(bar_z[0], bar_z[-1], 0.0, BORE)], bar_r, bar_z, MANY)
    (folder / "fit.inp").write_text(_deck(fit, work, bar, overlap, stiff))
    done = subprocess.run(
        [system_tool("ccx"), "fit"],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "OMP_NUM_THREADS": "1"},
    )
    assert done.returncode == 0, done.stdout[-500:]
    return 2 * np.pi * _hoop_integral(work, folder / "fit.dat")


def _graded(low: float, high: float, cells: int) -> np.ndarray:
    many = max(3, round(cells * min(1.0, (high - low) / 0.8)))
    return low + (high - low) * np.linspace(0, 1, many + 1) ** (1.6 if low == BORE else 1.0)


def _deck(fit: Fit, work: Body, bar: Body, overlap: Callable[[float], float], stiff: float) -> str:
    at_bore = int(np.flatnonzero(np.abs(work.r[::2] - BORE) < 1e-9)[0])
    top = len(bar.r[::2]) - 2
    lines = [
        "*NODE,NSET=NW",
        *(f"{k},{r:.12g},{z:.12g},0" for k, (r, z) in enumerate(work.nodes, 1)),
    ]
    lines += ["*NODE,NSET=NM"]
    for k, (r, z) in enumerate(bar.nodes, MANY + 1):
        lines.append(f"{k},{r + overlap(z) / 2 * r / BORE:.12g},{z:.12g},0")
    for name, one in (("EW", work), ("EM", bar)):
        lines.append(f"*ELEMENT,TYPE=CAX8,ELSET={name}")
        numbers = list(one.elements.values())
        lines += [f"{k},{','.join(map(str, c))}" for k, c in zip(numbers, one.corners, strict=True)]
    for name, (modulus, poisson) in (("W", fit.work), ("M", fit.mandrel)):
        lines += [f"*MATERIAL,NAME=M{name}", "*ELASTIC", f"{modulus},{poisson}"]
        lines += [f"*SOLID SECTION,ELSET=E{name},MATERIAL=M{name}"]
    lines += [
        "*SURFACE,NAME=SW",
        *(f"{e},S4" for (i, _), e in work.elements.items() if i == at_bore),
    ]
    lines += ["*SURFACE,NAME=SM", *(f"{e},S2" for (i, _), e in bar.elements.items() if i == top)]
    lines += ["*SURFACE INTERACTION,NAME=SI", "*SURFACE BEHAVIOR,PRESSURE-OVERCLOSURE=LINEAR"]
    lines += [f"{stiff * fit.work[0] / BORE:.6g},{1e-9 * fit.work[0]:.3g}"]
    lines += ["*CONTACT PAIR,INTERACTION=SI,TYPE=SURFACE TO SURFACE", "SW,SM", "*BOUNDARY"]
    lines += [f"{_held(work)},2,2", f"{_held(bar)},2,2"]
    lines += [f"{n},1,1" for (i, _), n in bar.numbers.items() if bar.r[i] < 1e-12]
    lines += ["*STEP,INC=200", "*STATIC", "1.,1.", "*EL PRINT,ELSET=EW", "S", "*END STEP"]
    return "\n".join(lines) + "\n"


def _held(one: Body) -> int:
    """The node nearest to the middle of the bore line."""
    middle = (one.z[0] + one.z[-1]) / 2
    return min(
        one.numbers.items(),
        key=lambda n: abs(one.z[n[0][1]] - middle) + 1e-3 * abs(one.r[n[0][0]] - BORE),
    )[1]


def _hoop_integral(work: Body, data: Path) -> float:
    """Of the hoop stress over the section: the middle nine of CalculiX's 27 points of each cell."""
    hoop: dict[int, dict[int, float]] = {}
    for line in data.read_text().splitlines():
        cells = line.split()
        if len(cells) == 8 and cells[0].isdecimal() and 10 <= int(cells[1]) <= 18:
            hoop.setdefault(int(cells[0]), {})[int(cells[1]) - 10] = float(cells[4])
    total = 0.0
    for (i, j), number in work.elements.items():
        area = (work.r[2 * i + 2] - work.r[2 * i]) * (work.z[2 * j + 2] - work.z[2 * j])
        total += area * sum(w * hoop[number][k] for k, w in enumerate(GAUSS))
    return total
