"""Has the lathe the power for a cut in the gear it runs in."""

from __future__ import annotations

import math
from dataclasses import dataclass

from borewright.answer.records import Cut, Demand, Figure
from borewright.job.records import Machine
from borewright.mechanics.spread import likely
from borewright.mechanics.turning import cutting_power
from borewright.planning.figures import figure, given, times
from borewright.planning.judge import share_of_yes
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
