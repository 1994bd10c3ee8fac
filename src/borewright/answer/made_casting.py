"""A casting to be made: the finished wheel, the casting around it, its pattern, mould and melt."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import Literal

from borewright.answer.drawn_part import Stretch
from borewright.job.interrupted import Spokes
from borewright.job.records import Bore, Piece
from borewright.quantities.si import Kilogram, Metre, MetrePerMetre, Radian
from borewright.reference.foundry import CastingStock

End = Literal["A", "B"]


@dataclass(frozen=True, slots=True)
class Wheel:
    """The finished part that is to come out of the casting; z from face A as faced.

    `bore` has limits always; `bore_taken`: they were not stated. `not_cast`: what the part has that
    is cut from the solid.
    """

    pieces: tuple[Piece, ...]
    outside: Metre
    length: Metre
    bore: Bore
    bore_taken: bool
    not_cast: tuple[str, ...] = ()

    @property
    def largest(self) -> Metre:
        """The larger of outside and length (m)."""
        return max(self.outside, self.length)


@dataclass(frozen=True, slots=True)
class FaceStock:
    """Metal left on a face (m; on radius where it is round): what tables say, and what is taken."""

    face: str
    where: str
    said: CastingStock | None
    taken: Metre


@dataclass(frozen=True, slots=True)
class Shrink:
    """Shrinkage taken: pattern over casting less one; `low` and `high` of what books say."""

    taken: MetrePerMetre
    low: MetrePerMetre
    high: MetrePerMetre
    by: str
    source: str


@dataclass(frozen=True, slots=True)
class Core:
    """A core: diameter as cast (m), length of each of its prints, length between them."""

    diameter: Metre
    print_length: Metre
    between: Metre


@dataclass(frozen=True, slots=True)
class Boss:
    """A boss to hold by: at which face, its diameter and how far it stands out of it (m)."""

    face: End
    diameter: Metre
    length: Metre


@dataclass(frozen=True, slots=True)
class Section:
    """A section by how fast it freezes: its name and modulus (m)."""

    name: str
    modulus: Metre


Place = Literal["middle", "wall", "beside", "rim inside", "rim outside", "web"]


@dataclass(frozen=True, slots=True)
class Riser:
    """What feeds the heaviest section: thickness and height (m), and where it stands.

    `room` (m): how thick it may be there. `fits`: it may stand there, if by a `neck` (its thickness
    and greatest length, m; 0 where it has none); else nothing of that size may stand anywhere.
    """

    diameter: Metre
    height: Metre
    place: Place
    room: Metre
    fits: bool = True
    neck: Metre = 0.0
    neck_long: Metre = 0.0

    @property
    def volume(self) -> float:
        """Its metal (m³)."""
        return pi / 4 * self.diameter**2 * self.height


@dataclass(frozen=True, slots=True)
class Mould:
    """How it lies in the sand. `parting` is from face A as cast (m); `sections` heaviest first.

    `swells`: the metal does as it freezes, so that it feeds itself, or nearly.
    """

    up: End
    up_why: str
    parting: Metre
    parting_why: str
    outside_draft: Radian
    inside_draft: Radian
    fillet: Metre
    round: Metre
    sections: tuple[Section, ...]
    riser: Riser
    swells: bool = False


@dataclass(frozen=True, slots=True)
class Melt:
    """Weights (kg) and numbers: of one casting, with its gates, and of the whole batch.

    `poured` is by the yield, or where that is more, casting and `riser` with `sprue_share` of both.
    `heats`: crucibles it takes; 0 where one mould takes more than a crucible.
    """

    casting: Kilogram
    poured: Kilogram
    charge: Kilogram
    tries: int
    wanted: int
    yield_share: float
    loss: float
    scrap: float
    sure: float
    chance: float
    riser: Kilogram
    sprue_share: float
    heats: int

    @property
    def by_yield(self) -> bool:
        """Whether the yield asks for no less than the riser does."""
        return self.casting / self.yield_share >= self.fed

    @property
    def fed(self) -> Kilogram:
        """Casting, riser and their sprue (kg)."""
        return (self.casting + self.riser) * (1 + self.sprue_share)


@dataclass(frozen=True, slots=True)
class MadeCasting:
    """Everything of it. `pieces`: the casting as plain rings, z from face A as cast, without draft
    and boss; `stretches`: with both. `volume` (m³): theirs, less what is open between spokes.
    `sand_hole` (m): a hole that the pattern leaves open for sand to stand in, at its widest, or 0.
    """

    title: str
    material: str
    units: Literal["inch", "mm"]
    wheel: Wheel
    stocks: tuple[FaceStock, ...]
    stock_stated: bool
    pieces: tuple[Piece, ...]
    outside: Metre
    length: Metre
    stretches: tuple[Stretch, ...]
    core: Core | None
    sand_hole: Metre
    core_why: str
    boss: Boss | None
    mould: Mould
    shrink: Shrink
    volume: float
    density: float
    melt: Melt
    spokes: Spokes | None = None

    @property
    def hole(self) -> Metre:
        """The hole as cast (m), by core or by sand; 0 where it is solid."""
        return self.core.diameter if self.core else self.sand_hole

    def pattern(self, size: Metre) -> Metre:
        """Size of the pattern (m) for a size of the casting (m)."""
        return size * (1 + self.shrink.taken)

    def stock(self, face: str) -> Metre:
        """Metal left (m) on outside, face A, face B or bore; 0 where it is not machined."""
        return next((s.taken for s in self.stocks if s.face == face), 0.0)
