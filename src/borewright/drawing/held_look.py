"""How each piece of a hold is drawn and what it is called, by its role."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos

from borewright.answer.held_picture import HeldPicture, HeldRing, Role
from borewright.drawing.scene import LineKind


@dataclass(frozen=True, slots=True)
class Look:
    """Names for one and for several, edge, and section lines: their spacing (mm), 0 where the piece
    is not cut, as shafts, nuts and screws are not.

    `falling` section lines tell what holds from what is held. A `block` stands at places round the
    axis, not all round it. `solid`: too thin for section lines, blacked instead.
    """

    name: str
    several: str
    hatch: float = 0.0
    falling: bool = True
    block: bool = False
    solid: bool = False
    edge: LineKind = LineKind.EDGE

    @property
    def cut(self) -> bool:
        """Whether the section goes through it."""
        return self.hatch > 0 or self.solid


LOOKS: dict[Role, Look] = {
    Role.SPINDLE: Look("headstock", "headstock"),
    Role.PLATE: Look("plate", "plates", 2.6),
    Role.MANDREL: Look("mandrel", "mandrels"),
    Role.CENTER: Look("center", "centers"),
    Role.SLEEVE: Look("sleeve", "sleeves", 1.0),
    Role.BOND: Look("bond", "bonds", solid=True),
    Role.WORK: Look("work", "work", 1.5, falling=False, edge=LineKind.VISIBLE),
    Role.JAW: Look("jaws", "jaws", 2.0, block=True),
    Role.WASHER: Look("washer", "washers", 1.0),
    Role.NUT: Look("nut", "nuts"),
    Role.STRAP: Look("strap", "straps", 1.2, block=True),
    Role.SCREW: Look("screw", "screws", block=True),
    Role.PIN: Look("pin", "pins", block=True),
    Role.DOG: Look("dog", "dogs", block=True),
    Role.WEIGHT: Look("counterweight", "counterweights", 1.0, block=True),
}
"""In the order of painting."""

FINEST = 0.9
"""Hatching closer than this fills up in print, mm."""


def spacing_for(role: Role, thinnest: float) -> float:
    """Section lines (mm apart) of a piece whose thinnest part is so thick on paper (mm)."""
    return max(FINEST, min(LOOKS[role].hatch, thinnest / 2))


def called(role: Role, picture: HeldPicture, number: int = 1) -> str:
    """What a role is called in this hold.

    >>> called(Role.PIN, HeldPicture(())), called(Role.PIN, HeldPicture(()), 3)
    ('pin', 'pins')
    """
    if role is Role.SPINDLE and any(ring.role is Role.JAW for ring in picture.rings):
        return "chuck"
    if role is Role.MANDREL and any(ring.role is Role.PLATE for ring in picture.rings):
        return "spigot"
    return LOOKS[role].name if number == 1 else LOOKS[role].several


def noted(role: Role, picture: HeldPicture) -> str:
    """The words beside a role: its note, else its plain name where no note says it."""
    own = [note.words for note in picture.notes if note.role is role]
    if own:
        return ", ".join(own)
    if role is Role.WORK:
        return ""  # its length, its outside and its faces are on it
    name = called(role, picture)
    said = any(name.rstrip("s") in note.words.lower() for note in picture.notes)
    return "" if said else name


def is_block(ring: HeldRing) -> bool:
    """Whether a ring stands for pieces at places round the axis."""
    return LOOKS[ring.role].block and ring.inner > 0


def sides(role: Role, picture: HeldPicture) -> tuple[int, ...]:
    """Where a block is drawn: +1 above the axis, -1 below; both where there are several of it, or
    where nobody said how many."""
    marks = [mark for mark in picture.marks if mark.role is role]
    if not marks or max(mark.number for mark in marks) > 1:
        return (+1, -1)
    return tuple({+1 if cos(mark.angle) >= 0 else -1: None for mark in marks})
