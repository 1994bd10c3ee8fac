"""Which ways of cutting are used, and how often: integer programs, solved exactly by HiGHS.

Three questions in turn, each answer held while the next is asked: least length of pieces that
cannot be had, least length of bar taken, longest rest of one bar in one piece.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_matrix

from borewright.making.bars.cutting_patterns import MILLIMETRE, Bar, Pattern, Wanted, Way
from borewright.quantities.si import Metre

OPTIMAL: Final = 0
"""What `milp` calls an answer that no other beats."""

NODES: Final = 20_000
"""Branches after which the solver gives what it has, and says that it is not proved; ours."""

HAIR: Final = 1e-5
"""Millimetres by which the answer to one question may be missed while the next is asked."""


@dataclass(frozen=True, slots=True)
class Used:
    """Ways and how often each is used; pieces that cannot be had; the bar with the longest rest.

    Together the ways may give more pieces than are wanted, never fewer but for `short`. `proved`:
    no other use of the ways of this program is better.
    """

    ways: tuple[tuple[Way, int], ...]
    short: Pattern
    rest: Way | None = None
    proved: bool = True


class Program:
    """The integer program over some ways of cutting. Variables in order: how often each way, short
    pieces by length, pieces from the bar with the longest rest, which bar that is."""

    def __init__(
        self,
        wanted: Sequence[Wanted],
        bars: Sequence[Bar],
        ways: Sequence[Way],
        nodes: int = NODES,
    ) -> None:
        self.nodes = nodes
        self.wanted, self.bars, self.ways = wanted, bars, tuple(ways)
        self.piece = np.array([w.length for w in wanted]) * MILLIMETRE
        self.bar = np.array([b.length for b in bars]) * MILLIMETRE
        self.taken = np.array([self.bar[t] for t, _ in self.ways])
        self.count = np.array([w.count for w in wanted], dtype=float)
        total = float(self.count.sum())
        self.have = np.array([total if b.count is None else min(b.count, total) for b in bars])

    def least_short(self) -> Used | None:
        """As few (by length) of the pieces short as these ways allow; None where none was found."""
        return self._solve(self._row(short=self.piece), self._ends())

    def least_taken(self, short: Metre, bound: Metre = 0.0) -> Used | None:
        """The least length of bar with no more than this length (m) of pieces short. `bound`: no
        less (m) is possible, as is known from elsewhere."""
        rows = [self._short_row(short), self._taken_row(bound, np.inf)]
        return self._solve(self._row(ways=self.taken), self._ends(), rows)

    def longest_rest(self, short: Metre, taken: Metre) -> Used | None:
        """No more short and no more taken than this (m), and one bar cut as little as can be."""
        rows = [self._short_row(short), self._taken_row(0.0, taken), *self._rest_rows()]
        return self._solve(self._row(own=self._with_cut(), which=-self.bar), self._ends(1), rows)

    def short_of(self, used: Used) -> Metre:
        """Length (m) of the pieces that cannot be had."""
        return float(sum(n * w.length for n, w in zip(used.short, self.wanted, strict=True)))

    def taken_of(self, used: Used) -> Metre:
        """Length (m) of the bars that are cut into."""
        whole = sum(n * self.bars[way[0]].length for way, n in used.ways)
        return float(whole + (self.bars[used.rest[0]].length if used.rest else 0.0))

    def _row(self, ways: Any = 0.0, short: Any = 0.0, own: Any = 0.0, which: Any = 0.0) -> Any:
        parts = ((ways, self.ways), (short, self.wanted), (own, self.wanted), (which, self.bars))
        return np.concatenate([np.broadcast_to(a, len(of)).astype(float) for a, of in parts])

    def _short_row(self, short: Metre) -> tuple[Any, float, float]:
        return self._row(short=self.piece), -np.inf, short * MILLIMETRE + HAIR

    def _taken_row(self, least: Metre, most: Metre) -> tuple[Any, float, float]:
        low = max(0.0, least * MILLIMETRE - HAIR)
        return self._row(ways=self.taken, which=self.bar), low, most * MILLIMETRE + HAIR

    def _with_cut(self) -> Any:
        return np.array([w.with_cut for w in self.wanted]) * MILLIMETRE

    def _rest_rows(self) -> list[tuple[Any, float, float]]:
        room = np.array([b.room for b in self.bars]) * MILLIMETRE
        one = self._row(which=1.0), 1.0, 1.0
        return [one, (self._row(own=self._with_cut(), which=-room), -np.inf, 0.0)]

    def _ends(self, rest: int = 0) -> Any:
        """The most that each variable may be; those of the bar with the rest are 0 without it."""
        often = [self.have[t] for t, _ in self.ways]
        return np.concatenate(
            [often, self.count, rest * self.count, rest * np.ones(len(self.bars))]
        )

    def _solve(
        self, goal: Any, most: Any, rows: Sequence[tuple[Any, float, float]] = ()
    ) -> Used | None:
        rows = [*self._always(), *rows]
        found = milp(
            goal,
            integrality=np.ones(len(goal)),
            bounds=Bounds(0, most),
            constraints=LinearConstraint(
                csr_matrix(np.array([r[0] for r in rows])),
                np.array([r[1] for r in rows]),
                np.array([r[2] for r in rows]),
            ),
            options={"mip_rel_gap": 0.0, "node_limit": self.nodes},
        )
        if found.x is None:
            return None
        return self._used(np.rint(found.x).astype(int), found.status == OPTIMAL)

    def _always(self) -> list[tuple[Any, float, float]]:
        """Enough of each piece, and no more of each bar than there is."""
        enough = []
        for i, count in enumerate(self.count):
            one = np.arange(len(self.wanted)) == i
            gives = np.array([pattern[i] for _, pattern in self.ways])
            enough.append((self._row(gives, one, one), count, np.inf))
        there = []
        for t, have in enumerate(self.have):
            from_it = np.array([which == t for which, _ in self.ways])
            there.append((self._row(from_it, which=np.arange(len(self.bars)) == t), -np.inf, have))
        return [*enough, *there]

    def _used(self, x: Any, proved: bool) -> Used:
        ways, wanted = len(self.ways), len(self.wanted)
        often, short, own, which = np.split(x, [ways, ways + wanted, ways + 2 * wanted])
        rest = (int(np.argmax(which)), tuple(map(int, own))) if which.any() else None
        used = tuple((w, int(n)) for w, n in zip(self.ways, often, strict=True) if n)
        return Used(used, tuple(map(int, short)), rest, proved)
