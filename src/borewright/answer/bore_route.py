"""How a bore comes to the size that holding needs: its steps, its chance, how it is measured.

Sizes are diameters. A figure of a size carries the 5 % and 95 % ends that the tool or the hand
leaves; the figure of a chance those of a careless and of a careful shop.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from borewright.answer.figure import Assumption, Caution, Figure
from borewright.quantities.si import Metre, Unit

SizeFigure = Annotated[Figure, Unit("m", "m")]
TurnsFigure = Annotated[Figure, Unit("rev/s", "rev_per_s")]


@dataclass(frozen=True, slots=True)
class BoreAim:
    """The smallest and the largest bore aimed at, None where any size serves; what set them."""

    low: Metre | None
    high: Metre | None
    set_by: str


@dataclass(frozen=True, slots=True)
class BoreStep:
    """One tool through the hole. `owned`: yes, no, or unknown where the shelf does not say.

    `stock` is on diameter, None from solid; `spindle` is a speed that this lathe has; `size` is
    None where the tool leaves none that matters.
    """

    process: str
    tool: str
    owned: str
    size: SizeFigure | None
    stock: SizeFigure | None
    spindle: TurnsFigure | None
    feed: str
    form: str
    text: str


@dataclass(frozen=True, slots=True)
class BoreAlternative:
    """Another way to the same bore, whether it can be gone, its chance and why it is not taken."""

    way: str
    owned: str
    possible: bool
    chance: float | None
    reason: str


@dataclass(frozen=True, slots=True)
class BoreRoute:
    """The whole route. `chance` is None where any size serves, and then there is no plug either.

    `gauge` and `ratio`: what measures it, and the window over that gauge's band.
    """

    aims_at: BoreAim
    starts_from: str
    way: str
    steps: tuple[BoreStep, ...]
    chance: Figure | None
    ream_or_bore: str
    go: SizeFigure | None
    not_go: SizeFigure | None
    plug_steps: tuple[Figure, ...]
    gauge: str
    gauge_half_band: SizeFigure | None
    ratio: Figure | None
    measure: str
    before_mounting: str
    alternatives: tuple[BoreAlternative, ...]
    figures: tuple[Figure, ...]
    cautions: tuple[Caution, ...]
    assumed: tuple[Assumption, ...]
    sources: tuple[str, ...]

    @property
    def best_chance(self) -> float | None:
        """The best chance of everything considered, whether it is owned or not."""
        found = [a.chance for a in self.alternatives if a.possible and a.chance is not None]
        return max([*found, self.chance.best]) if self.chance else None
