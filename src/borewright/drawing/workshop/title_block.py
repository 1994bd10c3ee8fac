"""The foot of a workshop drawing: what, of what, at which scale; notes; marks to check it by."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from borewright.answer.drawn_part import DrawnPart
from borewright.drawing.measure import text_width, wrapped
from borewright.drawing.scale_marks import LENGTHS
from borewright.drawing.scene import Circle, Item, Line, LineKind, Text
from borewright.drawing.workshop.look import Look
from borewright.drawing.workshop.sheet_frame import scale_words

WIDE: Final = 134.0
ROW: Final = 8.0
ROWS: Final = 5
HIGH: Final = ROW * ROWS
NOTE: Final = 3.0
LINE: Final = 4.0
NAME: Final = 2.1
"""Letters of the names in the fields, mm."""
MARKS: Final = 18.0
"""Height of the strip with the marks of known length."""
UNITS: Final = {"inch": "inches", "mm": "millimetres"}

Field = tuple[float, float, str, str]
"""From and to as shares of the width, name, words."""


def block_items(
    part: DrawnPart, look: Look, scale: float, right: float, foot: float
) -> Iterator[Item]:
    """The block with its lower right corner there."""
    left, top = right - WIDE, foot - HIGH
    for k in range(ROWS + 1):
        kind = LineKind.EDGE if k in (0, ROWS) else LineKind.THIN
        yield Line(left, top + ROW * k, right, top + ROW * k, kind, "block")
    for x in (left, right):
        yield Line(x, top, x, foot, LineKind.EDGE, "block")
    for k, fields in enumerate(_rows(part, look, scale)):
        for low, high, name, words in fields:
            x = left + WIDE * low
            if low > 0.0:
                yield Line(x, top + ROW * k, x, top + ROW * (k + 1), LineKind.THIN, "block")
            yield from _field(x, top + ROW * k, WIDE * (high - low), name, words, k == 0)
    yield from projection_symbol(look.angle, right - 20.0, foot - 2.5 * ROW)


def _rows(part: DrawnPart, look: Look, scale: float) -> tuple[tuple[Field, ...], ...]:
    other = UNITS["mm" if look.units == "inch" else "inch"]
    sizes = UNITS[look.units] + (f" [{other}]" if look.both else "")
    angle = f"{look.angle} angle"
    return (
        ((0.0, 0.85, "what", part.title), (0.85, 1.0, "to make", str(part.quantity))),
        ((0.0, 0.55, "material", part.material), (0.55, 1.0, "sizes in", sizes)),
        (
            (0.0, 0.55, "treatment", part.treatment or "none"),
            (0.55, 0.72, "scale", scale_words(scale)),
            (0.72, 1.0, "views", angle),
        ),
        ((0.0, 1.0, "where no limits stand", part.general),),
        (
            (0.0, 0.36, "drawn", look.date),
            (0.36, 0.68, "checked", ""),
            (0.68, 1.0, "made by", ""),
        ),
    )


def _field(x: float, y: float, wide: float, name: str, words: str, strong: bool) -> Iterator[Item]:
    yield Text(x + 1.0, y + 2.3, name, NAME, mask=False, name=f"block-{name}-name")
    size = 4.0 if strong else 3.2
    while size > 2.2 and text_width(words, size, strong) > wide - 2.0:
        size -= 0.1
    while len(words) > 4 and text_width(words, size, strong) > wide - 2.0:
        words = f"{words[:-2].rstrip()}…"
    yield Text(x + 1.0, y + ROW - 1.3, words, size, bold=strong, mask=False, name=f"block-{name}")


def projection_symbol(angle: str, x: float, y: float) -> Iterator[Item]:
    """The truncated cone and its view from the narrow end, as ISO 5456-2 has them (from memory).

    Third angle: the view stands on the side from which it is seen, at the narrow end; first angle:
    on the far side.
    """
    small, large, long, apart = 1.1, 2.2, 4.4, 4.0
    cone_at = x + (2 * large + 1.5 if angle == "third" else 0.0)
    view_at = x + large if angle == "third" else x + long + apart
    narrow, wide = cone_at, cone_at + long
    for side in (1, -1):
        ends = y - side * small, y - side * large
        yield Line(narrow, ends[0], wide, ends[1], LineKind.EDGE, "projection")
    yield Line(narrow, y - small, narrow, y + small, LineKind.EDGE, "projection")
    yield Line(wide, y - large, wide, y + large, LineKind.EDGE, "projection")
    for radius in (small, large):
        yield Circle(view_at, y, radius, LineKind.EDGE, name="projection-view")


def notes_lines(part: DrawnPart, wide: float) -> tuple[str, ...]:
    """The notes, numbered and broken into lines of this width."""
    numbered = [f"{k}. {note}" for k, note in enumerate(part.notes, 1)]
    return tuple(line for note in numbered for line in wrapped(note, NOTE, wide))


def notes_items(lines: tuple[str, ...], left: float, top: float) -> Iterator[Item]:
    """The lines of the notes from `top` down."""
    for k, line in enumerate(lines):
        yield Text(left, top + NOTE + LINE * k, line, NOTE, mask=False, name="note")


def mark_items(left: float, y: float) -> Iterator[Item]:
    """Lines of 50 mm and 2 in: right on paper when the page is printed at full size."""
    for after, length, said in LENGTHS:
        x = left + after
        yield Line(x, y, x + length, y, LineKind.THIN, f"true-{said.replace(' ', '-')}")
        for end in (x, x + length):
            yield Line(end, y - 1.6, end, y + 1.6, LineKind.THIN, "true-end")
        yield Text(x + length / 2, y - 1.0, f"{said} on paper", 2.6, "middle", mask=False)


NICE: Final = {
    "mm": (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000),
    "inch": (0.0625, 0.125, 0.25, 0.5, 1, 2, 4, 8, 16, 32, 64),
}


def scale_bar(look: Look, scale: float, left: float, y: float) -> Iterator[Item]:
    """A bar of a round length of the part, in four parts, 25 mm long on paper or a little over."""
    unit = 25.4 if look.units == "inch" else 1.0
    long = next((n for n in NICE[look.units] if n * unit * scale >= 25.0), NICE[look.units][-1])
    paper = long * unit * scale
    for k in range(5):
        x = left + paper * k / 4
        yield Line(x, y - 1.6, x, y, LineKind.THIN, "scale-bar-tick")
    yield Line(left, y, left + paper, y, LineKind.EDGE, "scale-bar")
    said = "in" if look.units == "inch" else "mm"
    yield Text(left, y - 2.2, "0", 2.6, "middle", mask=False)
    words = f"{long:g} {said} of the part"
    yield Text(left + paper, y - 2.2, words, 2.6, "middle", mask=False, name="scale-bar-words")
