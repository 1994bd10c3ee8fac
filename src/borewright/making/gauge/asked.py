"""What is asked of a plug gauge."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.quantities.si import Metre

Finish = Literal["turned", "lapped"]


@dataclass(frozen=True, slots=True)
class GaugeAsked:
    """Smallest and largest bore (m); `name` is the class as typed, such as 16 H7, or "".

    `finish` None: whichever serves. `stepped`: a stepped plug; with `steps` of them, or None for as
    many as the window has room for. `blind`: the bore has a bottom. `depth` of the bore (m), None
    where nobody said it. `comparator`: the shop measures the plug on one.
    """

    low: Metre
    high: Metre
    name: str
    units: Literal["inch", "mm"]
    material: str = ""
    finish: Finish | None = None
    stepped: bool = False
    steps: int | None = None
    blind: bool = False
    depth: Metre | None = None
    comparator: bool = False

    @property
    def band(self) -> Metre:
        """Width of the window (m)."""
        return self.high - self.low
