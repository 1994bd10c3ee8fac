"""One part, every way of holding, sixty-two mandrels: how long, with shapes that are known.

    python -m bench.ways

Prints the median time of a plan inside one process, and how many bare interpreters that is in the
same run. Then 500 parts against the same shelf on two cores, shapes new and known. Exit 1 when one
is over its limit: 150 ms; 60 s new, 20 s known. The limits are those asked of us.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import perf_counter

from bench.parts import SHELF, part_list

from borewright.job import read_job, read_shelf
from borewright.job.parts_file import parse_parts
from borewright.reference.library import Tables
from borewright.service.planned import plan
from borewright.shapes.store import SETTING
from borewright.shopwide.parts import plan_parts

PART = SHELF.with_name("12-job-shop.toml")
REPEATS = 15
MANY = 500
ONE_PART, NEW, KNOWN = 0.150, 60.0, 20.0


def timed(work: Callable[[], object]) -> float:
    """Seconds of one call."""
    began = perf_counter()
    work()
    return perf_counter() - began


def one_part(repeats: int = REPEATS) -> tuple[float, float]:
    """Median seconds of a plan with known shapes, and of a bare interpreter beside it."""
    job, shelf = read_job(PART), read_shelf(SHELF)
    plan(job, shelf)
    plans, bare = [], []
    for _ in range(repeats):
        plans.append(timed(lambda: plan(job, shelf)))
        bare.append(timed(lambda: subprocess.run([sys.executable, "-c", "pass"], check=True)))
    return median(plans), median(bare)


def many_parts(count: int = MANY, processes: int = 2) -> tuple[float, float]:
    """Seconds for a list of parts, shapes new, then the same again, shapes known."""
    parts, shelf = parse_parts(part_list(count), "parts.csv").parts, read_shelf(SHELF)

    def planned() -> object:
        return plan_parts(parts, shelf, Tables(), processes=processes)

    with tempfile.TemporaryDirectory() as folder:
        os.environ[SETTING] = str(Path(folder) / "shapes")
        return timed(planned), timed(planned)


def main() -> int:
    """Print the table; 1 where one is over its limit."""
    one, bare = one_part()
    new, known = many_parts()
    rows = (
        ("one part, every way, 62 mandrels", one, ONE_PART, f"{one / bare:.1f} bare interpreters"),
        (f"{MANY} parts, shapes new, two cores", new, NEW, f"{new / MANY * 1e3:.0f} ms a part"),
        (f"{MANY} parts, shapes known, two cores", known, KNOWN, f"{known / new:.2f} of new"),
    )
    for name, took, limit, said in rows:
        mark = "   over" if took >= limit else ""
        print(f"{name:36}{took:>9.3f} s   < {limit:g} s   {said}{mark}")
    return int(any(took >= limit for _, took, limit, _ in rows))


if __name__ == "__main__":
    sys.exit(main())
