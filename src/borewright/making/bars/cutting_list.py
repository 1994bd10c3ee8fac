"""Pieces out of bars: which bar is cut into what, so that the least bar is taken.

Of two ways that take the same length of bar, the one that leaves the longest rest in one piece.
Every way of cutting is laid out where there are not too many; else ways are found by price, and
`least` says what no way can beat. Nothing is guessed: `proved` says whether the answer meets it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from typing import Final

from borewright.errors import OutsideModel
from borewright.making.bars import cutting_priced
from borewright.making.bars.cutting_patterns import (
    EXACT,
    Bar,
    Pattern,
    Wanted,
    Way,
    filled,
    times,
)
from borewright.making.bars.cutting_solved import Program, Used
from borewright.quantities.si import Metre

FEW: Final = 20_000
"""Ways of cutting up to which all of them are laid out."""

NODES_PRICED: Final = 100
"""Branches of the solver over ways found by price: the bound tells what they miss; ours."""

NEAR: Final = 1e-7
"""Metres: two lengths of bar this near are the same answer."""


@dataclass(frozen=True, slots=True)
class CutBar:
    """Bars that are cut alike. `left` (m): what remains of each behind its last cut, the end that
    cannot be used with it."""

    name: str
    length: Metre
    count: int
    pieces: tuple[tuple[str, int], ...]
    left: Metre


@dataclass(frozen=True, slots=True)
class CutList:
    """What is cut from what. `missing`: pieces that cannot be had from these bars.

    `taken`: all the bars cut into; `used`: pieces had, by length; `longest_left`: the longest rest
    in one piece; `waste`: taken less used and longest_left (all m). `least`: no way of cutting as
    many pieces takes less bar; `proved`: none takes less, nor leaves less missing, than this; where
    all ways were laid out, nor leaves a longer rest.
    """

    bars: tuple[CutBar, ...]
    missing: tuple[tuple[str, int], ...]
    taken: Metre
    used: Metre
    longest_left: Metre
    least: Metre
    proved: bool

    @property
    def waste(self) -> Metre:
        return self.taken - self.used - self.longest_left

    @property
    def whole(self) -> bool:
        """Whether every piece can be had."""
        return not self.missing


def cut_list(
    pieces: Sequence[tuple[str, Metre, int]],
    bars: Sequence[tuple[str, Metre, int | None]],
    kerf: Metre,
    end_loss: Metre,
    few: int = FEW,
) -> CutList:
    """The best cutting of `pieces` (name, length, how many) from `bars` (name, length, how many).

    A bar with None can be had in any number. `kerf` (m) is lost at each cut. `end_loss` (m) of
    each bar cannot be used, such as what stays in the jaws; the last piece is then cut off from it.
    Without one, the last piece of a bar that is used up needs no cut. OutsideModel for a length
    that is not above 0, a negative count, kerf or end.

    >>> found = cut_list([("ring", 0.25, 7)], [("bar", 1.0, None)], kerf=0.003, end_loss=0.02)
    >>> [(bar.count, bar.pieces) for bar in found.bars], round(found.longest_left, 3)
    ([(2, (('ring', 3),)), (1, (('ring', 1),))], 0.747)
    """
    _check(pieces, bars, kerf, end_loss)
    wanted = _by_length(pieces, kerf)
    kinds = [Bar(length, _room(length, kerf, end_loss), count) for _, length, count in bars]
    there = [bar for bar in kinds if bar.count != 0]
    fit = [w for w in wanted if any(times(bar.room, w.with_cut) for bar in there)]
    used, least, proved = _best(fit, kinds, few) if fit else (Used((), ()), 0.0, True)
    made = tuple(_named(_trimmed(used, fit), fit, bars))
    had = Counter[str]()
    for bar in made:
        had.update({name: number * bar.count for name, number in bar.pieces})
    return CutList(
        made,
        tuple((name, count - had[name]) for name, _, count in pieces if count > had[name]),
        sum((b.length * b.count for b in made), 0.0),
        sum((length * had[name] for name, length, _ in pieces), 0.0),
        max((b.left for b in made), default=0.0),
        least,
        proved,
    )


def _room(length: Metre, kerf: Metre, end_loss: Metre) -> Metre:
    """What of a bar takes pieces, each with one cut: with no end kept, the last cut is saved."""
    return length - end_loss + (0.0 if end_loss else kerf)


def _best(wanted: Sequence[Wanted], bars: Sequence[Bar], few: int) -> tuple[Used, Metre, bool]:
    """What is used, the least length (m) of bar that could be taken, and whether that is proved."""
    ways = _laid_out(wanted, bars, few)
    if ways is not None:
        used, short, taken = _answered(Program(wanted, bars, ways))
        return used, taken if used.proved else 0.0, used.proved
    fewest = cutting_priced.least_short(wanted, bars, cutting_priced.first_ways(wanted, bars))
    program = Program(wanted, bars, fewest.ways, NODES_PRICED)
    short = program.short_of(_found(program.least_short()))
    cheapest = cutting_priced.least_taken(wanted, bars, fewest.ways, short)
    used, short, taken = _answered(
        Program(wanted, bars, cheapest.ways, NODES_PRICED), cheapest.least, cheapest.whole
    )
    proved = short <= fewest.least + NEAR and taken <= cheapest.least + NEAR
    return used, min(cheapest.least, taken), proved


def _answered(
    program: Program, bound: Metre = 0.0, come_by: tuple[tuple[Way, int], ...] = ()
) -> tuple[Used, Metre, Metre]:
    """The three questions in turn: what is used, and the length (m) short and taken."""
    fewest = _found(program.least_short())
    short = program.short_of(fewest)
    cheapest = _found(program.least_taken(short, bound))
    if come_by:
        other = Used(come_by, (0,) * len(program.wanted), proved=False)
        cheapest = min(cheapest, other, key=program.taken_of)
    taken = program.taken_of(cheapest)
    rested = (program.longest_rest(short, taken) if taken else None) or cheapest
    proved = fewest.proved and cheapest.proved and rested.proved
    return replace(rested, proved=proved), short, taken


def _found(used: Used | None) -> Used:
    """OutsideModel where the solver gave up with nothing in hand."""
    if used is None:
        raise OutsideModel(
            "the cutting list", "too large to be worked out", "fewer lengths at once"
        )
    return used


def _laid_out(wanted: Sequence[Wanted], bars: Sequence[Bar], few: int) -> list[Way] | None:
    """Every filled way of every bar, None where they are more than `few`."""
    lengths, counts = [w.with_cut for w in wanted], [w.count for w in wanted]
    every = ((t, p) for t, bar in enumerate(bars) for p in filled(lengths, counts, bar.room))
    ways = list(islice(every, few + 1))
    return None if len(ways) > few else [way for way in ways if any(way[1])]


def _by_length(pieces: Sequence[tuple[str, Metre, int]], kerf: Metre) -> list[Wanted]:
    """The lengths wanted, longest first, each with the names that share it."""
    wanted: list[Wanted] = []
    for name, length, count in sorted(pieces, key=lambda piece: -piece[1]):
        if not count:
            continue
        if wanted and wanted[-1].length - length < EXACT:
            last = wanted[-1]
            named = (*last.names, (name, count))
            wanted[-1] = replace(last, count=last.count + count, names=named)
        else:
            wanted.append(Wanted(length, length + kerf, count, ((name, count),)))
    return wanted


def _trimmed(used: Used, wanted: Sequence[Wanted]) -> list[Way]:
    """Bar by bar, without the pieces beyond those wanted: they stay in the last bars uncut."""
    bars = [way for way, often in used.ways for _ in range(often)]
    bars += [used.rest] if used.rest else []
    left = [w.count for w in wanted]
    kept = []
    for t, pattern in bars:
        taken = tuple(min(n, rest) for n, rest in zip(pattern, left, strict=True))
        left = [rest - n for n, rest in zip(taken, left, strict=True)]
        kept.append((t, taken))
    return sorted((way for way in kept if any(way[1])), key=lambda way: (way[0], _first(way[1])))


def _first(pattern: Pattern) -> Pattern:
    return tuple(-n for n in pattern)


def _named(
    cuts: Sequence[Way],
    wanted: Sequence[Wanted],
    bars: Sequence[tuple[str, Metre, int | None]],
) -> Iterator[CutBar]:
    """The bars with the names of their pieces, those that are alike together."""
    queues = [[name for name, count in w.names for _ in range(count)] for w in wanted]
    alike: dict[tuple[int, tuple[tuple[str, int], ...]], tuple[int, Metre]] = {}
    for t, pattern in cuts:
        cut: Counter[str] = Counter()
        for queue, number in zip(queues, pattern, strict=True):
            cut.update(queue[:number])
            del queue[:number]
        gone = sum(n * w.with_cut for n, w in zip(pattern, wanted, strict=True))
        key = t, tuple(cut.items())
        times_cut = alike.get(key, (0, 0.0))[0]
        alike[key] = times_cut + 1, max(0.0, bars[t][1] - gone)
    for (t, of), (number, left) in alike.items():
        yield CutBar(bars[t][0], bars[t][1], number, of, left)


def _check(
    pieces: Sequence[tuple[str, Metre, int]],
    bars: Sequence[tuple[str, Metre, int | None]],
    kerf: Metre,
    end_loss: Metre,
) -> None:
    for what, size in (("kerf", kerf), ("end of a bar", end_loss)):
        if not size >= 0.0:
            raise OutsideModel(what, f"{size} m", "a length of 0 or more")
    for name, length, count in (*pieces, *bars):
        if not length > 0.0:
            raise OutsideModel(f"length of {name}", f"{length} m", "a length above 0")
        if count is not None and count < 0:
            raise OutsideModel(f"number of {name}", str(count), "0 or more")
    if len({name for name, _, _ in pieces}) < len(pieces):
        raise OutsideModel("names of the pieces", "one of them twice", "each piece once")
