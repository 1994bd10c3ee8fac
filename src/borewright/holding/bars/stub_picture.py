"""A stub and what it carries, as drawn: chuck or collet, shoulder, work, washer, screw, center."""

from __future__ import annotations

from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.holding.bars.stub import Stub
from borewright.quantities.si import Metre

IN_THE_JAWS = 1.5
"""Length gripped in the chuck, in bores (ours)."""

CENTER_ROOM = 1.2
"""Length of center that is drawn, in bores."""


def stub_picture(stub: Stub, shank: Metre, *, collet: bool, tailstock: bool = False) -> HeldPicture:
    """The stub gripped by jaws or a collet on its `shank` (m, diameter)."""
    part = stub.part
    start = stub.before_work
    end = start + part.length
    rings = (
        *_holder(stub, shank, collet=collet),
        HeldRing(Role.MANDREL, -IN_THE_JAWS * part.bore, 0.0, shank / 2),
        HeldRing(Role.MANDREL, 0.0, start, stub.shoulder / 2),
        HeldRing(Role.MANDREL, start, start + stub.length, part.bore / 2),
        *part.rings(stub.leading, start),
        *_clamp(stub, end),
        *(_center(stub, end) if tailstock else ()),
    )
    jaws = () if collet else (HeldMark(Role.JAW, 1.2 * part.bore, 0.8 * part.bore, 3),)
    held = "stub, goes back in its collet" if collet else "stub, stays in the chuck"
    notes = [HeldNote(Role.MANDREL, held), HeldNote(Role.WASHER, "washer and screw")]
    notes += [HeldNote(Role.SLEEVE, "collet")] if collet else []
    return HeldPicture(rings, jaws, tuple(notes), tailstock, turned=(start, end))
    notes = (
        HeldNote(Role.MANDREL, held),
        HeldNote(Role.WASHER, "washer and screw"),
        *((HeldNote(Role.SLEEVE, "collet"),) if collet else ()),
    )
    return HeldPicture(rings, jaws, notes, tailstock, turned=(start, end))


def _holder(stub: Stub, shank: Metre, *, collet: bool) -> tuple[HeldRing, ...]:
    bore, grip = stub.part.bore, IN_THE_JAWS * stub.part.bore
    spindle = HeldRing(Role.SPINDLE, -1.6 * grip, -grip, 2.2 * bore)
    if not collet:
        return spindle, HeldRing(Role.JAW, -grip, 0.0, 1.6 * bore, shank / 2)
    return (
        spindle,
        HeldRing(Role.SLEEVE, -grip, -0.15 * grip, 0.6 * shank, shank / 2, 0.8 * shank),
    )


def _clamp(stub: Stub, end: Metre) -> tuple[HeldRing, ...]:
    thread, washer = stub.thread, stub.washer
    thick = stub.part.tables.holding_fact("washer_thick_share").best * thread
    return (
        HeldRing(Role.WASHER, end, end + thick, washer / 2, thread / 2),
        HeldRing(Role.SCREW, end + thick, end + thick + 0.85 * thread, 0.8 * thread),
    )


def _center(stub: Stub, end: Metre) -> tuple[HeldRing, ...]:
    head = end + 1.35 * stub.thread
    far = head + CENTER_ROOM * stub.part.bore
    return (HeldRing(Role.CENTER, head, far, 0.1 * stub.thread, 0.0, 0.8 * stub.thread),)
