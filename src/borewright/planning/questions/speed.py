"""Speed: does the lathe go slow enough for this diameter, and pull the cut in that gear."""

from __future__ import annotations

from borewright.answer.records import Cut, Figure, Question, Verdict
from borewright.planning.figures import figure, given, times
from borewright.planning.judge import judge
from borewright.planning.power import Pull, hardest_pull
from borewright.planning.trial import Trial
from borewright.reference.ranges import Range


def ask_speed(trial: Trial) -> Question:
    """Margin: the highest usual cutting speed over the speed that the fastest cut has.

    Where the lathe's power is stated and is the scarcer of the two, the margin is that of the power.
    """
    usual, cut = _usual(trial), _fastest(trial)
    margin = usual.high / cut.cutting_speed
    found = judge("speed", margin, margin, trial.tables)
    slow = Verdict.CARE if found is Verdict.NO and _asked_for(trial, cut) else found
    pull = hardest_pull(trial.cuts, trial.demands, trial.job.shelf.machine, trial.tables)
    power = Verdict.YES if pull is None else judge("power", pull.margin, pull.margin, trial.tables)
    weak = pull is not None and power.rank > slow.rank
    said = "" if pull is None else f" {_power_words(trial, pull)}"
    return Question(
        "speed",
        power if weak else slow,
        pull.margin if weak and pull else margin,
        pull.margin if weak and pull else margin,
        _power_words(trial, pull) if weak and pull else _reason(trial, usual, cut, margin) + said,
        _changes(margin, weak),
        (*_figures(cut, usual, margin), *_power_figures(trial, pull)),
        (trial.tables.threshold("speed").source, usual.source),
    )


def _changes(margin: float, weak: bool) -> str:
    if weak:
        return "A shallower pass, a finer feed, the next slower speed, or a lathe with more power."
    if margin >= 1:
        return "Nothing needs to."
    return "Back gear, a lathe that goes slower, or a carbide tool and light cuts."


def _power_words(trial: Trial, pull: Pull) -> str:
    show, at = trial.show, trial.show.spindle(pull.cut.spindle_speed)
    asks = f"the hardest pull asks {show.power(pull.asked)} at the tool"
    has = f"of the motor's {show.power(pull.motor)} about {show.power(pull.arrives)} arrives there"
    return f"At {at} {asks}; {has}: {times(pull.margin)} that."


def _power_figures(trial: Trial, pull: Pull | None) -> tuple[Figure, ...]:
    if pull is None:
        return ()
    share = trial.tables.allowance("drive_share")
    inputs = (
        given("power of the motor", pull.motor, "W"),
        given("share that reaches the cut", share.best),
        given("power at the tool", pull.asked, "W"),
    )
    asked = (
        given("force", pull.asked / pull.cut.cutting_speed, "N"),
        given("cutting speed", pull.cut.cutting_speed, "m/s"),
    )
    return (
        figure("cutting_power", pull.asked, "W", "power", "cut_power", asked),
        figure("power_margin", pull.margin, "", "", "power_ratio", inputs, (share.source,)),
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
