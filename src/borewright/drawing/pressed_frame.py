"""Where the picture of the pressed joint stands on paper: scale, exaggeration, heights."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.pressed import PressedPicture, PressedShape
from borewright.drawing.frame import Scale, largest_scale
from borewright.drawing.scene import Point

WIDTH = 108.0
"""Width of the picture, mm: narrow, so that its letters can be read on a phone."""

LEFT, RIGHT = 19.0, 13.0
"""Room beside the work: for the chart's numbers, the mandrel's ends, the letters of faces."""

TALLEST = 90.0
"""Most height of the work's wall on paper, mm."""

DEEPEST = 17.0
"""Most depth of mandrel drawn under the bore line, mm; a thicker one is broken off."""

STUB = 9.0
"""How far the mandrel is drawn past either face, mm."""

LIFT = 2.2
"""How high its taper may rise there, mm."""

STEEP = tuple(figure * 10.0**power for power in range(1, 6) for figure in (1, 2, 5))


@dataclass(frozen=True, slots=True)
class PressedFrame:
    """`left` is where the first of the work stands on paper, `bore_line` the height of the bore."""

    scale: Scale
    left: float
    bore_line: float
    bore_radius: float
    start: float
    times: float

    def size(self, metres: float) -> float:
        """A length on paper, mm."""
        return 1000 * metres * self.scale.ratio

    def x(self, z: float) -> float:
        """Where a depth (m) behind the leading face stands."""
        return self.left + self.size(z - self.start)

    def y(self, r: float) -> float:
        """The height of a radius (m)."""
        return self.bore_line - self.size(r - self.bore_radius)

    def at(self, place: Point) -> Point:
        """A place (z, r) of the section."""
        return self.x(place[0]), self.y(place[1])

    def slack(self, gap: float) -> float:
        """How far under the bore line a gap on diameter (m) is drawn, exaggerated."""
        return self.size(gap / 2) * self.times

    @property
    def depth(self) -> float:
        """How much of the mandrel is drawn under the bore line, mm."""
        return min(self.size(self.bore_radius), DEEPEST)

    @property
    def whole_mandrel(self) -> bool:
        """Whether it is drawn down to its axis."""
        return self.size(self.bore_radius) <= DEEPEST


def frame_for(picture: PressedPicture, shape: PressedShape, top: float) -> PressedFrame:
    """The largest scale that leaves room; the work's top edge stands at `top`."""
    places = [place for outline in shape.tints[0].outlines for place in outline]
    start, end = min(z for z, _ in places), max(z for z, _ in places)
    bore, outside = picture.bore / 2, max(r for _, r in places)

    def fits(scale: Scale) -> bool:
        wide, high = 1000 * (end - start), 1000 * (outside - bore)
        room = WIDTH - LEFT - RIGHT
        return wide * scale.ratio <= room and high * scale.ratio <= TALLEST

    scale = largest_scale(fits)
    middle = (WIDTH - LEFT - RIGHT - 1000 * (end - start) * scale.ratio) / 2
    line = top + 1000 * (outside - bore) * scale.ratio
    return PressedFrame(scale, LEFT + middle, line, bore, start, _times(picture, shape, scale))


def _times(picture: PressedPicture, shape: PressedShape, scale: Scale) -> float:
    """The largest round exaggeration that keeps the mandrel's ends within LIFT."""
    rise = picture.taper * STUB / scale.ratio / 1000
    gap = shape.gap[-1][1] if shape.gap else 0.0
    most = 1000 * (rise + gap) / 2 * scale.ratio
    return max((n for n in STEEP if most * n <= LIFT), default=1.0)
