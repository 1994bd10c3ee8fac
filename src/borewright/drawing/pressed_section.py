"""The work's section in tinted bands, the mandrel under it, the place of the largest tension."""

from __future__ import annotations

from itertools import pairwise

from borewright.answer.pressed import Place, PressedPicture, PressedShape
from borewright.drawing.dimension import SIZE
from borewright.drawing.pressed_frame import STUB, PressedFrame
from borewright.drawing.scene import (
    Area,
    Circle,
    Hatch,
    Item,
    Line,
    LineKind,
    Path,
    Point,
    Text,
)

WHITEST, DARKEST = 255, 150
"""Gray of the lowest and of the highest band: black words stay readable on either."""

STRAIGHT = 0.015
"""A point this near (mm) to the line between its neighbours is left out."""

DOT = 0.9
"""Radius of the spot that marks the largest tension, mm."""

_LIFT = 3.4
"""From the inner edge of a face up to its letter, mm: clear of the mandrel's end."""

_OTHER = {"A": "B", "B": "A"}


def tint(number: int, count: int) -> str:
    """The gray of a band.

    >>> tint(1, 6), tint(6, 6)
    ('#ffffff', '#969696')
    """
    share = (number - 1) / max(1, count - 1)
    gray = round(WHITEST + (DARKEST - WHITEST) * share)
    return f"#{gray:02x}{gray:02x}{gray:02x}"


def section_items(
    frame: PressedFrame, picture: PressedPicture, shape: PressedShape
) -> tuple[Item, ...]:
    """Mandrel, bands, contour lines and the work's edges, in order of painting."""
    return (
        *_mandrel(frame, picture, shape),
        *_tints(frame, shape),
        *_contours(frame, shape),
        *_edges(frame, shape),
        _spot(frame, picture),
    )


def face_items(
    frame: PressedFrame, picture: PressedPicture, shape: PressedShape
) -> tuple[Text, ...]:
    """The letters A and B beside the faces, over their inner edge."""
    places = [place for outline in shape.tints[0].outlines for place in outline]
    left, right = min(z for z, _ in places), max(z for z, _ in places)
    leading = picture.leading_face
    near, far = (frame.y(min(r for z, r in places if z == face)) - _LIFT for face in (left, right))
    return (
        Text(frame.x(left) - 1.2, near, leading, SIZE + 0.4, "end", bold=True, name="face-leading"),
        Text(frame.x(right) + 1.2, far, _OTHER[leading], SIZE + 0.4, bold=True, name="face-far"),
    )


def straightened(line: tuple[Point, ...], within: float = STRAIGHT) -> tuple[Point, ...]:
    """The line without the points that hardly bend it (Douglas and Peucker, from memory).

    >>> straightened(((0.0, 0.0), (1.0, 0.001), (2.0, 0.0), (2.0, 2.0)))
    ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0))
    """
    keep = {0, len(line) - 1}
    spans = [(0, len(line) - 1)]
    while spans:
        a, b = spans.pop()
        off = [(_off(line[k], line[a], line[b]), k) for k in range(a + 1, b)]
        far, k = max(off, default=(0.0, 0))
        if far > within:
            keep.add(k)
            spans += [(a, k), (k, b)]
    return tuple(line[k] for k in sorted(keep))


def _off(point: Point, a: Point, b: Point) -> float:
    """How far a point is from the line through two others, or from the first where they are one."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    long = (dx * dx + dy * dy) ** 0.5
    if long == 0:
        return float(((point[0] - a[0]) ** 2 + (point[1] - a[1]) ** 2) ** 0.5)
    return float(abs(dx * (point[1] - a[1]) - dy * (point[0] - a[0])) / long)


def _tints(frame: PressedFrame, shape: PressedShape) -> tuple[Area, ...]:
    count = len(shape.tints)
    return tuple(
        Area(
            tuple(straightened(_on_paper(frame, outline)) for outline in band.outlines),
            tint(band.number, count),
            f"band-{band.number}",
        )
        for band in shape.tints
    )


def _contours(frame: PressedFrame, shape: PressedShape) -> tuple[Path, ...]:
    return tuple(
        Path(straightened(_on_paper(frame, line)), LineKind.THIN, name=f"band-{band.number}-from")
        for band in shape.tints
        for line in band.lines
    )


def _on_paper(frame: PressedFrame, line: tuple[Place, ...]) -> tuple[Point, ...]:
    return tuple(frame.at(place) for place in line)


def _edges(frame: PressedFrame, shape: PressedShape) -> tuple[Item, ...]:
    """The outline of the metal; where it is broken off, a wavy line."""
    found: list[Item] = []
    for outline in shape.tints[0].outlines:
        for (z1, r1), (z2, r2) in pairwise((*outline, outline[0])):
            broken = shape.drawn_to is not None and min(r1, r2) >= shape.drawn_to * (1 - 1e-9)
            if broken:
                found.append(_wave(frame.at((z1, r1)), frame.at((z2, r2))))
                continue
            name = "bore-line" if r1 == r2 == frame.bore_radius else "work-edge"
            found.append(Line(*frame.at((z1, r1)), *frame.at((z2, r2)), name=name))
    return tuple(found)


def _wave(a: Point, b: Point) -> Path:
    """A break line: a thin zigzag in the middle of a straight one."""
    (x1, y), (x2, _) = sorted((a, b))
    middle, half = (x1 + x2) / 2, min(2.0, (x2 - x1) / 4)
    points = (
        (x1, y),
        (middle - half, y),
        (middle - half / 2, y - 1.4),
        (middle + half / 2, y + 1.4),
    )
    return Path((*points, (middle + half, y), (x2, y)), LineKind.THIN, name="break-line")


def _mandrel(frame: PressedFrame, picture: PressedPicture, shape: PressedShape) -> tuple[Item, ...]:
    surface = _surface(frame, picture, shape)
    foot = frame.bore_line + frame.depth
    (left, _), (right, _) = surface[0], surface[-1]
    region = (*surface, (right, foot), (left, foot))
    axis = Line(left - 2.0, foot, right + 2.0, foot, LineKind.AXIS, "axis")
    cut = axis if frame.whole_mandrel else _wave((left, foot), (right, foot))
    return (
        Hatch((region,), 2.4, "mandrel-section"),
        Path(surface, name="mandrel-surface"),
        _wave_up(left, surface[0][1], foot),
        _wave_up(right, surface[-1][1], foot),
        cut,
        *_mandrel_words(frame, picture, (left + right) / 2),
    )


def _mandrel_words(frame: PressedFrame, picture: PressedPicture, x: float) -> tuple[Text, ...]:
    """Its name, where there is height enough for it."""
    if frame.depth < 2.2 * SIZE:
        return ()
    y = frame.bore_line + frame.depth / 2 + 0.33 * SIZE
    return (Text(x, y, picture.mandrel, SIZE, "middle", name="mandrel-words"),)


def _wave_up(x: float, top: float, foot: float) -> Path:
    """The upright break line at the mandrel's end."""
    middle = (top + foot) / 2
    half = min(1.6, (foot - top) / 4)
    points = (
        (x, top),
        (x, middle - half),
        (x - 0.9, middle - half / 2),
        (x + 0.9, middle + half / 2),
    )
    return Path((*points, (x, middle + half), (x, foot)), LineKind.THIN, name="mandrel-break")


def _surface(
    frame: PressedFrame, picture: PressedPicture, shape: PressedShape
) -> tuple[Point, ...]:
    """The mandrel's surface from large to small end: on the bore line where it touches."""
    steep = picture.taper * STUB / frame.scale.ratio / 1000
    first, last = shape.gap[0][1], shape.gap[-1][1]
    inside = tuple((frame.x(z), frame.bore_line + frame.slack(gap)) for z, gap in shape.gap)
    left = frame.left - STUB, frame.bore_line + frame.slack(first - steep)
    right_face = max(z for outline in shape.tints[0].outlines for z, _ in outline)
    right = frame.x(right_face) + STUB, frame.bore_line + frame.slack(last + steep)
    faces = (frame.left, inside[0][1]), (frame.x(right_face), inside[-1][1])
    return straightened((left, faces[0], *inside, faces[1], right))


def _spot(frame: PressedFrame, picture: PressedPicture) -> Circle:
    x, y = frame.at((picture.largest.z, picture.largest.r))
    return Circle(x, y, DOT, LineKind.THIN, fill="black", name="largest-tension")
