"""Marks of a line chart: uprights, hatched bands, and the rows of words over the frame.

Words stand beside the upright they name, in the lowest row that is free and that no other upright
rises through. Words of a line that found no place at it stand here too, with a thin line down.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from borewright.answer.schedule import Mark
from borewright.drawing.callout import GAP, Callout, Placed
from borewright.drawing.dimension import SIZE
from borewright.drawing.line_axis import Axis, usable
from borewright.drawing.line_trace import Trace
from borewright.drawing.measure import Box, text_width, wrapped
from borewright.drawing.scene import Circle, Hatch, Item, Line, LineKind, Text

ROW = 3.9
"""From one line of words to the next, mm."""
OVER = 1.6
"""From the frame, whose topmost number stands half over it, to the words there, mm."""
EDGE = 0.4
"""From the edge of the chart to words, mm."""
NARROWER = (0.46, 0.24)
"""The shares of the chart's width that a line of words over the frame takes at most."""
_HATCHED = 1.8
_SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9, 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class Upright:
    """A mark on paper: its words, its place, and the other end of its band (mm)."""

    name: str
    words: str
    x: float
    band: float | None = None

    @property
    def stem(self) -> float:
        """Where its words belong: at the line, or over the middle of the band."""
        return self.x if self.band is None else (self.x + self.band) / 2


def marked(marks: Sequence[Mark], axis: Axis) -> tuple[Upright, ...]:
    """The marks that can be drawn, from left to right."""
    found = []
    for k, mark in enumerate(marks):
        if usable(mark.x):
            band = mark.band if mark.band is not None and usable(mark.band) else None
            other = None if band is None else axis.at(band)
            found.append(Upright(f"mark-{k}", mark.label, axis.at(mark.x), other))
    return tuple(sorted(found, key=lambda m: (m.stem, m.name)))


def pointed_at(trace: Trace, stems: Sequence[float]) -> Upright:
    """Where to point at a line from over the frame: high on it, and clear of the other stems."""
    ends = [x for x, _ in trace.corners]
    low, high = min(ends), max(ends)
    places = [low + share * (high - low) for share in _SHARES]
    clear = [x for x in places if all(abs(x - stem) > 2.0 for stem in stems)] or places
    best = min(clear, key=lambda x: (round(trace.highest(x), 1), clear.index(x)))
    return Upright(trace.name, trace.words, best)


def over_frame(uprights: Sequence[Upright], width: float) -> tuple[Placed, ...]:
    """Places for the words of all uprights, row 0 next to the frame."""
    done: list[Placed] = []
    waiting = sorted(uprights, key=lambda u: (-u.stem, u.name))
    while waiting:
        upright = waiting.pop(0)
        done.append(_lowest(upright, done, [u.stem for u in waiting], width))
    return tuple(done)


def rows_of(placed: Sequence[Placed]) -> int:
    """How many rows of words there are."""
    return max((p.row + len(p.callout.lines) for p in placed), default=0)


def fitted(words: str, room: float, bold: bool = False) -> str:
    """Words that fill no more than `room` mm, with … where they were cut."""
    said = " ".join(words.split())
    if text_width(said, SIZE, bold) <= room:
        return said
    while said and text_width(f"{said}…", SIZE, bold) > room:
        said = said[:-1].rstrip()
    return f"{said}…"


def band_items(uprights: Sequence[Upright], plot: Box) -> Iterator[Item]:
    """Hatching over the places that a mark reaches over."""
    for upright in uprights:
        if upright.band is not None and abs(upright.band - upright.x) > 0.1:
            left, right = sorted((upright.x, upright.band))
            corners = (left, plot.top), (right, plot.top), (right, plot.bottom), (left, plot.bottom)
            yield Hatch((corners,), _HATCHED, f"{upright.name}-band", kind=LineKind.FAINT)


def mark_items(
    placed: Sequence[Placed], uprights: Sequence[Upright], feet: dict[str, float], plot: Box
) -> Iterator[Item]:
    """Upright lines with their words; `feet` are where the lines that point at a curve end."""
    for upright in uprights:
        for x in (upright.x,) if upright.band is None else (upright.x, upright.band):
            if upright.name not in feet:
                yield Line(x, plot.bottom, x, plot.top, LineKind.THIN, upright.name)
    for label in placed:
        yield from _label(label, feet.get(label.callout.name, plot.top), plot.top)
        if label.callout.name in feet:
            stem, foot = label.callout.stems[0], feet[label.callout.name]
            yield Circle(stem, foot, 0.55, LineKind.BLANK, "black", f"{label.callout.name}-dot")


def _label(label: Placed, foot: float, ceiling: float) -> Iterator[Item]:
    callout, stem = label.callout, label.callout.stems[0]
    top = ceiling - ROW * label.reach - (OVER if label.reach else 0.0)
    if top < foot:
        yield Line(stem, foot, stem, top, LineKind.THIN, f"{callout.name}-stem")
    count = len(callout.lines)
    for k, words in enumerate(callout.lines):
        y = ceiling - OVER - ROW * (label.row + count - 1 - k) - 0.8
        yield Text(label.left, y, words, SIZE, name=f"{callout.name}-words")


def _lowest(
    upright: Upright, done: Sequence[Placed], waiting: Sequence[float], width: float
) -> Placed:
    """The lowest free row, if it can be where no upright that waits must rise through.

    Above all others, breaking the lines behind it, where none is clear.
    """
    free = rows_of(done)
    for minded in (waiting, ()):
        for row in range(free + 1):
            for choice in _choices(upright, row, width):
                box = choice.box(SIZE)
                clear = not any(_within(stem, box) for stem in minded)
                if clear and all(_apart(choice, other) for other in done):
                    return choice
    return _choices(upright, free, width)[0]


def _choices(upright: Upright, row: int, width: float) -> tuple[Placed, ...]:
    """In one line and in narrower ones; beside the upright, or over it where there is no room."""
    folded = dict.fromkeys(wrapped(upright.words, SIZE, share * width) for share in NARROWER)
    whole = [tuple(fitted(line, width - 2 * EDGE) for line in lines) for lines in folded]
    found = [_placed(upright, lines, row, width) for lines in whole]
    return tuple(placed for places in found for placed in places)


def _placed(upright: Upright, lines: tuple[str, ...], row: int, width: float) -> tuple[Placed, ...]:
    wide = max(text_width(line, SIZE) for line in lines)
    stem, last = upright.stem, width - EDGE - wide
    beside = ((stem + GAP, ("right",)), (stem - GAP - wide, ("left",)))
    flags = [] if upright.band is not None else [b for b in beside if EDGE <= b[0] <= last]
    over = (min(max(stem - wide / 2, EDGE), last), ("over",))
    tried = flags or [over]
    return tuple(Placed(Callout(lines, (stem,), upright.name, s), x, row) for x, s in tried)


def _apart(one: Placed, other: Placed) -> bool:
    a, b = one.box(SIZE), other.box(SIZE)
    roomy = Box(a.left - 2 * GAP, a.top, a.right + 2 * GAP, a.bottom)
    return not (roomy.overlaps(b) or _struck(a, other) or _struck(b, one))


def _struck(box: Box, other: Placed) -> bool:
    """Whether the other's upright rises through these words."""
    return other.reach > box.top and _within(other.callout.stems[0], box)


def _within(stem: float, box: Box) -> bool:
    return box.left - GAP / 2 < stem < box.right + GAP / 2
