"""The template of a crown at full size: a gauge hollowed to fit the face, and the form it fits.

One millimetre of the scene is one of the pulley. The gauge stands over the form as it is held to
the face; cut out, the form tries the gauge before the gauge tries the pulley.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import atan2, pi
from typing import Final

from borewright.answer.crown import PulleyCrown
from borewright.drawing.measure import text_width
from borewright.drawing.scene import Arc, Item, Line, LineKind, Path, Point, Scene, Text

GAUGE, FORM, GAP = 20.0, 13.0, 8.0
"""Heights of the two pieces and the room between them, mm."""
LETTERS: Final = 2.9


@dataclass(frozen=True, slots=True)
class Edge:
    """The crown's own line: its ends, its middle, in mm on paper; `h` is 0 for none."""

    left: float
    right: float
    top: float
    h: float

    @property
    def middle(self) -> float:
        return (self.left + self.right) / 2

    @property
    def low(self) -> float:
        """Where the ends are: lower than the middle."""
        return self.top + self.h


def pieces_height(crown: PulleyCrown) -> float:
    """How high the two pieces stand on paper, mm."""
    return GAUGE + GAP + FORM + 2 * 1000 * crown.height


def crown_pieces(crown: PulleyCrown, left: float, top: float) -> tuple[Item, ...]:
    """Both pieces, their upper left corner there."""
    h, right = 1000 * crown.height, left + 1000 * crown.face
    gauge = Edge(left, right, top + GAUGE, h)
    form = Edge(left, right, gauge.low + GAP, h)
    return (
        *_piece(crown, gauge, top, "gauge"),
        *_piece(crown, form, form.low + FORM, "form"),
        *_middle(gauge.middle, top - 3.0, form.low + FORM + 3.0),
        *_name(gauge, top + 7.0, ("gauge: hollow edge to the face", "gauge")),
        *_name(form, form.low + FORM - 5.0, ("form: tries the gauge", "form")),
    )


def template_scene(crown: PulleyCrown, title: str) -> Scene:
    """The pieces alone, as they are cut out of sheet metal: for DXF."""
    width, height = 1000 * crown.face + 20.0, pieces_height(crown) + 20.0
    items = crown_pieces(crown, 10.0, 10.0)
    return Scene(width, height, items, title, data=(("scale", "1"),))


def _piece(crown: PulleyCrown, edge: Edge, back: float, name: str) -> tuple[Item, ...]:
    """One piece between the crown's line and its straight back."""
    if crown.shape == "arc":
        return (*_back(edge, back, name), _arc(crown, edge, name))
    corners = (*taper_points(crown, edge), (edge.right, back), (edge.left, back))
    return (Path(corners, LineKind.VISIBLE, closed=True, name=name),)


def taper_points(crown: PulleyCrown, edge: Edge) -> tuple[Point, ...]:
    """The line of a double taper from left to right."""
    half = 1000 * crown.flat / 2
    tops = (
        ((edge.middle, edge.top),)
        if half == 0.0
        else ((edge.middle - half, edge.top), (edge.middle + half, edge.top))
    )
    return ((edge.left, edge.low), *tops, (edge.right, edge.low))


def _back(edge: Edge, back: float, name: str) -> tuple[Line, ...]:
    corners = (
        (edge.left, edge.low),
        (edge.left, back),
        (edge.right, back),
        (edge.right, edge.low),
    )
    return tuple(Line(*a, *b, name=f"{name}-side") for a, b in pairwise(corners))


def _arc(crown: PulleyCrown, edge: Edge, name: str) -> Arc:
    radius = 1000 * crown.radius
    half = atan2(edge.right - edge.middle, radius - edge.h)
    center = edge.top + radius
    start, end = -pi / 2 - half, -pi / 2 + half
    return Arc(edge.middle, center, radius, start, end, LineKind.VISIBLE, name)


def _middle(x: float, top: float, foot: float) -> tuple[Line, ...]:
    return (Line(x, top, x, foot, LineKind.AXIS, "middle"),)


def _name(edge: Edge, y: float, words: tuple[str, ...]) -> tuple[Text, ...]:
    """What the piece is, in words that fit on half of it; nothing where none do."""
    room = edge.right - edge.middle - 4.0
    fit = next((w for w in words if text_width(w, LETTERS) <= room), None)
    return () if fit is None else (Text(edge.middle + 2.0, y, fit, LETTERS, mask=False),)
