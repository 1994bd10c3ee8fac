"""How well the bore is known: as stated, else by the gauge that read it, the shop's own first."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.errors import UnknownName
from borewright.job.records import Job
from borewright.job.tools import OwnGauge
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

CLOSER = 0.75
"""Another gauge counts as better from this share of the band down (ours)."""


@dataclass(frozen=True, slots=True)
class HalfBand:
    """Half the band (m) of the bore's size, and the sources of it: none where it was stated."""

    size: Metre
    sources: tuple[str, ...] = ()


def half_band_of(job: Job, tables: Tables) -> HalfBand:
    """Half the band of the bore. UnknownName for a way of measuring that is not in the tables."""
    bore = job.work.bore
    if bore.uncertainty is not None:
        return HalfBand(bore.uncertainty, bore.limits.sources if bore.limits else ())
    usual = tables.gauge(bore.measured_with)
    own = next((g for g in _usable(job) if _kind(g, tables) == usual.id), None)
    if own is not None and own.uncertainty is not None:
        return HalfBand(own.uncertainty)
    return HalfBand(usual.half_band, (usual.source,))


def bore_half_band(job: Job, tables: Tables) -> Metre:
    """Half the band (m) of the bore's size."""
    return half_band_of(job, tables).size


def better_gauge(job: Job, tables: Tables) -> tuple[str, Metre] | None:
    """The gauge on the shelf that knows this bore closest, with its half band (m), if closer."""
    found = [
        (g.kind, tables.gauge(kind).half_band if g.uncertainty is None else g.uncertainty)
        for g in _usable(job)
        if (kind := _kind(g, tables))
    ]
    best = min(found, key=lambda f: f[1], default=None)
    return best if best and best[1] <= CLOSER * bore_half_band(job, tables) else None


def _usable(job: Job) -> list[OwnGauge]:
    """The gauges whose range, as far as stated, takes in this bore."""
    size = job.work.bore.size
    return [
        g for g in job.shelf.gauges if (g.smallest or 0.0) <= size <= (g.largest or float("inf"))
    ]


def _kind(gauge: OwnGauge, tables: Tables) -> str:
    """The id of its kind; empty where the tables do not know it (`shelf check` says so)."""
    try:
        return tables.gauge(gauge.kind).id
    except UnknownName:
        return ""
