"""What the cuts leave undone of the finished sizes, said so that nobody finds it at the end."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.cut_words import diameters_left
from borewright.cutting.edges import edge_cuts
from borewright.cutting.loads import cuts_gear
from borewright.cutting.stock import LATHE_READS, face_stock, finished_outside
from borewright.planning.held.held_trial import HeldTrial
from borewright.planning.taper.trial import Trial
from borewright.quantities.si import Metre


def left_over(trial: Trial | HeldTrial) -> Iterator[str]:
    """One sentence each for the outside, the length, and steps and grooves."""
    yield from _outside(trial)
    yield from _length(trial)
    yield from _form(trial)


def _outside(trial: Trial | HeldTrial) -> Iterator[str]:
    """Metal that asked-for cuts leave on the outside, or take none of."""
    job, show = trial.job, trial.show
    size = finished_outside(job, trial.tables)
    if size is None or not job.cuts or all(cuts_gear(w) for w in job.cuts):
        return
    if any(c.kind == "grind" for c in trial.cuts):
        return  # the wheel takes the rest
    left = diameters_left(trial.cuts)
    now = list(left.values())[-1] if left else job.work.outside
    if (now - size) / 2 > LATHE_READS:
        yield (
            f"The cuts asked for leave {show.depth((now - size) / 2)} on the radius to the finished outside: add a cut."
        )


def _form(trial: Trial | HeldTrial) -> Iterator[str]:
    """Steps, grooves and edges that no cut of this hold makes."""
    form, ids = trial.job.work.finished.form, [c.id for c in trial.cuts]
    steps = [n for n in range(1, len(form.steps) + 1) if not _made(f"step-{n}-", ids)]
    grooves = [n for n in range(1, len(form.grooves) + 1) if f"groove-{n}" not in ids]
    for what, missing in (("step", steps), ("groove", grooves)):
        if missing:
            numbers = ", ".join(str(n) for n in missing)
            many = "s" if len(missing) > 1 else ""
            yield f"Not cut in this hold: {what}{many} {numbers}, as the job lists them."
    edges = [row.name for row in edge_cuts(trial.job, trial.tables) if row.id not in ids]
    if edges:
        yield f"Not reached in this hold, so done in the next or by a file: {'; '.join(edges)}."


def _made(begins: str, ids: list[str]) -> bool:
    return any(name.startswith(begins) for name in ids)


def _length(trial: Trial | HeldTrial) -> Iterator[str]:
    """Length that is still to come off when these cuts are done."""
    stock = face_stock(trial.job)
    if stock is None:
        return
    faced: Metre = sum(c.depth * c.passes for c in trial.cuts if c.kind == "face")
    short = 2 * stock - faced
    if short > LATHE_READS:
        yield (
            f"{trial.show.depth(short)} of length is left when these cuts are done: face to length in another hold, from "
            "what is true by then."
        )
