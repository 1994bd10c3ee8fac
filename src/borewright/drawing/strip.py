"""The paper strip at full size: pieces to cut out, a rule to check the printer by, how to read it.

One millimetre of the scene is one on paper. The large-end face is at the left. A strip longer than
the page goes on in a second piece, glued under the first at a join mark.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import ceil
from typing import Final

from borewright.answer.strip import Strip
from borewright.drawing.measure import text_width, wrapped
from borewright.drawing.scale_marks import scale_marks
from borewright.drawing.scene import Item, Line, LineKind, Path, Scene, Text
from borewright.errors import RefusedInput

PAGES: Final = {"letter": (279.4, 215.9), "a4": (297.0, 210.0)}
"""Width and height in mm, the long side across."""

MARGIN: Final = 14.0
HEIGHT: Final = 26.0
"""Height of a piece; folded along its middle it lies 13 mm high."""
TAB: Final = 10.0
"""What of a later piece is glued under the one before."""
LETTERS: Final = 2.3
TICK, LONG_TICK = 4.0, 6.5
BETWEEN_LABELS: Final = 1.5
ROUND: Final = (1, 2, 5, 10, 20, 50, 100)


@dataclass(frozen=True, slots=True)
class Stretch:
    """One piece: what of the strip it carries (mm from the large-end face) and where it lies."""

    start: float
    end: float
    number: int
    top: float

    def x(self, position: float) -> float:
        """Paper x (mm) of a position (mm from the large-end face)."""
        return MARGIN + TAB + position - self.start

    def has(self, position: float) -> bool:
        return self.start - 1e-6 <= position <= self.end + 1e-6


def draw_strip(strip: Strip, paper: str) -> Scene:
    """One page with every piece of the strip. RefusedInput for a mandrel too long for one page."""
    width, height = PAGES[paper]
    words, top = _words(strip, width)
    pieces = _pieces(strip, width, top)
    if pieces[-1].top + HEIGHT > height - 28.0:
        found = f"a mandrel of {1000 * strip.ground_to:.0f} mm"
        raise RefusedInput("strip", found, "one whose strip fits on one page")
    items = (
        *words,
        *(item for piece in pieces for item in _piece(strip, piece, piece is pieces[-1])),
        *scale_marks(MARGIN, height - 20.0, "strip"),
    )
    title = f"Paper strip for {strip.name}"
    return Scene(width, height, items, title, " ".join(strip.words), (("scale", "1"),))


def _pieces(strip: Strip, width: float, top: float) -> tuple[Stretch, ...]:
    whole = 1000 * strip.ground_to
    count = ceil(whole / (width - 2 * MARGIN - TAB))
    cuts = [whole * k / count for k in range(count + 1)]
    return tuple(
        Stretch(start, end, number, top + (number - 1) * (HEIGHT + 7.0))
        for number, (start, end) in enumerate(pairwise(cuts), 1)
    )


def _words(strip: Strip, width: float) -> tuple[tuple[Item, ...], float]:
    lines = [part for said in strip.words for part in wrapped(said, 3.4, width - 2 * MARGIN)]
    title = Text(
        MARGIN, MARGIN + 4.0, f"Paper strip for {_fitting(strip.name, 110.0)}", 5.0, bold=True
    )
    said = tuple(Text(MARGIN, MARGIN + 11.0 + 4.8 * k, t, 3.4) for k, t in enumerate(lines))
    return (title, *said), MARGIN + 11.0 + 4.8 * len(lines) + 4.0


def _piece(strip: Strip, piece: Stretch, last: bool) -> Iterator[Item]:
    yield from _outline(piece)
    yield from _ends(strip, piece)
    yield from _unread(strip, piece)
    yield from _ticks(strip, piece)
    yield from _joins(piece, last)
    room = piece.end - piece.start - 4.0
    unit = "inches" if strip.units == "inch" else "mm"
    name = f"{_fitting(strip.name, room - 30.0)}: bore in {unit}"
    middle = 0.5 * (piece.start + piece.end)
    yield Text(piece.x(middle), piece.top + HEIGHT - 4.0, name, 3.2, "middle", name="strip-name")


def _fitting(name: str, width: float) -> str:
    """The name, cut short where it is wider than this many mm at 3.2 mm."""
    if text_width(name, 3.2) <= width:
        return name
    kept = next(
        k for k in range(len(name), -1, -1) if text_width(name[:k] + "…", 3.2) <= width or not k
    )
    return name[:kept] + "…"


def _outline(piece: Stretch) -> Iterator[Item]:
    left = piece.x(piece.start) - (TAB if piece.number > 1 else 0.0)
    right, foot = piece.x(piece.end), piece.top + HEIGHT
    corners = ((left, piece.top), (right, piece.top), (right, foot), (left, foot))
    yield Path(corners, LineKind.THIN, closed=True, name=f"piece-{piece.number}")
    fold = piece.top + HEIGHT / 2
    yield Line(left, fold, right, fold, LineKind.HIDDEN, f"fold-{piece.number}")
    yield Text(0.5 * (left + right), fold + 3.0, "fold here", LETTERS, "middle", mask=False)


def _ends(strip: Strip, piece: Stretch) -> Iterator[Item]:
    """The large-end face and the ends of the ground length, across the upper half."""
    half, ground = HEIGHT / 2, 1000 * strip.ground_from
    words = "end of ground"
    aside = ground - piece.start > text_width(words, LETTERS) + 1.6
    marks = (
        (0.0, "large-end face", half + 4.0, False),
        (ground, words, half - 1.2, aside),
    )
    for position, said, down, to_the_left in marks:
        if piece.has(position):
            x, anchor = piece.x(position), "end" if to_the_left else "start"
            yield Line(x, piece.top, x, piece.top + half, name=said.replace(" ", "-"))
            at = x - 0.8 if to_the_left else x + 0.8
            yield Text(at, piece.top + down, said, LETTERS, anchor, mask=False)


def _unread(strip: Strip, piece: Stretch) -> Iterator[Item]:
    """A bar along the edge where no bore stops, and the word for it."""
    for start, end in ((1000 * a, 1000 * b) for a, b in strip.unread):
        low, high = max(start, piece.start), min(end, piece.end)
        if high > low:
            a, b, y = piece.x(low), piece.x(high), piece.top + 1.6
            corners = ((a, piece.top), (b, piece.top), (b, y), (a, y))
            yield Path(corners, LineKind.THIN, closed=True, fill="black", name="unread")
            said = "nothing stops here"
            if text_width(said, LETTERS) < b - a:
                yield Text(0.5 * (a + b), piece.top + 5.0, said, LETTERS, "middle", mask=False)


def _ticks(strip: Strip, piece: Stretch) -> Iterator[Item]:
    """Every line; a label on the round ones that have room for it."""
    round_ones, taken = _labelled_every(strip), -1e9
    for tick in sorted(strip.ticks, key=lambda t: t.position):
        position = 1000 * tick.position
        if not piece.has(position):
            continue
        x, long = piece.x(position), tick.count % round_ones == 0
        foot = piece.top + (LONG_TICK if long else TICK)
        yield Line(x, piece.top, x, foot, LineKind.THIN, f"tick-{tick.label}")
        half = text_width(tick.label, LETTERS) / 2
        if long and x - half > taken and _clear(strip, piece, x, half):
            yield Text(x, foot + 2.2, tick.label, LETTERS, "middle", mask=False)
            taken = x + half + 0.4


def _clear(strip: Strip, piece: Stretch, x: float, half: float) -> bool:
    """True where a label runs neither over the end of the paper nor over the end of the ground."""
    if abs(piece.x(1000 * strip.ground_from) - x) < half + 0.5:
        return False
    return piece.x(piece.start) + half < x < piece.x(piece.end) - half


def _labelled_every(strip: Strip) -> int:
    """Label every so many lines, so that labels stand apart where the taper is as fitted."""
    if len(strip.ticks) < 2:
        return 1
    first, last = strip.ticks[0], strip.ticks[-1]
    apart = 1000 * abs(last.position - first.position) / (last.count - first.count)
    need = text_width(last.label, LETTERS) + BETWEEN_LABELS
    return next((n for n in ROUND if n * apart >= need), ROUND[-1])


def _joins(piece: Stretch, last: bool) -> Iterator[Item]:
    low = piece.top + HEIGHT - 9.0
    if piece.number > 1:
        x, said = piece.x(piece.start), f"join {piece.number - 1}"
        yield Line(x, piece.top, x, piece.top + HEIGHT, LineKind.LIMIT, said.replace(" ", "-"))
        yield Text(x + 1.0, low, f"{said}: this line under the end of the other", LETTERS)
    if not last:
        yield Text(piece.x(piece.end) - 1.0, low, f"join {piece.number}", LETTERS, "end")
