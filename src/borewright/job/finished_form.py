"""What the part has beyond one outside when it is done: length, steps, grooves, edges. SI units."""

from __future__ import annotations

from dataclasses import dataclass, field

from borewright.job.crown_wish import CrownWish
from borewright.job.interrupted import Chamfers
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True)
class FinishedStep:
    """A stretch along the work, from face A as faced, turned to its own smaller diameter."""

    start: Metre
    end: Metre
    outside: Metre


@dataclass(frozen=True, slots=True)
class Groove:
    """A groove plunged into the outside down to a diameter, from face A as faced."""

    start: Metre
    end: Metre
    bottom: Metre

    @property
    def width(self) -> Metre:
        return self.end - self.start


@dataclass(frozen=True, slots=True)
class FinishedForm:
    """`length`: over both faces when done. `roughness`: greatest height of the ridges of the
    finished outside. `edges`: leg by which sharp edges are broken. None: not stated;
    no `crown` is wanted. `chamfers`: larger legs of the outer edges at face A and face B."""

    length: Metre | None = None
    roughness: Metre | None = None
    steps: tuple[FinishedStep, ...] = ()
    grooves: tuple[Groove, ...] = ()
    edges: Metre | None = None
    crown: CrownWish | None = None
    chamfers: Chamfers = field(default_factory=Chamfers)

    @property
    def uneven(self) -> bool:
        """Whether its two ends are told apart by what is turned."""
        return bool(self.steps or self.grooves)

    def heavier_end(self, outside: Metre, length: Metre) -> str:
        """The face with more metal to come off near it, A or B; empty where neither has."""
        off = [
            (outside**2 - s.outside**2) * (s.end - s.start) * (length - s.start - s.end)
            for s in self.steps
        ]
        return "" if not off or sum(off) == 0 else "A" if sum(off) > 0 else "B"
