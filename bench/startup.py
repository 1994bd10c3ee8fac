"""How long whole processes take, beside a bare interpreter in the same run.

    python bench/startup.py

Times are interleaved (one of each, then again), so that a busy moment hits all alike; the medians
are compared with that of `python -c pass`. Exit 1 when one is over its limit. 150 for a plan with
sheet and charts was asked of us, the other limits are ours; a plan weighs every way of holding and
sets every cut.
"""

from __future__ import annotations

import compileall
import os
import shutil
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from time import perf_counter

import borewright
from borewright.shapes.store import SETTING

EXAMPLES = Path(__file__).parents[1] / "examples"
REPEATS = 15
BARE = "python -c pass"
ONE_THREAD = dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"), "1")


@dataclass(frozen=True)
class Timed:
    """One command line, and how many bare interpreters it may cost (None: not judged).

    `shapes`: a folder of its own to keep shapes in, and one thread; `new`: the folder is emptied
    before every run.
    """

    name: str
    words: tuple[str, ...]
    limit: float | None
    shapes: Path | None = None
    new: bool = False


@dataclass(frozen=True)
class Line:
    """One line of the table: median seconds, and how many bare interpreters that is."""

    name: str
    seconds: float
    ratio: float
    limit: float | None

    @property
    def over(self) -> bool:
        return self.limit is not None and self.ratio >= self.limit


def commands(folder: Path) -> tuple[Timed, ...]:
    """What is timed; sheets and drawings go into `folder`."""
    ours = (sys.executable, "-m", "borewright")
    fit = [
        "fit",
        "--bore",
        "18.01mm",
        "--outside",
        "40mm",
        "--length",
        "30mm",
        "--material",
        "gray-iron-30",
        "--mandrel",
        "18mm",
        "--small-end",
        "17.99mm",
        "--travel",
        "25mm",
    ]
    job = str(EXAMPLES / "hollow-brook-drive-wheel.toml")
    shelf = str(EXAMPLES / "hollow-brook-shelf.toml")
    printed = ("--sheet", str(folder / "sheet.pdf"), "--drawing", str(folder / "drawing.svg"))
    printed += ("--charts", str(folder / "charts"))
    papers = ("--out", str(folder / "mandrel.pdf"), "--drawing", str(folder / "mandrel.dxf"))
    many, many_shelf = (
        str(EXAMPLES / "twelve" / f"12-job-shop{end}.toml") for end in ("", "-shelf")
    )
    return (
        Timed(BARE, (sys.executable, "-c", "pass"), None),
        Timed("--version", (*ours, "--version"), 5),
        Timed("a refusal", (*ours, "fit", "--bore", "18"), None),
        Timed("fit", (*ours, *fit), 25),
        Timed("plan", (*ours, "plan", job, "--shelf", shelf), None),
        Timed("plan, sheet and charts", (*ours, "plan", job, "--shelf", shelf, *printed), 150),
        Timed("make mandrel, papers", (*ours, "make", "mandrel", "--size", "5/8in", *papers), 60),
        Timed("plan, 62 mandrels", (*ours, "plan", many, "--shelf", many_shelf), 60),
    )


def seconds(timed: Timed) -> float:
    """Wall time of one process. RuntimeError where it fails."""
    env = {**os.environ, **(ONE_THREAD | {SETTING: str(timed.shapes)} if timed.shapes else {})}
    if timed.new and timed.shapes:
        shutil.rmtree(timed.shapes, ignore_errors=True)
    began = perf_counter()
    done = subprocess.run(timed.words, capture_output=True, check=False, env=env)
    took = perf_counter() - began
    if done.returncode != (2 if timed.name == "a refusal" else 0):
        raise RuntimeError(f"{timed.name}: exit {done.returncode}: {done.stderr.decode()}")
    return took


def compiled_as_installed() -> None:
    """Byte-compile the package, as an installer does; Python may have been told not to."""
    compileall.compile_dir(Path(borewright.__file__).parent, quiet=1)


def measure(repeats: int) -> list[Line]:
    """The commands, timed."""
    with tempfile.TemporaryDirectory() as folder:
        return interleaved(commands(Path(folder)), repeats)


def interleaved(asked: tuple[Timed, ...], repeats: int) -> list[Line]:
    """Interleaved timings, after one round that warms the disk; ratios are to the first."""
    compiled_as_installed()
    for timed in asked:
        seconds(timed)
    rounds = [[seconds(timed) for timed in asked] for _ in range(repeats)]
    middles = [median(column) for column in zip(*rounds, strict=True)]
    return [
        Line(timed.name, middle, middle / middles[0], timed.limit)
        for timed, middle in zip(asked, middles, strict=True)
    ]


def table(lines: list[Line]) -> str:
    """The lines as text."""
    head = f"{'command':24}{'median':>10}{'ratio':>9}{'limit':>9}"
    return "\n".join([head, *map(_row, lines)])


def _row(line: Line) -> str:
    limit = "" if line.limit is None else f"< {line.limit:g}"
    mark = "   over" if line.over else ""
    return f"{line.name:24}{line.seconds * 1e3:>7.1f} ms{line.ratio:>9.2f}{limit:>9}{mark}"


def main(repeats: int = REPEATS) -> int:
    """Print the table; 1 where a command is over its limit."""
    lines = measure(repeats)
    print(table(lines))
    return int(any(line.over for line in lines))


if __name__ == "__main__":
    sys.exit(main())
