"""Lines of known length on a page meant for full size, to be held against a rule once printed."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.drawing.scene import Item, Line, LineKind, Text

LENGTHS = ((0.0, 50.0, "50 mm"), (62.0, 50.8, "2 in"))
"""From the left edge, how long, and what is said over it."""


def scale_marks(left: float, y: float, what: str) -> Iterator[Item]:
    """Lines of 50 mm and of 2 in from `left` at height `y`; `what` is wrong where they are."""
    for after, length, said in LENGTHS:
        yield from _mark(left + after, y, length, said)
    words = f"Hold a rule to these lines. If one is wrong, so is the {what}: print it at 100 %."
    yield Text(left, y + 8.0, words, 3.2)


def upright_mark(x: float, foot: float) -> Iterator[Item]:
    """A line of 25 mm up from `foot`: a printer may be right across and wrong along."""
    name, top = "scale-25-mm", foot - 25.0
    yield Line(x, foot, x, top, LineKind.THIN, name)
    for y in (foot, top):
        yield Line(x - 2.0, y, x + 2.0, y, LineKind.THIN, f"{name}-end")
    yield Text(x - 1.2, (foot + top) / 2, "25 mm", 3.2, "middle", mask=False, rotation=-90.0)


def _mark(left: float, y: float, length: float, said: str) -> Iterator[Item]:
    name = said.replace(" ", "-")
    yield Line(left, y, left + length, y, LineKind.THIN, f"scale-{name}")
    for x in (left, left + length):
        yield Line(x, y - 2.0, x, y + 2.0, LineKind.THIN, f"scale-{name}-end")
    yield Text(left + length / 2, y - 1.2, said, 3.2, "middle", mask=False)
