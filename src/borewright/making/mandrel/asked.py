"""What a mandrel is asked to be; None is left to chart and tables."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.mechanics.mandrel_zone import Band
from borewright.quantities.si import Metre, MetrePerMetre


@dataclass(frozen=True, slots=True)
class MandrelAsked:
    """`bores`: smallest and largest to be held; `length` and `travel`: of the bore, pressed on.

    One of `nominal` and `bores` is stated. `longest`: what the lathe or the bar allows overall.
    `unsure`: half the band of `bores`, where it is only what a gauge does not know (m).
    """

    nominal: Metre | None = None
    bores: Band | None = None
    length: Metre | None = None
    travel: Metre | None = None
    steel: str | None = None
    grinder: bool = True
    taper: MetrePerMetre | None = None
    ground_length: Metre | None = None
    overall_length: Metre | None = None
    flats: Literal["large", "both"] = "large"
    longest: Metre | None = None
    unsure: Metre | None = None
    units: Literal["inch", "mm"] = "mm"
