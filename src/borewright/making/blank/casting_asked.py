"""What is stated of a casting beside its job; None is left to the tables."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.answer.made_casting import End
from borewright.quantities.si import Metre, MetrePerMetre


@dataclass(frozen=True, slots=True)
class CastingAsked:
    """`shrinkage`: pattern over casting less one; or `measured`, one size of a first pattern and of
    the casting from it (m). `stock`: one for all faces. `scrap`: chance that a casting is scrap."""

    shrinkage: MetrePerMetre | None = None
    measured: tuple[Metre, Metre] | None = None
    stock: Metre | None = None
    up: End | None = None
    boss: Literal["A", "B", "none"] | None = None
    bore: Literal["cored", "solid"] | None = None
    scrap: float | None = None
    sure: float | None = None
