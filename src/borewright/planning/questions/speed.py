"""Speed: does the lathe go slow enough for this diameter, and pull the cut in that gear."""

from __future__ import annotations

import math

from borewright.answer.records import Cut, Figure, Question, Verdict
from borewright.planning.figures import figure, given
from borewright.planning.judge import judge
from borewright.planning.power import hardest_pull, power_figures, power_words
from borewright.planning.trial import Trial
from borewright.reference.ranges import Range


def ask_speed(trial: Trial) -> Question:
    """Margin: the highest usual cutting speed over the speed that the fastest turning cut has.

    Where the lathe's power is stated and is the scarcer of the two, the margin is that of the power.
    The turns of work under a wheel, and those of a form cutter, are not a turning tool's: where
    nothing is turned only a wheel's own speed is looked at.
    """
    if not _turned(trial):
        return _not_turned(trial)
    usual, cut = _usual(trial), _fastest(trial)
    margin = usual.high / cut.cutting_speed
    found = judge("speed", margin, margin, trial.tables)
    slow = Verdict.CARE if found is Verdict.NO and _asked_for(trial, cut) else found
    pull = hardest_pull(trial.cuts, trial.demands, trial.job.shelf.machine, trial.tables)
    power = Verdict.YES if pull is None else judge("power", pull.margin, pull.margin, trial.tables)
    weak = pull is not None and power.rank > slow.rank
    said = "" if pull is None else f" {power_words(pull, trial.show)}"
    return Question(
        "speed",
        power if weak else slow,
        pull.margin if weak and pull else margin,
        pull.margin if weak and pull else margin,
        power_words(pull, trial.show)
        if weak and pull
        else _reason(trial, usual, cut, margin) + said,
        _changes(margin, weak),
        (*_figures(cut, usual, margin), *power_figures(pull, trial.tables)),
        (trial.tables.threshold("speed").source, usual.source),
    )


def _changes(margin: float, weak: bool) -> str:
    if weak:
        return "A shallower pass, a finer feed, the next slower speed, or a lathe with more power."
    if margin >= 1:
        return "Nothing needs to."
    return "Back gear, a lathe that goes slower, or a carbide tool and light cuts."


def _usual(trial: Trial) -> Range:
    material = trial.job.work.material
    return trial.tables.cutting_speed(material, trial.tables.cut_defaults(material).tool)


def _turned(trial: Trial) -> tuple[Cut, ...]:
    return tuple(c for c in trial.cuts if c.on_lathe)


def _fastest(trial: Trial) -> Cut:
    return max(_turned(trial), key=lambda c: c.cutting_speed)


def _not_turned(trial: Trial) -> Question:
    """Margin: the highest usual speed of a wheel over the one asked for; no limit without a wheel."""
    usual, source = trial.tables.grinding("wheel_speed"), trial.tables.threshold("speed").source
    wheel = max((c.wheel_speed for c in trial.cuts if c.wheel_speed is not None), default=None)
    if wheel is None:
        reason = "Nothing is turned; a form cutter runs at its own speed, slower than a lathe tool."
        return Question(
            "speed", Verdict.YES, math.inf, math.inf, reason, "Nothing needs to.", (), (source,)
        )
    margin = usual.high / wheel * (1 + 1e-9)
    says = trial.show.surface(wheel)
    reason = (
        f"Nothing is turned; the rim of the wheel runs at {says}: never above the speed marked on the wheel."
        if margin >= 1
        else f"You asked for {says} at the rim of the wheel, above the usual {trial.show.surface(usual.high)}: only where "
        "the speed marked on the wheel allows it."
    )
    inputs = (given("highest usual", usual.high, "m/s"), given("speed used", wheel, "m/s"))
    return Question(
        "speed",
        Verdict.YES if margin >= 1 else Verdict.CARE,
        margin,
        margin,
        reason,
        "Nothing needs to." if margin >= 1 else "A slower wheel, or a smaller one.",
        (
            figure(
                "speed_margin", usual.high / wheel, "", "", "speed_ratio", inputs, (usual.source,)
            ),
        ),
        (source, usual.source),
    )


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
