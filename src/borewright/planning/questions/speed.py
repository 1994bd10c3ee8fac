"""Speed: does the lathe go slow enough for this diameter."""

from __future__ import annotations

from borewright.answer.records import Cut, Figure, Question, Verdict
from borewright.planning.figures import figure, given
from borewright.planning.judge import judge
from borewright.planning.trial import Trial
from borewright.reference.ranges import Range


def ask_speed(trial: Trial) -> Question:
    """Margin: the highest usual cutting speed over the speed that the fastest cut has."""
    usual, cut = _usual(trial), _fastest(trial)
    margin = usual.high / cut.cutting_speed
    found = judge("speed", margin, margin, trial.tables)
    return Question(
        "speed",
        Verdict.CARE if found is Verdict.NO and _asked_for(trial, cut) else found,
        margin,
        margin,
        _reason(trial, usual, cut, margin),
        "Nothing needs to."
        if margin >= 1
        else "Back gear, a lathe that goes slower, or a carbide tool and light cuts.",
        _figures(cut, usual, margin),
        (trial.tables.threshold("speed").source, usual.source),
    )


def _usual(trial: Trial) -> Range:
    material = trial.job.work.material
    return trial.tables.cutting_speed(material, trial.tables.cut_defaults(material).tool)


def _fastest(trial: Trial) -> Cut:
    return max(trial.cuts, key=lambda c: c.cutting_speed)


def _asked_for(trial: Trial, cut: Cut) -> bool:
    """True where the job insists on the speed of this cut."""
    wishes = {f"cut-{n}": w for n, w in enumerate(trial.job.cuts, 1)}
    wish = wishes.get(cut.id)
    return wish is not None and (wish.speed is not None or wish.spindle_speed is not None)


def _reason(trial: Trial, usual: Range, cut: Cut, margin: float) -> str:
    show = trial.show
    at = f"{show.spindle(cut.spindle_speed)} gives {show.surface(cut.cutting_speed)} at {show.length(cut.diameter)}"
    stated = (
        ""
        if trial.job.shelf.machine.speeds
        else "; your speeds were not stated, so take the next slower one you have"
    )
    if margin >= 1:
        return f"{at[0].upper()}{at[1:]}, within what is usual for this metal{stated}."
    if _asked_for(trial, cut):
        return f"You asked for it: {at}, faster than the usual {show.surface(usual.high)} at most."
    return f"The slowest that serves, {at}: faster than the usual {show.surface(usual.high)} at most{stated}."


def _figures(cut: Cut, usual: Range, margin: float) -> tuple[Figure, ...]:
    inputs = (
        given("highest usual", usual.high, "m/s"),
        given("speed used", cut.cutting_speed, "m/s"),
    )
    return (
        figure("cutting_speed", cut.cutting_speed, "m/s", "surface", "", sources=(usual.source,)),
        figure("speed_margin", margin, "", "", "speed_ratio", inputs, (usual.source,)),
    )
