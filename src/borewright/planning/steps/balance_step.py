"""The step that balances a casting or a spoked wheel at rest, once it is turned."""

from __future__ import annotations

from borewright.job.records import Job
from borewright.planning.steps.load_steps import Line
from borewright.planning.weighing.turned import Turned
from borewright.reference.library import Tables

BALANCE = "Balance it"


def wants_balance(job: Job, tables: Tables) -> bool:
    """True for castings and spoked wheels that are large, or whose speed in service is stated."""
    work = job.work
    uneven = work.blank == "casting" or work.spokes is not None
    large = work.outside >= tables.truth_fact("balance_from").best
    return uneven and (large or work.finished.service_speed is not None)


def balance_step(trial: Turned, on: str) -> tuple[Line, ...]:
    """`on`: what carries the work, as the beginning of a sentence."""
    turned = any(cut.on_lathe for cut in trial.cuts)
    if not turned or not wants_balance(trial.job, trial.tables):
        return ()
    work = trial.job.work
    spokes = "a spoke or " if work.spokes else ""
    known = work.finished.service_speed is not None
    why = "" if known else "Worth it only where it will run fast. "
    return (
        (
            BALANCE,
            f"{why}{on}, on two level knife edges or easy oiled bench centers: the heavy side comes down. Wax on the light side until it "
            f"stays anywhere; weigh it. `borewright balance` turns it into a hole on the heavy side: never in {spokes}a thin or pored "
            "part of the rim.",
            (),
            ("wax", "its radius"),
        ),
    )
