"""The size to finish at, with its limits where a tolerance is stated, and what the last pass leaves."""

from __future__ import annotations

from borewright.answer.cut_words import dialled, diameters_left
from borewright.answer.records import Figure
from borewright.cutting.stock import finished_outside
from borewright.job.records import Job
from borewright.planning.weighing.figures import figure, given
from borewright.planning.weighing.turned import Turned
from borewright.quantities.show import Show
from borewright.quantities.si import Metre


def size_words(job: Job, size: Metre, show: Show) -> str:
    """The size, and the two limits half a tolerance to either side of it.

    The tolerance is a total band on diameter.
    """
    band = job.work.finished.tolerance
    if not band:
        return show.turned(size)
    limits = show.band(size - band / 2, size + band / 2, "turned")
    return f"{show.turned(size)}, {limits}"


def last_size(trial: Turned) -> tuple[str, tuple[Figure, ...]]:
    """What to turn to at the end, as a sentence after a space; nothing where no size is known."""
    job, show = trial.job, trial.show
    size = finished_outside(job, trial.tables)
    if size is None:
        return "", ()
    words = size_words(job, size, show)
    left = diameters_left(trial.cuts)
    if left and any(cut.kind == "grind" for cut in trial.cuts):
        leave = show.turned(dialled([v for k, v in left.items() if "step" not in k][-1], show))
        return f" Turn to {leave} only: the wheel takes it to {words}.", (_figure(job, size),)
    return f" Finish to {words}.", (_figure(job, size),)


def size_blanks(job: Job) -> tuple[str, ...]:
    """What is measured at the end and written down: the outside, and every size of the form."""
    form = job.work.finished.form
    steps = (f"step {n}" for n in range(1, len(form.steps) + 1))
    grooves = (f"groove {n}, bottom" for n in range(1, len(form.grooves) + 1))
    length = ("length",) if form.length is not None else ()
    return ("finished outside", *steps, *grooves, *length)


def edge_words(job: Job, show: Show) -> str:
    """What is done to the edges before it comes off, as a sentence after a space."""
    if job.work.finished.form.crown is not None:
        return ""  # the crown comes first
    return broken_edges(job, show)


def broken_edges(job: Job, show: Show) -> str:
    """The same, crown or not."""
    form = job.work.finished.form
    chamfers = [
        f"{show.length(leg)} at face {face}"
        for face, leg in (("A", form.chamfers.a), ("B", form.chamfers.b))
        if leg
    ]
    wide = f" Chamfer its edge, {' and '.join(chamfers)}." if chamfers else ""
    if form.edges is None:
        return f"{wide} Take the sharpness off every edge while it still runs true."
    return f"{wide} Break every edge by {show.depth(form.edges)} while it still runs true."


def _figure(job: Job, size: Metre) -> Figure:
    stated = job.work.finished.outside is not None
    band = job.work.finished.tolerance
    inputs = (given("tolerance, whole band on diameter", band, "m", "small"),) if band else ()
    return figure(
        "finished_outside", size, "m", "turned", "", inputs, ("stated",) if stated else ()
    )
