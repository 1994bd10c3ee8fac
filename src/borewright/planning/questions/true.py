"""True: how far the rim will run out to the bore when it comes off."""

from __future__ import annotations

import numpy as np

from borewright.answer.records import Draws, Figure, Question, Verdict
from borewright.answer.streams import Stream, positive
from borewright.holding.bores.bore_shape import out_of_round
from borewright.holding.figured import Throws
from borewright.mechanics.runout import (
    clearance_reading,
    face_reading_of_lean,
    lean_of_free_end,
)
from borewright.mechanics.spread import likely, low_end
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given, spread, times
from borewright.planning.weighing.judge import judge
from borewright.planning.weighing.trueness import runout_figures, worst_figure


def ask_true(trial: Trial) -> Question:
    """Margin: whole indicator reading allowed over that expected, root-sum-square of the shares."""
    runout = _runout(trial)
    stated, usual = trial.job.work.finished.runout, trial.tables.allowance("usual_runout")
    allowed = usual.best if stated is None else stated
    margin = allowed / runout
    best, low = likely(margin), low_end(margin)
    show, worst = trial.show, worst_figure(_throws(trial), _sources(trial))
    return Question(
        "true",
        _verdict(trial, best, low),
        best,
        low,
        f"Expect the rim to run out about {show.small(likely(runout))} to the bore, whole reading: the mandrel, the "
        f"{DRIVERS[trial.job.driven_by]} and the form of the bore; at worst, all in line, {show.small(worst.best)}. {show.small(allowed)} is "
        f"{'taken as ' if stated is None else ''}allowed, {times(best)} that.",
        _changes(trial),
        (*_figures(trial, runout), worst, *_lean_figures(trial)),
        (trial.tables.threshold("true").source, *(() if stated else (usual.source,))),
    )


def _verdict(trial: Trial, best: float, low: float) -> Verdict:
    """As judged; never worse than with care where the allowed runout was only assumed."""
    found = judge("true", best, low, trial.tables)
    assumed = trial.job.work.finished.runout is None
    return Verdict.CARE if found is Verdict.NO and assumed else found


def _changes(trial: Trial) -> str:
    if trial.job.driven_by == "three-jaw":
        return "Between centers with a dog, or in a collet: both run truer than a scroll chuck, and hold the taper better."
    if trial.job.driven_by == "collet":
        return "A clean collet of the right size, the tail center dressed; turn the work half round on it and read again."
    return "Clean and dress the centers; clock the mandrel between them; turn the work half round on it and read again."


DRIVERS = {"dog": "headstock center", "collet": "collet", "three-jaw": "three-jaw chuck"}
"""What the runout of the mandrel's driven end comes from."""

_OF_DRIVER = {
    "dog": "center_runout",
    "collet": "collet_runout",
    "three-jaw": "three_jaw_runout",
}


def _shares(trial: Trial) -> tuple[tuple[str, Stream], ...]:
    # Streams of inputs that have no part in runout, so that the shares stay independent of each other.
    driver = _OF_DRIVER[trial.job.driven_by]
    return (("mandrel_runout", Stream.CUTTING), (driver, Stream.RESULTANT))


def _runout(trial: Trial) -> Draws:
    mandrel, driver = (_draws(trial, name, stream) for name, stream in _shares(trial))
    form = out_of_round(trial.job.work.bore)
    return np.sqrt(mandrel**2 + driver**2 + form**2)


def _draws(trial: Trial, name: str, stream: Stream) -> Draws:
    r = trial.tables.allowance(name)
    return positive(r.low, r.best, r.high, stream)


FREE = 1e-4
"""Bore (m) that stands free beyond the grip, below which nothing leans; ours."""


def _free(trial: Trial) -> float:
    """Length of bore (m) beyond what grips, likely case."""
    free = trial.hold.bears - likely(trial.grip.contact_length)
    return free if free > FREE else 0.0


def _throws(trial: Trial) -> Throws:
    """Every share of the worst case; a free end may lean until it touches, and shows all of its gap."""
    shares = tuple(
        (
            DRIVERS[trial.job.driven_by] if name != "mandrel_runout" else "mandrel",
            _draws(trial, name, stream),
        )
        for name, stream in _shares(trial)
    )
    gap = clearance_reading(trial.mandrel.taper * _free(trial))
    return (
        *shares,
        ("out of round", np.full_like(shares[0][1], out_of_round(trial.job.work.bore))),
        ("lean of the free end", np.full_like(shares[0][1], gap)),
    )


def _sources(trial: Trial) -> tuple[str, ...]:
    return tuple(trial.tables.allowance(name).source for name, _ in _shares(trial))


def _lean_figures(trial: Trial) -> tuple[Figure, ...]:
    """Arrows anywhere round, without the lean; what the lean may do to a face, where there is one."""
    anywhere = runout_figures(_throws(trial)[:-1], _sources(trial))
    free, taper, outside = _free(trial), trial.mandrel.taper, trial.job.work.outside
    if not free:
        return anywhere
    lean = lean_of_free_end(taper * free, free)
    inputs = (given("taper", taper, "m/m"), given("outside", outside, "m"))
    face = float(face_reading_of_lean(lean, outside))
    return (*anywhere, figure("face_runout_worst", face, "m", "small", "face_runout", inputs))


def _figures(trial: Trial, runout: Draws) -> tuple[Figure, ...]:
    shares = [trial.tables.allowance(name) for name, _ in _shares(trial)]
    inputs = (
        given("mandrel", shares[0].best, "m", "small"),
        given(DRIVERS[trial.job.driven_by], shares[1].best, "m", "small"),
        given("out of round", out_of_round(trial.job.work.bore), "m", "small"),
    )
    sources = tuple(s.source for s in shares)
    return (spread("runout", runout, "m", "small", "runout", inputs, sources),)
