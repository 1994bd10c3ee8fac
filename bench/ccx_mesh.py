"""The cheapest mesh on which CalculiX answers a fit: found along a ladder, coarse to fine.

Meshes and decks are those of `tests/independent`. A rung is a size of cells, tried with either
contact stiffness and with and without finer cells where contact is thought to end. A rung counts
when what is asked of it lies near CalculiX's own answer on a refined mesh; of the first size with
such a rung the quickest is taken, even where a finer mesh would be farther off again: luck is
CalculiX's. Seconds are processor seconds of the `ccx` process alone, for one state, one thread.
"""

from __future__ import annotations

import resource
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.independent.calculix import SOFT, STIFF, WITHIN, end_thought, run
from tests.independent.calculix_deck import Fit, Mesh, bodies, deck
from tests.independent.calculix_read import read

FORCE = {"force": 1e-3}
"""What is judged: the normal force, within this share of the refined answer."""

ALL_FIVE = WITHIN
"""Shown beside it: every figure that the package is held to, within what it is held to."""


@dataclass(frozen=True)
class Ladder:
    """Sizes of cells over the usual ones: those tried, coarse to fine, and the refined answer's."""

    sizes: tuple[float, ...] = (45, 32, 22, 16, 11, 8, 5.6, 4, 2.8, 2, 1.4)
    refined: float = 1.0


@dataclass(frozen=True)
class Run:
    """One run of `ccx`: its mesh, nodes of both bodies, processor seconds, and the figures."""

    mesh: Mesh
    nodes: int
    seconds: float
    figures: dict[str, float]

    @property
    def text(self) -> str:
        end = ", fine at the end" if self.mesh.end else ""
        return f"{self.mesh.scale:g}x, {self.nodes} nodes{end}"


def once(fit: Fit, mesh: Mesh) -> Run:
    """One run. AssertionError where CalculiX fails, others where its answer cannot be read."""
    work, bar = bodies(fit, mesh)
    with TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "fit.inp").write_text(deck(fit, mesh, work, bar))
        began = _children()
        run(folder)
        took = _children() - began
        figures = asdict(read(fit, work, bar, folder / "fit.dat"))
    return Run(mesh, len(work.nodes) + len(bar.nodes), took, figures)


def cheapest(fit: Fit, ladder: Ladder) -> tuple[Run, Run]:
    """The cheapest run for the force, and the cheapest for all five figures."""
    refined = once(fit, Mesh(ladder.refined, STIFF, end_thought(fit)))
    found: dict[str, Run] = {}
    for size in ladder.sizes:
        runs = list(_rung(fit, size))
        for name, within in (("force", FORCE), ("all", ALL_FIVE)):
            good = [one for one in runs if _near(one, refined, within)]
            if good and name not in found:
                found[name] = min(good, key=lambda one: one.seconds)
        if len(found) == 2:
            break
    return found.get("force", refined), found.get("all", refined)


def _rung(fit: Fit, size: float) -> Iterator[Run]:
    """Every run with cells of this size whose answer can be read."""
    for end in {None, end_thought(fit)}:
        for stiff in (STIFF, SOFT):
            try:
                yield once(fit, Mesh(size, stiff, end))
            except (AssertionError, ValueError, IndexError):
                continue  # too coarse for CalculiX, or for what is read of it


def _near(found: Run, refined: Run, within: dict[str, float]) -> bool:
    return all(
        abs(found.figures[name] / refined.figures[name] - 1) <= share
        for name, share in within.items()
    )


def _children() -> float:
    """Processor seconds of all processes that were waited for."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime
