"""Work stuck to a plate by its face, or on a stub by its bore, as drawn; the film drawn thick."""

from __future__ import annotations

from borewright.answer.held_picture import HeldNote, HeldPicture, HeldRing, Role
from borewright.holding.bars.stub import Stub
from borewright.holding.part import Part
from borewright.quantities.si import Metre

PLATE = {"inch": 0.5 * 0.0254, "mm": 12e-3}
"""Thickness of the plate (m); ours."""

STEP_HIGH = 0.25
"""Height of the step that finds the bore, over the length of the work (ours)."""

FILM = 0.02
"""Thickness of film that is drawn, over the length of the work or the bore."""


def plate_picture(part: Part, leading: str, face: tuple[Metre, Metre], called: str) -> HeldPicture:
    """Work on a plate with a step in its bore; `face` is the ring that is stuck (m)."""
    plate, (inner, outer) = PLATE[part.job.units], face
    across = max(outer, 1.2 * part.bore)
    start = plate + FILM * part.length
    rings = (
        HeldRing(Role.SPINDLE, -1.5 * plate, 0.0, 0.3 * across),
        HeldRing(Role.PLATE, 0.0, plate, 0.58 * across),
        HeldRing(Role.PLATE, plate, start + STEP_HIGH * part.length, part.bore / 2),
        HeldRing(Role.BOND, plate, start, outer / 2, inner / 2),
        *part.rings(leading, start),
    )
    notes = (
        HeldNote(Role.PLATE, "plate faced in place, step in the bore"),
        HeldNote(Role.BOND, called),
    )
    return HeldPicture(rings, (), notes, turned=(start, start + part.length))


def gap_picture(stub: Stub, gap: Metre) -> HeldPicture:
    """Work on a shouldered stub, the bore stuck over a gap (m, on diameter) that is drawn wide."""
    part, start = stub.part, stub.before_work
    end, grip = start + part.length, 1.5 * stub.part.bore
    core = part.bore / 2 - max(gap, FILM * part.bore)
    rings = (
        HeldRing(Role.SPINDLE, -1.6 * grip, -grip, 2.2 * part.bore),
        HeldRing(Role.JAW, -grip, 0.0, 1.6 * part.bore, stub.shoulder / 2),
        HeldRing(Role.MANDREL, -grip, start, stub.shoulder / 2),
        HeldRing(Role.MANDREL, start, end, core),
        HeldRing(Role.BOND, start, end, part.bore / 2, core),
        *part.rings(stub.leading, start),
    )
    notes = (HeldNote(Role.MANDREL, "shouldered stub"), HeldNote(Role.BOND, "gap drawn wide"))
    return HeldPicture(rings, (), notes, turned=(start, end))
