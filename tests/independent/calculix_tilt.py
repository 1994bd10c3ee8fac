"""Work shrunk on a bar and tilted by pulls at its outside, solved by CalculiX in three dimensions.

Takes nothing from the package. Half of work and bar (cut by the plane of the moment) in 20-node
bricks, face-to-face penalty contact without friction; the bar's nodes are moved out by half the
overlap. The bar has a narrow hole in place of an axis, and both its end faces are held sideways but
for their tilt. The pulls are an even axial shear cos φ on the outermost surface, moment 1 in all.
"""

from __future__ import annotations

import os
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
from tests.tools import system_tool

BORE, HOLE, MANY = 0.5, 0.1, 100_000
BRICK = (
    *((0, 0, 0), (2, 0, 0), (2, 2, 0), (0, 2, 0), (0, 0, 2), (2, 0, 2), (2, 2, 2), (0, 2, 2)),
    *((1, 0, 0), (2, 1, 0), (1, 2, 0), (0, 1, 0), (1, 0, 2), (2, 1, 2), (1, 2, 2), (0, 1, 2)),
    *((0, 0, 1), (2, 0, 1), (2, 2, 1), (0, 2, 1)),
)
"""Steps along r, round, and along z to CalculiX's nodes 1 to 20; faces S6 inside, S4 outside."""

CORNER, SIDE = -1 / 12, 1 / 3
"""Shares of an even load on the nodes of an 8-node face."""

Key = tuple[int, int, int]


@dataclass
class Body:
    """Bricks of metal on a grid of r, z and turns; a node is known by its (r, z, turn) lines."""

    rings: list
    lines: tuple[np.ndarray, np.ndarray, np.ndarray]
    first: int
    number: dict[Key, int] = field(default_factory=dict)
    bricks: dict[Key, list[int]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        r, z, turn = self.lines
        self.r, self.z, self.turn = (
            np.sort(np.concatenate([x, (x[1:] + x[:-1]) / 2])) for x in self.lines
        )
        for i in range(len(r) - 1):
            for j in range(len(z) - 1):
                at = (z[j] + z[j + 1]) / 2, (r[i] + r[i + 1]) / 2
                if any(s < at[0] < e and a < at[1] < b for s, e, a, b in self.rings):
                    for k in range(len(turn) - 1):
                        self.bricks[i, j, k] = [
                            self.node((2 * i + a, 2 * j + c, 2 * k + b)) for a, b, c in BRICK
                        ]

    def node(self, key: Key) -> int:
        return self.number.setdefault(key, self.first + len(self.number) + 1)

    def faces(self, layer: int, face: str) -> Iterator[str]:
        """One face of every brick of a layer along r."""
        for number, key in enumerate(self.bricks, self.first + 1):
            if key[0] == layer:
                yield f"{number},{face}"

    @property
    def last(self) -> int:
        return len(self.turn) - 1


@dataclass(frozen=True)
class Fit:
    """Rings (start, end, inside, outside) over d, metals as E and ν, overlap `taper (reach - z)`."""

    rings: list
    r: list[float]
    z: np.ndarray
    metals: tuple[tuple[float, float], tuple[float, float]]
    taper: float
    reach: float
    stands_out: float = 2.0
    turns: int = 6
    stiff: float = 2e2

    def overlap(self, z: np.ndarray | float) -> np.ndarray | float:
        """Half of it: on radius."""
        return self.taper * (self.reach - z) / 2


@dataclass(frozen=True)
class Answer:
    """At one moment: how far the outside has turned, and the share of the normal force lifted."""

    moment: float
    turn: float
    lifted: float


def tilt(fit: Fit, moment: float, steps: int, folder: Path) -> tuple[float, list[Answer]]:
    """Normal force without a moment, then the answers at `steps` even steps up to the moment."""
    turns = np.linspace(0, np.pi, fit.turns + 1)
    out = fit.stands_out * np.array([0.2, 0.5, 1.0])
    z = np.concatenate([-out[::-1], fit.z, fit.z[-1] + out])
    work = Body(fit.rings, (np.array(fit.r), fit.z, turns), 0)
    bar_r = np.array([HOLE, 0.28, 0.42, BORE])
    bar = Body([(z[0], z[-1], HOLE, BORE)], (bar_r, z, turns), MANY)
    pulls = _pulls(work)
    (folder / "tilt.inp").write_text("\n".join(_deck(fit, work, bar, pulls, moment, steps)) + "\n")
    done = subprocess.run(
        [system_tool("ccx"), "tilt"],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "OMP_NUM_THREADS": "1"},
    )
    assert done.returncode == 0, done.stdout[-500:]
    states = list(_moved(folder / "tilt.dat"))
    start = _pressure(fit, work, bar, states[0])
    force = np.maximum(start, 0)
    weights = np.full(work.last + 1, 4 / 3)
    weights[::2] = 2 / 3
    weights[[0, -1]] = 1 / 3
    around = weights * np.pi / work.last
    fine = np.linspace(fit.z[0], fit.z[-1], 2001)

    def along(values: np.ndarray) -> np.ndarray:
        return np.interp(fine, work.z, values)

    ring = force @ around / np.pi
    answers = []
    for step, state in enumerate(states[1:], 1):
        lowest = along(_pressure(fit, work, bar, state).min(axis=1))
        here = moment * step / steps
        turn = 2 * sum(
            pull * (state[work.number[key]] - states[0][work.number[key]])[2]
            for key, pull in pulls.items()
        )
        weight = along(ring)
        answers.append(Answer(here, float(turn), float(weight[lowest <= 0].sum() / weight.sum())))
    normal = 2 * np.pi * BORE * np.trapezoid(along(ring), fine)
    return float(normal), answers


def _pulls(work: Body) -> dict[Key, float]:
    """Axial forces at the outside of the half that make half of a unit moment."""
    outer = len(work.r) - 1
    found: dict[Key, float] = {}
    for i, j, k in work.bricks:
        if 2 * i + 2 != outer:
            continue
        area = (work.z[2 * j + 2] - work.z[2 * j]) * (work.turn[2 * k + 2] - work.turn[2 * k])
        for a, b in ((a, b) for a in range(3) for b in range(3) if (a, b) != (1, 1)):
            key = (outer, 2 * j + a, 2 * k + b)
            share = SIDE if 1 in (a, b) else CORNER
            found[key] = found.get(key, 0.0) + share * area * np.cos(work.turn[key[2]])
    half = sum(pull * work.r[-1] * np.cos(work.turn[key[2]]) for key, pull in found.items())
    return {key: pull / half / 2 for key, pull in found.items()}


def _deck(
    fit: Fit, work: Body, bar: Body, pulls: dict[Key, float], moment: float, steps: int
) -> Iterator[str]:
    for name, body in (("W", work), ("M", bar)):
        yield f"*NODE,NSET=N{name}"
        for (i, j, k), number in body.number.items():
            r = body.r[i] + (fit.overlap(body.z[j]) * body.r[i] / BORE if body is bar else 0.0)
            x, y = r * np.cos(body.turn[k]), r * np.sin(body.turn[k])
            yield f"{number},{x:.12g},{y:.12g},{body.z[j]:.12g}"
        yield f"*ELEMENT,TYPE=C3D20R,ELSET=E{name}"
        for number, nodes in enumerate(body.bricks.values(), body.first + 1):
            yield f"{number},{','.join(map(str, nodes[:10]))},"
            yield ",".join(map(str, nodes[10:]))
    for name, (modulus, poisson) in zip("WM", fit.metals, strict=True):
        yield from (f"*MATERIAL,NAME=M{name}", "*ELASTIC", f"{modulus},{poisson}")
        yield f"*SOLID SECTION,ELSET=E{name},MATERIAL=M{name}"
    yield "*SURFACE,NAME=SW"
    yield from work.faces(0, "S6")
    yield "*SURFACE,NAME=SM"
    yield from bar.faces(len(bar.lines[0]) - 2, "S4")
    modulus = fit.metals[0][0]
    yield from ("*SURFACE INTERACTION,NAME=SI", "*SURFACE BEHAVIOR,PRESSURE-OVERCLOSURE=LINEAR")
    yield f"{fit.stiff * modulus / BORE:.6g},{1e-9 * modulus:.3g}"
    yield from ("*CONTACT PAIR,INTERACTION=SI,TYPE=SURFACE TO SURFACE", "SW,SM", "*BOUNDARY")
    for body in (work, bar):
        yield from (f"{n},2,2" for (_, _, k), n in body.number.items() if k in (0, body.last))
    for (_, j, k), number in bar.number.items():
        if j in (0, len(bar.z) - 1):
            yield f"{number},1,1"
            if k not in (0, bar.last):
                yield f"{number},2,2"
    middle = len(work.z) // 4 * 2
    yield f"{work.number[0, middle, work.last // 2]},3,3"
    yield f"{bar.number[0, 0, bar.last // 2]},3,3"
    prints = ("*NODE PRINT,NSET=NW", "U", "*NODE PRINT,NSET=NM", "U")
    yield from ("*STEP,INC=100", "*STATIC", "1.,1.", *prints, "*END STEP")
    yield from ("*STEP,INC=100", "*STATIC,DIRECT", f"{1 / steps:.12g},1.", "*CLOAD")
    for key, pull in pulls.items():
        if abs(pull) > 1e-12:
            yield f"{work.number[key]},3,{pull * moment:.12g}"
    yield from (*prints, "*END STEP")


def _moved(data: Path) -> Iterator[dict[int, np.ndarray]]:
    """Movements of all nodes at every time printed."""
    now, state = "", {}
    for line in data.read_text().splitlines():
        if "displacements" in line:
            time = line.split()[-1]
            if state and time != now:
                yield state
                state = {}
            now = time
        elif len(cells := line.split()) == 4:
            state[int(cells[0])] = np.array(cells[1:], dtype=float)
    yield state


def _pressure(fit: Fit, work: Body, bar: Body, state: dict[int, np.ndarray]) -> np.ndarray:
    """Penalty stiffness times how far the bar stands in the bore, at (z, turn); below 0 in a gap."""
    found = np.full((len(work.z), work.last + 1), np.nan)
    outer = len(bar.r) - 1
    shift = int(np.searchsorted(bar.z, work.z[0] - 1e-9))
    for (i, j, k), number in work.number.items():
        if i == 0:
            out = np.array([np.cos(work.turn[k]), np.sin(work.turn[k]), 0.0])
            apart = (state[bar.number[outer, j + shift, k]] - state[number]) @ out
            found[j, k] = fit.stiff * fit.metals[0][0] / BORE * (fit.overlap(work.z[j]) + apart)
    for j in range(1, len(work.z), 2):
        for k in range(1, work.last, 2):
            square = found[j - 1 : j + 2, k - 1 : k + 2]
            sides = square[0, 1] + square[2, 1] + square[1, 0] + square[1, 2]
            found[j, k] = sides / 2 - square[::2, ::2].sum() / 4
    return found
