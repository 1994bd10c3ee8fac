"""What a user states, as frozen records in SI units. None means "not stated".

Nothing here reads a file or fills a gap: `job.file` reads, `planning` assumes (and says so).
Depth along the work, `z`, runs from **face A**, the face the job file calls zero.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from borewright.quantities.si import (
    Metre,
    MetrePerMetre,
    MetrePerSecond,
    Newton,
    Radian,
    RevPerSecond,
    Watt,
)


@dataclass(frozen=True, slots=True)
class Piece:
    """A ring of the work along z; `inside` is None where it begins at the bore."""

    start: Metre
    end: Metre
    outside: Metre
    inside: Metre | None = None


@dataclass(frozen=True, slots=True)
class BoreReading:
    """One measured diameter of the bore at a depth from face A, in a named direction or none."""

    depth: Metre
    size: Metre
    direction: str = ""


@dataclass(frozen=True, slots=True)
class Bore:
    """The hole: its size, the readings behind it, how it was measured and made."""

    size: Metre
    uncertainty: Metre | None = None
    measured_with: str = "unknown"
    made_by: str = "unknown"
    readings: tuple[BoreReading, ...] = ()


@dataclass(frozen=True, slots=True)
class Finished:
    """The size wanted when done, each with its tolerance as a total band on diameter."""

    outside: Metre | None = None
    tolerance: Metre | None = None


@dataclass(frozen=True, slots=True)
class Work:
    """The part as it stands now."""

    material: str
    pieces: tuple[Piece, ...]
    bore: Bore
    blank: str = "unknown"
    finished: Finished = Finished()
    quantity: int = 1

    @property
    def length(self) -> Metre:
        """From face A to face B along the bore's axis."""
        return max(p.end for p in self.pieces) - min(p.start for p in self.pieces)

    @property
    def outside(self) -> Metre:
        """The largest diameter."""
        return max(p.outside for p in self.pieces)


@dataclass(frozen=True, slots=True)
class Mandrel:
    """A plain taper mandrel. `x` runs from the small end of its ground length."""

    name: str
    nominal: Metre
    small_end: Metre
    taper: MetrePerMetre
    ground_length: Metre
    overall_length: Metre
    end_diameter: Metre
    end_length: Metre
    material: str = "mandrel-steel-hard"
    origin: str = "stated"
    sources: tuple[str, ...] = ()

    @property
    def large_end(self) -> Metre:
        return self.small_end + self.taper * self.ground_length


@dataclass(frozen=True, slots=True)
class MandrelNote:
    """What a user said of one mandrel on the shelf: a size, and perhaps more."""

    nominal: Metre
    name: str = ""
    small_end: Metre | None = None
    large_end: Metre | None = None
    taper: MetrePerMetre | None = None
    ground_length: Metre | None = None
    overall_length: Metre | None = None


@dataclass(frozen=True, slots=True)
class Machine:
    """The lathe, as far as stated."""

    name: str = ""
    speeds: tuple[RevPerSecond, ...] = ()
    feeds: tuple[Metre, ...] = ()
    swing_over_cross_slide: Metre | None = None
    between_centers: Metre | None = None
    power: Watt | None = None


@dataclass(frozen=True, slots=True)
class Shelf:
    """What the shop owns. `stated` False: the owner did not say, which is not the same as none."""

    mandrels: tuple[MandrelNote, ...] = ()
    stated: bool = False
    press: str = ""
    press_force: Newton | None = None
    machine: Machine = field(default_factory=Machine)


@dataclass(frozen=True, slots=True)
class CutWish:
    """A cut the user insists on; what is None is left to the plan. `kind` is turn or face."""

    kind: str = "turn"
    depth: Metre | None = None
    feed: Metre | None = None
    speed: MetrePerSecond | None = None
    spindle_speed: RevPerSecond | None = None
    edge_angle: Radian | None = None
    nose_radius: Metre | None = None


@dataclass(frozen=True, slots=True)
class Job:
    """One part to be held and cut. `units` is inch or mm: how sizes are shown first."""

    title: str
    work: Work
    units: Literal["inch", "mm"] = "inch"
    shelf: Shelf = field(default_factory=Shelf)
    use: str = "any"
    lubrication: str = "oiled"
    pressed_before: bool = False
    cuts: tuple[CutWish, ...] = ()
