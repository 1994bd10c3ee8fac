"""Work pushed along a taper mandrel with friction, solved by CalculiX; nothing here is the package's.

Held as a press holds it. The mandrel rests on the face of its large end and nowhere else along its
length; the work is pushed towards that end by an even pressure on its far face, which looks to the
small end. So the push squeezes the mandrel between the leading face and its large end, and the work
between its far face and wherever friction takes the push over. The pressure is even because the
*mean* movement of that face is prescribed: its nodes share the push as an even pressure would, and
without friction there is no push and the face is free, as the package takes it.

Two ways to get there.

- `LAST_SLIDE`: the work starts a little short of where it is wanted, the overlap is let in, and it
  slides the rest. Friction that slips forward everywhere depends on where the work is, not on how it
  came, so a slide of a few times the elastic shift stands for the whole travel. The push, `friction`
  times N to five digits, tells that all of it slips.
- `pressed_from_touch`: the whole travel from first touch, on a mandrel of 1:2000 whose mesh is as
  fine all along the slide; the last bit in finer increments, because CalculiX pairs the faces once
  an increment and a long one leaves N wrong by what it slid.

N is 2 pi times the integral of the work's hoop stress over its section: equilibrium of half a ring.
That is the radial force on the bore, N (cos a - mu sin a) with a half the angle of the taper; at
1:2000 and a friction of 0.12 it is 3 parts in 100 000 short of N, left out. The face that pushes has
no friction, so it adds nothing radial.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from tests.independent.calculix import STIFF, end_thought, run
from tests.independent.calculix_deck import SMALL, Fit, Mesh, bodies, contact, metal, placed
from tests.independent.calculix_mesh import BORE, Grid, Near, grid, lines
from tests.independent.calculix_read import WEIGHT, section, tables

WEDGE = 180
"""CalculiX prints forces of a wedge of two degrees."""

THREE_POINTS = (-np.sqrt(0.6), 0.0, np.sqrt(0.6))

Step = tuple[float, int]
"""How far the work is from where it is wanted when a step ends, and in how many increments it gets
there. A second step further off lets it back."""


@dataclass(frozen=True)
class Push:
    """How it is pushed. `slide`: how far (over the bore) from where it starts to where it is wanted.

    `stick`: shear for each length of slip before it slips, as `stiff` is pressure for each length (on
    a stick as stiff as that CalculiX finds no way back once the push is taken off);
    `drawn`: the mandrel is held at its small end instead, as if drawn through by it.
    """

    friction: float = 0.12
    slide: float = 2e-3
    steps: tuple[Step, ...] = ((0.0, 1),)
    taper: float = SMALL
    scale: float = 6.0
    stiff: float = STIFF
    stick: float = 50.0
    drawn: bool = False


LAST_SLIDE = Push()


@dataclass(frozen=True)
class Pushed:
    """N and the push at the end, both per unit of the work's modulus and of the taper."""

    force: float
    push: float


def pressed_from_touch(fit: Fit, last: float = 0.02, many: int = 4) -> Push:
    """The whole travel on a mandrel of 1:2000, `last` of it in two finer increments."""
    steps = ((last, many), (0.0, 2))
    return replace(LAST_SLIDE, slide=fit.share * fit.length, steps=steps, taper=1 / 2000)


def pushed(fit: Fit, how: Push, folder: Path, along: tuple[Grid, Grid] | None = None) -> Pushed:
    """Where one run ends, on meshes of its own or on those `along` the slide."""
    return way(fit, how, folder, along)[-1]


def way(fit: Fit, how: Push, folder: Path, along: tuple[Grid, Grid] | None = None) -> list[Pushed]:
    """Every increment of one run. AssertionError where CalculiX fails."""
    mesh = Mesh(how.scale, how.stiff, end_thought(fit))
    work, bar = along or bodies(fit, mesh)
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "fit.inp").write_text(_deck(fit, mesh, how, work, bar))
    run(folder)
    blocks, unit, found = tables(folder / "fit.dat"), fit.work[0] * how.taper, []
    for stresses, reaction in zip(blocks[::2], blocks[1::2], strict=True):
        printed = section(work, stresses)
        area = printed.size.prod(axis=0)
        force = 2 * np.pi * np.einsum("cij,c,i,j->", printed.stress[:, 2], area, WEIGHT, WEIGHT)
        found.append(Pushed(float(force) / unit, float(reaction.ravel()[1]) * WEDGE / unit))
    return found


def rubbing(fit: Fit, how: Push, folder: Path) -> list[Pushed]:
    """The same, and it is held that all of the bore slips where the first step ends."""
    found = way(fit, how, folder)
    there = found[how.steps[0][1] - 1]
    assert abs(there.push) > 0.9999 * how.friction * there.force, "not all of it slips"
    return found


def let_go(after: Sequence[Pushed]) -> float:
    """N once nothing pushes any more, between increments that let the pushed face back past there."""
    push, force = zip(*((one.push, one.force) for one in reversed(after)), strict=True)
    assert push[0] < 0 < push[-1], "it is let back too little or too much"
    return float(np.interp(0.0, push, force))


def along_the_slide(fit: Fit, cell: float = 0.1) -> tuple[Grid, Grid]:
    """Work, and a mandrel in cells of one length from the leading face to where the work starts."""
    z_marks = sorted({edge for ring in fit.rings for edge in ring[:2]})
    r_marks = sorted({edge for ring in fit.rings for edge in ring[2:]})
    z = lines(z_marks, [Near(x, x, 0.024) for x in (0.0, fit.length)], 0.4)
    work = grid(fit.rings, lines(r_marks, [Near(BORE, BORE, 0.024)], 1.2), z, 0)
    low, high = -2.0, fit.length * (1 + fit.share) + 0.3
    bar_z = lines((low, high), [Near(-0.1, high, cell, 0.3)], 0.5)
    bar_r = lines((0.0, BORE), [Near(BORE, BORE, cell / 2, 0.5)], 0.2)
    return work, grid([(low, high, 0.0, BORE)], bar_r, bar_z, len(work.nodes))


def even_shares(work: Grid, face: float) -> dict[int, float]:
    """Share of an even pressure on a face of the work that falls to each of its nodes."""
    numbers = work.line("z", face)
    radii = [work.nodes[n - 1][0] for n in numbers]
    loads: dict[int, float] = {}
    for k in range(0, len(numbers) - 2, 2):
        middle, half = radii[k + 1], (radii[k + 2] - radii[k]) / 2
        for x, weight in zip(THREE_POINTS, (5, 8, 5), strict=True):
            shapes = (x * (x - 1) / 2, 1 - x * x, x * (x + 1) / 2)
            for number, shape in zip(numbers[k : k + 3], shapes, strict=True):
                load = shape * weight * half * (middle + x * half)
                loads[number] = loads.get(number, 0.0) + load
    return {number: load / sum(loads.values()) for number, load in loads.items()}


def _deck(fit: Fit, mesh: Mesh, how: Push, work: Grid, bar: Grid) -> str:
    reach = fit.share * fit.length
    swell = how.taper / 2 / BORE
    text = placed(
        [(r, z + how.slide) for r, z in work.nodes],
        [(r * (1 + swell * (reach - z)), z) for r, z in bar.nodes],
    )
    text += metal(fit, work, bar)
    stick = f"{how.friction},{how.stick * fit.work[0] / BORE:.6g}"
    text += contact(fit, mesh, work, bar, ["*FRICTION", stick] if how.friction else [])
    pusher = len(work.nodes) + len(bar.nodes) + 1
    text += _pusher(even_shares(work, fit.length), pusher, fit.length)
    end = bar.line("z", bar.z[-1] if how.drawn else bar.z[0])
    text += ["*NSET,NSET=END", *(f"{n}," for n in end)]
    text += ["*BOUNDARY", "END,2,2", *(f"{n},1,1" for n in bar.line("r", 0.0))]
    for left, many in how.steps:
        text += ["*STEP,INC=500", "*STATIC", f"{1 / many:g},1.,,{1 / many:g}"]
        text += ["*BOUNDARY", f"{pusher},2,2,{left - how.slide:.12g}"]
        text += ["*EL PRINT,ELSET=EW", "S", "*NODE PRINT,NSET=END,TOTALS=ONLY", "RF", "*END STEP"]
    return "\n".join(text) + "\n"


def _pusher(shares: dict[int, float], pusher: int, z: float) -> list[str]:
    """A node that moves as the mean of a face does, and so pushes evenly on it."""
    # CalculiX leaves the first node of an equation to follow: one with a large share.
    first = sorted(shares, key=lambda n: -shares[n])
    terms = [*(f"{n},2,{shares[n]:.12g}" for n in first), f"{pusher},2,-1."]
    rows = [",".join(terms[k : k + 4]) for k in range(0, len(terms), 4)]
    return ["*NODE", f"{pusher},0.,{z:.12g},0", "*EQUATION", f"{len(terms)}", *rows]
