"""Plans with a schedule made by hand: a short and a long table of cuts, invented figures."""

from __future__ import annotations

from dataclasses import replace
from math import pi

from tests.charts_made import three
from tests.sample_plan import INCH, sample_plan

from borewright.answer.plan import Plan
from borewright.answer.records import Cut, Figure
from borewright.answer.schedule import Blocked, Schedule, Taken

NAMES = (
    ("face", "first face, light"), ("turn", "rough the outside"), ("face", "second face, light"),
    ("turn", "rough the step at the hub"), ("turn", "neck the relief beside the far face"),
    ("turn", "groove, plunged"), ("turn", "chamfer both corners"), ("turn", "crown, first half"),
    ("turn", "crown, second half"), ("face", "spot the hub true"), ("turn", "finish the outside"),
    ("turn", "spring pass"),
)  # fmt: skip
SAID = (
    ("slip", "The grip holds no more at this radius in the poor case."),
    ("rock", "A deeper cut would lift a fifth of the grip once a turn."),
    ("bend", "Deeper, the mandrel bends more than a quarter of the tolerance."),
    ("chatter", "Wider chips sing at this overhang."),
    ("torque", "The belt slips in this gear."),
    ("finish", "A coarser feed leaves more than 63 µin."),
    ("", "Asked for in the job."),
)


def with_schedule(plan: Plan, count: int = 4, **changed: object) -> Plan:
    """The plan with so many invented cuts, their times, waits, stops and the three charts."""
    cuts = tuple(_cut(k) for k in range(count))
    taken = tuple(_taken(k, cut) for k, cut in enumerate(cuts))
    schedule = Schedule(
        taken=taken,
        seconds=sum(t.seconds + t.wait for t in taken),
        target=(0.0635203, 17.0),
        charts=three(),
        notes=("Break every edge with a fine file before the work comes off.",),
    )
    last = Figure("finished_outside", 0.0635, "m", kind="turned")
    steps = (*plan.steps[:-1], replace(plan.steps[-1], figures=(last,)))
    return replace(plan, cuts=cuts, steps=steps, schedule=replace(schedule, **changed))  # type: ignore[arg-type]


def scheduled_plan(units: str = "inch", count: int = 4, *, big: bool = False) -> Plan:
    """A sample plan with such a schedule."""
    return with_schedule(sample_plan(units, big=big), count)


def blocked() -> tuple[Blocked, ...]:
    return (
        Blocked("cut-5", "chatter", "A narrower tool, 2 mm wide, takes it at the slowest speed."),
        Blocked("knurl-the-rim", "slip", "Knurl it before mounting."),
    )


def _cut(k: int) -> Cut:
    kind, name = NAMES[k]
    tightens = k % 2 == 0
    return Cut(
        f"cut-{k}", kind, name, 0.066, (0.03 if k < 8 else 0.005) * INCH, (0.004 + k / 4000) * INCH, 1 + k % 4,
        1.0, (120 + 35 * k) / 60, pi / 2, 0.4e-3, "towards the headstock" if tightens else "towards the tailstock",
        "tightens" if tightens else "loosens",
    )  # fmt: skip


def _taken(k: int, cut: Cut) -> Taken:
    limit, said = SAID[k % len(SAID)]
    return Taken(
        cut.id,
        seconds=37.0 + 61.0 * k,
        limit=limit,
        said=said,
        wait=420.0 if k in (3, 10) else 0.0,
        warm_before=2.0 * k,
        warm_after=2.0 * k + 5,
        grip_left=(1 - 0.02 * k, 1 - 0.05 * k),
        stops="1/16 in short of the mandrel, in the relief" if cut.kind == "face" else "",
    )
