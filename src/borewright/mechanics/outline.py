"""What metal stands on the bore line, from the pieces of a turned part."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from borewright.mechanics.num import Floats, distinct
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True, eq=False)
class BoreLine:
    """Intervals along z: `edges` (m+1,), `outside` (m,), 0 where no metal meets the bore."""

    edges: Floats
    outside: Floats

    def cut_at(self, depths: Sequence[float]) -> BoreLine:
        """The same line with further edges, for bores whose diameter bends at those depths."""
        inner = [z for z in depths if self.edges[0] < z < self.edges[-1]]
        edges = distinct([*self.edges.tolist(), *inner])
        middles = 0.5 * (edges[1:] + edges[:-1])
        home = np.clip(np.searchsorted(self.edges, middles) - 1, 0, len(self.outside) - 1)
        return BoreLine(edges, self.outside[home])

    def mirrored(self) -> BoreLine:
        """The line seen from the other face."""
        return BoreLine(self.edges[-1] + self.edges[0] - self.edges[::-1], self.outside[::-1])


def bore_line(pieces: Sequence[tuple[Metre, Metre, Metre, Metre | None]], bore: Metre) -> BoreLine:
    """Outside of the radially continuous metal over each stretch of the bore.

    `pieces`: (start, end, outside, inside or None where it begins at the bore), metres; they may
    overlap along z. A rim counts at a given z only if metal reaches from the bore out to it there.

    >>> line = bore_line([(0.0, 0.03, 0.04, None), (0.01, 0.02, 0.10, 0.04)], 0.018)
    >>> [float(v) for v in line.outside]
    [0.04, 0.1, 0.04]
    """
    edges = distinct(v for p in pieces for v in p[:2])
    middles = 0.5 * (edges[1:] + edges[:-1])
    outside = [_reach_from_bore(z, pieces, bore) for z in middles]
    return BoreLine(edges, np.array(outside, dtype=np.float64))


def _reach_from_bore(
    z: float, pieces: Sequence[tuple[float, float, float, float | None]], bore: float
) -> float:
    """Diameter reached from the bore out through touching pieces at z; 0 if none begins there."""
    here = sorted((p[3] or bore, p[2]) for p in pieces if p[0] <= z <= p[1])
    reach = bore
    for inside, outside in here:
        if inside <= reach * (1 + 1e-9):
            reach = max(reach, outside)
    return reach if reach > bore else 0.0
