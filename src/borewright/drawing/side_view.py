"""The side view: work on its mandrel between centres, with its limits and dimensions.

Labels on stems stand above, dimensions below, one to a row.
"""

from __future__ import annotations

from borewright.answer.picture import Layout
from borewright.drawing.breaks import broken
from borewright.drawing.callout import MOST_ROWS, Placed, place_within, stacked
from borewright.drawing.dimension import SIZE
from borewright.drawing.face_letters import face_letters, letter_depth
from borewright.drawing.frame import CENTER_REACH, Frame, Scale, centers_length, largest_scale
from borewright.drawing.mandrel_view import axis_line, driver, holder_depth, mandrel_between_centers
from borewright.drawing.outline import outside
from borewright.drawing.scene import Item, Line, LineKind, Scene, Text
from borewright.drawing.side_labels import LINE, label_items, labels_over, rows_of
from borewright.drawing.side_rows import HEIGHT, dimension_rows
from borewright.drawing.work_view import slip_lines, work_half_section
from borewright.quantities.show import Show

_WORDS = 46.0
"""Room wished for at one side of the mandrel, where words of short dimensions go, mm."""
CAPTION = 5.2


def side_view(
    layout: Layout, show: Show, scale: Scale | None = None, width: float = 120.0
) -> Scene:
    """Work on its mandrel between centres, headstock at the left, `width` mm wide on paper.

    The scene's `data` carry the scale (mm on paper per mm) so that it can be measured.
    """
    scale = scale or largest_scale(lambda s: 1000 * centers_length(layout) * s.ratio <= width - 2.0)
    flat, labels = _fewest_rows(layout, show, scale, width)
    half = max(_half_height(layout) * 1000 * scale.ratio, 1.0)
    over = CAPTION + LINE * rows_of(labels)
    axis = over + 2.5 + half
    frame = Frame(layout, scale, flat.left, axis)
    rows = axis + max(half, letter_depth(flat), holder_depth(flat)) + 2.0
    items = (
        *_captions(scale, layout.at_left),
        *_picture(frame),
        *face_letters(frame),
        *label_items(labels, frame, over),
        *dimension_rows(frame, show, rows, width),
    )
    height = rows + HEIGHT + 1.0
    return Scene(width, height, broken(items), data=(("scale", f"{scale.ratio:.6g}"),))


def _fewest_rows(
    layout: Layout, show: Show, scale: Scale, width: float
) -> tuple[Frame, tuple[Placed, ...]]:
    """The place between left and right, and the labels, that take the fewest rows."""
    frames = [Frame(layout, scale, left, 0.0) for left in _lefts(layout, scale, width)]
    tries = [
        (frame, labels_over(frame, show, narrow)) for narrow in (False, True) for frame in frames
    ]
    for rows in range(1, MOST_ROWS + 1):
        for frame, labels in tries:
            placed = place_within(labels, 0.0, width, SIZE, rows)
            if placed is not None:
                return frame, placed
    return tries[0][0], stacked(tries[0][1], 0.0, width, SIZE)


def _lefts(layout: Layout, scale: Scale, width: float) -> tuple[float, ...]:
    """Where the large-end face may stand: in the middle, or with more room for words aside."""
    overall = 1000 * layout.overall_length * scale.ratio
    reach = 1000 * CENTER_REACH * layout.end_diameter * scale.ratio + 1.0
    middle, last = (width - overall) / 2, width - overall - reach
    wanted = (middle, width - overall - _WORDS, _WORDS, (middle + last) / 2)
    return tuple(max(min(reach, middle), min(left, last)) for left in wanted)


def _half_height(layout: Layout) -> float:
    return max(outside(layout) / 2, 1.6 * layout.end_diameter, layout.large_end / 2)


def _captions(scale: Scale, left: str) -> tuple[Item, ...]:
    words = f"Side view, {scale.words}, upper half cut open. {left} at the left."
    return (Text(0.0, 3.2, words, SIZE, bold=True, name="side-caption"),)


def _picture(frame: Frame) -> tuple[Item, ...]:
    return (
        *mandrel_between_centers(frame),
        *work_half_section(frame),
        *driver(frame),
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
