"""What is asked of a soft mandrel."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.quantities.si import Metre

Held = Literal["centers", "chuck"]


@dataclass(frozen=True, slots=True)
class SoftAsked:
    """The bore (m), or the smallest and largest of a batch; lengths and diameters in m.

    `hub` is the outside where a set screw would go, `hub_out` how far that stands out there.
    `outside` None where it is not known. `bar`: a drawn bar as measured; None takes one from stock.
    """

    bore: Metre
    bore_high: Metre
    batch: bool
    length: Metre
    outside: Metre | None
    hub: Metre | None
    hub_out: Metre
    material: str
    units: Literal["inch", "mm"]
    held: Held = "centers"
    as_drawn: bool = False
    bar: Metre | None = None
