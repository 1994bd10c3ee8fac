"""From metres on the machine to millimetres on paper: scale, and where things stand.

In side views the headstock is at the left, so the mandrel's large end is at the left and `x`
(from the small end of the ground length) runs to the left.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from borewright.answer.picture import Layout

CENTER_REACH = 1.15
"""How far a centre is drawn beyond the mandrel's end, in end diameters (ours)."""


@dataclass(frozen=True, slots=True)
class Scale:
    """A drawing scale.

    >>> Scale(1, 2.5).words, Scale(1, 2.5).ratio
    ('scale 1:2.5', 0.4)
    """

    paper: float
    part: float

    @property
    def ratio(self) -> float:
        """Millimetres on paper per millimetre of the part."""
        return self.paper / self.part

    @property
    def words(self) -> str:
        return f"scale {self.paper:g}:{self.part:g}"


SCALES = tuple(
    Scale(paper, part)
    for paper, part in (
        *((5, 1), (4, 1), (3, 1), (2, 1), (1.5, 1), (1, 1), (1, 1.5), (1, 2), (1, 2.5), (1, 3)),
        *((1, 4), (1, 5), (1, 6), (1, 8), (1, 10), (1, 15), (1, 20), (1, 30), (1, 50), (1, 100)),
    )
)
"""Scales on offer, largest first. Those of ISO 5455 (from memory) with steps between (ours)."""


def largest_scale(fits: Callable[[Scale], bool]) -> Scale:
    """The largest scale that fits; the smallest on offer when none does.

    >>> largest_scale(lambda scale: 127 * scale.ratio <= 70).words
    'scale 1:2'
    """
    return next((scale for scale in SCALES if fits(scale)), SCALES[-1])


def centers_length(layout: Layout) -> float:
    """Length of the side view in metres: the mandrel and a centre at each end."""
    return layout.overall_length + 2 * CENTER_REACH * layout.end_diameter


def from_large_end(layout: Layout, x: float) -> float:
    """What a rule reads from the mandrel's large-end face to `x`, metres."""
    return layout.ground_length + layout.end_length - x


@dataclass(frozen=True, slots=True)
class Frame:
    """Where a side view stands on paper: `left` is its large-end face, `axis` its line."""

    layout: Layout
    scale: Scale
    left: float
    axis: float

    def size(self, metres: float) -> float:
        """A length on paper, mm."""
        return 1000 * metres * self.scale.ratio

    def x(self, x: float) -> float:
        """Where the position `x` of the mandrel stands."""
        return self.left + self.size(from_large_end(self.layout, x))

    def z(self, z: float) -> float:
        """Where the depth `z` behind the leading face stands, the work at its best seat."""
        return self.x(self.layout.seat.best - z)

    def up(self, radius: float) -> float:
        """The height on paper of a radius above the axis."""
        return self.axis - self.size(radius)

    def down(self, radius: float) -> float:
        """The height on paper of a radius below the axis."""
        return self.axis + self.size(radius)

    @property
    def small_face(self) -> float:
        """The mandrel's face at the small end."""
        return self.left + self.size(self.layout.overall_length)
