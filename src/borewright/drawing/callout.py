"""Labels on a stem: words in rows above or below a view, kept apart from each other and the stems.

The rows are filled by trying places in order of merit (nearest row first) and taking back a choice
that leaves no room for a later one. With few labels this is instant, and the same input always
gives the same picture.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product

from borewright.drawing.measure import Box, text_width

GAP = 0.9
"""Air between a stem and the words of another label, mm."""


@dataclass(frozen=True, slots=True)
class Callout:
    """Words of one or more lines, and the places along the view their stems rise from."""

    lines: tuple[str, ...]
    stems: tuple[float, ...]
    name: str


@dataclass(frozen=True, slots=True)
class Placed:
    """A callout with the left end of its words and the row of its line nearest to the view."""

    callout: Callout
    left: float
    row: int

    def box(self, size: float) -> Box:
        """The words in a plane where rows are one unit high, row 0 at 0 to 1."""
        wide = max(text_width(line, size) for line in self.callout.lines)
        return Box(self.left, float(self.row), self.left + wide, self.row + len(self.callout.lines))


def place(
    callouts: Sequence[Callout], left: float, right: float, size: float, rows: int = 9
) -> tuple[Placed, ...]:
    """Places for all callouts between `left` and `right`, using as few rows as it can.

    >>> one, two = Callout(("here",), (10.0,), "a"), Callout(("there",), (14.0,), "b")
    >>> [p.row for p in place((one, two), 0.0, 60.0, 3.5)]
    [0, 0]
    """
    for top in range(1, rows + 1):
        found = _search(tuple(callouts), (), left, right, size, top)
        if found is not None:
            return found
    return _stacked(callouts, left, right, size)


def _search(
    rest: tuple[Callout, ...],
    done: tuple[Placed, ...],
    left: float,
    right: float,
    size: float,
    rows: int,
) -> tuple[Placed, ...] | None:
    if not rest:
        return done
    for choice in _choices(rest[0], left, right, size, rows):
        if all(_apart(choice, other, size) for other in done):
            found = _search(rest[1:], (*done, choice), left, right, size, rows)
            if found is not None:
                return found
    return None


def _choices(
    callout: Callout, left: float, right: float, size: float, rows: int
) -> Iterator[Placed]:
    wide = max(text_width(line, size) for line in callout.lines)
    first, last = min(callout.stems), max(callout.stems)
    starts = ((first + last - wide) / 2, last - wide + GAP, first - GAP)
    for row, start in product(range(rows - len(callout.lines) + 1), starts):
        spot = min(max(start, left), right - wide)
        yield Placed(callout, spot, row)


def _apart(one: Placed, other: Placed, size: float) -> bool:
    a, b = one.box(size), other.box(size)
    roomy = Box(a.left - 2 * GAP, a.top, a.right + 2 * GAP, a.bottom)
    return not (roomy.overlaps(b) or _struck(a, other) or _struck(b, one))


def _struck(box: Box, other: Placed) -> bool:
    reach = other.row
    return reach > box.top and any(
        box.left - GAP < stem < box.right + GAP for stem in other.callout.stems
    )


def _stacked(
    callouts: Sequence[Callout], left: float, right: float, size: float
) -> tuple[Placed, ...]:
    placed, row = [], 0
    for callout in callouts:
        spot = next(_choices(callout, left, right, size, len(callout.lines)))
        placed.append(Placed(callout, spot.left, row))
        row += len(callout.lines)
    return tuple(placed)
