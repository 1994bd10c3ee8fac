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
MOST_ROWS = 7
"""Rows tried before callouts are put one over the other."""


@dataclass(frozen=True, slots=True)
class Callout:
    """Words of one or more lines, and the places along the view their stems rise from.

    `sides` is where the words stand: "over" the stems' ends, or as a flag "right" or "left" of its
    one stem, which then runs up along the words; the first side is tried first.
    """

    lines: tuple[str, ...]
    stems: tuple[float, ...]
    name: str
    sides: tuple[str, ...] = ("over",)

    @property
    def flag(self) -> bool:
        """Whether the words stand beside the stem, so that there is no doubt whose they are."""
        return "over" not in self.sides

    @property
    def width(self) -> float:
        """Of the widest line, in ems."""
        return max(text_width(line, 1.0) for line in self.lines)


@dataclass(frozen=True, slots=True)
class Placed:
    """A callout with the left end of its words and the row of its line nearest to the view."""

    callout: Callout
    left: float
    row: int

    def box(self, size: float) -> Box:
        """The words in a plane where rows are one unit high, row 0 at 0 to 1."""
        right = self.left + self.callout.width * size
        return Box(self.left, float(self.row), right, self.row + len(self.callout.lines))

    @property
    def reach(self) -> int:
        """How many rows its stems rise through."""
        return self.row + (len(self.callout.lines) if self.callout.flag else 0)


def place_within(
    callouts: Sequence[Callout], left: float, right: float, size: float, rows: int
) -> tuple[Placed, ...] | None:
    """Places for all callouts between `left` and `right` in so many rows, or None.

    >>> one, two = Callout(("here",), (10.0,), "a"), Callout(("there",), (14.0,), "b")
    >>> [p.row for p in place_within((one, two), 0.0, 60.0, 3.5, 1) or ()]
    [0, 0]
    """
    return _search(tuple(callouts), (), left, right, size, rows)


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
    spots = _starts(callout, left, right, size)
    for row, spot in product(range(rows - len(callout.lines) + 1), spots):
        yield Placed(callout, spot, row)


def _starts(callout: Callout, left: float, right: float, size: float) -> tuple[float, ...]:
    wide = callout.width * size
    first, last = min(callout.stems), max(callout.stems)
    if not callout.flag:
        starts = ((first + last - wide) / 2, last - wide + GAP, first - GAP)
        return tuple(min(max(start, left), right - wide) for start in starts)
    beside = {"right": first + GAP, "left": first - GAP - wide}
    room = {"right": right - wide - beside["right"], "left": beside["left"] - left}
    return tuple(beside[side] for side in callout.sides if room[side] >= 0) or (
        beside[max(room, key=lambda side: room[side])],
    )


def _apart(one: Placed, other: Placed, size: float) -> bool:
    a, b = one.box(size), other.box(size)
    roomy = Box(a.left - 2 * GAP, a.top, a.right + 2 * GAP, a.bottom)
    return not (roomy.overlaps(b) or _struck(a, other) or _struck(b, one))


def _struck(box: Box, other: Placed) -> bool:
    return other.reach > box.top and any(
        box.left - GAP < stem < box.right + GAP for stem in other.callout.stems
    )


def stacked(
    callouts: Sequence[Callout], left: float, right: float, size: float
) -> tuple[Placed, ...]:
    """One callout over the other, whatever stems run through them: the last resort."""
    placed, row = [], 0
    for callout in callouts:
        spot = next(_choices(callout, left, right, size, len(callout.lines)))
        placed.append(Placed(callout, spot.left, row))
        row += len(callout.lines)
    return tuple(placed)


def place_in_turn(
    callouts: Sequence[Callout], left: float, right: float, size: float
) -> tuple[Placed, ...]:
    """Places for any number of callouts, each in the lowest row that it finds free in its turn.

    Words stand clear of the stems that still wait, so that these can rise past them; only where
    that leaves none any place do they not.

    >>> one, two = Callout(("here",), (10.0,), "a"), Callout(("there",), (12.0,), "b")
    >>> [p.row for p in place_in_turn((one, two), 0.0, 60.0, 3.5)]
    [0, 1]
    """
    rows = 1 + sum(len(c.lines) for c in callouts)
    waiting, done = list(callouts), list[Placed]()
    while waiting:
        for minded in (waiting, []):
            found = [_lowest(c, done, minded, left, right, size, rows) for c in waiting]
            best = min((p for p in found if p), key=lambda p: p.row, default=None)
            if best is not None:
                break
        assert best is not None  # the top row is free of all
        done.append(best)
        waiting.remove(best.callout)
    return tuple(done)


def _lowest(
    callout: Callout,
    done: Sequence[Placed],
    minded: Sequence[Callout],
    left: float,
    right: float,
    size: float,
    rows: int,
) -> Placed | None:
    stems = [x for other in minded if other is not callout for x in other.stems]
    for choice in _choices(callout, left, right, size, rows):
        box = choice.box(size)
        clear = not any(box.left - GAP < x < box.right + GAP for x in stems)
        if clear and all(_apart(choice, other, size) for other in done):
            return choice
    return None
