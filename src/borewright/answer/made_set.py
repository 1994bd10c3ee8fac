"""A set of mandrels for a list of bores: how many of each size, and what each is to be."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.answer.made_mandrel import MadeMandrel
from borewright.mechanics.mandrel_zone import Band
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True)
class SetSize:
    """One size of the list: its bores, and the mandrels that share them, smallest first.

    `one_takes`: width of the band of bores that one of them takes at any limit (m). `why` says why
    none can be made, where none can.
    """

    name: str
    bores: Band
    one_takes: Metre
    mandrels: tuple[MadeMandrel, ...]
    why: str = ""


@dataclass(frozen=True, slots=True)
class MandrelSet:
    """The whole set. `longest`: the longest mandrel allowed."""

    units: Literal["inch", "mm"]
    sizes: tuple[SetSize, ...]
    longest: Metre
    grinder: bool

    @property
    def mandrels(self) -> tuple[MadeMandrel, ...]:
        """Every mandrel, in the order of the list."""
        return tuple(m for size in self.sizes for m in size.mandrels)

    @property
    def whole(self) -> bool:
        """Whether every size of the list can be made."""
        return all(size.mandrels for size in self.sizes)
