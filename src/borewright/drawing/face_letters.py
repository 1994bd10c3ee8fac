"""The letters A and B beside the two faces of the work in the side view."""

from __future__ import annotations

from borewright.drawing.dimension import SIZE
from borewright.drawing.frame import Frame
from borewright.drawing.measure import ASCENT
from borewright.drawing.outline import silhouette
from borewright.drawing.scene import Item, Text

_GAP = 0.9
_ROOM = 2.0 + ASCENT * SIZE + 1.0
"""Height between mandrel and rim that a letter beside a face needs, mm."""
_OTHER = {"A": "B", "B": "A"}


def face_letters(frame: Frame) -> tuple[Item, ...]:
    """The leading face's letter left of it, the other's right of the far face.

    Below the axis, between mandrel and rim; under the corner of the face where the rim is too near.
    """
    steps, leading = silhouette(frame.layout), frame.layout.leading_face
    left, right = frame.z(0.0) - _GAP, frame.z(frame.layout.work_length) + _GAP
    near, far = (_height(frame, steps[k][2]) for k in (0, -1))
    return (
        Text(left, near, leading, SIZE, "end", bold=True, name="face-leading"),
        Text(right, far, _OTHER.get(leading, ""), SIZE, bold=True, name="face-far"),
    )


def _height(frame: Frame, radius: float) -> float:
    mandrel, rim = frame.down(frame.layout.large_end / 2), frame.down(radius)
    if rim - mandrel >= _ROOM:
        return (mandrel + 2.0 + rim + ASCENT * SIZE) / 2
    return rim + 0.8 + ASCENT * SIZE


def letter_depth(frame: Frame) -> float:
    """How far under the axis the letters reach, mm."""
    steps = silhouette(frame.layout)
    return max(_height(frame, steps[k][2]) for k in (0, -1)) + 0.3 - frame.axis
