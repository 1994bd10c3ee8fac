"""What CalculiX's printed stresses and movements say of a fit: the five quantities it may judge.

Stresses are read at the middle nine of CalculiX's 27 points of a cell, the plane of the section.
Each quantity is read in a way of its own, none of which the contact stiffness enters: the
normal force by equilibrium of half a ring (2 pi times the integral of the hoop stress over the
section), tension where the stress of a cell is best and along a line from there to the bore, the
end of contact from the gap beyond it to the power 2/3, which opens along a line at a smooth end,
and a second time from what presses beyond a place to the same power. (A parabola through the
printed points instead reads the tension near an edge 2 % high, on two meshes alike.)
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from tests.independent.calculix_deck import Fit
from tests.independent.calculix_mesh import BORE, Grid, corners_inward

POINT = np.array([0.5 - np.sqrt(0.15), 0.5, 0.5 + np.sqrt(0.15)])
WEIGHT = np.array([5, 8, 5]) / 18
BEST = np.array([0.5 - np.sqrt(1 / 12), 0.5 + np.sqrt(1 / 12)])
"""Where the stress of an 8-node cell is best (Barlow): between the points that are printed."""
CORNER = 0.02
EDGE = 0.01
"""Nearer than this to an inward corner (over the bore), to a bore edge (over its length): no value."""


@dataclass(frozen=True)
class Found:
    """Lengths over the bore's diameter, stresses and forces per unit of the work's modulus.

    `contact` is read from the gap beyond it, or where there is no room for one from the pressure;
    `by_pressure` is that second reading.
    """

    force: float
    contact: float
    by_pressure: float
    bore_tension: float
    tension: float
    growth: float
    middle_hoop: float
    middle_growth: float


@dataclass(frozen=True)
class Section:
    """Stress (cells, 4, r point, z point) as radial, axial, hoop, shear, and where the points are."""

    stress: np.ndarray
    r: np.ndarray
    z: np.ndarray
    size: np.ndarray


def tables(data: Path) -> list[np.ndarray]:
    """Blocks of numbers of the printed file, in the order asked for."""
    blocks: list[list[str]] = []
    for line in data.read_text().splitlines():
        if not line.strip():
            continue
        if line.lstrip()[0].isalpha():
            blocks.append([])
        else:
            blocks[-1].append(line)
    return [np.array(" ".join(b).split(), dtype=float).reshape(len(b), -1) for b in blocks]


def section(work: Grid, printed: np.ndarray) -> Section:
    """The printed stresses of the section."""
    middle = printed[(printed[:, 1] >= 10) & (printed[:, 1] <= 18)]
    order = np.lexsort((middle[:, 1], middle[:, 0]))
    s = middle[order].reshape(len(work.cells), 3, 3, 8)[..., [2, 3, 4, 5]]
    i, j = np.array(work.cells).T
    low = np.array([work.r[i], work.z[j]])
    size = np.array([work.r[i + 1], work.z[j + 1]]) - low
    r = low[0][:, None] + size[0][:, None] * POINT
    z = low[1][:, None] + size[1][:, None] * POINT
    # Printed along r first, then z.
    return Section(np.moveaxis(s, (1, 2, 3), (3, 2, 1)), r, z, size)


def onto(places: np.ndarray, points: np.ndarray) -> np.ndarray:
    """Weights (places, points) of the curve through values at `points`, read at `places`."""
    others = [np.delete(points, k) for k in range(len(points))]
    each = [
        np.prod((places[:, None] - o) / (p - o), axis=1)
        for p, o in zip(points, others, strict=True)
    ]
    return np.column_stack(each)


def best(plane: Section) -> Section:
    """The same stresses at the four best points of every cell."""
    move = onto(BEST, POINT)
    stress = np.einsum("ai,bj,ckij->ckab", move, move, plane.stress)
    return Section(stress, plane.r @ move.T, plane.z @ move.T, plane.size)


def read(fit: Fit, work: Grid, bar: Grid, data: Path) -> Found:
    """All five quantities of one run."""
    stresses, bore, out, surface = tables(data)[-4:]
    printed = section(work, stresses)
    plane = best(printed)
    modulus = fit.work[0]
    z, _, hoop, axial = at_bore(work, plane)
    force = (
        2
        * np.pi
        * np.einsum("cij,c,i,j->", printed.stress[:, 2], printed.size.prod(axis=0), WEIGHT, WEIGHT)
    )
    share = z / fit.length
    tension = between(share, hoop, 0.05)
    largest = max(anywhere(fit, plane), between(share, hoop, EDGE), between(share, axial, EDGE))
    contact, by_pressure = ends(fit, work, bar, plane, bore, surface)
    grown = 2 * out[:, 1].max()
    middle_hoop = float(np.interp(fit.length / 2, z, hoop)) / modulus
    places = [work.nodes[int(n) - 1][1] for n in out[:, 0]]
    middle_growth = 2 * float(np.interp(fit.length / 2, places, out[:, 1]))
    return Found(
        force / modulus,
        contact,
        by_pressure,
        tension / modulus,
        largest / modulus,
        grown,
        middle_hoop,
        middle_growth,
    )


def between(share: np.ndarray, value: np.ndarray, margin: float) -> float:
    """Largest value between two shares of the length, the values at both included."""
    inside = (share >= margin) & (share <= 1 - margin)
    return float(max(value[inside].max(), *np.interp((margin, 1 - margin), share, value)))


def bore_row(work: Grid) -> int:
    """Which row of cells lies on the bore."""
    return int(np.argmin(np.abs(work.r - BORE)))


def at_bore(work: Grid, plane: Section) -> tuple[np.ndarray, ...]:
    """z, pressure, hoop and axial stress on the bore line, at two places of every cell."""
    i = np.array(work.cells)[:, 0]
    first = np.flatnonzero(i == bore_row(work))
    first = first[np.argsort(plane.z[first, 1])]
    stress = np.einsum("ckij,i->ckj", plane.stress[first], onto(np.zeros(1), BEST)[0])
    z = plane.z[first].ravel()
    return z, -stress[:, 0].ravel(), stress[:, 2].ravel(), stress[:, 1].ravel()


def anywhere(fit: Fit, plane: Section) -> float:
    """Greatest principal stress at the best points of all cells but those at edges and inward corners."""
    radial, axial, hoop, shear = np.moveaxis(plane.stress, 1, 0)
    largest = np.maximum((radial + axial) / 2 + np.hypot((radial - axial) / 2, shear), hoop)
    r, z = plane.r[:, :, None], plane.z[:, None, :]
    kept = np.ones(largest.shape, dtype=bool)
    for face in (0.0, fit.length):
        kept &= np.hypot(z - face, r - BORE) > EDGE * fit.length
    for x, y in corners_inward(fit.rings):
        kept &= np.hypot(z - x, r - y) > CORNER
    return float(largest[kept].max())


def ends(
    fit: Fit, work: Grid, bar: Grid, plane: Section, bore: np.ndarray, surface: np.ndarray
) -> tuple[float, float]:
    """Contact length by the gap beyond, and by pressure; the whole bore where it presses to its end."""
    z, pressure, _, _ = at_bore(work, plane)
    pressed = pressure > 1e-3 * pressure.max()
    if pressed[-4:].all():
        return fit.length, fit.length
    last = float(z[np.flatnonzero(pressed)[-1]])
    rows = np.flatnonzero(np.array(work.cells)[:, 0] == bore_row(work))
    edges = np.sort(np.append(work.z[np.array(work.cells)[rows, 1]], fit.length))
    share = np.maximum(pressure.reshape(-1, 2).mean(axis=1), 0) * np.diff(edges)
    beyond = np.append(np.cumsum(share[::-1])[::-1], 0.0)
    by_pressure = _nothing_at(edges - last, beyond ** (2 / 3), -0.2 * last, -0.03 * last)
    places = np.array([work.nodes[int(n) - 1][1] for n in bore[:, 0]])
    bar_z = np.array([bar.nodes[int(n) - 1 - bar.first][1] for n in surface[:, 0]])
    inward = np.interp(places, bar_z, surface[:, 1])
    gap = bore[:, 1] - inward - np.array([fit.overlap(p) for p in places]) / 2
    most = min(0.2 * last, fit.length - last - 0.02)
    by_gap = _nothing_at(places - last, np.cbrt(np.maximum(gap, 0)) ** 2, 0.03 * last, most)
    return last + (by_pressure if np.isnan(by_gap) else by_gap), last + by_pressure


def _nothing_at(x: np.ndarray, y: np.ndarray, low: float, high: float) -> float:
    """Where a parabola x(y) through the points between low and high has y = 0; nan for few points."""
    inside = (x > low) & (x < high)
    return float(np.polyfit(y[inside], x[inside], 2)[2]) if inside.sum() > 3 else float("nan")
