"""A bar between centers that carries work: how stiff it is at the tool, how it is drawn.

The work's own stiffness is left out: it is the bar's that a cut finds on discs and short hubs.
"""

from __future__ import annotations

from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.holding.between import Span, stiffness_between
from borewright.holding.part import Part
from borewright.quantities.si import Metre, NewtonPerMetre


def past_each_face(part: Part) -> Metre:
    """Bar past each face of the work (m)."""
    fact = part.tables.holding_fact
    return fact("bar_end_bores").best * part.bore + fact(f"bar_end_{part.job.units}").best


def span_of(part: Part, carried: Metre) -> Metre:
    """Between centers (m), where the work or its sleeve takes up so much (m) of the bar."""
    return max(carried, part.length) + 2 * past_each_face(part)


def bar_stiffness(part: Part, diameter: Metre, span: Metre) -> NewtonPerMetre:
    """Stiffness (N/m) at the tool of a plain steel bar (m) between sprung centers, work midway."""
    start = (span - part.length) / 2
    return stiffness_between(part, Span(((span, diameter),), start, start + part.length))


def centers_picture(
    part: Part,
    leading: str,
    span: Metre,
    rings: tuple[HeldRing, ...],
    notes: tuple[HeldNote, ...],
    end: Metre,
) -> HeldPicture:
    """Work midway on a bar between centers, dog at the headstock; `rings`: the bar and its like.

    `end`: radius (m) of the end that the dog grips.
    """
    start, cone = (span - part.length) / 2, 0.7 * end
    tips = (
        HeldRing(Role.CENTER, -1.5 * cone, 0.3 * cone, cone, 0.0, 0.1 * cone),
        HeldRing(Role.CENTER, span - 0.3 * cone, span + 1.5 * cone, 0.1 * cone, 0.0, cone),
        HeldRing(Role.DOG, 0.15 * part.bore, 0.65 * part.bore, end + 0.5 * part.bore, end),
    )
    work = part.rings(leading, start)
    dog = HeldMark(Role.DOG, 1.3 * part.bore, 0.4 * part.bore)
    return HeldPicture((*rings, *work, *tips), (dog,), notes, True, (start, start + part.length))
