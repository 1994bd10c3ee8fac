"""The primitives every picture is made of: frozen, in millimetres on paper, y downwards.

A scene knows nothing of mandrels, and nothing of SVG. `name` marks a part so that a test, a web
page or another output can find it. `moved` shifts any primitive, which is how views are composed.

Line kinds and their weights follow the line types of ISO 128-2 (numbers from memory): 01.1 thin
continuous, 01.2 thick continuous, 02.1 dashed, 04.1 long-dashed dotted, 05.1 long-dashed
double-dotted.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TypeAlias

Point: TypeAlias = tuple[float, float]


class LineKind(StrEnum):
    """What a line means, hence how it is drawn."""

    VISIBLE = "visible"
    EDGE = "edge"
    THIN = "thin"
    HIDDEN = "hidden"
    AXIS = "axis"
    LIMIT = "limit"
    TRACE = "trace"
    LONG = "long"
    FAINT = "faint"
    BLANK = "blank"

    @property
    def weight(self) -> float:
        """Width in mm on paper: 0.5 for visible edges, 0.35 for those of what holds the work.

        Of a chart: 0.35 for its lines after the first, 0.09 for what the eye follows to the scale.
        The rest 0.25, 0 for no line at all.
        """
        return _WEIGHTS.get(self, 0.25)

    @property
    def dashes(self) -> tuple[float, ...]:
        """Dash and gap lengths in mm on paper; empty for a continuous line."""
        return _DASHES.get(self, ())


_WEIGHTS = {
    LineKind.VISIBLE: 0.5,
    LineKind.EDGE: 0.35,
    LineKind.TRACE: 0.35,
    LineKind.LONG: 0.35,
    LineKind.FAINT: 0.09,
    LineKind.BLANK: 0.0,
}
_DASHES: dict[LineKind, tuple[float, ...]] = {
    LineKind.HIDDEN: (1.6, 0.9),
    LineKind.AXIS: (6.0, 0.8, 0.5, 0.8),
    LineKind.LIMIT: (3.6, 0.7, 0.4, 0.7, 0.4, 0.7),
    LineKind.TRACE: (4.5, 0.8, 0.6, 0.8),
    LineKind.LONG: (6.0, 1.4),
}


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    x1: float
    y1: float
    x2: float
    y2: float
    kind: LineKind = LineKind.VISIBLE
    name: str = ""

    def moved(self, dx: float, dy: float) -> Line:
        return replace(self, x1=self.x1 + dx, y1=self.y1 + dy, x2=self.x2 + dx, y2=self.y2 + dy)


@dataclass(frozen=True, slots=True)
class Path:
    """A polyline, closed or open; `fill` is "none", "white" or "black"."""

    points: tuple[Point, ...]
    kind: LineKind = LineKind.VISIBLE
    closed: bool = False
    fill: str = "none"
    name: str = ""

    def moved(self, dx: float, dy: float) -> Path:
        return replace(self, points=_shifted(self.points, dx, dy))


@dataclass(frozen=True, slots=True)
class Circle:
    """A full circle."""

    cx: float
    cy: float
    r: float
    kind: LineKind = LineKind.VISIBLE
    fill: str = "none"
    name: str = ""

    def moved(self, dx: float, dy: float) -> Circle:
        return replace(self, cx=self.cx + dx, cy=self.cy + dy)


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of a circle from `start` to `end`, radians clockwise on paper from three o'clock."""

    cx: float
    cy: float
    r: float
    start: float
    end: float
    kind: LineKind = LineKind.THIN
    name: str = ""

    def moved(self, dx: float, dy: float) -> Arc:
        return replace(self, cx=self.cx + dx, cy=self.cy + dy)


@dataclass(frozen=True, slots=True)
class Arrow:
    """A filled arrow head: its tip, and the way it points (radians, clockwise on paper from +x)."""

    x: float
    y: float
    angle: float
    size: float = 2.2
    name: str = ""

    def moved(self, dx: float, dy: float) -> Arrow:
        return replace(self, x=self.x + dx, y=self.y + dy)


@dataclass(frozen=True, slots=True)
class Hatch:
    """A region, given by closed contours (even-odd), filled with 45 degree lines.

    They rise to the right, or fall where `falling`.
    """

    contours: tuple[tuple[Point, ...], ...]
    spacing: float = 1.5
    name: str = ""
    falling: bool = False
    kind: LineKind = LineKind.THIN

    def moved(self, dx: float, dy: float) -> Hatch:
        return replace(self, contours=tuple(_shifted(c, dx, dy) for c in self.contours))


@dataclass(frozen=True, slots=True)
class Area:
    """A region, given by closed contours (even-odd), filled with a tint and without an edge."""

    contours: tuple[tuple[Point, ...], ...]
    fill: str
    name: str = ""

    def moved(self, dx: float, dy: float) -> Area:
        return replace(self, contours=tuple(_shifted(c, dx, dy) for c in self.contours))


@dataclass(frozen=True, slots=True)
class Text:
    """One line of words; `x, y` is the base line at `anchor` (start, middle or end).

    `mask` breaks the lines behind the words, as a draughtsman breaks an extension line.
    """

    x: float
    y: float
    text: str
    size: float = 3.55
    anchor: str = "start"
    bold: bool = False
    mask: bool = True
    rotation: float = 0.0
    name: str = ""

    def moved(self, dx: float, dy: float) -> Text:
        return replace(self, x=self.x + dx, y=self.y + dy)


@dataclass(frozen=True, slots=True)
class Dimension:
    """A dimension: what is between two points, level or upright, with its line and its words.

    `line` is the y of a level dimension line, the x of an upright one. `x, y` is the middle of the
    words' base line; those of an upright one read from below upwards. `bare`: without extension
    lines, where the line itself stands on the part. A DXF keeps it as a dimension that measures.
    """

    x1: float
    y1: float
    x2: float
    y2: float
    line: float
    text: str
    x: float
    y: float
    upright: bool = False
    bare: bool = False
    size: float = 3.1
    level_words: bool = False
    name: str = ""

    @property
    def length(self) -> float:
        """What is measured, mm on paper."""
        return abs(self.y2 - self.y1) if self.upright else abs(self.x2 - self.x1)

    def moved(self, dx: float, dy: float) -> Dimension:
        return replace(
            self,
            x1=self.x1 + dx,
            y1=self.y1 + dy,
            x2=self.x2 + dx,
            y2=self.y2 + dy,
            line=self.line + (dx if self.upright else dy),
            x=self.x + dx,
            y=self.y + dy,
        )


Item: TypeAlias = Line | Path | Circle | Arc | Arrow | Hatch | Area | Text | Dimension


@dataclass(frozen=True, slots=True)
class Scene:
    """A picture: its size on paper in mm, its parts, and words for who cannot see it.

    `data` are facts about the whole picture, such as its scale.

    >>> Scene(10.0, 5.0, (Line(0, 0, 1, 1),)).moved(2.0, 3.0)[0].x2
    3.0
    """

    width: float
    height: float
    items: tuple[Item, ...]
    title: str = ""
    description: str = ""
    data: tuple[tuple[str, str], ...] = ()

    def moved(self, dx: float, dy: float) -> tuple[Item, ...]:
        """The parts, shifted, to be put into a larger scene."""
        return tuple(item.moved(dx, dy) for item in self.items)


def _shifted(points: tuple[Point, ...], dx: float, dy: float) -> tuple[Point, ...]:
    return tuple((x + dx, y + dy) for x, y in points)
