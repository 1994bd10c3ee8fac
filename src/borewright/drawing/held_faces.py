"""The letters A and B by the two faces of held work in the side view."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.held_picture import HeldRing, Role
from borewright.drawing.dimension import SIZE
from borewright.drawing.held_frame import HeldFrame, work_ends
from borewright.drawing.held_look import is_block, sides
from borewright.drawing.held_shape import Corner, corners, is_plain, of_role, widest
from borewright.drawing.measure import ASCENT, Box, text_box
from borewright.drawing.scene import Text

_GAP = 0.9
_AIR = 1.2
_NEAR = 0.4
"""A letter stands no nearer than this to an edge that it does not belong to, mm."""
_STEP = 0.5
"""Heights at which a place is looked for, mm."""
_SAMPLES = 100
"""Places along a slanting edge where a letter is looked for."""
_TWO_LETTERS = 8.0
"""Work shorter than this on paper has no room for its letters inside, mm."""
_OTHER = {"A": "B", "B": "A"}


def face_letters(frame: HeldFrame, leading: str) -> tuple[Text, ...]:
    """A and B by the faces, below the axis: beside the face on bare paper, else inside the work.

    Else on the blank of what the face rests on; last, under the corner of the face. None where the
    leading face is not known.
    """
    if leading not in _OTHER:
        return ()
    first, last = work_ends(frame.picture)
    both = ((first, leading, -1, "face-leading"), (last, _OTHER[leading], +1, "face-far"))
    return tuple(_letter(frame, *each) for each in both)


def _letter(frame: HeldFrame, z: float, letter: str, out: int, name: str) -> Text:
    low = frame.down(max(widest(g) for g in of_role(frame.picture, Role.WORK) if _at(z, g)))
    labels = [
        [_placed(frame, z, letter, way, y, name) for y in _heights(frame.axis, low)]
        for way in (out, -out)
    ]
    beside, inside = labels
    pieces = _pieces(frame)
    beside = [t for t in beside if not _on_a_slant(frame, t)]
    bare = [t for t in beside if not any(p.overlaps(text_box(t)) for p in pieces)]
    long = frame.size(work_ends(frame.picture)[1] - work_ends(frame.picture)[0])
    within = [t for t in inside if long >= _TWO_LETTERS and not _crossed(t, pieces)]
    blank = [t for t in beside if not _crossed(t, pieces)]
    under = _placed(frame, z, letter, out, low + 0.8 + ASCENT * SIZE, name)
    return next(iter([*_middle(bare), *_middle(within), *_middle(blank)]), under)


def _at(z: float, ring: HeldRing) -> bool:
    return z in (ring.start, ring.end)


def _placed(frame: HeldFrame, z: float, letter: str, way: int, y: float, name: str) -> Text:
    anchor = "start" if way > 0 else "end"
    return Text(frame.z(z) + way * _GAP, y, letter, SIZE, anchor, bold=True, name=name)


def _heights(top: float, foot: float) -> Iterator[float]:
    """Base lines between the axis and the rim."""
    y = top + _AIR + ASCENT * SIZE
    while y <= foot - _AIR:
        yield y
        y += _STEP


def _middle(places: list[Text]) -> list[Text]:
    """The place in the middle of those there are."""
    return places[len(places) // 2 :][:1]


def _pieces(frame: HeldFrame) -> tuple[Box, ...]:
    """What is drawn below the axis, each as a rectangle."""
    return tuple(
        Box(
            frame.z(g.start),
            frame.down(g.inner) if is_block(g) else frame.axis - 1.0,
            frame.z(g.end),
            frame.down(widest(g)),
        )
        for g in frame.picture.rings
        if not is_block(g) or -1 in sides(g.role, frame.picture)
    )


def _crossed(label: Text, pieces: tuple[Box, ...]) -> bool:
    """Whether the edge of some piece runs through the letter."""
    bare = text_box(label)
    box = Box(bare.left - _NEAR, bare.top - _NEAR, bare.right + _NEAR, bare.bottom + _NEAR)
    return any(p.overlaps(box) and not _holds(p, box) for p in pieces)


def _on_a_slant(frame: HeldFrame, label: Text) -> bool:
    """Whether the slanting edge of a cone runs through the letter."""
    box = text_box(label)
    cones = [g for g in frame.picture.rings if not is_plain(g)]
    return any(_meets(frame, corners(g)[1], corners(g)[2], box) for g in cones)


def _meets(frame: HeldFrame, start: Corner, end: Corner, box: Box) -> bool:
    shares = (k / _SAMPLES for k in range(_SAMPLES + 1))
    points = (
        (
            frame.z(start[0] + share * (end[0] - start[0])),
            frame.down(start[1] + share * (end[1] - start[1])),
        )
        for share in shares
    )
    return any(box.left < x < box.right and box.top < y < box.bottom for x, y in points)


def _holds(piece: Box, box: Box) -> bool:
    across = piece.left <= box.left and box.right <= piece.right
    return across and piece.top <= box.top and box.bottom <= piece.bottom
