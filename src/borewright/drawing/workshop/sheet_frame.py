"""Where the part stands on paper, and at which scale."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from borewright.quantities.si import Metre

SCALES: Final = (
    *(10.0, 5.0, 2.0, 1.0),
    *(1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100),
)
"""Those that ISO 5455 recommends, as far as they are wanted here (from memory)."""


@dataclass(frozen=True, slots=True)
class SheetFrame:
    """`left` is where the part's left end stands on paper, `axis` the height of its axis, in mm.

    `scale`: mm on paper for a mm of the part.
    """

    left: float
    axis: float
    scale: float

    def x(self, at: Metre) -> float:
        """Paper x of a place on the axis.

        >>> SheetFrame(10.0, 50.0, 0.5).x(0.1)
        60.0
        """
        return self.left + self.long(at)

    def y(self, radius: Metre) -> float:
        """Paper y of a distance from the axis, + upwards."""
        return self.axis - self.long(radius)

    def long(self, length: Metre) -> float:
        """Paper length of a length of the part."""
        return 1000 * length * self.scale


def scale_words(scale: float) -> str:
    """A scale as it is written on a drawing.

    >>> scale_words(1.0), scale_words(0.2), scale_words(5.0)
    ('1:1', '1:5', '5:1')
    """
    return f"1:{1 / scale:.0f}" if scale < 1 else f"{scale:.0f}:1"
