"""How fast a rim turns, on the lathe and in service, against what its metal is let turn at.

Cast iron is held against what shops keep under; other work against the speed at which the hoop
tension of a thin turning ring is its tensile strength over a factor. Over it there is a caution;
under it nothing is said: a casting's flaws, spokes and joints are not in the sum.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.records import Caution, Figure
from borewright.job.records import Job
from borewright.mechanics.rim import rim_speed_for, rim_tension
from borewright.mechanics.turning import surface_speed
from borewright.planning.weighing.figures import figure, given
from borewright.planning.weighing.turned import Turned
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerSecond, RevPerSecond
from borewright.quantities.units import unit
from borewright.reference.library import Tables

IRONS = "iron"
"""How the families of cast irons end."""


@dataclass(frozen=True, slots=True)
class RimLimit:
    """The rim speed above which there is a caution, the end of what shops do, and whose word it is."""

    speed: MetrePerSecond
    highest: MetrePerSecond
    source: str
    iron: bool


def rim_limit(job: Job, tables: Tables) -> RimLimit:
    """Of cast iron by practice, of other metal by the low end of its strength."""
    material = job.work.material
    if tables.material(material).family.endswith(IRONS):
        usual = tables.truth_fact("iron_rim_speed")
        return RimLimit(usual.low, usual.high, usual.source, True)
    strength = tables.material_range(material, "tensile").low
    density = tables.material_range(material, "density").best
    factor = tables.truth_fact("rim_factor")
    low, high = (rim_speed_for(strength / f, density) for f in (factor.best, factor.low))
    return RimLimit(low, high, factor.source, False)


def rim_outside(job: Job) -> Metre:
    """The outside (m) that turns in service: finished, or as it is where that is not stated."""
    return job.work.finished.outside or job.work.outside


def rim_cautions(trial: Turned, tables: Tables) -> tuple[Caution, ...]:
    """One for the turning and one for service, each only where it is over the limit."""
    job = trial.job
    turned = [c.spindle_speed for c in trial.cuts if c.on_lathe]
    found = []
    if turned:
        found.append(_caution(job, "turning", max(turned), job.work.outside, tables))
    if job.work.finished.service_speed is not None:
        service = job.work.finished.service_speed
        found.append(_caution(job, "service", service, rim_outside(job), tables))
    return tuple(c for c in found if c is not None)


def _caution(
    job: Job, where: str, spindle: RevPerSecond, outside: Metre, tables: Tables
) -> Caution | None:
    limit, speed = rim_limit(job, tables), surface_speed(spindle, outside)
    if speed <= limit.speed:
        return None
    show = Show(job.units)
    at = "In service at" if where == "service" else "Turned at"
    kept = (
        f"cast-iron rims are usually kept under {_per_second(limit.speed, show)} to {_per_second(limit.highest, show)}"
        if limit.iron
        else f"by the strength of a plain sound ring it should stay under {_per_second(limit.speed, show)}"
    )
    return Caution(
        f"rim-speed-{where}",
        f"{at} {show.spindle(spindle)} its rim runs at {_per_second(speed, show)}: {kept}. Slower, smaller, or a stronger wheel; "
        "stand out of its plane. Nothing here says that it is sound.",
        limit.source,
    )


def _per_second(speed: MetrePerSecond, show: Show) -> str:
    """A rim speed as shops say it: feet a minute, or metres a second.

    >>> _per_second(27.9, Show("inch"))
    '5490 ft/min (27.9 m/s)'
    """
    feet_a_minute = unit("surface", "ft/min").from_si(speed)
    metric, feet = f"{speed:.3g} m/s", f"{round(feet_a_minute, -1):.0f} ft/min"
    return f"{feet} ({metric})" if show.units == "inch" else f"{metric} ({feet})"


def rim_figures(trial: Turned) -> tuple[Figure, ...]:
    """Rim speed in service and the hoop tension of a thin ring, where that speed is stated."""
    job, tables = trial.job, trial.tables
    service = job.work.finished.service_speed
    if service is None:
        return ()
    outside, density = rim_outside(job), tables.material_range(job.work.material, "density")
    speed = surface_speed(service, outside)
    of_speed = (given("outside", outside, "m"), given("rev in service", service, "rev/s"))
    of_ring = (given("density", density.best, "kg/m³"), given("rim speed", speed, "m/s"))
    tension = float(rim_tension(density.best, speed))
    return (
        figure("service_rim_speed", speed, "m/s", "surface", "rim_speed", of_speed, ("stated",)),
        figure(
            "service_rim_tension", tension, "Pa", "pressure", "rim_tension", of_ring,
            (density.source, rim_limit(job, tables).source),
        ),
    )  # fmt: skip
