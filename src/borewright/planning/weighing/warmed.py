"""How warm a cut leaves the work, as one lump, and how long it takes to cool."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from borewright.answer.records import Cut, Demand, Draws
from borewright.answer.streams import Stream, positive
from borewright.job.records import Job
from borewright.job.web import metal_share
from borewright.mechanics.milling import table_feed
from borewright.mechanics.warmth import cooling_time, cutting_time, temperature_rise
from borewright.planning.weighing.turned import Turned
from borewright.quantities.si import Metre, Second
from borewright.reference.library import Tables
from borewright.reference.ranges import Range

COOLED = 0.1
"""Share of the warmth that may be left when it counts as cool."""


class Warming(Protocol):
    """Whatever has a job and tables."""

    @property
    def job(self) -> Job:
        """The job."""

    @property
    def tables(self) -> Tables:
        """The tables in use."""


@dataclass(frozen=True, slots=True)
class Body:
    """The work as one lump: m c (J/K) and surface (m²)."""

    heat_capacity: float
    area: float


def work_body(trial: Turned) -> Body:
    """Volume times density and heat capacity, and the outer surface, of the turned rings."""
    work, t = trial.job.work, trial.tables
    rings = [
        (p.end - p.start, p.outside, p.inside or work.bore.size, metal_share(p, work))
        for p in work.pieces
    ]
    volume = sum(np.pi / 4 * (o**2 - i**2) * length * share for length, o, i, share in rings)
    area = sum(
        (np.pi * o * length + np.pi / 2 * (o**2 - i**2)) * share for length, o, i, share in rings
    )
    density, specific = (
        t.material_range(work.material, q).best for q in ("density", "heat_capacity")
    )
    return Body(float(volume * density * specific), float(area))


def heat_share(trial: Warming, cut: Cut) -> Range:
    """Share of the power at the tool that warms the work."""
    if cut.kind == "grind":
        return trial.tables.grinding("heat_share")
    return trial.tables.allowance("heat_share")


def loss_to(trial: Warming, *, coolant: bool) -> Range:
    """Heat lost to the air, or to coolant, for each square metre and kelvin."""
    return trial.tables.grinding("coolant_loss") if coolant else trial.tables.allowance("air_loss")


def heat_into_work(trial: Warming, cut: Cut, demand: Demand) -> Draws:
    """Power (W) that warms the work while a pass is taken."""
    share = heat_share(trial, cut)
    drawn = positive(share.low, share.best, share.high, Stream.WARMING)
    return np.asarray(demand.power * drawn)


def warmth_after(trial: Warming, cut: Cut, demand: Demand, body: Body) -> Draws:
    power = heat_into_work(trial, cut, demand)
    loss = loss_to(trial, coolant=cut.coolant).best
    seconds = seconds_counted(trial, cut)
    return np.asarray(temperature_rise(power, seconds, body.heat_capacity, loss, body.area))


def seconds_counted(trial: Warming, cut: Cut) -> Second:
    """Time (s) of heating that counts: a wheel or form cutter takes so long that the mandrel follows."""
    if cut.on_lathe:
        return seconds_of(trial, cut)
    return min(seconds_of(trial, cut), trial.tables.allowance("mandrel_lag").best)


def seconds_of(trial: Warming, cut: Cut) -> Second:
    """Time (s) of all passes, none between them."""
    if cut.space is not None:
        s = cut.space
        approach = math.sqrt(cut.depth * (s.cutter_diameter - cut.depth))
        speed = table_feed(cut.feed, s.cutter_teeth, cut.spindle_speed)
        return cut.passes * (trial.job.work.length + approach) / speed
    one = cutting_time(_path(trial, cut), cut.feed, cut.cutting_speed, cut.diameter)
    return cut.passes * one


def _path(trial: Warming, cut: Cut) -> Metre:
    """Length of the tool's path (m): along the outside, or from rim to bore."""
    if cut.length > 0:
        return cut.length
    if cut.kind != "face":
        return trial.job.work.length
    return (cut.diameter - trial.job.work.bore.size) / 2


def wait_words(trial: Turned, body: Body) -> str:
    loss = trial.tables.allowance("air_loss").best
    minutes = float(cooling_time(COOLED, body.heat_capacity, loss, body.area)) / 60
    return f"about {minutes:.0f} minutes" if minutes >= 1.5 else "a minute"
