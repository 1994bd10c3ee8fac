"""A taper hold as thick rings side by side: the pencil check of `taper_contact`.

On a taper without ends, so that only the bore question speaks of them. See `mechanics.rings` for
where rings are weak.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np

from borewright.answer.records import Draws
from borewright.holding.taper.measured_mandrel import profile_of
from borewright.holding.taper.pressed_state import PressedState
from borewright.mechanics.measured_rings import ring_contact_on
from borewright.mechanics.rings import Elastic, RingContact, ring_contact
from borewright.quantities.si import Metre

if TYPE_CHECKING:
    from borewright.holding.taper.plain_taper import TaperHold

EDGE_SHARE: Final = 0.01
"""Stresses are read this share of the length in from each face."""

ENDLESS: Final = 10.0
"""Length of taper (m) taken beyond the work."""


def rings_state(hold: TaperHold, travel: Metre, lost: Draws, cases: int) -> PressedState:
    """The state past first touch with so much interference `lost` (m, (cases,) or one)."""
    rings = _rings(hold, travel, lost, cases)
    inside = EDGE_SHARE * hold.length, (1 - EDGE_SHARE) * hold.length
    return PressedState(
        normal_force=rings.normal_force,
        contact_length=rings.contact_length,
        tension=rings.largest_hoop(*inside),
        equivalent=rings.largest_equivalent(*inside),
        pressure=rings.largest_pressure(*inside),
        growth=rings.largest_growth(),
    )


def _rings(hold: TaperHold, travel: Metre, lost: Draws, cases: int) -> RingContact:
    f, m, measured = hold.facts, hold.mandrel, profile_of(hold.mandrel)
    work = Elastic(np.atleast_1d(f.work.modulus)[:cases], f.work.poisson)
    if measured is not None:
        # Where the taper changes from place to place, each drawn bore has its own grip.
        sizes = hold.sizes + hold.bore_shift[:cases, None]
        seats = hold.touch[:cases] + travel
        on = hold.line, sizes, seats, lost, work, f.mandrel
        return ring_contact_on(measured, *on, hole=m.hole)
    start = hold.likely_touch + travel - ENDLESS
    seat = np.full(cases, ENDLESS)
    small = m.small_end + m.taper * start
    straight = small, m.taper, np.inf
    return ring_contact(hold.line, hold.sizes, seat, *straight, lost, work, f.mandrel, m.hole)
