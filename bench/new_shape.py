"""A new shape built in a process of its own: how long, how much memory, and what a state costs.

    python -m bench.new_shape "thin bush" 5

Prints one JSON object. The first build is the process's own first; the rest forget every shape
and build it again, and the medians are of these. Seconds are processor seconds.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from time import process_time

import numpy as np
from bench.startup import ONE_THREAD
from tests.independent.calculix_deck import SMALL, STANDS_OUT, Fit
from tests.independent.fits_judged import FIXED

from borewright.holding.taper.elastic_joint import Joint, joint
from borewright.mechanics.rings import Elastic
from borewright.mechanics.travel_curve import TravelCurve, travel_curve
from borewright.mechanics.travel_path import pressed_path
from borewright.shapes.find import forget
from borewright.shapes.store import SETTING

POINTS = 64
"""Overlaps at which the new curve is read."""

STATES = 200
"""Known states timed together, since one alone is too short for the clock."""

ROWS = ("force", "contact", "tension", "equivalent", "pressure", "growth")


@dataclass(frozen=True)
class Ours:
    """Processor seconds of a new shape with its curve, of a known state by solving for the
    pressure and by reading the curve, and the most memory the process held (bytes)."""

    new: float
    solved: float
    read: float
    memory: float


def in_a_child(name: str, builds: int) -> Ours:
    """Measured in a fresh process, one thread, no shapes kept. RuntimeError where it fails."""
    words = (sys.executable, "-m", "bench.new_shape", name, str(builds))
    done = subprocess.run(
        words,
        capture_output=True,
        text=True,
        check=False,
        cwd=Path(__file__).parents[1],
        env={**os.environ, **ONE_THREAD, SETTING: ""},
    )
    if done.returncode:
        raise RuntimeError(f"{name}: exit {done.returncode}: {done.stderr}")
    return Ours(**json.loads(done.stdout))


def build(fit: Fit) -> tuple[Joint, TravelCurve]:
    """Both bodies and the curve, read at every point of the travel."""
    pieces = [(s, e, 2 * b, 2 * a if a > 0.5 else None) for s, e, a, b in fit.rings]
    ends = STANDS_OUT, STANDS_OUT
    made = joint(pieces, 1.0, Elastic(*fit.work), Elastic(*fit.mandrel), ends)
    gap = 0.5 * SMALL * (made.places - made.places[0])
    curve = travel_curve(made.work, pressed_path(made.gives(), gap))
    overlaps = np.linspace(0.0, _overlap(fit, made), POINTS)
    for row in ROWS:
        curve.read(getattr(curve, row), overlaps)
    return made, curve


def _overlap(fit: Fit, made: Joint) -> float:
    """Overlap on radius over d at the first strip, as the fit has it."""
    return 0.5 * float(fit.overlap(float(made.places[0])))


def measured(name: str, builds: int) -> Ours:
    """All of it, in this process."""
    fit = FIXED[name]
    made, curve = build(fit)
    new = min(_seconds(lambda: _anew(fit)) for _ in range(builds))
    overlap, raised = np.array([fit.overlap(z) for z in made.places]), _overlap(fit, made)

    def solved() -> None:
        for _ in range(STATES):
            made.normal_force(made.pressure(overlap))

    def read() -> None:
        for _ in range(STATES):
            for row in ROWS:
                curve.read(getattr(curve, row), raised)

    states = [min(_seconds(what) for _ in range(builds)) / STATES for what in (solved, read)]
    return Ours(new, *states, _most_memory())


def _anew(fit: Fit) -> None:
    forget()
    build(fit)


def _seconds(what: Callable[[], None]) -> float:
    began = process_time()
    what()
    return process_time() - began


def _most_memory() -> float:
    """Most this process has held at once (bytes); what its parent held does not count."""
    lines = Path("/proc/self/status").read_text().splitlines()
    return 1024.0 * next(int(line.split()[1]) for line in lines if line.startswith("VmHWM"))


if __name__ == "__main__":
    print(json.dumps(vars(measured(sys.argv[1], int(sys.argv[2])))))
