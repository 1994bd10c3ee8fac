"""The side view of work held in any way but the plain taper: pieces, names, what to turn."""

from __future__ import annotations

from borewright.answer.held_picture import HeldPicture
from borewright.drawing.breaks import broken
from borewright.drawing.callout import place_in_turn
from borewright.drawing.dimension import ROW, SIZE
from borewright.drawing.frame import Scale
from borewright.drawing.held_faces import face_letters
from borewright.drawing.held_frame import HeldFrame, ends, reach
from borewright.drawing.held_labels import LINE, label_items, pointers, turn_height, turn_line
from borewright.drawing.held_look import is_block, sides
from borewright.drawing.held_pieces import held_pieces
from borewright.drawing.held_rows import dimension_rows, row_count
from borewright.drawing.held_shape import widest
from borewright.drawing.measure import text_box
from borewright.drawing.scene import Scene, Text
from borewright.quantities.show import Show

CAPTION = 5.2
_MARGIN = 2.0


def side_room(picture: HeldPicture, scale: Scale) -> float:
    """What the side view takes along the axis, mm."""
    first, last = reach(picture)
    return 1000 * (last - first) * scale.ratio + 2 * _MARGIN


def held_view(
    picture: HeldPicture, leading: str, show: Show, scale: Scale, width: float = 120.0
) -> Scene:
    """The hold from the side, headstock at the left, `width` mm wide on paper.

    `leading` is the letter of the face to the headstock, empty where none is known. The scene's
    `data` carry the scale (mm on paper per mm) so that it can be measured.
    """
    first = ends(picture)[0] - reach(picture)[0]
    left = (width - side_room(picture, scale)) / 2 + _MARGIN + 1000 * first * scale.ratio
    flat = HeldFrame(picture, scale, left, 0.0)
    placed = place_in_turn([p.callout for p in pointers(flat)], 0.0, width, SIZE)
    rows = max((p.row + len(p.callout.lines) for p in placed), default=0)
    over = CAPTION + LINE * rows
    axis = over + 2.0 + max(flat.size(largest_above(picture)), -turn_height(flat) + 1.0)
    frame = HeldFrame(picture, scale, left, axis)
    letters = face_letters(frame, leading)
    foot = max([frame.down(largest_below(picture)), *(text_box(t).bottom for t in letters)]) + 1.5
    items = (
        Text(0.0, 3.2, _caption(scale), SIZE, bold=True, name="side-caption"),
        *held_pieces(frame),
        *turn_line(frame),
        *letters,
        *label_items(placed, pointers(frame), over),
        *dimension_rows(frame, show, foot, width),
    )
    height = foot + ROW * row_count(frame, show) + 1.0
    return Scene(width, height, broken(items), data=(("scale", f"{scale.ratio:.6g}"),))


def _caption(scale: Scale) -> str:
    return f"Side view, {scale.words}, upper half cut open. Headstock at the left."


def largest_above(picture: HeldPicture) -> float:
    """The largest radius drawn over the axis."""
    return _largest(picture, +1)


def largest_below(picture: HeldPicture) -> float:
    """The largest radius drawn under it."""
    return _largest(picture, -1)


def _largest(picture: HeldPicture, side: int) -> float:
    drawn = [g for g in picture.rings if not is_block(g) or side in sides(g.role, picture)]
    return max(widest(g) for g in drawn)
