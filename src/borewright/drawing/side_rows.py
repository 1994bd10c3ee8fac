"""The rows of dimensions under the side view."""

from __future__ import annotations

from borewright.answer.picture import Layout
from borewright.drawing.dimension import ROW, Span, level_dimension, without_other_unit
from borewright.drawing.frame import Frame, from_large_end
from borewright.drawing.outline import silhouette
from borewright.drawing.scene import Item
from borewright.quantities.show import Show

_ROWS = {
    "press": ("press {} past first touch", "press {}"),
    "work": ("work {} long", "work {}"),
    "face": ("large-end face to face {face} {}", "to face {face} {}"),
    "ground": ("ground length {}", "ground {}"),
    "overall": ("mandrel overall {}", "overall {}"),
}
"""From the nearest row to the farthest: its words, and those for when room is short."""
HEIGHT = ROW * len(_ROWS)
"""What all rows take on paper, mm."""


def dimension_rows(frame: Frame, show: Show, top: float, width: float) -> tuple[Item, ...]:
    """Press, work, face, ground length and overall length, one to a row below `top`."""
    spans = _spans(frame, show)
    return tuple(
        item
        for k, span in enumerate(spans)
        for item in level_dimension(span, top + ROW * (k + 0.5), 0.0, width, _passing(spans[k:]))
    )


def _passing(spans: tuple[Span, ...]) -> tuple[float, ...]:
    """The extension lines that run through the first span's row to those of the others."""
    own = {spans[0].x1, spans[0].x2}
    return tuple(sorted({x for span in spans[1:] for x in (span.x1, span.x2)} - own))


def _spans(frame: Frame, show: Show) -> tuple[Span, ...]:
    ends, sizes = _ends(frame), _lengths(frame.layout)
    face = frame.layout.leading_face
    return tuple(
        Span(*ends[name], _worded(words, face, _shown(name, sizes[name], show)), name)
        for name, words in _ROWS.items()
    )


def _shown(name: str, size: float, show: Show) -> str:
    return show.rule(size) if name in ("press", "face") else show.length(size)


def _worded(words: tuple[str, str], face: str, size: str) -> tuple[str, str]:
    full, short = words
    return full.format(size, face=face), short.format(without_other_unit(size), face=face)


def _ends(frame: Frame) -> dict[str, tuple[float, float, float, float]]:
    """Where each dimension's extension lines begin."""
    layout, steps = frame.layout, silhouette(frame.layout)
    face_x, back_x = frame.z(0.0), frame.z(layout.work_length)
    face, back = frame.down(steps[0][2]), frame.down(steps[-1][2])
    large, small = frame.down(layout.large_end / 2), frame.down(layout.small_end / 2)
    end = frame.down(layout.end_diameter / 2)
    return {
        "press": (face_x, face, frame.x(layout.touch.best), frame.axis),
        "work": (face_x, face, back_x, back),
        "face": (frame.left, end, face_x, face),
        "ground": (frame.x(layout.ground_length), large, frame.x(0.0), small),
        "overall": (frame.left, end, frame.small_face, end),
    }


def _lengths(layout: Layout) -> dict[str, float]:
    return {
        "press": layout.travel,
        "work": layout.work_length,
        "face": from_large_end(layout, layout.seat.best),
        "ground": layout.ground_length,
        "overall": layout.overall_length,
    }
