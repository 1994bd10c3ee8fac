"""Every speed of a plan against what is usual: turning, a wheel's rim, work under it, a form cutter."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from borewright.answer.records import Cut, Figure, Verdict
from borewright.job.records import CutWish
from borewright.planning.weighing.figures import figure, given
from borewright.planning.weighing.too_fast import too_fast
from borewright.planning.weighing.turned import Turned
from borewright.quantities.si import MetrePerSecond

ASKED_FLOOR = 0.3
"""A speed asked for is with care down to this share of usual over asked; faster is a no (ours)."""

WHEEL_FLOOR = 0.6
"""The same for the rim of a wheel, which bursts (ours)."""

OVER = 1.02
"""A speed asked for may lie this much over the lathe's fastest before the lathe has not got it."""


@dataclass(frozen=True, slots=True)
class Pace:
    """One speed (m/s) and the highest usual one; `floor`: the margin below which it is a no."""

    kind: str
    cut: Cut
    speed: MetrePerSecond
    usual: MetrePerSecond
    source: str
    floor: float
    reason: str
    mend: str

    @property
    def margin(self) -> float:
        return self.usual / self.speed * (1 + 1e-9)

    @property
    def verdict(self) -> Verdict:
        if self.margin >= 1:
            return Verdict.YES
        return Verdict.CARE if self.margin >= self.floor else Verdict.NO


def paces(trial: Turned) -> tuple[Pace, ...]:
    """Of each kind the fastest, the one that is worst first."""
    found = [*_turning(trial), *_wheels(trial), *_under_wheels(trial), *_cutters(trial)]
    return tuple(sorted(found, key=lambda p: (-p.verdict.rank, p.margin)))


def pace_figures(pace: Pace) -> tuple[Figure, ...]:
    """The speed, and its margin with what went into it."""
    inputs = (given("highest usual", pace.usual, "m/s"), given("speed used", pace.speed, "m/s"))
    return (
        figure("cutting_speed", pace.speed, "m/s", "surface", "", sources=(pace.source,)),
        figure(
            "speed_margin", pace.usual / pace.speed, "", "", "speed_ratio", inputs, (pace.source,)
        ),
    )


def _wish(trial: Turned, cut: Cut) -> CutWish | None:
    wishes = {f"cut-{n}": w for n, w in enumerate(trial.job.cuts, 1)}
    wish = wishes.get(cut.id)
    stated = wish is not None and (wish.speed is not None or wish.spindle_speed is not None)
    return wish if stated else None


def _turning(trial: Turned) -> Iterator[Pace]:
    cuts = [c for c in trial.cuts if c.on_lathe]
    if not cuts:
        return
    material, show = trial.job.work.material, trial.show
    usual = trial.tables.cutting_speed(material, trial.tables.cut_defaults(material).tool)
    cut = max(cuts, key=lambda c: c.cutting_speed)
    floor = trial.tables.threshold("speed").care_likely
    at = f"{show.spindle(cut.spindle_speed)} gives {show.surface(cut.cutting_speed)} at {show.length(cut.diameter)}"
    speeds = trial.job.shelf.machine.speeds
    stated = "" if speeds else "; your speeds were not stated, so take the next slower one you have"
    over = f"faster than the usual {show.surface(usual.high)} at most"
    asked, mend = _wish(trial, cut) is not None, too_fast(trial, cut)
    if cut.cutting_speed <= usual.high:
        reason = f"{at[0].upper()}{at[1:]}, within what is usual for this metal{stated}."
    elif asked:
        reason = f"You asked for it: {at}, {over}."
    else:
        reason = f"The slowest that serves, {at}: {over}{stated}."
    if asked and speeds and cut.spindle_speed > OVER * max(speeds):
        reason = f"You asked for {show.spindle(cut.spindle_speed)}; the lathe's fastest is {show.spindle(max(speeds))}. {reason}"
        yield Pace("turning", cut, cut.cutting_speed, usual.high, usual.source, 1.0, reason, mend)
        return
    floor = min(floor, ASKED_FLOOR) if asked else floor
    yield Pace("turning", cut, cut.cutting_speed, usual.high, usual.source, floor, reason, mend)


def _wheels(trial: Turned) -> Iterator[Pace]:
    cuts = [c for c in trial.cuts if c.wheel_speed is not None]
    if not cuts:
        return
    usual, show = trial.tables.grinding("wheel_speed"), trial.show
    cut = max(cuts, key=lambda c: c.wheel_speed or 0.0)
    speed = cut.wheel_speed or 0.0
    says = show.surface(speed)
    if speed <= usual.high * (1 + 1e-9):
        reason = f"The rim of the wheel runs at {says}: never above the speed marked on the wheel."
    else:
        reason = (
            f"You asked for {says} at the rim of the wheel, above the usual {show.surface(usual.high)}: it bursts where "
            "that speed is not marked on the wheel."
        )
    mend = "A slower wheel spindle, or a smaller wheel; never above the speed marked on it."
    yield Pace("wheel", cut, speed, usual.high, usual.source, WHEEL_FLOOR, reason, mend)


def _under_wheels(trial: Turned) -> Iterator[Pace]:
    cuts = [c for c in trial.cuts if c.kind == "grind"]
    if not cuts:
        return
    usual, show = trial.tables.grinding("work_speed"), trial.show
    cut = max(cuts, key=lambda c: c.cutting_speed)
    reason = (
        f"Under the wheel the work's rim runs at {show.surface(cut.cutting_speed)}; "
        f"{show.surface(usual.high)} is the usual most."
    )
    mend = "A slower headstock on the grinder."
    yield Pace("work", cut, cut.cutting_speed, usual.high, usual.source, ASKED_FLOOR, reason, mend)


def _cutters(trial: Turned) -> Iterator[Pace]:
    cuts = [c for c in trial.cuts if c.space is not None]
    if not cuts:
        return
    turning = trial.tables.cutting_speed(trial.job.work.material, "hss")
    share, show = trial.tables.gear_cutting("speed_share"), trial.show
    usual = turning.high * share.high
    cut = max(cuts, key=lambda c: c.cutting_speed)
    reason = f"The form cutter runs at {show.surface(cut.cutting_speed)}; {show.surface(usual)} is the usual most."
    mend = "A slower cutter, or a smaller one."
    yield Pace("cutter", cut, cut.cutting_speed, usual, share.source, ASKED_FLOOR, reason, mend)
