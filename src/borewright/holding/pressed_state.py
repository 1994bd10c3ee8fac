"""The pressed joint at one travel, in the likely case: pressure, gap and contact along the bore.

Work and mandrel are two elastic bodies (see `elastic_joint`). The peaks of both surfaces are taken
as they are (`tight`: what loads the bore most) and as flattened (`eased`: what is left for grip).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from borewright.holding.elastic_joint import Joint, Piece, joint, outline_of
from borewright.holding.measured_mandrel import diameter_of
from borewright.holding.plain_taper import TaperHold
from borewright.job.records import Job
from borewright.job.web import MEETS, gripping
from borewright.mechanics.contact import end_of_contact
from borewright.mechanics.num import Floats
from borewright.mechanics.revolved import Revolved
from borewright.mechanics.rings import Elastic
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True, eq=False)
class PressedState:
    """One hold at one travel. z (m) runs from the leading face; `pieces` stand along it.

    `tight`, `eased` (n,): pressure (Pa) of every strip, with no peak flattened and with them
    flattened. `gap` (n,): what is open between bore and mandrel (m on diameter), no peak flattened.
    """

    joined: Joint
    body: Revolved
    pieces: tuple[Piece, ...]
    tight: Floats
    eased: Floats
    gap: Floats

    @property
    def contact(self) -> tuple[Metre, Metre]:
        """Where contact begins and ends (m), no peak flattened; two zeros where nothing presses."""
        touching = np.flatnonzero(self.tight > 0)
        if not len(touching):
            return 0.0, 0.0
        strips, bore = self.joined.work.strips, self.joined.bore
        end = end_of_contact(strips, self.tight)
        return float(strips[touching[0], 0] * bore), end * bore


def pressed_state(
    job: Job, hold: TaperHold, travel: Metre, seat: Metre | None = None
) -> PressedState:
    """The state of a hold at a travel (m) past first touch. OutsideModel where it is no one body.

    The overlap is that of a taper without ends, as in the hold; how far the mandrel stands out of
    either face is counted from `seat`, the likely one where it is not given.
    """
    pieces = pieces_joined(job, hold)
    facts, bore, ground = hold.facts, job.work.bore.size, hold.mandrel.ground_length
    stands = hold.likely_touch + travel if seat is None else seat
    ends = [edge for piece in pieces if piece[3] is None for edge in piece[:2]]
    out = ground - (stands - min(ends)), stands - max(ends)
    work = Elastic(np.atleast_1d(facts.work.modulus)[:1], facts.work.poisson)
    joined = joint(pieces, bore, work, facts.mandrel, out)
    over = _overlap(hold, joined, hold.likely_touch + travel)
    tight, eased = (joined.pressure(over - lost) for lost in (0.0, float(facts.lost_rough[0])))
    given = 2 * bore * (joined.gives @ (tight * joined.work.lengths))
    gap = np.maximum(0.0, given - over)
    body = outline_of(pieces, bore)
    return PressedState(joined, body, pieces, tight, eased, gap)


def pieces_joined(job: Job, hold: TaperHold) -> tuple[Piece, ...]:
    """The rings that go all the way round and hang together with the bore, from the leading face.

    Spokes are left out, and so is a rim that only they carry.
    """
    whole = gripping(job.work)
    low, high = float(hold.line.edges[0]), float(hold.line.edges[-1])
    turned = [
        (p.start, p.end) if hold.leading == "A" else (low + high - p.end, low + high - p.start)
        for p in whole
    ]
    bore = job.work.bore.size
    pieces = [
        (start, end, p.outside, None if p.inside is None or p.inside <= bore + MEETS else p.inside)
        for p, (start, end) in zip(whole, turned, strict=True)
    ]
    return tuple(p for p in pieces if p in _joined(pieces))


def _joined(pieces: Sequence[Piece]) -> list[Piece]:
    found = [p for p in pieces if p[3] is None]
    waiting = [p for p in pieces if p[3] is not None]
    while more := [p for p in waiting if any(_meet(p, q) for q in found)]:
        found += more
        waiting = [p for p in waiting if p not in more]
    return found


def _meet(one: Piece, other: Piece) -> bool:
    """Whether two rings share a surface, along z or along r, by more than a hair."""
    along = min(one[1], other[1]) - max(one[0], other[0])
    up = min(one[2], other[2]) - max(one[3] or 0.0, other[3] or 0.0)
    return min(along, up) > -MEETS and max(along, up) > MEETS


def _overlap(hold: TaperHold, joined: Joint, seat: Metre) -> Floats:
    """Overlap on diameter (m) on every strip."""
    sizes = np.interp(joined.places, hold.line.edges, hold.sizes)
    return np.asarray(diameter_of(hold.mandrel, seat - joined.places) - sizes)
