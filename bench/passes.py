"""Eight cuts set in the least time out of twelve speeds and twenty-four feeds, beside trying all.

    python -m bench.passes

Prints milliseconds warm for the whole schedule of one job, what trying every setting of every cut
would take, and how far they agree (the times found must be the same). Exit 1 over the limit asked
of us, 50 ms, or where the two disagree.
"""

from __future__ import annotations

import sys
from statistics import median
from time import perf_counter

from borewright.job import parse_job
from borewright.planning.choice.arrangement import arrange
from borewright.planning.choice.recommended import recommended
from borewright.planning.passes.bench import Bench, Set
from borewright.planning.passes.holding import Holding, holding_of
from borewright.planning.passes.least_time import Found
from borewright.planning.passes.runs import runs
from borewright.planning.weighing.warmed import work_body
from borewright.reference.library import Tables

LIMIT = 0.050
CUTS, SPEEDS, FEEDS, REPEATS = 8, 12, 24, 15

SPEED_LIST = ", ".join(f'"{round(28 * 1.38**k)} rpm"' for k in range(SPEEDS))
FEED_LIST = ", ".join(f'"{0.03 * 1.13**k:.3f}mm/rev"' for k in range(FEEDS))

JOB = f"""
title = "Stepped pulley, Hollow Brook"
units = "mm"
[work]
material = "gray iron"
blank = "bar"
outside = "126mm"
length = "44mm"
bore = {{ size = "20.005mm", made_by = "reamed", measured_with = "bore gauge" }}
[work.finished]
outside = "118mm"
tolerance = "0.1mm"
length = "41mm"
steps = [{{ from = "0mm", to = "12mm", outside = "96mm" }}]
grooves = [
  {{ from = "12mm", to = "15mm", bottom = "90mm" }},
  {{ from = "30mm", to = "33mm", bottom = "110mm" }},
]
[machine]
speeds = [{SPEED_LIST}]
feeds = [{FEED_LIST}]
power = "1.1kW"
[hold]
use = "plain-taper"
mandrels = ["20mm"]
"""


def held() -> Holding:
    """The hold that is recommended for the job."""
    row = recommended(arrange(parse_job(JOB, "bench"), Tables()))
    assert row is not None
    assert row.weighed.trial is not None
    return holding_of(row.weighed.trial)


def set_all(holding: Holding) -> list[Set]:
    """Every cut set."""
    return list(runs(Bench(holding, work_body(holding.taken(holding.cuts)))))


class Watched(Bench):
    """A bench that remembers what it answered."""

    def __init__(self, *given: object) -> None:
        super().__init__(*given)  # type: ignore[arg-type]
        self.seen: list[Found] = []

    def found(self, *run: object, **how: bool) -> Found:
        answer = super().found(*run, **how)  # type: ignore[arg-type]
        self.seen.append(answer)
        return answer


def tried_all(holding: Holding) -> tuple[int, int, float]:
    """Settings tried, runs whose least time differs, and the seconds that it takes."""
    bench = Watched(holding, work_body(holding.taken(holding.cuts)))
    list(runs(bench))
    tried = differ = 0
    began = perf_counter()
    for answer in bench.seen:
        assert answer.problem is not None
        limits, known = answer.problem.limits, answer.problem.settings
        within = [s.seconds for s in known if all(m.share(s) >= 1 for m in limits)]
        tried += len(known)
        best = min(within, default=None)
        same = answer.blocked != "" if best is None else abs(best - answer.setting.seconds) < 1e-9
        differ += not same
    return tried, differ, perf_counter() - began


def main() -> int:
    """Print the figures; 1 where it is over its limit, or where trying all finds another time."""
    holding = held()
    set_all(holding)
    times = []
    for _ in range(REPEATS):
        began = perf_counter()
        found = set_all(holding)
        times.append(perf_counter() - began)
    took, cuts = median(times), sum(len(s.cuts) for s in found)
    tried, differ, all_of_them = tried_all(holding)
    over = "   over" if took >= LIMIT else ""
    print(f"{cuts} cuts, {SPEEDS} speeds, {FEEDS} feeds: {took * 1e3:.1f} ms   < 50 ms{over}")
    ratio = all_of_them / took
    print(f"trying all {tried} settings: {all_of_them:.2f} s, {ratio:.0f} times as long")
    print(f"runs whose least time differs: {differ}")
    return int(took >= LIMIT or differ > 0)


if __name__ == "__main__":
    sys.exit(main())
