"""The mandrel between centres, from the side: ground length, ends, centres, what drives it."""

from __future__ import annotations

from math import radians, tan

from borewright.drawing.dimension import SIZE
from borewright.drawing.frame import CENTER_REACH, Frame
from borewright.drawing.measure import text_width
from borewright.drawing.scene import Item, Line, LineKind, Path, Text

_HALF_ANGLE = radians(30.0)
_HOLE = 0.36
"""Mouth of the drawn centre hole, in end diameters (ours: the hole's real size is not stated)."""
HOLDERS = {"collet": (1.15, 0.8), "three-jaw": (1.55, 1.1)}
"""Radius of the drawn body and of what grips, in end diameters, by what drives it (ours)."""
DOG = "dog"
_CONE = 1.0
"""Where the drawn centre turns from cone to cylinder, in end diameters (ours)."""


def mandrel_between_centers(frame: Frame) -> tuple[Item, ...]:
    """The mandrel with its two centres and its axis, in that order of painting."""
    held = frame.layout.driven_by != DOG
    return (
        *(() if held else _center(frame, frame.left, -1, "headstock-center")),
        *_center(frame, frame.small_face, +1, "tailstock-center"),
        *_ends(frame),
        _ground(frame),
        *_center_holes(frame),
    )


def axis_line(frame: Frame) -> Line:
    """The axis, through both centres."""
    reach = frame.size(CENTER_REACH * frame.layout.end_diameter) + 1.5
    return Line(
        frame.left - reach,
        frame.axis,
        frame.small_face + reach,
        frame.axis,
        LineKind.AXIS,
        "axis",
    )


def driver(frame: Frame) -> tuple[Item, ...]:
    """What turns the large end: the dog on it, or the chuck or collet about it."""
    return dog(frame) if frame.layout.driven_by == DOG else holder(frame, frame.layout.driven_by)


def holder(frame: Frame, name: str) -> tuple[Item, ...]:
    """A plain outline of a collet or a three-jaw that grips the large end.

    It reaches over the end as far as a dog is wide, so that the place of the mandrel stays seen.
    """
    end = frame.size(frame.layout.end_diameter)
    nose = frame.left + min(0.8 * frame.size(frame.layout.end_length), 0.9 * end)
    face, back = frame.left - 0.15 * end, frame.left - CENTER_REACH * end
    body, grip = HOLDERS[name]
    return (
        _body(frame, back, face, body * end, name),
        *_jaws(frame, face, nose, grip * end, name),
        _label(frame, back, name),
    )


def holder_depth(frame: Frame) -> float:
    """How far below the axis a collet or three-jaw and its name reach, mm on paper; 0 for a dog."""
    name = frame.layout.driven_by
    return 0.0 if name == DOG else _label_drop(frame, name) + 0.3 * SIZE


def _label(frame: Frame, back: float, name: str) -> Text:
    """Its name under it, as far to the left as the paper lets it."""
    x = max(min(back, frame.left - text_width(name, SIZE) - 1.0), 0.0)
    return Text(x, frame.axis + _label_drop(frame, name), name, SIZE, name=f"{name}-label")


def _label_drop(frame: Frame, name: str) -> float:
    return HOLDERS[name][0] * frame.size(frame.layout.end_diameter) + 1.1 * SIZE


def _body(frame: Frame, back: float, face: float, radius: float, name: str) -> Path:
    y = frame.axis
    corners = ((back, y - radius), (face, y - radius), (face, y + radius), (back, y + radius))
    # The far end is left open: it goes on into its spindle.
    return Path(corners, fill="white", name=f"{name}-body")


def _jaws(frame: Frame, face: float, nose: float, radius: float, name: str) -> tuple[Path, ...]:
    """What grips, above and below the end: from the body's face to its own nose."""
    y, end = frame.axis, frame.size(frame.layout.end_diameter) / 2
    return tuple(
        Path(
            (
                (face, y + way * end),
                (face, y + way * radius),
                (nose, y + way * radius),
                (nose, y + way * end),
            ),
            closed=True,
            fill="white",
            name=f"{name}-grip",
        )
        for way in (-1, +1)
    )


def dog(frame: Frame) -> tuple[Item, ...]:
    """A plain bent-tail dog on the large end, its tail towards the headstock, a screw below."""
    end = frame.size(frame.layout.end_diameter)
    wide = min(0.8 * frame.size(frame.layout.end_length), 0.9 * end)
    if wide <= 0:
        return ()
    middle = frame.left + frame.size(frame.layout.end_length) / 2
    return (_dog_screw(frame, middle, wide, end), _dog_body(frame, middle, wide, end))


def _ground(frame: Frame) -> Path:
    layout = frame.layout
    large, small = layout.large_end / 2, layout.small_end / 2
    left, right = frame.x(layout.ground_length), frame.x(0.0)
    corners = (
        (left, frame.up(large)),
        (right, frame.up(small)),
        (right, frame.down(small)),
        (left, frame.down(large)),
    )
    return Path(corners, closed=True, fill="white", name="mandrel-ground")


def _ends(frame: Frame) -> tuple[Path, Path]:
    spans = (
        (frame.left, frame.x(frame.layout.ground_length), "mandrel-large-end"),
        (frame.x(0.0), frame.small_face, "mandrel-small-end"),
    )
    one, two = (_box(frame, a, b, frame.layout.end_diameter / 2, name) for a, b, name in spans)
    return one, two


def _box(frame: Frame, left: float, right: float, radius: float, name: str) -> Path:
    top, bottom = frame.up(radius), frame.down(radius)
    corners = ((left, top), (right, top), (right, bottom), (left, bottom))
    return Path(corners, closed=True, fill="white", name=name)


def _center(frame: Frame, face: float, way: int, name: str) -> tuple[Item, ...]:
    end = frame.size(frame.layout.end_diameter)
    mouth, full = _HOLE * end / 2, _CONE * end / 2
    shoulder = face + way * (full - mouth) / tan(_HALF_ANGLE)
    back = face + way * CENTER_REACH * end
    y = frame.axis
    cone = ((face, y - mouth), (shoulder, y - full), (back, y - full))
    mirrored = tuple((px, 2 * y - py) for px, py in reversed(cone))
    # The far end is left open: the centre goes on into its spindle.
    return (Path((*reversed(cone), *reversed(mirrored)), name=name),)


def _center_holes(frame: Frame) -> tuple[Item, ...]:
    end = frame.size(frame.layout.end_diameter)
    mouth = _HOLE * end / 2
    depth = mouth / tan(_HALF_ANGLE)
    y = frame.axis
    return tuple(
        Path(((face, y - mouth), (face - way * depth, y), (face, y + mouth)), LineKind.HIDDEN)
        for face, way in ((frame.left, -1), (frame.small_face, +1))
    )


def _dog_body(frame: Frame, middle: float, wide: float, end: float) -> Path:
    y, half = frame.axis, wide / 2
    high, low, bar = y - 1.55 * end, y + 0.95 * end, 0.45 * wide
    tip = frame.left - 0.75 * end
    corners = (
        (tip, high),
        (middle + half, high),
        (middle + half, low),
        (middle - half, low),
        (middle - half, high + bar),
        (tip, high + bar),
    )
    return Path(corners, closed=True, fill="white", name="dog")


def _dog_screw(frame: Frame, middle: float, wide: float, end: float) -> Path:
    y, half = frame.axis, 0.2 * wide
    top, bottom = y + 0.9 * end, y + 1.35 * end
    corners = ((middle - half, top), (middle + half, top), (middle + half, bottom))
    return Path((*corners, (middle - half, bottom)), closed=True, fill="white", name="dog-screw")
