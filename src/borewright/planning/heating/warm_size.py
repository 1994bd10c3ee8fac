"""The size to read on warm work for the finished size cold (20 °C, ISO 1).

Weakness: the gauge is taken at 20 °C and the work as evenly warm; what the press makes it grow, and
gives back when it comes off, is a sum of its own (`outside_growth`).
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Figure
from borewright.mechanics.measurement import REFERENCE_TEMPERATURE, length_read_at
from borewright.mechanics.num import Floats
from borewright.mechanics.spread import high_end, likely
from borewright.planning.heating.heat_run import Heated, HeatRun
from borewright.planning.heating.loosened import Gripped
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure, given
from borewright.planning.weighing.turned import Turned
from borewright.quantities.si import Kelvin, Metre

ISO_1 = "iso-1"


@dataclass(frozen=True, slots=True)
class WarmSize:
    """What a gauge at 20 °C reads on the outside, so warm (K over 20 °C), when it is to size.

    `high`: in the poor case; `cold` the finished size it stands for.
    """

    reads: Metre
    warmth: Kelvin
    high: Metre
    cold: Metre


def warm_size(trial: Trial | Gripped, run: HeatRun) -> WarmSize | None:
    """The reading as the last cut on the outside ends; None where no finished outside is stated."""
    cold, last = trial.job.work.finished.outside, _sizing(run)
    if cold is None or last is None:
        return None
    warm: Floats = last.after[0]
    low, high = likely(warm), max(high_end(warm), likely(warm))
    return WarmSize(_reads(trial, cold, low), low, _reads(trial, cold, high), cold)


def warm_size_figures(trial: Trial | Gripped, run: HeatRun) -> tuple[Figure, ...]:
    """That reading as a figure; none where there is none."""
    found = warm_size(trial, run)
    if found is None:
        return ()
    expansion = trial.tables.material_range(trial.job.work.material, "expansion")
    inputs = (
        given("finished size, cold", found.cold, "m", "turned"),
        given("expansion (ppm/K)", expansion.best * 1e6),
        given("warmth", found.warmth, "K", "temperature difference"),
    )
    sources, band = (ISO_1, expansion.source), (found.reads, found.high)
    return (
        figure("warm_reading", found.reads, "m", "turned", "warm_reading", inputs, sources, band),
    )


def _reads(trial: Turned, cold: Metre, warmth: Kelvin) -> Metre:
    expansion = trial.tables.material_range(trial.job.work.material, "expansion").best
    return length_read_at(cold, expansion, REFERENCE_TEMPERATURE + warmth)


def _sizing(run: HeatRun) -> Heated | None:
    """The last cut that makes the outside."""
    made = [c for c in run.cuts if c.burst.cut.kind in ("turn", "grind")]
    return made[-1] if made else None
