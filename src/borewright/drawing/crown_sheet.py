"""The page of a crown at full size: its template, its form stretched, its list of cuts."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice
from math import pi
from typing import Final, Literal

import numpy as np

from borewright.answer.crown import PulleyCrown, Stepped
from borewright.drawing.crown_pieces import Edge, crown_pieces, pieces_height
from borewright.drawing.dimension import Span, level_dimension, without_other_unit
from borewright.drawing.measure import text_width, wrapped
from borewright.drawing.scale_marks import scale_marks, upright_mark
from borewright.drawing.scene import Arrow, Item, Line, LineKind, Path, Scene, Text
from borewright.drawing.strip import MARGIN, PAGES
from borewright.mechanics.crown import arc_fall, taper_fall
from borewright.quantities.show import Show

LETTERS: Final = 3.2
LINE: Final = 4.3
TIMES: Final = (50, 40, 25, 20, 10, 5, 2, 1)
"""By how much heights are stretched, the first that keeps them low."""
STRETCHED: Final = 15.0
"""How high the stretched form stands at most, mm."""
ROW: Final = 4.3
COLUMN: Final = 38.0
HEADS: Final = 6.0
"""Below this many mm there is no room for two arrow heads."""
FOOT: Final = 29.0
"""What the scale marks take at the foot."""


def draw_crown(
    crown: PulleyCrown, units: Literal["inch", "mm"], paper: str, words: tuple[str, ...]
) -> Scene:
    """One page at full size; wider than its paper where the face is. `words` stand over it."""
    show = Show(units)
    width = max(PAGES[paper][0], 1000 * crown.face + 2 * MARGIN)
    left = (width - 1000 * crown.face) / 2
    title = f"Crown for a {show.length(crown.diameter)} pulley, {show.length(crown.face)} face"
    said, top = _words(title, words, width)
    pieces = crown_pieces(crown, left, top + 4.0)
    view_top = top + 4.0 + pieces_height(crown) + 14.0
    view, foot = _stretched(crown, left, view_top, show, width)
    listed, end = _list(crown, foot + 8.0, width, show)
    height = max(PAGES[paper][1], end + FOOT)
    large = width > PAGES[paper][0] or height > PAGES[paper][1]
    marks = (
        *scale_marks(MARGIN, height - 20.0, "template"),
        *upright_mark(width - MARGIN - 4.0, height - 12.0),
        *(_too_large(width, height) if large else ()),
    )
    items = (*said, *pieces, *view, *listed, *marks)
    facts = (("scale", "1"), ("heights", f"{_times(crown)}"))
    return Scene(width, height, items, title, " ".join(words), facts)


def _too_large(width: float, height: float) -> tuple[Text, ...]:
    """That no common sheet takes the page."""
    size = f"{width:.0f} by {height:.0f} mm"
    words = f"This page is {size}: print it on larger paper, or cut from the DXF."
    return (Text(MARGIN + 125.0, height - 20.0, words, LETTERS, name="larger-paper"),)


def _words(title: str, words: tuple[str, ...], width: float) -> tuple[tuple[Item, ...], float]:
    lines = [part for said in words for part in wrapped(said, LETTERS, width - 2 * MARGIN)]
    head = Text(MARGIN, MARGIN + 3.0, title, 5.0, bold=True)
    said = tuple(Text(MARGIN, MARGIN + 10.0 + LINE * k, t, LETTERS) for k, t in enumerate(lines))
    return (head, *said), MARGIN + 10.0 + LINE * len(lines)


def _times(crown: PulleyCrown) -> int:
    return next((t for t in TIMES if t * 1000 * crown.height <= STRETCHED), 1)


def _stretched(
    crown: PulleyCrown, left: float, top: float, show: Show, width: float
) -> tuple[tuple[Item, ...], float]:
    """The form with its heights stretched, the stairs over it, and what it measures."""
    times = _times(crown)
    edge = Edge(left, left + 1000 * crown.face, top, times * 1000 * crown.height)
    row = edge.low + 9.0
    face = show.length(crown.face)
    spans = Span(
        edge.left, edge.low, edge.right, edge.low, (face, without_other_unit(face)), "face"
    )
    items = (
        Path(_line(crown, edge, times), LineKind.VISIBLE, name="stretched"),
        *_stairs(crown, edge, times),
        Line(edge.left, edge.low, edge.right, edge.low, LineKind.THIN, "edges"),
        Line(edge.middle, edge.top - 3.0, edge.middle, edge.low + 3.0, LineKind.AXIS, "middle"),
        *_height(crown, edge, show),
        *level_dimension(spans, row, MARGIN, width - MARGIN),
        *_notes(crown, edge, times, show),
    )
    return items, row + 3.0


def _line(crown: PulleyCrown, edge: Edge, times: int) -> tuple[tuple[float, float], ...]:
    """The crown's line in a hundred and twenty steps, its corners among them."""
    half = crown.face / 2
    places = np.concatenate([np.linspace(-half, half, 121), [-crown.flat / 2, crown.flat / 2]])
    places.sort()
    fall = (
        arc_fall(places, crown.height, crown.face)
        if crown.shape == "arc"
        else taper_fall(places, crown.height, crown.face, crown.flat)
    )
    down = times * 1000 * np.asarray(fall)
    return tuple(
        zip((edge.middle + 1000 * places).tolist(), (edge.top + down).tolist(), strict=True)
    )


def _stairs(crown: PulleyCrown, edge: Edge, times: int) -> Iterator[Item]:
    """What the cuts leave of either half before it is filed."""
    made = crown.stepped.stairs
    if made is None:
        return
    points = [(0.0, 0.0)]
    for stop, depth in zip(made.stops.tolist(), made.depths.tolist(), strict=True):
        x = crown.face / 2 - stop
        points += [(x, points[-1][1]), (x, depth)]
    points += [(crown.face / 2, points[-1][1]), (crown.face / 2, crown.height)]
    for side in (-1, 1):
        shifted = tuple(
            (edge.middle + side * 1000 * x, edge.top + times * 1000 * d) for x, d in points
        )
        yield Path(shifted, LineKind.THIN, name="stairs")


def _height(crown: PulleyCrown, edge: Edge, show: Show) -> Iterator[Item]:
    """The height, upright at the left, where there is room for it."""
    x, words = edge.left - 4.0, without_other_unit(show.turned(crown.height))
    if x - 3.0 - text_width(words, LETTERS) < MARGIN / 2:
        return
    yield Line(edge.left - 6.0, edge.top, edge.middle, edge.top, LineKind.THIN)
    yield Line(edge.left - 6.0, edge.low, edge.left, edge.low, LineKind.THIN)
    yield Line(x, edge.top, x, edge.low, LineKind.THIN, "height")
    if edge.h > HEADS:
        yield from (Arrow(x, edge.top, -pi / 2), Arrow(x, edge.low, pi / 2))
    y = (edge.top + edge.low) / 2 + 1.0
    yield Text(x - 3.0, y, words, LETTERS, "end", name="height-words")


def _notes(crown: PulleyCrown, edge: Edge, times: int, show: Show) -> tuple[Text, ...]:
    """What the view is, over it."""
    form = (
        f"arc of {show.length(crown.radius)} radius"
        if crown.shape == "arc"
        else f"double taper of {show.angle(crown.angle)}"
    )
    size = f"{show.turned(crown.height)} high"
    heights = "at full size" if times == 1 else f"with its heights drawn {times} times"
    flat = f", flat {show.length(crown.flat)} in the middle" if crown.flat else ""
    stairs = "" if crown.stepped.stairs is None else "; thin: the stairs before filing"
    said = f"The same {heights}: {size}, {form}{flat}{stairs}"
    return (Text(MARGIN, edge.top - 5.5, said, LETTERS, name="stretched-words"),)


def _cells(stepped: Stepped, show: Show) -> list[str]:
    """Each cut as its number, its stop and its reading, in the reader's own unit only."""
    made = stepped.stairs
    assert made is not None
    readings = (made.divisions * stepped.division).tolist()
    sizes = zip(made.stops.tolist(), readings, strict=True)
    said = ((show.length(stop), show.turned(reading)) for stop, reading in sizes)
    pairs = (tuple(without_other_unit(words) for words in pair) for pair in said)
    return [f"{k}.  {stop}:  {reading}" for k, (stop, reading) in enumerate(pairs, 1)]


def _list(
    crown: PulleyCrown, top: float, width: float, show: Show
) -> tuple[tuple[Text, ...], float]:
    """Each cut's stop and what the dial says, in columns; the order goes down the columns."""
    made, stepped = crown.stepped.stairs, crown.stepped
    if made is None:
        return (), top
    counts = {"diameter": "dial (diameter)", "radius": "dial (radius)", "unknown": "on radius"}
    head = f"Stepped off: stop from the edge, {counts[stepped.dial]}. Either half in this order."
    columns = max(1, int((width - 2 * MARGIN) // COLUMN))
    rows = -(-len(made.stops) // columns)
    cells = iter(_cells(stepped, show))
    texts = [Text(MARGIN, top, head, LETTERS, bold=True)]
    for column in range(columns):
        for row, cell in enumerate(islice(cells, rows)):
            x, y = MARGIN + column * COLUMN, top + 5.5 + row * ROW
            texts.append(Text(x, y, cell, LETTERS, name="cut"))
    return tuple(texts), top + 5.5 + rows * ROW
