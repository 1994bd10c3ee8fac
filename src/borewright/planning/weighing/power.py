"""Has the lathe the power for a cut in the gear it runs in."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from borewright.answer.records import Cut, Demand, Figure
from borewright.job.records import CutWish, Job, Machine
from borewright.mechanics.spread import likely
from borewright.mechanics.turning import cutting_power, surface_speed
from borewright.planning.weighing.figures import figure, given, times
from borewright.planning.weighing.judge import share_of_yes
from borewright.quantities.show import Show
from borewright.quantities.si import Watt
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class Pull:
    """One cut's power: what the motor has in that gear, what of it arrives, what is asked (W)."""

    cut: Cut
    motor: Watt
    arrives: Watt
    asked: Watt

    @property
    def margin(self) -> float:
        return self.arrives / max(self.asked, 1e-9)


def hardest_pull(
    cuts: tuple[Cut, ...], demands: tuple[Demand, ...], machine: Machine, tables: Tables
) -> Pull | None:
    """The cut with the least power to spare; None where the lathe's power is not stated."""
    share = tables.allowance("drive_share").best
    pulls = [
        Pull(
            cut,
            motor,
            motor * share,
            float(cutting_power(likely(demand.tangential), cut.cutting_speed)),
        )
        for cut, demand in zip(cuts, demands, strict=True)
        if cut.on_lathe and (motor := motor_power(machine, cut.spindle_speed)) is not None
    ]
    return min(pulls, key=lambda pull: pull.margin, default=None)


def in_gear(
    cuts: tuple[Cut, ...], demands: tuple[Demand, ...], job: Job, tables: Tables
) -> tuple[Cut, ...]:
    """The cuts, each in the fastest gear up to its own that has the power for it, else the best of them.

    The force of a cut does not hang on its speed, so a slower gear asks less power. A speed that the
    user asks for stays.
    """
    machine = job.shelf.machine
    if not machine.power_by_gear and machine.power is None:
        return cuts
    wishes = {f"cut-{n}": w for n, w in enumerate(job.cuts, 1)}
    return tuple(
        cut
        if not cut.on_lathe or _asked_for(wishes.get(cut.id))
        else _geared(cut, likely(demand.tangential), machine, tables)
        for cut, demand in zip(cuts, demands, strict=True)
    )


def _asked_for(wish: CutWish | None) -> bool:
    return wish is not None and (wish.speed is not None or wish.spindle_speed is not None)


def _geared(cut: Cut, force: float, machine: Machine, tables: Tables) -> Cut:
    share = tables.allowance("drive_share").best

    def spare(spindle: float) -> float:
        arrives = share * (motor_power(machine, spindle) or 0.0)
        return arrives / (force * surface_speed(spindle, cut.diameter))

    slower = sorted((s for s in machine.speeds if s <= cut.spindle_speed), reverse=True)
    serves = next((s for s in slower if spare(s) >= 1), None)
    best = max(slower, key=spare, default=cut.spindle_speed) if serves is None else serves
    return replace(cut, spindle_speed=best, cutting_speed=surface_speed(best, cut.diameter))


def motor_power(machine: Machine, spindle: float) -> Watt | None:
    """What the motor has at this spindle speed (W): of that gear, else of the lathe; None untold.

    >>> motor_power(Machine(speeds=(1.0, 2.0), power_by_gear=(300.0, 500.0)), 2.0)
    500.0
    """
    gears = zip(machine.speeds, machine.power_by_gear, strict=False)
    return next((p for s, p in gears if math.isclose(s, spindle, rel_tol=1e-6)), machine.power)


def power_share(
    cuts: tuple[Cut, ...], demands: tuple[Demand, ...], machine: Machine, tables: Tables
) -> float:
    """At least 1 where the power is a yes, or not known."""
    pull = hardest_pull(cuts, demands, machine, tables)
    return math.inf if pull is None else share_of_yes("power", pull.margin, pull.margin, tables)


def power_words(pull: Pull, show: Show) -> str:
    """What the hardest pull asks, and what of the motor arrives there."""
    at = show.spindle(pull.cut.spindle_speed)
    asks = f"the hardest pull asks {show.power(pull.asked)} at the tool"
    has = f"of the motor's {show.power(pull.motor)} about {show.power(pull.arrives)} arrives there"
    return f"At {at} {asks}; {has}: {times(pull.margin)} that."


def power_figures(pull: Pull | None, tables: Tables) -> tuple[Figure, ...]:
    """The power asked and its margin, each as a figure; none where the power is not stated."""
    if pull is None:
        return ()
    share = tables.allowance("drive_share")
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
