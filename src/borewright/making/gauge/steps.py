"""A stepped plug: the sizes of its steps and what is read off when so many of them go in.

The first step is the one that goes, the last the one that does not, each within the window; those
between stand evenly, half of the tolerance either way. Zones of neighbours must not meet, or two
steps could be of one size: the step is more than one and a half tolerances.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.errors import RefusedInput
from borewright.making.cannot import Cannot
from borewright.making.gauge.asked import GaugeAsked
from borewright.making.gauge.worth import Worth, least_step, steps_wanted
from borewright.mechanics.plug_gauge import (
    bore_between,
    most_plug_steps,
    readings_for,
)
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class PlugStep:
    """One step: its named size, the zone of its true size, the readings that prove it (m)."""

    name: str
    nominal: Metre
    zone: tuple[Metre, Metre]
    reads: tuple[Metre, Metre]


@dataclass(frozen=True, slots=True)
class ReadOff:
    """What is known when the first `entered` steps go in: at least, less than (m), and the word."""

    entered: int
    least: Metre | None
    below: Metre | None
    word: str


def plug_steps(asked: GaugeAsked, worth: Worth, tables: Tables) -> tuple[PlugStep, ...] | Cannot:
    """The steps from small to large; RefusedInput for more than stand apart."""
    show, least = Show(asked.units), least_step(worth.width, tables)
    most = most_plug_steps(asked.band, least)
    if most < 2:
        return Cannot(
            f"In a window of {show.small(asked.band)} two steps cannot be told apart, {show.small(least)} at least.",
            "Make a go and not-go plug instead, or buy one.",
        )
    if asked.steps is not None and not 2 <= asked.steps <= most:
        allowed = f"2 to {most}, for steps of {show.small(least)} at least"
        raise RefusedInput("--steps", str(asked.steps), allowed)
    number = min(steps_wanted(asked, tables), most)
    shares = tuple(k / (number - 1) for k in range(number))
    return tuple(_step(k, share, asked, worth) for k, share in enumerate(shares))


def _step(k: int, share: float, asked: GaugeAsked, worth: Worth) -> PlugStep:
    nominal = asked.low + share * asked.band
    if share == 0.0:
        zone = worth.zones.go
    elif share == 1.0:
        zone = worth.zones.not_go
    else:
        zone = (nominal - worth.width / 2, nominal + worth.width / 2)
    return PlugStep(str(k + 1), nominal, zone, readings_for(zone, worth.known))


def read_off(steps: tuple[PlugStep, ...]) -> tuple[ReadOff, ...]:
    """What each number of steps that go in says of the bore."""
    zones = tuple(step.zone for step in steps)
    found = []
    for entered in range(len(steps) + 1):
        least, below = bore_between(zones, entered)
        word = "too small" if entered == 0 else "too large" if entered == len(steps) else "good"
        found.append(ReadOff(entered, least, below, word))
    return tuple(found)
