"""The side view: work on its mandrel between centres, with its limits and dimensions.

Labels on stems stand above (what the mandrel and the seat are) and below (where the tool must
stop); under them one dimension to a row.
"""

from __future__ import annotations

from borewright.answer.records import Layout
from borewright.drawing.callout import Callout, Placed, place
from borewright.drawing.dimension import ROW, SIZE, Span, level_dimension, without_other_unit
from borewright.drawing.frame import Frame, Scale, centers_length, from_large_end, largest_scale
from borewright.drawing.mandrel_view import axis_line, dog, mandrel_between_centers
from borewright.drawing.outline import outside, silhouette
from borewright.drawing.scene import Item, Line, LineKind, Scene, Text
from borewright.drawing.work_view import slip_lines, work_half_section
from borewright.quantities.show import Show

LINE = 4.3
"""From one line of label to the next, mm."""
CAPTION = 5.2


def side_view(
    layout: Layout, show: Show, scale: Scale | None = None, width: float = 120.0
) -> Scene:
    """Work on its mandrel between centres, headstock at the left, `width` mm wide on paper.

    The scene's `data` carry the scale (mm on paper per mm) so that it can be measured.
    """
    scale = scale or largest_scale(lambda s: 1000 * centers_length(layout) * s.ratio <= width - 2.0)
    left = (width - scale.ratio * 1000 * layout.overall_length) / 2
    flat = Frame(layout, scale, left, 0.0)
    up = place(_above(flat, show), 0.0, width, SIZE)
    down = place(_below(flat, show), 0.0, width, SIZE)
    half = max(_half_height(layout) * 1000 * scale.ratio, 1.0)
    axis = CAPTION + LINE * _rows(up) + 2.5 + half
    frame = Frame(layout, scale, left, axis)
    foot = axis + half + 2.5
    rows = foot + LINE * _rows(down) + 1.0
    items = (
        *_captions(scale),
        *_picture(frame),
        *_labels(up, frame, axis - half - 2.5, -1),
        *_labels(down, frame, foot, +1),
        *_dimensions(frame, show, rows, width),
    )
    height = rows + ROW * len(_spans(frame, show)) + 1.0
    return Scene(width, height, items, data=(("scale", f"{scale.ratio:.6g}"),))


def _half_height(layout: Layout) -> float:
    return max(outside(layout) / 2, 1.6 * layout.end_diameter, layout.large_end / 2)


def _rows(placed: tuple[Placed, ...]) -> int:
    return max((p.row + len(p.callout.lines) for p in placed), default=0)


def _captions(scale: Scale) -> tuple[Item, ...]:
    words = f"Side view, {scale.words}, upper half cut open. Headstock at the left."
    return (Text(0.0, 3.2, words, SIZE, bold=True, name="side-caption"),)


def _picture(frame: Frame) -> tuple[Item, ...]:
    return (
        *mandrel_between_centers(frame),
        *work_half_section(frame),
        *dog(frame),
        *_touch_ticks(frame),
        *slip_lines(frame),
        axis_line(frame),
    )


def _touch_ticks(frame: Frame) -> tuple[Item, ...]:
    """Short dashed lines on the mandrel where the work first touches, low and high."""
    touch = frame.layout.touch
    top, foot = frame.up(frame.layout.small_end / 2), frame.axis
    return tuple(
        Line(frame.x(x), top, frame.x(x), foot, LineKind.HIDDEN, name)
        for x, name in ((touch.low, "touch-low"), (touch.high, "touch-high"))
    )


def _above(frame: Frame, show: Show) -> tuple[Callout, ...]:
    layout, seat = frame.layout, frame.layout.seat
    near, far = from_large_end(layout, seat.high), from_large_end(layout, seat.low)
    limits = (
        f"face {layout.leading_face} may sit between these two lines,",
        f"{show.band(near, far, 'length')} from the large-end face",
    )
    ends = (
        (f"large end {show.bore(layout.large_end)}", layout.ground_length, "large-end"),
        (f"small end {show.bore(layout.small_end)}", 0.0, "small-end"),
    )
    return (
        Callout(limits, (frame.x(seat.high), frame.x(seat.low)), "seat"),
        *(Callout((words,), (frame.x(x),), name) for words, x, name in ends),
    )


def _below(frame: Frame, show: Show) -> tuple[Callout, ...]:
    layout = frame.layout
    stops = (
        ("right", layout.tool_limit_large, "tool-limit-large"),
        ("left", layout.tool_limit_small, "tool-limit-small"),
    )
    return tuple(
        Callout(
            (f"keep the tool {side} of this line,", f"at {show.length(from_large_end(layout, x))}"),
            (frame.x(x),),
            name,
        )
        for side, x, name in stops
    )


def _labels(placed: tuple[Placed, ...], frame: Frame, start: float, way: int) -> tuple[Item, ...]:
    """Words in rows going away from the view (`way` -1 up, +1 down), stems down to the mandrel."""
    return tuple(
        item
        for label in placed
        for item in (*_stems(label, frame, start, way), *_words(label, start, way))
    )


def _stems(label: Placed, frame: Frame, start: float, way: int) -> tuple[Item, ...]:
    name = label.callout.name
    kind = LineKind.THIN if name.endswith("-end") else LineKind.LIMIT
    radius = frame.layout.large_end / 2
    surface = frame.up(radius) if way < 0 else frame.down(radius)
    # The two limit lines cross the whole mandrel: the eye must find them from both sides.
    reach = frame.down(radius) + 1.5 if name == "seat" else surface
    begin = start + way * LINE * label.row
    names = ("seat-high", "seat-low") if name == "seat" else (name,)
    return tuple(
        Line(x, begin, x, reach, kind, part)
        for x, part in zip(label.callout.stems, names, strict=True)
    )


def _words(label: Placed, start: float, way: int) -> tuple[Item, ...]:
    lines = label.callout.lines if way > 0 else tuple(reversed(label.callout.lines))
    shift = 0.95 * SIZE if way > 0 else -0.25 * SIZE
    return tuple(
        Text(label.left, start + way * LINE * (label.row + k) + shift, words, SIZE)
        for k, words in enumerate(lines)
    )


def _dimensions(frame: Frame, show: Show, rows: float, width: float) -> tuple[Item, ...]:
    return tuple(
        item
        for k, span in enumerate(_spans(frame, show))
        for item in level_dimension(span, rows + ROW * (k + 0.5), 0.0, width)
    )


def _spans(frame: Frame, show: Show) -> tuple[Span, ...]:
    """From the nearest row to the farthest: press, work, face, ground length, overall."""
    layout = frame.layout
    steps, face_x = silhouette(layout), frame.z(0.0)
    face, back = frame.down(steps[0][2]), frame.down(steps[-1][2])
    large, small = frame.down(layout.large_end / 2), frame.down(layout.small_end / 2)
    end = frame.down(layout.end_diameter / 2)
    large_x, small_x = frame.x(layout.ground_length), frame.x(0.0)
    size = {name: show.length(metres) for name, metres in _lengths(layout).items()}
    rows = (
        (
            face_x,
            face,
            frame.x(layout.touch.best),
            frame.axis,
            "press {} past first touch",
            "press",
        ),
        (face_x, face, frame.z(layout.work_length), back, "work {} long", "work"),
        (
            frame.left,
            end,
            face_x,
            face,
            f"large-end face to face {frame.layout.leading_face} {{}}",
            "face",
        ),
        (large_x, large, small_x, small, "ground length {}", "ground"),
        (frame.left, end, frame.small_face, end, "mandrel overall {}", "overall"),
    )
    return tuple(
        Span(
            x1,
            y1,
            x2,
            y2,
            words.format(size[name]),
            words.format(without_other_unit(size[name])),
            name,
        )
        for x1, y1, x2, y2, words, name in rows
    )


def _lengths(layout: Layout) -> dict[str, float]:
    return {
        "press": layout.travel,
        "work": layout.work_length,
        "face": from_large_end(layout, layout.seat.best),
        "ground": layout.ground_length,
        "overall": layout.overall_length,
    }
