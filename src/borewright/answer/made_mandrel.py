"""A mandrel to be made: its sizes with their limits, the bores it takes, how it is made."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.mechanics.mandrel_zone import Band, Held, Zone
from borewright.quantities.si import Kilogram, Metre, MetrePerMetre, Radian
from borewright.reference.centers import Center
from borewright.reference.making import Bar, Steel
from borewright.reference.mandrels import PlainMandrel


@dataclass(frozen=True, slots=True)
class MandrelForm:
    """Its form: x runs from the small end of the ground length. `zone` are the drawing's limits.

    `small_end` and `taper` are those of the middle of the limits.
    """

    nominal: Metre
    small_end: Metre
    taper: MetrePerMetre
    ground_length: Metre
    overall_length: Metre
    end_diameter: Metre
    zone: Zone
    center: Center | None
    center_depth: Metre
    flat_depth: Metre
    flat_length: Metre
    flats: Literal["large", "both"]

    @property
    def end_length(self) -> Metre:
        """Length of each reduced end."""
        return (self.overall_length - self.ground_length) / 2

    @property
    def large_end(self) -> Metre:
        """Diameter at the large end of the ground length, in the middle of the limits."""
        return self.small_end + self.taper * self.ground_length

    @property
    def tolerance(self) -> Metre:
        """Width of the limits at a gauge plane."""
        return self.zone.near_small[1] - self.zone.near_small[0]

    @property
    def apart(self) -> Metre:
        """From gauge plane to gauge plane."""
        return self.zone.at_large - self.zone.at_small


@dataclass(frozen=True, slots=True)
class MandrelStock:
    """What it is made from. `old` and `scaled`: stock for grinding by the old figure and by size.

    `taken`: stock on diameter left before the last operation, by whichever applies; `bend_most`:
    the most that it may run out then. `rough`: diameter of the ground length before it. `mass`: of
    the blank as sawn.
    """

    steel: Steel
    bar: Bar
    bar_length: Metre
    old: Metre
    scaled: Metre
    taken: Metre
    rough: Metre
    bend_most: Metre
    mass: Kilogram


@dataclass(frozen=True, slots=True)
class MandrelSettings:
    """How grinder or lathe is set. `rise`: what an indicator reads over `base` along the table."""

    table_angle: Radian
    base: Metre
    rise: Metre
    set_over: Metre
    between: Metre
    planes_differ: Metre
    runout: Metre


@dataclass(frozen=True, slots=True)
class MadeMandrel:
    """All of it. `wanted`: the bores it was asked for, None where only a size was.

    `takes`: the bores that every mandrel within the limits takes, `takes_middle` those of one in
    their middle; None for none. `fits` False: one mandrel does not take what was asked, `why` says.
    `care`: reasons why it is made with care or not at all.
    """

    units: Literal["inch", "mm"]
    stamp: str
    form: MandrelForm
    stock: MandrelStock
    settings: MandrelSettings
    grinder: bool
    held: Held
    row: PlainMandrel
    wanted: Band | None
    takes: Band | None
    takes_middle: Band | None
    fits: bool
    why: str = ""
    care: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
