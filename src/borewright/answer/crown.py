"""The crown of one flat-belt pulley: how high, by which rule, its form, and how it is cut."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.mechanics.crown_steps import Stairs
from borewright.quantities.si import Metre, Radian
from borewright.reference.crowns import Crown

Dial = Literal["radius", "diameter", "unknown"]
Shape = Literal["taper", "arc"]


@dataclass(frozen=True, slots=True)
class Stepped:
    """The crown stepped off by hand. `stairs` None: too slight for this dial, so file it.

    `step` of the saddle, `division` of the cross slide's dial as it is marked, whatever it counts.
    """

    step: Metre
    division: Metre
    dial: Dial
    stairs: Stairs | None

    @property
    def per_radius(self) -> int:
        """How much the dial says for one of radius; a dial not known is read as radius."""
        return 2 if self.dial == "diameter" else 1


@dataclass(frozen=True, slots=True)
class PulleyCrown:
    """A crown of `height` on radius; `diameter` is at the middle, which stays as it is.

    `rule` is the one taken, or None where the height was stated; `rules` are all that say something
    of this pulley, lowest first, and `recommended` is one of them. `angle` is that of a double
    taper with this `flat` in the middle, `radius` that of an arc over the whole face: both are
    given, `shape` says which is asked for. `slide_reading` is what an indicator reads over
    `slide_travel` of the top slide.
    """

    diameter: Metre
    face: Metre
    height: Metre
    rule: Crown | None
    rules: tuple[Crown, ...]
    recommended: Crown
    shape: Shape
    flat: Metre
    angle: Radian
    radius: Metre
    slide_travel: Metre
    slide_reading: Metre
    stepped: Stepped

    @property
    def edge_diameter(self) -> Metre:
        return self.diameter - 2 * self.height
