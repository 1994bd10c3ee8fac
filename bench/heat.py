"""One heat run through a schedule of cuts, as a plan asks for it.

    python -m bench.heat

Prints the milliseconds of a run, of the waits and of the chart for an everyday wheel (a rough cut
of two passes, two faces, a finishing cut; 256 drawn cases and the likely one), the least of all
rounds, beside the same run by integration, likely case alone. Exit 1 when a run with its waits is
over its limit. The limit is ours.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from time import perf_counter

import numpy as np
from tests.heat_jobs import trial_named

from borewright.mechanics.two_bodies import Pair, Segment, by_integration
from borewright.planning.heating.bursts import bursts_of, stretches
from borewright.planning.heating.heat_chart import heat_chart
from borewright.planning.heating.heat_run import heat_run, heater_of
from borewright.planning.heating.waits import waited
from borewright.planning.taper.trial import Trial

ROUNDS, REPEATS = 5, 20
LIMIT = 3.0
"""Milliseconds of a run with its waits."""


def milliseconds(task: Callable[[], object], rounds: int, repeats: int) -> float:
    """Of one call, the least of all rounds."""
    task()
    found = []
    for _ in range(rounds):
        began = perf_counter()
        for _ in range(repeats):
            task()
        found.append((perf_counter() - began) / repeats * 1e3)
    return min(found)


def integrated(trial: Trial) -> np.ndarray:
    """Warmth at the end of the schedule, step by step, likely case."""
    heater = heater_of(trial)
    pair, losses = heater.bodies.pair, heater.bodies.losses(coolant=False)
    likely = Pair(pair.work, pair.mandrel, float(np.asarray(pair.across)[0]))
    segments = []
    for number, burst in enumerate(bursts_of(trial)):
        if number:
            segments.append(Segment(heater.pause, 0.0, *losses))
        segments += [Segment(s.seconds, float(s.watts[0]), *losses) for s in stretches(burst)]
    end = np.array([sum(s.seconds for s in segments)])
    return by_integration(likely, segments, end)[:, 0]


def main(rounds: int = ROUNDS, repeats: int = REPEATS) -> int:
    """Print the table; 1 where a run takes too long."""
    trial = trial_named("aluminium")
    run, _ = waited(trial)
    tasks: dict[str, Callable[[], object]] = {
        "a run": lambda: heat_run(trial),
        "with its waits": lambda: waited(trial),
        "its chart": lambda: heat_chart(run),
        "one case by integration": lambda: integrated(trial),
    }
    took = {name: milliseconds(task, rounds, repeats) for name, task in tasks.items()}
    for name, each in took.items():
        over = name == "with its waits" and each > LIMIT
        print(f"{name:26}{each:8.2f} ms{' over' if over else ''}")
    return int(took["with its waits"] > LIMIT)


if __name__ == "__main__":
    sys.exit(main())
