"""Contact against CalculiX in the same run, on the fits that `tests/independent` judges.

    python -m bench.contact

A new shape is all our work in one process: both bodies, the curve, read at 64 overlaps, no shape
kept from before. CalculiX solves one state, on its cheapest mesh whose normal force is within 0.1 %
of its own refined answer (`ccx_mesh`); its cheapest for all five figures that the tests hold us to
stands beside, not judged. A known state is a reading of the curve, six figures at one overlap;
solving for the pressure along the bore is shown beside it, not judged. Both sides run on one
thread, turn about, and are counted in processor seconds, the least of all rounds. Last, whole `fit`
processes beside a bare interpreter. Exit 1 when anything is over its limit. The limits are ours.
"""

from __future__ import annotations

import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path
from statistics import median

from bench.ccx_mesh import Ladder, Run, cheapest, once
from bench.new_shape import Ours, in_a_child
from bench.startup import BARE, Line, Timed, interleaved
from bench.startup import table as startup_table
from tests.independent.fits_judged import FIXED, WEBBED

ROUNDS, BUILDS, REPEATS = 3, 5, 15

NEW = (3.0, 5.0)
KNOWN = (1000.0, 5000.0)
"""How often as fast as CalculiX, at least: on every shape, and in the median of the shapes."""

MEMORY = 300e6
"""Most bytes that a process which builds a new shape may hold."""

PROCESS = (60.0, 25.0)
"""How many bare interpreters a whole `fit` may cost: on a new shape, on a known one."""


@dataclass(frozen=True)
class Row:
    """One fit: CalculiX's mesh, its seconds there and for all five figures, and ours."""

    name: str
    mesh: Run
    ccx: float
    five: float
    ours: Ours

    @property
    def new(self) -> float:
        return self.ccx / self.ours.new

    @property
    def known(self) -> float:
        return self.ccx / self.ours.read

    @property
    def over(self) -> bool:
        return self.new < NEW[0] or self.known < KNOWN[0] or self.ours.memory >= MEMORY


def row(name: str, ladder: Ladder, rounds: int, builds: int) -> Row:
    """One fit, measured turn about."""
    fit = FIXED[name]
    force, five = cheapest(fit, ladder)
    turns = [
        (once(fit, force.mesh).seconds, once(fit, five.mesh).seconds, in_a_child(name, builds))
        for _ in range(rounds)
    ]
    ccx, ccx_five, ours = zip(*turns, strict=True)
    best = Ours(
        min(one.new for one in ours),
        min(one.solved for one in ours),
        min(one.read for one in ours),
        max(one.memory for one in ours),
    )
    return Row(name, force, min(ccx), min(ccx_five), best)


def medians(rows: list[Row]) -> tuple[float, float]:
    """Of the ratios for a new shape and for a known state."""
    return median(one.new for one in rows), median(one.known for one in rows)


def table(rows: list[Row]) -> str:
    """The rows as text, the medians and the limits below."""
    head = (
        f"{'fit':24} {'CalculiX, its mesh':42}{'ccx':>8}{'new':>8}{'ratio':>8}"
        f"{'five':>8}{'read':>9}{'ratio':>9}{'solved':>9}{'memory':>9}"
    )
    new, known = medians(rows)
    over = "   over" if new < NEW[1] or known < KNOWN[1] else ""
    return "\n".join(
        [
            head,
            *map(_line, rows),
            f"{'median':83}{new:>7.1f}x{known:>25,.0f}x{over}",
            f"limits: new {NEW[0]:g}x each, {NEW[1]:g}x median; known {KNOWN[0]:,g}x each, "
            f"{KNOWN[1]:,g}x median; memory {MEMORY / 1e6:g} MB",
        ]
    )


def _line(one: Row) -> str:
    mark = "   over" if one.over else ""
    five = one.five / one.ours.new
    return (
        f"{one.name:24} {one.mesh.text:42}{one.ccx * 1e3:>5.0f} ms{one.ours.new * 1e3:>5.0f} ms"
        f"{one.new:>7.1f}x{five:>7.1f}x{one.ours.read * 1e6:>6.1f} µs{one.known:>8,.0f}x"
        f"{one.ours.solved * 1e6:>6.0f} µs{one.ours.memory / 1e6:>6.0f} MB{mark}"
    )


def commands(folder: Path) -> tuple[Timed, ...]:
    """Whole processes: the webbed wheel on a bore of 20 mm, its shape new and known."""
    outline = "; ".join(
        ",".join(f"{20 * x:g}mm" for x in ((s, e, 2 * b, 2 * a) if a > 0.5 else (s, e, 2 * b)))
        for s, e, a, b in WEBBED
    )
    fit = ["fit", "--bore", "20.01mm", "--outline", outline, "--material", "gray-iron-30"]
    fit += ["--mandrel", "20mm", "--small-end", "19.99mm", "--travel", "25mm"]
    words = (sys.executable, "-m", "borewright", *fit)
    return (
        Timed(BARE, (sys.executable, "-c", "pass"), None),
        Timed("fit, new shape", words, PROCESS[0], folder / "new", new=True),
        Timed("fit, known shape", words, PROCESS[1], folder / "known"),
    )


def processes(repeats: int) -> list[Line]:
    """Medians of whole processes, as `bench/startup.py` takes them."""
    with tempfile.TemporaryDirectory() as folder:
        return interleaved(commands(Path(folder)), repeats)


def main(ladder: Ladder | None = None) -> int:
    """Print both tables; 1 where anything is over its limit."""
    rows = [row(name, ladder or Ladder(), ROUNDS, BUILDS) for name in FIXED]
    lines = processes(REPEATS)
    print(table(rows), startup_table(lines), sep="\n\n")
    new, known = medians(rows)
    slow = new < NEW[1] or known < KNOWN[1] or any(one.over for one in rows)
    return int(slow or any(line.over for line in lines))


if __name__ == "__main__":
    sys.exit(main())
