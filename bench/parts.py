"""Many parts against sixty-two mandrels: time a part, and whether it keeps in step with the list.

    python bench/parts.py

Prints the seconds for 125, 250 and 500 parts in one run, and each a part beside the smallest list.
Exit 1 when a part of the longest list costs over 1.3 times one of the shortest. The limit is ours.
"""

from __future__ import annotations

import sys
from pathlib import Path
from time import perf_counter

from borewright.job import read_shelf
from borewright.job.parts_file import parse_parts
from borewright.reference.library import Tables
from borewright.shopwide.parts import plan_parts

SHELF = Path(__file__).parents[1] / "examples" / "twelve" / "12-job-shop-shelf.toml"
COUNTS = (125, 250, 500)
IN_STEP = 1.3
BORES = ("0.5001in", "0.6252in", "0.7502in", "20.006mm", "16.005mm", "0.8127in", "30.01mm")
MATERIALS = ("6061", "mild steel", "gray iron", "bearing bronze", "free-cutting steel")


def part_list(count: int) -> str:
    """A made-up list of parts, the same each time."""
    rows = [
        ",".join(
            (
                f"{k:04d}",
                MATERIALS[k % 5],
                f"{2 + k % 7 / 4}in",
                f"{0.5 + k % 4 / 4}in",
                BORES[k % 7],
                "plug gauge,reamed",
            )
        )
        for k in range(count)
    ]
    return "\n".join(["part,material,outside,length,bore,measured_with,made_by", *rows])


def seconds(count: int) -> float:
    """Time to plan this many parts."""
    read = parse_parts(part_list(count), "parts.csv")
    shelf, tables = read_shelf(SHELF), Tables()
    began = perf_counter()
    answers = plan_parts(read.parts, shelf, tables)
    took = perf_counter() - began
    if len(answers) != count or read.bad:
        raise RuntimeError(f"{len(answers)} answers for {count} parts")
    return took


def main(counts: tuple[int, ...] = COUNTS) -> int:
    """Print the table; 1 where the time grows faster than the list."""
    each = [seconds(n) / n for n in counts]
    print(f"{'parts':>8}{'a part':>12}{'ratio':>9}")
    for count, one in zip(counts, each, strict=True):
        print(f"{count:>8}{one * 1e3:>9.1f} ms{one / each[0]:>9.2f}")
    return int(each[-1] / each[0] > IN_STEP)


if __name__ == "__main__":
    sys.exit(main())
