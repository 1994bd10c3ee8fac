"""The pressed joint at one travel, in the likely case: pressure, gap and contact along the bore.

The peaks of both surfaces are taken as they are (`tight`: what loads the bore most) and as
flattened (`eased`: what is left for grip).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from borewright.holding.taper.elastic_joint import Joint, Piece, outline_of
from borewright.holding.taper.plain_taper import TaperHold
from borewright.holding.taper.taper_contact import gap, pieces_joined
from borewright.job.records import Job
from borewright.mechanics.num import Floats
from borewright.mechanics.revolved import Revolved
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True, eq=False)
class DrawnState:
    """One hold at one travel. z (m) runs from the leading face; `pieces` stand along it.

    `tight`, `eased` (n,): pressure (Pa) of every strip, with no peak flattened and with them
    flattened. `gap` (n,): what is open between bore and mandrel (m on diameter), no peak flattened;
    `overlap` (n,): what would overlap there if nothing gave way; `bears`: the length (m) that does
    once the peaks have flattened, as the hold says it.
    """

    joined: Joint
    body: Revolved
    pieces: tuple[Piece, ...]
    tight: Floats
    eased: Floats
    gap: Floats
    overlap: Floats
    bears: Metre

    @property
    def contact(self) -> tuple[Metre, Metre]:
        """Where contact begins and ends (m), the peaks flattened; two zeros where none is."""
        touching = np.flatnonzero(self.eased > 0)
        if not len(touching):
            return 0.0, 0.0
        strips, bore = self.joined.work.strips, self.joined.bore
        start, end = (float(strips[touching[i], i] * bore) for i in (0, -1))
        broken = len(touching) <= touching[-1] - touching[0]
        return start, end if broken else start + self.bears


def drawn_state(job: Job, hold: TaperHold, travel: Metre) -> DrawnState:
    """The state of a hold at a travel (m) past first touch.

    The overlap is that of a taper without ends, as in the hold.
    """
    joined, lost = hold.joint, float(hold.facts.lost_rough[0])
    over = -gap(hold, 0, hold.likely_touch + travel)
    tight, eased = joined.pressure(over), joined.pressure(over - lost)
    loads = tight * joined.work.lengths / joined.modulus
    bears = float(hold.state(travel, np.array([lost]), likely_only=True).contact_length[0])
    open_ = np.maximum(0.0, 2 * joined.bore * (joined.gives() @ loads) - over)
    pieces = pieces_joined(job.work, hold.leading)
    body = outline_of(pieces, job.work.bore.size)
    return DrawnState(joined, body, pieces, tight, eased, open_, over, bears)
