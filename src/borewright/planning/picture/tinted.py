"""The tension in the section as numbered bands in round numbers, and the outlines to fill."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from borewright.answer.pressed import Place, PressedShape, TensionBand, Tinted
from borewright.mechanics.bands import round_bounds
from borewright.mechanics.contours import Region, region
from borewright.mechanics.num import Floats
from borewright.mechanics.revolved import Revolved
from borewright.quantities.si import Metre, Pascal, Ratio

if TYPE_CHECKING:
    from borewright.mechanics.tension_field import StressField

FAR, SHOWN = 4.5, 3.0
"""Work that reaches farther than FAR bore diameters from the axis is drawn to SHOWN only (ours)."""

LEAST_AREA = 0.03
"""A bound that less than this share of the drawn section lies under is not drawn (ours)."""

Pascals = tuple[Pascal, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Tension:
    """What the field follows from: the work over its bore (m), and the pressure (Pa) on each strip."""

    body: Revolved
    poisson: Ratio
    pressure: Floats
    bore: Metre


def shape_of(
    of: Tension, largest: Pascal, size: Pascal, gap: tuple[Place, ...]
) -> tuple[PressedShape, Pascals]:
    """The outlines of all bands, and the bounds between them, round in units of `size` (Pa)."""
    from borewright.mechanics.tension_field import cut_off, finer, stress_field  # heavy

    whole = stress_field(of.body, of.poisson, of.pressure)
    far = of.body.r[-1] > FAR
    drawn = finer(cut_off(whole, SHOWN) if far else whole)
    tension = drawn.tension
    lowest = _lowest(drawn, tension)
    wanted = [b * size for b in round_bounds(lowest / size, largest / size)]
    found = [(b, _region(drawn, tension, b)) for b in wanted]
    kept = [(b, part) for b, part in found if part.outlines]
    all_ = _region(drawn, np.zeros_like(tension), 0.0)
    regions = (Region(all_.outlines, ()), *(part for _, part in kept))
    tints = tuple(_tinted(k, part, of.bore) for k, part in enumerate(regions, 1))
    beyond = float(whole.tension[whole.r > SHOWN].max()) if far else 0.0
    shape = PressedShape(tints, gap, SHOWN * of.bore if far else None, beyond)
    return shape, tuple(b for b, _ in kept)


def tension_bands(bounds: Pascals, largest: Pascal, strength: Pascal) -> tuple[TensionBand, ...]:
    """The rows of the table of bands; the first has no lower end.

    >>> [(b.number, b.low, b.high, b.share_high) for b in tension_bands((10.0, 20.0), 25.0, 50.0)]
    [(1, None, 10.0, 0.2), (2, 10.0, 20.0, 0.4), (3, 20.0, 25.0, 0.5)]
    """
    lows, highs = (None, *bounds), (*bounds, largest)
    return tuple(
        TensionBand(k, low, high, None if low is None else low / strength, high / strength)
        for k, (low, high) in enumerate(zip(lows, highs, strict=True), 1)
    )


def _lowest(drawn: StressField, tension: Floats) -> Pascal:
    """The tension that LEAST_AREA of the drawn section lies under."""
    mean = 0.25 * (tension[:-1, :-1] + tension[1:, :-1] + tension[:-1, 1:] + tension[1:, 1:])
    area = np.outer(np.diff(drawn.r), np.diff(drawn.z))[drawn.metal]
    order = np.argsort(mean[drawn.metal], kind="stable")
    under = np.cumsum(area[order]) / area.sum()
    return float(mean[drawn.metal][order][np.searchsorted(under, LEAST_AREA)])


def _region(drawn: StressField, tension: Floats, level: Pascal) -> Region:
    return region(drawn.z, drawn.r, tension, drawn.metal, level)


def _tinted(number: int, part: Region, bore: Metre) -> Tinted:
    outlines, lines = (
        tuple(tuple((z * bore, r * bore) for z, r in line) for line in some)
        for some in (part.outlines, part.lines)
    )
    return Tinted(number, outlines, lines)
