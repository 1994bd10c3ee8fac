"""What the work weighs, ring by ring, and how much it stands against turning about a diameter."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from borewright.job.records import Work
from borewright.job.web import metal_share
from borewright.quantities.si import Kilogram, Metre
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class Slab:
    """One ring from `start` to `end` (m from face A): kg, and kg·m² about its diameter, each metre.

    The inertia is that of a thin slice; what the length of the ring adds, its places along the bar do.
    """

    start: Metre
    end: Metre
    per_metre: float
    turning_per_metre: float


def slabs(work: Work, tables: Tables) -> Iterator[Slab]:
    """Every ring of the work: ρ π/4 (D² - d²) a metre, and m (D² + d²) / 16 of each slice."""
    density = tables.material_range(work.material, "density").best
    for p in work.pieces:
        inside = p.inside or work.bore.size
        metal = float(density * np.pi / 4 * (p.outside**2 - inside**2) * metal_share(p, work))
        yield Slab(p.start, p.end, metal, metal * (p.outside**2 + inside**2) / 16)


def work_mass(work: Work, tables: Tables) -> Kilogram:
    """The work as it is before turning."""
    return sum(s.per_metre * (s.end - s.start) for s in slabs(work, tables))
