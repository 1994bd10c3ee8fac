"""Blanks from bar: how thick, how long, what is cut from which bar."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.quantities.si import Kilogram, Metre

Cut = Literal["sawn", "parted"]


@dataclass(frozen=True, slots=True)
class BarLot:
    """Bars that are cut alike: how many, into how many pieces each, what is left of each (m)."""

    name: str
    length: Metre
    count: int
    pieces: int
    left: Metre


@dataclass(frozen=True, slots=True)
class BarBlanks:
    """All blanks of a batch. `piece`: length of one as cut; `order`: one bar that holds them all.

    `lots` is the cutting list, `missing` the pieces that the bars stated do not give; `proved`: no
    way of cutting takes less bar.
    """

    title: str
    material: str
    units: Literal["inch", "mm"]
    quantity: int
    outside: Metre
    length: Metre
    bar_size: str
    bar: Metre
    cut: Cut
    piece: Metre
    kerf: Metre
    end: Metre
    order: Metre
    lots: tuple[BarLot, ...]
    missing: int
    proved: bool
    mass: Kilogram
    notes: tuple[str, ...] = ()

    @property
    def whole(self) -> bool:
        """Whether every piece can be had."""
        return self.missing == 0
