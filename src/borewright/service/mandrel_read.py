"""mandrel: diameters measured along a mandrel -> its taper, which end is large, what it takes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

import numpy as np

from borewright.holding.taper.mandrels import resolve
from borewright.holding.taper.measured_mandrel import USUAL_UNCERTAINTY, flats_of, is_parallel
from borewright.holding.taper.measured_words import PARALLEL, beyond_use
from borewright.job.records import Mandrel, MandrelNote
from borewright.job.stations import Stations
from borewright.mechanics.measured import (
    Profile,
    diameter_on,
    fit_taper,
    growing_share,
    largest_end,
    largest_so_far,
    profile,
)
from borewright.mechanics.measured_touch import first_reaching
from borewright.quantities.si import Metre, MetrePerMetre, Ratio
from borewright.reference.library import Tables
from borewright.service.fit_records import Taken

MOST_ROWS = 12
"""Rows of the table of bores."""

STEPS = {
    "inch": (0.0254e-4, (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)),
    "mm": (1e-6, (2, 5, 10, 20, 50, 100, 200, 500, 1000)),
}
"""Steps of bore that a shop says: a unit (m), and how many of it."""


@dataclass(frozen=True, slots=True)
class MandrelReading:
    """What was measured: (x from one end of the ground length, diameter), and what is known of it."""

    stations: Stations
    ground_length: Metre | None = None
    uncertainty: Metre | None = None
    units: Literal["inch", "mm"] = "mm"


@dataclass(frozen=True, slots=True)
class MandrelFound:
    """What the readings show; x from the small end. `trouble` is empty where it is of use.

    `measured_from` is the end that x was counted from: small, large, or neither. `bores` are a
    straight bore and how far from the large end of the ground length its leading face first stops.
    """

    taper: MetrePerMetre
    measured_from: str
    ground_length: Metre
    uncertainty: Metre
    stations: Stations
    residuals: tuple[Metre, ...]
    flats: Stations
    growing: Ratio
    bore_window: tuple[Metre, Metre]
    bores: tuple[tuple[Metre, Metre], ...]
    assumed: tuple[Taken, ...]
    trouble: str

    @property
    def straightness(self) -> Metre:
        """How far the worst station stands from the straight taper (m)."""
        return max(abs(r) for r in self.residuals)

    def as_dict(self) -> dict[str, Any]:
        """As JSON, the SI unit in each key."""
        low, high = self.bore_window
        rows = zip(self.stations, self.residuals, strict=True)
        return {
            "taper_m_per_m": self.taper,
            "measured_from": self.measured_from,
            "ground_length_m": self.ground_length,
            "straightness_m": self.straightness,
            "uncertainty_m": self.uncertainty,
            "growing_share": self.growing,
            "bore_window_m": {"low": low, "high": high},
            "stations": [{"x_m": x, "diameter_m": d, "residual_m": r} for (x, d), r in rows],
            "flats": [{"from_m": start, "to_m": end} for start, end in self.flats],
            "bores": [{"bore_m": b, "large_end_to_face_m": p} for b, p in self.bores],
            "assumed": [
                {"what": t.what, "taken": t.taken, "unit": t.unit, "source": t.source}
                for t in self.assumed
            ],
        }


def read_mandrel(asked: MandrelReading, tables: Tables) -> MandrelFound:
    """What the stations of one mandrel show. The stations are taken as checked (`job.stations`).

    >>> from borewright.reference.library import tables
    >>> ends = ((0.01, 0.015985), (0.09, 0.016025))
    >>> found = read_mandrel(MandrelReading(ends, 0.1), tables())
    >>> found.measured_from, round(found.taper, 9)
    ('small', 0.0005)
    """
    xs, ds = zip(*asked.stations, strict=True)
    fit, known = fit_taper(xs, ds), _known(asked, tables)
    if is_parallel(asked.stations, known.uncertainty):
        return _parallel(asked, known, fit.residuals.tolist())
    note = MandrelNote(
        sum(ds) / len(ds),
        ground_length=known.ground,
        stations=asked.stations,
        station_uncertainty=known.uncertainty,
    )
    mandrel = resolve(note, tables, "mandrel").mandrel
    return _found(asked, known, mandrel)


@dataclass(frozen=True, slots=True)
class _Known:
    ground: Metre
    uncertainty: Metre
    taken: tuple[Taken, ...]


def _known(asked: MandrelReading, tables: Tables) -> _Known:
    taken = []
    ground, uncertainty = asked.ground_length, asked.uncertainty
    if ground is None:
        row = tables.mandrel_row(sum(d for _, d in asked.stations) / len(asked.stations))
        ground = max(row.ground_length, *(x for x, _ in asked.stations))
        taken.append(Taken("ground_length", ground, "m", ", ".join(row.sources)))
    if uncertainty is None:
        uncertainty = USUAL_UNCERTAINTY
        taken.append(Taken("uncertainty", uncertainty, "m", "ours"))
    return _Known(ground, uncertainty, tuple(taken))


def _parallel(asked: MandrelReading, known: _Known, residuals: list[float]) -> MandrelFound:
    ds = [d for _, d in asked.stations]
    return MandrelFound(
        taper=0.0,
        measured_from="neither",
        ground_length=known.ground,
        uncertainty=known.uncertainty,
        stations=asked.stations,
        residuals=tuple(residuals),
        flats=(),
        growing=0.0,
        bore_window=(min(ds), max(ds)),
        bores=(),
        assumed=known.taken,
        trouble=f"it is {PARALLEL}",
    )


def _found(asked: MandrelReading, known: _Known, mandrel: Mandrel) -> MandrelFound:
    xs, ds = zip(*mandrel.stations, strict=True)
    along = profile(xs, ds, known.ground)
    growing = growing_share(along)
    typed = largest_end(*zip(*asked.stations, strict=True))
    window = float(diameter_on(0.0, along)), float(largest_so_far(known.ground, along))
    return MandrelFound(
        taper=mandrel.taper,
        measured_from="small" if typed == "far" else "large",
        ground_length=known.ground,
        uncertainty=known.uncertainty,
        stations=mandrel.stations,
        residuals=tuple(fit_taper(xs, ds).residuals.tolist()),
        flats=flats_of(mandrel),
        growing=growing,
        bore_window=window,
        bores=_bores(along, known.ground, window, asked.units),
        assumed=known.taken,
        trouble=f"it is {worn}" if (worn := beyond_use(mandrel)) else "",
    )


def _bores(
    along: Profile, ground: Metre, window: tuple[Metre, Metre], units: str
) -> tuple[tuple[Metre, Metre], ...]:
    """Round bores that it takes, and where each first stops, from the large end."""
    unit, counts = STEPS[units]
    low, high = (v / unit for v in window)
    step = next((n for n in counts if (high - low) / n < MOST_ROWS), counts[-1])
    first = -int(-(low - 1e-6) // step)
    sizes = [k * step * unit for k in range(first, int((high + 1e-6) // step) + 1)]
    return tuple((b, ground - float(first_reaching(along, np.asarray(b)))) for b in sizes)
