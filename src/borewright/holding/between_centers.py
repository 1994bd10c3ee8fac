"""A bar between centers that carries work: how stiff it is at the tool, how it is drawn.

The work's own stiffness is left out: it is the bar's that a cut finds on discs and short hubs.
"""

from __future__ import annotations

import numpy as np

from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.holding.part import Part
from borewright.mechanics.beam import Bar, deflection, round_step
from borewright.quantities.si import Metre, NewtonPerMetre

END = 1.5
"""Length of bar past each face of the work, in bores: dog, tool and center need it (ours)."""

ROOM = {"inch": 0.5 * 0.0254, "mm": 12e-3}
"""What stands out past each face at least (m): the tool's clearance and a small dog (ours)."""

PLACES = (0.0, 0.5, 1.0)
"""Shares of the work's length where the tool is tried: the weakest counts (ours)."""


def past_each_face(part: Part) -> Metre:
    """Bar past each face of the work (m)."""
    return END * part.bore + ROOM[part.job.units]


def span_of(part: Part, carried: Metre) -> Metre:
    """Between centers (m), where the work or its sleeve takes up so much (m) of the bar."""
    return max(carried, part.length) + 2 * past_each_face(part)


def bar_stiffness(part: Part, diameter: Metre, span: Metre) -> NewtonPerMetre:
    """Stiffness (N/m) at the tool of a plain steel bar (m) between sprung centers, work midway."""
    of, spring = part.tables.material_range, part.tables.allowance("center_stiffness").best
    steel = of("steel-1018", "modulus").best, of("steel-1018", "poisson").best
    bend, slide = round_step(diameter, *steel)
    bar = Bar(np.array([0.0, span]), np.array([bend]), np.array([slide]), (spring, spring))
    start = (span - part.length) / 2
    return 1 / max(deflection(bar, start + share * part.length, 1.0) for share in PLACES)


def centers_picture(
    part: Part,
    leading: str,
    span: Metre,
    rings: tuple[HeldRing, ...],
    notes: tuple[HeldNote, ...],
    marks: tuple[HeldMark, ...] = (),
) -> HeldPicture:
    """Work midway on a bar between centers, dog at the headstock; `rings`: the bar and its like."""
    start, cone = (span - part.length) / 2, 0.35 * part.bore
    tips = (
        HeldRing(Role.CENTER, -1.5 * cone, 0.3 * cone, cone, 0.0, 0.1 * cone),
        HeldRing(Role.CENTER, span - 0.3 * cone, span + 1.5 * cone, 0.1 * cone, 0.0, cone),
        HeldRing(Role.DOG, 0.15 * part.bore, 0.65 * part.bore, part.bore, 0.4 * part.bore),
    )
    work = part.rings(leading, start)
    dog = HeldMark(Role.DOG, 1.3 * part.bore, 0.4 * part.bore)
    return HeldPicture(
        (*rings, *work, *tips), (dog, *marks), notes, True, (start, start + part.length)
    )
